"""Heat through earth: the swing that the ground surface sends in."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.loads import below_grade
from econ.loads.below_grade import Soil

ONE = np.ones(1)
SOIL = Soil(1.385 * ONE, 7e-7 * ONE, 10.0 * ONE, 12.0 * ONE, 20.0 * ONE)
WALL = below_grade.buried_wall(10.0 * ONE, 0.0 * ONE, 2.0 * ONE, 0.3 * ONE)
FLOOR = below_grade.buried_floor(40.0 * ONE, 2.0 * ONE, 3.0 * ONE, 0.26 * ONE)


def test_conductance_of_a_wall_is_its_mean_u_value_times_its_area():
    u = below_grade.wall_u_w_per_m2k(0.0 * ONE, 2.0 * ONE, 0.3 * ONE, SOIL.conductivity_w_per_mk)
    assert below_grade.conductance_w_per_k(WALL, SOIL) == pytest.approx(10.0 * u, rel=1e-12)


def test_conductance_of_a_floor_is_its_mean_u_value_times_its_area():
    u = below_grade.floor_u_w_per_m2k(6.0 * ONE, 2.0 * ONE, 0.26 * ONE, SOIL.conductivity_w_per_mk)
    assert below_grade.conductance_w_per_k(FLOOR, SOIL) == pytest.approx(40.0 * u, rel=1e-12)


def test_mean_u_value_is_the_mean_of_the_paths():
    depth = (np.arange(20_000) + 0.5) / 20_000 * 2.0
    by_path = np.mean(1.0 / (0.3 + np.pi * depth / 2.0 / 1.385))
    assert below_grade.conductance_w_per_k(WALL, SOIL)[0] == pytest.approx(10.0 * by_path, rel=1e-5)


def test_a_part_without_area_passes_nothing():
    none = below_grade.buried_wall(0.0 * ONE, 0.0 * ONE, 0.0 * ONE, 0.3 * ONE)
    assert below_grade.conductance_w_per_k(none, SOIL) == 0.0
    assert not below_grade.seen_wave_w(none, SOIL).any()


def test_a_slow_soil_passes_less_swing_and_later():
    quick = below_grade.seen_wave_w(FLOOR, SOIL)[0]
    slow = below_grade.seen_wave_w(FLOOR, replace(SOIL, diffusivity_m2_per_s=2e-7 * ONE))[0]
    assert np.ptp(slow) < np.ptp(quick)
    assert slow.argmin() > quick.argmin()


def test_a_soil_without_storage_passes_the_whole_swing_at_once():
    wave = below_grade.seen_wave_w(WALL, replace(SOIL, diffusivity_m2_per_s=1e3 * ONE))[0]
    conductance = below_grade.conductance_w_per_k(WALL, SOIL)[0]
    assert wave.argmin() == 0
    assert np.ptp(wave) / 2.0 == pytest.approx(12.0 * conductance, rel=0.02)


def test_swing_by_few_points_is_that_by_many(monkeypatch):
    few = below_grade.seen_wave_w(WALL, SOIL)
    monkeypatch.setattr(below_grade, "PATH_POINTS", 200)
    assert few == pytest.approx(below_grade.seen_wave_w(WALL, SOIL), rel=1e-4, abs=1e-4)


def test_a_part_without_resistance_is_refused():
    bare = below_grade.buried_wall(10.0 * ONE, 0.0 * ONE, 2.0 * ONE, 0.0 * ONE)
    with pytest.raises(OutOfRangeError, match="resistance of a buried part is 0 m\\^2\\*K/W; it must be above 0"):
        below_grade.conductance_w_per_k(bare, SOIL)


def basement(**changed):
    """Return a square basement of 8 m by 8 m, 2 m deep, uninsulated."""
    parts = {
        "floor_area_m2": 64.0,
        "perimeter_m": 32.0,
        "depth_m": 2.0,
        "wall_m": 0.2,
        "wall_resistance_m2k_per_w": 0.3,
        "floor_resistance_m2k_per_w": 0.3,
    }
    return below_grade.Basement(**{name: value * ONE for name, value in (parts | changed).items()})


# by hand from ISO 13370 eq. 11 to 14: B 4, d_f 0.2 + 0.6 = 0.8, d_w 0.6, k 2:
# floor 4/(12.566 + 1.8) ln(12.566/1.8 + 1), walls 4/(2 pi) (1 + 0.6/5.2) ln(2/0.6 + 1)
def test_basement_is_the_standard_s_arithmetic():
    wall_u, floor_u = below_grade.basement_u_w_per_m2k(basement(), 2.0 * ONE)
    assert wall_u == pytest.approx(1.0412, abs=5e-5)
    assert floor_u == pytest.approx(0.5783, abs=5e-5)


def test_well_insulated_basement_floor_is_the_standard_s_second_formula():
    floor_u = below_grade.basement_u_w_per_m2k(basement(floor_resistance_m2k_per_w=3.0), 2.0 * ONE)[1]
    assert floor_u == pytest.approx(2.0 / (0.457 * 4.0 + 6.2 + 1.0), rel=1e-12)


@pytest.mark.parametrize("name", ["depth_m", "perimeter_m"])
def test_basement_without_depth_or_edge_is_refused(name):
    with pytest.raises(OutOfRangeError, match=r"it must be above 0 m\. Use a slab on grade instead\."):
        below_grade.basement_u_w_per_m2k(basement(**{name: 0.0}), 2.0 * ONE)
