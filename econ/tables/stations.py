"""Weather places of the tables, stations and cities known by their means alone: by name and by distance."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np

from econ.climate.monthly import Months, Site, station_of_months
from econ.climate.station import Station
from econ.kernel.arrays import FloatArray, read_only
from econ.kernel.errors import OutOfRangeError, UnknownChoiceError
from econ.tables.lookup import nearest_names
from econ.tables.record import Table

MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
EARTH_RADIUS_KM: Final = 6371.0
"""Mean radius; IUGG (1980)."""

CITY_PERIOD: Final = "monthly means 1981-2010"


@dataclass(frozen=True, slots=True)
class Near:
    """A weather place and how far it is.

    Attributes
    ----------
    name : str
        Its key.
    distance_km : float
        Along the earth's surface. [km]
    elevation_m : float
        Its height above sea level. [m]
    """

    name: str
    distance_km: float
    elevation_m: float


@dataclass(frozen=True, slots=True, eq=False)
class StationTable:
    """All weather places.

    Attributes
    ----------
    names : tuple of str
        Keys, "<station>, <ST>", then "<city>, <country>", in the order of the tables.
    latitude_deg, longitude_deg, elevation_m : ndarray, shape (n_place,)
        Where they lie. [degree], [degree], [m]
    """

    names: tuple[str, ...]
    latitude_deg: FloatArray
    longitude_deg: FloatArray
    elevation_m: FloatArray
    _rows: Mapping[str, Mapping[str, Any]]

    def station(self, name: str) -> Station:
        """Return a station by its key.

        Parameters
        ----------
        name : str
            Key as the table spells it, such as "Chicago Ohare Intl AP, IL".

        Returns
        -------
        station : Station
            Its monthly figures; what a city's means do not say is estimated. The table of stations knows the yearly
            mean wind only: each month carries that mean.

        Raises
        ------
        UnknownChoiceError
            If no station has that key; it holds the three that are spelled most alike.
        """
        if name not in self._rows:
            raise UnknownChoiceError("station", name, nearest_names(name, self.names))
        row = self._rows[name]
        return _city(name, row) if "city" in row else _station(name, row)

    def nearest(self, latitude_deg: float, longitude_deg: float, count: int = 3) -> tuple[Near, ...]:
        """Return the places nearest to a point and how far they are.

        Parameters
        ----------
        latitude_deg, longitude_deg : float
            North and east positive. [degree]
        count : int
            How many. [dimensionless]

        Returns
        -------
        nearest : tuple of Near
            Nearest first.

        Raises
        ------
        OutOfRangeError
            If the point is not on the globe.
        """
        for axis, value, bound in (("latitude", latitude_deg, 90), ("longitude", longitude_deg, 180)):
            if not -bound <= value <= bound:
                remedy = "Give decimal degrees, west and south negative."
                raise OutOfRangeError(axis, value, "degree", f"between -{bound} and {bound}", remedy)
        distance_km = _distance_km(latitude_deg, longitude_deg, self.latitude_deg, self.longitude_deg)
        order = np.argsort(distance_km, kind="stable")[:count]
        return tuple(Near(self.names[i], float(distance_km[i]), float(self.elevation_m[i])) for i in order)


def station_table(stations: Table, cities: Table) -> StationTable:
    """Return the places of two checked tables."""

    def column(name: str) -> FloatArray:
        return read_only(np.concatenate([stations.numbers(name), cities.numbers(name)]))

    names = (*stations.texts("key"), *cities.texts("key"))
    rows = dict(zip(names, (*stations.rows(), *cities.rows()), strict=True))
    return StationTable(names, column("latitude"), column("longitude"), column("elevation_m"), rows)


def _by_month(row: Mapping[str, Any], prefix: str) -> FloatArray:
    return read_only(np.array([row[f"{prefix}_{month}"] for month in MONTHS]))


def _city(name: str, row: Mapping[str, Any]) -> Station:
    """Return a city's station: its means and design dry bulbs are the table's."""
    site = Site(name, "", row["latitude"], row["longitude"], row["elevation_m"])
    found = station_of_months(site, Months(_by_month(row, "t")), "means", CITY_PERIOD)
    return replace(found, heat_design_c=row["heat_db_99_est"], cool_design_c=row["cool_db_1_est"])


def _station(name: str, row: Mapping[str, Any]) -> Station:
    return Station(
        name=name,
        state=row["state"],
        latitude_deg=row["latitude"],
        longitude_deg=row["longitude"],
        elevation_m=row["elevation_m"],
        utc_offset_h=row["utc_offset"],
        heat_design_c=row["heat_db_99"],
        cool_design_c=row["cool_db_1"],
        cool_wet_bulb_c=row["cool_mcwb_1"],
        daily_range_k=row["hot_month_daily_range_k"],
        mean_c=_by_month(row, "t"),
        max_c=_by_month(row, "tmax"),
        min_c=_by_month(row, "tmin"),
        sd_k=_by_month(row, "sd"),
        dew_point_c=_by_month(row, "dew"),
        global_kwh_per_m2=_by_month(row, "ghi"),
        diffuse_kwh_per_m2=_by_month(row, "dhi"),
        wind_m_per_s=read_only(np.full(len(MONTHS), row["wind_annual"])),
        hdd18_3_kd=row["hdd18_3"],
        cdd18_3_kd=row["cdd18_3"],
        period=row["period"],
        source_id=row["source_id"],
    )


def _distance_km(latitude: float, longitude: float, latitudes: FloatArray, longitudes: FloatArray) -> FloatArray:
    """Great circle by the haversine formula."""
    phi, phis = np.radians(latitude), np.radians(latitudes)
    half = np.sin((phis - phi) / 2.0) ** 2
    half += np.cos(phi) * np.cos(phis) * np.sin(np.radians(longitudes - longitude) / 2.0) ** 2
    distance: FloatArray = 2.0 * EARTH_RADIUS_KM * np.arcsin(np.sqrt(np.clip(half, 0.0, 1.0)))
    return distance
