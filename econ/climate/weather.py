"""Weather days: 24 hours each, with a weight in days."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.climate import degree_days, moist_air
from econ.climate.station import Station
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.kernel.errors import ShapeError

FACES: Final = ("N", "NE", "E", "SE", "S", "SW", "W", "NW", "horizontal")
"""The faces axis of every irradiance and aperture array (9)."""

# fmt: off
RANGE_BELOW_MAX_FRAC: Final = np.array([
    0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13,
    0.05, 0.00, 0.00, 0.06, 0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82,
])
# fmt: on
"""Part of the daily range that each hour lies below the day's maximum, hours ending 1 to 24.

ASHRAE Handbook Fundamentals (2021), ch. 14, table 6.
"""

DAY_TYPE_WEIGHT_FRAC: Final = np.array([0.06, 0.13, 0.20, 0.22, 0.20, 0.13, 0.06])
DAY_TYPE_DEVIATE: Final = np.array([-2.030840, -1.197908, -0.574428, 0.0, 0.574428, 1.197908, 2.030840])
"""Day types of a month: share of its days, and distance of their mean from the month's in standard deviations.

The normal distribution cut into seven classes; each class stands at its own mean, stretched by one common factor so
that the spread of the seven is that of the month. Coldest and hottest classes are narrow because they set capacity.
Degree-days from these types stay within 1 % of those from the whole distribution; a test derives the numbers.
"""

DEW_FOLLOWS: Final = (1.775, -0.134)
"""Rise of the daily mean dew point with the daily mean dry bulb within a month, K/K: at a dew point equal to the dry
bulb, and change per K that the month's mean dew point lies below its mean dry bulb.

Least squares over the 96 months of eight typical years that travel with open packages: Chicago, Denver, San Francisco,
Sterling and Tampa (the simulation's), Greensboro, Miami and Sand Point (pvlib's). It explains half of what differs
between months and leaves 0.32 K/K; with one station left out in turn, less than a fifth, which is still better than one
figure for all. Computed by this project; a test computes the five again.
"""

DEW_FOLLOWS_BOUNDS: Final = (0.0, 1.3)
"""K/K; what whole years amount to: 0.3 in dry Denver, 1.3 in Tampa and Miami; in none does it fall on warmer days."""


@dataclass(frozen=True, slots=True, eq=False)
class Weather:
    """Weather days of a year.

    Attributes
    ----------
    dry_bulb_c : ndarray, shape (24, n_day)
        Outdoor dry bulb; hour 0 runs from midnight to 1 o'clock, local standard time. [degC]
    humidity_ratio : ndarray, shape (24, n_day)
        Water vapour in outdoor air. [kg/kg]
    irradiance : ndarray, shape (24, n_day, 9)
        Global irradiance on each face of `FACES`, hourly mean. [W/m^2]
    month : ndarray, shape (n_day,)
        Month of each day, 0 to 11. [dimensionless]
    weight_d : ndarray, shape (n_day,)
        Days of the year that each stands for; they add up to 365. [day]
    pressure_pa : float
        Barometric pressure. [Pa]
    is_chained : bool
        True where each day follows the one before and the last wraps to the first; False where each repeats itself.
    origin : str
        Where the days come from.
    """

    dry_bulb_c: FloatArray
    humidity_ratio: FloatArray
    irradiance: FloatArray
    month: IntArray
    weight_d: FloatArray
    pressure_pa: float
    is_chained: bool
    origin: str

    def __post_init__(self) -> None:
        n_day = len(self.weight_d)
        shapes = self.dry_bulb_c.shape, self.humidity_ratio.shape, self.irradiance.shape, self.month.shape
        if shapes != ((24, n_day), (24, n_day), (24, n_day, len(FACES)), (n_day,)):
            raise ShapeError(f"weather arrays of shape {shapes} do not fit {n_day} days of 24 hours and 9 faces")

    def of_days(self, days: IntArray) -> "Weather":
        """Return the same weather with some of its days only; the weights stay what they are.

        Parameters
        ----------
        days : ndarray of int, shape (n,)
            Positions of days that repeat themselves.

        Raises
        ------
        ShapeError
            If the days are chained, so that none can be left out.
        """
        if self.is_chained:
            raise ShapeError("chained days each follow the one before: none can be left out")
        hours = self.dry_bulb_c[:, days], self.humidity_ratio[:, days], self.irradiance[:, days]
        return replace(
            self,
            dry_bulb_c=hours[0],
            humidity_ratio=hours[1],
            irradiance=hours[2],
            month=self.month[days],
            weight_d=self.weight_d[days],
        )

    def at_pressure(self, pressure_pa: float) -> "Weather":
        """Return the same weather at another barometric pressure, its dew points unchanged.

        Parameters
        ----------
        pressure_pa : float
            Barometric pressure. [Pa]
        """
        vapour_pa = moist_air.vapour_pressure_pa(self.humidity_ratio, np.asarray(self.pressure_pa))
        ratio = moist_air.humidity_ratio(vapour_pa, np.asarray(pressure_pa))
        return replace(self, humidity_ratio=ratio, pressure_pa=pressure_pa)

    def monthly_mean_c(self) -> FloatArray:
        """Return the mean dry bulb of each month.

        Returns
        -------
        mean_c : ndarray, shape (12,)
            Mean of the month's days by their weights; NaN in a month without days. [degC]
        """
        in_month = self.weight_d * (self.month == np.arange(len(MONTH_DAYS))[:, None])
        with np.errstate(invalid="ignore"):
            mean_c: FloatArray = in_month @ self.dry_bulb_c.mean(axis=0) / in_month.sum(axis=1)
        return mean_c


def monthly_weather(station: Station, irradiance: FloatArray) -> Weather:
    """Return weather days made from a station's monthly figures: seven day types for each month.

    Parameters
    ----------
    station : Station
        Monthly means, extremes, spread and dew point.
    irradiance : array_like, shape (24, 12, 9)
        Global irradiance on each face on each month's average day. [W/m^2]

    Returns
    -------
    weather : Weather
        84 days, each repeating itself; weights add up to 365.

    Raises
    ------
    ShapeError
        If the irradiance does not have the shape (24, 12, 9).

    Notes
    -----
    Day types spread about the month's mean by the standard deviation of its daily means, the mean of their hours being
    the mean of the day. Within the day the dry bulb follows ASHRAE's daily profile over the month's mean range. The dew
    point follows the mean of the day type by `dew_follows_frac` about the month's mean and holds all day, capped at
    saturation hour by hour: coldest nights are a little drier than the mean says. Assumption: sun does not depend on
    the day type.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 14, table 6.
    """
    sun = np.asarray(irradiance, dtype=np.float64)
    if sun.shape != (24, len(MONTH_DAYS), len(FACES)):
        raise ShapeError(f"irradiance has shape {sun.shape}; it must be (24, 12, 9)")
    n_type = len(DAY_TYPE_DEVIATE)
    sd = degree_days.known_sd_k(station.mean_c, station.sd_k)
    day_mean_c = (station.mean_c[:, None] + sd[:, None] * DAY_TYPE_DEVIATE).ravel()
    range_k = np.repeat(station.max_c - station.min_c, n_type)
    dry_bulb_c = day_mean_c + daily_profile_frac()[:, None] * range_k
    pressure = moist_air.pressure_pa(np.asarray(station.elevation_m))
    follows = dew_follows_frac(station.mean_c, station.dew_point_c)
    dew_point_c = (station.dew_point_c[:, None] + (follows * sd)[:, None] * DAY_TYPE_DEVIATE).ravel()
    return Weather(
        dry_bulb_c=dry_bulb_c,
        humidity_ratio=_possible_humidity_ratio(dew_point_c, dry_bulb_c, pressure),
        irradiance=np.repeat(sun, n_type, axis=1),
        month=np.repeat(np.arange(len(MONTH_DAYS)), n_type),
        weight_d=(np.array(MONTH_DAYS)[:, None] * DAY_TYPE_WEIGHT_FRAC).ravel(),
        pressure_pa=float(pressure),
        is_chained=False,
        origin=f"monthly figures, {station.period}",
    )


def dew_follows_frac(mean_c: FloatArray, dew_point_c: FloatArray) -> FloatArray:
    """Return how much the daily mean dew point rises per kelvin of the daily mean dry bulb within a month.

    Parameters
    ----------
    mean_c : array_like, shape (...)
        Monthly mean dry bulb. [degC]
    dew_point_c : array_like, shape (...)
        Monthly mean dew point. [degC]

    Returns
    -------
    follows_frac : ndarray, shape (...)
        About 1 in damp air, 0 in the driest. [dimensionless]

    Notes
    -----
    A straight line in the dew point depression, cut off at `DEW_FOLLOWS_BOUNDS`; see `DEW_FOLLOWS`.
    """
    most, change = DEW_FOLLOWS
    depression_k = np.asarray(mean_c, dtype=np.float64) - np.asarray(dew_point_c, dtype=np.float64)
    return np.clip(most + change * depression_k, *DEW_FOLLOWS_BOUNDS)


def hot_design_day(station: Station, irradiance: FloatArray) -> Weather:
    """Return the hot design day: 1 % dry bulb at its hottest hour, the hottest month's range, one day repeating itself.

    Parameters
    ----------
    station : Station
        Design dry bulb, coincident wet bulb and daily range.
    irradiance : array_like, shape (24, 9)
        Clear-sky irradiance on each face in the hottest month. [W/m^2]

    Returns
    -------
    day : Weather
        One day in the hottest month, weight 365. [day]

    Notes
    -----
    The humidity ratio of the 1 % dry bulb and its mean coincident wet bulb holds all day, capped at saturation.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 14, table 6 and the design-day procedure before it.
    """
    sun = np.asarray(irradiance, dtype=np.float64)
    pressure = moist_air.pressure_pa(np.asarray(station.elevation_m))
    dry_bulb_c = station.cool_design_c - station.daily_range_k * RANGE_BELOW_MAX_FRAC[:, None]
    ratio = moist_air.humidity_ratio_from_wet_bulb(
        np.asarray(station.cool_design_c), np.asarray(station.cool_wet_bulb_c), pressure
    )
    most = moist_air.saturation_humidity_ratio(dry_bulb_c, pressure)
    return Weather(
        dry_bulb_c=dry_bulb_c,
        humidity_ratio=np.minimum(ratio, most),
        irradiance=sun[:, None, :],
        month=np.array([int(np.argmax(station.mean_c))]),
        weight_d=np.array([DAYS_PER_YEAR]),
        pressure_pa=float(pressure),
        is_chained=False,
        origin=f"1 % design day, {station.period}",
    )


def daily_profile_frac() -> FloatArray:
    """Return each hour's distance from the daily mean as a share of the daily range.

    Returns
    -------
    profile_frac : ndarray, shape (24,)
        Sums to 0; spans 1. [dimensionless]
    """
    profile: FloatArray = RANGE_BELOW_MAX_FRAC.mean() - RANGE_BELOW_MAX_FRAC
    return profile


def _possible_humidity_ratio(dew_point_c: FloatArray, dry_bulb_c: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    ratio = moist_air.saturation_humidity_ratio(dew_point_c, pressure_pa)
    return np.minimum(ratio, moist_air.saturation_humidity_ratio(dry_bulb_c, pressure_pa))
