"""The degree-day hand check beside the hourly method, and why the two differ."""

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import HOURS_PER_DAY, WATT_HOURS_PER_KWH
from econ.loads.heat_balance import need
from econ.loads.network import air_conductance_w_per_k
from econ.loads.rooms import RoomRows

MONTHS: Final = 12

HAND_PARTS: Final = (
    "hours without heat, and the set-back",
    "sun on walls and roof, heat to the sky",
    "ground warmer or colder than the air",
    "gains at the wrong time, and days that swing",
)
"""Reasons in the order in which they are taken away."""

_DAMPEST_FRAC: Final = 1.0
"""Limit of relative humidity at which nothing is dried: moisture has no part in heating."""


@dataclass(frozen=True, slots=True, eq=False)
class HandCheck:
    """Annual heating by hand, and what the hourly method adds to it.

    Attributes
    ----------
    degree_day_kwh : ndarray, shape (R,)
        Loss times degree-days at the balance point; NaN where that does not exist. [kWh]
    part_kwh : ndarray, shape (R, 4)
        By `HAND_PARTS`; adds up to the hourly method less the degree-days. [kWh]
    """

    degree_day_kwh: FloatArray
    part_kwh: FloatArray


def degree_days_kd(weather: Weather, base_c: FloatArray, warming_k: FloatArray) -> FloatArray:
    """Return heating degree-days of weather days at a base for each room.

    Parameters
    ----------
    weather : Weather
        Days.
    base_c : ndarray, shape (R,)
        Base temperature. [degC]
    warming_k : ndarray, shape (R,)
        Added to every dry bulb. [K]

    Returns
    -------
    degree_days_kd : ndarray, shape (R,)
        From daily means. [K*day]
    """
    below_k = np.maximum(base_c[:, None] - warming_k[:, None] - weather.dry_bulb_c.mean(axis=0), 0.0)
    found: FloatArray = (below_k * weather.weight_d).sum(axis=1)
    return found


def hand_check(
    rooms: RoomRows, weather: Weather, balance_point_c: FloatArray, hourly_heating_kwh: FloatArray
) -> HandCheck:
    """Return annual heating by degree-days and why the hourly method's differs.

    Parameters
    ----------
    rooms : RoomRows
        R rooms.
    weather : Weather
        Days.
    balance_point_c : ndarray, shape (R,)
        Outdoor temperature at which mean gains meet losses; NaN where nothing is lost. [degC]
    hourly_heating_kwh : ndarray, shape (R,)
        What the hourly method gives. [kWh]

    Returns
    -------
    check : HandCheck
        Each reason is what the hourly method loses when that thing is taken away, one after another.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 19, degree-day method with variable base (from memory).
    """
    loss = (
        rooms.ua_opaque_w_per_k
        + rooms.ua_window_w_per_k
        + rooms.ua_ground_w_per_k
        + air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.asarray(weather.pressure_pa))
    )
    base_c = np.where(np.isnan(balance_point_c), -np.inf, balance_point_c)
    days_kd = degree_days_kd(weather, base_c, rooms.warming_k)
    by_hand = loss * days_kd * HOURS_PER_DAY / WATT_HOURS_PER_KWH
    steady = _heated_all_day(rooms)
    bare = replace(
        steady, opaque_aperture_m2=np.zeros_like(rooms.opaque_aperture_m2), sky_loss_w=np.zeros_like(rooms.sky_loss_w)
    )
    airy = replace(bare, ground_c=_monthly_air_c(weather) + rooms.warming_k[:, None])
    steps = [hourly_heating_kwh, *(_heating_kwh(each, weather) for each in (steady, bare, airy)), by_hand]
    part = np.stack([above - below for above, below in pairwise(steps)], axis=1)
    return HandCheck(np.where(np.isnan(balance_point_c), np.nan, by_hand), part)


def _heated_all_day(rooms: RoomRows) -> RoomRows:
    """Return the same rooms, heated all day to their highest set-point."""
    is_on = rooms.is_heated | ~rooms.is_heated.any(axis=1, keepdims=True)
    highest_c = np.where(is_on, rooms.heat_setpoint_c, -np.inf).max(axis=1)
    shape = rooms.is_heated.shape
    return replace(
        rooms,
        heat_setpoint_c=np.broadcast_to(highest_c[:, None], shape),
        is_heated=np.ones(shape, dtype=np.bool_),
        is_cooled=np.zeros(shape, dtype=np.bool_),
    )


def _monthly_air_c(weather: Weather) -> FloatArray:
    """Return the mean dry bulb of each month, shape (12,); 0 in a month without days."""
    weight, daily_c = weather.weight_d, weather.dry_bulb_c.mean(axis=0)
    days = np.bincount(weather.month, weight, MONTHS)
    mean_c: FloatArray = np.bincount(weather.month, weight * daily_c, MONTHS) / np.where(days > 0.0, days, 1.0)
    return mean_c


def _heating_kwh(rooms: RoomRows, weather: Weather) -> FloatArray:
    limit = np.full(len(rooms.floor_area_m2), _DAMPEST_FRAC)
    found = need(rooms, weather, limit)
    heating: FloatArray = (found.heat_w.sum(axis=0) * weather.weight_d).sum(axis=1) / WATT_HOURS_PER_KWH
    return heating
