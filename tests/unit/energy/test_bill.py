"""Bills against a typical year's warmth, and what of them follows it."""

import numpy as np
import pytest

from econ.energy.bill import daily_mean_c, modelled_kwh, period_mean_c, slope_kwh, weather_part
from econ.energy.change_point import Bills, ChangePointKind, best_fit, change_point_fit
from econ.kernel.constants import MONTH_DAYS

DAYS = np.array(MONTH_DAYS)
FIRST = np.concatenate([[0], np.cumsum(DAYS)[:-1]]).astype(np.int64)
MEAN_C = np.array([-12.3, -9.2, -2.0, 6.8, 13.9, 19.0, 21.6, 20.3, 15.1, 7.9, -0.6, -9.1])


def test_days_have_the_means_of_their_months():
    assert np.add.reduceat(daily_mean_c(MEAN_C), FIRST) / DAYS == pytest.approx(MEAN_C, abs=0.02)


def test_a_bill_of_a_month_is_as_warm_as_the_month_and_one_between_lies_between():
    assert period_mean_c(FIRST, DAYS, MEAN_C) == pytest.approx(MEAN_C, abs=0.02)
    between = period_mean_c(np.array([14]), np.array([31.0]), MEAN_C)[0]
    assert MEAN_C[0] < between < MEAN_C[1]


def test_a_bill_over_new_year_goes_on_with_january():
    whole = period_mean_c(np.array([0, 350]), np.array([365.0, 365.0]), MEAN_C)
    assert whole[0] == pytest.approx(whole[1])
    assert period_mean_c(np.array([350]), np.array([30.0]), MEAN_C)[0] == pytest.approx(-11.6, abs=0.6)


# Base 8 kWh a day, 2.5 kWh a K and day below 15 C: heating of the year by hand from the monthly means:
# 2.5 x sum((15 - T) x days over the months below) = 2.5 x (27.3 x 31 + 24.2 x 28 + 17 x 31 + 8.2 x 30 + 1.1 x 31
# + 7.1 x 31 + 15.6 x 30 + 24.1 x 31) = 2.5 x 3767.2... ; the sum below is that.
def test_weather_part_of_the_year_by_hand():
    daily = 8.0 + 2.5 * np.maximum(15.0 - MEAN_C, 0.0)
    bills = Bills(daily * DAYS, DAYS, MEAN_C)
    fit = change_point_fit(bills, ChangePointKind.HEATING)
    part = weather_part(bills, fit, DAYS, MEAN_C)
    kd = 27.3 * 31 + 24.2 * 28 + 17 * 31 + 8.2 * 30 + 1.1 * 31 + 7.1 * 31 + 15.6 * 30 + 24.1 * 31
    assert part.heating_kwh == pytest.approx(2.5 * kd, rel=2e-3)
    assert (part.cooling_kwh, part.cooling_doubt_frac) == (0.0, np.inf)
    assert part.heating_doubt_frac < 0.01
    assert modelled_kwh(fit, DAYS, MEAN_C) == pytest.approx(bills.energy_kwh, rel=2e-3)


def test_more_scatter_leaves_more_doubt():
    rng = np.random.default_rng(2)
    daily = 8.0 + 2.5 * np.maximum(15.0 - MEAN_C, 0.0)
    doubts = []
    for noise in (0.01, 0.08):
        bills = Bills(daily * DAYS * (1.0 + rng.normal(0.0, noise, 12)), DAYS, MEAN_C)
        doubts.append(weather_part(bills, change_point_fit(bills, ChangePointKind.HEATING), DAYS, MEAN_C))
    assert doubts[0].heating_doubt_frac < doubts[1].heating_doubt_frac


def test_the_interval_of_the_weather_part_holds_the_truth_about_as_often_as_it_says():
    truth, held = 8.0 + 2.5 * np.maximum(15.0 - MEAN_C, 0.0), 0
    exact = 2.5 * float(np.maximum(15.0 - MEAN_C, 0.0) @ DAYS)
    for seed in range(60):
        bills = Bills(truth * DAYS * (1.0 + np.random.default_rng(seed).normal(0.0, 0.04, 12)), DAYS, MEAN_C)
        part = weather_part(bills, change_point_fit(bills, ChangePointKind.HEATING), DAYS, MEAN_C)
        held += abs(part.heating_kwh - exact) <= part.heating_doubt_frac * part.heating_kwh
    assert held >= 48  # of 60: change points are fitted too, which the interval does not count


def test_energy_in_proportion_has_parts_in_proportion_whatever_its_shape():
    shape = np.exp(-MEAN_C / 9.0)
    bills = Bills(200.0 + 1.7 * shape * 60.0, DAYS, MEAN_C)
    fit = best_fit(bills)
    once, more = slope_kwh(fit, shape * 60.0, MEAN_C), slope_kwh(fit, 1.7 * shape * 60.0, MEAN_C)
    assert more.heating_kwh == pytest.approx(1.7 * once.heating_kwh)
