"""Rows whose machine cannot keep up: the room is balanced again with the machine's limit."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, Final, TypeVar

import numpy as np

from econ.climate.weather import Weather
from econ.energy.served import WATT_HOURS_PER_KWH
from econ.equipment.machine import MachineRows
from econ.equipment.sizing import cooling_capacity_w
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.energy import EnergyUse, energy_use
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
        Need of the served rooms.
    """

    values: Values
    rooms: RoomRows
    room_cool_w: FloatArray
    is_served: BoolArray
    hours: HourlyNeed

    def of_rows(self, rows: IntArray) -> "Block":
        """Return the same for some of the rows."""
        n_rooms, n_row = self.is_served.shape
        room_rows = (np.arange(n_rooms)[:, None] * n_row + rows).ravel()
        rooms = replace(taken(self.rooms, room_rows), owner=np.tile(np.arange(len(rows)), n_rooms))
        hours = HourlyNeed(*(getattr(self.hours, field.name)[:, rows] for field in fields(HourlyNeed)))
        values = {path: value[rows] if np.ndim(value) else value for path, value in self.values.items()}
        return Block(values, rooms, self.room_cool_w[:, :, rows], self.is_served[:, rows], hours)


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
        Rows that never fall short are those of the balance without limit; so are rows without a machine, whose hours
        are those that want cooling.
    """
    use = energy_use(structure, block.values, block.hours, weather, machine)
    short = np.flatnonzero((use.unmet_cooling_kwh_per_yr > 0.0) & machine.can_cool)
    if not short.size:
        return use
    again = _balanced_again(structure, block.of_rows(short), weather, taken(machine, short))
    merged = {field.name: getattr(use, field.name).copy() for field in fields(EnergyUse)}
    for name, column in merged.items():
        column[short] = getattr(again, name)
    return EnergyUse(**merged)


def _balanced_again(structure: Structure, block: Block, weather: Weather, machine: MachineRows) -> EnergyUse:
    most_w = sensible_limit_w(block.hours, machine)
    is_short = (block.hours.cool_w > most_w).any(axis=(0, 1))
    days = np.flatnonzero(is_short | weather.is_chained)
    cooled_w, above_k = _held_w(block, weather if weather.is_chained else weather.of_days(days), most_w, days)
    cool_w = block.hours.cool_w.copy()
    cool_w[:, :, days] = cooled_w
    weight_d = weather.weight_d[days]
    missing_w = (block.hours.cool_w[:, :, days] - cooled_w).sum(axis=0)
    return replace(
        energy_use(structure, block.values, replace(block.hours, cool_w=cool_w), weather, machine),
        unmet_cooling_kwh_per_yr=np.maximum((missing_w * weight_d).sum(axis=-1), 0.0) / WATT_HOURS_PER_KWH,
        unmet_cooling_h=((above_k > WARM_K).sum(axis=0) * weight_d).sum(axis=-1),
        unmet_cooling_kh=(above_k.sum(axis=0) * weight_d).sum(axis=-1),
    )


def _held_w(block: Block, weather: Weather, most_w: FloatArray, days: IntArray) -> tuple[FloatArray, FloatArray]:
    """Return sensible cooling, and kelvins above the set-point, of the served rooms on some days, (24, B, n)."""
    n_rooms, n_row = block.is_served.shape
    shape = len(most_w), n_rooms, n_row, len(days)
    limit_w = _by_room_w(block, most_w)[..., days].reshape(shape[0], n_rooms * n_row, len(days))
    found = held(block.rooms, weather, limit_w)
    is_served = block.is_served[None, :, :, None]
    cooled_w = (found.cool_w.reshape(shape) * is_served).sum(axis=1)
    return cooled_w, (found.above_k.reshape(shape) * is_served).max(axis=1)


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


def _by_room_w(block: Block, most_w: FloatArray) -> FloatArray:
    """Return each room's part of the limit, by its part of the need, shape (24, n_rooms, B, n_day).

    Rooms the unit does not serve have no limit: they are balanced as before and not counted.
    """
    is_served = block.is_served[None, :, :, None]
    wanted_w = block.room_cool_w * is_served
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
