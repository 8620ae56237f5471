"""Light from the sky: a clear day's beam and diffuse, and what a tilted plane receives of both."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import STANDARD_PRESSURE_PA, ZERO_CELSIUS_K

SOLAR_CONSTANT_W_PER_M2: Final = 1366.1
"""W/m2; beam outside the air at the mean distance from the sun. ASTM E490-00 (2000)."""

CLEAR_SKY_CONSTANT_W_PER_M2: Final = 1364.0
"""W/m2; the same as the clear-sky fit below takes it. Ineichen (2008)."""

LEAST_WATER_CM: Final = 0.2
"""cm; precipitable water from which the clear-sky fit is made. Ineichen (2008)."""

LEAST_HEIGHT: Final = 0.01745
"""Sine of the lowest sun, one degree, whose circumsolar light is carried over to a tilted plane: below it the ratio of
the two planes has no bound. Common practice, no source."""


@dataclass(frozen=True, slots=True, eq=False)
class Sun:
    """Where the sun stands, refraction included, and its beam outside the air.

    Attributes
    ----------
    zenith_deg, azimuth_deg : ndarray, shape (...)
        Angle from straight up; clockwise from north. [degree] [degree]
    outside_w_per_m2 : ndarray, shape (...)
        Beam outside the air. [W/m^2]
    """

    zenith_deg: FloatArray
    azimuth_deg: FloatArray
    outside_w_per_m2: FloatArray


def outside_beam_w_per_m2(day_of_year: IntArray) -> FloatArray:
    """Return the sun's beam outside the air.

    Parameters
    ----------
    day_of_year : array_like of int, shape (...)
        1 for 1 January. [dimensionless]

    Returns
    -------
    beam_w_per_m2 : ndarray, shape (...)
        Nearest the sun in early January, 3 % above the mean. [W/m^2]

    References
    ----------
    .. [1] Spencer (1971), Fourier series representation of the position of the sun, Search 2(5), 172.
    """
    b = 2.0 * np.pi / 365.0 * (np.asarray(day_of_year) - 1.0)
    ratio = 1.00011 + 0.034221 * np.cos(b) + 0.00128 * np.sin(b) + 0.000719 * np.cos(2 * b) + 7.7e-05 * np.sin(2 * b)
    beam: FloatArray = SOLAR_CONSTANT_W_PER_M2 * ratio
    return beam


def pressure_at_pa(elevation_m: float) -> float:
    """Return the pressure of the standard atmosphere.

    Parameters
    ----------
    elevation_m : float
        Above sea level. [m]

    Returns
    -------
    pressure_pa : float
        101,325 Pa at sea level. [Pa]

    References
    ----------
    .. [1] US Standard Atmosphere (1976), solved for the pressure; figures as rounded by the Portland State Aerospace
       Society, A quick derivation relating altitude to air pressure (2004).
    """
    return float(100.0 * ((44331.514 - elevation_m) / 11880.516) ** (1.0 / 0.1902632))


def precipitable_water_cm(dry_bulb_c: float, dew_point_c: float) -> float:
    """Return the water in the air above, from humidity at the ground.

    Parameters
    ----------
    dry_bulb_c, dew_point_c : float
        At the ground; the dew point not above the dry bulb. [degC] [degC]

    Returns
    -------
    water_cm : float
        Depth of the water if it all fell as rain; at least 0.1. [cm]

    References
    ----------
    .. [1] Gueymard (1994), Solar Energy 53(1), 57-71, as written by Keogh, Blakers (2004), Progress in Photovoltaics
       12, eq. 1; relative humidity, held to 1 to 100 %, by Magnus' formula with the coefficients of WMO-No. 8.
    """
    pressures = [np.exp(17.62 * at_c / (243.12 + at_c)) for at_c in (dew_point_c, dry_bulb_c)]
    humidity_percent = np.clip(100.0 * pressures[0] / pressures[1], 1.0, 100.0)
    t = dry_bulb_c + ZERO_CELSIUS_K
    theta, hundreds = t / ZERO_CELSIUS_K, t / 100.0
    height_km = 0.4976 + 1.5265 * theta + np.exp(13.6897 * theta - 14.9188 * theta**3)
    vapour = np.exp(22.330 - 49.140 / hundreds - 10.922 / hundreds**2 - 0.39015 * hundreds)
    return float(np.maximum(0.1 * height_km * (216.7 * humidity_percent / (100.0 * t) * vapour), 0.1))


def clear_sky_w_per_m2(
    zenith_deg: FloatArray, pressure_pa: float, water_cm: float, aerosol: float
) -> tuple[FloatArray, FloatArray]:
    """Return beam and diffuse light under a clear sky.

    Parameters
    ----------
    zenith_deg : ndarray, shape (...)
        Angle of the sun from straight up, refraction included. [degree]
    pressure_pa : float
        Barometric pressure. [Pa]
    water_cm : float
        Precipitable water, up to 8; less than 0.2 counts as 0.2, where the fit begins. [cm]
    aerosol : float
        Aerosol optical depth at 700 nm, 0.05 to 0.45. [dimensionless]

    Returns
    -------
    light : tuple of ndarray, shape (...)
        Beam on a plane facing the sun and diffuse on the horizontal; 0 while the sun is down. [W/m^2] [W/m^2]

    References
    ----------
    .. [1] Ineichen (2008), A broadband simplified version of the Solis clear sky model, Solar Energy 82, 758-762.
    """
    a, w, p = aerosol, max(water_cm, LEAST_WATER_CM), np.log(pressure_pa / STANDARD_PRESSURE_PA)
    wet = np.log(w)
    outside = CLEAR_SKY_CONSTANT_W_PER_M2 * (0.12 * w**0.56 * a**2 + 0.97 * w**0.032 * a + 1.08 * w**0.0051 + 0.071 * p)
    beam_depth = (1.82 + 0.056 * wet + 0.0071 * wet**2) * a + (0.33 + 0.045 * wet + 0.0096 * wet**2)
    beam_depth += (0.0089 * w + 0.13) * p
    beam_power = (0.00925 * a**2 + 0.0148 * a - 0.0172) * wet - 0.7565 * a**2 + 0.5057 * a + 0.4557
    diffuse_depth = (-0.21 * w + 11.6) * a**4 + (0.27 * w - 20.7) * a**3 + (-0.134 * w + 15.5) * a**2
    diffuse_depth += (0.0554 * w - 5.71) * a + 0.0057 * w + 2.94 - 0.71 * (1.0 + a) ** -15.0 * p
    diffuse_power = -0.337 * a**2 + 0.63 * a + 0.116 + p / (18.0 + 152.0 * a)
    is_up = zenith_deg < 90.0
    height = np.where(is_up, np.cos(np.radians(zenith_deg)), 1.0)
    beam = np.where(is_up, outside * np.exp(-beam_depth / height**beam_power), 0.0)
    diffuse = np.where(is_up, outside * np.exp(-diffuse_depth / height**diffuse_power), 0.0)
    return beam, diffuse


def wall_light_w_per_m2(
    sun: Sun, beam_w_per_m2: FloatArray, diffuse_w_per_m2: FloatArray, azimuth_deg: float, albedo: float
) -> FloatArray:
    """Return the light on an upright wall.

    Parameters
    ----------
    sun : Sun
        Its place and its beam outside the air, shape (n,).
    beam_w_per_m2 : ndarray, shape (n,)
        Beam on a plane facing the sun. [W/m^2]
    diffuse_w_per_m2 : ndarray, shape (n,)
        Diffuse light on the horizontal. [W/m^2]
    azimuth_deg : float
        Where the wall faces, clockwise from north. [degree]
    albedo : float
        Reflectance of the ground. [dimensionless]

    Returns
    -------
    light_w_per_m2 : ndarray, shape (n,)
        Beam, diffuse and light from the ground. [W/m^2]

    References
    ----------
    .. [1] Hay, Davies (1980), Calculations of the solar radiation incident on an inclined surface.
    """
    zenith = np.radians(sun.zenith_deg)
    height = np.cos(zenith)
    facing = np.maximum(np.sin(zenith) * np.cos(np.radians(sun.azimuth_deg - azimuth_deg)), 0.0)
    clearness = beam_w_per_m2 / sun.outside_w_per_m2
    around_sun = np.maximum(diffuse_w_per_m2 * clearness * facing / np.maximum(height, LEAST_HEIGHT), 0.0)
    rest_of_sky = np.maximum(diffuse_w_per_m2 * (1.0 - clearness) / 2.0, 0.0)
    horizontal = beam_w_per_m2 * height + diffuse_w_per_m2
    light: FloatArray = beam_w_per_m2 * facing + around_sun + rest_of_sky + horizontal * albedo / 2.0
    return light
