"""Change-point fits of bills."""

import numpy as np
import pytest

from econ.energy.change_point import (
    Bills,
    ChangePointKind,
    best_fit,
    change_point_fit,
    cvrmse_frac,
    nmbe_frac,
)
from econ.kernel.errors import OutOfRangeError, ShapeError

DAYS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31], dtype=float)
MEAN_C = np.array([-4.0, -1.5, 4.0, 10.0, 16.0, 21.5, 24.0, 23.0, 18.5, 12.0, 5.0, -1.0])


def made(base=9.0, heat=1.2, cool=0.0, heat_c=14.0, cool_c=19.0):
    daily = base + heat * np.maximum(heat_c - MEAN_C, 0.0) + cool * np.maximum(MEAN_C - cool_c, 0.0)
    return Bills(daily * DAYS, DAYS, MEAN_C)


def test_three_parameters_of_heating_are_recovered():
    fit = change_point_fit(made(), ChangePointKind.HEATING)
    assert fit.baseload_kwh_per_d == pytest.approx(9.0, rel=1e-3)
    assert fit.heating_kwh_per_kd == pytest.approx(1.2, rel=1e-3)
    assert fit.heating_point_c == pytest.approx(14.0, abs=0.01)
    assert fit.cvrmse_frac < 1e-3
    assert fit.r2 > 0.999999
    assert np.isnan(fit.cooling_point_c)


def test_three_parameters_of_cooling_are_recovered():
    fit = change_point_fit(made(heat=0.0, cool=2.0), ChangePointKind.COOLING)
    assert fit.cooling_kwh_per_kd == pytest.approx(2.0, rel=2e-3)
    assert fit.cooling_point_c == pytest.approx(19.0, abs=0.02)


def test_five_parameters_are_recovered():
    fit = change_point_fit(made(cool=1.5), ChangePointKind.BOTH)
    assert fit.heating_kwh_per_kd == pytest.approx(1.2, rel=2e-3)
    assert fit.cooling_kwh_per_kd == pytest.approx(1.5, rel=5e-3)
    assert (fit.heating_point_c, fit.cooling_point_c) == pytest.approx((14.0, 19.0), abs=0.05)


def test_noise_leaves_the_parameters_near_and_says_how_well_it_fits():
    rng = np.random.default_rng(5)
    clean = made()
    bills = Bills(clean.energy_kwh * (1.0 + rng.normal(0.0, 0.04, 12)), DAYS, MEAN_C)
    fit = change_point_fit(bills, ChangePointKind.HEATING)
    assert fit.heating_kwh_per_kd == pytest.approx(1.2, rel=0.15)
    assert 0.005 < fit.cvrmse_frac < 0.10
    assert fit.is_good


def test_bills_that_do_not_follow_the_weather_are_not_good():
    rng = np.random.default_rng(1)
    assert not best_fit(Bills(rng.uniform(100.0, 900.0, 24), np.full(24, 30.0), np.tile(MEAN_C, 2))).is_good


def test_the_kind_that_made_the_bills_fits_best():
    assert best_fit(made()).kind in (ChangePointKind.HEATING, ChangePointKind.BOTH)
    assert best_fit(made(heat=0.0, cool=2.0)).cooling_kwh_per_kd == pytest.approx(2.0, rel=5e-3)
    assert best_fit(made(cool=1.5)).kind == ChangePointKind.BOTH


# Worked by hand: measured 10, 20, 30; modelled 12, 18, 27; p = 1: squares 4 + 4 + 9 = 17; sqrt(17 / 2) / 20 = 0.145774;
# differences -2 + 2 + 3 = 3; 3 / (2 x 20) = 0.075
def test_errors_of_a_fit_by_hand():
    measured, modelled = np.array([10.0, 20.0, 30.0]), np.array([12.0, 18.0, 27.0])
    assert cvrmse_frac(measured, modelled, 1) == pytest.approx(0.145774, abs=5e-7)
    assert nmbe_frac(measured, modelled, 1) == pytest.approx(0.075)


@pytest.mark.parametrize(
    ("energy", "days", "words"),
    [
        (np.ones(11), np.full(11, 30.0), "bills is 11; it must be 12 to 36"),
        (np.ones(12), np.zeros(12), "days of a bill is 0 d; it must be above 0"),
        (-np.ones(12), np.full(12, 30.0), "energy of a bill is -1 kWh; it must be at least 0"),
    ],
)
def test_bills_that_cannot_be_are_refused(energy, days, words):
    with pytest.raises(OutOfRangeError, match=words):
        Bills(energy, days, np.arange(len(energy), dtype=float))


def test_columns_of_different_lengths_are_refused():
    with pytest.raises(ShapeError, match="one entry a bill"):
        Bills(np.ones(12), np.ones(12), np.ones(13))
