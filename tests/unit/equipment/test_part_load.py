"""What machines serve and draw."""

import numpy as np
import pytest

from econ.equipment.curve import variable_speed_split
from econ.equipment.machine import MachineRows
from econ.equipment.part_load import cooling, heating, operation
from econ.equipment.sizing import cooling_capacity_w, heating_capacity_w
from econ.equipment.window_curve import no_machine, single_speed_window
from econ.kernel.arrays import FloatArray
from econ.kernel.errors import ShapeError
from tests.unit.equipment.builders import split_ratings, window_ratings


@pytest.fixture
def split() -> MachineRows:
    return variable_speed_split(split_ratings())


def cell(value: float) -> FloatArray:
    return np.array([[value]])


def day(value: float, n_row: int = 1) -> FloatArray:
    return np.full((24, n_row, 2), value)


def test_a_need_within_capacity_is_met_in_full(split: MachineRows) -> None:
    served, latent, power = cooling(split, cell(1000.0), cell(100.0), cell(30.0))
    assert (served, latent) == (1000.0, 100.0)
    assert 0.0 < power < 1100.0 / 2.0


def test_drying_comes_along_with_cooling_and_no_more(split: MachineRows) -> None:
    _served, latent, _power = cooling(split, cell(1000.0), cell(900.0), cell(30.0))
    assert latent == pytest.approx(1000.0 * 0.24 / 0.76)


def test_moisture_alone_is_not_served(split: MachineRows) -> None:
    served, latent, power = cooling(split, cell(0.0), cell(900.0), cell(30.0))
    assert (served, latent, power) == (0.0, 0.0, 0.0)


def test_cooling_and_drying_shrink_alike_at_capacity(split: MachineRows) -> None:
    served, latent, power = cooling(split, cell(8000.0), cell(800.0), cell(35.0))
    assert served + latent == pytest.approx(cooling_capacity_w(split, np.array([35.0]))[0, 0])
    assert served / latent == pytest.approx(10.0)
    assert power == pytest.approx(split.cooling.a_full.power_w[0], rel=1e-9)


def test_below_least_output_the_unit_cycles_with_the_printed_loss(split: MachineRows) -> None:
    low = split.cooling.b_low
    half_w = 0.5 * low.capacity_w[:, None]
    power = cooling(split, half_w, cell(0.0), cell((82.0 - 32.0) / 1.8))[2]
    assert power == pytest.approx(0.5 * low.power_w[0] / 0.875)  # part-load factor 1 - .25 (1 - .5)


def test_a_single_speed_unit_at_capacity_draws_full_power() -> None:
    machine = single_speed_window(window_ratings())
    power = cooling(machine, cell(9000.0), cell(0.0), cell(35.0))[2]
    assert power == pytest.approx(machine.cooling.a_full.power_w[0], rel=1e-9)


def test_heating_stops_at_the_cut_out(split: MachineRows) -> None:
    at_c = np.array([[-20.1, -20.0, -19.9]])
    served, power = heating(split, np.full((1, 3), 1000.0), at_c)
    assert served.tolist() == [[0.0, 0.0, 1000.0]]
    assert power[0, :2].tolist() == [0.0, 0.0]


def test_heating_stops_where_resistance_would_do_as_well() -> None:
    machine = variable_speed_split(split_ratings(cutout_c=-60.0, heat_5f_ratio_frac=0.4, hspf2=7.8))
    capacity_w = heating_capacity_w(machine, np.array([-50.0, -15.0]))[0]
    assert capacity_w[0] == 0.0
    assert capacity_w[1] > 0.0


def test_frost_takes_a_tenth_of_the_output_at_35f(split: MachineRows) -> None:
    at_c = (np.array([17.0, 35.0, 47.0]) - 32.0) / 1.8
    cold, frosting, mild = heating_capacity_w(split, at_c)[0]
    assert frosting == pytest.approx(0.90 * (cold + 0.6 * (mild - cold)))


def test_cold_outdoors_never_make_cooling_cheaper_than_at_67f(split: MachineRows) -> None:
    at_c = np.array([[0.0, (67.0 - 32.0) / 1.8]])
    power = cooling(split, np.full((1, 2), 1200.0), np.zeros((1, 2)), at_c)[2]
    assert power[0, 0] == pytest.approx(power[0, 1], rel=1e-12)


def test_standby_is_drawn_in_idle_hours_only(split: MachineRows) -> None:
    cool_w = day(0.0)
    cool_w[15] = 900.0
    run = operation(split, cool_w, day(0.0), day(0.0), day(30.0))
    assert run.standby_electric_w[15].tolist() == [[0.0, 0.0]]
    assert run.standby_electric_w.sum() == pytest.approx(3.0 * 23 * 2)
    assert run.cool_electric_w.sum() == run.cool_electric_w[15].sum() > 0.0


def test_no_machine_draws_and_serves_nothing() -> None:
    run = operation(no_machine(1), day(500.0), day(100.0), day(500.0), day(30.0))
    for field in run.__slots__:
        assert getattr(run, field).sum() == 0.0


def test_one_weather_serves_all_rows(split: MachineRows) -> None:
    both = variable_speed_split(split_ratings(2))
    own = operation(both, day(800.0, 2), day(50.0, 2), day(0.0, 2), day(31.0, 2))
    shared = operation(both, day(800.0, 2), day(50.0, 2), day(0.0, 2), day(31.0))
    alone = operation(split, day(800.0), day(50.0), day(0.0), day(31.0))
    assert np.array_equal(own.cool_electric_w, shared.cool_electric_w)
    assert np.array_equal(own.cool_electric_w[:, :1], alone.cool_electric_w)


def test_days_without_need_cost_nothing_and_change_nothing(split: MachineRows) -> None:
    need_w = day(800.0)
    need_w[:, :, 1] = 0.0
    run = operation(split, day(0.0), day(0.0), need_w, day(2.0))
    assert run.heat_served_w[:, 0, 1].sum() == 0.0
    assert run.heat_served_w[:, 0, 0] == pytest.approx(800.0)


def test_need_of_the_wrong_shape_is_refused(split: MachineRows) -> None:
    with pytest.raises(ShapeError, match=r"need has shape \(24, 3, 2\); it must be \(24, 1, n_day\)"):
        operation(split, day(1.0, 3), day(1.0, 3), day(1.0, 3), day(1.0, 3))
