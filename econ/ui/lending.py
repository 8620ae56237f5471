"""Links to the open case for somebody else, where the program is served to more than one person."""

from datetime import date
from html import escape
from typing import Final

import streamlit as st

from econ.store import sharing
from econ.store.cases import SavedCase
from econ.store.connection import store_path
from econ.ui import identity, shelf, state

_MADE: Final = "link_made"


def draw() -> None:
    """Make a link, show it once, and list those that stand with a way to take each back."""
    stands: SavedCase | None = st.session_state[state.SAVED]
    if not identity.is_served():
        st.html('<p class="statement">This program answers to this machine alone: send the case as a file instead.</p>')
        return
    if stands is None or state.is_lent():
        st.html('<p class="statement">Only a case of your own can be shown to others, once it is saved.</p>')
        return
    with st.container(horizontal=True):
        st.button("Link to read", key="share_read", on_click=_make, args=(stands.case_id,))
        st.button(
            "Link to read and change",
            key="share_edit",
            on_click=_make,
            args=(stands.case_id,),
            kwargs={"may_edit": True},
        )
    if (made := st.session_state.get(_MADE)) and made[0] == stands.case_id:
        st.html('<p class="statement">Copy it now: it is shown this once, and kept nowhere.</p>')
        st.code(f"{_base()}?share={made[1]}", language=None)
    for link in sharing.shares(store_path(), stands.case_id):
        _line(stands.case_id, link)


def _line(case_id: int, link: sharing.Share) -> None:
    with st.container(horizontal=True, vertical_alignment="center", key=f"share_{link.share_id}"):
        when = shelf.saved_words(link.made_at, date.today()).replace("saved", "made")
        what = "to read and change" if link.may_edit else "to read"
        st.html(f'A link {what} <span class="when">{escape(when)}</span>', width="stretch")
        st.button("Take it back", key=f"revoke_{link.share_id}", on_click=_revoke, args=(case_id, link.share_id))


def _make(case_id: int, *, may_edit: bool = False) -> None:
    st.session_state[_MADE] = (case_id, sharing.share(store_path(), case_id, may_edit=may_edit))


def _revoke(case_id: int, share_id: int) -> None:
    sharing.revoke(store_path(), case_id, share_id)
    st.session_state.pop(_MADE, None)


def _base() -> str:
    return str(st.context.url or "").split("?")[0]
