"""Hours to months: loads, machines and energy, block of rows by block of rows."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from typing import Any, TypeVar

import numpy as np

from econ.case.choices import code
from econ.climate.weather import Weather
from econ.energy.served import kwh_by_month, monthly_kwh, per_year
from econ.equipment.demand import Demand
from econ.equipment.machine import MachineRows
from econ.equipment.sizing import below_least_h
from econ.evaluate.blocks import row_blocks, rows_for, side_by_side
from econ.evaluate.served import served_rooms
from econ.evaluate.shortage import Block, limited_use, taken
from econ.evaluate.structure import Structure
from econ.evaluate.way_need import of_way, with_dehumidifier
from econ.evaluate.wiring import loads
from econ.evaluate.wiring.bills import by_bills
from econ.evaluate.wiring.energy import EnergyUse
from econ.evaluate.wiring.equipment import machines
from econ.evaluate.wiring.tariff import hour_price
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.loads.day_balance import balance
from econ.loads.heat_balance import need, need_of
from econ.loads.rooms import RoomRows

Values = Mapping[str, FloatArray]
Joined = TypeVar("Joined")
Bins = tuple[FloatArray, FloatArray, FloatArray, FloatArray, FloatArray, FloatArray]

_SIDES = ("cooling", "cooling", "heating")
"""What cooling, drying and heating are scaled with where bills do so."""

ROWS_PER_SPAN = 2048
"""Rows whose rooms and machines are built at once: enough that calls do not count, and about 10 MB. [dimensionless]"""

BIN_K = 2.5
"""Width of an outdoor temperature bin in the picture of need and capacity. [K]"""


@dataclass(frozen=True, slots=True, eq=False)
class Need:
    """Need of the served rooms by month, with what sizing asks of it.

    Attributes
    ----------
    cool_kwh, latent_kwh, heat_kwh : ndarray, shape (B, 12)
        Sensible cooling, drying and heating. [kWh]
    mean_cooling_w : ndarray, shape (B,)
        Mean total cooling over the hours that want any; 0 where none does. [W]
    mean_cooling_c : ndarray, shape (B,)
        Mean outdoor temperature of those hours; that of the year where there are none. [degC]
    """

    cool_kwh: FloatArray
    latent_kwh: FloatArray
    heat_kwh: FloatArray
    mean_cooling_w: FloatArray
    mean_cooling_c: FloatArray

    @property
    def all_cooling_kwh(self) -> FloatArray:
        """Cooling over the year, drying included, shape (B,). [kWh]"""
        total: FloatArray = (self.cool_kwh + self.latent_kwh).sum(axis=1)
        return total


@dataclass(frozen=True, slots=True, eq=False)
class Physics:
    """What the hours come to, for all rows.

    Attributes
    ----------
    need : Need
        Need by month.
    uses : tuple of EnergyUse
        A full year's energy of each way, in the order of ALTERNATIVES.
    units : tuple of MachineRows
        The machine of each way, in the same order.
    room_month_kwh : ndarray, shape (3, n_rooms, 12)
        Sensible cooling, drying and heating of each room by month, first row. [kWh]
    bin_c, bin_h, bin_cool_w, bin_heat_w : ndarray, shape (n_bin,)
        Outdoor temperature bins of the first row: middle, hours a year, mean cooling and heating wanted.
        [degC] [hour] [W] [W]
    bin_cool_high_w, bin_heat_high_w : ndarray, shape (n_bin,)
        Cooling and heating wanted in the hour of each bin that wants most. [W]
    below_least_h : ndarray, shape (A,)
        Hours a year in which each way's machine would give more than is wanted at its least, first row. [hour]
    """

    need: Need
    uses: tuple[EnergyUse, ...]
    units: tuple[MachineRows, ...]
    room_month_kwh: FloatArray
    bin_c: FloatArray
    bin_h: FloatArray
    bin_cool_w: FloatArray
    bin_heat_w: FloatArray
    bin_cool_high_w: FloatArray
    bin_heat_high_w: FloatArray
    below_least_h: FloatArray


def physics(structure: Structure, values: Values, weather: Weather, n_row: int) -> Physics:
    """Return need and energy of every row.

    Parameters
    ----------
    structure : Structure
        Rooms and technologies.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    weather : Weather
        The year's days.
    n_row : int
        B.

    Returns
    -------
    physics : Physics
        Months and years only; hours are dropped block by block.
    """
    spans = [_span(structure, *span, weather) for span in row_blocks(values, n_row, ROWS_PER_SPAN)]
    found, units = [each for blocks, _ in spans for each in blocks], _by_way([machine for _, machine in spans])
    spans.clear()
    first = {path: value[:1] if np.ndim(value) else value for path, value in values.items()}
    need = joined([each.need for each in found])
    uses = [each.uses for each in found]
    found.clear()
    alone = _block_of(structure, first, weather, loads.room_rows(structure, first, 1, weather)).demand
    return Physics(
        need,
        _by_way(uses),
        units,
        room_month_kwh(structure, first, weather),
        *_bins(alone, weather),
        _below_least_h(units, alone, weather),
    )


def is_cooled_enough(values: Values, need: Need, use: EnergyUse) -> BoolArray:
    """Return whether cooling is met but for the small share that is allowed, or not asked for.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    need : Need
        What is wanted.
    use : EnergyUse
        What one way leaves undone.

    Returns
    -------
    is_enough : ndarray of bool, shape (B,)
        One claim a row.
    """
    wanted = need.cool_kwh.sum(axis=1) + need.latent_kwh.sum(axis=1)
    is_met: BoolArray = use.unmet_cooling_kwh_per_yr <= values["rules.unmet_cooling_allowed_frac"] * wanted
    is_enough: BoolArray = is_met | (np.asarray(values["use.cool"]) == code("use.cool", "no"))
    return is_enough


def _by_way(blocks: list[tuple[Joined, ...]]) -> tuple[Joined, ...]:
    """Return each way's rows put end to end; ways that share theirs share them still. The blocks are used up."""
    ways, firsts = [list(way) for way in zip(*blocks, strict=True)], blocks[0]
    blocks.clear()
    whole: list[Joined] = []
    for position, parts in enumerate(ways):
        is_again = position > 0 and firsts[position] is firsts[position - 1]
        whole.append(whole[-1] if is_again else joined(parts))
        parts.clear()
    return tuple(whole)


def joined(parts: Sequence[Joined], axis: int = 0) -> Joined:
    """Return dataclasses of arrays put end to end, field by field, dataclasses within them alike.

    Parameters
    ----------
    parts : sequence of one dataclass
        Parts in order; what is no array is taken from the first.
    axis : int
        Axis of the arrays on which rows stand. [dimensionless]
    """
    columns: dict[str, Any] = {}
    for field in fields(parts[0]):  # type: ignore[arg-type]
        values = [getattr(part, field.name) for part in parts]
        if isinstance(values[0], np.ndarray):
            columns[field.name] = np.concatenate(values, axis=axis)
        else:
            columns[field.name] = joined(values, axis) if is_dataclass(values[0]) else values[0]
    return type(parts[0])(**columns)


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """What a block of rows comes to: as `Physics`, its own rows."""

    need: Need
    uses: tuple[EnergyUse, ...]


def _some(units: tuple[MachineRows, ...], at: IntArray) -> tuple[MachineRows, ...]:
    """Return some rows of every way's machine; ways that share theirs share them still."""
    some: list[MachineRows] = []
    for position, machine in enumerate(units):
        is_again = position > 0 and machine is units[position - 1]
        some.append(some[-1] if is_again else taken(machine, at))
    return tuple(some)


def _span(
    structure: Structure, n_row: int, values: dict[str, FloatArray], weather: Weather
) -> tuple[list[Found], tuple[MachineRows, ...]]:
    """Return need and energy of a span of rows, block by block, and their machines."""
    size, units = rows_for(len(weather.weight_d)), machines(structure, values, n_row)
    first_rows, rooms = range(0, n_row, size), loads.room_rows(structure, values, n_row, weather)

    def block(part: tuple[int, tuple[int, dict[str, FloatArray]]]) -> Found:
        first_row, (n_block, of_block) = part
        rows = np.arange(first_row, first_row + n_block)
        found = _block_of(structure, of_block, weather, _rooms_of(rooms, rows, n_row))
        return _found(structure, found, weather, _some(units, rows))

    return side_by_side(block, list(zip(first_rows, row_blocks(values, n_row, size), strict=True))), units


def _rooms_of(rooms: RoomRows, rows: IntArray, n_row: int) -> RoomRows:
    """Return all rooms of some of the rows, room by room as they came."""
    n_rooms = len(rooms.warming_k) // n_row
    return taken(rooms, (np.arange(n_rooms)[:, None] * n_row + rows).ravel())


def _found(structure: Structure, block: Block, weather: Weather, units: tuple[MachineRows, ...]) -> Found:
    """Return need and energy of a block of rows."""
    uses: list[EnergyUse] = []
    for position, machine in enumerate(units):
        if position > 0 and machine is units[position - 1]:
            uses.append(uses[-1])
        else:
            found_by = with_dehumidifier(of_way(structure, block, weather, position), machine)
            uses.append(limited_use(structure, found_by, weather, machine))
    return Found(_monthly(block.demand, weather), tuple(uses))


def _block_of(structure: Structure, values: Values, weather: Weather, all_rooms: RoomRows) -> Block:
    """Return the served rooms of a block of rows with their own need; rooms served in no row are left out."""
    n_row = len(all_rooms.warming_k) // structure.n_rooms
    is_served = served_rooms(structure, values, n_row)
    kept = np.flatnonzero(is_served.any(axis=1))
    at = (kept[:, None] * n_row + np.arange(n_row)).ravel()
    rooms = taken(all_rooms, at)
    balanced = balance(rooms, weather)
    found = need_of(balanced, rooms, weather, loads.humidity_limit_frac(structure, values, n_row)[at])
    served = is_served[kept]
    cool_w, latent_w, heat_w = (_served_w(part, served) for part in (found.cool_w, found.latent_w, found.heat_w))
    cool_w, latent_w, heat_w = (
        by_bills(values, side, need_w) for side, need_w in zip(_SIDES, (cool_w, latent_w, heat_w), strict=True)
    )
    counts_heat = loads.counts_heat(values, n_row)
    if not counts_heat.all():
        heat_w = heat_w * counts_heat[:, None]
    outdoor_c, price = weather.dry_bulb_c[:, None, :], hour_price(structure, values, weather)
    demand = Demand(cool_w, latent_w, heat_w, outdoor_c, rooms.warming_k[:n_row], price)
    return Block(values, rooms, balanced, found.cool_w.reshape(len(cool_w), len(kept), n_row, -1), served, demand)


def _served_w(power_w: FloatArray, is_served: BoolArray) -> FloatArray:
    """Return power summed over the served rooms, shape (24, B, n_day)."""
    n_rooms, n_row = is_served.shape
    if n_rooms == 1:
        return power_w
    split = power_w.reshape(len(power_w), n_rooms, n_row, -1)
    total: FloatArray = np.einsum("hrbd,rb->hbd", split, is_served)
    return total


def room_month_kwh(structure: Structure, values: Values, weather: Weather) -> FloatArray:
    """Return sensible cooling, drying and heating by month of every room, served or not, in the first row.

    Parameters
    ----------
    structure : Structure
        Rooms.
    values : mapping of str to ndarray, shape () or (1,)
        Numbers of that row by path.
    weather : Weather
        The year's days.

    Returns
    -------
    room_month_kwh : ndarray, shape (3, n_rooms, 12)
        Need in the hours and duties asked for. [kWh]
    """
    rooms = loads.room_rows(structure, values, 1, weather)
    found = need(rooms, weather, loads.humidity_limit_frac(structure, values, 1))
    by_month = [
        monthly_kwh(by_bills(values, side, part), weather.month, weather.weight_d)
        for side, part in zip(_SIDES, (found.cool_w, found.latent_w, found.heat_w), strict=True)
    ]
    whole: FloatArray = np.stack(by_month)
    whole[2] *= loads.counts_heat(values, 1)[0]
    return whole


def _monthly(demand: Demand, weather: Weather) -> Need:
    wanted_h, wanted_c = np.zeros(demand.cool_w.shape[1:], np.uint8), np.zeros(demand.cool_w.shape[1:])
    for hours in demand.hours:
        is_wanted = (demand.cool_w[hours] > 0.0) | (demand.latent_w[hours] > 0.0)
        for outdoor_c, is_any in zip(demand.outdoor_c[hours], is_wanted, strict=True):
            wanted_h += is_any.view(np.uint8)
            np.add(wanted_c, outdoor_c, out=wanted_c, where=is_any)
    year_h = per_year(wanted_h.astype(np.float64), weather.weight_d)
    at_least_one = np.where(year_h > 0.0, year_h, 1.0)
    year_mean_c = (weather.dry_bulb_c * weather.weight_d).sum() / (len(demand.cool_w) * weather.weight_d.sum())
    mean_c = np.where(year_h > 0.0, per_year(wanted_c, weather.weight_d) / at_least_one, year_mean_c)
    cool, latent, heat = (
        kwh_by_month(part_wh, weather.month, weather.weight_d)
        for part_wh in (demand.cool_wh, demand.latent_wh, demand.heat_wh)
    )
    return Need(
        cool_kwh=cool,
        latent_kwh=latent,
        heat_kwh=heat,
        mean_cooling_w=per_year(demand.cool_wh + demand.latent_wh, weather.weight_d) / at_least_one,
        mean_cooling_c=mean_c + demand.warming_k,
    )


def _below_least_h(units: Sequence[MachineRows], demand: Demand, weather: Weather) -> FloatArray:
    """Return the hours a year in which each machine of the first row switches on and off, shape (A,)."""
    wanted_w = np.where(demand.cool_w[:, :1] > 0.0, demand.cool_w[:, :1] + demand.latent_w[:, :1], 0.0)
    outdoor_c, first = demand.outdoor_c[:, :1] + demand.warming_k[0], np.array([0])
    return np.array([below_least_h(taken(unit, first), wanted_w, outdoor_c, weather.weight_d)[0] for unit in units])


def _bins(demand: Demand, weather: Weather) -> Bins:
    """Return the outdoor temperature bins of the first row: middle, hours, mean and highest cooling and heating."""
    at = np.floor((demand.outdoor_c[:, 0] + demand.warming_k[0]) / BIN_K).astype(np.int64)
    place = (at - at.min()).ravel()
    weight = np.broadcast_to(weather.weight_d, at.shape).ravel()
    bin_h = np.bincount(place, weight).astype(np.float64)
    is_there = np.where(bin_h > 0.0, bin_h, 1.0)
    cool_w, heat_w = (demand.cool_w[:, 0] + demand.latent_w[:, 0]).ravel(), demand.heat_w[:, 0].ravel()
    cool_high_w, heat_high_w = np.zeros((2, len(bin_h)))
    np.maximum.at(cool_high_w, place, cool_w)
    np.maximum.at(heat_high_w, place, heat_w)
    cool_mean_w, heat_mean_w = (np.bincount(place, weight * need_w) / is_there for need_w in (cool_w, heat_w))
    middle = (at.min() + np.arange(len(bin_h)) + 0.5) * BIN_K
    return middle, bin_h, cool_mean_w, heat_mean_w, cool_high_w, heat_high_w
