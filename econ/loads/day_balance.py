"""Days that close: rooms whose mass ends a day as warm as it, or the day after, begins."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import BoolArray, FloatArray, IntArray, on_own_days
from econ.kernel.errors import OutOfRangeError
from econ.loads import moisture
from econ.loads.network import HourLines, hour_lines
from econ.loads.rooms import RoomRows

FOUND_K: Final = 1e-9
"""K by which a pass moves a row that is found: rounding alone."""

NEWTON_PASSES: Final = 5
"""Passes over days: their maps are piecewise straight and rising, so Newton ends in few; a test holds it."""

HOURS: Final = 24


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
    slope : ndarray, shape (R, 25)
        Slope of a day's map from first to last mass temperature, by how many of its hours the plant holds.
        [dimensionless]
    is_chained : bool
        Whether each day follows the one before, or repeats itself.
    """

    lines: HourLines
    limits: Limits
    mass_c: FloatArray
    slope: FloatArray
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
        is_by_day = limits.cool_c.shape[-1] > 1
        cool_c = on_own_days(limits.cool_c, rooms, days) if is_by_day else limits.cool_c[:, rooms]
        return Balance(
            lines=HourLines(
                air_per_mass=lines.air_per_mass[rooms],
                air_per_w=lines.air_per_w[rooms],
                mass_per_mass=lines.mass_per_mass[rooms],
                mass_per_w=lines.mass_per_w[rooms],
                air_base_c=on_own_days(lines.air_base_c, rooms, days),
                mass_base_c=on_own_days(lines.mass_base_c, rooms, days),
            ),
            limits=replace(limits, heat_c=limits.heat_c[:, rooms], cool_c=cool_c),
            mass_c=self.mass_c[each, days],
            slope=self.slope[rooms],
            is_chained=self.is_chained,
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
    slope = _day_slope(lines)
    guess_c = np.clip(_free_mass_c(lines, slope[:, :1], is_chained=weather.is_chained), *_innermost_c(limits))
    start = Balance(lines, limits, guess_c, slope, weather.is_chained)
    return replace(start, mass_c=first_mass_c(start))


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
    does_heat, does_cool = (np.asarray(claims.any(axis=0)) for claims in (rooms.is_heated, rooms.is_cooled))
    return Limits(heat_by_hour, cool_by_hour, does_heat, does_cool)


def _innermost_c(limits: Limits) -> tuple[FloatArray, FloatArray]:
    """Return the highest heating and the lowest cooling set-point of a day, shape (R, 1) or (R, n_day)."""
    return limits.heat_c.max(axis=0), limits.cool_c.min(axis=0)


def _free_mass_c(lines: HourLines, slope: FloatArray, *, is_chained: bool) -> FloatArray:
    """Return the mass temperature at each day's first midnight with no plant at all, shape (R, n_day)."""
    end_c = np.zeros(lines.mass_base_c.shape[1:])
    for base_c in lines.mass_base_c:
        end_c *= lines.mass_per_mass
        end_c += base_c
    return _closed_c(end_c, np.broadcast_to(slope, end_c.shape), is_chained=is_chained)


def first_mass_c(start: Balance, lowest_k: FloatArray | None = None) -> FloatArray:
    """Return the mass temperature at each day's first midnight, sought from where the start has it.

    Parameters
    ----------
    start : Balance
        R rooms and a guess.
    lowest_k : ndarray, shape (24, R, n_day), or None
        How far the plant can change the air at most, 0 or below; None for no limit. [K]

    Returns
    -------
    mass_c : ndarray, shape (R, n_day)
        Found for all days at once. [degC]

    Notes
    -----
    Each day's map is a straight line about the last guess, and the lines are solved together: each day by itself where
    it repeats, from the first day to the last and round where one follows the other. A row is left as it is once a pass
    has not moved it, so that it is the same alone and among others.
    """
    mass_c = start.mass_c.copy()
    is_sought = np.ones(len(mass_c), dtype=np.bool_)
    for _ in range(NEWTON_PASSES):
        end_c, slope = _day_end(start, mass_c, lowest_k)
        end_c -= slope * mass_c
        next_c = _closed_c(end_c, slope, is_chained=start.is_chained)
        is_moved = (np.abs(next_c - mass_c) > FOUND_K).any(axis=1)
        np.copyto(mass_c, next_c, where=is_sought[:, None])
        is_sought &= is_moved
        if not is_sought.any():
            break
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
    balanced: Balance, first_c: FloatArray, lowest_k: FloatArray | None = None
) -> tuple[FloatArray, FloatArray]:
    """Return the mass temperature after the 24 hours and its slope in the temperature before them.

    The plant cools the air by no more than `lowest_k`, shape (24, R, n_day), where that is given; it is below 0.
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
            if lowest_k is not None:
                is_held &= change_c > lowest_k[hour]
                np.maximum(change_c, lowest_k[hour], out=change_c)
            held_hours += is_held.view(np.uint8)
            change_c *= per_k
        mass_c *= lines.mass_per_mass
        mass_c += lines.mass_base_c[hour]
        if does_act:
            mass_c += change_c
    return mass_c, np.take_along_axis(balanced.slope, held_hours, axis=1)


def _day_slope(lines: HourLines) -> FloatArray:
    """Return the slope of a day's map by how many of its hours the plant holds, the product of theirs, (R, 25)."""
    slope_when_held = lines.mass_per_mass - lines.mass_per_w / lines.air_per_w * lines.air_per_mass
    by_count: FloatArray = _powers(slope_when_held) * _powers(lines.mass_per_mass)[:, ::-1]
    return by_count


def _powers(slope: FloatArray) -> FloatArray:
    """Return the powers 0 to 24 of slopes (R, 1), shape (R, 25)."""
    powers = np.repeat(slope, HOURS + 1, axis=1)
    powers[:, 0] = 1.0
    return np.cumprod(powers, axis=1, out=powers)
