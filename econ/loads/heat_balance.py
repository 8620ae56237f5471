"""Hourly heat balance of rooms: what keeps them at their set-points, with a plant that has no limit."""

from dataclasses import dataclass, replace

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import FloatArray
from econ.loads import moisture
from econ.loads.day_balance import HOURS, Balance, balance, first_mass_c
from econ.loads.rooms import RoomRows


@dataclass(frozen=True, slots=True, eq=False)
class Need:
    """What keeps rooms at their set-points, hour by hour.

    Attributes
    ----------
    heat_w, cool_w, latent_w : ndarray, shape (24, R, n_day)
        Sensible heat to add, sensible heat to remove and latent heat to remove; none is negative. [W]
    air_c : ndarray, shape (24, R, n_day)
        Indoor air temperature with the need met. [degC]
    """

    heat_w: FloatArray
    cool_w: FloatArray
    latent_w: FloatArray
    air_c: FloatArray


def need(rooms: RoomRows, weather: Weather, humidity_limit_frac: FloatArray) -> Need:
    """Return the heating, cooling and drying that rooms need on each weather day.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.
    humidity_limit_frac : array_like, shape (R,)
        Highest relative humidity wanted while cooling. [dimensionless]

    Returns
    -------
    need : Need
        Arrays of shape (24, R, n_day).

    Raises
    ------
    OutOfRangeError
        If a room is heated above its cooling set-point in the same hour, or `hour_lines` refuses it.

    Notes
    -----
    ISO 13790:2008 simple hourly method, five conductances and one capacity, plant at the air node with no limit. A
    repeating day starts with the mass temperature it ends with; chained days hand it on, and the last to the first.

    References
    ----------
    .. [1] ISO 13790:2008, 7.2.2, 12.2 and annex C.
    """
    return need_of(balance(rooms, weather), rooms, weather, humidity_limit_frac)


def need_of(balanced: Balance, rooms: RoomRows, weather: Weather, humidity_limit_frac: FloatArray) -> Need:
    """Return the need of rooms that are balanced already.

    Parameters
    ----------
    balanced : Balance
        What `balance` makes of the same rooms and weather.
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.
    humidity_limit_frac : array_like, shape (R,)
        Highest relative humidity wanted while cooling. [dimensionless]

    Returns
    -------
    need : Need
        As `need`.
    """
    heat_w, cool_w, air_c = _each_day(balanced)
    return Need(heat_w, cool_w, moisture.latent_w(rooms, weather, air_c, humidity_limit_frac), air_c)


@dataclass(frozen=True, slots=True, eq=False)
class Held:
    """What a plant of limited cooling makes of the rooms.

    Attributes
    ----------
    cool_w : ndarray, shape (24, R, n_day)
        Sensible heat removed, at most what the plant can. [W]
    above_k : ndarray, shape (24, R, n_day)
        How far the air is above the cooling set-point in hours that are cooled, else 0. [K]
    """

    cool_w: FloatArray
    above_k: FloatArray


def held(rooms: RoomRows, weather: Weather, most_cool_w: FloatArray) -> Held:
    """Return what is cooled, and what stays too warm, when the plant can remove only so much.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.
    most_cool_w : ndarray, shape (24, R, n_day)
        Most sensible heat the plant removes in each hour; infinite for no limit. [W]

    Returns
    -------
    held : Held
        Heating is not limited: what the plant lacks there is made up in the same hour.

    Notes
    -----
    As `need`, the plant's heat cut off at its limit; what was not removed stays in air and mass and is there in the
    next hour. Days that repeat themselves make an extreme day's shortage last, so the excess is an upper estimate.
    """
    return held_of(balance(rooms, weather), most_cool_w)


def held_of(balanced: Balance, most_cool_w: FloatArray) -> Held:
    """Return the same for rooms that are balanced already without a limit.

    Parameters
    ----------
    balanced : Balance
        R rooms; its mass temperatures are where the search begins.
    most_cool_w : ndarray, shape (24, R, n_day)
        Most sensible heat the plant removes in each hour; infinite for no limit. [W]

    Returns
    -------
    held : Held
        As `held`.
    """
    lowest_k = most_cool_w * -balanced.lines.air_per_w
    start = replace(balanced, mass_c=first_mass_c(balanced, lowest_k))
    _, cool_w, air_c = _each_day(start, lowest_k)
    cool_c = np.broadcast_to(balanced.limits.cool_c, air_c.shape)
    above_k = np.where(np.isfinite(cool_c), np.maximum(air_c - cool_c, 0.0), 0.0)
    return Held(cool_w, above_k)


def _each_day(balanced: Balance, lowest_k: FloatArray | None = None) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return heating, cooling and air, shape (24, R, n_day), from the mass temperatures at midnight."""
    lines, limits, mass_c = balanced.lines, balanced.limits, balanced.mass_c.copy()
    shape = lines.air_base_c.shape
    heat_w, cool_w, air_c = np.zeros(shape), np.zeros(shape), np.empty(shape)
    plant_w = np.empty(shape[1:])
    for hour in range(HOURS):
        np.multiply(mass_c, lines.air_per_mass, out=air_c[hour])
        air_c[hour] += lines.air_base_c[hour]
        mass_c *= lines.mass_per_mass
        mass_c += lines.mass_base_c[hour]
        if not (limits.does_heat[hour] or limits.does_cool[hour]):
            continue
        limits.change_c(hour, air_c[hour], plant_w)
        if lowest_k is not None:
            np.maximum(plant_w, lowest_k[hour], out=plant_w)
        air_c[hour] += plant_w
        plant_w /= lines.air_per_w
        np.maximum(plant_w, 0.0, out=heat_w[hour])
        np.subtract(heat_w[hour], plant_w, out=cool_w[hour])
        plant_w *= lines.mass_per_w
        mass_c += plant_w
    return heat_w, cool_w, air_c
