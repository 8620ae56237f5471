"""Money functions of spreadsheets and of numpy-financial by our factors; prices, inflation and shares of doubt."""

import numpy as np
import numpy_financial as npf
import pytest

from econ.kernel.constants import MONTH_DAYS
from econ.lifecycle.discount import (
    capital_recovery_factor,
    present_value,
    single_compound_amount_factor,
    sinking_fund_factor,
    uniform_compound_amount_factor,
    uniform_present_value_factor,
)
from econ.lifecycle.loan import level_payment_usd
from econ.tables.loaders import load_tables
from econ.uncertainty.draws import draws_of
from tests.printed import printed

MONTHS = float(len(MONTH_DAYS))


def modified_rate(flow, finance_rate, reinvest_rate):
    """Return the modified internal rate: gains put aside at one rate against money put in at another."""
    flow, last = np.array(flow), len(flow) - 1
    gains = float(present_value(np.maximum(flow, 0.0), reinvest_rate))
    spent = float(present_value(np.minimum(flow, 0.0), finance_rate))
    grown = gains * float(single_compound_amount_factor(reinvest_rate, last))
    return (-grown / spent) ** (1.0 / last) - 1.0


# C13: numpy-financial 1.0.0, docstrings of nper, fv and pv
def test_periods_future_and_present_value_of_documented_examples():
    assert float(level_payment_usd(8000.0, 0.07 / MONTHS, 64.07335)) == pytest.approx(150.0, abs=1e-3)
    monthly = 0.05 / MONTHS
    grown = 100.0 * float(single_compound_amount_factor(monthly, 120)) + 100.0 * float(
        uniform_compound_amount_factor(monthly, 120)
    )
    assert grown == pytest.approx(15692.92889433575, rel=1e-12)
    now = 15692.93 / float(single_compound_amount_factor(monthly, 120))
    assert 100.0 * float(uniform_present_value_factor(monthly, 120)) - now == pytest.approx(-100.00067131625819)


# C14: numpy-financial docstring of mirr
def test_modified_rate_of_a_documented_example():
    found = modified_rate([-100.0, 50.0, -60.0, 70.0], 0.10, 0.12)
    assert found == pytest.approx(-0.03909366594356467, abs=1e-12)
    assert found == pytest.approx(float(npf.mirr([-100.0, 50.0, -60.0, 70.0], 0.10, 0.12)), abs=1e-12)


# C18: Excel function help, MIRR: five years at 10 and 12 %, three years, and 14 % put aside
@pytest.mark.parametrize(
    ("later", "reinvest", "value"),
    [
        ([39000.0, 30000.0, 21000.0, 37000.0, 46000.0], 0.12, "0.1260941304"),
        ([39000.0, 30000.0, 21000.0], 0.12, "-0.0480446552"),
        ([39000.0, 30000.0, 21000.0, 37000.0, 46000.0], 0.14, "0.1347591108"),
    ],
)
def test_modified_rate_agrees_with_a_spreadsheet(later, reinvest, value):
    assert modified_rate([-120000.0, *later], 0.10, reinvest) == printed(value)


# C20: Excel function help, PMT (from memory): 1,037.03; at the beginning of each month 1,030.16; saving up 129.08
def test_payments_agree_with_a_spreadsheet():
    at_end = 10000.0 * float(capital_recovery_factor(0.08 / MONTHS, 10.0))
    assert at_end == printed("1037.0321")
    assert at_end / float(single_compound_amount_factor(0.08 / MONTHS, 1)) == printed("1030.1643")
    assert 50000.0 * float(sinking_fund_factor(0.06 / MONTHS, 216.0)) == printed("129.0812")


# G01: CPI-U, seasonally adjusted, December 2023 and 2024: a rate within the range that the cases start from
def test_consumer_prices_of_2024_lie_within_the_usual_inflation():
    rise = 317.603 / 308.735 - 1.0
    assert 100.0 * rise == printed("2.8724")
    usual = load_tables().inputs["money.inflation_frac"].spread()
    assert usual.low <= rise <= usual.high


# G03: US EIA SEDS, residential, nominal USD per million Btu 2013 and 2023; less 2.8 % a year of prices near our usual
@pytest.mark.parametrize(
    ("before", "after", "percent", "path"),
    [
        (35.54, 46.89, "2.81022", "prices.electricity_escalation_frac"),
        (10.01, 14.77, "3.96679", "prices.fuel_escalation_frac"),
    ],
)
def test_ten_years_of_prices_stand_behind_the_usual_growth(before, after, percent, path):
    growth = (after / before) ** 0.1 - 1.0
    assert 100.0 * growth == printed(percent)
    tables = load_tables()
    is_fuel = path == "prices.fuel_escalation_frac"
    usual = tables.fuels["gas"].spread("escalation_frac") if is_fuel else tables.inputs[path].spread()
    real = (1.0 + growth) / (317.603 / 308.735) - 1.0
    assert usual.low <= real <= usual.high


# G04: ASHRAE equipment life expectancy chart (read in a copy): window unit 10, ductless (heat pump, split) 15 years
@pytest.mark.parametrize(("key", "years"), [("window_unit", 10.0), ("ductless", 15.0)])
def test_usual_lives_are_the_charts_medians(key, years):
    assert load_tables().lives[key].spread("life_yr").likely == years


# F10: US EIA 2023 state data, kg CO2 per kWh generated (generation basis; losses are apart)
@pytest.mark.parametrize(("state", "kg"), [("WV", 0.8996), ("VT", 0.0039), ("CA", 0.2094), ("TX", 0.4059)])
def test_carbon_dioxide_of_state_grids(state, kg):
    assert load_tables().prices[state].number("grid_kg_co2e_per_kwh") == pytest.approx(kg, abs=5e-4)


# F08: propane is 62.87 kg per million Btu as a liquid (40 CFR 98, table C-1) and 61.46 as a gas (EPA hub 2024)
def test_propane_is_taken_by_the_liquid_factor():
    fuel = load_tables().fuels["propane"]
    per_mmbtu = fuel.number("kg_co2e_per_unit") / fuel.number("kwh_per_unit") * 1e6 / 3412.14
    assert per_mmbtu == pytest.approx(62.87, abs=0.05)
    assert abs(per_mmbtu - 61.46) > 1.0


def two_matrices(n_input, n_draw, seed):
    """Return two independent sets of evenly spread points, each of shape (n_input, n_draw)."""
    none = np.zeros(2 * n_input)
    points = draws_of(none, none, none, n_draw, seed).points(0, n_draw)
    return points[:n_input], points[n_input:]


def shares_of_variance(model, n_input, n_draw, seed):
    """Return first-order and total shares of variance by each input, and the variance (Saltelli 2010, Jansen 1999)."""
    one, other = two_matrices(n_input, n_draw, seed)
    at_one, at_other = model(one), model(other)
    variance = np.var(np.concatenate([at_one, at_other]))
    first, total = np.empty(n_input), np.empty(n_input)
    for place in range(n_input):
        mixed = one.copy()
        mixed[place] = other[place]
        at_mixed = model(mixed)
        first[place] = np.mean(at_other * (at_mixed - at_one)) / variance
        total[place] = 0.5 * np.mean((at_one - at_mixed) ** 2) / variance
    return first, total, variance


def ishigami(points):
    x = np.pi * (2.0 * points - 1.0)
    return np.sin(x[0]) + 7.0 * np.sin(x[1]) ** 2 + 0.1 * x[2] ** 4 * np.sin(x[0])


# H07: Ishigami & Homma (1990), a = 7, b = 0.1; Saltelli et al. (2008): the draws find the known shares within 0.02
def test_draws_find_the_shares_of_doubt_of_a_known_function():
    first, total, variance = shares_of_variance(ishigami, 3, 2**14, 11)
    assert variance == pytest.approx(13.844587941, rel=0.005)
    assert first == pytest.approx([0.313905, 0.442411, 0.0], abs=0.02)
    assert total == pytest.approx([0.557589, 0.442411, 0.243684], abs=0.02)
    assert total[0] - first[0] == pytest.approx(0.243684, abs=0.03)


# H07, analytic: variance a^2/8 + b pi^4/5 + b^2 pi^8/18 + 1/2 and its parts
def test_known_shares_follow_from_their_formulas():
    a, b = 7.0, 0.1
    whole = a**2 / 8.0 + b * np.pi**4 / 5.0 + b**2 * np.pi**8 / 18.0 + 0.5
    alone = 0.5 * (1.0 + b * np.pi**4 / 5.0) ** 2
    joint = b**2 * np.pi**8 * (1.0 / 18.0 - 1.0 / 50.0)
    assert whole == printed("13.844587941")
    assert alone / whole == printed("0.313905")
    assert a**2 / 8.0 / whole == printed("0.442411")
    assert joint / whole == printed("0.243684")
    assert (alone + joint) / whole == printed("0.557589")


# H09: 3 x1 + 2 x2 + x3, alike and independent: c^2 over the sum of squares
def test_shares_of_a_sum_are_the_squares_of_its_coefficients():
    first, total, _ = shares_of_variance(lambda x: 3.0 * x[0] + 2.0 * x[1] + x[2], 3, 2**14, 5)
    expected = np.array([9.0, 4.0, 1.0]) / 14.0
    assert expected[0] == printed("0.642857")
    assert first == pytest.approx(expected, abs=0.002)
    assert total == pytest.approx(expected, abs=0.002)
