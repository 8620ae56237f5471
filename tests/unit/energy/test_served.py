"""Months and years out of hours."""

import numpy as np
import pytest

from econ.energy.served import annual_kwh, hours_short, moisture_kg, monthly_kwh

MONTH = np.array([0, 0, 11])
WEIGHT_D = np.array([10.0, 21.0, 31.0])


def test_each_day_counts_in_its_month_with_its_weight() -> None:
    power_w = np.zeros((24, 1, 3))
    power_w[5, 0] = [1000.0, 2000.0, 3000.0]
    months = monthly_kwh(power_w, MONTH, WEIGHT_D)
    assert months.shape == (1, 12)
    assert months[0, 0] == pytest.approx(10.0 + 42.0)
    assert months[0, 11] == pytest.approx(93.0)
    assert months[0, 1:11].sum() == 0.0


def test_year_is_the_sum_of_the_months() -> None:
    power_w = np.arange(24 * 2 * 3, dtype=np.float64).reshape(24, 2, 3)
    assert monthly_kwh(power_w, MONTH, WEIGHT_D).sum(axis=1) == pytest.approx(annual_kwh(power_w, WEIGHT_D))


@pytest.mark.parametrize(("served_w", "hours"), [(951.0, 0.0), (950.0, 0.0), (949.0, 24.0 * 10.0)])
def test_an_hour_is_short_just_above_the_tolerance(served_w: float, hours: float) -> None:
    need_w = np.full((24, 1, 1), 1000.0)
    assert hours_short(need_w, np.full((24, 1, 1), served_w), np.array([10.0]), 0.05).tolist() == [hours]


def test_an_hour_without_need_is_never_short() -> None:
    nothing = np.zeros((24, 1, 1))
    assert hours_short(nothing, nothing, np.array([365.0]), 0.05).tolist() == [0.0]


def test_moisture_is_latent_heat_over_the_heat_of_vaporisation() -> None:
    assert moisture_kg(np.array(2.501 / 3.6)) == pytest.approx(1.0)
