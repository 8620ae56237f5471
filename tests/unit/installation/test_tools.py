"""Tools: hire, or buy and sell again."""

import numpy as np
import pytest

from econ.installation.tools import BUY, HIRE, ToolPrice, tool_choice, use_d, worn_count
from econ.kernel.errors import OutOfRangeError


def price(buy_usd=150.0, rent_usd_per_d=50.0, resale_frac=0.5, minimum_hire_d=1.0, sales_tax_frac=0.0):
    given = (buy_usd, rent_usd_per_d, resale_frac, minimum_hire_d, sales_tax_frac)
    return ToolPrice(*(np.array([value]) for value in given))


# Bought and sold again: 150 x (1 - 0.5) = 75; hired: 50 a day.
@pytest.mark.parametrize(
    ("days", "way", "cost_usd"), [(0.2, HIRE, 50.0), (1.0, HIRE, 50.0), (1.1, BUY, 75.0), (3.0, BUY, 75.0)]
)
def test_the_cheaper_way_is_taken_by_whole_days(days, way, cost_usd):
    found = tool_choice(price(), np.array([days]))
    assert (found.way[0], found.cost_usd[0]) == (way, cost_usd)


def test_equal_costs_go_to_hire():
    assert tool_choice(price(rent_usd_per_d=75.0), np.array([1.0])).way[0] == HIRE


def test_shortest_hire_counts():
    found = tool_choice(price(minimum_hire_d=1.0, buy_usd=500.0), np.array([0.1]))
    assert found.cost_usd[0] == 50.0


def test_tax_falls_on_price_and_hire_but_not_on_resale():
    bought = tool_choice(price(rent_usd_per_d=np.inf, sales_tax_frac=0.1), np.array([1.0]))
    assert bought.cost_usd[0] == pytest.approx(150.0 * 1.1 - 75.0)
    assert tool_choice(price(sales_tax_frac=0.1), np.array([1.0])).cost_usd[0] == pytest.approx(55.0)


def test_what_a_bought_tool_fetches_is_told_apart_and_a_hired_one_fetches_nothing():
    bought = tool_choice(price(rent_usd_per_d=np.inf, sales_tax_frac=0.1), np.array([1.0]))
    assert bought.resale_usd[0] == 75.0
    assert bought.cost_usd[0] + bought.resale_usd[0] == pytest.approx(165.0)
    assert tool_choice(price(), np.array([1.0])).resale_usd[0] == 0.0
    assert tool_choice(price(buy_usd=np.inf), np.array([9.0])).resale_usd[0] == 0.0


def test_a_tool_without_any_price_is_refused():
    with pytest.raises(OutOfRangeError, match="price of a tool"):
        tool_choice(price(buy_usd=np.inf, rent_usd_per_d=np.inf), np.array([1.0]))


# Three tasks of 2, 3 and 4 h, the first and the last with the tool, in days of 6 h: one day.
@pytest.mark.parametrize(("used", "days"), [([True, False, True], 1.0), ([True, True, True], 1.5), ([False] * 3, 0.0)])
def test_tasks_share_the_days_of_one_hire(used, days):
    found = use_d(np.array([[2.0, 3.0, 4.0]]), np.array([used]), np.array([6.0]))
    assert found[0] == pytest.approx(days)


@pytest.mark.parametrize(("depth_m", "bits"), [(0.1, 1.0), (4.57, 1.0), (4.58, 2.0), (9.2, 3.0)])
def test_a_bit_is_replaced_when_it_has_drilled_its_depth(depth_m, bits):
    assert float(worn_count(np.array(depth_m), np.array(4.57))) == bits


@pytest.mark.parametrize(("depth_m", "life_m"), [(0.0, 4.0), (0.2, 0.0)])
def test_wear_without_depth_or_life_is_refused(depth_m, life_m):
    with pytest.raises(OutOfRangeError, match="above 0 m"):
        worn_count(np.array(depth_m), np.array(life_m))
