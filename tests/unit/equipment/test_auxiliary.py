"""Heaters and pump, by the hours in which they run."""

from dataclasses import replace

import numpy as np
import pytest

from econ.equipment.auxiliary import AuxiliaryRows, auxiliary_w
from econ.equipment.curve import variable_speed_split
from econ.equipment.part_load import operation
from tests.unit.equipment.builders import row, split_ratings

NUMBERS = {
    "pan_heater_w": 100.0,
    "pan_heater_below_c": 0.0,
    "crankcase_heater_w": 20.0,
    "crankcase_heater_below_c": 10.0,
    "drain_pump_w": 2.0,
}


def rows(**changed: float) -> AuxiliaryRows:
    return AuxiliaryRows(**{name: row(value, 1) for name, value in (NUMBERS | changed).items()})


@pytest.mark.parametrize(
    ("is_cooling", "is_heating", "at_c", "power_w"),
    [
        (False, True, -0.1, 100.0),
        (False, True, 0.0, 0.0),
        (False, False, 9.9, 20.0),
        (False, False, 10.0, 0.0),
        (False, False, -30.0, 20.0),
        (True, False, 30.0, 2.0),
        (True, False, 5.0, 2.0),
    ],
)
def test_each_runs_in_its_own_hours(is_cooling: bool, is_heating: bool, at_c: float, power_w: float) -> None:
    found = auxiliary_w(rows(), np.array([[is_cooling]]), np.array([[is_heating]]), np.array([[at_c]]))
    assert found.tolist() == [[power_w]]


def test_a_day_of_heating_in_frost_costs_the_pan_heater_and_no_more() -> None:
    bare = variable_speed_split(split_ratings())
    shape = (24, 1, 2)
    need, none, at_c = np.full(shape, 1500.0), np.zeros(shape), np.full(shape, -5.0)
    plain, warmed = (operation(machine, none, none, need, at_c) for machine in (bare, replace(bare, auxiliary=rows())))
    assert (warmed.standby_electric_w - plain.standby_electric_w).sum() == pytest.approx(100.0 * 24 * 2)
    assert (warmed.heat_electric_w == plain.heat_electric_w).all()


def test_an_idle_winter_hour_draws_standby_and_the_oil_heater() -> None:
    machine = replace(variable_speed_split(split_ratings()), auxiliary=rows())
    none = np.zeros((24, 1, 1))
    run = operation(machine, none, none, none, np.full((24, 1, 1), -5.0))
    assert run.standby_electric_w[0].tolist() == [[3.0 + 20.0]]
