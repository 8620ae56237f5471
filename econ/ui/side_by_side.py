"""Two saved cases side by side: their answers, and what was answered differently."""

from datetime import date
from typing import Final

import streamlit as st

from econ.case.changes import changes
from econ.case.schema import Case
from econ.kernel.errors import EconError
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.words.changes import LONGEST, label
from econ.report.words.verdict import answer_text
from econ.store import cases
from econ.store.connection import store_path
from econ.ui import cached, identity, look, now, shelf, state
from econ.ui.ways import ways

_KEY: Final = "w_beside"
_ROWS: Final = ("cash now", "a year, all in", "your hours", "first cool day", "cheapest")
_NONE: Final = 0
_MOST: Final = 40
"""Differing answers listed."""


def draw() -> None:
    """Ask for a second case and show it beside the open one."""
    open_now = st.session_state[state.SAVED]
    lines = cases.listed(store_path(), identity.owner())
    others = {line.case_id: line.name for line in lines if open_now is None or line.case_id != open_now.case_id}
    if not others or not state.is_placed():
        st.html('<p class="statement">With a second case on the list, the two can be read side by side here.</p>')
        return
    words = {_NONE: "Choose a case", **{case_id: look.literal(name) for case_id, name in others.items()}}
    chosen = st.selectbox("Beside the open case", list(words), format_func=words.__getitem__, key=_KEY)
    if chosen:
        _shown(chosen, others[chosen])


def _shown(case_id: int, name: str) -> None:
    try:
        _, other = shelf.as_it_stands(case_id)
        columns = _answers(other, name)
    except EconError as error:
        st.warning(look.literal(str(error)))
        return
    look.table(columns)
    differing = changes(state.current_case(), other)
    here: Columns = {"Answer": [label(change.path) for change in differing[:_MOST]]}
    here["In the open case"] = [_cut(change.before) for change in differing[:_MOST]]
    here[f"In “{_cut(name)}”"] = [_cut(change.after) for change in differing[:_MOST]]
    count = f"{len(differing)} answers differ" + (f"; the first {_MOST} are listed." if len(differing) > _MOST else ".")
    st.html(f'<p class="statement">{count}</p>')
    look.table(here)


def _answers(other: Case, name: str) -> Columns:
    found = [cached.answer(case, date.today(), cached.FIRST_DRAWS) for case in (state.current_case(), other)]
    rows = [f"{NAMES[way.name]}: {what}" for way in ways(found[0], now.look()) for what in _ROWS]
    columns: Columns = {"": ["In short", *rows]}
    for answer, title in zip(found, ("The open case", _cut(name)), strict=True):
        told = [answer_text(answer)]
        for way in ways(answer, now.look()):
            told += [way.cash, way.a_year, way.hours, way.cool_day, way.chance]
        columns[title] = told
    return columns


def _cut(text: str) -> str:
    return text if len(text) <= LONGEST else f"{text[: LONGEST - 1]}…"
