"""A place known by its months: what is not known of it is estimated, and said."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate import degree_days, estimate
from econ.climate.station import Station
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DEGREE_DAY_BASE_C, MONTH_DAYS

DEGREES_PER_HOUR: Final = 15.0
"""degree of longitude that the sun crosses in an hour."""


@dataclass(frozen=True, slots=True)
class Site:
    """Where a place lies.

    Attributes
    ----------
    name : str
        As it is shown.
    state : str
        Two letters in the USA, else empty.
    latitude_deg, longitude_deg : float
        North and east positive. [degree]
    elevation_m : float
        Above sea level. [m]
    """

    name: str
    state: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float


@dataclass(frozen=True, slots=True, eq=False)
class Months:
    """Monthly figures as far as they are known, each of shape (12,) or None.

    Attributes
    ----------
    mean_c : ndarray, shape (12,)
        Mean temperature. [degC]
    max_c, min_c : ndarray or None
        Means of the daily maximum and minimum: both or neither. [degC]
    sd_k : ndarray or None
        Standard deviation of daily means within each month. [K]
    dew_point_c : ndarray or None
        Mean dew point. [degC]
    global_kwh_per_m2, diffuse_kwh_per_m2 : ndarray or None
        Mean daily irradiation on the horizontal. [kWh/m^2]
    wind_m_per_s : ndarray or None
        Mean wind speed. [m/s]
    """

    mean_c: FloatArray
    max_c: FloatArray | None = None
    min_c: FloatArray | None = None
    sd_k: FloatArray | None = None
    dew_point_c: FloatArray | None = None
    global_kwh_per_m2: FloatArray | None = None
    diffuse_kwh_per_m2: FloatArray | None = None
    wind_m_per_s: FloatArray | None = None


def station_of_months(site: Site, months: Months, basis: str, period: str) -> Station:
    """Return a station made from monthly figures; what they lack is estimated and named.

    Parameters
    ----------
    site : Site
        Where it lies.
    months : Months
        What is known.
    basis : str
        "means" or "typed".
    period : str
        Years that the figures cover, or where they come from.

    Returns
    -------
    station : Station
        `estimated` names what was not known. Local time is that of the nearest 15th meridian.

    Notes
    -----
    Daily range, deviation, dew point and sun by `estimate` and `degree_days.known_sd_k`. Design dry bulbs are those of
    the hours that the months let one expect. Wind, where not known, is `USUAL_WIND_M_PER_S`.
    """
    range_k, max_c, min_c = _range(months)
    sd_k = degree_days.known_sd_k(months.mean_c, np.full(12, np.nan) if months.sd_k is None else months.sd_k)
    dew_c = estimate.dew_point_c(min_c) if months.dew_point_c is None else months.dew_point_c
    light, diffuse = _sun(site, months, range_k)
    heat_c, cool_c = estimate.design_dry_bulb_c(months.mean_c, sd_k, range_k)
    hottest = int(np.argmax(months.mean_c))
    base = np.asarray(DEGREE_DAY_BASE_C)
    return Station(
        name=site.name,
        state=site.state,
        latitude_deg=site.latitude_deg,
        longitude_deg=site.longitude_deg,
        elevation_m=site.elevation_m,
        utc_offset_h=float(np.round(site.longitude_deg / DEGREES_PER_HOUR)),
        heat_design_c=heat_c,
        cool_design_c=cool_c,
        cool_wet_bulb_c=estimate.coincident_wet_bulb_c(cool_c, float(dew_c[hottest]), site.elevation_m),
        daily_range_k=float(range_k[hottest]),
        mean_c=months.mean_c,
        max_c=max_c,
        min_c=min_c,
        sd_k=sd_k,
        dew_point_c=dew_c,
        global_kwh_per_m2=light,
        diffuse_kwh_per_m2=diffuse,
        wind_m_per_s=np.full(12, estimate.USUAL_WIND_M_PER_S) if months.wind_m_per_s is None else months.wind_m_per_s,
        hdd18_3_kd=float(degree_days.heating_kd(months.mean_c, sd_k, base).sum()),
        cdd18_3_kd=float(degree_days.cooling_kd(months.mean_c, sd_k, base).sum()),
        period=period,
        source_id=basis,
        basis=basis,
        estimated=_estimated(months),
    )


def _range(months: Months) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return mean daily range, maximum and minimum; the usual range about the mean where neither end is known."""
    if months.max_c is not None and months.min_c is not None:
        return months.max_c - months.min_c, months.max_c, months.min_c
    half_k = np.full(len(MONTH_DAYS), estimate.USUAL_RANGE_K / 2.0)
    return 2.0 * half_k, months.mean_c + half_k, months.mean_c - half_k


def _sun(site: Site, months: Months, range_k: FloatArray) -> tuple[FloatArray, FloatArray]:
    light = months.global_kwh_per_m2
    if light is None:
        light = estimate.global_kwh_per_m2(site.latitude_deg, range_k)
    if months.diffuse_kwh_per_m2 is not None:
        return light, months.diffuse_kwh_per_m2
    return light, estimate.diffuse_kwh_per_m2(site.latitude_deg, light)


def _estimated(months: Months) -> tuple[str, ...]:
    """Return in words what the months lack."""
    asked = {
        "the daily range (11 K, assumption)": months.max_c,
        "the spread of days within a month (Erbs, Klein and Beckman 1983)": months.sd_k,
        "the dew point (mean daily minimum, FAO 56)": months.dew_point_c,
        "sunshine (from the daily range, Hargreaves and Samani 1982)": months.global_kwh_per_m2,
        "the diffuse part of sunshine (Erbs, Klein and Duffie 1982)": months.diffuse_kwh_per_m2,
        "wind": months.wind_m_per_s,
    }
    return tuple(words for words, known in asked.items() if known is None)
