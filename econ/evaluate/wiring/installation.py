"""Installation of every alternative: tasks, first cost, dates, own hours and standing."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_lines import contracted_install_lines, self_install_lines, window_units_lines
from econ.evaluate.wiring.installation_price import Route
from econ.evaluate.wiring.installation_risk import doubts, mishap_own_h
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_tools import tool_resale_usd
from econ.evaluate.wiring.installation_warranty import warranty
from econ.evaluate.wiring.installation_work import (
    Site,
    allowed_parties,
    left_to_contractor,
    lock_reasons,
    locks,
    route_rows,
    site,
    work_weeks,
)
from econ.evaluate.wiring.measures import NO_WORK, RoomWork
from econ.evaluate.wiring.waiting import interim_lines
from econ.evaluate.wiring.window_unit import COUNTS, season_h_per_yr, spot, unit
from econ.installation.first_cost import Line, LineItems, line_items
from econ.installation.mishap import Doubt
from econ.installation.schedule import Schedule, schedule
from econ.installation.standing import (
    OPEN,
    RouteStanding,
    SiteAnswers,
    contracted_install_standing,
    self_install_standing,
)
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, TaskRows
from econ.installation.waiting import InterimNeed
from econ.installation.warranty import Warranty
from econ.installation.window_fit import window_units_standing
from econ.kernel.alternative import ALTERNATIVES, WINDOW, Alternative, Standing
from econ.kernel.arrays import BoolArray, FloatArray
from econ.tables.tasks import InstallationTables

_LINES: Final[Mapping[Alternative, Callable[[Route], list[Line]]]] = {
    Alternative.KEEP_AS_IS: lambda _: [],
    Alternative.WINDOW_UNITS: window_units_lines,
    Alternative.SELF_INSTALL: self_install_lines,
    Alternative.CONTRACTED_INSTALL: contracted_install_lines,
}

_STANDING: Final[Mapping[Alternative, Callable[[SiteAnswers], RouteStanding]]] = {
    Alternative.KEEP_AS_IS: lambda _: OPEN,
    Alternative.SELF_INSTALL: self_install_standing,
    Alternative.CONTRACTED_INSTALL: contracted_install_standing,
}


@dataclass(frozen=True, slots=True, eq=False)
class Installation:
    """What putting in one alternative takes.

    Attributes
    ----------
    tasks : TaskRows
        Who does what, for how long.
    line_items : LineItems
        First cost, line by line.
    schedule : Schedule
        Dates from the decision.
    own_hours_h : ndarray, shape (B,)
        The user's own hours until it is done, with those that mishaps are expected to take. [hour]
    upkeep_own_h_per_yr : ndarray, shape (B,)
        Own hours every year: window units taken out and put back, those there now too. [hour/year]
    standing : Standing
        Open, with help, not allowed or unknown, for the likely row.
    reasons : tuple of str
        Why, in plain words.
    is_allowed : ndarray, shape (B, T, P)
        Which party may do each task.
    task_locks : tuple of tuple of str, length T
        What keeps each task from the user, likely row; empty where nothing does.
    tool_resale_usd : ndarray, shape (B,)
        What tools bought for the work fetch when it is done. [USD]
    warranty : Warranty
        What is covered, and what would void it.
    doubts : tuple of Doubt
        What can go wrong in the work, kind by kind.
    """

    tasks: TaskRows
    line_items: LineItems
    schedule: Schedule
    own_hours_h: FloatArray
    upkeep_own_h_per_yr: FloatArray
    standing: Standing
    reasons: tuple[str, ...]
    is_allowed: BoolArray
    task_locks: tuple[tuple[str, ...], ...]
    tool_resale_usd: FloatArray
    warranty: Warranty
    doubts: tuple[Doubt, ...]


def installation(
    structure: Structure,
    values: Mapping[str, FloatArray],
    tables: InstallationTables,
    n_row: int,
    work: RoomWork = NO_WORK,
    need: InterimNeed | None = None,
) -> tuple[Installation, ...]:
    """Return the installation of every alternative, in the order of ALTERNATIVES.

    Parameters
    ----------
    structure : Structure
        Whether there is a quote, parties per task, tools owned.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : InstallationTables
        Task lists, tools, words of the cost table.
    n_row : int
        B.
    work : RoomWork
        Measures on the room: their lines and hours come on top of every way's; they wait for nothing and nothing waits
        for them.
    need : InterimNeed or None
        What the room lacks until service; None leaves interim cooling out.

    Returns
    -------
    installations : tuple of Installation
        One an alternative.
    """
    inputs = Inputs(values, n_row)
    at, weeks = site(structure, inputs), work_weeks(inputs)
    rows = {alternative: route_rows(tables.tasks[alternative], at) for alternative in ALTERNATIVES}
    answers = _site_answers(rows[Alternative.SELF_INSTALL], at)
    made = []
    for alternative in ALTERNATIVES:
        route = Route(at, rows[alternative], tables)
        at_position = ALTERNATIVES.index(alternative)
        standing = _window_standing(answers, route) if at_position == WINDOW else _STANDING[alternative](answers)
        seasons = season_h_per_yr(structure, inputs, at_position) if at_position in COUNTS else np.zeros(n_row)
        dates = schedule(route.rows, weeks)
        meanwhile = interim_lines(inputs, tables, need, dates.in_service_d)
        made.append(
            Installation(
                tasks=route.rows,
                line_items=line_items([*_LINES[alternative](route), *meanwhile, *work.lines], n_row),
                schedule=dates,
                own_hours_h=route.rows.own_h.sum(axis=1) + mishap_own_h(route) + work.own_h,
                upkeep_own_h_per_yr=seasons,
                standing=standing.standing,
                reasons=standing.reasons,
                is_allowed=allowed_parties(route.rows.table, at),
                task_locks=lock_reasons(route.rows.table, at),
                tool_resale_usd=tool_resale_usd(route) if alternative == Alternative.SELF_INSTALL else np.zeros(n_row),
                warranty=warranty(route),
                doubts=doubts(route),
            )
        )
    return tuple(made)


def route_standings(
    structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables
) -> tuple[tuple[RouteStanding, float], ...]:
    """Return how every way stands in the likely row, and the electrician's hours in it, in the order of ALTERNATIVES.

    Parameters
    ----------
    structure : Structure
        Parties per task, tools owned.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : InstallationTables
        Task lists.
    """
    at = site(structure, Inputs(values, 1))
    rows = {alternative: route_rows(tables.tasks[alternative], at) for alternative in ALTERNATIVES}
    answers = _site_answers(rows[Alternative.SELF_INSTALL], at)
    window = _window_standing(answers, Route(at, rows[Alternative.WINDOW_UNITS], tables))
    stands = [window if way == Alternative.WINDOW_UNITS else _STANDING[way](answers) for way in ALTERNATIVES]
    return tuple(zip(stands, (_electrician_h(rows[way]) for way in ALTERNATIVES), strict=True))


def _electrician_h(rows: TaskRows) -> float:
    """Return an electrician's hours in the likely row. [hour]"""
    return float(rows.hours_h[0][rows.is_active[0] & (rows.party[0] == ELECTRICIAN_PARTY)].sum())


def _window_standing(answers: SiteAnswers, route: Route) -> RouteStanding:
    """Return how window units stand, among those there are to buy."""
    at = route.site
    heats = at.structure.technologies[WINDOW] == "reverse_cycle_window"
    sold = route.tables.units["reverse_cycle" if heats else "cooling_only"]
    return window_units_standing(answers, unit(at.inputs), spot(at.inputs, at.facts), sold)


def _site_answers(rows: TaskRows, at: Site) -> SiteAnswers:
    is_licensed = rows.is_active & np.isin(rows.party, (ELECTRICIAN_PARTY, CONTRACTOR_PARTY)) & (rows.hours_h > 0.0)
    licensed = tuple(label for label, is_so in zip(rows.table.label, is_licensed[0], strict=True) if is_so)
    option = at.inputs.option
    return SiteAnswers(
        occupancy=option("site.occupancy"),
        permit=option("site.permit"),
        association=option("site.association"),
        owner_may_mechanical=option("site.owner_may_mechanical"),
        hole=option("site.hole"),
        locks=locks(rows.table, rows, at),
        licensed_tasks=licensed,
        contractor_finishes=option("work.contractor_finishes"),
        contractor_tasks=left_to_contractor(rows, at),
    )
