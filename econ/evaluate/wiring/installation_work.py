"""Who does which task, for how long and when, for each row."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_site import Inputs, gate_facts, quantities, waits
from econ.evaluate.wiring.skill import own_hours_frac
from econ.evaluate.wiring.window_unit import all_facts, wall_quantities
from econ.installation.calendar import WorkWeek, work_week
from econ.installation.gate import BARS, GateFacts, allowed, assigned_party, barred_by, is_on_kit, without_refused
from econ.installation.task import (
    CONTRACTOR_PARTY,
    ELECTRICIAN_PARTY,
    HELPER_PARTY,
    PARTY_CODE,
    SELF_PARTY,
    HoursSource,
    TaskRows,
    TaskTable,
    Work,
    task_rows,
)
from econ.kernel.alternative import PARTIES, Alternative
from econ.kernel.arrays import BoolArray, FloatArray, IntArray

TRADE_DAY_H: Final = 8.0
"""h; the trades work Monday to Friday, eight hours. Assumption."""

_WEEKDAYS: Final = (True, True, True, True, True, False, False)
_WEEKENDS: Final = tuple(not is_weekday for is_weekday in _WEEKDAYS)


@dataclass(frozen=True, slots=True, eq=False)
class Site:
    """One case read once: inputs, facts, quantities, waits and gates."""

    structure: Structure
    inputs: Inputs
    facts: dict[str, BoolArray]
    quantities: dict[str, FloatArray]
    waits: dict[str, FloatArray]
    gates: GateFacts


def site(structure: Structure, inputs: Inputs) -> Site:
    """Return the case as read for all routes."""
    facts = all_facts(structure, inputs)
    amounts = quantities(inputs) | wall_quantities(facts)
    return Site(structure, inputs, facts, amounts, waits(structure, inputs), gate_facts(inputs))


def route_rows(table: TaskTable, at: Site) -> TaskRows:
    """Return the tasks of a route with the parties that do them.

    Parameters
    ----------
    table : TaskTable
        The list.
    at : Site
        The case.

    Returns
    -------
    rows : TaskRows
        The bookings of electrician and contractor are needed exactly where one of their tasks is.
    """
    shape = (at.inputs.n_row, len(table))
    wanted = np.broadcast_to(_wanted_party(table, at.structure), shape)
    party = assigned_party(allowed_parties(table, at), wanted)
    return given_rows(table, at, party, np.asarray(wanted))


def given_rows(table: TaskTable, at: Site, party: IntArray, wanted: IntArray) -> TaskRows:
    """Return the tasks of a route as done by given parties, allowed or not.

    Parameters
    ----------
    table : TaskTable
        The list.
    at : Site
        The case.
    party, wanted : ndarray, shape (B, T)
        Who does each task, and who was asked to. [dimensionless]

    Returns
    -------
    rows : TaskRows
        The bookings of electrician and contractor are needed exactly where one of their tasks is.
    """
    shares = at.inputs.is_option("work.helper", "free", "paid")
    work = Work(_is_active(table, at, party), _hours_by_party(table, at), _wait_d(table, at), shares)
    return task_rows(table, work, party, wanted)


def _wanted_party(table: TaskTable, structure: Structure) -> IntArray:
    wanted = table.default_party.copy()
    if table.alternative == Alternative.SELF_INSTALL:
        for task, party in structure.parties:
            wanted[table.position(task)] = PARTY_CODE[party]
    return wanted


def _is_active(table: TaskTable, at: Site, party: IntArray) -> BoolArray:
    booked = {"electrician_used": ELECTRICIAN_PARTY, "contractor_used": CONTRACTOR_PARTY}
    no_row = np.zeros(at.inputs.n_row, dtype=np.bool_)
    by_task = [at.facts.get(condition, no_row) for condition in table.condition]
    active = np.stack(by_task, axis=1) if by_task else np.zeros((at.inputs.n_row, 0), dtype=np.bool_)
    for task, condition in enumerate(table.condition):
        if condition in booked:
            active[:, task] = (active & (party == booked[condition])).any(axis=1)
    return active


def _hours_by_party(table: TaskTable, at: Site) -> FloatArray:
    hours = np.zeros((at.inputs.n_row, len(table), len(PARTIES)))
    for task, sources in enumerate(table.hours):
        for party, source in enumerate(sources):
            hours[:, task, party] = _source_h(source, at.inputs) * at.quantities[table.per[task]]
    is_handyman = at.inputs.is_option("work.helper", "handyman")
    hours[:, :, HELPER_PARTY] *= np.where(is_handyman, at.inputs.number("work.handyman_pace_frac"), 1.0)[:, None]
    if table.alternative == Alternative.SELF_INSTALL:
        hours[:, :, SELF_PARTY] *= own_hours_frac(table, at.inputs, at.facts)
    return hours


def figure_path(key: str) -> str:
    """Return where the hours of a key stand among the values: in the cost table, or at the path itself.

    Examples
    --------
    >>> figure_path("survey_self_h"), figure_path("work.dry_fit_self_h")
    ('costs.survey_self_h', 'work.dry_fit_self_h')
    """
    return key if "." in key else f"costs.{key}"


def _source_h(source: HoursSource, inputs: Inputs) -> FloatArray:
    hours = np.zeros(inputs.n_row)
    for option, key, thickness_m in zip(source.option, source.key, source.thickness_m, strict=True):
        if not key:
            continue
        figure = inputs.number(figure_path(key))
        if not np.isnan(thickness_m):
            figure = figure * inputs.number("site.wall_thickness_m") / thickness_m
        hours = np.where(_is_chosen(source.choice, option, inputs), figure, hours)
    return hours


def _is_chosen(choice: str, option: str, inputs: Inputs) -> BoolArray:
    """Return where an option is taken; what is not known counts as a block wall, the middle kind, and fished wiring."""
    if not choice:
        return np.ones(inputs.n_row, dtype=np.bool_)
    taken = {"site.wall": "block", "site.wiring": "fished"}
    stands_for = (option, NOT_KNOWN) if taken[choice] == option else (option,)
    return inputs.is_option(choice, *stands_for)


def _wait_d(table: TaskTable, at: Site) -> FloatArray:
    wait = np.zeros((at.inputs.n_row, len(table)))
    for task, path in enumerate(table.wait):
        wait[:, task] = at.waits[path] if path in at.waits else at.inputs.number(path)
    return wait


def work_weeks(inputs: Inputs) -> tuple[WorkWeek, ...]:
    """Return the work days of each party from the decision date.

    Parameters
    ----------
    inputs : Inputs
        The case: own work days, hours a day and the weekday of the decision.

    Returns
    -------
    weeks : tuple of WorkWeek, length P
        The helper comes when the user works; handyman, electrician and contractor work Monday to Friday.
    """
    weekday = inputs.number("place.decision_weekday").astype(np.int64)
    on_weekends = inputs.is_option("work.days", "weekends", NOT_KNOWN)[:, None]
    on_evenings = inputs.is_option("work.days", "evenings")[:, None]
    own_days = np.where(on_weekends, np.array(_WEEKENDS), np.where(on_evenings, np.array(_WEEKDAYS), True))
    own = work_week(weekday, own_days, inputs.number("work.hours_per_day_h"))
    trade_days = np.broadcast_to(np.array(_WEEKDAYS), own_days.shape)
    trade = work_week(weekday, trade_days, np.full(inputs.n_row, TRADE_DAY_H))
    is_handyman = inputs.is_option("work.helper", "handyman")
    helper_days = np.where(is_handyman[:, None], trade_days, own_days)
    helper_h = np.where(is_handyman, TRADE_DAY_H, inputs.number("work.hours_per_day_h"))
    return own, work_week(weekday, helper_days, helper_h), trade, trade


def allowed_parties(table: TaskTable, at: Site) -> BoolArray:
    """Return which party may do each task, and takes it on, shape (B, T, P)."""
    may = allowed(table, at.gates)
    if table.alternative != Alternative.SELF_INSTALL:
        return may
    return without_refused(may, table, at.inputs.is_option("work.contractor_finishes", "no"))


def left_to_contractor(rows: TaskRows, at: Site) -> tuple[str, ...]:
    """Return the needed tasks on the kit that only a contractor may do here, in plain words, likely row."""
    may = allowed(rows.table, at.gates)[0]
    may[:, CONTRACTOR_PARTY] = False
    is_left = rows.is_active[0] & (rows.hours_h[0] > 0.0) & is_on_kit(rows.table) & ~may.any(axis=1)
    return tuple(label for label, is_so in zip(rows.table.label, is_left, strict=True) if is_so)


def lock_reasons(table: TaskTable, at: Site) -> tuple[tuple[str, ...], ...]:
    """Return, for the likely row, what keeps each task from the user.

    Parameters
    ----------
    table : TaskTable
        The list.
    at : Site
        The case.

    Returns
    -------
    reasons : tuple of tuple of str, length T
        In plain words; empty where the user may do it or nobody would ask.
    """
    barred = barred_by(table, at.gates)
    return tuple(
        tuple(BARS[code][0] for code, is_barred in barred.items() if is_barred[0, task]) for task in range(len(table))
    )


def locks(table: TaskTable, rows: TaskRows, at: Site) -> tuple[str, ...]:
    """Return, for the likely row, why tasks wanted for the user went to somebody else.

    Parameters
    ----------
    table : TaskTable
        The list.
    rows : TaskRows
        What became of it.
    at : Site
        The case.

    Returns
    -------
    reasons : tuple of str
        In plain words, each once.
    """
    barred = barred_by(table, at.gates)
    wanted_self = rows.is_moved[0]
    return tuple(BARS[code][0] for code, is_barred in barred.items() if (is_barred[0] & wanted_self).any())
