"""Dates and tasks: the calendar of all ways, and the work of one task by task."""

import numpy as np

from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import PARTIES, Party
from econ.report.document.block import Block, Grid, Heading, Picture, Sentence, Setting
from econ.report.document.content.basis import Basis
from econ.report.document.drawing.lanes import calendar_lanes
from econ.report.style import NAMES
from econ.tables.tasks import installation_tables

WHO = {Party.SELF: "you", Party.HELPER: "helper", Party.ELECTRICIAN: "electrician", Party.CONTRACTOR: "contractor"}


def dates_blocks(basis: Basis) -> list[Block]:
    """Return the calendar of all ways, and the tasks of the way that is told."""
    way = basis.work_way
    return [
        Heading("Dates"),
        Picture(soonest(basis), calendar_lanes(basis.result, basis.look)),
        Sentence("A step with a stop begins only when what it names is true. A named person signs for it."),
        tasks_grid(basis, way),
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


def tasks_grid(basis: Basis, way: AlternativeResult) -> Grid:
    """Return a way's tasks in the order of the work: who, when, and what must be true before each begins."""
    plan, stops = way.schedule, holds(way)
    rows = tuple(
        (
            plan.label[task],
            WHO[PARTIES[int(plan.party[0, task])]],
            basis.look.day(float(plan.start_d[0, task])),
            basis.look.day(float(plan.finish_d[0, task])),
            stops.get(plan.task[task], ""),
        )
        for task in tasks_of(way)
    )
    titles = ("Task", "Who", "Begins", "Done", "Stop before it")
    return Grid(titles, rows, (0.3, 0.09, 0.13, 0.13, 0.35), setting=Setting.TINY, caption=NAMES[way.name])


def holds(way: AlternativeResult) -> dict[str, str]:
    """Return what must be true before each task of a way begins; tasks without a stop are left out."""
    table = installation_tables().tasks[way.name]
    return {task: stop for task, stop in zip(table.key, table.hold_point, strict=True) if stop}


def tasks_of(way: AlternativeResult) -> list[int]:
    """Return the places of a way's tasks in the order of the work."""
    plan = way.schedule
    return sorted(map(int, np.flatnonzero(plan.is_active[0])), key=lambda task: (float(plan.start_d[0, task]), task))
