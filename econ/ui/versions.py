"""The versions of the open case: what each changed, and the way back to it."""

from datetime import date
from html import escape
from itertools import pairwise
from typing import Final

import streamlit as st

from econ.case.changes import changes
from econ.kernel.errors import EconError
from econ.report.words.changes import changes_sentence
from econ.store import cases
from econ.store.cases import Revision, SavedCase
from econ.store.connection import store_path
from econ.ui import shelf, state

_MOST: Final = 20
"""Versions listed, newest first."""


def draw() -> None:
    """List the versions of the open case, newest first."""
    stands: SavedCase | None = st.session_state[state.SAVED]
    if stands is None or state.is_lent():
        st.html('<p class="statement">Nothing is saved of this case yet: its first change saves it.</p>')
        return
    found = cases.revisions(store_path(), stands.case_id)
    shown = found[-_MOST - 1 :]
    words = f"{len(found)} kept; the newest {_MOST} are listed." if len(found) > _MOST else f"{len(found)} kept."
    st.html(f'<p class="statement">{words}</p>')
    told = [(after, _changed(before, after)) for before, after in pairwise(shown)]
    told = [(shown[0], "The first version."), *told] if len(found) <= _MOST else told
    for version, sentence in reversed(told):
        _line(version, sentence, is_open=version.number == stands.head)


def _changed(before: Revision, after: Revision) -> str:
    try:
        (_, old), (_, new) = (shelf.read_text(version.text) for version in (before, after))
        return changes_sentence(changes(old, new))
    except EconError:
        return "Written by an older program; what changed cannot be told."


def _line(version: Revision, sentence: str, *, is_open: bool) -> None:
    with st.container(horizontal=True, vertical_alignment="center", key=f"version_{version.number}"):
        when = shelf.saved_words(version.saved_at, date.today())
        st.html(f'{escape(sentence)} <span class="when version">{when}</span>', width="stretch")
        words = "Open now" if is_open else "Come back to this"
        st.button(
            words,
            key=f"revert_{version.number}",
            disabled=is_open,
            on_click=state.move,
            args=(_back_to(version.number),),
        )


def _back_to(number: int) -> shelf.Move:
    return lambda stands: shelf.reverted(stands, number)
