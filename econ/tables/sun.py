"""Sunshine on nine faces: an average day of each month from monthly figures, and a clear day for the design load."""

from calendar import timegm
from functools import lru_cache
from importlib.util import find_spec, module_from_spec, spec_from_file_location
from pathlib import Path
from typing import Any, Final

import numpy as np

from econ.climate import sky
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

AIR_C: Final = 12.0
"""degC; air in which light is bent at the horizon: the yearly mean of a mild place. Assumption; a hundredth of a degree
of sun height in all climates."""

EARTH_LATE_S: Final = 67.0
"""s; terrestrial time less that of the turning earth, about 2015 to 2023. US Naval Observatory (recalled)."""

REFRACTION_DEG: Final = 0.5667
"""degree; refraction at sunrise. Reda, Andreas, Solar Energy 76 (2004), 577."""

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
    clear_beam, clear_diffuse = _clear_sky(sun, place[2], 1.0)
    height = np.cos(np.radians(sun.zenith_deg))
    beam_shape = np.where(height > 0.0, clear_beam * height, 0.0)
    if beam_shape.sum() <= 0.0:
        diffuse_kwh = global_kwh
    diffuse = _scaled(clear_diffuse if clear_diffuse.sum() > 0.0 else _twilight(place), diffuse_kwh)
    beam = _scaled(beam_shape, global_kwh - diffuse_kwh)
    return _on_faces(sun, beam, diffuse)


@lru_cache(maxsize=64)
def _clear_day(place: Place, month: int, mean_c: float, dew_point_c: float) -> FloatArray:
    water_cm = float(np.clip(sky.precipitable_water_cm(mean_c, min(dew_point_c, mean_c)), *WATER_CM))
    sun = _sun(place, month)
    beam, diffuse = _clear_sky(sun, place[2], water_cm)
    return read_only(_on_faces(sun, beam * np.maximum(np.cos(np.radians(sun.zenith_deg)), 0.0), diffuse))


def _sun(place: Place, month: int) -> sky.Sun:
    """Sun position and extraterrestrial beam at the middle of each step of the month's mean day."""
    latitude_deg, longitude_deg, elevation_m, utc_offset_h = place
    midnight_s = timegm((_YEAR, month + 1, MEAN_DAY[month], 0, 0, 0)) - 3600.0 * utc_offset_h
    time_s = midnight_s + 3600.0 * _STEP_H * (np.arange(_STEPS) + 0.5)
    pressure_hpa = sky.pressure_at_pa(elevation_m) / 100.0
    found = _positions().solar_position(
        time_s, latitude_deg, longitude_deg, elevation_m, pressure_hpa, AIR_C, EARTH_LATE_S, REFRACTION_DEG, None
    )
    day_of_year = (time_s - timegm((_YEAR, 1, 1, 0, 0, 0))) // 86400.0 + 1.0
    return sky.Sun(found[0], found[4], sky.outside_beam_w_per_m2(day_of_year.astype(np.int64)))


@lru_cache(maxsize=1)
def _positions() -> Any:
    """Return the library's solar positions alone: its package as a whole takes long to load and is not needed."""
    library = find_spec("pvlib")
    folder = library.submodule_search_locations[0] if library and library.submodule_search_locations else ""
    spec = spec_from_file_location("pvlib_spa", Path(folder) / "spa.py")
    if spec is None or spec.loader is None:
        raise TableError("The library pvlib is not installed as expected. Install this program again.")
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def _clear_sky(sun: sky.Sun, elevation_m: float, water_cm: float) -> tuple[FloatArray, FloatArray]:
    return sky.clear_sky_w_per_m2(sun.zenith_deg, sky.pressure_at_pa(elevation_m), water_cm, AEROSOL)


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


def _on_faces(sun: sky.Sun, beam: FloatArray, diffuse: FloatArray) -> FloatArray:
    """Hourly means on the eight compass faces and the horizontal, from horizontal beam and diffuse by step."""
    height = np.cos(np.radians(sun.zenith_deg))
    normal = np.divide(beam, height, out=np.zeros_like(beam), where=beam > 0.0)
    faces = np.empty((_STEPS, len(FACE_AZIMUTH_DEG) + 1))
    for face, azimuth_deg in enumerate(FACE_AZIMUTH_DEG):
        faces[:, face] = sky.wall_light_w_per_m2(sun, normal, diffuse, azimuth_deg, ALBEDO)
    faces[:, -1] = beam + diffuse
    hourly: FloatArray = faces.reshape(24, STEPS_PER_HOUR, -1).mean(axis=1)
    return hourly
