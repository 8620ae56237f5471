"""Hourly heat balance of rooms: what keeps them at their set-points, with a plant that has no limit."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import OutOfRangeError
from econ.loads import moisture
from econ.loads.network import HourLines, hour_lines
from econ.loads.rooms import RoomRows

NEWTON_PASSES: Final = 6
"""Passes over days: their maps are piecewise straight and rising, so Newton ends in few; a test holds it."""

HOURS: Final = 24


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


@dataclass(frozen=True, slots=True, eq=False)
class _Limits:
    """Set-points, shape (24, R, 1) and (24, R, 1 or n_day); minus and plus infinity where nothing runs.

    With a plant that can remove no more than ``most_cool_w``, shape (24, R, n_day), where that is given. [W]
    """

    heat_c: FloatArray
    cool_c: FloatArray
    most_cool_w: FloatArray | None = None


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
    limits = _limits(rooms, weather)
    lines = hour_lines(rooms, weather)
    plant_w, air_c = _each_day(lines, limits, _first_mass_c(lines, limits, is_chained=weather.is_chained))
    heat_w = np.maximum(plant_w, 0.0)
    np.subtract(heat_w, plant_w, out=plant_w)
    return Need(heat_w, plant_w, moisture.latent_w(rooms, weather, air_c, humidity_limit_frac), air_c)


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
    limits = _limits(rooms, weather, most_cool_w)
    lines = hour_lines(rooms, weather)
    plant_w, air_c = _each_day(lines, limits, _first_mass_c(lines, limits, is_chained=weather.is_chained))
    cool_c = np.broadcast_to(limits.cool_c, air_c.shape)
    above_k = np.where(np.isfinite(cool_c), np.maximum(air_c - cool_c, 0.0), 0.0)
    return Held(np.maximum(-plant_w, 0.0), above_k)


def mass_residual_k(rooms: RoomRows, weather: Weather) -> FloatArray:
    """Return how far each day's last mass temperature is from the first of the day that follows: what Newton left.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them; each follows itself, or the one before where they are chained.

    Returns
    -------
    residual_k : ndarray, shape (R, n_day)
        End minus start. [K]
    """
    lines, limits = hour_lines(rooms, weather), _limits(rooms, weather)
    start_c = _first_mass_c(lines, limits, is_chained=weather.is_chained)
    end_c, _ = _day_end(lines, limits, start_c)
    return end_c - (np.roll(start_c, -1, axis=1) if weather.is_chained else start_c)


def _limits(rooms: RoomRows, weather: Weather, most_cool_w: FloatArray | None = None) -> _Limits:
    heat_c = np.where(rooms.is_heated, rooms.heat_setpoint_c, -np.inf)
    cool_c = np.where(rooms.is_cooled, rooms.cool_setpoint_c, np.inf)
    if np.any(heat_c > cool_c):
        worst = float(np.max((heat_c - cool_c)[heat_c > cool_c]))
        remedy = "Set the heating set-point below the cooling set-point."
        raise OutOfRangeError("heating set-point less cooling set-point", worst, "K", "at most 0", remedy)
    is_day = moisture.is_cooling_day(rooms, weather)
    cool_by_hour = cool_c.T[:, :, None]
    if not np.all(is_day):
        cool_by_hour = np.where(is_day, cool_by_hour, np.inf)
    return _Limits(np.ascontiguousarray(heat_c.T[:, :, None]), cool_by_hour, most_cool_w)


def _first_mass_c(lines: HourLines, limits: _Limits, *, is_chained: bool) -> FloatArray:
    """Return the mass temperature at each day's first midnight, shape (R, n_day).

    All days at once: each day's map is a straight line about the last guess, and the lines are solved together, each
    day by itself where it repeats, from the first day to the last and round where one follows the other.
    """
    mass_c = np.full(lines.mass_base_c.shape[1:], 20.0)
    for _ in range(NEWTON_PASSES):
        end_c, slope = _day_end(lines, limits, mass_c)
        end_c -= slope * mass_c
        mass_c = _round_the_year(end_c, slope) if is_chained else end_c / (1.0 - slope)
    return mass_c


def _round_the_year(base: FloatArray, slope: FloatArray) -> FloatArray:
    """Return m where m of the next day is base + slope m, and the first day follows the last; shape (R, n_day).

    A loop over the days of a chain, as each needs the one before; all rows at once.
    """
    bases, slopes = np.ascontiguousarray(base.T), np.ascontiguousarray(slope.T)
    last = np.zeros_like(bases[0])
    for day_base, day_slope in zip(bases, slopes, strict=True):
        last = last * day_slope + day_base
    mass = np.empty_like(bases)
    mass[0] = last / (1.0 - slopes.prod(axis=0))
    for day in range(len(bases) - 1):
        np.multiply(slopes[day], mass[day], out=mass[day + 1])
        mass[day + 1] += bases[day]
    return np.ascontiguousarray(mass.T)


def _day_end(lines: HourLines, limits: _Limits, mass_c: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the mass temperature after the 24 hours and its slope in the temperature before them."""
    mass_c, slope = mass_c.copy(), np.ones_like(mass_c)
    free_c, target_c = np.empty_like(mass_c), np.empty_like(mass_c)
    per_k = lines.mass_per_w / lines.air_per_w
    slope_when_free = lines.mass_per_mass
    slope_when_held = lines.mass_per_mass - per_k * lines.air_per_mass
    for hour in range(HOURS):
        np.multiply(mass_c, lines.air_per_mass, out=free_c)
        free_c += lines.air_base_c[hour]
        np.clip(free_c, limits.heat_c[hour], limits.cool_c[hour], out=target_c)
        target_c -= free_c
        is_free = target_c == 0.0
        if limits.most_cool_w is not None:
            is_free |= _cut_off(target_c, -limits.most_cool_w[hour] * lines.air_per_w)
        slope *= np.where(is_free, slope_when_free, slope_when_held)
        target_c *= per_k
        mass_c *= lines.mass_per_mass
        mass_c += lines.mass_base_c[hour]
        mass_c += target_c
    return mass_c, slope


def _cut_off(change: FloatArray, lowest: FloatArray) -> BoolArray:
    """Raise what is below the lowest allowed to it, in place, and return where that was so."""
    is_cut: BoolArray = change < lowest
    np.maximum(change, lowest, out=change)
    return is_cut


def _each_day(lines: HourLines, limits: _Limits, mass_c: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return plant heat and air, shape (24, R, n_day), from a mass temperature at midnight, which is overwritten."""
    plant_w, air_c = np.empty_like(lines.air_base_c), np.empty_like(lines.air_base_c)
    for hour in range(HOURS):
        free_c = mass_c * lines.air_per_mass
        free_c += lines.air_base_c[hour]
        np.clip(free_c, limits.heat_c[hour], limits.cool_c[hour], out=air_c[hour])
        np.subtract(air_c[hour], free_c, out=plant_w[hour])
        plant_w[hour] /= lines.air_per_w
        if limits.most_cool_w is not None and _cut_off(plant_w[hour], -limits.most_cool_w[hour]).any():
            np.multiply(plant_w[hour], lines.air_per_w, out=air_c[hour])
            air_c[hour] += free_c
        mass_c *= lines.mass_per_mass
        mass_c += lines.mass_base_c[hour]
        mass_c += lines.mass_per_w * plant_w[hour]
    return plant_w, air_c
