"""Depreciation tables of IRS Publication 946 as printed."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.landlord import (
    DepreciationClass,
    bonus_shares_frac,
    half_year_shares_frac,
    mid_month_shares_frac,
    shares_frac,
    tax_saved_nominal_usd,
)

# IRS Publication 946, table A-6, year 1 by month of first service: half a unit in the third decimal of a percent
FIRST_YEAR_PERCENT = [3.485, 3.182, 2.879, 2.576, 2.273, 1.970, 1.667, 1.364, 1.061, 0.758, 0.455, 0.152]


# D01: IRS Publication 946, table A-1, five-year property
def test_five_year_half_year_table_is_the_printed_one():
    percent = 100.0 * half_year_shares_frac(6)[1:]
    assert percent == pytest.approx([20.00, 32.00, 19.20, 11.52, 11.52, 5.76], abs=0.005)
    assert percent.sum() == pytest.approx(100.0)


# D01 derived: 200 % declining balance, half a year first, changing to straight line when that is more
def test_five_year_table_follows_from_double_declining_balance():
    left, shares = 1.0, []
    for year in range(6):
        part = 0.5 if year in (0, 5) else 1.0
        straight = left * part / (5.0 - year + 0.5) if year else left * 0.1
        shares.append(left if year == 5 else max(left * 0.4 * part, straight))
        left -= shares[-1]
    assert half_year_shares_frac(6)[1:] == pytest.approx(shares, abs=5e-5)


# D02
@pytest.mark.parametrize(("month", "percent"), list(enumerate(FIRST_YEAR_PERCENT, start=1)))
def test_first_year_of_a_dwelling_by_month(month, percent):
    assert 100.0 * mid_month_shares_frac(27.5, month, 1)[1] == pytest.approx(percent, abs=0.0005)


# D03: years 2 to 9 3.636, year 10 3.637 (alternating digits), year 28 1.970; adds up to 100
def test_a_dwelling_from_january_on():
    percent = 100.0 * mid_month_shares_frac(27.5, 1, 29)
    assert percent[2:10] == pytest.approx([3.636] * 8, abs=0.001)
    assert percent[28] == pytest.approx(1.970, abs=0.0015)
    assert percent.sum() == pytest.approx(100.0)


# D05: table A-7a prints 2.461 %; the formula gives 2.457 %, which we take
def test_a_short_stay_building_from_january_on_follows_the_formula():
    percent = 100.0 * mid_month_shares_frac(39.0, 1, 1)[1]
    assert percent == pytest.approx(2.457, abs=0.0005)
    assert percent == pytest.approx(2.461, abs=0.005)


# D06
@pytest.mark.parametrize(("rate", "worth"), [(0.05, 0.87460199), (0.07, 0.83154832)])
def test_present_value_of_five_year_depreciation(rate, worth):
    shares = half_year_shares_frac(6)
    assert (shares / (1.0 + rate) ** np.arange(7)).sum() == pytest.approx(worth, abs=1e-8)


# D08: 4,000 USD structural, June, 24 %, 5 %: after-tax cost 3,495.5291, factor 0.52549056
def test_after_tax_cost_of_a_structural_part():
    shares = shares_frac(DepreciationClass.RESIDENTIAL, 6, 40)
    saved = tax_saved_nominal_usd(np.array([4000.0]), shares, np.array([0.24]))
    discount = 1.05 ** -np.arange(41.0)
    assert (shares * discount).sum() == pytest.approx(0.52549056, abs=1e-6)
    assert 4000.0 - (saved[0] * discount).sum() == pytest.approx(3495.5291, abs=1e-3)


# D10
@pytest.mark.parametrize("kind", [DepreciationClass.RESIDENTIAL, DepreciationClass.TRANSIENT])
def test_a_bonus_on_a_building_part_is_refused(kind):
    with pytest.raises(OutOfRangeError, match="recovery period for a bonus"):
        bonus_shares_frac(kind, 1.0, 1, 10)


def test_a_bonus_on_an_appliance_is_taken_in_the_first_year():
    assert bonus_shares_frac(DepreciationClass.APPLIANCE, 1.0, 1, 6).tolist() == [0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0]


def test_a_month_that_is_none_is_refused():
    with pytest.raises(OutOfRangeError, match="first month of service is 13; it must be 1 to 12"):
        mid_month_shares_frac(27.5, 13, 5)
