"""Bills after a change beside those before: what falls into some periods, and how far a fit's word can be trusted."""

from typing import Final

import numpy as np

from econ.energy.bill import SURE_T
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import MONTH_DAYS

MONTHLY_MODEL: Final = 1.26
"""Factor of the simplified doubt of a sum that a monthly model gives. Reddy and Claridge (2000) (from memory)."""


def period_kwh(first_day: IntArray, days_d: FloatArray, month_kwh: FloatArray) -> FloatArray:
    """Return what of twelve months' energy falls into stretches of a typical year.

    Parameters
    ----------
    first_day : ndarray of int, shape (n,)
        Day of the year on which each begins, 0 for the first of January. [dimensionless]
    days_d : ndarray, shape (n,)
        Whole days of each, at most a year. [day]
    month_kwh : ndarray, shape (12,)
        Energy by month, spread evenly over its days. [kWh]

    Returns
    -------
    energy_kwh : ndarray, shape (n,)
        Past the year's end it goes on with its beginning. [kWh]
    """
    length = np.array(MONTH_DAYS, dtype=np.int64)
    day_kwh = np.repeat(np.asarray(month_kwh) / length, length)
    passed = np.concatenate([[0.0], np.cumsum(np.tile(day_kwh, 2))])
    energy: FloatArray = passed[first_day + days_d.astype(np.int64)] - passed[first_day]
    return energy


def sum_doubt_kwh(error_kwh: float, fitted_count: int, summed_count: int) -> float:
    """Return half of the 95 % interval of a sum of periods that a fitted model gives.

    Parameters
    ----------
    error_kwh : float
        Root mean square error of one period of the fit. [kWh]
    fitted_count, summed_count : int
        Periods the model was fitted to, and periods summed. [dimensionless]

    Returns
    -------
    doubt_kwh : float
        1.26 t RMSE sqrt((1 + 2 / n) m), errors of the periods taken as independent. [kWh]

    References
    ----------
    .. [1] T. A. Reddy and D. E. Claridge, "Uncertainty of measured energy savings from statistical baseline models",
       HVAC&R Research 6 (2000) 3-20; as in ASHRAE Guideline 14, annex on uncertainty (from memory).
    """
    return MONTHLY_MODEL * SURE_T * error_kwh * float(np.sqrt((1.0 + 2.0 / fitted_count) * summed_count))
