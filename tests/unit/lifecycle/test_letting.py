"""Letting: months of service, depreciation of what is bought when, taxes and rent. Not tax advice."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.discount import present_value
from econ.lifecycle.landlord import DepreciationClass
from econ.lifecycle.letting import Owner, depreciation_nominal_usd, letting_stream, service_month


@pytest.mark.parametrize(
    ("day", "start", "month"), [(0.0, 30.0, 1), (1.0, 30.0, 2), (30.0, 140.0, 6), (300.0, 100.0, 2)]
)
def test_month_of_service(day, start, month):
    assert service_month(np.array([day]), start)[0] == month


def test_appliance_is_written_off_by_the_printed_table():
    bought = np.zeros((1, 9))
    bought[0, 0] = 1000.0
    found = depreciation_nominal_usd(bought, DepreciationClass.APPLIANCE, 0.0, np.array([6.0]))
    assert found[0].tolist() == pytest.approx([0.0, 200.0, 320.0, 192.0, 115.2, 115.2, 57.6, 0.0, 0.0])


def test_later_piece_is_written_off_from_the_year_after_it():
    bought = np.zeros((1, 9))
    bought[0, 3] = 1000.0
    found = depreciation_nominal_usd(bought, DepreciationClass.APPLIANCE, 0.0, np.array([6.0]))
    assert found[0].tolist() == pytest.approx([0.0, 0.0, 0.0, 0.0, 200.0, 320.0, 192.0, 115.2, 115.2])


# 4,000 USD structural, June, 27.5 years, 24 %, 5 %: after-tax cost 3,495.5291 (formula; IRS Publication 946, table A-6)
def test_after_tax_cost_of_a_structural_part_through_the_stream():
    n_year, bought = 40, np.zeros((1, 41))
    bought[0, 0] = 4000.0
    written = depreciation_nominal_usd(bought, DepreciationClass.RESIDENTIAL, 0.0, np.array([6.0]))
    nothing = np.zeros((1, n_year + 1))
    flow = letting_stream(Owner(np.array(0.24), np.array(0.0)), nothing, nothing, [written])
    assert 4000.0 + float(present_value(flow, np.array(0.05))[0]) == pytest.approx(3495.5291, abs=1e-3)


def test_rent_is_taxed_and_running_costs_are_taken_off():
    rent, running = np.array([[0.0, 600.0]]), np.array([[0.0, 200.0]])
    flow = letting_stream(Owner(np.array(0.25), np.array(0.0)), rent, running, [np.zeros((1, 2))])
    assert flow[0].tolist() == [0.0, -600.0 + 0.25 * 400.0]


def test_bonus_on_a_part_of_the_building_is_refused():
    with pytest.raises(OutOfRangeError, match=r"recovery period for a bonus is 27\.5"):
        depreciation_nominal_usd(np.ones((1, 3)), DepreciationClass.RESIDENTIAL, 1.0, np.array([1.0]))
