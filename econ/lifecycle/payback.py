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
    return _first_crossing(np.cumsum(np.asarray(saving_usd, dtype=np.float64), axis=-1))


def _first_crossing(total_usd: FloatArray) -> Payback:
    """Return when a running total that starts below nothing first comes back, straight within the year."""
    is_out = total_usd < 0.0
    crossing = np.argmin(is_out, axis=-1)
    exists: BoolArray = crossing > 0
    place = crossing[..., None]
    before = np.take_along_axis(total_usd, np.maximum(place - 1, 0), axis=-1)[..., 0]
    gained = np.where(exists, np.take_along_axis(total_usd, place, axis=-1)[..., 0] - before, 1.0)
    after_yr = np.where(exists, crossing - 1 - before / gained, np.nan)
    is_undone = exists & (np.count_nonzero(is_out, axis=-1) > crossing)
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
    return _first_crossing(np.cumsum(discounted, axis=-1, out=discounted))
