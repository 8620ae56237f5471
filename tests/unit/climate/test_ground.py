"""Ground temperature through the year."""

import numpy as np
import pytest

from econ.climate.ground import MID_MONTH_D, YEAR_S, sunlit_surface_c, undisturbed_ground_c, yearly_wave
from econ.kernel.errors import OutOfRangeError

DIFFUSIVITY = np.array(7e-7)


def ground(depth_m):
    return undisturbed_ground_c(np.array(10.0), np.array(12.0), np.array(depth_m), np.array(20.0), DIFFUSIVITY)


def test_surface_is_the_yearly_sine():
    expected = 10.0 - 12.0 * np.cos(2.0 * np.pi * (MID_MONTH_D - 20.0) / 365.0)
    assert ground(0.0) == pytest.approx(expected, abs=1e-12)


def test_swing_shrinks_by_e_in_one_damping_depth():
    damping_m = float(np.sqrt(DIFFUSIVITY * YEAR_S / np.pi))
    mean, amplitude, coldest = yearly_wave(ground(damping_m))
    assert amplitude == pytest.approx(12.0 / np.e, rel=0.02)
    assert mean == pytest.approx(10.0, abs=0.05)
    assert coldest == pytest.approx(20.0 + 365.0 / (2.0 * np.pi), abs=2.0)


def test_rows_are_computed_side_by_side():
    rows = undisturbed_ground_c(*np.broadcast_arrays(10.0, 12.0, [0.0, 1.0, 3.0], 20.0, 7e-7))
    assert rows.shape == (3, 12)
    assert rows[1].tolist() == ground(1.0).tolist()


def test_yearly_wave_of_a_sine_gives_it_back():
    wave = 15.0 - 8.0 * np.cos(2.0 * np.pi * (MID_MONTH_D - 30.0) / 365.0)
    mean, amplitude, coldest = yearly_wave(wave)
    assert (float(mean), float(amplitude), float(coldest)) == pytest.approx((15.0, 8.0, 30.0), abs=0.15)


def test_depth_counts_downwards():
    with pytest.raises(OutOfRangeError, match="depth_m is -1 m; it must be at least 0 m"):
        ground(-1.0)


def test_ground_without_diffusivity_is_refused():
    with pytest.raises(OutOfRangeError, match="diffusivity_m2_per_s is 0 m\\^2/s; it must be above 0"):
        undisturbed_ground_c(np.array(10.0), np.array(12.0), np.array(1.0), np.array(20.0), np.array(0.0))


def test_sunlit_ground_without_sun_is_colder_than_the_air():
    surface = sunlit_surface_c(np.full(12, 10.0), np.zeros(12), np.array(0.9), np.array(4.0))
    assert surface == pytest.approx(10.0 - 4.5 * 11.0 / (4.5 + 4.0 + 4.0 * 0.43 * 4.0), abs=1e-9)


def test_wind_brings_sunlit_ground_nearer_to_the_air():
    calm, windy = (sunlit_surface_c(np.zeros(12), np.full(12, 200.0), np.array(0.9), np.array(v)) for v in (1.0, 6.0))
    assert np.all(calm > windy)
    assert np.all(windy > 0.0)
