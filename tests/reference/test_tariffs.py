"""Electricity bills against bills worked by hand, to the cent; the arithmetic stands beside each.

Prices are made up in the shape of US residential tariffs; no utility's own bill example is used. Fixed charges are left
out on both sides.
"""

import numpy as np
import pytest

from econ.energy import tariff
from econ.kernel.constants import MONTH_DAYS

CENT = 0.005
JULY, JANUARY, MARCH = 6, 0, 2


def of_month(month: int, energy_kwh: float) -> np.ndarray:
    """Return a year with energy in one month alone, shape (1, 12)."""
    energy = np.zeros((1, 12))
    energy[0, month] = energy_kwh
    return energy


def test_flat_bill() -> None:
    # 412 kWh x 0.1473 = 60.6876 -> 60.69
    assert tariff.flat_bill_usd(of_month(JULY, 412.0), np.array(0.1473)).sum() == pytest.approx(60.69, abs=CENT)


def test_seasonal_bill() -> None:
    # Summer June to September 0.1620, else 0.1180. July 350 kWh: 56.70. January 800 kWh: 94.40.
    is_summer = tariff.is_season(np.array(5), np.array(8))
    price = tariff.month_price_usd_per_kwh(np.array(0.1180), np.array(0.1620), is_summer)
    bills = [
        tariff.seasonal_bill_usd(of_month(month, kwh), price).sum() for month, kwh in ((JULY, 350), (JANUARY, 800))
    ]
    assert bills == pytest.approx([56.70, 94.40], abs=CENT)


def test_a_season_may_run_over_the_turn_of_the_year() -> None:
    # November to March: five months.
    assert np.flatnonzero(tariff.is_season(np.array(10), np.array(2))).tolist() == [0, 1, 2, 10, 11]


# Three tiers: 0.11 to 400 kWh, 0.15 to 1,000, 0.21 beyond.
#   rest 300, room 200: 500 costs 44.00 + 15.00 = 59.00; 300 cost 33.00                           -> 26.00
#   rest 620, room 200: 200 x 0.15                                                                -> 30.00
#   rest 900, room 250: 1,150 costs 44 + 90 + 31.50 = 165.50; 900 cost 44 + 75 = 119.00           -> 46.50
#   rest 1,200, room 100: 100 x 0.21                                                              -> 21.00
#   rest 0, room 1,500: 44 + 90 + 105                                                             -> 239.00
@pytest.mark.parametrize(
    ("rest_kwh", "room_kwh", "bill_usd"),
    [(300, 200, 26.00), (620, 200, 30.00), (900, 250, 46.50), (1200, 100, 21.00), (0, 1500, 239.00)],
)
def test_tiered_bill_depends_on_the_rest_of_the_home(rest_kwh: float, room_kwh: float, bill_usd: float) -> None:
    numbers = (0.15, 0.21, 400.0, 1000.0, rest_kwh)
    found = tariff.tiered_bill_usd(of_month(JULY, room_kwh), np.array(0.11), tariff.Tiers(*map(np.array, numbers)))
    assert found.sum() == pytest.approx(bill_usd, abs=CENT)
    assert np.count_nonzero(found) == 1


def peak(price: float, months: tuple[int, int] = (4, 9), days_frac: float = 1.0) -> tariff.DailyPrice:
    """Return dear hours from 4 to 9 pm; out of the season they cost what other hours do, 0.11."""
    by_month = np.where(tariff.is_season(*map(np.array, months)), price, 0.11)
    return tariff.DailyPrice(np.array(16.0), np.array(21.0), by_month, np.array(days_frac))


def bill_usd(price: np.ndarray, month: int, hourly_w: np.ndarray) -> float:
    """Return what a day's load, repeated through a month, costs."""
    return float(price[..., month, :].ravel() @ hourly_w / 1000.0 * MONTH_DAYS[month])


# Dear 0.24 from 4 to 9 pm, May to October, every day; else 0.11; no clock change. 500 W from noon to midnight.
#   July: 31 d x 0.5 kW x (5 h x 0.24 + 7 h x 0.11) = 15.5 x 1.97 = 30.535 -> 30.54
#   January: 31 x 0.5 x 12 x 0.11 = 20.46
def test_bill_by_the_hour_of_the_day() -> None:
    load_w = np.where(np.arange(24) >= 12, 500.0, 0.0)
    price = tariff.hour_price_usd_per_kwh(np.full(12, 0.11), (peak(0.24),), np.array(0.0))
    assert [bill_usd(price, month, load_w) for month in (JULY, JANUARY)] == pytest.approx([30.535, 20.46], abs=1e-9)


# The same from Monday to Friday: 5/7 of the days dear. July: 15.5 x (5 x (0.24 x 5/7 + 0.11 x 2/7) + 7 x 0.11)
#   = 15.5 x (5 x 0.202857 + 0.77) = 15.5 x 1.784286 = 27.656 -> 27.66
def test_weekends_are_cheap_on_average() -> None:
    load_w = np.where(np.arange(24) >= 12, 500.0, 0.0)
    dear = (peak(0.24, days_frac=tariff.WORKING_DAY_FRAC),)
    price = tariff.hour_price_usd_per_kwh(np.full(12, 0.11), dear, np.array(0.0))
    assert bill_usd(price, JULY, load_w) == pytest.approx(27.66, abs=CENT)


# Clocks ahead: 4 to 9 pm by the clock is 3 to 8 pm in standard time. 1 kW from 3 to 4 pm, standard time, dear all year:
#   July: 31 x 0.24 = 7.44. January (clocks not ahead): 31 x 0.11 = 3.41. March: 20.5 of 31 d ahead:
#   20.5 x 0.24 + 10.5 x 0.11 = 4.92 + 1.155 = 6.075 -> 6.08
def test_dear_hours_follow_the_clock_and_weather_the_sun() -> None:
    load_w = np.where(np.arange(24) == 15, 1000.0, 0.0)
    price = tariff.hour_price_usd_per_kwh(np.full(12, 0.11), (peak(0.24, (0, 11)),), np.array(1.0))
    found = [bill_usd(price, month, load_w) for month in (JULY, JANUARY, MARCH)]
    assert found == pytest.approx([7.44, 3.41, 6.075], abs=1e-9)


# Cheap 0.05 from 11 pm to 6.30 am beside dear 0.30 from 4 to 9 pm, else 0.12; 1 kW all day in a 31-day month:
#   7.5 h x 0.05 + 5 h x 0.30 + 11.5 h x 0.12 = 0.375 + 1.50 + 1.38 = 3.255 a day; x 31 = 100.905 -> 100.91
def test_cheap_hours_may_run_past_midnight_and_end_at_half_past() -> None:
    cheap = tariff.DailyPrice(np.array(23.0), np.array(6.5), np.full(12, 0.05), np.array(1.0))
    dear = tariff.DailyPrice(np.array(16.0), np.array(21.0), np.full(12, 0.30), np.array(1.0))
    price = tariff.hour_price_usd_per_kwh(np.full(12, 0.12), (dear, cheap), np.array(0.0))
    assert bill_usd(price, JULY, np.full(24, 1000.0)) == pytest.approx(100.905, abs=1e-9)


def test_rows_of_prices_are_priced_apart() -> None:
    # 0.10 and 0.20 flat in all but the dear hours 0.24: one row after the other.
    month_price = np.array([[0.10], [0.20]]) * np.ones(12)
    price = tariff.hour_price_usd_per_kwh(month_price, (peak(0.24, (0, 11)),), np.array([0.0, 1.0]))
    assert price.shape == (2, 12, 24)
    assert price[0, JULY, [15, 16, 20, 21]].tolist() == pytest.approx([0.10, 0.24, 0.24, 0.10])
    assert price[1, JULY, [14, 15, 19, 20]].tolist() == pytest.approx([0.20, 0.24, 0.24, 0.20])
