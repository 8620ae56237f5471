"""Where a case is and whose weather it has: hourly file, months typed in, station, or the place nearest to a point."""

from collections.abc import Callable
from typing import Final

from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.climate.monthly import Site
from econ.evaluate.structure import WeatherChoice
from econ.kernel.errors import CaseError, Fault, UnknownChoiceError
from econ.tables.hourly import FIELD, hourly_year
from econ.tables.loaders import Tables
from econ.tables.towns import Town, load_towns

NO_FILE: Final = "Put the file there and check its name, or upload it again."


def with_hourly_file(tables: Tables, case: Case, content: Callable[[str], bytes]) -> Tables:
    """Return the tables with the case's hourly file in them; the same tables where it names none.

    Parameters
    ----------
    tables : Tables
        What is there.
    case : Case
        May name a file.
    content : callable
        What the case writes in, bytes out; an OSError or KeyError says that there is no such file.

    Raises
    ------
    CaseError
        If the file is not there or is refused; the fault names the field.
    """
    written = case.place.hourly_file
    if not written or written in tables.hourly:
        return tables
    try:
        found = content(written)
    except (OSError, KeyError):
        raise CaseError([Fault(FIELD, "must be a file that can be read", repr(written), NO_FILE)]) from None
    return tables.with_hourly(written, hourly_year(found, written))


def weather_of(case: Case, tables: Tables) -> tuple[str, WeatherChoice]:
    """Return the name of the weather place of a case, and what picks its weather.

    Parameters
    ----------
    case : Case
        What the user said.
    tables : Tables
        Weather places, towns and hourly files.

    Raises
    ------
    CaseError
        If a town or station is not listed, or the hourly file was not read.
    """
    place = case.place
    elevation_m = likely(place.elevation_m)
    if place.hourly_file:
        if place.hourly_file not in tables.hourly:
            raise CaseError([Fault(FIELD, "must be a file that can be read", repr(place.hourly_file), NO_FILE)])
        station = tables.hourly[place.hourly_file].station
        name = ", ".join(part for part in (station.name, station.state) if part)
        return name, WeatherChoice(place.hourly_file, elevation_m=elevation_m, notes=station.notes)
    if place.monthly:
        site, notes = site_of(case, tables)
        months = tuple((name, figure.values) for name, figure in place.monthly)
        return site.name, WeatherChoice("", months, site, elevation_m, notes)
    if place.station:
        return place.station, WeatherChoice(elevation_m=elevation_m)
    site, _ = site_of(case, tables)
    near = tables.stations.nearest(site.latitude_deg, site.longitude_deg, 1)[0]
    told = f"{near.name} is the nearest weather place to {site.name}: {near.distance_km:.0f} km away"
    apart_m = near.elevation_m - site.elevation_m
    height = f", {abs(apart_m):.0f} m {'higher' if apart_m > 0 else 'lower'}" if elevation_m or place.town else ""
    return near.name, WeatherChoice(elevation_m=elevation_m, notes=(f"{told}{height}.",))


def site_of(case: Case, tables: Tables) -> tuple[Site, tuple[str, ...]]:
    """Return where a case is, by its point, its town or its station, and what was taken for granted.

    Raises
    ------
    CaseError
        If the town is not listed.
    """
    place = case.place
    latitude, longitude, elevation_m = (
        likely(given) for given in (place.latitude_deg, place.longitude_deg, place.elevation_m)
    )
    town = town_of(place.town) if place.town else None
    if latitude is not None and longitude is not None:
        name = place.town or f"{latitude:g}, {longitude:g}"
        if elevation_m is not None:
            return Site(name, place.state or "", latitude, longitude, elevation_m), ()
        near = tables.stations.nearest(latitude, longitude, 1)[0]
        note = f"Height above sea level taken from {near.name}: {near.elevation_m:.0f} m (assumption)."
        return Site(name, place.state or "", latitude, longitude, near.elevation_m), (note,)
    if town is not None:
        height_m = town.elevation_m if elevation_m is None else elevation_m
        return Site(town.key, town.state, town.latitude_deg, town.longitude_deg, height_m), ()
    station = tables.stations.station(place.station or "")
    height_m = station.elevation_m if elevation_m is None else elevation_m
    return Site(station.name, station.state, station.latitude_deg, station.longitude_deg, height_m), ()


def town_of(written: str) -> Town:
    """Return the town a case names.

    Raises
    ------
    CaseError
        If it is not listed; names those that come closest.
    """
    try:
        return load_towns().town(written)
    except UnknownChoiceError as error:
        remedy = f"Nearest names: {'; '.join(error.nearest)}. Or give latitude_deg and longitude_deg."
        raise CaseError([Fault("place.town", "is not a listed town", repr(written), remedy)]) from None


def likely(given: Amount | None) -> float | None:
    """Return the likely value of an amount the user gave, None where it was not given or is not known."""
    return None if given is None or given.is_unknown else given.likely
