"""Borrowed money: level payments, what is owed when, and the true yearly rate of an instalment offer."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError

MONTHS_PER_YEAR: Final = 12
_HIGHEST_MONTHLY_FRAC: Final = 10.0
"""Highest monthly rate looked for: 1,000 % a month stands for any offer worse than that."""
_HALVINGS: Final = 60
"""Halvings of the bracket of a rate; 10 / 2^60 is below a double's rounding."""


@dataclass(frozen=True, slots=True, eq=False)
class LoanYears:
    """A loan by year, year 0 first; amounts are nominal, as contracts are.

    Attributes
    ----------
    payment_nominal_usd : ndarray, shape (B, n_year + 1)
        Paid in each year. [USD]
    interest_nominal_usd : ndarray, shape (B, n_year + 1)
        Its interest. [USD]
    balance_nominal_usd : ndarray, shape (B, n_year + 1)
        Owed at the end of each year; what is repaid at once when the house is sold then. [USD]
    """

    payment_nominal_usd: FloatArray
    interest_nominal_usd: FloatArray
    balance_nominal_usd: FloatArray


def level_payment_usd(amount_usd: FloatArray, period_rate_frac: FloatArray, period_count: FloatArray) -> FloatArray:
    """Return the equal payment at the end of each period that repays a loan.

    Parameters
    ----------
    amount_usd : array_like, shape () or (B,)
        Borrowed. [USD]
    period_rate_frac : array_like, shape () or (B,)
        Interest a period; 0 for none. [dimensionless]
    period_count : array_like, shape () or (B,)
        Payments, at least 1. [dimensionless]

    Returns
    -------
    payment_usd : ndarray, shape () or (B,)
        Each payment. [USD]

    Raises
    ------
    OutOfRangeError
        If a rate is negative or there are no payments.

    References
    ----------
    .. [1] Uniform capital recovery factor, ASTM E917-17, table 1.

    Examples
    --------
    >>> round(float(level_payment_usd(200_000.0, 0.075 / 12, 180)), 2)
    1854.02
    """
    rate, count = np.asarray(period_rate_frac, dtype=np.float64), np.asarray(period_count, dtype=np.float64)
    if np.any(rate < 0.0):
        raise OutOfRangeError("rate of a loan", float(rate.min()), "", "at least 0", "Give what the contract says.")
    if np.any(count < 1.0):
        raise OutOfRangeError("payments of a loan", float(count.min()), "", "at least 1", "Give the months to pay.")
    has_interest = rate > 0.0
    safe = np.where(has_interest, rate, 1.0)
    recovery = np.where(has_interest, safe / -np.expm1(-count * np.log1p(safe)), 1.0 / count)
    payment: FloatArray = np.asarray(amount_usd, dtype=np.float64) * recovery
    return payment


def loan_years(
    amount_usd: FloatArray, yearly_rate_frac: FloatArray, month_count: FloatArray, study_period_yr: int
) -> LoanYears:
    """Return a monthly level-payment loan added up by year.

    Parameters
    ----------
    amount_usd : ndarray, shape (B,)
        Borrowed at the decision. [USD]
    yearly_rate_frac : ndarray, shape (B,)
        Nominal yearly rate as contracts print it: twelve times the monthly rate. [dimensionless]
    month_count : ndarray, shape (B,)
        Monthly payments. [dimensionless]
    study_period_yr : int
        Years wanted. [year]

    Returns
    -------
    years : LoanYears
        Payments after the last month are 0; so is what is owed then.

    Notes
    -----
    Balance after k payments is P (1 + r)^k - A ((1 + r)^k - 1) / r.
    """
    rate = np.asarray(yearly_rate_frac, dtype=np.float64)[:, None] / MONTHS_PER_YEAR
    amount = np.asarray(amount_usd, dtype=np.float64)[:, None]
    count = np.asarray(month_count, dtype=np.float64)[:, None]
    payment = level_payment_usd(amount, rate, count)
    paid_count = np.minimum(np.arange(study_period_yr + 1) * float(MONTHS_PER_YEAR), count)
    growth = np.exp(paid_count * np.log1p(rate))
    has_interest = rate > 0.0
    annuity = np.where(has_interest, (growth - 1.0) / np.where(has_interest, rate, 1.0), paid_count)
    balance = np.maximum(amount * growth - payment * annuity, 0.0) * (paid_count < count)
    payments = np.diff(payment * paid_count, axis=1, prepend=0.0)
    repaid = -np.diff(balance, axis=1, prepend=amount)
    return LoanYears(payments, payments - repaid, balance)


def apr_frac(advanced_usd: FloatArray, payment_usd: FloatArray) -> FloatArray:
    """Return the annual percentage rate of an offer, as a share.

    Parameters
    ----------
    advanced_usd : ndarray, shape (B,)
        What one truly gets: the cash price that could be had elsewhere, less fees paid at the start. [USD]
    payment_usd : ndarray, shape (B, n_month)
        Payments at the end of each month, first month first. [USD]

    Returns
    -------
    apr_frac : ndarray, shape (B,)
        Twelve times the monthly rate at which the payments are worth what is advanced; 0 where they add up to no more
        than that. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If nothing is advanced.

    Notes
    -----
    An offer "without interest" on a price that is higher than the cash price has a rate above 0.

    References
    ----------
    .. [1] 12 CFR 1026 (Regulation Z), appendix J, actuarial method with equal monthly unit periods (from memory).
    """
    advanced = np.asarray(advanced_usd, dtype=np.float64)
    if np.any(advanced <= 0.0):
        raise OutOfRangeError("cash price", float(advanced.min()), "USD", "above 0", "Give the price for cash.")
    payment = np.asarray(payment_usd, dtype=np.float64)
    low, high = np.zeros(len(advanced)), np.full(len(advanced), _HIGHEST_MONTHLY_FRAC)
    month = np.arange(1, payment.shape[1] + 1)
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        worth = (payment * np.exp(-month * np.log1p(middle)[:, None])).sum(axis=1)
        is_above = worth > advanced
        low, high = np.where(is_above, middle, low), np.where(is_above, high, middle)
    apr: FloatArray = np.where(payment.sum(axis=1) > advanced, 0.5 * (low + high) * MONTHS_PER_YEAR, 0.0)
    return apr
