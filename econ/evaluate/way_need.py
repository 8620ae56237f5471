"""The need as each way finds it: window units let air past and keep sun out, portable ones draw air in, a dehumidifier
leaves its heat.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

import numpy as np

from econ.climate import moist_air
from econ.climate.weather import Weather
from econ.energy.served import kwh_by_month
from econ.equipment.dehumidifier import cooling_with_dehumidifier_w, heat_per_drying, heating_with_dehumidifier_w
from econ.equipment.demand import Demand
from econ.equipment.machine import MachineRows
from econ.evaluate.shortage import Block
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.equipment import is_all_year
from econ.evaluate.wiring.reading import amount, is_option
from econ.kernel.alternative import KEEP, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import (
    AIR_DENSITY_KG_PER_M3,
    AIR_HEAT_J_PER_KGK,
    STANDARD_PRESSURE_PA,
    VAPOUR_HEAT_J_PER_KG,
)
from econ.loads.hose import EXHAUST_AT_W, Hose, cooling_with_hose_w, drying_with_hose_w, duty, hose, unbalanced_m3_per_s
from econ.loads.infiltration import leakage_flow_m3_per_s
from econ.loads.window_gap import (
    WindowGap,
    cooling_with_gap_w,
    drying_with_gap_w,
    heating_with_gap_w,
    months_in,
)

Values = Mapping[str, FloatArray]

COUNTS: Final = {KEEP: "now.units_count", WINDOW: "window.count"}
"""How many units stand in windows, by way."""

KINDS: Final = {KEEP: "now.cooling", WINDOW: "window.kind"}
"""Which choice says what kind of unit a way has."""

SIZES: Final = {KEEP: ("now.unit_capacity_w", "now.shr"), WINDOW: ("window.capacity_w", "window.shr")}
"""Capacity of one unit and its sensible share, by way."""

SIDES: Final = ("north", "east", "south", "west")
"""Sides that hold windows."""


def of_way(structure: Structure, block: Block, weather: Weather, position: int) -> Block:
    """Return a block with the need as one way finds it.

    Parameters
    ----------
    structure : Structure
        Kinds of machines.
    block : Block
        Rooms and their own need.
    weather : Weather
        The year's days.
    position : int
        The way, in the order of ALTERNATIVES.

    Returns
    -------
    block : Block
        The same for ways without units in windows.
    """
    if position not in COUNTS or structure.technologies[position] == "none":
        return block
    is_in = _months_in(structure, block, weather, position)[:, weather.month]
    found, gap = block.demand.emptied(), _gap(block, weather, position, is_in)
    _write_heating(block, found, gap)
    units = _hose(block, weather, position, is_in)
    running = _write_cooling(block, found, gap, units)
    limit_frac = amount(block.values, "use.humidity_limit_frac", len(is_in))
    cool_c = amount(block.values, "use.cooling_setpoint_c", len(is_in))
    limit = moist_air.humidity_ratio_at(cool_c, limit_frac, np.asarray(weather.pressure_pa))
    for hours, days in block.demand.spells(block.demand.drying):
        outdoors = weather.humidity_ratio[hours, None, days]
        wanted_w = drying_with_gap_w(block.demand.latent_w[hours, :, days], gap.on(days), outdoors, limit)
        if units:
            more = outdoors - limit[:, None]
            wanted_w = drying_with_hose_w(wanted_w, units, more, running[hours, :, days])
        found.latent_w[hours, :, days] = wanted_w
    return replace(block, demand=found, is_there=is_in)


def _write_heating(block: Block, found: Demand, gap: WindowGap) -> None:
    """Write the heating wanted with units in the windows."""
    demand, heat_c = block.demand, amount(block.values, "use.heating_setpoint_c", len(gap.air_w_per_k))
    for hours, days in demand.spells(demand.heating):
        need_w, at_c = demand.heat_w[hours, :, days], demand.dry_bulb_c(hours, days)
        found.heat_w[hours, :, days] = heating_with_gap_w(need_w, gap.on(days), at_c, heat_c)


def _write_cooling(block: Block, found: Demand, gap: WindowGap, units: Hose | None) -> FloatArray:
    """Write the cooling wanted with units in the windows; return the part of each hour that portable ones run."""
    demand, cool_c = block.demand, amount(block.values, "use.cooling_setpoint_c", len(gap.air_w_per_k))
    running = np.zeros(demand.cool_w.shape if units else 0)
    for hours, days in demand.spells(demand.cooling):
        need_w, at_c = demand.cool_w[hours, :, days], demand.dry_bulb_c(hours, days)
        wanted_w = cooling_with_gap_w(need_w, gap.on(days), at_c, cool_c)
        if units:
            warmer_k = at_c - cool_c[:, None]
            running[hours, :, days] = duty(wanted_w, units, warmer_k, days)
            wanted_w = cooling_with_hose_w(wanted_w, units, warmer_k, running[hours, :, days])
        found.cool_w[hours, :, days] = wanted_w
    return running


def with_dehumidifier(block: Block, machine: MachineRows) -> Block:
    """Return a block with the need a machine finds beside a dehumidifier, where drying is asked for.

    Parameters
    ----------
    block : Block
        Rooms and need.
    machine : MachineRows
        B machines.

    Returns
    -------
    block : Block
        More cooling, less heating in hours with moisture that the machine leaves.
    """
    demand, n_row = block.demand, machine.shr.size
    is_asked = is_option(block.values, "use.dry", "yes", n_row)
    if not is_asked.any():
        return block
    heat = heat_per_drying(amount(block.values, "now.dehumidifier_kg_per_kwh", n_row)) * is_asked
    share = (1.0 - machine.shr) / machine.shr * machine.can_cool
    found = replace(demand.emptied(), latent_w=demand.latent_w)
    for hours, days in demand.spells(demand.cooling):
        need_w, latent_w = demand.cool_w[hours, :, days], demand.latent_w[hours, :, days]
        found.cool_w[hours, :, days] = cooling_with_dehumidifier_w(need_w, latent_w, share, heat)
    for hours, days in demand.spells(demand.heating):
        need_w, latent_w = demand.heat_w[hours, :, days], demand.latent_w[hours, :, days]
        found.heat_w[hours, :, days] = heating_with_dehumidifier_w(need_w, latent_w, heat)
    return replace(block, demand=found)


def _months_in(structure: Structure, block: Block, weather: Weather, position: int) -> BoolArray:
    """Return in which months units stand in the windows, shape (B, 12)."""
    n_row = block.demand.cool_w.shape[1]
    season = months_in(kwh_by_month(block.demand.cool_wh, weather.month, weather.weight_d))
    return season | is_all_year(structure, block.values, position, n_row)[:, None]


def _is_kind(values: Values, position: int, kind: str, n_row: int) -> BoolArray:
    """Return in which rows a way's units are of a kind, shape (B,)."""
    return is_option(values, KINDS[position], kind, n_row)


def _hose(block: Block, weather: Weather, position: int, is_in: BoolArray) -> Hose | None:
    """Return the portable units of a way; None where no row has any."""
    values, n_row = block.values, len(is_in)
    is_portable = _is_kind(values, position, "portable", n_row)
    if not is_portable.any():
        return None
    count = amount(values, COUNTS[position], n_row) * is_portable
    capacity_w, share = (amount(values, path, n_row) for path in SIZES[position])
    blown = count * capacity_w / EXHAUST_AT_W * amount(values, "window.exhaust_m3_per_s", n_row)
    leaks = block.rooms.air_flow_m3_per_s.reshape(-1, n_row).sum(axis=0)
    return hose(unbalanced_m3_per_s(blown, leaks), count * capacity_w * share, is_in, float(weather.pressure_pa))


def _gap(block: Block, weather: Weather, position: int, is_in: BoolArray) -> WindowGap:
    """Return air and shade of the units, 0 on days without them."""
    values, n_row = block.values, len(is_in)
    count = amount(values, COUNTS[position], n_row)
    outdoor_c = block.demand.outdoor_c.mean(axis=0) + block.demand.warming_k[:, None]
    away_k = outdoor_c - amount(values, "use.cooling_setpoint_c", n_row)[:, None]
    wind = amount(values, "place.wind_m_per_s", n_row)[:, None]
    leakage_m2 = count * _leakage_m2(values, position, n_row)
    dry_air_kg_per_s = leakage_flow_m3_per_s(leakage_m2[:, None], away_k, wind) * is_in
    dry_air_kg_per_s *= AIR_DENSITY_KG_PER_M3 * weather.pressure_pa / STANDARD_PRESSURE_PA
    return WindowGap(
        air_w_per_k=dry_air_kg_per_s * AIR_HEAT_J_PER_KGK,
        vapour_w=dry_air_kg_per_s * VAPOUR_HEAT_J_PER_KG,
        shade_w=_shade_w(block, weather, count * _covered_m2(values, position, n_row)) * is_in,
    )


def _leakage_m2(values: Values, position: int, n_row: int) -> FloatArray:
    """Return the effective leakage area of one unit's panels; units in windows now count as loose, shape (B,).

    A sleeve in the wall is sealed for good and covered in winter: it counts as taped.
    """
    loose, taped = (amount(values, f"costs.window_leakage_{how}_m2", n_row) for how in ("loose", "taped"))
    is_taped = is_option(values, "window.seal", "taped", n_row) & (position == WINDOW)
    is_taped |= _is_kind(values, position, "through_wall", n_row)
    leakage: FloatArray = np.where(is_taped, taped, loose)
    return leakage


def _covered_m2(values: Values, position: int, n_row: int) -> FloatArray:
    """Return the glass that one unit covers, shape (B,): a hose's panel less, a sleeve in the wall none."""
    covered = np.where(
        _is_kind(values, position, "portable", n_row),
        amount(values, "window.hose_panel_m2", n_row),
        amount(values, "window.blocked_m2", n_row),
    )
    glass: FloatArray = covered * ~_is_kind(values, position, "through_wall", n_row)
    return glass


def _shade_w(block: Block, weather: Weather, covered_m2: FloatArray) -> FloatArray:
    """Return the sun that units keep out of the first room, mean over each day, shape (B, n_day).

    They cover their part of the room's glass, whichever side it is on.
    """
    n_row = len(covered_m2)
    glass_m2 = sum((amount(block.values, f"rooms[0].window_{side}_m2", n_row) for side in SIDES), np.zeros(n_row))
    share = np.divide(np.minimum(covered_m2, glass_m2), glass_m2, out=np.zeros(n_row), where=glass_m2 > 0.0)
    shade: FloatArray = np.einsum("rf,df->rd", block.rooms.window_aperture_m2[:n_row], weather.irradiance.mean(axis=0))
    shade *= share[:, None]
    return shade
