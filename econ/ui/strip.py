"""What every page carries: the strip of four ways, and a line with undo, redo and units."""

from html import escape

import streamlit as st

from econ.case.edit import answer_counts
from econ.report.numbers import UnitSystem
from econ.report.words.counts import strip_text
from econ.store.cases import SavedCase
from econ.ui import cards, look, now, shelf, state
from econ.ui.ways import ways

_UNIT_WORDS = {UnitSystem.US: "US units", UnitSystem.SI: "SI units"}


def draw() -> None:
    """Draw the strip and the line beneath it."""
    present = now.present()
    with st.container(key="strip", gap="xxsmall"):
        st.html(_body(present) + _counts(present))
    _controls()
    _arrival()
    _troubles(present)


def _body(present: now.Now) -> str:
    if present.answer is None:
        words = "Choose a town and the four ways appear here: keep, window units, do it yourself, hire."
        return f'<p class="strip_empty">{words}</p>'
    return cards.strip_html(ways(present.answer, now.look()), state.theme(), state.link_query())


def _counts(present: now.Now) -> str:
    counts = answer_counts(state.current_case())
    text = strip_text(counts["yours"], counts["usual"], counts["not_known"])
    stale = '<span class="stale">before this change</span>' if present.trouble and present.answer else ""
    key = f'<span class="key">{cards.KEY}</span>' if present.answer else ""
    return f'<div class="counts"><span>{text}</span>{key}{stale}</div>'


def _controls() -> None:
    saved = st.session_state[state.SAVED]
    with st.container(key="controls", horizontal=True, vertical_alignment="center", gap="small"):
        st.html(f'<span class="case_name">{escape(shelf.title(state.current_case()))}</span> {_kept(saved)}')
        is_mine = saved is not None and not state.is_lent()
        can_undo, can_redo = (saved.can_undo, saved.can_redo) if is_mine else (False, False)
        st.button("Undo", type="tertiary", disabled=not can_undo, on_click=state.move, args=(shelf.undone,))
        st.button("Redo", type="tertiary", disabled=not can_redo, on_click=state.move, args=(shelf.redone,))
        st.session_state["w_units"] = state.units()
        st.segmented_control(
            "Units",
            list(UnitSystem),
            format_func=_UNIT_WORDS.__getitem__,
            key="w_units",
            on_change=_units_changed,
            label_visibility="collapsed",
            required=True,
        )


def _kept(saved: SavedCase | None) -> str:
    """Return whether the case stands as saved, and which version that is."""
    if saved is None:
        return '<span class="kept">not saved yet</span>'
    if st.session_state.get(state.UNSAVED):
        return '<span class="kept">last change not saved</span>'
    return f'<span class="kept" data-version="{saved.head}">saved</span>'


def _units_changed() -> None:
    st.session_state[state.UNITS] = st.session_state["w_units"] or state.units()


def _arrival() -> None:
    """Say how the case came to be open where nobody chose it, or that the one asked for is not here."""
    session = st.session_state
    if number := session.get(state.MISSING):
        st.warning(
            f"Case {number} is not here: it was deleted, or the address comes from another machine or another person. "
            "Nothing was opened in its place."
        )
        st.page_link("econ/ui/pages/cases.py", label="See the cases that are here")
    elif state.is_lent():
        st.info("This case is shown to you to read. What you change goes into a copy of your own.")
    elif session.get(state.GREETING):
        with st.container(key="greeting", horizontal=True, vertical_alignment="center", gap="small"):
            name = shelf.title(state.current_case())
            st.html(f'<span class="greeting">Opened your last case: <b>{escape(name)}</b>.</span>')
            st.button("Start a new one", key="start_new_one", on_click=state.start_new)


def _troubles(present: now.Now) -> None:
    session = st.session_state
    if present.trouble:
        st.error(f"This cannot be worked out as it stands. {look.literal(present.trouble)}")
    if notice := session.pop(state.NOTICE, ""):
        st.warning(look.literal(notice))
    if conflict := session.get(state.CONFLICT):
        st.warning("This case was changed in another tab meanwhile. Which version shall stay?")
        with st.container(horizontal=True):
            st.button("The other tab's", on_click=_take_theirs)
            st.button("This one, as a copy", on_click=_keep_copy)
        for words, text in (("The other tab's", conflict.theirs), ("This one", conflict.mine)):
            with st.expander(words):
                st.code(text, language="toml")


def _take_theirs() -> None:
    state.show_saved(*shelf.as_it_stands(st.session_state[state.SAVED].case_id))


def _keep_copy() -> None:
    st.session_state.pop(state.CONFLICT, None)
    state.start_new(state.current_case())
