"""A full year's energy of one way to go, against sums by hand."""

from typing import Any

import numpy as np
import pytest

from econ.case.choices import code
from econ.climate.weather import FACES, Weather
from econ.energy.fuel import GAS_KWH_PER_THERM
from econ.equipment.curve import variable_speed_split
from econ.equipment.day_run import day_run
from econ.equipment.demand import Demand
from econ.equipment.machine import MachineRows
from econ.equipment.window_curve import no_machine
from econ.evaluate.wiring.energy import SHORT_FRAC, EnergyUse, energy_of
from tests.unit.equipment.builders import split_ratings
from tests.unit.evaluate.wiring.test_equipment import STRUCTURE

N_DAY = 12
WEIGHT_D = np.full(N_DAY, 365.0 / 12.0)
HOURS_H = 8760.0


def weather() -> Weather:
    zero = np.zeros((24, N_DAY))
    return Weather(zero, zero, np.zeros((24, N_DAY, len(FACES))), np.arange(N_DAY), WEIGHT_D, 101325.0, False, "a test")


def use_of(
    machine: MachineRows, need: tuple[float, float, float], at_c: float = 0.0, heat: str = "gas", **changed: Any
) -> EnergyUse:
    """Return the energy of a need that is the same all year: cooling, drying and heating in W."""
    numbers: dict[str, Any] = {
        "now.heat": code("now.heat", heat),
        "use.present_heat_stays": code("use.present_heat_stays", "yes"),
        "use.dry": code("use.dry", "no"),
        "now.heat_efficiency_frac": 0.8,
        "now.dehumidifier_kg_per_kwh": 1.7,
        "prices.electricity_usd_per_kwh": 0.2,
        "prices.grid_kg_co2e_per_kwh": 0.4,
        "prices.gas_usd_per_therm": 1.5,
        "prices.propane_usd_per_gal": 2.5,
        "prices.oil_usd_per_gal": 3.8,
        "prices.wood_usd_per_cord": 280.0,
    }
    numbers |= {name.replace("__", "."): value for name, value in changed.items()}
    n_row = machine.shr.size
    demand = Demand(*(np.full((24, n_row, N_DAY), value) for value in (*need, at_c)), np.zeros(n_row))
    values = {path: np.asarray(value, dtype=np.float64) for path, value in numbers.items()}
    return energy_of(STRUCTURE, values, weather(), day_run(machine, demand, SHORT_FRAC))


def test_heat_without_a_machine_comes_from_the_present_heater() -> None:
    use = use_of(no_machine(1), (0.0, 0.0, 1000.0))
    assert use.make_up_heat_kwh.sum() == pytest.approx(HOURS_H)
    assert use.fuel_kwh.sum() == pytest.approx(HOURS_H / 0.8)
    assert use.fuel_usd.sum() == pytest.approx(HOURS_H / 0.8 * 1.5 / GAS_KWH_PER_THERM)
    assert use.electricity_kwh.sum() == 0.0
    assert use.energy_cost_usd_per_yr == pytest.approx(use.fuel_usd.sum())
    assert use.unmet_heating_h == pytest.approx(HOURS_H)


def test_an_electric_heater_turns_the_same_heat_into_electricity() -> None:
    use = use_of(no_machine(1), (0.0, 0.0, 1000.0), heat="electric")
    assert use.electricity_kwh.sum() == pytest.approx(HOURS_H)
    assert use.electricity_usd.sum() == pytest.approx(HOURS_H * 0.2)
    assert use.fuel_kwh.sum() == use.fuel_usd.sum() == 0.0


@pytest.mark.parametrize("changed", [{"heat": "none"}, {"use__present_heat_stays": 1.0}])
def test_without_a_heater_that_stays_the_heat_comes_from_resistance(changed: dict[str, Any]) -> None:
    use = use_of(no_machine(1), (0.0, 0.0, 1000.0), **changed)
    assert use.electricity_kwh.sum() == pytest.approx(HOURS_H)
    assert use.fuel_kwh.sum() == 0.0
    assert use.unmet_heating_kwh_per_yr == pytest.approx(HOURS_H)


@pytest.mark.parametrize(
    ("heat", "price"), [("propane", 2.5 / 26.801936), ("oil", 3.8 / 40.590343), ("wood", 280.0 / 5861.4214)]
)
def test_each_fuel_has_its_own_price(heat: str, price: float) -> None:
    use = use_of(no_machine(1), (0.0, 0.0, 800.0), heat=heat)
    assert use.fuel_usd.sum() == pytest.approx(0.8 * HOURS_H / 0.8 * price, rel=1e-6)


def test_a_heater_that_is_not_known_is_priced_as_gas() -> None:
    gas, unknown = (use_of(no_machine(1), (0.0, 0.0, 800.0), heat=heat) for heat in ("gas", "not_known"))
    assert unknown.fuel_usd.sum() == gas.fuel_usd.sum() > 0.0


def test_a_heat_pump_that_meets_the_need_leaves_nothing_to_make_up() -> None:
    use = use_of(variable_speed_split(split_ratings()), (0.0, 0.0, 1000.0), at_c=8.0)
    assert use.fuel_kwh.sum() == use.unmet_heating_h.sum() == 0.0
    assert HOURS_H / 6.0 < use.electricity_kwh.sum() < HOURS_H / 2.5


def test_a_machine_without_work_draws_its_standby_all_year() -> None:
    use = use_of(variable_speed_split(split_ratings()), (0.0, 0.0, 0.0))
    assert use.electricity_kwh.sum() == pytest.approx(3.0 * HOURS_H / 1000.0)


def test_cooling_that_is_missing_is_told_and_not_paid_for() -> None:
    use = use_of(no_machine(1), (500.0, 0.0, 0.0), at_c=30.0)
    assert use.unmet_cooling_kwh_per_yr == pytest.approx(0.5 * HOURS_H)
    assert use.unmet_cooling_h == pytest.approx(HOURS_H)
    assert use.energy_cost_usd_per_yr == 0.0


@pytest.mark.parametrize(("dry", "is_paid"), [("yes", True), ("no", False)])
def test_moisture_left_over_is_dried_only_where_asked_for(dry: str, is_paid: bool) -> None:
    use = use_of(no_machine(1), (0.0, 100.0, 0.0), use__dry=code("use.dry", dry))
    water_kg = 0.1 * HOURS_H * 3.6 / 2.501
    assert use.unmet_moisture_kg_per_yr == pytest.approx(water_kg)
    assert use.electricity_kwh.sum() == pytest.approx(water_kg / 1.7 if is_paid else 0.0)


def test_prices_and_heaters_may_differ_row_by_row() -> None:
    both = use_of(
        no_machine(2),
        (0.0, 0.0, 1000.0),
        now__heat=[code("now.heat", "gas"), code("now.heat", "electric")],
        prices__electricity_usd_per_kwh=[0.1, 0.3],
    )
    assert both.fuel_kwh.sum(axis=1) == pytest.approx([HOURS_H / 0.8, 0.0])
    assert both.energy_cost_usd_per_yr[1] == pytest.approx(0.3 * HOURS_H)
    assert both.by_use_kwh.sum(axis=1) == pytest.approx(both.electricity_kwh[:1])
    for name in set(both.__slots__) - {"by_use_kwh"}:
        assert getattr(both, name).shape in ((2,), (2, 12))


# Gas 5.3060 kg a therm (40 CFR 98, table C-1), 0.4 kg a kWh bought; wood counts as regrown.
@pytest.mark.parametrize(
    ("heat", "kg_per_kwh"),
    [("gas", 5.3060 / GAS_KWH_PER_THERM / 0.8), ("not_known", 5.3060 / GAS_KWH_PER_THERM / 0.8), ("electric", 0.4),
     ("none", 0.4), ("wood", 0.0)],
)  # fmt: skip
def test_carbon_dioxide_follows_what_heats(heat: str, kg_per_kwh: float) -> None:
    use = use_of(no_machine(1), (0.0, 0.0, 1000.0), heat=heat)
    assert use.emitted_kg_co2e_per_yr == pytest.approx(HOURS_H * kg_per_kwh, rel=1e-6)


@pytest.mark.parametrize("heat", ["gas", "electric", "wood"])
def test_a_price_of_carbon_dioxide_adds_its_tonnes(heat: str) -> None:
    plain = use_of(no_machine(1), (0.0, 0.0, 1000.0), heat=heat)
    priced = use_of(no_machine(1), (0.0, 0.0, 1000.0), heat=heat, prices__carbon_usd_per_t=60.0)
    added = priced.energy_cost_usd_per_yr - plain.energy_cost_usd_per_yr
    assert added == pytest.approx(plain.emitted_kg_co2e_per_yr / 1000.0 * 60.0)
