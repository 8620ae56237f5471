"""Payback: when savings have returned the extra money spent at the start."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.lifecycle.discount import single_present_value_factor


@dataclass(frozen=True, slots=True, eq=False)
class Payback:
    """When extra money has come back, and whether it stays back.

    Attributes
    ----------
    after_yr : ndarray, shape (...)
        First crossing, interpolated within the year; NaN where there is none. [year]
    exists : ndarray of bool, shape (...)
        More is spent at year 0 than in the base case, and savings return it within the study period.
    is_undone : ndarray of bool, shape (...)
        A later cost takes it out again.
    """

    after_yr: FloatArray
    exists: BoolArray
    is_undone: BoolArray


def simple_payback(saving_usd: FloatArray) -> Payback:
    """Return when the running total of yearly savings first comes back to nothing, without discounting.

    Parameters
    ----------
    saving_usd : array_like, shape (..., n_year + 1)
        Costs of the base case less those of the alternative; year 0, the extra first cost, is negative. [USD]

    Returns
    -------
    payback : Payback
        Does not exist where year 0 is not negative: there is no extra money to come back, however good the choice.

    Notes
    -----
    Savings of a year come in evenly over it. Replacements and residual values count in the year they fall in.

    References
    ----------
    .. [1] 10 CFR 436.23; Fuller & Petersen, NIST Handbook 135 (1995), section 6.4; ASTM E1121.

    Examples
    --------
    >>> float(simple_payback(np.array([-200.0, 50.0, 60.0, 70.0, 200.0])).after_yr)
    3.1
    """
    saving = np.asarray(saving_usd, dtype=np.float64)
    total = np.cumsum(saving, axis=-1)
    is_back = (total >= 0.0) & (total[..., :1] < 0.0)
    exists: BoolArray = np.any(is_back, axis=-1)
    crossing = np.argmax(is_back, axis=-1)[..., None]
    before = np.take_along_axis(total, np.maximum(crossing - 1, 0), axis=-1)[..., 0]
    gained = np.where(exists, np.take_along_axis(saving, crossing, axis=-1)[..., 0], 1.0)
    after_yr = np.where(exists, crossing[..., 0] - 1 - before / gained, np.nan)
    is_later = np.arange(saving.shape[-1]) > crossing
    is_undone = exists & (is_later & (total < 0.0)).any(axis=-1)
    return Payback(after_yr, exists, is_undone)


def discounted_payback(saving_usd: FloatArray, discount_rate_frac: FloatArray) -> Payback:
    """Return when the running total of discounted yearly savings first comes back to nothing.

    Parameters
    ----------
    saving_usd : array_like, shape (..., n_year + 1)
        Costs of the base case less those of the alternative; year 0, the extra first cost, is negative. [USD]
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate, real if the savings are constant dollars. [dimensionless]

    Returns
    -------
    payback : Payback
        As for `simple_payback`, each year's saving divided by (1 + d)**t.

    Raises
    ------
    OutOfRangeError
        If the rate is at or below -1.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), section 6.4; ASTM E1121.

    Examples
    --------
    >>> round(float(discounted_payback(np.array([-210.0, 85.0, 75.0, 85.0, 105.0]), np.array(0.11)).after_yr), 4)
    3.1504
    """
    saving = np.asarray(saving_usd, dtype=np.float64)
    years = np.arange(saving.shape[-1], dtype=np.float64)
    factor = single_present_value_factor(np.asarray(discount_rate_frac)[..., None], years)
    discounted: FloatArray = saving * factor
    return simple_payback(discounted)
