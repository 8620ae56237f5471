"""Depreciation and tax of a landlord: an option, off by default. Not tax advice.

Passive-loss limits, recapture on sale and states that depart from the federal rules are not modelled.
"""

from enum import StrEnum
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError

MONTHS_PER_YEAR: Final = 12

HALF_YEAR_FRAC: Final[dict[int, tuple[float, ...]]] = {5: (0.20, 0.32, 0.192, 0.1152, 0.1152, 0.0576)}
"""Share of the price a year, half-year convention, 200 % declining balance. IRS Publication 946, table A-1."""

LONGEST_BONUS_YR: Final = 20.0
"""year; the longest class that may be written off at once. IRC 168(k)(2) (from memory)."""


class DepreciationClass(StrEnum):
    """What the tax rules take a thing for; the owner chooses, as it depends on the facts."""

    APPLIANCE = "appliance_5"
    RESIDENTIAL = "residential_27_5"
    TRANSIENT = "transient_39"


LIFE_YR: Final = {
    DepreciationClass.APPLIANCE: 5.0,
    DepreciationClass.RESIDENTIAL: 27.5,
    DepreciationClass.TRANSIENT: 39.0,
}
"""year; recovery periods. IRS Publications 527 and 946."""


def half_year_shares_frac(study_period_yr: int) -> FloatArray:
    """Return the share of the price of a five-year appliance that is written off each year.

    Parameters
    ----------
    study_period_yr : int
        Years wanted, year 0 first; service begins in year 1. [year]

    Returns
    -------
    share_frac : ndarray, shape (n_year + 1,)
        Year 0 is 0. [dimensionless]

    References
    ----------
    .. [1] IRS Publication 946, table A-1, five-year property.
    """
    share = np.zeros(study_period_yr + 1)
    printed = HALF_YEAR_FRAC[5][:study_period_yr]
    share[1 : len(printed) + 1] = printed
    return share


def mid_month_shares_frac(life_yr: float, month: int, study_period_yr: int) -> FloatArray:
    """Return the share of the price of a building part that is written off each year.

    Parameters
    ----------
    life_yr : float
        27.5 for a dwelling that is let, 39 where guests stay for short times. [year]
    month : int
        Month of first service, 1 to 12. [dimensionless]
    study_period_yr : int
        Years wanted, year 0 first; service begins in year 1. [year]

    Returns
    -------
    share_frac : ndarray, shape (n_year + 1,)
        Straight line; the first month counts half. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the month is not one of the twelve.

    Notes
    -----
    The printed tables round to thousandths of a percent and alternate the last digit; this is the formula they round.
    Table A-7a prints 2.461 % for a first January at 39 years where the formula gives 2.457 %.

    References
    ----------
    .. [1] IRS Publication 946, tables A-6 and A-7a.

    Examples
    --------
    >>> mid_month_shares_frac(27.5, 1, 2).round(5).tolist()
    [0.0, 0.03485, 0.03636]
    """
    if not 1 <= month <= MONTHS_PER_YEAR:
        raise OutOfRangeError("first month of service", float(month), "", "1 to 12", "Give the month.")
    first_frac = (MONTHS_PER_YEAR - month + 0.5) / MONTHS_PER_YEAR
    elapsed_yr = np.clip(np.arange(study_period_yr + 1) - 1.0 + first_frac, 0.0, life_yr)
    elapsed_yr[0] = 0.0
    share: FloatArray = np.diff(elapsed_yr, prepend=0.0) / life_yr
    return share


def shares_frac(kind: DepreciationClass, month: int, study_period_yr: int) -> FloatArray:
    """Return the share of the price written off each year for a class.

    Parameters
    ----------
    kind : DepreciationClass
        What the rules take it for.
    month : int
        Month of first service, 1 to 12. [dimensionless]
    study_period_yr : int
        Years wanted. [year]

    Returns
    -------
    share_frac : ndarray, shape (n_year + 1,)
        Adds up to 1 over a long enough time. [dimensionless]
    """
    if kind == DepreciationClass.APPLIANCE:
        return half_year_shares_frac(study_period_yr)
    return mid_month_shares_frac(LIFE_YR[kind], month, study_period_yr)


def bonus_shares_frac(kind: DepreciationClass, bonus_frac: float, month: int, study_period_yr: int) -> FloatArray:
    """Return the shares where part of the price is written off in the first year.

    Parameters
    ----------
    kind : DepreciationClass
        What the rules take it for.
    bonus_frac : float
        Part written off at once, 0 to 1. [dimensionless]
    month : int
        Month of first service, 1 to 12. [dimensionless]
    study_period_yr : int
        Years wanted. [year]

    Returns
    -------
    share_frac : ndarray, shape (n_year + 1,)
        The bonus in year 1, the rest by the class. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If a class longer than 20 years is to be written off at once.

    References
    ----------
    .. [1] IRC 168(k); IRS Notice 2026-11 (summary read); the 20-year limit from memory.
    """
    if bonus_frac > 0.0 and LIFE_YR[kind] > LONGEST_BONUS_YR:
        remedy = "Write a building part off over its own years."
        raise OutOfRangeError("recovery period for a bonus", LIFE_YR[kind], "yr", "at most 20", remedy)
    share = shares_frac(kind, month, study_period_yr) * (1.0 - bonus_frac)
    share[1:2] += bonus_frac
    return share


def tax_saved_nominal_usd(price_usd: FloatArray, share_frac: FloatArray, marginal_rate_frac: FloatArray) -> FloatArray:
    """Return the tax that depreciation saves each year.

    Parameters
    ----------
    price_usd : ndarray, shape (B,)
        Price written off. [USD]
    share_frac : ndarray, shape (n_year + 1,)
        Share a year. [dimensionless]
    marginal_rate_frac : ndarray, shape (B,)
        The owner's marginal tax rate, federal and state together. [dimensionless]

    Returns
    -------
    saved_nominal_usd : ndarray, shape (B, n_year + 1)
        Deductions are fixed dollars: nominal. [USD]
    """
    saved: FloatArray = (np.asarray(price_usd) * np.asarray(marginal_rate_frac))[:, None] * share_frac
    return saved
