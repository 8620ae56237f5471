"""Machines from values by path."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from econ.equipment.line_set import RATED_LINE_M
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.equipment import machines
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW, Alternative
from econ.kernel.errors import UnknownChoiceError
from tests.unit.equipment.builders import USUAL

STRUCTURE = Structure(
    station="Somewhere, XX",
    n_rooms=1,
    room_names=("room",),
    technologies=("single_speed_window", "reverse_cycle_window", "variable_speed_split", "variable_speed_split"),
    base_case=Alternative.WINDOW_UNITS,
    study_period_yr=15,
)
WINDOW_UNIT = {"ceer": 11.2, "shr": 0.69, "standby_w": 1.0, "cd_frac": 0.22}
EXTRAS = {
    "pan_heater_w": 100.0,
    "pan_heater_below_c": 0.0,
    "crankcase_heater_w": 20.0,
    "crankcase_heater_below_c": 10.0,
    "run_loss_per_m": 0.002,
    "rise_loss_per_m": 0.001,
    "line_max_m": 15.24,
    "count": 1.0,
    "heads": 1.0,
    "rise_max_m": 7.62,
}
NUMBERS: dict[str, Any] = (
    {f"kit.{name}": value for name, value in (USUAL | EXTRAS).items()}
    | {"site.line_run_m": 5.0, "site.line_rise_m": 0.0, "site.drain": 0.0, "site.drain_pump_w": 2.0}
    | {f"now.{name}": value for name, value in WINDOW_UNIT.items()}
    | {f"window.{name}": value for name, value in WINDOW_UNIT.items()}
    | {"now.unit_capacity_w": 2000.0, "now.units_count": 2.0, "window.capacity_w": 1500.0, "window.count": 3.0}
    | {"window.heat_cop": 2.4, "window.heat_ratio_frac": 0.9, "window.cutout_c": 3.0, "window.min_ratio_frac": 0.4}
    | {"window.is_variable_frac": 0.0}
)


def values(**changed: Any) -> dict[str, Any]:
    """Return the numbers by path with what is changed; a double underscore stands for the dot."""
    moved = {name.replace("__", "."): value for name, value in changed.items()}
    return {path: np.asarray(value, dtype=np.float64) for path, value in (NUMBERS | moved).items()}


def test_several_units_are_one_of_their_total_size() -> None:
    built = machines(STRUCTURE, values(), 2)
    assert built[KEEP].cooling.a_full.capacity_w.tolist() == [4000.0, 4000.0]
    assert built[KEEP].standby_w.tolist() == [2.0, 2.0]
    assert built[WINDOW].cooling.a_full.capacity_w.tolist() == [4500.0, 4500.0]


def test_a_hired_set_without_ratings_of_its_own_is_the_kit() -> None:
    built = machines(STRUCTURE, values(), 1)
    assert built[HIRED] is built[SELF]


def test_a_hired_set_with_ratings_of_its_own_differs() -> None:
    own = {f"hired__{name}": value for name, value in (USUAL | EXTRAS | {"seer2": 19.0}).items()}
    built = machines(STRUCTURE, values(**own), 1)
    assert built[HIRED].cooling.b_low.power_w > built[SELF].cooling.b_low.power_w


def test_both_ductless_ways_lose_the_same_in_the_same_lines() -> None:
    own = {f"hired__{name}": value for name, value in (USUAL | EXTRAS).items()}
    long = machines(STRUCTURE, values(**own, site__line_run_m=RATED_LINE_M + 5.0), 1)
    assert long[SELF].cooling.a_full.capacity_w == pytest.approx(0.99 * USUAL["capacity_w"])
    assert long[HIRED].cooling.a_full.capacity_w == long[SELF].cooling.a_full.capacity_w


@pytest.mark.parametrize(("drain", "pump_w"), [(0.0, 0.0), (1.0, 2.0), (2.0, 2.0)])
def test_the_pump_runs_where_water_does_not_surely_run_off(drain: float, pump_w: float) -> None:
    found = machines(STRUCTURE, values(site__drain=drain), 1)[SELF].auxiliary
    assert found is not None
    assert found.drain_pump_w.tolist() == [pump_w]
    assert found.pan_heater_w.tolist() == [100.0]


def test_scalars_and_rows_mix() -> None:
    built = machines(STRUCTURE, values(kit__capacity_w=[3000.0, 4000.0]), 2)
    assert built[SELF].cooling.a_full.capacity_w.tolist() == [3000.0, 4000.0]
    assert built[SELF].shr.tolist() == [0.76, 0.76]


def test_reverse_cycle_units_heat_and_cooling_only_units_do_not() -> None:
    only = replace(STRUCTURE, technologies=("none", "variable_speed_window", *STRUCTURE.technologies[2:]))
    assert machines(STRUCTURE, values(), 1)[WINDOW].can_heat.all()
    cooling_only = machines(only, values(), 1)
    assert not cooling_only[WINDOW].can_heat.any()
    assert not cooling_only[KEEP].can_cool.any()


def test_an_unknown_technology_is_named_with_the_known_ones() -> None:
    odd = replace(STRUCTURE, technologies=("ice_block", *STRUCTURE.technologies[1:]))
    with pytest.raises(UnknownChoiceError, match=r"technology 'ice_block' is not known. Nearest: none, single_speed"):
        machines(odd, values(), 1)
