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
