"""A clock that runs only on work days: working time from dates and dates from working time."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError

_ROUNDING = 1e-9
"""Work days; keeps 7.999999999 h of work from ending on another day than 8 h."""

WEEK_D = 7


@dataclass(frozen=True, slots=True, eq=False)
class WorkWeek:
    """On which days of the week somebody works, counted from the decision date, and how long.

    Attributes
    ----------
    is_work : ndarray, shape (B, 7)
        Whether day 0 (the decision date), 1, ... 6 of every week is a work day.
    hours_per_day_h : ndarray, shape (B,)
        Working hours of a work day. [hour]
    """

    is_work: BoolArray
    hours_per_day_h: FloatArray

    def __post_init__(self) -> None:
        if not np.all(self.is_work.any(axis=1)):
            raise OutOfRangeError("work days in a week", 0.0, "", "at least 1", "Choose days on which work is done.")
        if not np.all(self.hours_per_day_h > 0.0):
            least = float(np.min(self.hours_per_day_h))
            raise OutOfRangeError("hours of a work day", least, "h", "above 0", "Give the hours you can work in a day.")


def work_week(weekday: IntArray, is_work_weekday: BoolArray, hours_per_day_h: FloatArray) -> WorkWeek:
    """Return a week counted from the decision date.

    Parameters
    ----------
    weekday : ndarray, shape (B,)
        Weekday of the decision date, 0 = Monday. [dimensionless]
    is_work_weekday : ndarray, shape (B, 7)
        Whether Monday, Tuesday, ... Sunday is a work day.
    hours_per_day_h : ndarray, shape (B,)
        Working hours of a work day. [hour]

    Returns
    -------
    week : WorkWeek
        The same week, beginning with the decision date.
    """
    day = (np.asarray(weekday, dtype=np.int64)[:, None] + np.arange(WEEK_D)) % WEEK_D
    return WorkWeek(np.take_along_axis(is_work_weekday, day, axis=1), hours_per_day_h)


def worked_h(date_d: FloatArray, week: WorkWeek) -> FloatArray:
    """Return the working hours between the decision date and a date.

    Parameters
    ----------
    date_d : ndarray, shape (B,)
        Days from the decision date, at least 0; parts of a work day are parts of its working hours. [day]
    week : WorkWeek
        Work days.

    Returns
    -------
    worked_h : ndarray, shape (B,)
        Hours that could have been worked. [hour]
    """
    whole_weeks = np.floor(date_d / WEEK_D)
    in_week = date_d - WEEK_D * whole_weeks
    day = np.minimum(in_week.astype(np.int64), WEEK_D - 1)
    before = np.concatenate([np.zeros((len(day), 1)), np.cumsum(week.is_work, axis=1)], axis=1)
    row = np.arange(len(day))
    days = whole_weeks * before[:, -1] + before[row, day] + (in_week - day) * week.is_work[row, day]
    worked: FloatArray = days * week.hours_per_day_h
    return worked


def work_start_d(ready_d: FloatArray, week: WorkWeek) -> FloatArray:
    """Return the first moment of working time at or after a date.

    Parameters
    ----------
    ready_d : ndarray, shape (B,)
        Days from the decision date. [day]
    week : WorkWeek
        Work days.

    Returns
    -------
    start_d : ndarray, shape (B,)
        The date itself within a work day, else the start of the next one. [day]
    """
    days = worked_h(ready_d, week) / week.hours_per_day_h
    whole = np.floor(days + _ROUNDING)
    return np.maximum(_date_of(whole, week) + np.maximum(days - whole, 0.0), ready_d)


def work_finish_d(start_d: FloatArray, elapsed_h: FloatArray, week: WorkWeek) -> FloatArray:
    """Return when working hours that begin at a date are done.

    Parameters
    ----------
    start_d : ndarray, shape (B,)
        Start within working time, days from the decision date. [day]
    elapsed_h : ndarray, shape (B,)
        Working hours; 0 ends where it starts. [hour]
    week : WorkWeek
        Work days.

    Returns
    -------
    finish_d : ndarray, shape (B,)
        End; a task that fills a day ends on that day, not at the start of the next. [day]
    """
    days = (worked_h(start_d, week) + elapsed_h) / week.hours_per_day_h
    whole = np.maximum(np.ceil(days - _ROUNDING) - 1.0, 0.0)
    finish: FloatArray = np.where(elapsed_h > 0.0, _date_of(whole, week) + days - whole, start_d)
    return finish


def _date_of(work_day: FloatArray, week: WorkWeek) -> FloatArray:
    """Return on which day from the decision date a work day, counted from 0, begins."""
    done_by = np.cumsum(week.is_work, axis=1)
    weeks, rest = np.divmod(work_day, done_by[:, -1])
    in_week = (done_by <= rest[:, None]).sum(axis=1)
    date: FloatArray = WEEK_D * weeks + in_week
    return date
