"""Moist air: pressures, humidity ratio, enthalpy, dew point and wet bulb, as arrays.

Equations of ASHRAE Handbook Fundamentals (2017), chapter 1, SI units. The inversions run a fixed number of steps, so a
row gives the same number alone and among others.
"""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import STANDARD_PRESSURE_PA, ZERO_CELSIUS_K
from econ.kernel.errors import OutOfRangeError

WATER_TO_AIR_FRAC: Final = 0.621945
"""Ratio of molar masses, water to dry air. ASHRAE Fundamentals (2017), ch. 1, eq. 20."""

TRIPLE_POINT_C: Final = 0.01
"""degC; below it saturation is over ice. ASHRAE Fundamentals (2017), ch. 1, eq. 5 and 6."""

LOWEST_C: Final = -100.0
HIGHEST_C: Final = 200.0
"""degC; validity of the saturation equations. ASHRAE Fundamentals (2017), ch. 1, eq. 5 and 6."""

_ICE = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
_WATER = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)
_NEWTON_STEPS: Final = 12
_HALVINGS: Final = 48


def pressure_pa(elevation_m: FloatArray) -> FloatArray:
    """Return the standard atmosphere's pressure at a height.

    Parameters
    ----------
    elevation_m : array_like, shape (...)
        Height above sea level. [m]

    Returns
    -------
    pressure_pa : ndarray, shape (...)
        Barometric pressure. [Pa]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 3.
    """
    height = np.asarray(elevation_m, dtype=np.float64)
    pressure: FloatArray = STANDARD_PRESSURE_PA * (1.0 - 2.25577e-5 * height) ** 5.2559
    return pressure


def saturation_pressure_pa(dry_bulb_c: FloatArray) -> FloatArray:
    """Return the vapour pressure of saturated air, over ice below the triple point and over water above.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]

    Returns
    -------
    saturation_pa : ndarray, shape (...)
        Saturation pressure. [Pa]

    Raises
    ------
    OutOfRangeError
        Outside -100 to 200 degC, where the equations do not hold.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 5 and 6.
    """
    celsius = np.asarray(dry_bulb_c, dtype=np.float64)
    _check_between("dry_bulb_c", celsius, LOWEST_C, HIGHEST_C)
    t = celsius + ZERO_CELSIUS_K
    a, b, c, d, e, f, g = _ICE
    ice = a / t + b + t * (c + t * (d + t * (e + t * f))) + g * np.log(t)
    a, b, c, d, e, g = _WATER
    water = a / t + b + t * (c + t * (d + t * e)) + g * np.log(t)
    saturation: FloatArray = np.exp(np.where(celsius <= TRIPLE_POINT_C, ice, water))
    return saturation


def humidity_ratio(vapour_pa: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the water in air, kg a kg of dry air, from its vapour pressure.

    Parameters
    ----------
    vapour_pa : array_like, shape (...)
        Partial pressure of water vapour. [Pa]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    humidity_ratio : ndarray, shape (...)
        Humidity ratio. [kg/kg]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 20.
    """
    vapour = np.asarray(vapour_pa, dtype=np.float64)
    ratio: FloatArray = WATER_TO_AIR_FRAC * vapour / (pressure_pa - vapour)
    return ratio


def vapour_pressure_pa(humidity_ratio: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the partial pressure of water vapour from the humidity ratio.

    Parameters
    ----------
    humidity_ratio : array_like, shape (...)
        Humidity ratio. [kg/kg]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    vapour_pa : ndarray, shape (...)
        Partial pressure of water vapour. [Pa]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 20 solved for the vapour pressure.
    """
    ratio = np.asarray(humidity_ratio, dtype=np.float64)
    vapour: FloatArray = pressure_pa * ratio / (WATER_TO_AIR_FRAC + ratio)
    return vapour


def saturation_humidity_ratio(dry_bulb_c: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the most water that air can hold at a temperature.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    humidity_ratio : ndarray, shape (...)
        Humidity ratio at saturation. [kg/kg]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 21.
    """
    return humidity_ratio(saturation_pressure_pa(dry_bulb_c), pressure_pa)


def humidity_ratio_at(
    dry_bulb_c: FloatArray, relative_humidity_frac: FloatArray, pressure_pa: FloatArray
) -> FloatArray:
    """Return the humidity ratio at a relative humidity.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]
    relative_humidity_frac : array_like, shape () or (...)
        Relative humidity, 0 to 1. [dimensionless]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    humidity_ratio : ndarray, shape (...)
        Humidity ratio. [kg/kg]

    Raises
    ------
    OutOfRangeError
        If the relative humidity lies outside 0 to 1.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 20 and 22.
    """
    relative = np.asarray(relative_humidity_frac, dtype=np.float64)
    _check_between("relative_humidity_frac", relative, 0.0, 1.0)
    return humidity_ratio(relative * saturation_pressure_pa(dry_bulb_c), pressure_pa)


def relative_humidity_frac(dry_bulb_c: FloatArray, humidity_ratio: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the relative humidity of air.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]
    humidity_ratio : array_like, shape (...)
        Humidity ratio. [kg/kg]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    relative_humidity_frac : ndarray, shape (...)
        Relative humidity, 0 to 1; above 1 the air cannot exist. [dimensionless]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 22.
    """
    relative: FloatArray = vapour_pressure_pa(humidity_ratio, pressure_pa) / saturation_pressure_pa(dry_bulb_c)
    return relative


def enthalpy_j_per_kg(dry_bulb_c: FloatArray, humidity_ratio: FloatArray) -> FloatArray:
    """Return the enthalpy of moist air, per kg of dry air, from 0 degC.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]
    humidity_ratio : array_like, shape (...)
        Humidity ratio. [kg/kg]

    Returns
    -------
    enthalpy_j_per_kg : ndarray, shape (...)
        Enthalpy. [J/kg]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 30.
    """
    t = np.asarray(dry_bulb_c, dtype=np.float64)
    enthalpy: FloatArray = (1.006 * t + np.asarray(humidity_ratio) * (2501.0 + 1.86 * t)) * 1000.0
    return enthalpy


def dew_point_c(humidity_ratio: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the temperature at which air becomes saturated.

    Parameters
    ----------
    humidity_ratio : array_like, shape (...)
        Humidity ratio, above 0. [kg/kg]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    dew_point_c : ndarray, shape (...)
        Dew point, frost point below freezing. [degC]

    Notes
    -----
    Newton on the logarithm of the saturation pressure against 1/T, which is nearly a straight line; a fixed number of
    steps.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 5 and 6 solved for the temperature.
    """
    target = np.log(vapour_pressure_pa(humidity_ratio, pressure_pa))
    celsius = np.zeros_like(target)
    step = 1e-3
    for _ in range(_NEWTON_STEPS):
        here, there = (np.log(saturation_pressure_pa(celsius + shift)) for shift in (0.0, step))
        inverse = 1.0 / (celsius + ZERO_CELSIUS_K)
        slope = (there - here) / (1.0 / (celsius + step + ZERO_CELSIUS_K) - inverse)
        celsius = 1.0 / (inverse + (target - here) / slope) - ZERO_CELSIUS_K
    return celsius


def humidity_ratio_from_wet_bulb(dry_bulb_c: FloatArray, wet_bulb_c: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the humidity ratio from dry bulb and wet bulb.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]
    wet_bulb_c : array_like, shape (...)
        Thermodynamic wet bulb, not above the dry bulb. [degC]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    humidity_ratio : ndarray, shape (...)
        Humidity ratio; negative where no air has this wet bulb. [kg/kg]

    Raises
    ------
    OutOfRangeError
        If a wet bulb is above its dry bulb.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 33 (over water) and 35 (over ice).
    """
    t, wet = np.broadcast_arrays(np.asarray(dry_bulb_c, dtype=np.float64), np.asarray(wet_bulb_c, dtype=np.float64))
    if np.any(wet > t):
        worst = float(np.max(wet - t))
        raise OutOfRangeError("wet bulb minus dry bulb", worst, "K", "at most 0", "Check which of the two is which.")
    return _psychrometer_ratio(t, wet, pressure_pa)


def wet_bulb_c(dry_bulb_c: FloatArray, humidity_ratio: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the thermodynamic wet bulb.

    Parameters
    ----------
    dry_bulb_c : array_like, shape (...)
        Temperature. [degC]
    humidity_ratio : array_like, shape (...)
        Humidity ratio. [kg/kg]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    wet_bulb_c : ndarray, shape (...)
        Wet bulb. [degC]

    Notes
    -----
    Halving between dew point and dry bulb, a fixed number of times.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 33 and 35 solved for the wet bulb.
    """
    t, ratio = np.broadcast_arrays(
        np.asarray(dry_bulb_c, dtype=np.float64), np.asarray(humidity_ratio, dtype=np.float64)
    )
    low, high = np.minimum(dew_point_c(ratio, pressure_pa), t), t.astype(np.float64)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        is_above = _psychrometer_ratio(t, middle, pressure_pa) > ratio
        low, high = np.where(is_above, low, middle), np.where(is_above, middle, high)
    wet: FloatArray = (low + high) / 2.0
    return wet


def _psychrometer_ratio(t: FloatArray, wet: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    saturated = saturation_humidity_ratio(wet, pressure_pa)
    over_water = ((2501.0 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501.0 + 1.86 * t - 4.186 * wet)
    over_ice = ((2830.0 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830.0 + 1.86 * t - 2.1 * wet)
    return np.where(wet >= 0.0, over_water, over_ice)


def _check_between(name: str, values: FloatArray, low: float, high: float) -> None:
    outside = ~((values >= low) & (values <= high))
    if np.any(outside):
        first = float(np.atleast_1d(values)[np.atleast_1d(outside)][0])
        raise OutOfRangeError(name, first, "", f"between {low:g} and {high:g}", "Check the unit of this value.")
