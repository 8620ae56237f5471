"""Buying on borrowed money: what is paid when, in constant dollars, and the true rate of the offer."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.discount import single_compound_amount_factor
from econ.lifecycle.loan import MONTHS_PER_YEAR, apr_frac, level_payment_usd, loan_years


@dataclass(frozen=True, slots=True, eq=False)
class Offer:
    """Terms of a loan, a card or an instalment plan; every entry of shape (B,).

    Attributes
    ----------
    rate_frac : ndarray
        Yearly rate as the contract prints it, twelve times the monthly one; 0 for an offer without interest.
        [dimensionless]
    month_count : ndarray
        Monthly payments, whole. [dimensionless]
    fee_frac : ndarray
        Paid at the start for the money, as a share of what is borrowed. [dimensionless]
    dearer_frac : ndarray
        How much more the goods cost with the offer than for cash, as a share of the cash price. [dimensionless]
    """

    rate_frac: FloatArray
    month_count: FloatArray
    fee_frac: FloatArray
    dearer_frac: FloatArray


@dataclass(frozen=True, slots=True)
class Terms:
    """What an offer comes to, likely values.

    Attributes
    ----------
    advanced_usd : float
        What one truly gets: the cash price of what is bought with it, fees taken off. [USD]
    payment_usd : float
        Paid each month. [USD]
    month_count : int
        Payments.
    fee_usd : float
        Paid at the start. [USD]
    total_usd : float
        All payments and the fee. [USD]
    apr_frac : float
        Annual percentage rate. [dimensionless]
    is_without_interest : bool
        The contract names no rate.
    """

    advanced_usd: float
    payment_usd: float
    month_count: int
    fee_usd: float
    total_usd: float
    apr_frac: float
    is_without_interest: bool


def financing_stream(
    borrowed_usd: FloatArray, offer: Offer, inflation_frac: FloatArray, study_period_yr: int
) -> FloatArray:
    """Return what buying on an offer adds to each year, in constant dollars.

    Parameters
    ----------
    borrowed_usd : ndarray, shape (B,)
        Cash price of what is bought with it. [USD]
    offer : Offer
        Terms, fixed in nominal dollars.
    inflation_frac : array_like, shape () or (B,)
        Yearly inflation: fixed payments weigh less each year. [dimensionless]
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    financing_usd : ndarray, shape (B, study_period_yr + 1)
        Year 0 is the fee less what need not be paid then; later years hold twelve payments each. What is still owed
        when the study ends or the house is sold is paid off in the last year. [USD]

    Raises
    ------
    OutOfRangeError
        If a rate is negative or there are no payments.

    References
    ----------
    .. [1] 10 CFR 436.14(a): current and constant dollars are not mixed; contracts are in current dollars.
    """
    borrowed = np.asarray(borrowed_usd, dtype=np.float64)
    loan = loan_years(borrowed * (1.0 + offer.dearer_frac), offer.rate_frac, offer.month_count, study_period_yr)
    nominal = loan.payment_nominal_usd.copy()
    nominal[:, -1] += loan.balance_nominal_usd[:, -1]
    years = np.arange(study_period_yr + 1, dtype=np.float64)
    price_level = single_compound_amount_factor(np.asarray(inflation_frac)[..., None], years)
    flow: FloatArray = nominal / price_level
    flow[:, 0] += borrowed * (offer.fee_frac - 1.0)
    return flow


def terms(borrowed_usd: float, offer: Offer) -> Terms:
    """Return what an offer comes to in its first row.

    Parameters
    ----------
    borrowed_usd : float
        Cash price of what is bought with it, above 0. [USD]
    offer : Offer
        Terms.

    Returns
    -------
    terms : Terms
        With the rate at which the payments are worth what is truly got.

    Raises
    ------
    OutOfRangeError
        If fees take all that is borrowed.

    References
    ----------
    .. [1] 12 CFR 1026 (Regulation Z), appendix J (from memory): fees paid at the start are part of the finance charge.
    """
    rate, count, fee_share, dearer = (
        float(column[0]) for column in (offer.rate_frac, offer.month_count, offer.fee_frac, offer.dearer_frac)
    )
    months, fee = round(count), fee_share * borrowed_usd
    advanced = borrowed_usd - fee
    if not advanced > 0.0:
        raise OutOfRangeError(
            "fee of an offer", fee_share, "", "below 1", "Give the fee as a share of what you borrow."
        )
    owed, monthly_rate = np.array(borrowed_usd * (1.0 + dearer)), np.array(rate / MONTHS_PER_YEAR)
    payment = float(level_payment_usd(owed, monthly_rate, np.array(float(months))))
    apr = float(apr_frac(np.array([advanced]), np.full((1, months), payment))[0])
    return Terms(advanced, payment, months, fee, payment * months + fee, apr, rate == 0.0)
