"""Impossible or odd input: a message that says what is allowed, or a stated null; never a wrong number."""

from datetime import date

import numpy as np
import pytest

from econ.case.schema import case_from
from econ.kernel.errors import CaseError, OutOfRangeError
from econ.lifecycle.discount import present_value
from econ.lifecycle.measures import measures
from econ.lifecycle.payback import discounted_payback, simple_payback
from econ.lifecycle.rate_of_return import internal_rate
from econ.lifecycle.streams import Streams

TODAY = date(2027, 3, 1)


def two(first, yearly, n_year=10):
    """Return a base and an alternative with level yearly energy."""
    zero = np.zeros((2, 1, n_year + 1))
    energy = zero.copy()
    energy[:, 0, 1:] = np.array(yearly)[:, None]
    return Streams(np.array(first, dtype=np.float64)[:, None], energy, zero, zero, zero)


@pytest.mark.parametrize("call", [
    lambda: present_value(np.ones(3), np.array(-1.0)),
    lambda: measures(two([0.0, 100.0], [50.0, 20.0]), np.array(-1.0), 0),
    lambda: discounted_payback(np.array([-1.0, 2.0]), np.array(-1.5)),
])  # fmt: skip
def test_rate_of_minus_one_hundred_percent_is_refused_with_what_is_allowed(call):
    with pytest.raises(OutOfRangeError, match=r"discount rate is -1.*above -1.*0\.03 for 3 %"):
        call()


def test_study_of_no_years_is_refused():
    with pytest.raises(OutOfRangeError, match=r"study period is 0 years.*1 or more"):
        measures(two([0.0, 100.0], [0.0, 0.0], n_year=0), np.array(0.03), 0)


@pytest.mark.parametrize(
    ("field", "value"), [("study_period_yr", 0), ("study_period_yr", 2.5), ("discount_rate_real_frac", -1.0)]
)
def test_case_names_the_field_the_value_and_what_is_allowed(field, value):
    with pytest.raises(CaseError) as refused:
        case_from({"place": {"station": "Yuma Intl Arpt, AZ"}, "rooms": [{}], "money": {field: value}})
    [found] = refused.value.faults
    assert found.path == f"money.{field}"
    assert str(value) in found.got
    assert found.remedy


def test_no_energy_use_saves_nothing_and_has_no_payback():
    found = measures(two([100.0, 300.0], [0.0, 0.0]), np.array(0.03), 0)
    assert found.net_savings_usd[1, 0] == -200.0
    assert found.sir[1, 0] == 0.0
    assert np.isnan([found.airr[1, 0], found.irr[1, 0], found.simple_payback_yr[1, 0]]).all()
    assert not (found.airr_exists | found.irr_exists | found.simple_payback_exists | found.irr_is_multiple)[1, 0]


def test_savings_below_nothing_are_told_and_never_pay_back():
    found = measures(two([100.0, 300.0], [20.0, 50.0]), np.array(0.03), 0)
    assert found.net_savings_usd[1, 0] < -200.0
    assert found.sir[1, 0] < 0.0
    assert np.isnan([found.airr[1, 0], found.irr[1, 0], found.discounted_payback_yr[1, 0]]).all()


def test_cheaper_at_the_start_and_after_has_no_ratio_and_nothing_to_pay_back():
    found = measures(two([300.0, 100.0], [50.0, 20.0]), np.array(0.03), 0)
    assert found.net_savings_usd[1, 0] > 200.0
    assert not (found.sir_exists | found.irr_exists | found.simple_payback_exists)[1, 0]
    assert np.isnan([found.sir[1, 0], found.irr[1, 0], found.simple_payback_yr[1, 0]]).all()


def test_two_sign_changes_give_no_single_rate_and_say_that_payback_is_undone():
    flow = np.array([-4000.0, 25000.0, -25000.0])
    rate = internal_rate(flow)
    assert bool(rate.is_multiple)
    assert not bool(rate.exists)
    assert np.isnan(rate.rate_frac)
    assert bool(simple_payback(flow).is_undone)
