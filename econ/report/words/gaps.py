"""What an alternative does not do, in words."""

from typing import Final

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, Alternative, Standing
from econ.report.look import Look
from econ.report.numbers import Quantity, first_cost_money, hours, listed, measure
from econ.report.words.standing import asks_heat, is_cooling_only, standing_words
from econ.report.words.waiting import misses_summer, summer_text
from econ.report.words.warmth import NOTICED_H, warm_text

NOTICED_KG: Final = 1.0
"""kg of water a year; moisture left below this is not told (assumption)."""


def shortcomings(result: Result, name: Alternative, look: Look) -> tuple[str, ...]:
    """Return all that an alternative does not do, in the fixed order: allowed, does the job, in time, within cash."""
    way = result.alternatives[ALTERNATIVES.index(name)]
    found: list[str] = []
    if way.standing in {Standing.NOT_ALLOWED, Standing.UNKNOWN}:
        found.append(" ".join((f"{standing_words(way)}.", *_why(way))))
    found += _service_gaps(result, way, look)
    if misses_summer(result, way):
        day = look.day(float(way.in_service_d[0]))
        found.append(f"Cool from {day} only: {summer_text(result, way, look)}.")
    if not bool(way.is_within_cash[0]):
        found.append(
            f"Takes {first_cost_money(float(way.cash_first_cost_usd[0]))} in cash, more than you said you can spend."
        )
    return tuple(found)


def _why(way: AlternativeResult) -> tuple[str, ...]:
    """Return the gravest reason why window units are shut; those of the others stand on the work page."""
    return way.reasons[:1] if way.name == Alternative.WINDOW_UNITS else ()


def _service_gaps(result: Result, way: AlternativeResult, look: Look) -> list[str]:
    found = []
    cold, wet = float(way.unmet_heating_h[0]), float(way.unmet_moisture_kg_per_yr[0])
    if warm := warm_text(result, way, look):
        found.append(warm)
    if asks_heat(result) and is_cooling_only(way):
        found.append("Cools only: all heat still comes from what you have.")
    elif asks_heat(result) and cold >= NOTICED_H:
        found.append(f"In about {hours(cold)} of the coldest weather a year, other heat must help.")
    if wet >= NOTICED_KG:
        found.append(f"Leaves about {measure(wet, Quantity.WATER, look.units)} of moisture a year for a dehumidifier.")
    if way.name in {Alternative.SELF_INSTALL, Alternative.CONTRACTED_INSTALL}:
        found += closed_door_lines(result)
    return found


def shortcoming(result: Result, name: Alternative, look: Look) -> str:
    """Return the one line on a card: the first thing that an alternative does not do."""
    found = shortcomings(result, name, look)
    return found[0] if found else "Leaves nothing out that you asked for."


def closed_door_lines(result: Result) -> list[str]:
    """Return one line for the rooms that a closed door cuts off; none where all share the air."""
    loads = result.rooms
    closed = [name for name, served in zip(loads.name, loads.is_served, strict=True) if not served]
    if not closed:
        return []
    verb = "stays warm: its door is" if len(closed) == 1 else "stay warm: their doors are"
    return [f"{listed(closed)} {verb} usually closed, so one indoor unit can't be counted on there."]
