"""Machines built from ratings give them back."""

from itertools import product

import numpy as np
import pytest

from econ.equipment import points
from econ.equipment.curve import rating_terms, variable_speed_split
from econ.equipment.heating_rating import HEATING_BIN_C, HEATING_REGIONS, heating_load_w, variable_speed_hspf2
from econ.equipment.machine import MachineRows, RatingRows
from econ.equipment.part_load import cooling, heating
from econ.equipment.rating import (
    COOLING_BIN_C,
    COOLING_BIN_FRAC,
    HEAT_PUMP_LOAD_FRAC,
    cooling_load_w,
    full_speed_eer2,
    variable_speed_seer2,
)
from econ.equipment.sizing import cooling_capacity_w, heating_capacity_w
from econ.kernel.constants import BTU_PER_WH
from econ.kernel.errors import OutOfRangeError
from tests.unit.equipment.builders import split_ratings

# Ends of the generic classes: SEER2, EER2, HSPF2, 5 over 47 degF, cut-out degC, least output.
CLASSES = {
    "economy": ((15.0, 20.0), (8.5, 12.5), (7.8, 9.0), (0.4, 0.62), (-20.0, -10.0), (0.25, 0.5)),
    "standard": ((16.0, 23.0), (9.5, 13.5), (8.5, 10.0), (0.52, 0.78), (-25.0, -15.0), (0.18, 0.38)),
    "cold_climate": ((17.0, 28.0), (10.5, 15.5), (9.5, 12.0), (0.75, 1.05), (-35.0, -25.0), (0.12, 0.32)),
}
NAMES = ("seer2", "eer2", "hspf2", "heat_5f_ratio_frac", "cutout_c", "min_ratio_frac", "size")


def corners(grade: str) -> RatingRows:
    """Every corner of a class at the smallest and the largest size."""
    table = np.array(list(product(*CLASSES[grade], (6000.0, 36000.0))))
    by_name = dict(zip(NAMES, table.T, strict=True))
    capacity_w = by_name.pop("size") / BTU_PER_WH
    return split_ratings(len(table), **by_name, capacity_w=capacity_w, heat_47f_w=1.022 * capacity_w + 607 / BTU_PER_WH)


@pytest.fixture(scope="module", params=list(CLASSES))
def built(request: pytest.FixtureRequest) -> tuple[RatingRows, MachineRows]:
    ratings = corners(request.param)
    return ratings, variable_speed_split(ratings)


Built = tuple[RatingRows, MachineRows]


def test_seer2_comes_back_within_a_millionth(built: Built) -> None:
    ratings, machine = built
    assert variable_speed_seer2(machine.cooling, ratings.cd_frac) == pytest.approx(ratings.seer2, rel=1e-6)


def test_eer2_comes_back_exactly(built: Built) -> None:
    ratings, machine = built
    assert full_speed_eer2(machine.cooling) == pytest.approx(ratings.eer2, rel=1e-12)


def test_hspf2_comes_back_within_a_millionth(built: Built) -> None:
    ratings, machine = built
    assert variable_speed_hspf2(machine.heating, rating_terms(ratings)) == pytest.approx(ratings.hspf2, rel=1e-6)


def test_running_the_machine_through_the_cooling_bins_gives_seer2_within_one_percent(built: Built) -> None:
    ratings, machine = built
    load_w = cooling_load_w(ratings.capacity_w, COOLING_BIN_C, HEAT_PUMP_LOAD_FRAC)
    served_w, _latent_w, power_w = cooling(machine, load_w, np.zeros_like(load_w), COOLING_BIN_C[None])
    ours = (served_w @ COOLING_BIN_FRAC) / (power_w @ COOLING_BIN_FRAC) * BTU_PER_WH
    assert ours == pytest.approx(ratings.seer2, rel=0.01)


def test_running_the_machine_through_the_heating_bins_gives_hspf2_within_one_percent(built: Built) -> None:
    ratings, machine = built
    region = HEATING_REGIONS["IV"]
    load_w = heating_load_w(ratings.capacity_w, region, region.slope_variable_frac)
    served_w, power_w = heating(machine, load_w, HEATING_BIN_C[None])
    input_w = power_w + load_w - served_w
    ours = 1.03 * (load_w @ region.bin_frac) / (input_w @ region.bin_frac) * BTU_PER_WH
    assert ours == pytest.approx(ratings.hspf2, rel=0.01)


def test_no_efficiency_reaches_the_ideal_cycle(built: Built) -> None:
    _ratings, machine = built
    cold_c, room_c = np.array([5.0, 17.0, 47.0]), points.celsius(70.0)
    at_c = (cold_c - 32.0) / 1.8
    ideal = (room_c + 273.15) / (room_c - at_c)
    assert ideal == pytest.approx([8.15, 9.99, 23.03], abs=5e-3)  # printed, 70 degF indoors
    tests = (machine.heating.h4_full, machine.heating.h3_full, machine.heating.h1_low)
    for test, bound in zip(tests, ideal, strict=True):
        assert (test.cop < bound).all()
    assert (machine.cooling.a_full.cop < 35.98).all()  # printed, 80 degF indoors to 95 degF


def test_capacity_never_rises_away_from_mild_weather(built: Built) -> None:
    _ratings, machine = built
    assert (np.diff(cooling_capacity_w(machine, np.linspace(15.0, 48.0, 60)), axis=1) <= 1e-9).all()
    colder, milder = (
        np.linspace(-40.0, points.H3_C, 80),
        np.linspace(points.FROST_END_C, 20.0, 40),
    )  # frost dips between
    for at_c in (colder, milder):
        assert (np.diff(heating_capacity_w(machine, at_c), axis=1) >= -1e-9).all()


def test_power_rises_with_the_load_at_any_temperature(built: Built) -> None:
    ratings, machine = built
    for at_c in (22.0, 30.0, 40.0):
        load_w = np.linspace(0.02, 0.95, 40) * cooling_capacity_w(machine, np.array([at_c]))
        power_w = cooling(machine, load_w, np.zeros_like(load_w), np.array([[at_c]]))[2]
        assert (np.diff(power_w, axis=1) > 0.0).all()
    for at_c in (-9.0, 0.0, 10.0):
        load_w = np.linspace(0.02, 0.95, 40) * heating_capacity_w(machine, np.array([at_c]))
        power_w = heating(machine, load_w, np.array([[at_c]]))[1]
        assert (np.diff(power_w, axis=1) > 0.0).all()
    assert ratings.capacity_w.size == machine.shr.size


def test_ratings_that_no_unit_can_have_are_refused_by_name() -> None:
    with pytest.raises(OutOfRangeError, match=r"seer2 is 90 Btu/Wh; it must be between .* Check that all ratings"):
        variable_speed_split(split_ratings(seer2=90.0))
    with pytest.raises(OutOfRangeError, match="hspf2 is 1 Btu/Wh"):
        variable_speed_split(split_ratings(hspf2=1.0))


def test_a_row_alone_equals_the_row_among_others() -> None:
    ratings = corners("standard")
    alone = split_ratings(
        **{
            name: getattr(ratings, name)[77]
            for name in (*NAMES[:-1], "capacity_w", "heat_47f_w", "shr", "standby_w", "cd_frac")
        }
    )
    among, single = variable_speed_split(ratings), variable_speed_split(alone)
    assert single.cooling.b_low.power_w[0] == among.cooling.b_low.power_w[77]
    assert single.heating.h3_full.power_w[0] == among.heating.h3_full.power_w[77]
