"""Months and years out of hours."""

import numpy as np
import pytest

from econ.energy.served import kwh_by_month, moisture_kg, monthly_kwh, per_year

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
    daily_wh = np.arange(6, dtype=np.float64).reshape(2, 3)
    months = kwh_by_month(daily_wh, MONTH, WEIGHT_D)
    assert months.sum(axis=1) == pytest.approx(per_year(daily_wh, WEIGHT_D) / 1000.0)


def test_days_may_come_in_any_order_of_months() -> None:
    daily_wh, order = np.arange(3, dtype=np.float64)[None, :], np.array([2, 0, 1])
    again = kwh_by_month(daily_wh[:, order], MONTH[order], WEIGHT_D[order])
    assert np.array_equal(again, kwh_by_month(daily_wh, MONTH, WEIGHT_D))


def test_moisture_is_latent_heat_over_the_heat_of_vaporisation() -> None:
    assert moisture_kg(np.array(2.501 / 3.6)) == pytest.approx(1.0)
