"""Laws of climate: degree-days, ground, moist air and weather days, whatever the place."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.climate import degree_days, moist_air
from econ.climate.ground import undisturbed_ground_c
from econ.climate.weather import monthly_weather
from econ.kernel.constants import MONTH_DAYS
from tests.unit.climate.stations import SEASON, station, sun

MONTHS = np.array(MONTH_DAYS)
PRESSURE = np.array(101_325.0)
means = st.lists(st.floats(-25.0, 33.0), min_size=12, max_size=12).map(np.array)
spreads = st.lists(st.floats(0.5, 9.0), min_size=12, max_size=12).map(np.array)
bases = st.floats(5.0, 25.0).map(np.array)


@given(means, spreads, bases)
def test_heating_less_cooling_degree_days_is_base_less_mean(mean_c, sd_k, base_c):
    difference = degree_days.heating_kd(mean_c, sd_k, base_c) - degree_days.cooling_kd(mean_c, sd_k, base_c)
    assert difference == pytest.approx((base_c - mean_c) * MONTHS, abs=1e-6)


@given(means, spreads, bases, st.floats(0.1, 5.0))
def test_a_higher_base_never_has_fewer_heating_degree_days(mean_c, sd_k, base_c, more_k):
    lower, higher = (degree_days.heating_kd(mean_c, sd_k, base) for base in (base_c, base_c + more_k))
    assert np.all(higher >= lower)


@given(means, spreads, bases, st.floats(0.1, 3.0))
def test_more_spread_never_has_fewer_degree_days(mean_c, sd_k, base_c, more_k):
    narrow, wide = (degree_days.heating_kd(mean_c, sd, base_c) for sd in (sd_k, sd_k + more_k))
    assert np.all(wide >= narrow - 1e-9)


@given(st.floats(0.0, 10.0), st.floats(0.1, 5.0))
def test_deeper_ground_never_swings_more(depth_m, more_m):
    shallow, deep = (
        undisturbed_ground_c(np.array(10.0), np.array(12.0), np.array(depth), np.array(20.0), np.array(7e-7))
        for depth in (depth_m, depth_m + more_m)
    )
    assert np.abs(deep - 10.0).max() <= 12.0 * np.exp(-depth_m * np.sqrt(np.pi / (365 * 86400 * 7e-7))) + 1e-9
    assert np.ptp(deep) <= np.ptp(shallow) * 1.05


@given(st.floats(-35.0, 45.0), st.floats(0.05, 1.0))
def test_dew_point_wet_bulb_and_dry_bulb_stand_in_order(dry_bulb_c, relative_frac):
    dry_c = np.array(dry_bulb_c)
    ratio = moist_air.humidity_ratio_at(dry_c, np.array(relative_frac), PRESSURE)
    dew_c, wet_c = moist_air.dew_point_c(ratio, PRESSURE), moist_air.wet_bulb_c(dry_c, ratio, PRESSURE)
    # the wet bulb over ice and the frost point leave their order by a hair within a kelvin of freezing
    slack = 0.6 if -3.0 < float(wet_c) < 1.0 else 1e-6
    assert dew_c <= wet_c + slack
    assert wet_c <= dry_c + 1e-6


@given(st.floats(-35.0, 45.0), st.floats(0.05, 1.0))
def test_relative_humidity_comes_back(dry_bulb_c, relative_frac):
    ratio = moist_air.humidity_ratio_at(np.array(dry_bulb_c), np.array(relative_frac), PRESSURE)
    back = moist_air.relative_humidity_frac(np.array(dry_bulb_c), ratio, PRESSURE)
    assert back == pytest.approx(relative_frac, rel=1e-9)


@given(st.floats(-8.0, 26.0), st.floats(0.0, 20.0), st.floats(2.0, 18.0), st.floats(0.5, 9.0), st.floats(0.0, 15.0))
def test_weather_days_keep_days_means_and_saturation(mean_c, swing_k, range_k, sd_k, depression_k):
    months = mean_c + swing_k * SEASON
    days = monthly_weather(
        station(
            mean_c=months,
            max_c=months + range_k / 2.0,
            min_c=months - range_k / 2.0,
            sd_k=np.full(12, sd_k),
            dew_point_c=months - depression_k,
        ),
        sun(),
    )
    assert days.weight_d.sum() == pytest.approx(365.0)
    assert days.monthly_mean_c() == pytest.approx(months, abs=1e-9)
    most = moist_air.saturation_humidity_ratio(days.dry_bulb_c, np.array(days.pressure_pa))
    assert np.all(days.humidity_ratio <= most)
