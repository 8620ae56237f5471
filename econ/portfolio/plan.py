"""A file of rooms and a case, from reading to a plan by year."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

import numpy as np

from econ.case.rooms_file import RoomTable, read_rooms
from econ.case.schema import Case
from econ.kernel.errors import CaseError, Fault
from econ.portfolio.choice import choice
from econ.portfolio.fit import fitting
from econ.portfolio.offer import Places, limits_of, options_of, places
from econ.portfolio.options import Limits, Options
from econ.portfolio.outcome import Outcomes, Progress, outcomes
from econ.portfolio.picks import Picks
from econ.portfolio.values import BuildingRows, group_count, sized_rows, unsized_rows
from econ.tables.loaders import Tables


@dataclass(frozen=True, slots=True, eq=False)
class Evaluated:
    """Every room of a file, evaluated.

    Attributes
    ----------
    table : RoomTable
        Rows as read, and those refused.
    rows : BuildingRows
        As numbers.
    found : Outcomes
        As evaluated.
    options : Options
        What may be chosen.
    where : Places
        Flats and buildings.
    groups : int
        Groups of rows that share formulas. [dimensionless]
    """

    table: RoomTable
    rows: BuildingRows
    found: Outcomes
    options: Options
    where: Places
    groups: int


@dataclass(frozen=True, slots=True, eq=False)
class Plan:
    """What is done where and when.

    Attributes
    ----------
    rooms : Evaluated
        The rooms.
    limits : Limits
        What may be spent.
    picks : Picks
        The choice.
    gap_frac : float
        What a better choice could be worth more at most, as a part of what this one is worth. [dimensionless]
    """

    rooms: Evaluated
    limits: Limits
    picks: Picks
    gap_frac: float = 0.0


def types_of(case: Case) -> tuple[str, ...]:
    """Return the names of the room types of a case."""
    return tuple(room.name for room in case.rooms if room.name)


def evaluated(
    content: bytes | str, case: Case, tables: Tables, today: date, progress: Progress | None = None
) -> Evaluated:
    """Return every room of a file, evaluated.

    Parameters
    ----------
    content : bytes or str
        The rooms file.
    case : Case
        Room types, place, prices, budgets.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.
    progress : callable, optional
        Told after each few thousand rooms; an error it raises stops the work.

    Raises
    ------
    CaseError
        If no row of the file can be taken; its faults are those of the rows.
    """
    table = read_rooms(content, types_of(case))
    if not table.n_room:
        raise CaseError(_why_none(table))
    bare = unsized_rows(table, case, tables, today)
    if (fits := fitting(table, bare, tables)) is not table:
        table = fits
        if not table.n_room:
            raise CaseError(_why_none(table))
        bare = unsized_rows(table, case, tables, today)
    rows = sized_rows(bare, tables)
    found = outcomes(rows, tables, progress)
    return Evaluated(table, rows, found, options_of(table, case, tables, rows, found), places(table), group_count(rows))


def _why_none(table: RoomTable) -> Sequence[Fault]:
    faults = table.faults or tuple(fault for row in table.refused for fault in row.faults)
    return faults[:MOST_FAULTS] or (Fault("rooms", "has no room in it", "headings alone", "Write one row a room."),)


MOST_FAULTS = 20
"""Faults told where no row can be taken."""


def with_options(rooms: Evaluated, case: Case, tables: Tables) -> Evaluated:
    """Return rooms evaluated before with what may be chosen by the building's figures as they are now.

    Parameters
    ----------
    rooms : Evaluated
        Rooms, evaluated.
    case : Case
        Whose savings count, what an hour is worth, whether flats are done at once.
    tables : Tables
        Usual figures.
    """
    return replace(rooms, options=options_of(rooms.table, case, tables, rooms.rows, rooms.found))


GEOMETRY = ("storey_m", "glass_small_m2", "glass_medium_m2", "glass_large_m2")
"""Figures of a building that change what a room needs or takes; the others change only what is chosen."""


def planned(rooms: Evaluated, case: Case, budget_usd: float | None = None) -> Plan:
    """Return the plan for the budgets of a case.

    Parameters
    ----------
    rooms : Evaluated
        The rooms.
    case : Case
        Budgets, hours and days.
    budget_usd : float, optional
        This year's budget in place of the case's. [USD]
    """
    limits = limits_of(rooms.table, case, budget_usd)
    found = choice(rooms.options, limits)
    return Plan(rooms, limits, found.picks, found.gap_frac)


def must_left(plan: Plan) -> np.ndarray:
    """Return the rooms that must be done and are not, by position."""
    return np.flatnonzero(plan.rooms.options.must & ~plan.picks.is_done)
