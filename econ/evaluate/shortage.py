"""Rows whose machine cannot keep up: the room is balanced again with the machine's limit."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, Final, TypeVar

import numpy as np

from econ.climate.weather import Weather
from econ.energy.served import WATT_HOURS_PER_KWH
from econ.equipment.machine import MachineRows
from econ.equipment.part_load import Operation, operation
from econ.equipment.sizing import cooling_capacity_w
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.energy import EnergyUse, energy_of
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.loads.heat_balance import held
from econ.loads.rooms import RoomRows

Values = Mapping[str, FloatArray]
Rows = TypeVar("Rows")

WARM_K: Final = 0.5
"""K above the cooling set-point before an hour counts as too warm. Assumption: what a thermostat's swing hides."""


@dataclass(frozen=True, slots=True, eq=False)
class HourlyNeed:
    """Need of the served rooms, summed into decision rows, and the weather it was met in.

    Attributes
    ----------
    cool_w, latent_w, heat_w : ndarray, shape (24, B, n_day)
        Sensible cooling, drying and heating wanted. [W]
    dry_bulb_c : ndarray, shape (24, B, n_day)
        Outdoor dry bulb, warming included. [degC]
    """

    cool_w: FloatArray
    latent_w: FloatArray
    heat_w: FloatArray
    dry_bulb_c: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Rooms of some rows and their need.

    Attributes
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    rooms : RoomRows
        All rooms, room by room: n_rooms times B.
    room_cool_w : ndarray, shape (24, n_rooms, B, n_day)
        Sensible cooling wanted in each room. [W]
    is_served : ndarray of bool, shape (n_rooms, B)
        Whether the indoor unit can be counted on.
    hours : HourlyNeed
        Need of the served rooms, as the way at hand finds it.
    is_there : ndarray of bool, shape (B, n_day), or None
        Days on which the machine stands ready; None for all.
    """

    values: Values
    rooms: RoomRows
    room_cool_w: FloatArray
    is_served: BoolArray
    hours: HourlyNeed
    is_there: BoolArray | None = None

    @property
    def added_cool_w(self) -> FloatArray:
        """Return the sensible cooling that the way adds to the rooms' own, shape (24, B, n_day). [W]"""
        own_w: FloatArray = (self.room_cool_w * self.is_served[None, :, :, None]).sum(axis=1)
        return self.hours.cool_w - own_w

    def of_rows(self, rows: IntArray) -> "Block":
        """Return the same for some of the rows."""
        n_rooms, n_row = self.is_served.shape
        if len(rows) == n_row:
            return self
        room_rows = (np.arange(n_rooms)[:, None] * n_row + rows).ravel()
        rooms = replace(taken(self.rooms, room_rows), owner=np.tile(np.arange(len(rows)), n_rooms))
        hours = HourlyNeed(*(getattr(self.hours, field.name)[:, rows] for field in fields(HourlyNeed)))
        values = {path: value[rows] if np.ndim(value) else value for path, value in self.values.items()}
        is_there = None if self.is_there is None else self.is_there[rows]
        return Block(values, rooms, self.room_cool_w[:, :, rows], self.is_served[:, rows], hours, is_there)

    def run(self, machine: MachineRows, hours: HourlyNeed, days: slice | IntArray = slice(None)) -> Operation:
        """Return what the machine serves and draws on some days; standby only where it stands ready."""
        run = operation(machine, hours.cool_w, hours.latent_w, hours.heat_w, hours.dry_bulb_c)
        if self.is_there is not None:
            np.multiply(run.standby_electric_w, self.is_there[:, days], out=run.standby_electric_w)
        return run


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
    hours = block.hours
    run = block.run(machine, hours)
    use = energy_of(structure, block.values, hours, weather, run)
    short = np.flatnonzero((use.unmet_cooling_h > 0.0) & machine.can_cool)
    if not short.size:
        return use
    part, short_run = block.of_rows(short), _of_rows(run, short)
    again = _balanced_again(structure, part, weather, taken(machine, short), short_run)
    merged = {field.name: getattr(use, field.name).copy() for field in fields(EnergyUse)}
    for name, column in merged.items():
        column[short] = getattr(again, name)
    return EnergyUse(**merged)


def _of_rows(run: Operation, rows: IntArray) -> Operation:
    if len(rows) == run.cool_served_w.shape[1]:
        return run
    return Operation(*(getattr(run, field.name)[:, rows] for field in fields(Operation)))


def _balanced_again(
    structure: Structure, block: Block, weather: Weather, machine: MachineRows, run: Operation
) -> EnergyUse:
    """Return the same with the limit; only days that fall short are balanced and run again."""
    hours = block.hours
    is_short = (hours.cool_w > run.cool_served_w).any(axis=(0, 1))
    days = np.flatnonzero(is_short | weather.is_chained)
    then = HourlyNeed(*(getattr(hours, field.name)[:, :, days] for field in fields(HourlyNeed)))
    most_w, added_w = sensible_limit_w(then, machine), block.added_cool_w[:, :, days]
    limit_w = _by_room_w(block, np.maximum(most_w - added_w, 0.0), days)
    cooled_w, above_k = _held_w(block, weather if weather.is_chained else weather.of_days(days), limit_w)
    cooled_w = np.minimum(np.maximum(cooled_w + added_w, 0.0), np.maximum(most_w, cooled_w))
    missing_w = (then.cool_w - cooled_w).sum(axis=0)
    part = block.run(machine, replace(then, cool_w=cooled_w), days)
    cool_w = hours.cool_w.copy()
    cool_w[:, :, days] = cooled_w
    for field in fields(Operation):
        getattr(run, field.name)[:, :, days] = getattr(part, field.name)
    weight_d = weather.weight_d[days]
    return replace(
        energy_of(structure, block.values, replace(hours, cool_w=cool_w), weather, run),
        unmet_cooling_kwh_per_yr=np.maximum((missing_w * weight_d).sum(axis=-1), 0.0) / WATT_HOURS_PER_KWH,
        unmet_cooling_h=((above_k > WARM_K).sum(axis=0) * weight_d).sum(axis=-1),
        unmet_cooling_kh=(above_k.sum(axis=0) * weight_d).sum(axis=-1),
    )


def _held_w(block: Block, weather: Weather, limit_w: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return sensible cooling, and kelvins above the set-point, of the served rooms on a weather's days, (24, B, n)."""
    n_hour, n_rooms, n_row, n_day = limit_w.shape
    found = held(block.rooms, weather, limit_w.reshape(n_hour, n_rooms * n_row, n_day))
    is_served = block.is_served[None, :, :, None]
    cooled_w = (found.cool_w.reshape(limit_w.shape) * is_served).sum(axis=1)
    return cooled_w, (found.above_k.reshape(limit_w.shape) * is_served).max(axis=1)


def sensible_limit_w(hours: HourlyNeed, machine: MachineRows) -> FloatArray:
    """Return the most sensible heat each machine removes, hour by hour.

    Parameters
    ----------
    hours : HourlyNeed
        Need and weather of B rows.
    machine : MachineRows
        B machines.

    Returns
    -------
    limit_w : ndarray, shape (24, B, n_day)
        Total capacity less what drying takes of it in that hour; the rated share where nothing was wanted. [W]
    """
    n_hour, n_row, n_day = hours.cool_w.shape
    outdoor_c = hours.dry_bulb_c.transpose(1, 0, 2).reshape(n_row, n_hour * n_day)
    total_w = cooling_capacity_w(machine, outdoor_c).reshape(n_row, n_hour, n_day).transpose(1, 0, 2)
    shr = machine.shr[None, :, None]
    drying_w = np.minimum(hours.latent_w, hours.cool_w * (1.0 - shr) / shr)
    wanted_w = hours.cool_w + drying_w
    share = np.divide(hours.cool_w, wanted_w, out=np.broadcast_to(shr, wanted_w.shape).copy(), where=wanted_w > 0.0)
    limit_w: FloatArray = total_w * share
    return limit_w


def _by_room_w(block: Block, most_w: FloatArray, days: IntArray) -> FloatArray:
    """Return each room's part of the limit on some days, by its part of the need, shape (24, n_rooms, B, n).

    Rooms the unit does not serve have no limit: they are balanced as before and not counted.
    """
    if len(block.is_served) == 1:
        return most_w[:, None]
    is_served = block.is_served[None, :, :, None]
    wanted_w = block.room_cool_w[..., days] * is_served
    total_w = wanted_w.sum(axis=1, keepdims=True)
    even = np.broadcast_to(is_served / is_served.sum(axis=1, keepdims=True), wanted_w.shape).copy()
    part = np.divide(wanted_w, total_w, out=even, where=total_w > 0.0)
    by_room: FloatArray = np.where(is_served, part * most_w[:, None], np.inf)
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
