"""Numbers opened: lines, years, inputs with their ranges and sources, and a way to change any of them."""

from typing import Final

import streamlit as st

from econ.case.edit import asked_paths
from econ.kernel.alternative import ALTERNATIVES, SELF, Alternative
from econ.kernel.spread import Spread
from econ.report import tables
from econ.report.style import NAMES
from econ.report.words import money
from econ.ui import cached, entry, fields, look, now, sheet_table, state
from econ.ui.entry import Shown
from econ.uncertainty.answer import Answer

CHANGED: Final = "figures.changed"


def first_cost(answer: Answer) -> None:
    """Draw one way's first cost line by line, and its costs year by year."""
    st.session_state.setdefault("w_opened_way", ALTERNATIVES[SELF])
    way = st.segmented_control(
        "Which way?", list(ALTERNATIVES), format_func=lambda name: NAMES[name], key="w_opened_way", required=True
    )
    at = ALTERNATIVES.index(Alternative(way or ALTERNATIVES[SELF]))
    look.table(tables.first_cost(answer.result, at, answer.drawn, state.units()))
    st.subheader("Year by year")
    is_nominal = st.toggle("In the dollars of each year", key="w_nominal")
    rise = answer.sheet.entry("money.inflation_frac").likely if is_nominal else 0.0
    look.said(money.dollars_text(answer, is_nominal=is_nominal))
    if start := money.start_text(answer.result, ALTERNATIVES[at]):
        st.caption(start)
    look.table(tables.yearly(answer.result, at, rise))
    st.subheader("Room by room")
    look.table(tables.room_loads(answer, now.look()))


def inputs(answer: Answer) -> None:
    """Draw every figure in words, by topic, with its range, whose it is and its source."""
    with st.container(horizontal=True, vertical_alignment="bottom"):
        wanted = st.text_input("Look for", key="w_opened_input", placeholder="pad, electrician, seer2 …")
        topic = st.selectbox("Topic", (sheet_table.ALL, *sheet_table.topics(answer)), key="w_opened_topic")
    found = sheet_table.figures(answer, wanted, topic, is_si=state.is_si())
    if not found["What"]:
        look.said(f"Nothing here is called “{wanted}”. Try fewer letters, or all topics.", kind="plain")
        return
    st.dataframe(found, hide_index=True, key="t_inputs", column_config={"What": st.column_config.Column(pinned=True)})


def change(answer: Answer) -> None:
    """Ask for a figure that no form asks for, and its new value in the unit on screen."""
    asked = {path for path, _ in asked_paths(state.current_case())}
    words = cached.labels(answer)
    paths = sorted((path for path in answer.sheet.path if path not in asked), key=words.__getitem__)
    path = st.selectbox(
        "Figure",
        paths,
        index=None,
        key="w_changed_path",
        format_func=words.__getitem__,
        placeholder="Type a few letters of its name",
    )
    if path is None:
        return
    line = answer.sheet.entry(path)
    shown = sheet_table.shown_of(path, line.unit, is_si=state.is_si())
    low, likely, high = (sheet_table.value_text(path, number, shown) for number in _three(line.spread))
    look.said(f"Now {low} to {high}, likely {likely} {sheet_table.unit_word(shown)}. {line.spread.source}")
    st.caption(f"In a case file: {path}")
    st.text_input("New value", key="w_changed_value", on_change=_set, args=(path, shown))
    st.button("Back to the usual value", on_click=state.take_back, args=(f"{CHANGED}.{path}",))
    if found := state.refused(f"{CHANGED}.{path}"):
        st.html(fields.refused_html(found, shown))


def _three(spread: Spread) -> tuple[float, float, float]:
    return spread.low, spread.likely, spread.high


def _set(path: str, shown: Shown) -> None:
    typed = str(st.session_state["w_changed_value"]).strip()
    if not typed:
        return
    read = entry.read_entry(typed, shown)
    state.give(f"{CHANGED}.{path}", entry.in_case_unit(read, shown), typed)
