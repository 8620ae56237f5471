"""When cash leaves: goods when ordered, labour when it works, a contractor by deposit and rest."""

import numpy as np
import pytest

from econ.installation.cash import cash_by_month_usd
from econ.installation.first_cost import Line, cash_first_cost_usd, line_items


def items(n_row=1):
    lines = [
        Line("kit", "Kit", "equipment", "self", "each", "", np.full(n_row, 1.0), np.array(1000.0)),
        Line("electrician", "Circuit", "labour", "electrician", "each", "", np.full(n_row, 1.0), np.array(400.0)),
        Line("crew", "Crew", "labour", "contractor", "each", "", np.full(n_row, 1.0), np.array(600.0)),
        Line("own_time", "Own", "own_time", "self", "hour", "", np.full(n_row, 10.0), np.array(25.0)),
        Line("incentive", "Incentive", "incentive", "self", "each", "", np.full(n_row, 1.0), np.array(-200.0)),
    ]
    return line_items(lines, n_row)


def test_goods_and_deposit_go_first_and_the_rest_in_the_month_it_works():
    found = cash_by_month_usd(items(), np.array([45.0]), np.array(0.25), 3)
    assert found[0].tolist() == [1150.0, 850.0, 0.0]  # the incentive of 200 comes after that


@pytest.mark.parametrize("day", [0.0, 20.0, 200.0, np.nan])
def test_months_add_up_to_the_cash_first_cost(day):
    found = cash_by_month_usd(items(2), np.array([day, 31.0]), np.array([0.1, 0.5]), 3)
    np.testing.assert_allclose(found.sum(axis=1), cash_first_cost_usd(items(2)))
