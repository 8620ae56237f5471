"""Discount factors and rates: what money of one year is worth in another."""

from enum import Enum

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import MONTH_DAYS
from econ.kernel.errors import OutOfRangeError


class Timing(Enum):
    """When in its year an amount falls; the value is how many years before the year's end."""

    END = 0.0
    MIDDLE = 0.5
    BEGINNING = 1.0


def _growth(rate_frac: FloatArray, name: str) -> FloatArray:
    """Return log(1 + rate), refusing rates at or below -1."""
    rate = np.asarray(rate_frac, dtype=np.float64)
    outside = ~(rate > -1.0)
    if outside.any():
        worst = float(rate[outside].flat[0])
        raise OutOfRangeError(name, worst, "dimensionless", "above -1", "Give a rate as a share: 0.03 for 3 %.")
    growth: FloatArray = np.log1p(rate)
    return growth


def _geometric_sum(log_ratio: FloatArray, term_yr: FloatArray) -> FloatArray:
    """Return 1 + x + ... + x**(n - 1) for x = exp(log_ratio), n itself where x is 1."""
    ratio, term = np.broadcast_arrays(np.asarray(log_ratio, dtype=np.float64), np.asarray(term_yr, dtype=np.float64))
    is_one = ratio == 0.0
    step = np.where(is_one, 1.0, np.expm1(ratio))
    total: FloatArray = np.where(is_one, term, np.expm1(ratio * term) / step)
    return total


def single_present_value_factor(
    discount_rate_frac: FloatArray, at_yr: FloatArray, timing: Timing = Timing.END
) -> FloatArray:
    """Return what one dollar of year t is worth at year zero (SPV).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate, real if the dollar is constant. [dimensionless]
    at_yr : array_like, shape () or (...)
        Year in which the dollar falls. [year]
    timing : Timing
        End of that year (default), its middle or its beginning.

    Returns
    -------
    factor : ndarray, shape of the two broadcast
        (1 + d)**-(t - s), s being 0, 1/2 or 1 by timing. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the rate is at or below -1.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), app. D, eq. D.2.1.1.

    Examples
    --------
    >>> round(float(single_present_value_factor(0.03, 20)), 6)
    0.553676
    """
    years = np.asarray(at_yr, dtype=np.float64) - timing.value
    factor: FloatArray = np.exp(-_growth(discount_rate_frac, "discount rate") * years)
    return factor


def single_compound_amount_factor(discount_rate_frac: FloatArray, at_yr: FloatArray) -> FloatArray:
    """Return what one dollar of year zero has grown to by year t (SCA).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly rate. [dimensionless]
    at_yr : array_like, shape () or (...)
        Year. [year]

    Returns
    -------
    factor : ndarray, shape of the two broadcast
        (1 + d)**t. [dimensionless]

    References
    ----------
    .. [1] ASTM E917, discount factor table.
    """
    factor: FloatArray = np.exp(_growth(discount_rate_frac, "discount rate") * np.asarray(at_yr, dtype=np.float64))
    return factor


def uniform_present_value_factor(discount_rate_frac: FloatArray, term_yr: FloatArray) -> FloatArray:
    """Return what one dollar at the end of each of n years is worth at year zero (UPV).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate. [dimensionless]
    term_yr : array_like, shape () or (...)
        Number of years n. [year]

    Returns
    -------
    factor : ndarray, shape of the two broadcast
        (1 - (1 + d)**-n) / d, and n at a rate of nothing. [dimensionless]

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), app. D.

    Examples
    --------
    >>> round(float(uniform_present_value_factor(0.03, 25)), 6), float(uniform_present_value_factor(0.0, 15))
    (17.413148, 15.0)
    """
    return escalated_present_value_factor(discount_rate_frac, np.array(0.0), term_yr)


def escalated_present_value_factor(
    discount_rate_frac: FloatArray, escalation_frac: FloatArray, term_yr: FloatArray
) -> FloatArray:
    """Return what one dollar a year at today's price is worth when the price grows each year (UPV*).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate. [dimensionless]
    escalation_frac : array_like, shape () or (...)
        Yearly price growth, real if the discount rate is; the first payment has grown once. [dimensionless]
    term_yr : array_like, shape () or (...)
        Number of years n. [year]

    Returns
    -------
    factor : ndarray, shape of the three broadcast
        (1 + e) / (d - e) * (1 - ((1 + e) / (1 + d))**n), and n where e equals d. [dimensionless]

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), app. D; ASTM E917, modified uniform present value.

    Examples
    --------
    >>> round(float(escalated_present_value_factor(0.03, 0.01, 20)), 6)
    16.382723
    """
    ratio = _growth(escalation_frac, "escalation") - _growth(discount_rate_frac, "discount rate")
    factor: FloatArray = np.exp(ratio) * _geometric_sum(ratio, term_yr)
    return factor


def indexed_present_value_factor(discount_rate_frac: FloatArray, price_index_frac: FloatArray) -> FloatArray:
    """Return what one dollar a year at today's price is worth when the price follows a yearly index.

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate. [dimensionless]
    price_index_frac : array_like, shape (..., n_year)
        Price of year 1, 2, ... over today's. [dimensionless]

    Returns
    -------
    factor : ndarray, shape (...)
        Sum over years of index times single present value factor. [dimensionless]

    References
    ----------
    .. [1] NISTIR 85-3273, tables Ca.
    """
    index = np.asarray(price_index_frac, dtype=np.float64)
    years = np.arange(1, index.shape[-1] + 1, dtype=np.float64)
    weights = single_present_value_factor(np.asarray(discount_rate_frac)[..., None], years)
    factor: FloatArray = np.sum(index * weights, axis=-1)
    return factor


def capital_recovery_factor(discount_rate_frac: FloatArray, term_yr: FloatArray) -> FloatArray:
    """Return the yearly amount over n years that one dollar at year zero is worth (UCR).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate. [dimensionless]
    term_yr : array_like, shape () or (...)
        Number of years n, above 0. [year]

    Returns
    -------
    factor : ndarray, shape of the two broadcast
        One over the uniform present value factor; 1 / n at a rate of nothing. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the term is not above 0 or the rate at or below -1.

    References
    ----------
    .. [1] ASTM E917, discount factor table.

    Examples
    --------
    >>> round(float(capital_recovery_factor(0.05, 8)), 8)
    0.15472181
    """
    shortest = float(np.min(term_yr))
    if not shortest > 0.0:
        raise OutOfRangeError("term", shortest, "years", "above 0", "Give the number of years to spread over.")
    factor: FloatArray = 1.0 / uniform_present_value_factor(discount_rate_frac, term_yr)
    return factor


def uniform_compound_amount_factor(discount_rate_frac: FloatArray, term_yr: FloatArray) -> FloatArray:
    """Return what one dollar at the end of each of n years has grown to at the end (UCA).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly rate. [dimensionless]
    term_yr : array_like, shape () or (...)
        Number of years n. [year]

    Returns
    -------
    factor : ndarray, shape of the two broadcast
        ((1 + d)**n - 1) / d, and n at a rate of nothing. [dimensionless]

    References
    ----------
    .. [1] ASTM E917, discount factor table.
    """
    return _geometric_sum(_growth(discount_rate_frac, "discount rate"), term_yr)


def sinking_fund_factor(discount_rate_frac: FloatArray, term_yr: FloatArray) -> FloatArray:
    """Return the yearly amount that grows to one dollar at the end of n years (USF).

    Parameters
    ----------
    discount_rate_frac : array_like, shape () or (...)
        Yearly rate. [dimensionless]
    term_yr : array_like, shape () or (...)
        Number of years n, above 0. [year]

    Returns
    -------
    factor : ndarray, shape of the two broadcast
        d / ((1 + d)**n - 1), and 1 / n at a rate of nothing. [dimensionless]

    References
    ----------
    .. [1] ASTM E917, discount factor table.
    """
    shortest = float(np.min(term_yr))
    if not shortest > 0.0:
        raise OutOfRangeError("term", shortest, "years", "above 0", "Give the number of years to save over.")
    factor: FloatArray = 1.0 / uniform_compound_amount_factor(discount_rate_frac, term_yr)
    return factor


def present_value(flow_usd: FloatArray, discount_rate_frac: FloatArray) -> FloatArray:
    """Return what yearly amounts are worth at year zero.

    Parameters
    ----------
    flow_usd : array_like, shape (..., n_year + 1)
        Amount in each year, year 0 first. [USD]
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate, real if the flow is constant dollars. [dimensionless]

    Returns
    -------
    pv_usd : ndarray, shape (...)
        Sum of the amounts, that of year t divided by (1 + d)**t. [USD]

    Raises
    ------
    OutOfRangeError
        If the rate is at or below -1.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), app. D, eq. D.2.1.1.

    Examples
    --------
    >>> float(present_value([100.0, 0.0], 0.10)), round(float(present_value([0.0, 110.0], 0.10)), 9)
    (100.0, 100.0)
    """
    flow = np.asarray(flow_usd, dtype=np.float64)
    years = np.arange(flow.shape[-1], dtype=np.float64)
    factor = single_present_value_factor(np.asarray(discount_rate_frac)[..., None], years)
    pv_usd: FloatArray = np.einsum("...t,...t->...", flow, factor)
    return pv_usd


def nominal_rate(rate_real_frac: FloatArray, inflation_frac: FloatArray) -> FloatArray:
    """Return the rate in current dollars that a rate in constant dollars stands for.

    Parameters
    ----------
    rate_real_frac : array_like, shape () or (...)
        Yearly real rate. [dimensionless]
    inflation_frac : array_like, shape () or (...)
        Yearly inflation. [dimensionless]

    Returns
    -------
    rate_nominal : ndarray, shape of the two broadcast
        (1 + d)(1 + I) - 1. [dimensionless]

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), section on inflation; 10 CFR 436.14(a).

    Examples
    --------
    >>> round(float(nominal_rate(0.03, 0.023)), 6)
    0.05369
    """
    growth = _growth(rate_real_frac, "real rate") + _growth(inflation_frac, "inflation")
    rate: FloatArray = np.expm1(growth)
    return rate


def real_rate(rate_nominal_frac: FloatArray, inflation_frac: FloatArray) -> FloatArray:
    """Return the rate in constant dollars that a rate in current dollars stands for.

    Parameters
    ----------
    rate_nominal_frac : array_like, shape () or (...)
        Yearly nominal rate. [dimensionless]
    inflation_frac : array_like, shape () or (...)
        Yearly inflation. [dimensionless]

    Returns
    -------
    rate_real : ndarray, shape of the two broadcast
        (1 + D) / (1 + I) - 1. [dimensionless]

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), section on inflation.
    """
    growth = _growth(rate_nominal_frac, "nominal rate") - _growth(inflation_frac, "inflation")
    rate: FloatArray = np.expm1(growth)
    return rate


def monthly_rate(rate_frac: FloatArray) -> FloatArray:
    """Return the monthly rate that compounds to a yearly one.

    Parameters
    ----------
    rate_frac : array_like, shape () or (...)
        Yearly rate. [dimensionless]

    Returns
    -------
    rate_monthly : ndarray, shape ()  or (...)
        (1 + I)**(1/12) - 1, which is less than a twelfth of I. [dimensionless]

    References
    ----------
    .. [1] Newnan, Engineering Economic Analysis, eq. 4-32.
    """
    rate: FloatArray = np.expm1(_growth(rate_frac, "rate") / len(MONTH_DAYS))
    return rate
