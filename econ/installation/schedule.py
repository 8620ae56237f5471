"""Schedule: tasks and waits from the decision date to the first day of service."""

from dataclasses import dataclass

import numpy as np

from econ.installation.calendar import WorkWeek, work_finish_d, work_start_d
from econ.installation.task import HELPER_PARTY, TaskRows
from econ.kernel.alternative import PARTIES
from econ.kernel.arrays import BoolArray, FloatArray, IntArray

_SAME_D = 1e-9
"""Days within which two dates are one."""


@dataclass(frozen=True, slots=True, eq=False)
class Schedule:
    """When each task of one alternative is done.

    Attributes
    ----------
    task : tuple of str, length T
        Stable names, in an order in which each comes after what it needs.
    label : tuple of str, length T
        What is done, in plain words.
    party : ndarray, shape (B, T)
        Who does it: position in `econ.kernel.alternative.PARTIES`. [dimensionless]
    is_active : ndarray, shape (B, T)
        Whether the row needs the task; its dates are NaN where it does not.
    wait_start_d : ndarray, shape (B, T)
        When everything before it is done and its own wait begins, days from the decision. [day]
    wait_d : ndarray, shape (B, T)
        How long its own wait lasts; time in which its people are busy or off work is not in it. [day]
    start_d : ndarray, shape (B, T)
        When work on it begins. [day]
    finish_d : ndarray, shape (B, T)
        When it is done. [day]
    is_critical : ndarray, shape (B, T)
        Whether it is on the chain of tasks and waits that sets the first day of service.
    in_service_d : ndarray, shape (B,)
        When the room is served; NaN where the alternative brings nothing new into service. [day]
    """

    task: tuple[str, ...]
    label: tuple[str, ...]
    party: IntArray
    is_active: BoolArray
    wait_start_d: FloatArray
    wait_d: FloatArray
    start_d: FloatArray
    finish_d: FloatArray
    is_critical: BoolArray
    in_service_d: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class _Dates:
    """Dates of all tasks, those not needed passing on when they could have been done; who was free when."""

    ready_d: FloatArray
    free_d: FloatArray
    start_d: FloatArray
    finish_d: FloatArray


def schedule(rows: TaskRows, weeks: tuple[WorkWeek, ...]) -> Schedule:
    """Return the dates of every task from the decision date, and the first day of service.

    Parameters
    ----------
    rows : TaskRows
        Tasks with parties, working hours and waits.
    weeks : tuple of WorkWeek, length P
        Work days of each party, in the order of PARTIES.

    Returns
    -------
    schedule : Schedule
        Service begins when the last needed task that gates it is done.

    Notes
    -----
    Waits run in calendar days from when all that comes before is done. Work falls on its party's work days alone; each
    person does one task at a time, in the order of the list: a helper who lends a hand is busy for as long.
    """
    dates = _dates(rows, weeks)
    gates = rows.is_active & rows.table.gates_service
    last = np.max(np.where(gates, dates.finish_d, -np.inf), axis=1, initial=-np.inf)
    in_service = np.where(gates.any(axis=1), last, np.nan)
    is_last = gates & (np.abs(dates.finish_d - in_service[:, None]) <= _SAME_D)
    is_critical = _critical(rows, dates, is_last) & rows.is_active
    shown = [
        np.where(rows.is_active, day, np.nan) for day in (dates.ready_d, rows.wait_d, dates.start_d, dates.finish_d)
    ]
    return Schedule(
        rows.table.key,
        rows.table.label,
        rows.party,
        rows.is_active,
        shown[0],
        shown[1],
        shown[2],
        shown[3],
        is_critical,
        in_service,
    )


def _dates(rows: TaskRows, weeks: tuple[WorkWeek, ...]) -> _Dates:
    """Return the dates of all tasks; tasks come first inside, so that each is one stretch of memory."""
    n_row, n_task = rows.is_active.shape
    row, free_now, people = np.arange(n_row), np.zeros((len(PARTIES), n_row)), busy_people(rows)
    ready, free, start, finish = (np.zeros((n_task, n_row)) for _ in range(4))
    pattern, hours = np.stack([week.pattern for week in weeks]), np.stack([week.hours_per_day_h for week in weeks])
    for task, before in enumerate(rows.table.after):
        party, elapsed = rows.party[:, task], rows.elapsed_h[:, task]
        week = WorkWeek(pattern[party, row], hours[party, row])
        ready[task] = np.max(finish[list(before)], axis=0) if before else 0.0
        busy = np.ascontiguousarray(people[:, task].T)
        free[task] = np.max(np.where(busy, free_now, 0.0), axis=0)
        is_work = elapsed > 0.0
        possible = ready[task] + rows.wait_d[:, task]
        begun = work_start_d(np.maximum(possible, free[task]), week)
        start[task] = np.where(is_work, begun, possible)
        finish[task] = work_finish_d(start[task], elapsed, week)
        np.copyto(free_now, finish[task], where=busy & is_work)
    return _Dates(*(np.ascontiguousarray(days.T) for days in (ready, free, start, finish)))


def busy_people(rows: TaskRows) -> BoolArray:
    """Return who is busy with each task.

    Parameters
    ----------
    rows : TaskRows
        Tasks with parties and hours.

    Returns
    -------
    busy : ndarray, shape (B, T, P)
        Its party, and the helper where the helper works along.
    """
    busy: BoolArray = rows.party[:, :, None] == np.arange(len(PARTIES))
    busy[:, :, HELPER_PARTY] |= rows.helper_h > 0.0
    return busy


def _critical(rows: TaskRows, dates: _Dates, is_last: BoolArray) -> BoolArray:
    """Return the tasks whose end a task of the deciding chain waited for, as predecessor or for the same person."""
    critical, people = is_last.copy(), busy_people(rows)
    for task in reversed(range(critical.shape[1])):
        row = np.flatnonzero(critical[:, task])
        possible = dates.ready_d[row, task] + rows.wait_d[row, task]
        waits_for_person = (rows.elapsed_h[row, task] > 0.0) & (dates.free_d[row, task] > possible + _SAME_D)
        for before in rows.table.after[task]:
            decides = np.abs(dates.finish_d[row, before] - dates.ready_d[row, task]) <= _SAME_D
            critical[row, before] |= decides & ~waits_for_person
        held = row[waits_for_person]
        is_same = (people[held, :task] & people[held, task][:, None]).any(axis=2) & (rows.elapsed_h[held, :task] > 0.0)
        decides = np.abs(dates.finish_d[held, :task] - dates.free_d[held, task][:, None]) <= _SAME_D
        critical[held, :task] |= is_same & decides
    return critical
