"""Sunshine on nine faces: an average day of each month from monthly figures, and a clear day for the design load."""

from functools import lru_cache
from typing import Any, Final

import numpy as np

from econ.climate.station import Station
from econ.kernel.arrays import FloatArray, read_only
from econ.kernel.errors import OutOfRangeError, TableError

FACE_AZIMUTH_DEG: Final = (0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0)
"""degree; N, NE, E, SE, S, SW, W, NW. The ninth face is the horizontal."""

MEAN_DAY: Final = (17, 16, 16, 15, 15, 11, 17, 16, 15, 15, 14, 10)
"""Day of each month whose extraterrestrial sum is the month's mean. Klein, Solar Energy 19 (1977), table 1."""

ALBEDO: Final = 0.2
"""Reflectance of the ground. Assumption: grass and soil, no snow."""

AEROSOL: Final = 0.1
"""Aerosol optical depth at 700 nm of the clear day. Assumption: rural continental air."""

WATER_CM: Final = (0.1, 8.0)
"""cm; bounds of the precipitable water that the clear-sky fit is made for: Ineichen, Solar Energy 82 (2008), 758."""

STEPS_PER_HOUR: Final = 6
"""Sun positions are taken at the middle of ten-minute steps and averaged over the hour."""

_YEAR: Final = 2023
_STEP_H: Final = 1.0 / STEPS_PER_HOUR
_STEPS: Final = 24 * STEPS_PER_HOUR

Place = tuple[float, float, float, float]


def irradiance_by_month(station: Station) -> FloatArray:
    """Return the irradiance of an average day of each month on nine faces.

    Parameters
    ----------
    station : Station
        Its place and monthly mean daily irradiation.

    Returns
    -------
    irradiance : ndarray, shape (24, 12, 9)
        Mean of each hour h to h + 1 of local standard time; N, NE, E, SE, S, SW, W, NW, horizontal. [W/m^2]

    Raises
    ------
    TableError
        If a month has more diffuse than global irradiation.

    Notes
    -----
    Beam and diffuse follow a clear day's course, each scaled so that its daily sum equals the table's. Tilted faces by
    the model of Hay and Davies (1980) with a ground reflectance of 0.2. In a month whose mean day has no sun but some
    light (twilight), all of it is diffuse and follows the cosine of the hour angle. Departs from source: an average day
    has neither the brightest nor the dullest hours of the month; transposition is near to linear, so sums hold.

    References
    ----------
    .. [1] Hay, Davies, Calculations of the solar radiation incident on an inclined surface, 1980.
    .. [2] Ineichen, A broadband simplified version of the Solis clear sky model, Solar Energy 82 (2008), 758.
    """
    sums = np.stack([station.global_kwh_per_m2, station.diffuse_kwh_per_m2])
    if np.any(sums[1] > sums[0]):
        month = int(np.argmax(sums[1] - sums[0])) + 1
        raise TableError(f"{station.name}: diffuse irradiation exceeds global in month {month}. Correct the figures.")
    return _by_month(_place(station), tuple(sums[0].tolist()), tuple(sums[1].tolist()))


def clear_day_irradiance(station: Station, month: int) -> FloatArray:
    """Return the irradiance of a clear mean day of a month on nine faces.

    Parameters
    ----------
    station : Station
        Its place, dew point and temperature.
    month : int
        0 for January to 11. [dimensionless]

    Returns
    -------
    irradiance : ndarray, shape (24, 9)
        Mean of each hour of local standard time; faces as in `irradiance_by_month`. [W/m^2]

    Raises
    ------
    OutOfRangeError
        If the month is not 0 to 11.
    """
    if not 0 <= month < len(MEAN_DAY):
        raise OutOfRangeError("month", month, "", "between 0 and 11", "January is 0.")
    return _clear_day(_place(station), month, float(station.mean_c[month]), float(station.dew_point_c[month]))


def _place(station: Station) -> Place:
    return station.latitude_deg, station.longitude_deg, station.elevation_m, station.utc_offset_h


@lru_cache(maxsize=64)
def _by_month(place: Place, global_kwh: tuple[float, ...], diffuse_kwh: tuple[float, ...]) -> FloatArray:
    sums = zip(global_kwh, diffuse_kwh, strict=True)
    days = [_average_day(place, month, *pair) for month, pair in enumerate(sums)]
    return read_only(np.stack(days, axis=1))


def _average_day(place: Place, month: int, global_kwh: float, diffuse_kwh: float) -> FloatArray:
    sun = _sun(place, month)
    clear = _clear_sky(sun["apparent_elevation"], place[2], 1.0)
    height = np.cos(np.radians(sun["apparent_zenith"]))
    beam_shape = np.where(height > 0.0, clear["dni"] * height, 0.0)
    if beam_shape.sum() <= 0.0:
        diffuse_kwh = global_kwh
    diffuse = _scaled(clear["dhi"] if clear["dhi"].sum() > 0.0 else _twilight(place), diffuse_kwh)
    beam = _scaled(beam_shape, global_kwh - diffuse_kwh)
    return _on_faces(sun, beam, diffuse)


@lru_cache(maxsize=64)
def _clear_day(place: Place, month: int, mean_c: float, dew_point_c: float) -> FloatArray:
    from pvlib import atmosphere

    humidity = np.clip(atmosphere.rh_from_tdew(mean_c, min(dew_point_c, mean_c)), 1.0, 100.0)
    water_cm = float(np.clip(atmosphere.gueymard94_pw(mean_c, humidity), *WATER_CM))
    sun = _sun(place, month)
    clear = _clear_sky(sun["apparent_elevation"], place[2], water_cm)
    height = np.maximum(np.cos(np.radians(sun["apparent_zenith"])), 0.0)
    return read_only(_on_faces(sun, clear["dni"] * height, clear["dhi"]))


def _sun(place: Place, month: int) -> dict[str, FloatArray]:
    """Sun position and extraterrestrial beam at the middle of each step of the month's mean day."""
    import pandas as pd
    from pvlib import irradiance, solarposition

    latitude_deg, longitude_deg, elevation_m, utc_offset_h = place
    start = pd.Timestamp(_YEAR, month + 1, MEAN_DAY[month], tz="UTC") - pd.Timedelta(hours=utc_offset_h)
    times = start + pd.to_timedelta((np.arange(_STEPS) + 0.5) * _STEP_H, unit="h")
    position = solarposition.get_solarposition(times, latitude_deg, longitude_deg, altitude=elevation_m)
    columns = ("apparent_elevation", "apparent_zenith", "azimuth")
    sun = {name: position[name].to_numpy(dtype=np.float64) for name in columns}
    return sun | {
        "dni_extra": np.asarray(irradiance.get_extra_radiation(times.day_of_year.to_numpy()), dtype=np.float64)
    }


def _clear_sky(elevation_deg: FloatArray, elevation_m: float, water_cm: float) -> dict[str, FloatArray]:
    from pvlib import atmosphere, clearsky

    pressure_pa = float(atmosphere.alt2pres(elevation_m))
    sky: Any = clearsky.simplified_solis(elevation_deg, AEROSOL, water_cm, pressure_pa)
    is_day = elevation_deg > 0.0
    return {name: np.where(is_day, np.nan_to_num(sky[name]), 0.0) for name in ("dni", "dhi")}


def _twilight(place: Place) -> FloatArray:
    """Course of light on a day whose sun stays down: highest at solar noon, none within 6 h of midnight."""
    _, longitude_deg, _, utc_offset_h = place
    noon_h = 12.0 + utc_offset_h - longitude_deg / 15.0
    hour = (np.arange(_STEPS) + 0.5) * _STEP_H
    light: FloatArray = np.maximum(np.cos((hour - noon_h) * np.pi / 12.0), 0.0)
    return light


def _scaled(shape: FloatArray, daily_kwh: float) -> FloatArray:
    """Scale a course so that its daily sum is the one given; a course without light stays dark."""
    total_wh = shape.sum() * _STEP_H
    return shape * (1000.0 * daily_kwh / total_wh) if total_wh > 0.0 else np.zeros_like(shape)


def _on_faces(sun: dict[str, FloatArray], beam: FloatArray, diffuse: FloatArray) -> FloatArray:
    """Hourly means on the eight compass faces and the horizontal, from horizontal beam and diffuse by step."""
    from pvlib import irradiance

    height = np.cos(np.radians(sun["apparent_zenith"]))
    normal = np.divide(beam, height, out=np.zeros_like(beam), where=beam > 0.0)
    faces = np.empty((_STEPS, len(FACE_AZIMUTH_DEG) + 1))
    for face, azimuth_deg in enumerate(FACE_AZIMUTH_DEG):
        plane = irradiance.get_total_irradiance(
            surface_tilt=90.0,
            surface_azimuth=azimuth_deg,
            solar_zenith=sun["apparent_zenith"],
            solar_azimuth=sun["azimuth"],
            dni=normal,
            ghi=beam + diffuse,
            dhi=diffuse,
            dni_extra=sun["dni_extra"],
            albedo=ALBEDO,
            model="haydavies",
        )
        faces[:, face] = plane["poa_global"]
    faces[:, -1] = beam + diffuse
    hourly: FloatArray = faces.reshape(24, STEPS_PER_HOUR, -1).mean(axis=1)
    return hourly
