"""Which size, and what is wrong with it."""

import numpy as np
import pytest

from econ.equipment.curve import variable_speed_split
from econ.equipment.part_load import cooling_speeds
from econ.equipment.sizing import (
    SizingLoads,
    below_least_h,
    chosen_index,
    cooling_capacity_w,
    heating_capacity_w,
    least_cooling_w,
    sizing_findings,
)
from econ.equipment.window_curve import single_speed_window
from tests.unit.equipment.builders import split_ratings, window_ratings

SIZES_W = np.array([1000.0, 2000.0, 3000.0])
HEAT_W = np.array([500.0, 900.0, 4000.0])


@pytest.mark.parametrize(("load_w", "index"), [(999.0, 0), (1000.0, 0), (1000.1, 1), (3000.0, 2), (3000.1, 2)])
def test_smallest_size_that_meets_cooling_is_chosen(load_w: float, index: int) -> None:
    assert chosen_index(np.array([load_w]), np.array([9e9]), SIZES_W, HEAT_W, heats=False).tolist() == [index]


def test_heating_counts_where_it_is_asked_for() -> None:
    loads = np.array([500.0, 500.0]), np.array([500.0, 901.0])
    assert chosen_index(*loads, SIZES_W, HEAT_W, heats=True).tolist() == [0, 2]


def loads(**changed: float) -> SizingLoads:
    numbers = {
        "design_cooling_w": 3000.0,
        "design_heating_w": 2000.0,
        "mean_cooling_w": 1500.0,
        "cool_design_c": 35.0,
        "heat_design_c": -10.0,
        "mean_cooling_c": 27.0,
    } | changed
    return SizingLoads(**{name: np.array([value]) for name, value in numbers.items()})


@pytest.mark.parametrize(("beside", "is_small"), [(-1.0, False), (0.0, False), (1.0, True)])
def test_too_small_starts_just_above_the_output(beside: float, is_small: bool) -> None:
    machine = variable_speed_split(split_ratings())
    output_w = cooling_capacity_w(machine, np.array([35.0]))[0, 0]
    assert sizing_findings(machine, loads(design_cooling_w=output_w + beside)).too_small[0] == is_small


@pytest.mark.parametrize(("beside", "is_short"), [(-1.0, False), (0.0, False), (1.0, True)])
def test_heating_short_starts_just_above_the_output(beside: float, is_short: bool) -> None:
    machine = variable_speed_split(split_ratings())
    output_w = heating_capacity_w(machine, np.array([-10.0]))[0, 0]
    assert sizing_findings(machine, loads(design_heating_w=output_w + beside)).heating_short[0] == is_short


@pytest.mark.parametrize(("beside", "is_oversized"), [(1.0, False), (0.0, False), (-1.0, True)])
def test_oversized_starts_where_the_mean_load_falls_below_least_output(beside: float, is_oversized: bool) -> None:
    machine = variable_speed_split(split_ratings())
    least_w = cooling_speeds(machine.cooling, np.array([[27.0]]))[0].capacity_w[0, 0]
    assert sizing_findings(machine, loads(mean_cooling_w=least_w + beside)).oversized[0] == is_oversized


def test_a_share_of_no_load_is_infinite() -> None:
    machine = variable_speed_split(split_ratings())
    assert sizing_findings(machine, loads(design_heating_w=0.0)).heating_share_frac[0] == np.inf


def test_hours_below_least_output_are_those_between_nothing_and_it() -> None:
    machine = variable_speed_split(split_ratings())
    least_w = least_cooling_w(machine, np.array([30.0]))[0, 0]
    need_w = np.zeros((24, 1, 2))
    need_w[10:14], need_w[14], need_w[15] = 0.99 * least_w, least_w, 1.01 * least_w
    assert below_least_h(machine, need_w, np.full((24, 1, 2), 30.0), np.array([3.0, 5.0])).tolist() == [32.0]


def test_a_single_speed_unit_cycles_below_its_full_output() -> None:
    machine = single_speed_window(window_ratings())
    assert least_cooling_w(machine, np.array([35.0])) == pytest.approx(cooling_capacity_w(machine, np.array([35.0])))
