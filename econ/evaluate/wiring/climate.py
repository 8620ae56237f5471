"""Weather of a case: from its station's monthly figures, or from its hourly file, to weather days."""

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Final

import numpy as np

from econ.climate import degree_days, moist_air
from econ.climate.monthly import Months, Site, station_of_months
from econ.climate.station import Station
from econ.climate.weather import Weather, hot_design_day, monthly_weather
from econ.evaluate.structure import Structure, WeatherChoice
from econ.kernel.arrays import FloatArray, read_only
from econ.kernel.constants import DEGREE_DAY_BASE_C, MONTH_DAYS
from econ.loads.rooms import RoomRows
from econ.tables import sun
from econ.tables.loaders import Tables

TYPED: Final = "figures typed in"
"""Period of months that the user typed."""


def station(structure: Structure, tables: Tables) -> Station:
    """Return what is known of the case's weather place, at the height the user gave.

    Parameters
    ----------
    structure : Structure
        Whose weather it is.
    tables : Tables
        Hold listed places and hourly files.

    Returns
    -------
    station : Station
        Monthly figures and design conditions.
    """
    return station_of(structure.station, structure.weather or WeatherChoice(), tables)


def station_of(name: str, chosen: WeatherChoice, tables: Tables) -> Station:
    """Return what is known of a weather place.

    Parameters
    ----------
    name : str
        Its name.
    chosen : WeatherChoice
        Whose weather it is.
    tables : Tables
        Hold listed places and hourly files.
    """
    if chosen.hourly_file:
        found = tables.hourly[chosen.hourly_file].station
    elif chosen.site is not None:
        found = _typed(chosen.site, chosen.months)
    else:
        found = tables.stations.station(name)
    return found if chosen.elevation_m is None else replace(found, elevation_m=chosen.elevation_m)


def weather(structure: Structure, tables: Tables) -> Weather:
    """Return the weather days of the case, warming not yet added.

    Parameters
    ----------
    structure : Structure
        Whose weather it is.
    tables : Tables
        Hold its figures.

    Returns
    -------
    weather : Weather
        84 day types from monthly figures, 365 chained days from an hourly file.
    """
    chosen = structure.weather
    if chosen is not None and chosen.hourly_file:
        days = tables.hourly[chosen.hourly_file].weather
        if chosen.elevation_m is None:
            return days
        return days.at_pressure(float(moist_air.pressure_pa(np.asarray(chosen.elevation_m))))
    place = station(structure, tables)
    return monthly_weather(place, sun.irradiance_by_month(place))


def hot_day(structure: Structure, tables: Tables) -> Weather:
    """Return the hot design day of the case's weather place, clear sky, warming not yet added.

    Parameters
    ----------
    structure : Structure
        Whose weather it is.
    tables : Tables
        Hold its figures.

    Returns
    -------
    day : Weather
        One day in the hottest month, at the place's own design dry bulb.
    """
    place = station(structure, tables)
    hottest = int(place.mean_c.argmax())
    return hot_design_day(place, sun.clear_day_irradiance(place, hottest))


def degree_days_kd(
    structure: Structure, values: Mapping[str, FloatArray], tables: Tables, n_row: int
) -> tuple[FloatArray, FloatArray]:
    """Return heating and cooling degree-days at 65 degF of each month, warming included.

    Parameters
    ----------
    structure : Structure
        Whose weather it is.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path. [any]
    tables : Tables
        Hold its figures.
    n_row : int
        B.

    Returns
    -------
    heating_kd, cooling_kd : ndarray, shape (B, 12)
        From the daily means of an hourly file, else from monthly means and their spread. [K*day] [K*day]
    """
    base_c = DEGREE_DAY_BASE_C - np.broadcast_to(values["place.warming_offset_k"], (n_row,))
    if structure.weather is not None and structure.weather.hourly_file:
        days = tables.hourly[structure.weather.hourly_file].weather
        above_k = days.dry_bulb_c.mean(axis=0) - base_c[:, None]
        in_month = (days.month[:, None] == np.arange(len(MONTH_DAYS))) * days.weight_d[:, None]
        return np.maximum(-above_k, 0.0) @ in_month, np.maximum(above_k, 0.0) @ in_month
    place = station(structure, tables)
    sd_k = degree_days.known_sd_k(place.mean_c, place.sd_k)
    return degree_days.heating_kd(place.mean_c, sd_k, base_c), degree_days.cooling_kd(place.mean_c, sd_k, base_c)


def heat_design_c(values: Mapping[str, FloatArray]) -> FloatArray:
    """Return the 99 % dry bulb of each row, warming not yet added.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path. [any]

    Returns
    -------
    heat_design_c : ndarray, shape () or (B,)
        Dry bulb exceeded 99 % of the hours: the user's, or that of the weather place. [degC]
    """
    return np.asarray(values["place.heat_design_c"], dtype=np.float64)


def hotter_k(structure: Structure, values: Mapping[str, FloatArray], tables: Tables) -> FloatArray:
    """Return how much hotter each row's design day is than that of its weather place.

    Parameters
    ----------
    structure : Structure
        Whose weather it is.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path. [any]
    tables : Tables
        Hold its figures.

    Returns
    -------
    hotter_k : ndarray, shape () or (B,)
        0 where the user changed nothing; the day's moisture stays what it is. [K]
    """
    cool_design_c = np.asarray(values["place.cool_design_c"], dtype=np.float64)
    hotter: FloatArray = cool_design_c - station(structure, tables).cool_design_c
    return hotter


def on_design_days(rooms: RoomRows, hotter_k: FloatArray, n_row: int) -> RoomRows:
    """Return the rooms as the hot day meets them: its own design dry bulb counts as so much more warming.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them, room by room.
    hotter_k : array_like, shape () or (B,)
        From `hotter_k`. [K]
    n_row : int
        B.
    """
    by_row = np.broadcast_to(hotter_k, (n_row,))
    return replace(rooms, warming_k=rooms.warming_k + np.resize(by_row, len(rooms.warming_k)))


@lru_cache(maxsize=64)
def _typed(site: Site, months: tuple[tuple[str, tuple[float, ...]], ...]) -> Station:
    figures = {name: read_only(np.array(values)) for name, values in months}
    return station_of_months(site, Months(**figures), "typed", TYPED)
