"""Hourly heat balance of rooms: what keeps them at their set-points, with a plant that has no limit."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError
from econ.loads import moisture
from econ.loads.network import HourLines, hour_lines
from econ.loads.rooms import RoomRows

NEWTON_PASSES: Final = 5
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
class Limits:
    """What the plant holds the air to; minus and plus infinity where nothing runs.

    Attributes
    ----------
    heat_c : ndarray, shape (24, R, 1)
        Heating set-points. [degC]
    cool_c : ndarray, shape (24, R, 1) or (24, R, n_day)
        Cooling set-points. [degC]
    does_heat, does_cool : ndarray of bool, shape (24,)
        Hours in which any room is heated or cooled at all: the others need no look.
    """

    heat_c: FloatArray
    cool_c: FloatArray
    does_heat: BoolArray
    does_cool: BoolArray

    def change_c(self, hour: int, free_c: FloatArray, change_c: FloatArray) -> FloatArray:
        """Return how far the plant moves the air from where it would be, written into the last array given."""
        target_c = free_c
        if self.does_heat[hour]:
            target_c = np.maximum(target_c, self.heat_c[hour], out=change_c)
        if self.does_cool[hour]:
            target_c = np.minimum(target_c, self.cool_c[hour], out=change_c)
        return np.subtract(target_c, free_c, out=change_c)


@dataclass(frozen=True, slots=True, eq=False)
class Balance:
    """Rooms and days balanced without a limit: what a need, or the same with a limit, is worked out from.

    Attributes
    ----------
    lines : HourLines
        The hours' straight lines of R rooms.
    limits : Limits
        Set-points.
    mass_c : ndarray, shape (R, n_day)
        Mass temperature at each day's first midnight. [degC]
    is_chained : bool
        Whether each day follows the one before, or repeats itself.
    """

    lines: HourLines
    limits: Limits
    mass_c: FloatArray
    is_chained: bool

    def at(self, rooms: IntArray, days: IntArray) -> "Balance":
        """Return the balance of some rooms, each on its own days.

        Parameters
        ----------
        rooms : ndarray of int, shape (n,)
            Positions of rooms; one may come more than once. [dimensionless]
        days : ndarray of int, shape (n, m) or (1, m)
            Positions of each room's days; all of them, in order, where they are chained. [dimensionless]
        """
        lines, limits, each = self.lines, self.limits, rooms[:, None]
        slopes = (lines.air_per_mass, lines.air_per_w, lines.mass_per_mass, lines.mass_per_w)
        is_by_day = limits.cool_c.shape[-1] > 1
        return Balance(
            HourLines(
                *(slope[rooms] for slope in slopes), lines.air_base_c[:, each, days], lines.mass_base_c[:, each, days]
            ),
            replace(
                limits,
                heat_c=limits.heat_c[:, rooms],
                cool_c=limits.cool_c[:, each, days] if is_by_day else limits.cool_c[:, rooms],
            ),
            self.mass_c[each, days],
            self.is_chained,
        )


def balance(rooms: RoomRows, weather: Weather) -> Balance:
    """Return rooms and days balanced without a limit on the plant.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.

    Returns
    -------
    balance : Balance
        With each day's mass temperature at its first midnight.

    Raises
    ------
    OutOfRangeError
        If a room is heated above its cooling set-point in the same hour, or `hour_lines` refuses it.
    """
    limits = _limits(rooms, weather)
    lines = hour_lines(rooms, weather)
    guess_c = np.clip(_free_mass_c(lines, is_chained=weather.is_chained), *_innermost_c(limits))
    start = Balance(lines, limits, guess_c, weather.is_chained)
    return replace(start, mass_c=_first_mass_c(start))


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
    lowest_c = most_cool_w * -balanced.lines.air_per_w
    start = replace(balanced, mass_c=_first_mass_c(balanced, lowest_c))
    _, cool_w, air_c = _each_day(start, lowest_c)
    cool_c = np.broadcast_to(balanced.limits.cool_c, air_c.shape)
    above_k = np.where(np.isfinite(cool_c), np.maximum(air_c - cool_c, 0.0), 0.0)
    return Held(cool_w, above_k)


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
    found = balance(rooms, weather)
    end_c, _ = _day_end(found, found.mass_c)
    return end_c - (np.roll(found.mass_c, -1, axis=1) if weather.is_chained else found.mass_c)


def _limits(rooms: RoomRows, weather: Weather) -> Limits:
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
    heat_by_hour = np.ascontiguousarray(heat_c.T[:, :, None])
    return Limits(heat_by_hour, cool_by_hour, rooms.is_heated.any(axis=0), rooms.is_cooled.any(axis=0))


def _innermost_c(limits: Limits) -> tuple[FloatArray, FloatArray]:
    """Return the highest heating and the lowest cooling set-point of a day, shape (R, 1) or (R, n_day)."""
    return limits.heat_c.max(axis=0), limits.cool_c.min(axis=0)


def _free_mass_c(lines: HourLines, *, is_chained: bool) -> FloatArray:
    """Return the mass temperature at each day's first midnight with no plant at all, shape (R, n_day)."""
    end_c = np.zeros(lines.mass_base_c.shape[1:])
    for base_c in lines.mass_base_c:
        end_c *= lines.mass_per_mass
        end_c += base_c
    slope = np.broadcast_to(_powers(lines.mass_per_mass)[:, -1:], end_c.shape)
    return _closed_c(end_c, slope, is_chained=is_chained)


def _first_mass_c(start: Balance, lowest_c: FloatArray | None = None) -> FloatArray:
    """Return the mass temperature at each day's first midnight, shape (R, n_day), sought from where the start has it.

    All days at once: each day's map is a straight line about the last guess, and the lines are solved together, each
    day by itself where it repeats, from the first day to the last and round where one follows the other.
    """
    mass_c = start.mass_c
    for _ in range(NEWTON_PASSES):
        end_c, slope = _day_end(start, mass_c, lowest_c)
        end_c -= slope * mass_c
        mass_c = _closed_c(end_c, slope, is_chained=start.is_chained)
    return mass_c


def _closed_c(base: FloatArray, slope: FloatArray, *, is_chained: bool) -> FloatArray:
    """Return m where base + slope m is m again, or that of the next day where days are chained; shape (R, n_day)."""
    return _round_the_year(base, slope) if is_chained else base / (1.0 - slope)


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


def _day_end(
    balanced: Balance, first_c: FloatArray, lowest_c: FloatArray | None = None
) -> tuple[FloatArray, FloatArray]:
    """Return the mass temperature after the 24 hours and its slope in the temperature before them.

    The plant cools the air by no more than `lowest_c`, shape (24, R, n_day), where that is given; it is below 0.
    """
    lines, limits = balanced.lines, balanced.limits
    mass_c, held_hours = first_c.copy(), np.zeros(first_c.shape, np.uint8)
    free_c, change_c, is_held = np.empty_like(mass_c), np.empty_like(mass_c), np.empty(mass_c.shape, np.bool_)
    per_k = lines.mass_per_w / lines.air_per_w
    for hour in range(HOURS):
        does_act = limits.does_heat[hour] or limits.does_cool[hour]
        if does_act:
            np.multiply(mass_c, lines.air_per_mass, out=free_c)
            free_c += lines.air_base_c[hour]
            limits.change_c(hour, free_c, change_c)
            np.not_equal(change_c, 0.0, out=is_held)
            if lowest_c is not None:
                is_held &= change_c > lowest_c[hour]
                np.maximum(change_c, lowest_c[hour], out=change_c)
            held_hours += is_held.view(np.uint8)
            change_c *= per_k
        mass_c *= lines.mass_per_mass
        mass_c += lines.mass_base_c[hour]
        if does_act:
            mass_c += change_c
    return mass_c, _day_slope(lines, held_hours)


def _day_slope(lines: HourLines, held_hours: IntArray) -> FloatArray:
    """Return the slope of a day's map: the product of its hours', by how many of them the plant holds."""
    slope_when_held = lines.mass_per_mass - lines.mass_per_w / lines.air_per_w * lines.air_per_mass
    by_count = _powers(slope_when_held) * _powers(lines.mass_per_mass)[:, ::-1]
    return np.take_along_axis(by_count, held_hours, axis=1)


def _powers(slope: FloatArray) -> FloatArray:
    """Return the powers 0 to 24 of slopes (R, 1), shape (R, 25)."""
    powers = np.repeat(slope, HOURS + 1, axis=1)
    powers[:, 0] = 1.0
    return np.cumprod(powers, axis=1, out=powers)


def _each_day(balanced: Balance, lowest_c: FloatArray | None = None) -> tuple[FloatArray, FloatArray, FloatArray]:
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
        if lowest_c is not None:
            np.maximum(plant_w, lowest_c[hour], out=plant_w)
        air_c[hour] += plant_w
        plant_w /= lines.air_per_w
        np.maximum(plant_w, 0.0, out=heat_w[hour])
        np.subtract(heat_w[hour], plant_w, out=cool_w[hour])
        plant_w *= lines.mass_per_w
        mass_c += plant_w
    return heat_w, cool_w, air_c
