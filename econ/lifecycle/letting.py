"""Letting out: rent, deductions and depreciation of one way, in constant dollars. Not tax advice.

Off unless the owner turns it on. Passive-loss limits, recapture on sale and states that depart from the federal rules
are not modelled.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.lifecycle.discount import single_compound_amount_factor
from econ.lifecycle.landlord import MONTHS_PER_YEAR, DepreciationClass, bonus_shares_frac


@dataclass(frozen=True, slots=True, eq=False)
class Owner:
    """The owner's side of a letting, each of shape () or (B,).

    Attributes
    ----------
    marginal_rate_frac : ndarray
        Tax on one dollar more of rent, federal and state together. [dimensionless]
    inflation_frac : ndarray
        Yearly inflation: deductions for depreciation are fixed dollars. [dimensionless]
    """

    marginal_rate_frac: FloatArray
    inflation_frac: FloatArray


def service_month(in_service_d: FloatArray, decision_doy_d: float) -> FloatArray:
    """Return the month in which service starts.

    Parameters
    ----------
    in_service_d : array_like, shape (B,)
        Days from the decision. [day]
    decision_doy_d : float
        Day of the year of the decision, 0 for 1 January. [day]

    Returns
    -------
    month : ndarray of float, shape (B,)
        1 to 12. [dimensionless]

    Examples
    --------
    >>> service_month(np.array([0.0, 31.0, 364.0, 365.0]), 0.0).tolist()
    [1.0, 2.0, 12.0, 1.0]
    """
    day = np.mod(np.asarray(in_service_d, dtype=np.float64) + decision_doy_d, DAYS_PER_YEAR)
    month: FloatArray = np.searchsorted(np.cumsum(MONTH_DAYS), day, side="right").astype(np.float64) + 1.0
    return month


def depreciation_nominal_usd(
    bought_usd: FloatArray, kind: DepreciationClass, bonus_frac: float, month: FloatArray
) -> FloatArray:
    """Return what may be written off each year of all that is bought.

    Parameters
    ----------
    bought_usd : ndarray, shape (B, n_year + 1)
        Cash paid for things of the class in each year, in dollars of that year. [USD]
    kind : DepreciationClass
        What the rules take them for.
    bonus_frac : float
        Part written off at once; only for classes up to 20 years. [dimensionless]
    month : ndarray, shape (B,)
        Month of first service of what is bought at the start, 1 to 12; later pieces start in January. [dimensionless]

    Returns
    -------
    written_off_usd : ndarray, shape (B, n_year + 1)
        Service begins in the year after the payment; nothing is written off after the study. [USD]

    Raises
    ------
    OutOfRangeError
        If a class longer than 20 years is to be written off at once.

    References
    ----------
    .. [1] IRS Publication 946, tables A-1, A-6 and A-7a.
    """
    n_year = bought_usd.shape[-1] - 1
    by_month = np.array([bonus_shares_frac(kind, bonus_frac, m, n_year) for m in range(1, MONTHS_PER_YEAR + 1)])
    written: FloatArray = bought_usd[:, :1] * by_month[np.asarray(month, dtype=np.int64) - 1]
    lag = np.arange(n_year + 1)[None, :] - np.arange(n_year + 1)[:, None]
    january = np.where(lag >= 0, by_month[0][np.maximum(lag, 0)], 0.0)
    january[0] = 0.0
    return written + bought_usd @ january


def letting_stream(
    owner: Owner, rent_usd: FloatArray, deductible_usd: FloatArray, written_off_nominal_usd: Sequence[FloatArray]
) -> FloatArray:
    """Return what letting adds to the costs of each year: taxes less rent.

    Parameters
    ----------
    owner : Owner
        Marginal rate and inflation.
    rent_usd : ndarray, shape (B, n_year + 1)
        Rent more than without it, by year. [USD]
    deductible_usd : ndarray, shape (B, n_year + 1)
        Running costs that the owner pays in cash, by year. [USD]
    written_off_nominal_usd : sequence of ndarray, each shape (B, n_year + 1)
        Depreciation by class, in dollars of its year. [USD]

    Returns
    -------
    letting_usd : ndarray, shape (B, n_year + 1)
        -rent + rate x (rent - running costs - depreciation); negative where it pays. [USD]
    """
    rate = np.asarray(owner.marginal_rate_frac, dtype=np.float64)[..., None]
    years = np.arange(rent_usd.shape[-1], dtype=np.float64)
    price_level = single_compound_amount_factor(np.asarray(owner.inflation_frac)[..., None], years)
    written = sum(written_off_nominal_usd, np.zeros(())) / price_level
    letting: FloatArray = rate * (rent_usd - deductible_usd - written) - rent_usd
    return letting
