"""Ground through the year: what its surface is drawn to, and how the swing dies away with depth."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.moist_air import WATER_TO_AIR_FRAC, saturation_pressure_pa
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import AIR_HEAT_J_PER_KGK, DAYS_PER_YEAR, HOUR_S, MONTH_DAYS, VAPOUR_HEAT_J_PER_KG
from econ.kernel.errors import OutOfRangeError

DAY_S: Final = 24.0 * HOUR_S
YEAR_S: Final = DAYS_PER_YEAR * DAY_S
MID_MONTH_D: Final = np.cumsum(MONTH_DAYS) - np.array(MONTH_DAYS) / 2.0
"""d from 1 January to the middle of each month."""

SKY_RADIATION_W_PER_M2K: Final = 4.5
"""W/(m2 K) of long-wave exchange at an emissivity of 0.9. ISO 13790:2008, 11.4.6: five times the emissivity."""

SKY_COLDER_K: Final = 11.0
"""K that the sky is colder than the air, intermediate climates. ISO 13790:2008, 11.4.6."""

GARDEN_WIND_FRAC: Final = 0.43
"""Wind 1 m above suburban ground over wind 10 m above open ground: (270/10)**0.14 (1/370)**0.22.

ASHRAE Handbook Fundamentals (2017), ch. 24, eq. 4 and table 1.
"""

SLOPE_STEP_K: Final = 1.0
"""K over which the slope of saturation pressure is taken. A step, not a measurement; a test halves it."""


def undisturbed_ground_c(
    mean_c: FloatArray,
    amplitude_k: FloatArray,
    depth_m: FloatArray,
    coldest_d: FloatArray,
    diffusivity_m2_per_s: FloatArray,
) -> FloatArray:
    """Return the ground temperature at a depth in the middle of each month, away from buildings.

    Parameters
    ----------
    mean_c : array_like, shape (...)
        Yearly mean of the ground surface. [degC]
    amplitude_k : array_like, shape (...)
        Half the yearly swing of the ground surface. [K]
    depth_m : array_like, shape (...)
        Depth below the surface. [m]
    coldest_d : array_like, shape (...)
        Days from 1 January to the surface's coldest day. [day]
    diffusivity_m2_per_s : array_like, shape (...)
        Thermal diffusivity of the ground, above 0. [m^2/s]

    Returns
    -------
    ground_c : ndarray, shape (..., 12)
        Ground temperature by month. [degC]

    Raises
    ------
    OutOfRangeError
        If a depth is negative or a diffusivity not above 0.

    References
    ----------
    .. [1] T. Kusuda, P. R. Achenbach, Earth temperature and thermal diffusivity at selected stations in the United
       States, National Bureau of Standards report 8972, 1965.

    Examples
    --------
    >>> deep = undisturbed_ground_c(np.array(10.0), np.array(12.0), np.array(30.0), np.array(20.0), np.array(7e-7))
    >>> [round(float(t), 2) for t in deep[:2]]
    [10.0, 10.0]
    """
    deepness, diffusivity = np.asarray(depth_m, np.float64), np.asarray(diffusivity_m2_per_s, np.float64)
    if np.any(deepness < 0.0):
        raise OutOfRangeError("depth_m", float(np.min(deepness)), "m", "at least 0", "Depth counts downwards.")
    if not np.all(diffusivity > 0.0):
        worst = float(np.min(diffusivity))
        raise OutOfRangeError("diffusivity_m2_per_s", worst, "m^2/s", "above 0", "Soils lie near 3e-7 to 1e-6.")
    damping = deepness * np.sqrt(np.pi / (YEAR_S * diffusivity))
    since_coldest = 2.0 * np.pi * (MID_MONTH_D - np.asarray(coldest_d, np.float64)[..., None]) / DAYS_PER_YEAR
    swing = np.asarray(amplitude_k, np.float64) * np.exp(-damping)
    ground: FloatArray = np.asarray(mean_c, np.float64)[..., None] - swing[..., None] * np.cos(
        since_coldest - damping[..., None]
    )
    return ground


def yearly_wave(monthly_c: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return mean, amplitude and coldest day of the yearly sine nearest to twelve monthly means.

    Parameters
    ----------
    monthly_c : array_like, shape (..., 12)
        Monthly mean temperature. [degC]

    Returns
    -------
    mean_c : ndarray, shape (...)
        Mean of the year, months weighted by their days. [degC]
    amplitude_k : ndarray, shape (...)
        Amplitude of the first harmonic. [K]
    coldest_d : ndarray, shape (...)
        Days from 1 January to its coldest day. [day]
    """
    monthly = np.asarray(monthly_c, dtype=np.float64)
    weight = np.array(MONTH_DAYS) / DAYS_PER_YEAR
    mean = monthly @ weight
    phase = 2.0 * np.pi * MID_MONTH_D / DAYS_PER_YEAR
    cosine, sine = (2.0 * (monthly - mean[..., None]) @ (weight * wave) for wave in (np.cos(phase), np.sin(phase)))
    coldest = (np.arctan2(-sine, -cosine) / (2.0 * np.pi) * DAYS_PER_YEAR) % DAYS_PER_YEAR
    return mean, np.hypot(cosine, sine), coldest


@dataclass(frozen=True, slots=True, eq=False)
class Cover:
    """What lies on the ground, and the wind over it, one a row.

    Attributes
    ----------
    absorptance_frac : ndarray, shape (R,)
        Sun that it absorbs. [dimensionless]
    wet_frac : ndarray, shape (R,)
        Evaporation over that of open water at the same temperature. [dimensionless]
    open_frac : ndarray, shape (R,)
        Share of the sky that it sees: 1 in the open, near 0 under a deck. [dimensionless]
    wind_m_per_s : ndarray, shape (R,)
        Wind at the weather station, 10 m above open ground. [m/s]
    """

    absorptance_frac: FloatArray
    wet_frac: FloatArray
    open_frac: FloatArray
    wind_m_per_s: FloatArray


def outdoor_end(
    air_c: FloatArray, vapour_pa: FloatArray, horizontal_w_per_m2: FloatArray, cover: Cover, pressure_pa: float
) -> tuple[FloatArray, FloatArray]:
    """Return the temperature that the ground's surface is drawn to, and the film between, by month.

    Parameters
    ----------
    air_c : array_like, shape (R, 12)
        Monthly mean air temperature. [degC]
    vapour_pa : array_like, shape (12,)
        Monthly mean vapour pressure of the air. [Pa]
    horizontal_w_per_m2 : array_like, shape (12,)
        Monthly mean irradiance on the horizontal, night included. [W/m^2]
    cover : Cover
        What lies on the ground.
    pressure_pa : float
        Barometric pressure. [Pa]

    Returns
    -------
    end_c : ndarray, shape (R, 12)
        Sol-air temperature, evaporation in it: what the surface takes where no heat comes from below. [degC]
    film_m2k_per_w : ndarray, shape (R, 12)
        Resistance between it and the surface. [m^2*K/W]

    Notes
    -----
    Balance of a surface a little warmer than the air by d: absorbed sun less what the cold sky draws, equal to
    (hr + hc (1 + wet g s)) d + hc wet g (ps - pv), with hr and hc of radiation and convection, ps saturation pressure
    at the air's temperature and s its slope, pv the vapour in the air, g = 0.622 L/(c p) what evaporates per heat by
    convection (Lewis number 1). hc = 4 + 4 v, v the wind 1 m above suburban ground. Snow and frost are not counted.

    References
    ----------
    .. [1] ISO 6946:2017, annex C (film), ISO 13790:2008, 11.4.6 (sky), ASHRAE Fundamentals (2017), ch. 24, eq. 4
       and table 1 (wind over open and suburban ground), ch. 6 (Lewis relation).
    .. [2] M. Krarti, C. Lopez-Alonzo, D. E. Claridge, J. F. Kreider, Analytical model to predict annual soil surface
       temperature variation, Journal of Solar Energy Engineering 117, 1995 (share of open water's evaporation).
    """
    air = np.asarray(air_c, np.float64)
    absorptance, wet, opening, wind = (
        np.asarray(part, np.float64)[..., None]
        for part in (cover.absorptance_frac, cover.wet_frac, cover.open_frac, cover.wind_m_per_s)
    )
    convection = 4.0 + 4.0 * GARDEN_WIND_FRAC * wind
    evaporation = convection * wet * WATER_TO_AIR_FRAC * VAPOUR_HEAT_J_PER_KG / (AIR_HEAT_J_PER_KGK * pressure_pa)
    saturated = saturation_pressure_pa(air)
    slope = (saturation_pressure_pa(air + SLOPE_STEP_K) - saturated) / SLOPE_STEP_K
    gain = opening * (absorptance * horizontal_w_per_m2 - SKY_RADIATION_W_PER_M2K * SKY_COLDER_K)
    film = 1.0 / (SKY_RADIATION_W_PER_M2K + convection + evaporation * slope)
    return air + (gain - evaporation * np.maximum(saturated - vapour_pa, 0.0)) * film, film
