"""A clock that runs only on work days: working time from dates and dates from working time."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError

_ROUNDING = 1e-9
"""Work days; keeps 7.999999999 h of work from ending on another day than 8 h."""

WEEK_D = 7

_BITS = 1 << np.arange(WEEK_D)
_PATTERNS: BoolArray = (np.arange(1 << WEEK_D)[:, None] & _BITS) > 0
"""Every week there can be: whether each of its days is a work day, shape (128, 7)."""

_DONE_BEFORE: FloatArray = np.cumsum(np.pad(_PATTERNS, ((0, 0), (1, 0))), axis=1).astype(np.float64)
"""Work days before each day of each, and in all of it, shape (128, 8)."""

_DAY_OF: FloatArray = np.argsort(~_PATTERNS, axis=1, kind="stable").astype(np.float64)
"""On which day of each its first work day is, its second and so on, shape (128, 7)."""


@dataclass(frozen=True, slots=True, eq=False)
class WorkWeek:
    """On which days of the week somebody works, counted from the decision date, and how long.

    Attributes
    ----------
    pattern : ndarray of int, shape (B,)
        Which days of every week are work days: 1 for day 0 (the decision date), 2 for day 1, 4 for day 2, added up.
        [dimensionless]
    hours_per_day_h : ndarray, shape (B,)
        Working hours of a work day. [hour]
    """

    pattern: IntArray
    hours_per_day_h: FloatArray

    @property
    def is_work(self) -> BoolArray:
        """Return whether day 0, 1, ... 6 of every week is a work day, shape (B, 7)."""
        work: BoolArray = _PATTERNS[self.pattern]
        return work

    def __post_init__(self) -> None:
        if not np.all(self.pattern > 0):
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
    return WorkWeek((np.take_along_axis(is_work_weekday, day, axis=1) * _BITS).sum(axis=1), hours_per_day_h)


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
    before, pattern = _DONE_BEFORE, week.pattern
    days = whole_weeks * before[pattern, -1] + before[pattern, day] + (in_week - day) * _PATTERNS[pattern, day]
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
    of_week = _DONE_BEFORE[week.pattern, -1]
    weeks = np.floor(work_day / of_week)
    date: FloatArray = WEEK_D * weeks + _DAY_OF[week.pattern, (work_day - weeks * of_week).astype(np.int64)]
    return date
