"""Ways in: pictures of room kinds, and ready-made cases."""

from typing import Final

import streamlit as st

from econ.case.choices import NOT_KNOWN
from econ.ui import look, shelf, state
from econ.ui.option_words import option_words

_OTHER_WAYS: Final = {
    "quote": "Explain a quote",
    "rooms": "Plan many rooms",
    "guide": "See how it works",
}
_PATH: Final = "rooms[0].kind"
_TILES: Final[dict[str, str]] = {
    "lower_level": '<path d="M8 10h64v22H8z"/><path d="M8 32h64v20H8z" stroke-width="3"/>'
    '<path d="M1 38h6M1 44h6M73 38h6M73 44h6M1 50h6M73 50h6"/><path d="M46 37h12v8H46z"/>',
    "garage": '<path d="M6 26 40 8l34 18v26H6z"/><path d="M18 30h44v22H18zM18 37h44M18 44h44"/>',
    "sunroom": '<path d="M8 20 60 12v40H8z"/><path d="M20 18v34M34 16v36M47 14v38M8 35h52"/>'
    '<path d="M60 10h14v42H60z" stroke-width="3"/>',
    "bedroom": '<path d="M8 10h64v42H8z"/><path d="M16 40h34v8H16zM16 40v-8h10v8"/>'
    '<path d="M54 18h12v16H54zM60 18v16"/>',
    "living": '<path d="M8 10h64v42H8zM38 10v18M38 38v14M8 30h18M38 32h34"/><path d="M14 16h8v8h-8zM50 16h12v8H50z"/>',
    "attic": '<path d="M4 52 40 8l36 44z"/><path d="M24 52V28M56 52V28M34 30h12v10H34z"/>',
}
"""Line drawings, 80 by 60, in the colour of the text."""


def other_ways() -> None:
    """Lead those who came for something else to their own page."""
    with st.container(horizontal=True, vertical_alignment="center", gap="small", key="other_ways"):
        st.html('<span class="small">Here for something else?</span>', width="content")
        for page, words in _OTHER_WAYS.items():
            st.page_link(f"econ/ui/pages/{page}.py", label=words)


def room_tiles() -> None:
    """Draw six pictures of room kinds, each with its button."""
    chosen = state.value(_PATH)
    with st.container(horizontal=True, gap="small", key="tiles"):
        for option, drawing in _TILES.items():
            with st.container(width=150, border=True, gap="xxsmall", key=f"tile_{option}"):
                st.html(_drawn(drawing))
                _button(option, chosen)
    with st.container(horizontal=True, gap="small"):
        for option in ("other", NOT_KNOWN):
            _button(option, chosen)


def ready_cases() -> None:
    """Offer the ready-made cases: each opens as a copy of its own."""
    st.subheader("Or look at a ready-made case")
    st.caption("Invented people and quotes, real weather. Each opens as a copy that you may change.")
    st.button("Begin a new case instead", type="tertiary", on_click=state.start_new)
    for ready in shelf.ready_cases():
        with st.container(horizontal=True, vertical_alignment="center"):
            if st.button(ready.name, key=f"ready_{ready.key}"):
                state.start_new(ready.case)
                st.switch_page("econ/ui/pages/answer.py")


def _button(option: str, chosen: str | None) -> None:
    st.button(
        option_words("rooms[].kind", option),
        key=f"kind_{option}",
        type="primary" if option == chosen else "secondary",
        width="stretch" if option in _TILES else "content",
        on_click=_choose,
        args=(option, chosen),
    )


def _choose(option: str, chosen: str | None) -> None:
    if option != chosen:
        state.give(_PATH, option, option)


def _drawn(drawing: str) -> str:
    return look.svg_image(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 80 60" fill="none" stroke="currentColor" '
        f'stroke-width="1.6" stroke-linejoin="round">{drawing}</svg>',
        "",
        "tile",
    )
