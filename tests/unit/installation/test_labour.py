"""Trade prices by hand."""

import numpy as np
import pytest

from econ.installation.labour import circuit_price_usd, crew_rate_usd_per_h, visit_charge_usd
from econ.kernel.errors import OutOfRangeError

PRICES = np.array([[550.0, 700.0, 950.0, 1250.0]])


@pytest.mark.parametrize(
    ("distance_m", "price_usd"),
    [(0.0, 550.0), (5.0, 550.0), (7.5, 625.0), (10.0, 700.0), (15.0, 825.0), (30.0, 1250.0), (40.0, 1550.0)],
)
def test_circuit_price_lies_on_lines_between_listed_distances(distance_m, price_usd):
    assert circuit_price_usd(np.array([distance_m]), PRICES)[0] == pytest.approx(price_usd)


def test_a_negative_distance_is_refused():
    with pytest.raises(OutOfRangeError, match="distance to the panel"):
        circuit_price_usd(np.array([-0.1]), PRICES)


@pytest.mark.parametrize(("hours_h", "charge_usd"), [(0.0, 0.0), (1.4, 175.0), (1.4583, 175.0), (1.5, 180.0)])
def test_a_visit_costs_at_least_the_minimum(hours_h, charge_usd):
    found = visit_charge_usd(np.array([hours_h]), np.array([120.0]), np.array([175.0]))
    assert found[0] == pytest.approx(charge_usd, abs=0.01)


def test_a_mate_shares_half_of_the_hours():
    rate = crew_rate_usd_per_h(np.array([True, False]), np.array([115.0]), np.array([75.0]))
    assert rate.tolist() == [[95.0, 115.0]]
