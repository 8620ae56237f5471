"""A year of hours as the engine wants it: weather days that follow each other, and the station's monthly figures."""

from typing import Any, Final

import numpy as np

from econ.climate import moist_air
from econ.climate.station import Station
from econ.climate.weather import FACES, Weather
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import DEGREE_DAY_BASE_C, MONTH_DAYS
from econ.kernel.errors import CaseError, Fault
from econ.tables.epw import HourlyFile
from econ.tables.sun import ALBEDO, FACE_AZIMUTH_DEG, STEPS_PER_HOUR

MOST_NIGHT_LIGHT_FRAC: Final = 0.02
"""Share of a year's global light that may fall in hours whose sun is down throughout: twilight and rounding.

Assumption; five typical years have less than 0.001, and a file whose clock is two hours off has above 0.02.
"""

NEAR_DESIGN_K: Final = 1.0
"""K about the 1 % dry bulb within which hours count as coincident. Assumption: one step of US hourly records."""

_YEAR: Final = 2023
_MONTH: Final[IntArray] = np.repeat(np.arange(len(MONTH_DAYS)), np.array(MONTH_DAYS, dtype=np.int64))


def hourly_weather(hourly: HourlyFile) -> Weather:
    """Return the year's 365 days, each following the one before.

    Parameters
    ----------
    hourly : HourlyFile
        A checked year of hours.

    Returns
    -------
    weather : Weather
        365 chained days of weight 1.

    Raises
    ------
    CaseError
        If more than a trace of the light falls in hours without sun: clock or place are wrong.

    Notes
    -----
    Humidity ratio from the dew point, capped at saturation, at the standard pressure of the place's height. Beam and
    diffuse are turned onto the faces by the model of Hay and Davies (1980), ground reflectance 0.2, at the middle of
    ten-minute steps; an hour's beam is shared among its steps with the sun up.

    References
    ----------
    .. [1] Hay, Davies, Calculations of the solar radiation incident on an inclined surface, 1980.
    """
    pressure = moist_air.pressure_pa(np.asarray(hourly.elevation_m))
    dew_point_c = np.minimum(hourly.dew_point_c, hourly.dry_bulb_c)
    return Weather(
        dry_bulb_c=hourly.dry_bulb_c,
        humidity_ratio=moist_air.saturation_humidity_ratio(dew_point_c, pressure),
        irradiance=_irradiance(hourly),
        month=_MONTH,
        weight_d=np.ones(len(_MONTH)),
        pressure_pa=float(pressure),
        is_chained=True,
        origin=f"hourly file, {hourly.name} {hourly.source}",
    )


def file_station(hourly: HourlyFile) -> Station:
    """Return the monthly figures and design conditions that the hours amount to.

    Parameters
    ----------
    hourly : HourlyFile
        A checked year of hours.

    Returns
    -------
    station : Station
        Degree-days and spread from daily means. Design dry bulbs come from this one year: 1 to 2 K of doubt.

    Notes
    -----
    The coincident wet bulb is the mean over the hours within 1 K of the 1 % dry bulb.
    """
    daily_c = hourly.dry_bulb_c.mean(axis=0)
    mean_c, max_c, min_c = (
        _by_month(part) for part in (daily_c, hourly.dry_bulb_c.max(axis=0), hourly.dry_bulb_c.min(axis=0))
    )
    lights = (hourly.global_w_per_m2, hourly.diffuse_w_per_m2)
    heat_design_c, cool_design_c = np.quantile(hourly.dry_bulb_c, (0.01, 0.99)).tolist()
    return Station(
        name=hourly.name,
        state=hourly.state,
        latitude_deg=hourly.latitude_deg,
        longitude_deg=hourly.longitude_deg,
        elevation_m=hourly.elevation_m,
        utc_offset_h=hourly.utc_offset_h,
        heat_design_c=heat_design_c,
        cool_design_c=cool_design_c,
        cool_wet_bulb_c=_coincident_wet_bulb_c(hourly, cool_design_c),
        daily_range_k=float((max_c - min_c)[mean_c.argmax()]),
        mean_c=mean_c,
        max_c=max_c,
        min_c=min_c,
        sd_k=np.array([daily_c[month == _MONTH].std(ddof=1) for month in range(len(MONTH_DAYS))]),
        dew_point_c=_by_month(hourly.dew_point_c.mean(axis=0)),
        global_kwh_per_m2=_by_month(lights[0].sum(axis=0) / 1000.0),
        diffuse_kwh_per_m2=np.minimum(*(_by_month(light.sum(axis=0) / 1000.0) for light in lights)),
        wind_m_per_s=_by_month(hourly.wind_m_per_s.mean(axis=0)),
        hdd18_3_kd=float(np.maximum(DEGREE_DAY_BASE_C - daily_c, 0.0).sum()),
        cdd18_3_kd=float(np.maximum(daily_c - DEGREE_DAY_BASE_C, 0.0).sum()),
        period=hourly.source,
        source_id="hourly_file",
        basis="hourly",
        notes=hourly.notes,
    )


def _by_month(daily: FloatArray) -> FloatArray:
    total = np.bincount(_MONTH, daily)
    mean: FloatArray = total / np.array(MONTH_DAYS)
    return mean


def _coincident_wet_bulb_c(hourly: HourlyFile, at_c: float) -> float:
    pressure = moist_air.pressure_pa(np.asarray(hourly.elevation_m))
    is_near = np.abs(hourly.dry_bulb_c - at_c) <= NEAR_DESIGN_K
    dry_bulb_c = hourly.dry_bulb_c[is_near]
    dew_point_c = np.minimum(hourly.dew_point_c[is_near], dry_bulb_c)
    ratio = moist_air.saturation_humidity_ratio(dew_point_c, pressure)
    return float(moist_air.wet_bulb_c(dry_bulb_c, ratio, pressure).mean())


def _irradiance(hourly: HourlyFile) -> FloatArray:
    """Return irradiance on the nine faces, shape (24, 365, 9)."""
    from pvlib import irradiance

    sun = _sun(hourly)
    height = np.maximum(np.cos(np.radians(sun["apparent_zenith"])), 0.0)
    beam, diffuse = _by_step(hourly, height)
    planes: Any = irradiance
    steps = np.empty((height.size, len(FACES)))
    for face, azimuth_deg in enumerate(FACE_AZIMUTH_DEG):
        steps[:, face] = planes.get_total_irradiance(
            surface_tilt=90.0,
            surface_azimuth=azimuth_deg,
            solar_zenith=sun["apparent_zenith"],
            solar_azimuth=sun["azimuth"],
            dni=beam,
            ghi=beam * height + diffuse,
            dhi=diffuse,
            dni_extra=sun["dni_extra"],
            albedo=ALBEDO,
            model="haydavies",
        )["poa_global"]
    steps[:, -1] = beam * height + diffuse
    by_hour = steps.reshape(len(_MONTH), 24, STEPS_PER_HOUR, len(FACES)).mean(axis=2)
    return np.ascontiguousarray(by_hour.transpose(1, 0, 2))


def _by_step(hourly: HourlyFile, height: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return direct normal and diffuse light of each step, shape (n_step,): beam only while the sun is up."""
    is_up = height.reshape(-1, STEPS_PER_HOUR) > 0.0
    n_up = is_up.sum(axis=1)
    by_hour = [part.T.ravel() for part in (hourly.global_w_per_m2, hourly.beam_w_per_m2, hourly.diffuse_w_per_m2)]
    total, beam, diffuse = by_hour
    night = float(total[n_up == 0].sum()) / max(float(total.sum()), 1.0)
    if night > MOST_NIGHT_LIGHT_FRAC:
        allowed = f"must be at most {MOST_NIGHT_LIGHT_FRAC:.0%} of the year's light while the sun is down"
        remedy = "Check latitude, longitude and time zone on the first line; rows are in local standard time."
        raise CaseError([Fault(f"{hourly.name}, global irradiance", allowed, f"{night:.1%}", remedy)])
    share = is_up * (STEPS_PER_HOUR / np.maximum(n_up, 1))[:, None]
    return (beam[:, None] * share).ravel(), np.repeat(diffuse, STEPS_PER_HOUR)


def _sun(hourly: HourlyFile) -> dict[str, FloatArray]:
    """Return sun position and extraterrestrial beam at the middle of each step of the year."""
    import pandas as pd
    from pvlib import irradiance, solarposition

    step_h = 1.0 / STEPS_PER_HOUR
    start = pd.Timestamp(_YEAR, 1, 1, tz="UTC") - pd.Timedelta(hours=hourly.utc_offset_h)
    n_step = len(_MONTH) * 24 * STEPS_PER_HOUR
    times = start + pd.to_timedelta((np.arange(n_step) + 0.5) * step_h, unit="h")
    position = solarposition.get_solarposition(
        times, hourly.latitude_deg, hourly.longitude_deg, altitude=hourly.elevation_m
    )
    sun = {name: position[name].to_numpy(dtype=np.float64) for name in ("apparent_zenith", "azimuth")}
    extra = irradiance.get_extra_radiation(times.day_of_year.to_numpy())
    return sun | {"dni_extra": np.asarray(extra, dtype=np.float64)}
