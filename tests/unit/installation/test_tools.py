"""Tools: hire, or buy and sell again."""

import numpy as np
import pytest

from econ.installation.tools import BUY, HIRE, ToolPrice, tool_choice
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


def test_a_tool_without_any_price_is_refused():
    with pytest.raises(OutOfRangeError, match="price of a tool"):
        tool_choice(price(buy_usd=np.inf, rent_usd_per_d=np.inf), np.array([1.0]))
