"""Each way's outcome: does it do the job, in time, within the cash, and what does it take."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN, code, option_at
from econ.equipment.machine import MachineRows
from econ.equipment.sizing import cooling_capacity_w, heating_capacity_w, least_cooling_w
from econ.evaluate.design import DesignRows
from econ.evaluate.physics import Physics, is_cooled_enough
from econ.evaluate.result import AlternativeResult, Capability
from econ.evaluate.shortage import taken
from econ.evaluate.structure import Structure
from econ.evaluate.waiting import Waiting
from econ.evaluate.wiring.caution import CautionResults
from econ.evaluate.wiring.energy import USES, EnergyUse
from econ.evaluate.wiring.funding import down_payment_usd
from econ.evaluate.wiring.installation import Installation
from econ.evaluate.wiring.installation_return import kit_return
from econ.installation.first_cost import cash_first_cost_usd, first_cost_usd
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import BTU_PER_WH, MONTH_DAYS
from econ.tables.loaders import Tables

UNIT_WORDS: Final = {
    "window": "window unit",
    "narrow": "narrow window unit",
    "through_wall": "wall unit",
    "portable": "portable unit",
    NOT_KNOWN: "window unit",
}
"""What one new unit is called, by kind."""

CAPABILITY_FROM_C, CAPABILITY_TO_C, CAPABILITY_STEP_C = -35.0, 50.0, 1.0
"""Outdoor temperatures of the capacity picture. [degC]"""


_OF_ENERGY = (
    "energy_cost_usd_per_yr",
    "electricity_kwh",
    "fuel_kwh",
    "emitted_kg_co2e_per_yr",
    "make_up_heat_kwh",
    "unmet_cooling_kwh_per_yr",
    "unmet_heating_kwh_per_yr",
    "unmet_cooling_h",
    "unmet_heating_h",
    "unmet_cooling_kh",
    "hours_above_humidity_limit_h",
    "unmet_moisture_kg_per_yr",
)
"""What a way's outcome takes from its energy as it is."""


@dataclass(frozen=True, eq=False)
class Parts:
    """What the outcome is made of.

    Attributes
    ----------
    structure : Structure
        What picks formulas.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : Tables
        Stations.
    n_row : int
        B.
    hours : Physics
        Need and energy.
    design : DesignRows
        Design loads.
    ways : tuple of Installation
        Tasks, lines and dates of each way.
    waiting : Waiting
        What waiting for each means.
    """

    structure: Structure
    values: Mapping[str, FloatArray]
    tables: Tables
    n_row: int
    hours: Physics
    design: DesignRows
    ways: tuple[Installation, ...]
    waiting: Waiting

    @cached_property
    def is_cooling_asked(self) -> BoolArray:
        """Whether cooling is asked for, shape (B,)."""
        return np.asarray(self.number("use.cool") != code("use.cool", "no"))

    @cached_property
    def as_made_up(self) -> BoolArray:
        """What no way leaves undone, as a declared source makes up for it: True for every row, shape (B,)."""
        return np.ones(self.n_row, dtype=np.bool_)

    @cached_property
    def season_half_d(self) -> FloatArray:
        """Days from the decision until the share of the coming hot season that makes a way late, shape (B,). [day]"""
        month = np.repeat(np.arange(12), np.array(MONTH_DAYS, dtype=np.int64))
        day = (int(self.number("place.decision_doy")[0]) + np.arange(len(month))) % len(month)
        passed_kd = np.cumsum((self.waiting.by_month_kd / np.array(MONTH_DAYS))[:, month[day]], axis=1)
        limit = self.number("rules.season_missed_frac") * passed_kd[:, -1]
        half: FloatArray = np.argmax(passed_kd >= limit[:, None], axis=1).astype(np.float64)
        return half

    def number(self, path: str) -> FloatArray:
        """Return one number a row, shape (B,)."""
        return np.broadcast_to(self.values[path], (self.n_row,))


def alternative_results(parts: Parts) -> tuple[AlternativeResult, ...]:
    """Return the outcome of every way, in the order of ALTERNATIVES.

    Parameters
    ----------
    parts : Parts
        Need, energy, tasks and numbers.
    """
    first = np.zeros(1, dtype=np.int64)
    units = [taken(unit, first) for unit in parts.hours.units]
    return tuple(
        _outcome(parts, way, use, _capability(parts, units[at], at))
        for at, (way, use) in enumerate(zip(parts.ways, parts.hours.uses, strict=True))
    )


def _outcome(parts: Parts, way: Installation, use: EnergyUse, capability: Capability) -> AlternativeResult:
    at, cash = parts.ways.index(way), cash_first_cost_usd(way.line_items)
    wait = np.nan_to_num(way.schedule.in_service_d, nan=0.0)
    meets_cooling = is_cooled_enough(parts.values, parts.hours.need, use)
    return AlternativeResult(
        name=ALTERNATIVES[at],
        standing=way.standing,
        reasons=way.reasons,
        meets_cooling=meets_cooling,
        meets_heating=parts.as_made_up,
        meets_drying=parts.as_made_up,
        meets_need=meets_cooling,
        is_in_time=(wait <= parts.season_half_d) | ~parts.is_cooling_asked,
        is_within_cash=_is_within_cash(parts, down_payment_usd(parts.values, at, cash)),
        line_items=way.line_items,
        first_cost_usd=first_cost_usd(way.line_items),
        cash_first_cost_usd=cash,
        own_hours_h=way.own_hours_h,
        upkeep_own_h_per_yr=way.upkeep_own_h_per_yr,
        **{name: getattr(use, name) for name in _OF_ENERGY},
        electricity_by_use_kwh=use.by_use_kwh[0],
        use_label=USES,
        schedule=way.schedule,
        in_service_d=way.schedule.in_service_d,
        in_service_exists=at != KEEP,
        **parts.waiting.of(at),
        spare_d=np.where(parts.is_cooling_asked, parts.season_half_d - way.schedule.in_service_d, np.nan),
        kit_return=kit_return(parts.values, way, parts.n_row),
        warranty=way.warranty,
        doubts=way.doubts,
        capability=capability,
    )


def caution_results(parts: Parts, alternatives: Sequence[AlternativeResult]) -> CautionResults:
    """Return what the rules need of the results.

    Parameters
    ----------
    parts : Parts
        Design loads and numbers.
    alternatives : sequence of AlternativeResult
        Outcomes, in the order of ALTERNATIVES.
    """
    units = parts.hours.units
    hot, cold = parts.design.cool_design_c[:, None], parts.design.heat_design_c[:, None]
    total = (parts.hours.need.cool_kwh + parts.hours.need.latent_kwh).sum(axis=1)
    latent = parts.hours.need.latent_kwh.sum(axis=1)
    return CautionResults(
        design_cool_w=parts.design.cooling_w,
        design_heat_w=parts.design.heating_w,
        cool_given_w=np.stack([cooling_capacity_w(unit, hot)[:, 0] for unit in units]),
        heat_given_w=np.stack([heating_capacity_w(unit, cold)[:, 0] for unit in units]),
        least_given_w=np.stack(
            [least_cooling_w(unit, parts.hours.need.mean_cooling_c[:, None])[:, 0] for unit in units]
        ),
        mean_cool_w=parts.hours.need.mean_cooling_w,
        below_least_h=parts.hours.below_least_h,
        heat_design_c=parts.design.heat_design_c,
        heat_short_h=np.stack([each.unmet_heating_h for each in alternatives]),
        cool_short_h=np.stack([each.unmet_cooling_h for each in alternatives]),
        in_service_d=np.stack([each.in_service_d for each in alternatives]),
        season_end_d=np.where(parts.is_cooling_asked, parts.season_half_d, np.nan),
        kit_return=alternatives[SELF].kit_return,
        moisture_share_frac=np.divide(latent, total, out=np.full(parts.n_row, np.nan), where=total > 0.0),
    )


def _is_within_cash(parts: Parts, cash_usd: FloatArray) -> BoolArray:
    if "money.cash_limit_usd" not in parts.values:
        return np.ones(parts.n_row, dtype=np.bool_)
    is_within: BoolArray = cash_usd <= parts.number("money.cash_limit_usd")
    return is_within


def _capability(parts: Parts, machine: MachineRows, at: int) -> Capability:
    outdoor_c = np.arange(CAPABILITY_FROM_C, CAPABILITY_TO_C + CAPABILITY_STEP_C, CAPABILITY_STEP_C)
    cool, heat = cooling_capacity_w(machine, outdoor_c)[0], heating_capacity_w(machine, outdoor_c)[0]
    nominal = _nominal_w(parts, at) if machine.can_cool[0] else 0.0
    return Capability(
        at_c=outdoor_c,
        cool_w=np.where(machine.can_cool[0] & (cool > 0.0), cool, np.nan),
        heat_w=np.where(heat > 0.0, heat, np.nan),
        label=_label(parts, at) if nominal else "nothing",
        nominal_w=nominal,
        volts=_volts(parts, at) if nominal else 0.0,
    )


def _first(parts: Parts, path: str) -> float:
    return float(parts.number(path)[0])


def _nominal_w(parts: Parts, at: int) -> float:
    if at == KEEP:
        return _first(parts, "now.unit_capacity_w") * _first(parts, "now.units_count")
    if at == WINDOW:
        return _first(parts, "window.capacity_w") * _first(parts, "window.count")
    has_own = at == HIRED and "hired.capacity_w" in parts.values
    sets = _first(parts, "hired.count" if at == HIRED else "kit.count")
    return sets * _first(parts, "hired.capacity_w" if has_own else "kit.capacity_w")


def _volts(parts: Parts, at: int) -> float:
    if at in (KEEP, WINDOW):
        return _first(parts, "window.supply_v")
    return 120.0 if _first(parts, "kit.volts") == code("kit.volts", "120") else 240.0


def _label(parts: Parts, at: int) -> str:
    """Return size and kind in words."""
    nominal = round(_nominal_w(parts, at) * BTU_PER_WH / 100.0) * 100
    if at in (KEEP, WINDOW):
        count = round(_first(parts, "now.units_count" if at == KEEP else "window.count"))
        kind = "present unit" if at == KEEP else UNIT_WORDS[option_at("window.kind", _first(parts, "window.kind"))]
        return (
            f"{count} {kind}{'s' if count > 1 else ''}, {nominal:,} Btu/h in all"
            if count > 1
            else f"one {kind}, {nominal:,} Btu/h"
        )
    grade = (
        "kit.grade"
        if at == SELF or _first(parts, "hired.grade") == code("hired.grade", "same_as_kit")
        else "hired.grade"
    )
    prefix = "hired" if at == HIRED else "kit"
    sets, heads = round(_first(parts, f"{prefix}.count")), round(_first(parts, f"{prefix}.heads"))
    several = f"{sets} sets, " if sets > 1 else ""
    each = f", {heads} indoor units each" if heads > 1 else ""
    return f"{several}{nominal:,} Btu/h{' in all' if several else ''}, {_grade_words(parts, grade)}{each}"


def _grade_words(parts: Parts, path: str) -> str:
    return f"{option_at(path, _first(parts, path)).replace('_', '-')} class"
