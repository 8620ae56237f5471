"""Numbers opened: lines, years, inputs with their ranges and sources, and a way to change any of them."""

from typing import Final

import streamlit as st

from econ.case.edit import asked_paths
from econ.kernel.alternative import ALTERNATIVES, SELF, Alternative
from econ.report import tables
from econ.report.style import NAMES
from econ.ui import look, now, state
from econ.uncertainty.answer import Answer

CHANGED: Final = "figures.changed"


def first_cost(answer: Answer) -> None:
    """Draw one way's first cost line by line, and its costs year by year."""
    st.session_state.setdefault("w_opened_way", ALTERNATIVES[SELF])
    way = st.segmented_control(
        "Which way?", list(ALTERNATIVES), format_func=lambda name: NAMES[name], key="w_opened_way", required=True
    )
    at = ALTERNATIVES.index(Alternative(way or ALTERNATIVES[SELF]))
    st.dataframe(tables.first_cost(answer.result.alternatives[at]), hide_index=True, key="t_lines")
    st.subheader("Year by year")
    look.said("In today's dollars, before discounting.")
    st.dataframe(tables.yearly(answer.result, at), hide_index=True, key="t_years")
    st.subheader("Room by room")
    st.dataframe(tables.room_loads(answer, now.look()), hide_index=True, key="t_rooms")


def inputs(answer: Answer) -> None:
    """Draw every input with low, likely, high, whose it is and its source."""
    wanted = st.text_input("Look for", key="w_opened_input", placeholder="pad, electrician, seer2 …")
    st.dataframe(tables.inputs(answer, wanted), hide_index=True, key="t_inputs")


def change(answer: Answer) -> None:
    """Ask for a figure that no form asks for, and its new value."""
    asked = {path for path, _ in asked_paths(state.current_case())}
    paths = [path for path in answer.sheet.path if path not in asked]
    path = st.selectbox("Figure", paths, index=None, key="w_changed_path", placeholder="Type a few letters of its name")
    if path is None:
        return
    line = answer.sheet.entry(path)
    look.said(
        f"Now {line.spread.low:g} to {line.spread.high:g}, likely {line.likely:g} {line.unit}. {line.spread.source}"
    )
    st.text_input("New value", key="w_changed_value", on_change=_set, args=(path,))
    st.button("Back to the usual value", on_click=state.take_back, args=(f"{CHANGED}.{path}",))
    if found := state.refused(f"{CHANGED}.{path}"):
        st.error(str(found.fault))


def _set(path: str) -> None:
    typed = str(st.session_state["w_changed_value"]).strip()
    try:
        value: float | str = float(typed)
    except ValueError:
        value = typed
    if typed:
        state.give(f"{CHANGED}.{path}", value, typed)
