"""Discount factors: edges, refusals and shapes."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.discount import (
    capital_recovery_factor,
    escalated_present_value_factor,
    nominal_rate,
    present_value,
    real_rate,
    sinking_fund_factor,
    uniform_present_value_factor,
)


@pytest.mark.parametrize("rate", [-1.0, -1.5, float("nan")])
def test_rate_at_or_below_minus_one_is_refused(rate):
    with pytest.raises(OutOfRangeError, match=r"discount rate is .* it must be above -1"):
        present_value([1.0, 1.0], rate)


def test_rate_just_above_minus_one_is_taken():
    assert float(present_value([0.0, 1.0], -0.5)) == pytest.approx(2.0)


@pytest.mark.parametrize("factor", [capital_recovery_factor, sinking_fund_factor])
def test_spreading_over_no_years_is_refused(factor):
    with pytest.raises(OutOfRangeError, match="term is 0 years; it must be above 0 years"):
        factor(0.03, 0.0)


@pytest.mark.parametrize("factor", [capital_recovery_factor, sinking_fund_factor])
def test_spreading_at_zero_rate_is_one_over_the_years(factor):
    assert float(factor(0.0, 8.0)) == 0.125


@pytest.mark.parametrize("rate", [1e-16, 1e-12, 1e-9, -1e-9])
def test_uniform_factor_is_smooth_through_a_rate_of_zero(rate):
    assert float(uniform_present_value_factor(rate, 15)) == pytest.approx(15.0, rel=2e-8)


@pytest.mark.parametrize("gap", [1e-14, -1e-14, 1e-10])
def test_escalated_factor_is_smooth_where_escalation_meets_the_rate(gap):
    assert float(escalated_present_value_factor(0.03, 0.03 + gap, 20)) == pytest.approx(20.0, rel=1e-8)


def test_real_rate_undoes_nominal_rate():
    assert float(real_rate(nominal_rate(0.03, 0.023), 0.023)) == pytest.approx(0.03, rel=1e-13)


def test_each_row_is_discounted_at_its_own_rate():
    flow = np.ones((2, 3, 5))
    rate = np.array([0.0, 0.03, 0.1])
    alone = [float(present_value(np.ones(5), one)) for one in rate]
    assert present_value(flow, rate).tolist() == [alone, alone]
