"""The wait before service: what is there now bears the cost until then."""

import numpy as np
import pytest

from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.service import waited_frac, waited_month_frac, yearly_cost, yearly_upkeep

FULL = np.full((2, 1, 12), 10.0)
SUMMER = np.where(np.isin(np.arange(12), [5, 6, 7]), 40.0, 0.0)[None]
FIRST_OF_JUNE = 151.0


def test_service_from_the_decision_date_has_no_waiting():
    assert yearly_cost(FULL, SUMMER, np.zeros((2, 1)), 0.0, 3).tolist() == [[[120.0] * 3]] * 2


def test_months_waited_cost_what_is_there_now():
    june = np.array([[30.0], [0.0]])
    yearly = yearly_cost(FULL, SUMMER, june, FIRST_OF_JUNE, 2)
    assert yearly[:, 0].tolist() == [[pytest.approx(110.0 + 40.0), 120.0], [120.0, 120.0]]


def test_the_same_wait_in_winter_costs_less():
    wait = np.array([[30.0], [30.0]])
    assert yearly_cost(FULL, SUMMER, wait, 0.0, 1)[0, 0, 0] == pytest.approx(120.0 - 10.0 * 30.0 / 31.0)


def test_a_wait_past_a_year_reaches_into_the_second():
    wait = np.array([[DAYS_PER_YEAR + 31.0], [0.0]])
    yearly = yearly_cost(FULL, SUMMER, wait, 0.0, 3)[0, 0]
    assert yearly.tolist() == pytest.approx([120.0, 110.0, 120.0])


def test_a_whole_year_waited_passes_every_month():
    assert waited_month_frac(np.array(DAYS_PER_YEAR), 200.0) == pytest.approx(np.ones(12))


@pytest.mark.parametrize("doy", [0.0, 58.0, 139.0, 364.0])
def test_days_waited_add_up_over_months(doy):
    wait = np.array([0.0, 0.4, 31.0, 77.25, 364.5])
    assert waited_month_frac(wait, doy) @ np.array(MONTH_DAYS) == pytest.approx(wait)


def test_the_decision_month_is_made_of_its_two_ends():
    share = waited_month_frac(np.array(355.0), 10.0)
    assert share[0] == pytest.approx(21.0 / 31.0)
    assert share[1:] == pytest.approx(np.ones(11))


@pytest.mark.parametrize("days", [-0.5, float("nan")])
def test_service_before_the_decision_is_refused(days):
    with pytest.raises(OutOfRangeError, match=r"in service is .* it must be 0 or later"):
        waited_frac(np.array([0.0, days]), 2)


def test_upkeep_is_spread_evenly_over_the_year():
    upkeep = yearly_upkeep(np.array([[100.0]]), np.array([20.0]), np.array([[73.0]]), 2)
    assert upkeep[0, 0].tolist() == pytest.approx([84.0, 100.0])
