"""Borrowed money: flows in constant dollars, and the true rate of an offer."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.borrowing import Offer, financing_stream, terms
from econ.lifecycle.discount import nominal_rate, present_value


def offer(rate=0.0, months=24.0, fee=0.0, dearer=0.0):
    return Offer(*(np.array([number]) for number in (rate, months, fee, dearer)))


def test_offer_without_interest_is_paid_in_equal_parts():
    flow = financing_stream(np.array([2400.0]), offer(), np.array(0.0), 4)
    assert flow[0].tolist() == pytest.approx([-2400.0, 1200.0, 1200.0, 0.0, 0.0])


def test_what_is_still_owed_is_paid_when_the_study_ends():
    flow = financing_stream(np.array([2400.0]), offer(), np.array(0.0), 1)
    assert flow[0].tolist() == pytest.approx([-2400.0, 2400.0])


def test_fixed_payments_weigh_less_as_prices_rise():
    flow = financing_stream(np.array([2400.0]), offer(), np.array(0.10), 2)
    assert flow[0].tolist() == pytest.approx([-2400.0, 1200.0 / 1.1, 1200.0 / 1.21])


def test_loan_paid_once_a_year_at_the_discount_rate_is_worth_nothing():
    """Monthly payments told at the year's end are worth a little less: within a half year's interest."""
    real, inflation = 0.03, 0.025
    yearly = float(nominal_rate(np.array(real), np.array(inflation)))
    flow = financing_stream(np.array([1000.0]), offer(rate=12.0 * (1.0 + yearly) ** (1.0 / 12.0) - 12.0, months=60.0),
                            np.array(inflation), 5)  # fmt: skip
    assert -0.5 * yearly * 1000.0 < float(present_value(flow, np.array(real))[0]) < 0.0


def test_fee_is_paid_at_the_start_and_a_dearer_price_later():
    flow = financing_stream(np.array([1000.0]), offer(months=12.0, fee=0.03, dearer=0.1), np.array(0.0), 1)
    assert flow[0].tolist() == pytest.approx([-970.0, 1100.0])


# Regulation Z, appendix J, by definition: the payments at a twelfth of the rate a month are worth what is advanced
def test_true_rate_of_an_offer_without_interest_on_a_dearer_price():
    found = terms(3000.0, offer(months=18.0, dearer=0.08))
    month = np.arange(1, 19)
    worth = (found.payment_usd * (1.0 + found.apr_frac / 12.0) ** -month).sum()
    assert worth == pytest.approx(3000.0, rel=1e-9)
    assert found.apr_frac > 0.09
    assert found.total_usd == pytest.approx(3240.0)


def test_true_rate_of_a_loan_without_a_fee_is_its_own_and_a_fee_raises_it():
    plain, dear = terms(3000.0, offer(0.09, 36.0)), terms(3000.0, offer(0.09, 36.0, 0.03))
    assert plain.apr_frac == pytest.approx(0.09, abs=1e-9)
    assert dear.apr_frac > 0.105
    assert dear.advanced_usd == pytest.approx(2910.0)


def test_fee_that_takes_all_is_refused():
    with pytest.raises(OutOfRangeError, match="fee of an offer is 1"):
        terms(100.0, offer(fee=1.0))
