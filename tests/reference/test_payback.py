"""Payback, annual cost and rates of return against published worked examples."""

import numpy as np
import numpy_financial as npf
import pytest

from econ.lifecycle.discount import capital_recovery_factor, present_value
from econ.lifecycle.payback import discounted_payback, simple_payback
from econ.lifecycle.rate_of_return import internal_rate
from tests.printed import printed


# Corporate-finance exercise (table 9.1): payback 3.10, NPV printed 84.23 (cut, not rounded: 84.236)
def test_four_year_project_at_ten_percent():
    flow = np.array([-200.0, 50.0, 60.0, 70.0, 200.0])
    assert float(simple_payback(flow).after_yr) == printed("3.10")
    assert float(discounted_payback(flow, np.array(0.10)).after_yr) == printed("3.3834")
    assert float(present_value(flow, 0.10)) == printed("84.236")


# Published question: discounted payback 3.15, NPV recomputed
def test_four_year_project_at_eleven_percent():
    flow = np.array([-210.0, 85.0, 75.0, 85.0, 105.0])
    assert float(discounted_payback(flow, np.array(0.11)).after_yr) == printed("3.15")
    assert float(simple_payback(flow).after_yr) == printed("2.588235")
    assert float(present_value(flow, 0.11)) == printed("58.7663")


# Published example: 2,324,000 against 600,000 a year for six years at 11 %, NPV printed 214,323
def test_large_project_with_level_savings():
    flow = np.array([-2_324_000.0, *[600_000.0] * 6])
    assert float(discounted_payback(flow, np.array(0.11)).after_yr) == printed("5.331879")
    assert float(present_value(flow, 0.11)) == printed("214323")


# Equivalent annual cost example: A 31,360; B is printed 30,780, a slip of the digits of 30,708
@pytest.mark.parametrize(
    ("price", "life", "yearly", "value"), [(50_000.0, 3, 13_000.0, "31360.43"), (150_000.0, 8, 7_500.0, "30708.27")]
)
def test_equivalent_annual_cost(price, life, yearly, value):
    assert price * float(capital_recovery_factor(0.05, life)) + yearly == printed(value)


# Textbook flow with two internal rates, 25 % and 400 %
def test_two_internal_rates_are_reported_as_not_unique():
    flow = np.array([-4_000.0, 25_000.0, -25_000.0])
    found = internal_rate(flow)
    assert float(present_value(flow, 0.25)) == pytest.approx(0.0, abs=1e-9)
    assert float(present_value(flow, 4.0)) == pytest.approx(0.0, abs=1e-9)
    assert (bool(found.exists), bool(found.is_multiple)) == (False, True)
    assert np.isnan(found.rate_frac)


# numpy-financial documentation of irr; those flows that have one rate only
@pytest.mark.parametrize(
    ("flow", "value"),
    [
        ([-100.0, 39.0, 59.0, 55.0, 20.0], "0.28095"),
        ([-100.0, 0.0, 0.0, 74.0], "-0.0955"),
        ([-100.0, 100.0, 0.0, 7.0], "0.06206"),
        ([-250_000.0, 100_000.0, 150_000.0, 200_000.0, 250_000.0, 300_000.0], "0.567230334436"),
    ],
)
def test_internal_rate_of_documented_flows(flow, value):
    assert float(internal_rate(np.array(flow)).rate_frac) == printed(value)


# The same documentation gives one rate for these two; a second one exists, so that none is given here
@pytest.mark.parametrize(
    ("flow", "documented", "second_low", "second_high"),
    [([-100.0, 100.0, 0.0, -7.0], -0.0833, -0.9, -0.5), ([-5.0, 10.5, 1.0, -8.0, 1.0], 0.0886, 0.1, 2.0)],
)
def test_documented_flows_with_a_second_rate_are_reported_as_not_unique(flow, documented, second_low, second_high):
    assert float(present_value(flow, documented)) == pytest.approx(0.0, abs=0.01)
    assert npf.npv(second_low, flow) * npf.npv(second_high, flow) < 0.0
    found = internal_rate(np.array(flow))
    assert (bool(found.exists), bool(found.is_multiple)) == (False, True)


# Excel function help, IRR: -2.1 %, 8.7 %, -44.4 %
@pytest.mark.parametrize(
    ("later", "value"),
    [
        ([12_000.0, 15_000.0, 18_000.0, 21_000.0], "-0.0212448483"),
        ([12_000.0, 15_000.0, 18_000.0, 21_000.0, 26_000.0], "0.0866309480"),
        ([12_000.0, 15_000.0], "-0.4435069413"),
    ],
)
def test_internal_rate_agrees_with_a_spreadsheet(later, value):
    assert float(internal_rate(np.array([-70_000.0, *later])).rate_frac) == printed(value)
