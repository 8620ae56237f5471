"""Loans and instalments."""

import numpy as np
import numpy_financial as npf
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.loan import apr_frac, level_payment_usd, loan_years


# numpy-financial 1.0.0 docstring of pmt: pmt(0.075/12, 12*15, 200000) = -1854.0247200054619
def test_level_payment_agrees_with_the_printed_example():
    assert float(level_payment_usd(200_000.0, 0.075 / 12, 180)) == pytest.approx(1854.0247200054619, rel=1e-12)


# Spreadsheet help for PMT (from memory): 8 % a year, 10 months, 10,000 -> 1,037.03
def test_level_payment_agrees_with_the_spreadsheet_help():
    assert float(level_payment_usd(10_000.0, 0.08 / 12, 10)) == pytest.approx(1037.03, abs=0.005)


def test_loan_at_zero_rate_is_principal_over_n():
    assert float(level_payment_usd(1200.0, 0.0, 12)) == pytest.approx(100.0)


@pytest.mark.parametrize(("rate", "months"), [(0.0, 18), (0.06, 36), (0.29, 60), (0.06, 7)])
def test_amortisation_agrees_with_numpy_financial(rate, months):
    years = loan_years(np.array([5000.0]), np.array([rate]), np.array([float(months)]), 6)
    per = np.arange(1, months + 1)
    interest = -npf.ipmt(rate / 12, per, months, 5000.0) if rate else np.zeros(months)
    principal = -npf.ppmt(rate / 12, per, months, 5000.0) if rate else np.full(months, 5000.0 / months)
    by_year = np.zeros((2, 7))
    for month in range(months):
        by_year[:, month // 12 + 1] += interest[month], principal[month]
    assert years.interest_nominal_usd[0] == pytest.approx(by_year[0], abs=1e-8)
    assert years.payment_nominal_usd[0] == pytest.approx(by_year.sum(axis=0), abs=1e-8)
    assert years.balance_nominal_usd[0] == pytest.approx(5000.0 - np.cumsum(by_year[1]), abs=1e-7)


def test_apr_is_the_rate_of_an_ordinary_loan():
    payment = float(level_payment_usd(5000.0, 0.18 / 12, 24))
    assert apr_frac(np.array([5000.0]), np.full((1, 24), payment)) == pytest.approx([0.18], abs=1e-12)


# By definition: the payments, discounted at a twelfth of the rate a month, are worth the cash price.
def test_an_offer_without_interest_on_a_dearer_price_has_a_rate():
    payment = np.full((1, 18), 2400.0 / 18)
    apr = apr_frac(np.array([2160.0]), payment)
    worth = (payment / (1.0 + apr / 12.0) ** np.arange(1, 19)).sum()
    assert worth == pytest.approx(2160.0, abs=1e-6)
    assert 0.13 < float(apr[0]) < 0.15


def test_payments_below_the_cash_price_have_no_rate():
    assert apr_frac(np.array([1000.0]), np.full((1, 10), 99.0)).tolist() == [0.0]


@pytest.mark.parametrize("call", [lambda: level_payment_usd(1.0, -0.01, 12), lambda: level_payment_usd(1.0, 0.01, 0)])
def test_a_loan_that_cannot_be_is_refused(call):
    with pytest.raises(OutOfRangeError, match="of a loan"):
        call()


def test_an_offer_of_nothing_is_refused():
    with pytest.raises(OutOfRangeError, match="cash price is 0 USD; it must be above 0"):
        apr_frac(np.array([0.0]), np.ones((1, 3)))


def test_a_row_alone_gives_what_it_gives_among_others():
    amount, rate, months = np.array([900.0, 5000.0]), np.array([0.0, 0.12]), np.array([12.0, 48.0])
    both = loan_years(amount, rate, months, 5)
    alone = loan_years(amount[1:], rate[1:], months[1:], 5)
    assert both.payment_nominal_usd[1].tolist() == alone.payment_nominal_usd[0].tolist()
