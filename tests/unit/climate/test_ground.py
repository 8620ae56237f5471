"""Ground temperature through the year."""

import numpy as np
import pytest

from econ.climate import ground as ground_module
from econ.climate.ground import MID_MONTH_D, YEAR_S, Cover, outdoor_end, undisturbed_ground_c, yearly_wave
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


def end(sun=0.0, wind=4.0, wet=0.0, opening=1.0, air=10.0, vapour=800.0):
    """Return what bare ground that absorbs 0.9 of the sun is drawn to, and the film, in the first month."""
    cover = Cover(*(np.array([part]) for part in (0.9, wet, opening, wind)))
    found, film = outdoor_end(np.full((1, 12), air), np.full(12, vapour), np.full(12, sun), cover, 101_325.0)
    return found[0, 0], film[0, 0]


def test_dry_ground_without_sun_is_colder_than_the_air():
    film = 1.0 / (4.5 + 4.0 + 4.0 * 0.43 * 4.0)
    assert end() == pytest.approx((10.0 - 4.5 * 11.0 * film, film), abs=1e-9)


def test_sun_warms_dry_ground_by_what_it_absorbs_over_the_film():
    assert end(sun=200.0)[0] - end()[0] == pytest.approx(0.9 * 200.0 * end()[1], abs=1e-9)


def test_wind_brings_sunlit_ground_nearer_to_the_air():
    assert end(sun=200.0, wind=1.0)[0] > end(sun=200.0, wind=6.0)[0] > 10.0


def test_ground_under_a_roof_is_as_warm_as_the_air():
    assert end(sun=300.0, opening=0.0)[0] == pytest.approx(10.0, abs=1e-12)


# by hand: saturation at 20 degC 2338.8 Pa, its slope 148.9 Pa/K over the next kelvin; g = 0.621945 * 2.501e6 /
# (1006 * 101325) = 0.015260 1/Pa; hc = 4 + 4 * 0.43 * 3 = 9.16; evaporation 0.5 * 9.16 * g = 0.069893
def test_evaporation_cools_as_the_balance_by_hand_says():
    film = 1.0 / (4.5 + 9.16 + 0.069893 * 148.9)
    by_hand = 20.0 + (0.9 * 150.0 - 49.5 - 0.069893 * (2338.8 - 1200.0)) * film
    assert end(150.0, 3.0, 0.5, 1.0, 20.0, 1200.0) == pytest.approx((by_hand, film), rel=2e-4)


def test_dew_does_not_warm_the_ground():
    assert end(wet=0.5, vapour=2000.0)[0] == pytest.approx(10.0 - 49.5 * end(wet=0.5)[1], abs=1e-9)


def test_the_step_of_the_slope_matters_little(monkeypatch):
    whole = end(200.0, wet=0.4)[0]
    monkeypatch.setattr(ground_module, "SLOPE_STEP_K", 0.5)
    assert end(200.0, wet=0.4)[0] == pytest.approx(whole, abs=0.06)
