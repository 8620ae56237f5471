"""Plain objects for JSON: the keys that others rely on, and None where a measure does not exist."""

from datetime import date
from math import isfinite
from typing import Any, Final

from econ.evaluate.figures import FIGURES
from econ.evaluate.load_measures import LoadMeasures
from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.arrays import FloatArray
from econ.kernel.caution import Caution
from econ.report import money_plain, room_first, work_risk
from econ.report.look import Look
from econ.report.numbers import day_after, number
from econ.report.words.finding import figures
from econ.report.words.waiting import misses_summer, spare_d
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.verdict import Verdict

Document = dict[str, Any]

_WAY_FIGURES: Final = tuple(found for found in FIGURES if found.is_of_a_way and found.unit != "day")
"""Headline figures of each way; a date is told as one."""

_WAY_UNMET: Final = (
    "unmet_cooling_h",
    "unmet_heating_h",
    "unmet_cooling_kh",
    "unmet_moisture_kg_per_yr",
    "hours_above_humidity_limit_h",
    "waiting_h",
    "waiting_kh",
    "waiting_cdd_kd",
    "waiting_day_h",
    "waiting_day_kd",
    "waiting_day_usd",
    "interim_cost_usd",
    "until_service_usd",
)
_WAY_MEETS: Final = ("meets_cooling", "meets_heating", "meets_drying")
_ROOM_MONTHS: Final = ("monthly_cooling_sensible_kwh", "monthly_cooling_latent_kwh", "monthly_heating_kwh")
_ROOM_CHECKS: Final = ("hourly_cooling_w", "load_factor_cooling_w", "degree_day_heating_kwh", "moisture_share_frac")
_ROOM_LOADS: Final = (
    "design_cooling_sensible_w",
    "design_cooling_latent_w",
    "design_heating_w",
    "annual_cooling_sensible_kwh",
    "annual_cooling_latent_kwh",
    "annual_heating_kwh",
)


def compare_json(answer: Answer) -> Document:
    """Return the comparison as one object of plain values."""
    drawn = {"draws_used": answer.draws_used, "seed": answer.seed}
    at_work = work_risk.document(answer, load_tables())
    whole = compared(answer.result, answer.verdict, answer.decision_date)
    return whole | money_plain.document(answer) | drawn | at_work


def compared(result: Result, verdict: Verdict, decision: date) -> Document:
    """Return what a result and a verdict say, without the draws behind them."""
    return {
        "results_version": result.results_version,
        "base_case": result.base_case.value,
        "decision_date": decision.isoformat(),
        "study_period_yr": result.study_period_yr,
        "lowest_lcc": verdict.winner.value if verdict.winner else None,
        "runner_up": verdict.runner_up.value if verdict.runner_up else None,
        "verdict": verdict.kind,
        "first_cool_day_tries": result.first_cool_days.n_try if result.first_cool_days is not None else 0,
        "alternatives": [_way(result, verdict, position, decision) for position in range(len(result.alternatives))],
        "cautions": [_caution(caution, Look(decision, decision.year)) for caution in result.cautions],
    }


def _caution(caution: Caution, look: Look) -> Document:
    return {
        "code": caution.code,
        "severity": caution.severity.value,
        "message": caution.message,
        "action": caution.action,
        "figures": figures(caution, look) or None,
        "evidence": {name: number(value) for name, value, _ in caution.evidence},
        "party": caution.party,
        "source": caution.source,
        "alternatives": list(caution.alternatives),
    }


def _way(result: Result, verdict: Verdict, position: int, decision: date) -> Document:
    way = result.alternatives[position]
    return {
        "name": way.name.value,
        "standing": way.standing.value,
        "reasons": list(way.reasons),
        "fails": list(verdict.reasons[position]),
        "meets_need": bool(way.meets_need[0]),
        **{key: bool(getattr(way, key)[0]) for key in _WAY_MEETS},
        **{found.key: number(found.at(result, position)) for found in _WAY_FIGURES},
        "in_service_date": _service_date(way, decision),
        "return_by_date": _date(way.return_by_d, decision),
        "restocking_usd": number(way.restocking_usd[0]),
        **_dates(result, position, decision),
        **{key: number(getattr(way, key)[0]) for key in _WAY_UNMET},
        "probability_lowest_lcc_frac": number(verdict.chance[position]),
        **money_plain.way_money(result, position),
    }


def _service_date(way: AlternativeResult, decision: date) -> str | None:
    return _day(float(way.in_service_d[0]), decision) if way.in_service_exists else None


def _dates(result: Result, position: int, decision: date) -> Document:
    """Return the range of the first cool day, by when to decide for the summer, and whether it comes too late."""
    way, found = result.alternatives[position], result.first_cool_days
    nothing = [None, None]
    days = [found.low_d[position], found.high_d[position]] if found is not None else nothing
    costs = [found.interim_low_usd[position], found.interim_high_usd[position]] if found is not None else nothing
    return {
        "in_service_date_low": _day(days[0], decision),
        "in_service_date_high": _day(days[1], decision),
        "decide_by_date": _day(spare_d(result, way), decision),
        "misses_summer": misses_summer(result, way),
        "interim_cost_low_usd": None if costs[0] is None else number(costs[0]),
        "interim_cost_high_usd": None if costs[1] is None else number(costs[1]),
    }


def _day(after_d: float | None, decision: date) -> str | None:
    return day_after(decision, after_d).isoformat() if after_d is not None and isfinite(after_d) else None


def _date(after_d: FloatArray, decision: date) -> str | None:
    """Return the day of the likely row; None where there is none."""
    return day_after(decision, float(after_d[0])).isoformat() if isfinite(after_d[0]) else None


def loads_json(answer: Answer, measures: LoadMeasures | None = None) -> Document:
    """Return loads room by room, their sums, the climate and measures on the room as one object of plain values."""
    return loaded(answer.result) | (room_first.document(measures) if measures else {})


def _parts(labels: tuple[str, ...], amount_kwh: FloatArray) -> Document:
    return {label: number(amount) for label, amount in zip(labels, amount_kwh, strict=True)}


def loaded(result: Result) -> Document:
    """Return what a result says of loads; sums are over all rooms, served or not."""
    rooms, climate = result.rooms, result.climate
    listed = [
        {"name": name}
        | {key: number(getattr(rooms, key)[position]) for key in (*_ROOM_LOADS, "balance_point_c")}
        | {"is_served": bool(rooms.is_served[position]), "design_cooling_method": rooms.design_cooling_method[position]}
        | {key: number(getattr(rooms, key)[position]) for key in _ROOM_CHECKS}
        | {key: [number(month) for month in getattr(rooms, key)[position]] for key in _ROOM_MONTHS}
        | {"hand_check": _parts(rooms.hand_part_label, rooms.hand_part_kwh[position])}
        for position, name in enumerate(rooms.name)
    ]
    return {
        "results_version": result.results_version,
        "rooms": listed,
        "climate": {
            "station": climate.station,
            "hdd18_3": number(climate.hdd18_3_kd),
            "cdd18_3": number(climate.cdd18_3_kd),
            "heat_design_c": number(climate.heat_design_c),
            "cool_design_c": number(climate.cool_design_c),
            "basis": climate.basis,
            "period": climate.period,
            "estimated": list(climate.estimated),
            "notes": list(climate.notes),
        },
        **{key: number(getattr(rooms, key).sum()) for key in _ROOM_LOADS},
        **{key: [number(month) for month in getattr(rooms, key).sum(axis=0)] for key in _ROOM_MONTHS},
        "block": {
            "design_cooling_w": number(rooms.block.cooling_w),
            "design_cooling_latent_w": number(rooms.block.latent_w),
            "design_heating_w": number(rooms.block.heating_w),
            "design_cooling_method": rooms.block.method,
            "peak_hour": rooms.block.peak_hour,
        },
    }
