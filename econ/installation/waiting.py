"""Cooling for the time until service: how long something is hired, and what it takes."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR

MONTHS_PER_YEAR: Final = 12.0
HIRE_MONTH_D: Final = DAYS_PER_YEAR / MONTHS_PER_YEAR
"""Days of a month of hire."""


@dataclass(frozen=True, slots=True, eq=False)
class InterimNeed:
    """What the room lacks each month, with what is there now.

    Attributes
    ----------
    too_warm_h, too_warm_kh : ndarray, shape (B, 12)
        Hours too warm, and degree-hours above the set-point. [hour] [K*hour]
    warm_d : ndarray, shape (B, 12)
        Days on which something to cool with is wanted. [day]
    undone_kwh : ndarray, shape (B, 12)
        Sensible cooling that what is there now leaves undone. [kWh]
    usd : ndarray, shape (B, 12)
        What energy costs as it is. [USD]
    """

    too_warm_h: FloatArray
    too_warm_kh: FloatArray
    warm_d: FloatArray
    undone_kwh: FloatArray
    usd: FloatArray


def hired_months(warm_d: FloatArray, least_d: FloatArray) -> FloatArray:
    """Return for how many whole months a portable unit is hired.

    Parameters
    ----------
    warm_d : array_like, shape (B,)
        Days until service on which the room is too warm as it is. [day]
    least_d : array_like, shape () or (B,)
        Days for which nobody would hire one. [day]

    Returns
    -------
    months : ndarray, shape (B,)
        Begun months are paid whole; 0 for fewer days than that. [dimensionless]

    Examples
    --------
    >>> hired_months(np.array([3.0, 20.0, 31.0]), np.array(7.0)).tolist()
    [0.0, 1.0, 2.0]
    """
    days = np.asarray(warm_d, dtype=np.float64)
    months: FloatArray = np.where(days >= least_d, np.ceil(days / HIRE_MONTH_D - 1e-9), 0.0)
    return months


def warm_days(too_warm_h: FloatArray, month_d: FloatArray, least_h: FloatArray) -> FloatArray:
    """Return the days of each month on which something to cool with is wanted.

    Parameters
    ----------
    too_warm_h : array_like, shape (B, 12)
        Hours of each month in which the room is too warm. [hour]
    month_d : array_like, shape (12,)
        Days of the months. [day]
    least_h : array_like, shape (B,)
        Hours too warm that make such a day. [hour]

    Returns
    -------
    warm_d : ndarray, shape (B, 12)
        As if the hours came in days of just so many, at most the month. [day]

    Examples
    --------
    >>> warm_days(np.array([[0.0, 10.0, 300.0]]), np.array([31.0, 28.0, 31.0]), np.array([2.0])).tolist()
    [[0.0, 5.0, 31.0]]
    """
    days: FloatArray = np.minimum(np.asarray(too_warm_h) / np.asarray(least_h)[:, None], month_d)
    return days
