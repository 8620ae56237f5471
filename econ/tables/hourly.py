"""Hourly years ready for the engine: a file read, checked and turned onto the faces, once."""

import hashlib
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from econ.climate.station import Station
from econ.climate.weather import Weather
from econ.tables.epw import read_epw
from econ.tables.epw_year import file_station, hourly_weather

KEPT_MARK: Final = "sha256:"
"""Begins what a case writes of a file that is kept beside saved cases, by its hash."""

FIELD: Final = "place.hourly_file"


@dataclass(frozen=True, slots=True, eq=False)
class HourlyYear:
    """An hourly file as weather.

    Attributes
    ----------
    station : Station
        Monthly figures and design conditions that its hours amount to.
    weather : Weather
        365 chained days.
    """

    station: Station
    weather: Weather


def kept_key(content: bytes) -> str:
    """Return what a case writes of a kept file."""
    return KEPT_MARK + hashlib.sha256(content).hexdigest()


@lru_cache(maxsize=4)
def hourly_year(content: bytes, name: str) -> HourlyYear:
    """Return a checked hourly year; the same file is read once.

    Parameters
    ----------
    content : bytes
        An EPW file.
    name : str
        What messages call it.

    Returns
    -------
    year : HourlyYear
        Days and what they amount to.

    Raises
    ------
    CaseError
        With every fault and its line, as `read_epw`.
    """
    file = read_epw(content, f"{FIELD}, {name}")
    return HourlyYear(file_station(file), hourly_weather(file))
