"""Weather days made from monthly figures."""

import numpy as np
import pytest
from scipy.special import ndtri

from econ.climate import degree_days, moist_air
from econ.climate.weather import (
    DAY_TYPE_DEVIATE,
    DAY_TYPE_WEIGHT_FRAC,
    FACES,
    Weather,
    daily_profile_frac,
    dew_follows_frac,
    hot_design_day,
    monthly_weather,
)
from econ.kernel.constants import MONTH_DAYS
from econ.kernel.errors import ShapeError
from tests.unit.climate.stations import MEAN_C, PLAIN, station, sun

WEATHER = monthly_weather(PLAIN, sun())


def test_weights_add_up_to_the_days_of_each_month():
    by_month = [WEATHER.weight_d[WEATHER.month == month].sum() for month in range(12)]
    assert by_month == pytest.approx(MONTH_DAYS)


def test_months_keep_their_mean():
    assert WEATHER.monthly_mean_c() == pytest.approx(MEAN_C, abs=1e-9)


def test_months_keep_their_mean_range():
    ranges = np.ptp(WEATHER.dry_bulb_c, axis=0)
    assert ranges == pytest.approx(np.full(84, 11.0))


def test_months_keep_their_spread_of_daily_means():
    spread = DAY_TYPE_WEIGHT_FRAC @ DAY_TYPE_DEVIATE**2
    assert spread == pytest.approx(1.0, abs=1e-6)


def test_day_types_are_the_means_of_their_classes_stretched():
    edges = ndtri(np.concatenate([[0.0], np.cumsum(DAY_TYPE_WEIGHT_FRAC)[:-1], [1.0]]))
    density = np.exp(-0.5 * edges**2) / np.sqrt(2.0 * np.pi)
    means = (density[:-1] - density[1:]) / DAY_TYPE_WEIGHT_FRAC
    stretched = means / np.sqrt(DAY_TYPE_WEIGHT_FRAC @ means**2)
    assert pytest.approx(stretched, abs=1e-6) == DAY_TYPE_DEVIATE


@pytest.mark.parametrize("base_c", [8.0, 10.0, 15.0, 18.3, 21.0, 23.0])
def test_degree_days_of_the_day_types_are_those_of_the_distribution(base_c):
    short_k = np.maximum(base_c - WEATHER.dry_bulb_c.mean(axis=0), 0.0)
    whole = degree_days.heating_kd(PLAIN.mean_c, PLAIN.sd_k, np.array(base_c)).sum()
    assert WEATHER.weight_d @ short_k == pytest.approx(whole, rel=0.01)


def test_profile_keeps_the_mean_and_spans_the_range():
    profile = daily_profile_frac()
    assert profile.sum() == pytest.approx(0.0, abs=1e-12)
    assert np.ptp(profile) == 1.0
    assert profile.argmin() == 4
    assert profile.argmax() in (13, 14)


def test_unknown_spread_is_estimated():
    unknown = monthly_weather(station(sd_k=np.full(12, np.nan)), sun())
    assert np.all(np.isfinite(unknown.dry_bulb_c))


def test_humidity_of_the_middle_day_is_that_of_the_dew_point_and_none_passes_saturation():
    most = moist_air.saturation_humidity_ratio(WEATHER.dry_bulb_c, np.array(WEATHER.pressure_pa))
    assert np.all(WEATHER.humidity_ratio <= most)
    meant = moist_air.saturation_humidity_ratio(PLAIN.dew_point_c, np.array(WEATHER.pressure_pa))
    assert WEATHER.humidity_ratio[14, 3::7] == pytest.approx(meant)


def test_dew_point_follows_the_day_type_about_the_month_s_mean():
    dew_c = moist_air.dew_point_c(WEATHER.humidity_ratio[14, -7:], np.array(WEATHER.pressure_pa))
    follows = dew_follows_frac(PLAIN.mean_c, PLAIN.dew_point_c)[-1]
    assert dew_c - PLAIN.dew_point_c[-1] == pytest.approx(follows * PLAIN.sd_k[-1] * DAY_TYPE_DEVIATE, abs=0.01)


def test_dew_point_follows_in_damp_air_and_stays_in_the_driest():
    follows = dew_follows_frac(np.full(4, 20.0), np.array([20.0, 17.0, 10.0, 0.0]))
    assert follows == pytest.approx([1.3, 1.3, 0.435, 0.0])


def test_other_pressure_keeps_dew_points():
    high = WEATHER.at_pressure(80_000.0)
    before, after = (moist_air.dew_point_c(w.humidity_ratio[14], np.array(w.pressure_pa)) for w in (WEATHER, high))
    assert after == pytest.approx(before, abs=1e-6)
    assert np.all(high.humidity_ratio > WEATHER.humidity_ratio)


def test_pressure_is_that_of_the_height():
    assert pytest.approx(float(moist_air.pressure_pa(np.array(300.0)))) == WEATHER.pressure_pa


def test_sun_is_that_of_the_month():
    assert WEATHER.irradiance[12, 40].tolist() == sun()[12, 5].tolist()


def test_irradiance_of_the_wrong_shape_is_refused():
    with pytest.raises(ShapeError, match="irradiance has shape \\(24, 9, 12\\); it must be \\(24, 12, 9\\)"):
        monthly_weather(PLAIN, sun().transpose(0, 2, 1))


def test_arrays_that_do_not_fit_are_refused():
    with pytest.raises(ShapeError, match="do not fit 2 days"):
        Weather(
            np.zeros((24, 3)), np.zeros((24, 2)), np.zeros((24, 2, 9)), np.zeros(2, int), np.ones(2), 1e5, False, "test"
        )


def test_design_day_reaches_the_design_dry_bulb_and_falls_by_the_range():
    day = hot_design_day(PLAIN, sun()[:, 6])
    assert day.dry_bulb_c.max() == 32.0
    assert day.dry_bulb_c.min() == 21.0
    assert day.month.tolist() == [6]
    assert day.irradiance.shape == (24, 1, len(FACES))


def test_design_day_carries_the_coincident_humidity():
    day = hot_design_day(PLAIN, sun()[:, 6])
    wet_c = moist_air.wet_bulb_c(day.dry_bulb_c[14], day.humidity_ratio[14], np.array(day.pressure_pa))
    assert wet_c == pytest.approx(23.0, abs=1e-6)
