"""Weather of a case: from its station's monthly figures to weather days."""

from econ.climate.weather import Weather, hot_design_day, monthly_weather
from econ.evaluate.structure import Structure
from econ.tables import sun
from econ.tables.loaders import Tables


def weather(structure: Structure, tables: Tables) -> Weather:
    """Return the weather days of the case's station, warming not yet added.

    Parameters
    ----------
    structure : Structure
        Names the station.
    tables : Tables
        Hold its figures.

    Returns
    -------
    weather : Weather
        84 day types.
    """
    station = tables.stations.station(structure.station)
    return monthly_weather(station, sun.irradiance_by_month(station))


def hot_day(structure: Structure, tables: Tables) -> Weather:
    """Return the hot design day of the case's station, clear sky, warming not yet added.

    Parameters
    ----------
    structure : Structure
        Names the station.
    tables : Tables
        Hold its figures.

    Returns
    -------
    day : Weather
        One day in the hottest month.
    """
    station = tables.stations.station(structure.station)
    hottest = int(station.mean_c.argmax())
    return hot_design_day(station, sun.clear_day_irradiance(station, hottest))


def heat_design_c(structure: Structure, tables: Tables) -> float:
    """Return the 99 % dry bulb of the case's station, warming not yet added.

    Parameters
    ----------
    structure : Structure
        Names the station.
    tables : Tables
        Hold its figures.

    Returns
    -------
    heat_design_c : float
        Dry bulb exceeded 99 % of the hours. [degC]
    """
    return tables.stations.station(structure.station).heat_design_c
