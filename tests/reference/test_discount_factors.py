"""Discount factors against printed and recomputed figures."""

import numpy as np
import numpy_financial as npf
import pytest

from econ.lifecycle.discount import (
    Timing,
    capital_recovery_factor,
    escalated_present_value_factor,
    indexed_present_value_factor,
    monthly_rate,
    nominal_rate,
    present_value,
    single_compound_amount_factor,
    single_present_value_factor,
    sinking_fund_factor,
    uniform_compound_amount_factor,
    uniform_present_value_factor,
)
from tests.printed import printed


# NIST Handbook 135 (1995), app. D: printed 0.554 and 0.701, six digits recomputed from eq. D.2.1.1
@pytest.mark.parametrize(
    ("at_yr", "short", "six"), [(20, "0.554", "0.553676"), (12, "0.701", "0.701380")], ids=["20 years", "12 years"]
)
def test_single_present_value_factor_at_three_percent(at_yr, short, six):
    factor = float(single_present_value_factor(0.03, at_yr))
    assert factor == printed(short)
    assert factor == printed(six)


# NIST Handbook 135 (1995), app. D, and NISTIR 85-3273 table A-2: printed 17.41 and 14.88
@pytest.mark.parametrize(
    ("rate", "years", "value"),
    [
        (0.03, 25, "17.413148"),
        (0.03, 25, "17.41"),
        (0.03, 20, "14.877475"),
        (0.03, 20, "14.88"),
        (0.07, 15, "9.107914"),  # ASTM E917 table 1 formula
        (0.07, 25, "11.653583"),
    ],
)
def test_uniform_present_value_factor(rate, years, value):
    assert float(uniform_present_value_factor(rate, years)) == printed(value)


# ASTM E917: the factor's limit at a rate of nothing is the number of years
def test_uniform_present_value_factor_at_zero_rate_is_the_number_of_years():
    assert float(uniform_present_value_factor(0.0, 15)) == 15.0


# Handbook 135 app. D: (1+e)/(d-e) [1 - ((1+e)/(1+d))^N]
def test_escalated_factor_agrees_with_closed_form_and_sum():
    factor = float(escalated_present_value_factor(0.03, 0.01, 20))
    assert factor == printed("16.382723")
    assert factor == pytest.approx(sum((1.01 / 1.03) ** t for t in range(1, 21)), rel=1e-13)


# ASTM E917: limit where escalation equals the discount rate
def test_escalated_factor_where_escalation_equals_the_rate_is_the_number_of_years():
    assert float(escalated_present_value_factor(0.03, 0.03, 20)) == 20.0


# ASTM E917, uniform capital recovery
@pytest.mark.parametrize(("years", "value"), [(8, "0.15472181"), (3, "0.36720856")])
def test_capital_recovery_factor_at_five_percent(years, value):
    assert float(capital_recovery_factor(0.05, years)) == printed(value)


# ASTM E917 factor table at 8 %, 10 years: printed 2.1589, 14.4866, 0.06903
@pytest.mark.parametrize(
    ("factor", "value"),
    [
        (single_compound_amount_factor, "2.158925"),
        (uniform_compound_amount_factor, "14.486562"),
        (sinking_fund_factor, "0.06902949"),
        (single_compound_amount_factor, "2.1589"),
        (uniform_compound_amount_factor, "14.4866"),
        (sinking_fund_factor, "0.06903"),
    ],
)
def test_factors_at_eight_percent_over_ten_years(factor, value):
    assert float(factor(0.08, 10)) == printed(value)


# ASTM E917: identities between the six factors
@pytest.mark.parametrize("rate", [0.01, 0.03, 0.07, 0.25])
@pytest.mark.parametrize("years", [1, 5, 15, 40])
def test_factors_keep_their_identities(rate, years):
    upv = float(uniform_present_value_factor(rate, years))
    assert upv * float(capital_recovery_factor(rate, years)) == pytest.approx(1.0, rel=1e-12)
    assert float(sinking_fund_factor(rate, years)) == pytest.approx(
        float(capital_recovery_factor(rate, years)) - rate, rel=1e-12, abs=1e-12 * rate
    )
    assert float(uniform_compound_amount_factor(rate, years)) == pytest.approx(
        upv * float(single_compound_amount_factor(rate, years)), rel=1e-12
    )


# Handbook 135, section on inflation; 10 CFR 436.14(a)
def test_nominal_rate_of_three_percent_real_at_two_point_three_inflation():
    assert float(nominal_rate(0.03, 0.023)) == printed("0.053690")


# Newnan eq. 4-32, quoted in the EnergyPlus Engineering Reference
def test_monthly_inflation_compounds_to_the_yearly_one():
    assert float(monthly_rate(0.025)) == printed("0.002059836270")


# EnergyPlus Engineering Reference, life-cycle cost computations: exponent t, t - 1/2 or t - 1
@pytest.mark.parametrize(
    ("timing", "values"),
    [
        (Timing.END, ("0.970874", "0.942596", "0.915142")),
        (Timing.MIDDLE, ("0.985329", "0.956630", "0.928767")),
        (Timing.BEGINNING, ("1.000000", "0.970874", "0.942596")),
    ],
)
def test_timing_moves_the_exponent(timing, values):
    factor = single_present_value_factor(0.03, np.array([1, 2, 3]), timing)
    assert factor.tolist() == [printed(value) for value in values]


# NISTIR 85-3273-26 (2011), table Ca-5, US average commercial electricity
def test_indexed_factor_over_published_price_indices():
    index = [0.9838, 0.9730, 0.9632, 0.9611, 0.9571, 0.9553, 0.9539, 0.9521, 0.9546, 0.9550]
    assert float(indexed_present_value_factor(0.03, np.array(index))) == printed("8.202768")


# numpy-financial documentation of npv (year 0 first) and of pmt
def test_present_value_agrees_with_a_documented_example():
    flow = [-40000.0, 5000.0, 8000.0, 12000.0, 30000.0]
    assert float(present_value(flow, 0.08)) == printed("3065.22267")
    assert float(present_value(flow, 0.08)) == pytest.approx(npf.npv(0.08, flow), rel=1e-12)


def test_loan_payment_by_capital_recovery_agrees_with_a_documented_example():
    assert 200000.0 * float(capital_recovery_factor(0.075 / 12.0, 15.0 * 12.0)) == printed("1854.0247200055")


# Excel function help, NPV: the first value is discounted one period, so it stands in year 1 here
def test_present_value_agrees_with_a_spreadsheet_once_the_first_year_is_shifted():
    assert float(present_value([0.0, -10000.0, 3000.0, 4200.0, 6800.0], 0.10)) == printed("1188.4434123352")
    assert float(present_value([-40000.0, 8000.0, 9200.0, 10000.0, 12000.0, 14500.0], 0.08)) == printed("1922.06")
    assert float(present_value([-40000.0, 8000.0, 9200.0, 10000.0, 12000.0, 14500.0, -9000.0], 0.08)) == printed(
        "-3749.47"
    )
