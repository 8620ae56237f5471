"""Fuel and what it emits."""

import numpy as np
import pytest

from econ.energy.emissions import emitted_kg_co2e
from econ.energy.fuel import fuel_kwh, gas_price_usd_per_kwh, wood_price_usd_per_kwh
from econ.kernel.errors import OutOfRangeError


def test_fuel_is_heat_over_efficiency() -> None:
    heat_kwh = np.full((2, 12), 80.0)
    assert fuel_kwh(heat_kwh, np.array([0.8, 0.5])).sum(axis=1) == pytest.approx([1200.0, 1920.0])


@pytest.mark.parametrize("efficiency", [0.0, -0.1])
def test_an_efficiency_not_above_zero_is_refused(efficiency: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"heat_efficiency_frac is .*; it must be above 0"):
        fuel_kwh(np.ones((1, 12)), np.array([efficiency]))


def test_a_cord_of_wood_holds_twenty_million_btu() -> None:
    gas = gas_price_usd_per_kwh(np.array(1.0))
    assert wood_price_usd_per_kwh(np.array(200.0)) == pytest.approx(gas)


def test_emissions_are_the_years_energy_times_the_factor() -> None:
    assert emitted_kg_co2e(np.full((2, 12), 10.0), np.array([0.4, 0.0])).tolist() == pytest.approx([48.0, 0.0])
