"""The time before service starts, when what is there now still runs."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.kernel.errors import OutOfRangeError

_DAYS: Final = int(DAYS_PER_YEAR)
_MONTH_OF_DAY: Final = np.repeat(np.arange(len(MONTH_DAYS)), np.array(MONTH_DAYS, dtype=np.int64))


def waited_frac(in_service_d: FloatArray, study_period_yr: int) -> FloatArray:
    """Return the share of each year, counted from the decision date, that passes before service.

    Parameters
    ----------
    in_service_d : array_like, shape (...)
        Days from the decision date to service. [day]
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    waited : ndarray, shape (..., study_period_yr)
        1 in a year without service, 0 in a year of full service. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If service starts before the decision date or is not a number.

    Examples
    --------
    >>> waited_frac(np.array([0.0, 73.0, 438.0]), 2).tolist()
    [[0.0, 0.0], [0.2, 0.0], [1.0, 0.2]]
    """
    wait = np.asarray(in_service_d, dtype=np.float64)
    if not (wait >= 0.0).all():
        worst = float(wait[~(wait >= 0.0)].flat[0])
        raise OutOfRangeError("in service", worst, "days", "0 or later", "Service starts on or after the decision.")
    waited: FloatArray = np.clip(wait[..., None] - DAYS_PER_YEAR * np.arange(study_period_yr), 0.0, DAYS_PER_YEAR)
    return waited / DAYS_PER_YEAR


def waited_month_frac(wait_d: FloatArray, decision_doy_d: float) -> FloatArray:
    """Return the share of each calendar month that passes in the first days of a year.

    Parameters
    ----------
    wait_d : array_like, shape (...)
        Days from the start of a year that begins on the decision day, 0 to 365. [day]
    decision_doy_d : float
        Day of the calendar year of the decision, 0 for 1 January. [day]

    Returns
    -------
    share : ndarray, shape (..., 12)
        1 where the whole month passes; the decision's own month is made of its end and its beginning. [dimensionless]

    Examples
    --------
    >>> waited_month_frac(np.array(45.0), 0.0)[:3].tolist()
    [1.0, 0.5, 0.0]
    """
    month = _MONTH_OF_DAY[(int(decision_doy_d) + np.arange(_DAYS)) % _DAYS]
    passed = np.vstack([np.zeros(12), np.cumsum(month[:, None] == np.arange(12), axis=0)]) / np.array(MONTH_DAYS)
    wait = np.asarray(wait_d, dtype=np.float64)
    day = np.minimum(wait.astype(np.int64), _DAYS - 1)
    part = (wait - day)[..., None]
    share: FloatArray = passed[day] * (1.0 - part) + passed[day + 1] * part
    return share


def yearly_cost(
    month_usd: FloatArray,
    waiting_month_usd: FloatArray,
    in_service_d: FloatArray,
    decision_doy_d: float,
    study_period_yr: int,
) -> FloatArray:
    """Return what each year costs at today's prices when service starts part of the way.

    Parameters
    ----------
    month_usd : array_like, shape (A, B, 12)
        Cost of each calendar month in full service. [USD]
    waiting_month_usd : array_like, shape (B, 12)
        Cost of each calendar month with what is there now. [USD]
    in_service_d : array_like, shape (A, B)
        Days from the decision date to service. [day]
    decision_doy_d : float
        Day of the calendar year of the decision, 0 for 1 January. [day]
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    yearly_usd : ndarray, shape (A, B, study_period_yr)
        Months before service at the cost of what is there now, the others in full service. [USD]

    Raises
    ------
    OutOfRangeError
        If service starts before the decision date.
    """
    month, waiting = np.asarray(month_usd, dtype=np.float64), np.asarray(waiting_month_usd, dtype=np.float64)
    waited = waited_frac(in_service_d, study_period_yr)
    yearly: FloatArray = np.repeat(month.sum(axis=-1)[..., None], study_period_yr, axis=-1)
    way, row, year = np.nonzero(waited)
    share = waited_month_frac(waited[way, row, year] * DAYS_PER_YEAR, decision_doy_d)
    yearly[way, row, year] += np.sum(share * (waiting[row] - month[way, row]), axis=-1)
    return yearly


def yearly_upkeep(
    upkeep_usd_per_yr: FloatArray, waiting_usd_per_yr: FloatArray, in_service_d: FloatArray, study_period_yr: int
) -> FloatArray:
    """Return what upkeep costs each year when service starts part of the way, spread evenly over the year.

    Parameters
    ----------
    upkeep_usd_per_yr : array_like, shape (A, B)
        Upkeep of a year in full service. [USD/year]
    waiting_usd_per_yr : array_like, shape (B,)
        Upkeep of what is there now. [USD/year]
    in_service_d : array_like, shape (A, B)
        Days from the decision date to service. [day]
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    yearly_usd : ndarray, shape (A, B, study_period_yr)
        Upkeep by year. [USD]

    Raises
    ------
    OutOfRangeError
        If service starts before the decision date.
    """
    upkeep = np.asarray(upkeep_usd_per_yr, dtype=np.float64)[..., None]
    waiting = np.asarray(waiting_usd_per_yr, dtype=np.float64)[..., None]
    yearly: FloatArray = upkeep + waited_frac(in_service_d, study_period_yr) * (waiting - upkeep)
    return yearly
