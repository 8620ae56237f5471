"""Line items: sums, order, cash apart from own time."""

import numpy as np
import pytest

from econ.installation.first_cost import (
    CATEGORIES,
    Line,
    amount_of_usd,
    cash_first_cost_usd,
    first_cost_usd,
    incentive_usd,
    line_items,
)
from econ.kernel.errors import UnknownChoiceError


def line(category, quantity, price, key="a"):
    return Line(key, key, category, "self", "each", "assumption", np.asarray(quantity), np.asarray(price))


LINES = [line("own_time", 10.0, 25.0), line("equipment", 1.0, [100.0, 200.0]), line("incentive", 1.0, -30.0)]


def test_cash_leaves_out_own_time_and_incentives_that_come_later():
    items = line_items(LINES, 2)
    assert cash_first_cost_usd(items).tolist() == [100.0, 200.0]
    assert first_cost_usd(items).tolist() == [350.0, 450.0]
    assert incentive_usd(items).tolist() == [30.0, 30.0]


def test_lines_stand_in_the_order_of_categories():
    items = line_items(LINES, 2)
    places = [CATEGORIES.index(category) for category in items.category]
    assert places == sorted(places)
    assert items.amount_usd.shape == (2, 3)


def test_no_lines_cost_nothing():
    items = line_items([], 3)
    assert first_cost_usd(items).tolist() == [0.0, 0.0, 0.0]
    assert items.amount_usd.shape == (3, 0)


def test_an_unknown_category_is_refused():
    with pytest.raises(UnknownChoiceError, match="gifts"):
        line_items([line("gifts", 1.0, 1.0)], 1)


def test_amount_of_some_categories():
    assert amount_of_usd(LINES, ("equipment", "incentive"), 2).tolist() == [70.0, 170.0]
