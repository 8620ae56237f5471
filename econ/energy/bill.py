"""What bills say of a year: how warm it was while each ran, and what of them follows the weather."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.energy.change_point import PARAMETERS, Bills, ChangePointFit, ChangePointKind
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS

_CORRECTIONS: Final = 4
"""Times the months' nodes are moved so that the days between them have the months' means again."""

SURE_T: Final = 2.0
"""Standard errors of a 95 % interval, nearly: 2.2 with 12 bills and 3 parameters."""


@dataclass(frozen=True, slots=True, eq=False)
class WeatherPart:
    """What follows the weather in some months.

    Attributes
    ----------
    heating_kwh, cooling_kwh : float
        Energy below and above the change points. [kWh]
    heating_doubt_frac, cooling_doubt_frac : float
        Half of the 95 % interval over the energy, change points held; infinite where there is none. [dimensionless]
    """

    heating_kwh: float
    cooling_kwh: float
    heating_doubt_frac: float
    cooling_doubt_frac: float


def daily_mean_c(month_mean_c: FloatArray) -> FloatArray:
    """Return the temperature of each day of a year, on straight lines that keep the months' means.

    Parameters
    ----------
    month_mean_c : ndarray, shape (12,)
        Mean of each month. [degC]

    Returns
    -------
    day_c : ndarray, shape (365,)
        First day of January first. [degC]
    """
    length = np.array(MONTH_DAYS)
    first = np.concatenate([[0.0], np.cumsum(length)[:-1]])
    middle, day = first + length / 2.0, np.arange(int(DAYS_PER_YEAR)) + 0.5
    node_c = np.asarray(month_mean_c, dtype=np.float64)
    day_c: FloatArray = np.interp(day, middle, node_c, period=DAYS_PER_YEAR)
    for _ in range(_CORRECTIONS):
        node_c = node_c + month_mean_c - np.add.reduceat(day_c, first.astype(np.int64)) / length
        day_c = np.interp(day, middle, node_c, period=DAYS_PER_YEAR)
    return day_c


def period_mean_c(first_day: IntArray, days_d: FloatArray, month_mean_c: FloatArray) -> FloatArray:
    """Return the mean outdoor temperature of stretches of a typical year.

    Parameters
    ----------
    first_day : ndarray of int, shape (n,)
        Day of the year on which each begins, 0 for the first of January. [dimensionless]
    days_d : ndarray, shape (n,)
        Whole days of each, at most a year. [day]
    month_mean_c : ndarray, shape (12,)
        Mean of each month. [degC]

    Returns
    -------
    mean_c : ndarray, shape (n,)
        Mean over the days; past the year's end it goes on with its beginning. [degC]
    """
    passed = np.concatenate([[0.0], np.cumsum(np.tile(daily_mean_c(month_mean_c), 2))])
    days = days_d.astype(np.int64)
    mean: FloatArray = (passed[first_day + days] - passed[first_day]) / days
    return mean


def modelled_kwh(fit: ChangePointFit, days_d: FloatArray, mean_c: FloatArray) -> FloatArray:
    """Return what a fitted model gives for some periods.

    Parameters
    ----------
    fit : ChangePointFit
        The model.
    days_d : ndarray, shape (n,)
        Days of each period. [day]
    mean_c : ndarray, shape (n,)
        Mean outdoor temperature of each. [degC]

    Returns
    -------
    energy_kwh : ndarray, shape (n,)
        Base load, heating and cooling. [kWh]
    """
    energy: FloatArray = _columns(fit, mean_c) @ _coefficients(fit) * days_d
    return energy


def weather_part(bills: Bills, fit: ChangePointFit, days_d: FloatArray, mean_c: FloatArray) -> WeatherPart:
    """Return what of a model follows the weather of some periods, and how sure that is.

    Parameters
    ----------
    bills : Bills
        What the model was fitted to.
    fit : ChangePointFit
        The model.
    days_d : ndarray, shape (n,)
        Days of each period, such as the twelve months of a typical year. [day]
    mean_c : ndarray, shape (n,)
        Mean outdoor temperature of each. [degC]

    Returns
    -------
    part : WeatherPart
        Sums over the periods; doubt by the covariance of the linear coefficients.
    """
    columns = _columns(fit, bills.mean_c)
    weight = bills.days_d / bills.days_d.mean()
    missed = bills.energy_kwh / bills.days_d - columns @ _coefficients(fit)
    freedom = len(bills.days_d) - PARAMETERS[fit.kind]
    variance = np.sum(weight * missed**2) / freedom
    covariance = variance * np.linalg.pinv((columns * weight[:, None]).T @ columns, hermitian=True)
    degrees_kd = _columns(fit, mean_c)[:, 1:].T @ days_d
    energy = dict.fromkeys(ChangePointKind, (0.0, np.inf))
    for at, side in enumerate(_sides(fit)):
        slope = float(_coefficients(fit)[at + 1])
        doubt = SURE_T * float(np.sqrt(covariance[at + 1, at + 1])) / slope if slope > 0.0 else np.inf
        energy[side] = slope * float(degrees_kd[at]), doubt
    (heating, heating_doubt), (cooling, cooling_doubt) = (
        energy[side] for side in (ChangePointKind.HEATING, ChangePointKind.COOLING)
    )
    return WeatherPart(heating, cooling, heating_doubt, cooling_doubt)


def slope_kwh(fit: ChangePointFit, month_kwh: FloatArray, month_mean_c: FloatArray) -> WeatherPart:
    """Return what of twelve months' energy follows the weather as a fitted model does.

    Parameters
    ----------
    fit : ChangePointFit
        Gives kind and change points.
    month_kwh : ndarray, shape (12,)
        Energy by month, as another model has it. [kWh]
    month_mean_c : ndarray, shape (12,)
        Mean outdoor temperature of each. [degC]

    Returns
    -------
    part : WeatherPart
        Least squares on the same columns, so that energy in proportion has parts in proportion, whatever its shape.
    """
    days, columns = np.array(MONTH_DAYS), _columns(fit, month_mean_c)
    normal = (columns * days[:, None]).T @ columns
    coefficients = np.linalg.pinv(normal, hermitian=True) @ columns.T @ month_kwh
    energy = dict(zip(_sides(fit), (coefficients * (columns.T @ days))[1:].tolist(), strict=True))
    heating, cooling = (energy.get(side, 0.0) for side in (ChangePointKind.HEATING, ChangePointKind.COOLING))
    return WeatherPart(heating, cooling, 0.0, 0.0)


def _sides(fit: ChangePointFit) -> tuple[ChangePointKind, ...]:
    """Return the slopes a model has, in the order of its columns."""
    both = (ChangePointKind.HEATING, ChangePointKind.COOLING)
    return both if fit.kind == ChangePointKind.BOTH else (fit.kind,)


def _columns(fit: ChangePointFit, mean_c: FloatArray) -> FloatArray:
    """Return one, and degrees below or above the change points, shape (n, 1 + slopes)."""
    distance = {
        ChangePointKind.HEATING: np.maximum(fit.heating_point_c - mean_c, 0.0),
        ChangePointKind.COOLING: np.maximum(mean_c - fit.cooling_point_c, 0.0),
    }
    return np.stack([np.ones_like(mean_c), *(distance[side] for side in _sides(fit))], axis=-1)


def _coefficients(fit: ChangePointFit) -> FloatArray:
    slope = {ChangePointKind.HEATING: fit.heating_kwh_per_kd, ChangePointKind.COOLING: fit.cooling_kwh_per_kd}
    return np.array([fit.baseload_kwh_per_d, *(slope[side] for side in _sides(fit))])
