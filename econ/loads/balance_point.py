"""Balance point and the degree-day hand check of heating."""

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError


def balance_point_c(inside_c: FloatArray, gain_w: FloatArray, conductance_w_per_k: FloatArray) -> FloatArray:
    """Return the outdoor temperature at which gains meet losses.

    Parameters
    ----------
    inside_c : array_like, shape (...)
        Indoor temperature. [degC]
    gain_w : array_like, shape (...)
        Mean heat of people, things and sun. [W]
    conductance_w_per_k : array_like, shape (...)
        Total heat loss per kelvin, air exchange included; above 0. [W/K]

    Returns
    -------
    balance_point_c : ndarray, shape (...)
        Below it the room needs heat. [degC]

    Raises
    ------
    OutOfRangeError
        If a conductance is not above 0.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 19, eq. 32.

    Examples
    --------
    >>> round(float(balance_point_c(np.array(20.0), np.array(500.0), np.array(100.0))), 1)
    15.0
    """
    conductance = np.asarray(conductance_w_per_k, dtype=np.float64)
    if not np.all(conductance > 0.0):
        worst = float(np.min(conductance))
        raise OutOfRangeError("conductance of a room", worst, "W/K", "above 0", "Give the room an outer side.")
    balance: FloatArray = inside_c - np.asarray(gain_w, dtype=np.float64) / conductance
    return balance


def degree_day_heating_kwh(conductance_w_per_k: FloatArray, heating_kd: FloatArray) -> FloatArray:
    """Return the heating that degree-days at the balance point let one expect: the hand check of the hourly method.

    Parameters
    ----------
    conductance_w_per_k : array_like, shape (...)
        Total heat loss per kelvin. [W/K]
    heating_kd : array_like, shape (...)
        Heating degree-days at the balance point. [K*day]

    Returns
    -------
    heating_kwh : ndarray, shape (...)
        Heat. [kWh]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 19, variable-base degree-day method.
    """
    heat: FloatArray = np.asarray(conductance_w_per_k, dtype=np.float64) * heating_kd * 24.0 / 1000.0
    return heat
