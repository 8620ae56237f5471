"""Dates and tasks: the calendar of all ways, and the work of one task by task."""

from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult
from econ.installation.plan import Step
from econ.kernel.alternative import Party
from econ.report.document.block import Block, Grid, Heading, Picture, Sentence, Setting
from econ.report.document.content.basis import Basis, short
from econ.report.document.content.signing import record_blocks, signatures
from econ.report.document.drawing.lanes import calendar_lanes
from econ.report.numbers import first_cost_money, tenths
from econ.report.style import NAMES
from econ.report.words import plan as words
from econ.report.words.waiting import register_text
from econ.tables.tasks import installation_tables

WHO = {Party.SELF: "you", Party.HELPER: "helper", Party.ELECTRICIAN: "electrician", Party.CONTRACTOR: "contractor"}

HOW: Final = (
    "A stop opens only when the person it names has signed. Steps behind an open stop are listed for planning alone."
)
MOST_TOLD: Final = 300
"""Letters of what is told of a step in the table; all that was typed stands whole at the end."""
_LEAST_USD: Final = 0.5


def dates_blocks(basis: Basis) -> list[Block]:
    """Return the calendar of all ways, and the tasks of the way that is told."""
    register = register_text(basis.result, basis.look)
    return [
        Heading("Dates"),
        Picture(soonest(basis), calendar_lanes(basis.result, basis.look)),
        Sentence(f"{words.next_text(basis.plan)} {HOW}"),
        tasks_grid(basis),
        *([Sentence(register)] if register else []),
        *record_blocks(basis),
    ]


def soonest(basis: Basis) -> str:
    """Return which way cools first, and when."""
    coming = [way for way in basis.result.alternatives if way.in_service_exists]
    if not coming:
        return "None of the ways brings anything new into service."
    first = min(coming, key=lambda way: float(way.in_service_d[0]))
    return f"Of the ways that bring something new, “{NAMES[first.name]}” cools first, on {_day(basis, first)}."


def _day(basis: Basis, way: AlternativeResult) -> str:
    return basis.look.day(float(way.in_service_d[0]))


def tasks_grid(basis: Basis) -> Grid:
    """Return the steps of the way that is told, with the stops before them; behind an open stop none is instructed."""
    rows = tuple(_row(basis, place, step) for place, step in enumerate(basis.plan.steps, 1))
    strong = frozenset(at for at, step in enumerate(basis.plan.steps) if step.open_stops)
    titles = ("Step", "Who", "Hours", "Cost", "When", "Must be true first; how far it is")
    shares = (0.29, 0.1, 0.06, 0.07, 0.17, 0.31)
    name = NAMES[basis.work_way.name]
    return Grid(titles, rows, shares, frozenset({2, 3}), strong, Setting.TINY, name)


def _row(basis: Basis, place: int, step: Step) -> tuple[str, ...]:
    is_behind = step.task in basis.plan.behind
    told = (_stops(basis, step), "" if is_behind else step.check, words.said_text(step, basis.look.this_year))
    return (
        f"{place}. {step.label}",
        WHO[step.party],
        "" if step.is_wait else tenths(step.hours_h),
        first_cost_money(step.cost_usd) if step.cost_usd >= _LEAST_USD else "",
        words.dates_text(step, basis.look),
        short(" ".join(part for part in told if part) or ("Behind a stop." if is_behind else ""), MOST_TOLD),
    )


def _stops(basis: Basis, step: Step) -> str:
    """Return who has to sign before a step begins, and who has."""
    given = [text for stop in step.stops for text in signatures(basis, stop)]
    return " ".join([words.open_text(step), *given]).strip()


def holds(way: AlternativeResult) -> dict[str, str]:
    """Return what must be true before each task of a way begins; tasks without a stop are left out."""
    table = installation_tables().tasks[way.name]
    return {task: stop for task, stop in zip(table.key, table.hold_point, strict=True) if stop}


def tasks_of(way: AlternativeResult) -> list[int]:
    """Return the places of a way's tasks in the order of the work."""
    plan = way.schedule
    return sorted(map(int, np.flatnonzero(plan.is_active[0])), key=lambda task: (float(plan.start_d[0, task]), task))
