"""Months and years out of hours of weather days."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import VAPOUR_HEAT_J_PER_KG, WATT_HOURS_PER_KWH

MONTHS: Final = 12
JOULE_PER_KWH: Final = 3.6e6
"""J in a kWh."""


def monthly_kwh(power_w: FloatArray, month: IntArray, weight_d: FloatArray) -> FloatArray:
    """Return energy by month.

    Parameters
    ----------
    power_w : ndarray, shape (24, B, n_day)
        Power in each hour of the weather days. [W]
    month : ndarray, shape (n_day,)
        Month of each weather day, 0 to 11. [dimensionless]
    weight_d : ndarray, shape (n_day,)
        How many days each stands for. [day]

    Returns
    -------
    energy_kwh : ndarray, shape (B, 12)
        Sum over the month. [kWh]
    """
    return kwh_by_month(power_w.sum(axis=0), month, weight_d)


def kwh_by_month(daily_wh: FloatArray, month: IntArray, weight_d: FloatArray) -> FloatArray:
    """Return energy by month from that of each day.

    Parameters
    ----------
    daily_wh : ndarray, shape (B, n_day)
        Energy of each weather day. [W*hour]
    month : ndarray, shape (n_day,)
        Month of each weather day, 0 to 11. [dimensionless]
    weight_d : ndarray, shape (n_day,)
        How many days each stands for. [day]

    Returns
    -------
    energy_kwh : ndarray, shape (B, 12)
        Sum over the month. [kWh]
    """
    return by_month(daily_wh / WATT_HOURS_PER_KWH, month, weight_d)


def by_month(daily: FloatArray, month: IntArray, weight_d: FloatArray) -> FloatArray:
    """Return each month's sum of what each day holds.

    Parameters
    ----------
    daily : ndarray, shape (B, n_day)
        Amount of each weather day. [any]
    month : ndarray, shape (n_day,)
        Month of each weather day, 0 to 11. [dimensionless]
    weight_d : ndarray, shape (n_day,)
        How many days each stands for. [day]

    Returns
    -------
    sum : ndarray, shape (B, 12)
        Sum over the month. [any]
    """
    order = np.argsort(month, kind="stable")
    there, first = np.unique(month[order], return_index=True)
    total = np.zeros((len(daily), MONTHS))
    if daily.any():
        weighted = daily * weight_d
        is_in_order = bool((month[1:] >= month[:-1]).all())
        total[:, there] = np.add.reduceat(weighted if is_in_order else weighted[:, order], first, axis=1)
    return total


def per_year(daily: FloatArray, weight_d: FloatArray) -> FloatArray:
    """Return a year's sum of what each day holds.

    Parameters
    ----------
    daily : ndarray, shape (B, n_day)
        Amount of each weather day. [any]
    weight_d : ndarray, shape (n_day,)
        How many days each stands for. [day]

    Returns
    -------
    total : ndarray, shape (B,)
        Sum over the year, in the same unit. [any]

    Notes
    -----
    Row by row, so that a row is rounded the same alone and among others.
    """
    return np.add.reduceat(daily * weight_d, [0], axis=-1)[:, 0]


def moisture_kg(latent_kwh: FloatArray) -> FloatArray:
    """Return the water that an amount of latent heat stands for.

    Parameters
    ----------
    latent_kwh : ndarray, shape (...)
        Latent heat. [kWh]

    Returns
    -------
    water_kg : ndarray, shape (...)
        Over the heat of vaporisation at 0 degC. [kg]
    """
    water: FloatArray = latent_kwh * JOULE_PER_KWH / VAPOUR_HEAT_J_PER_KG
    return water
