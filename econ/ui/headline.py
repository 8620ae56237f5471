"""A headline figure opened: what it is, how it is worked out, how far it may be off, and which inputs move it most."""

from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.figures import FIGURES, Figure, figure, formula_of, inputs_behind
from econ.kernel.alternative import ALTERNATIVES, SELF, Alternative
from econ.report.numbers import plural
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.tables import WHOSE
from econ.report.words.figure import formula_text, range_text, source_text, value_text
from econ.ui import cached, entry, look, now, sheet_table, state
from econ.uncertainty.answer import Answer
from econ.uncertainty.opened import Mover, Opened

MOST_MOVERS: Final = 12
"""Inputs told before the rest is counted."""

_KEY: Final = "w_headline_figure"
_WAY: Final = "w_headline_way"


def draw(answer: Answer) -> None:
    """Ask which figure of which way to open, and open it; one that a link names is open at once."""
    _take_from_address()
    keys = [found.key for found in FIGURES]
    st.session_state.setdefault(_KEY, keys[0])
    st.session_state.setdefault(_WAY, ALTERNATIVES[SELF])
    with st.container(horizontal=True, vertical_alignment="bottom"):
        key = st.selectbox("Figure", keys, format_func=lambda each: figure(each).label, key=_KEY)
        way = st.segmented_control(
            "Of which way?", list(ALTERNATIVES), format_func=NAMES.__getitem__, key=_WAY, required=True
        )
    at = ALTERNATIVES.index(Alternative(way or ALTERNATIVES[SELF]))
    opened = cached.opened(answer)
    found = figure(str(key))
    st.html(_told(answer, found, at, opened))
    _movers(answer, found, at, opened)


def _take_from_address() -> None:
    """Open the figure that the address names, once."""
    key, way = st.query_params.pop("open", ""), st.query_params.pop("way", "")
    if key in {found.key for found in FIGURES}:
        st.session_state[_KEY] = key
    if way in {name.value for name in ALTERNATIVES}:
        st.session_state[_WAY] = Alternative(way)


def _told(answer: Answer, found: Figure, way: int, opened: Opened) -> str:
    """Return value, range, formula and source of a figure as HTML."""
    reader = now.look()
    of_way = f", {NAMES[ALTERNATIVES[way]].lower()}" if found.is_of_a_way else ""
    span = range_text(found, opened.ends[found.key][way if found.is_of_a_way else 0], reader)
    between = f"Nine tries of ten: {span}." if span else "No input with a range moves it."
    rows = (
        ("How", formula_text(found.key)),
        ("In the program", formula_of(found.key).name),
        ("Follows", source_text(found.key)),
    )
    listed = "".join(f"<dt>{head}</dt><dd>{escape(text)}</dd>" for head, text in rows)
    value = escape(value_text(found, found.at(answer.result, way), reader))
    return (
        f'<section class="headline"><h3>{escape(found.label)}{escape(of_way)}: {value}</h3>'
        f"<p>{escape(between)}</p><dl>{listed}</dl></section>"
    )


def _movers(answer: Answer, found: Figure, way: int, opened: Opened) -> None:
    """Draw the inputs that move a figure most, and say how many more stand behind it."""
    movers = opened.movers(found.key, way)
    behind = len(inputs_behind(found.key, answer.sheet))
    if movers:
        look.table(_table(answer, found, movers[:MOST_MOVERS]))
    rest = len(movers) - MOST_MOVERS
    more = f"{rest} more {plural('input', rest)} with a range move it less. " if rest > 0 else ""
    look.said(
        f"{more}{behind} inputs stand behind it in all, choices and those without a range among them; the table of "
        "every input further down has each with its source.",
        kind="plain",
    )


def _table(answer: Answer, found: Figure, movers: tuple[Mover, ...]) -> Columns:
    """Return inputs with their range, whose they are and from where, and what the figure is at either end."""
    words, sheet, reader = cached.labels(answer), answer.sheet, now.look()
    places = [sheet.place[mover.path] for mover in movers]
    shown = [sheet_table.shown_of(sheet.path[at], sheet.unit[at], is_si=state.is_si()) for at in places]
    spreads = [sheet.entry(mover.path).spread for mover in movers]
    told = list(zip(spreads, shown, strict=True))
    return {
        "Input": [words[mover.path] for mover in movers],
        "Likely": [entry.usual_text(each.low, each.likely, each.high, unit) for each, unit in told],
        "Low to high": [entry.span_text(each.low, each.high, unit) for each, unit in told],
        f"{found.label} at its low": [value_text(found, mover.at_low, reader) for mover in movers],
        "At its high": [value_text(found, mover.at_high, reader) for mover in movers],
        "Whose": [WHOSE[sheet.state[at]] for at in places],
        "Source": [sheet.source[at] for at in places],
    }
