"""The budget on screen: what each amount gives, what the next thousand buys, and what a list by payback would do."""

import hashlib
from dataclasses import fields, replace
from datetime import date
from functools import partial
from typing import Any, Final

import numpy as np
import streamlit as st

from econ.case.schema import Case
from econ.portfolio.frontier import Frontier, More, Ranking, frontier, more, ranking
from econ.portfolio.offer import limits_of
from econ.portfolio.plan import Evaluated, Plan
from econ.portfolio.plan import planned as plan_of
from econ.report.document.content.building import building_document
from econ.report.document.file import Kind, written
from econ.report.numbers import money
from econ.report.pictures import frontier as frontier_picture
from econ.report.pictures import plan_years
from econ.report.rooms import Told, years_table
from econ.report.style import PLOT_CONFIG
from econ.report.words import budget as words
from econ.ui import look, now, state

PATH: Final = "building.budget_usd"
SOON: Final = 400
"""Rooms up to which all budgets are worked out without being asked for."""

_ASKED: Final = "budgets_asked"
_SAVE: Final = {Kind.PDF: "Print the plan (PDF)", Kind.HTML: "Save the plan as a web page"}


def planned(rooms: Evaluated, case: Case) -> Plan:
    """Return the plan for the budgets of a case; one worked out before is kept."""
    found = _planned(_digest(rooms.options, limits_of(rooms.table, case)), rooms, case)
    return replace(found, rooms=rooms)


@st.cache_resource(max_entries=16, show_spinner=False)
def _planned(key: str, _rooms: Evaluated, _case: Case) -> Plan:
    assert key
    return plan_of(_rooms, _case)


def _digest(*parts: Any) -> str:
    """Return a key of what goes into a choice: every array and figure by value."""
    found = hashlib.sha256()
    for part in parts:
        given = [getattr(part, field.name) for field in fields(part)] if hasattr(part, "__slots__") else [part]
        for each in given:
            found.update(each.tobytes() if isinstance(each, np.ndarray) else repr(each).encode())
    return found.hexdigest()


def draw(told: Told) -> None:
    """Show what each budget of the coming year gives; a slider reads what was worked out and tries one."""
    plan, key = told.plan, _digest(told.options, told.plan.limits)
    st.subheader("What another budget would give")
    if told.options.n_room > SOON and st.session_state.get(_ASKED) != key:
        st.button("Work out other budgets", key="budgets_work_out", on_click=_ask, args=(key,))
        return
    found, bought, listed = _found(key, plan)
    at = _tried(found, plan, key)
    look.said(words.budget_sentence(found, at, told.options.n_room), kind="statement")
    look.said(frontier_picture.statement(found), kind="statement")
    _chart(
        "c_frontier",
        frontier_picture.figure(found, at, now.look()),
        words.budget_sentence(found, at, told.options.n_room),
    )
    with st.expander("Show as a table"):
        look.table(frontier_picture.table(found))
    sentences = [words.next_sentence(bought, plan)] if bought is not None else []
    look.points([*sentences, *words.ranking_sentences(listed, told.totals.worth_usd, told.options)])


def _ask(key: str) -> None:
    st.session_state[_ASKED] = key


def _tried(found: Frontier, plan: Plan, key: str) -> int:
    """Return the position of the budget under the slider, and offer to plan with it."""
    own = found.at(float(plan.limits.budget_usd[0]))
    if len(found.budget_usd) == 1:
        return own
    slider = f"w_try_budget_{key[:12]}"
    at = int(
        st.select_slider(
            "Try a budget for this year", range(len(found.budget_usd)), own, key=slider,
            format_func=lambda place: money(float(found.budget_usd[place])),
        )
    )  # fmt: skip
    if at != own:
        usd = float(found.budget_usd[at])
        st.button(f"Plan with {money(usd)}".replace("$", "\\$"), key="plan_with", on_click=state.give, args=(PATH, usd))
    return at


@st.cache_resource(max_entries=8, show_spinner="Working out budgets")
def _found(key: str, _plan: Plan) -> tuple[Frontier, More | None, Ranking]:
    assert key
    options, limits, picks = _plan.rooms.options, _plan.limits, _plan.picks
    has_limit = np.isfinite(limits.budget_usd[0])
    bought = more(options, limits, picks) if has_limit else None
    return frontier(options, limits, picks), bought, ranking(options, limits, picks)


def prints(told: Told, case: Case) -> None:
    """Offer the plan as a document to print."""
    with st.container(horizontal=True):
        for kind, label in _SAVE.items():
            st.download_button(
                label,
                partial(_printed, told, case, kind),
                file_name=f"rooms_plan.{kind.value}",
                key=f"rooms_{kind.value}",
            )


def _printed(told: Told, case: Case, kind: Kind) -> bytes:
    few = told.options.n_room <= SOON or st.session_state.get(_ASKED) == _digest(told.options, told.plan.limits)
    other = _found(_digest(told.options, told.plan.limits), told.plan) if few else None
    return written(building_document(told, case, date.today(), other), kind)


def years(told: Told) -> None:
    """Show the plan year by year, as columns and as a table."""
    st.subheader("Year by year")
    sentence = plan_years.statement(told.plan)
    look.said(sentence, kind="statement")
    if told.plan.picks.is_done.any():
        _chart("c_plan_years", plan_years.figure(told.plan, told.base_year, now.look()), sentence)
        look.said(plan_years.legend(), kind="small")
    look.table(years_table(told))


def _chart(key: str, figure: Any, alt: str) -> None:
    figure.update_layout(font_family=look.FONT)
    st.plotly_chart(figure, theme=None, config=PLOT_CONFIG, key=key, alt=alt)
