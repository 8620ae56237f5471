"""Weather of a case."""

import pytest

from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate
from econ.kernel.alternative import Alternative
from econ.tables.loaders import load_tables

CHICAGO = Structure(
    station="Chicago Ohare Intl AP, IL",
    n_rooms=1,
    room_names=("Room",),
    technologies=("none",) * 4,
    base_case=Alternative.WINDOW_UNITS,
    study_period_yr=10,
)
TABLES = load_tables()


def test_weather_is_that_of_the_case_s_station():
    days = climate.weather(CHICAGO, TABLES)
    station = TABLES.stations.station(CHICAGO.station)
    assert days.monthly_mean_c() == pytest.approx(station.mean_c)
    assert days.weight_d.sum() == pytest.approx(365.0)


def test_monthly_sun_on_the_horizontal_is_the_table_s():
    days = climate.weather(CHICAGO, TABLES)
    station = TABLES.stations.station(CHICAGO.station)
    daily_kwh = days.irradiance[:, 3::7, 8].sum(axis=0) / 1000.0
    assert daily_kwh == pytest.approx(station.global_kwh_per_m2, rel=1e-6)


def test_hot_day_stands_in_the_hottest_month_and_reaches_the_design_dry_bulb():
    day = climate.hot_day(CHICAGO, TABLES)
    assert day.month.tolist() == [6]
    assert day.dry_bulb_c.max() == pytest.approx(TABLES.stations.station(CHICAGO.station).cool_design_c)
