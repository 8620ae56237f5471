"""Window units built from CEER give it back."""

import numpy as np
import pytest

from econ.equipment.room_air_conditioner import single_speed_ceer, variable_speed_ceer
from econ.equipment.sizing import cooling_capacity_w, heating_capacity_w
from econ.equipment.window_curve import (
    ceer_tests,
    no_machine,
    reverse_cycle_window,
    seasonal_cop,
    single_speed_window,
    variable_speed_window,
)
from econ.kernel.errors import OutOfRangeError
from tests.unit.equipment.builders import reverse_rows, window_ratings

CEER = np.array([8.0, 9.4, 11.2, 13.7, 16.0, 17.5])


def test_single_speed_ceer_comes_back() -> None:
    ratings = window_ratings(6, ceer=CEER)
    machine = single_speed_window(ratings)
    assert single_speed_ceer(machine.cooling.a_full, ratings.standby_w) == pytest.approx(CEER, rel=1e-12)


@pytest.mark.parametrize("least", [0.3, 0.4, 0.6])
def test_variable_speed_ceer_comes_back(least: float) -> None:
    ratings = window_ratings(6, ceer=CEER, min_ratio_frac=least)
    machine = variable_speed_window(ratings)
    assert variable_speed_ceer(ceer_tests(machine.cooling), ratings.standby_w) == pytest.approx(CEER, rel=1e-6)


def test_a_single_speed_unit_has_one_speed() -> None:
    cooling = single_speed_window(window_ratings()).cooling
    assert cooling.b_low.capacity_w == cooling.b_full.capacity_w
    assert cooling.b_low.power_w == cooling.b_full.power_w


def test_a_variable_unit_is_less_efficient_at_full_speed_than_a_single_speed_one_of_the_same_ceer() -> None:
    ratings = window_ratings()
    variable, single = variable_speed_window(ratings), single_speed_window(ratings)
    assert variable.cooling.a_full.cop < single.cooling.a_full.cop


@pytest.mark.parametrize("is_variable", [False, True])
def test_seasonal_heating_efficiency_comes_back(is_variable: bool) -> None:
    ratings, reverse = window_ratings(), reverse_rows(is_variable=is_variable)
    machine = reverse_cycle_window(ratings, reverse)
    assert seasonal_cop(machine.heating, ratings, reverse.cutout_c) == pytest.approx(reverse.heat_cop, rel=1e-9)


def test_reverse_cycle_heats_only_above_its_cut_out() -> None:
    machine = reverse_cycle_window(window_ratings(), reverse_rows(cutout_c=3.0))
    heat_w = heating_capacity_w(machine, np.array([2.9, 3.0, 3.1]))[0]
    assert heat_w[:2].tolist() == [0.0, 0.0]
    assert heat_w[2] > 0.0


def test_speed_kind_is_taken_row_by_row() -> None:
    reverse = reverse_rows(2)
    reverse.is_variable[1] = True
    machine = reverse_cycle_window(window_ratings(2), reverse)
    assert machine.cooling.b_low.capacity_w[0] == machine.cooling.b_full.capacity_w[0]
    assert machine.cooling.b_low.capacity_w[1] == pytest.approx(0.4 * machine.cooling.b_full.capacity_w[1])


def test_a_cut_out_above_all_heating_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"cutout_c is 15 degC.*cooling only"):
        reverse_cycle_window(window_ratings(), reverse_rows(cutout_c=15.0))


def test_rows_without_a_unit_serve_nothing_and_need_no_ratings() -> None:
    machine = single_speed_window(window_ratings(2, capacity_w=np.array([0.0, 2000.0])))
    assert machine.can_cool.tolist() == [False, True]
    assert machine.standby_w.tolist() == [0.0, 1.0]
    capacity_w = cooling_capacity_w(machine, np.array([35.0]))[:, 0]
    assert capacity_w == pytest.approx([0.0, 2000.0], rel=1e-12)


def test_no_machine_neither_cools_nor_heats() -> None:
    machine = no_machine(3)
    assert not machine.can_cool.any()
    assert not machine.can_heat.any()
    assert machine.shr.shape == (3,)
