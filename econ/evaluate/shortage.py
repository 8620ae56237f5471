"""Rows whose machine cannot keep up: the room is balanced again with the machine's limit."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, Final, TypeVar

import numpy as np

from econ.climate.weather import Weather
from econ.energy.served import by_month
from econ.equipment.day_run import DayRun, day_run
from econ.equipment.demand import Demand
from econ.equipment.machine import MachineRows
from econ.equipment.sizing import cooling_capacity_w
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.energy import SHORT_FRAC, EnergyUse, energy_of
from econ.kernel.arrays import BoolArray, FloatArray, IntArray, on_own_days
from econ.loads.day_balance import Balance
from econ.loads.heat_balance import held_of
from econ.loads.rooms import RoomRows

Values = Mapping[str, FloatArray]
Rows = TypeVar("Rows")

WARM_K: Final = 0.5
"""K above the cooling set-point before an hour counts as too warm. Assumption: what a thermostat's swing hides."""

PAIRS_AT_ONCE: Final = 3072
"""Rows on a day of theirs that are balanced again together: they take about 10 MB."""

LEAST_W: Final = 1e-6
"""W of cooling below which it is rounding: what a room wants and the way spares it, taken from each other."""


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Rooms of some rows and their need.

    Attributes
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    rooms : RoomRows
        All rooms, room by room: n_rooms times B.
    balanced : Balance
        The same rooms balanced without a limit.
    room_cool_w : ndarray, shape (24, n_rooms, B, n_day)
        Sensible cooling wanted in each room. [W]
    is_served : ndarray of bool, shape (n_rooms, B)
        Whether the indoor unit can be counted on.
    demand : Demand
        Need of the served rooms, as the way at hand finds it.
    is_there : ndarray of bool, shape (B, n_day), or None
        Days on which the machine stands ready; None for all.
    """

    values: Values
    rooms: RoomRows
    balanced: Balance
    room_cool_w: FloatArray
    is_served: BoolArray
    demand: Demand
    is_there: BoolArray | None = None


@dataclass(frozen=True, slots=True, eq=False)
class _Pairs:
    """Rows and days that are balanced again: rows (n,), each with its own days (n, m) or all days alike (1, m)."""

    rows: IntArray
    days: IntArray

    @property
    def place(self) -> tuple[IntArray, IntArray]:
        """Return where they stand in an array (B, n_day)."""
        return self.rows[:, None], self.days

    def parts(self) -> "list[_Pairs]":
        """Return the same a few at a time, so that what they need meanwhile stays small."""
        if len(self.rows) <= PAIRS_AT_ONCE:
            return [self]
        days = np.broadcast_to(self.days, (len(self.rows), self.days.shape[1]))
        parts = (slice(at, at + PAIRS_AT_ONCE) for at in range(0, len(self.rows), PAIRS_AT_ONCE))
        return [_Pairs(self.rows[part], days[part]) for part in parts]


def limited_use(structure: Structure, block: Block, weather: Weather, machine: MachineRows) -> EnergyUse:
    """Return a full year's energy of one machine; what it cannot remove stays in the room.

    Parameters
    ----------
    structure : Structure
        Names the tariff.
    block : Block
        Rooms and need.
    weather : Weather
        The year's days.
    machine : MachineRows
        B machines.

    Returns
    -------
    use : EnergyUse
        Rows in which no hour is noticeably short are those of the balance without limit; so are rows without a
        machine, whose hours are those that want cooling.
    """
    run = day_run(machine, block.demand, SHORT_FRAC, block.is_there)
    short = np.flatnonzero(run.cool_short_h.any(axis=1) & machine.can_cool)
    if short.size:
        for pairs in _short_pairs(run, short, is_chained=weather.is_chained).parts():
            again = _run_again(block, machine, pairs)
            _write(run, pairs, again)
    use = energy_of(structure, block.values, weather, run)
    idle = np.flatnonzero(~machine.can_cool)
    return _with_free_room(use, block, weather, idle) if idle.size else use


def _write(run: DayRun, pairs: _Pairs, again: DayRun) -> None:
    """Write days that were run again over those that fell short."""
    for field in fields(DayRun):
        if (days := getattr(run, field.name)) is not None:
            days[pairs.place] = getattr(again, field.name)


def _with_free_room(use: EnergyUse, block: Block, weather: Weather, idle: IntArray) -> EnergyUse:
    """Return the months that are too warm of rows without a machine: their rooms run free.

    A day that repeats itself and wants no cooling in any row is never too warm, and is left out.
    """
    days = np.arange(len(weather.weight_d))
    if not weather.is_chained:
        days = days[(block.room_cool_w > 0.0).any(axis=(0, 1, 2))]
    pairs = _Pairs(idle, days[None, :])
    own_w = _own_cool_w(block, pairs)
    limit_w = _by_room_w(own_w, block.is_served[:, idle], np.zeros_like(own_w[:, 0]))
    above_k = _held_w(block, pairs, limit_w)[1]
    hours, degrees = use.too_warm_h.copy(), use.too_warm_kh.copy()
    month, weight_d = weather.month[days], weather.weight_d[days]
    hours[idle] = by_month((above_k > WARM_K).sum(axis=0).astype(np.float64), month, weight_d)
    degrees[idle] = by_month(above_k.sum(axis=0), month, weight_d)
    return replace(use, too_warm_h=hours, too_warm_kh=degrees)


def _short_pairs(run: DayRun, short: IntArray, *, is_chained: bool) -> _Pairs:
    """Return the days on which short rows leave anything; all of them where each day hands its warmth on."""
    if is_chained:
        return _Pairs(short, np.arange(run.warm_kh.shape[1])[None, :])
    row, day = np.nonzero(run.unmet_cool_wh[short] > 0.0)
    return _Pairs(short[row], day[:, None])


def _run_again(block: Block, machine: MachineRows, pairs: _Pairs) -> DayRun:
    """Return the days of rows that fall short, balanced and run again with the machine's limit."""
    then, unit = block.demand.at(pairs.rows, pairs.days), taken(machine, pairs.rows)
    cooled_w, above_k = _cooled_again(block, then, unit, pairs)
    is_there = None if block.is_there is None else block.is_there[pairs.place]
    return replace(
        day_run(unit, replace(then, cool_w=cooled_w), SHORT_FRAC, is_there),
        unmet_cool_wh=(then.cool_w - cooled_w).sum(axis=0),
        cool_short_h=(above_k > WARM_K).sum(axis=0).astype(np.float64),
        warm_kh=above_k.sum(axis=0),
    )


def _cooled_again(block: Block, then: Demand, machine: MachineRows, pairs: _Pairs) -> tuple[FloatArray, FloatArray]:
    """Return what is cooled within a machine's limit, and kelvins above the set-point, shape (24, n, m)."""
    most_w, own_w = sensible_limit_w(then, machine), _own_cool_w(block, pairs)
    added_w = then.cool_w - own_w.sum(axis=1)
    limit_w = _by_room_w(own_w, block.is_served[:, pairs.rows], np.maximum(most_w - added_w, 0.0))
    cooled_w, above_k = _held_w(block, pairs, limit_w)
    cooled_w = np.minimum(np.maximum(cooled_w + added_w, 0.0), np.maximum(most_w, cooled_w))
    cooled_w[cooled_w < LEAST_W] = 0.0
    return cooled_w, above_k


def _own_cool_w(block: Block, pairs: _Pairs) -> FloatArray:
    """Return the cooling that each served room wants by itself, shape (24, n_rooms, n, m)."""
    n_rooms = block.room_cool_w.shape[1]
    by_room = [on_own_days(block.room_cool_w[:, room], pairs.rows, pairs.days) for room in range(n_rooms)]
    own_w = np.stack(by_room, axis=1) if n_rooms > 1 else by_room[0][:, None]
    return _of_served(own_w, block, pairs)


def _of_served(of_rooms: FloatArray, block: Block, pairs: _Pairs) -> FloatArray:
    """Return what belongs to rooms, shape (24, n_rooms, n, m), 0 in those that are not served."""
    is_served = block.is_served[:, pairs.rows]
    return of_rooms if is_served.all() else of_rooms * is_served[None, :, :, None]


def _held_w(block: Block, pairs: _Pairs, limit_w: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return sensible cooling, and kelvins above the set-point, of the served rooms, shape (24, n, m)."""
    n_hour, n_rooms, n_pair, n_day = limit_w.shape
    n_row = block.is_served.shape[1]
    room_rows = (np.arange(n_rooms)[:, None] * n_row + pairs.rows).ravel()
    days = np.tile(pairs.days, (n_rooms if len(pairs.days) > 1 else 1, 1))
    found = held_of(block.balanced.at(room_rows, days), limit_w.reshape(n_hour, n_rooms * n_pair, n_day))
    cool_w, above_k = (_of_served(part.reshape(limit_w.shape), block, pairs) for part in (found.cool_w, found.above_k))
    return (cool_w[:, 0], above_k[:, 0]) if n_rooms == 1 else (cool_w.sum(axis=1), above_k.max(axis=1))


def sensible_limit_w(demand: Demand, machine: MachineRows) -> FloatArray:
    """Return the most sensible heat each machine removes, hour by hour.

    Parameters
    ----------
    demand : Demand
        Need and weather of B rows.
    machine : MachineRows
        B machines.

    Returns
    -------
    limit_w : ndarray, shape (24, B, n_day)
        Total capacity less what drying takes of it in that hour; the rated share where nothing was wanted. [W]
    """
    shr = machine.shr[:, None]
    limit_w = np.empty(demand.cool_w.shape)
    for hours in demand.hours:
        cool_w = demand.cool_w[hours]
        wanted_w = np.minimum(demand.latent_w[hours], cool_w * (1.0 - shr) / shr)
        wanted_w += cool_w
        limit_w[hours] = shr
        np.divide(cool_w, wanted_w, out=limit_w[hours], where=wanted_w > 0.0)
        limit_w[hours] *= cooling_capacity_w(machine, demand.dry_bulb_c(hours))
    return limit_w


def _by_room_w(own_w: FloatArray, is_served: BoolArray, most_w: FloatArray) -> FloatArray:
    """Return each room's part of the limit, by its part of the need, shape (24, n_rooms, n, m).

    Rooms the unit does not serve have no limit: they are balanced as before and not counted.
    """
    if len(is_served) == 1:
        return most_w[:, None]
    total_w = own_w.sum(axis=1, keepdims=True)
    even = np.broadcast_to((is_served / is_served.sum(axis=0))[None, :, :, None], own_w.shape).copy()
    part = np.divide(own_w, total_w, out=even, where=total_w > 0.0)
    by_room: FloatArray = np.where(is_served[None, :, :, None], part * most_w[:, None], np.inf)
    return by_room


def taken(rows: Rows, at: IntArray) -> Rows:
    """Return some rows of a dataclass of arrays, dataclasses within it alike.

    Parameters
    ----------
    rows : dataclass
        Arrays with rows first; what is no array of rows is kept.
    at : ndarray of int, shape (n,)
        Positions.
    """
    parts: dict[str, Any] = {}
    for field in fields(rows):  # type: ignore[arg-type]
        value = getattr(rows, field.name)
        if is_dataclass(value) and not isinstance(value, type):
            parts[field.name] = taken(value, at)
        else:
            parts[field.name] = value[at] if isinstance(value, np.ndarray) else value
    return type(rows)(**parts)
