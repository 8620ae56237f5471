"""What an edit moved in the totals of a way: cash, own hours and the first cool day."""

from collections.abc import Callable
from dataclasses import dataclass
from math import isfinite

from econ.evaluate.result import AlternativeResult
from econ.report.numbers import MINUS, money, plural, tenths

_CASH_STEP_USD = 10.0
"""USD; first costs are told to the nearest ten, so what moved is the difference of what was told."""


@dataclass(frozen=True, slots=True)
class Totals:
    """What the line at the edge of the board says, as rounded there.

    Attributes
    ----------
    cash_usd : float
        Cash first cost. [USD]
    own_h : float
        Own hours. [hour]
    cool_d : float
        Day of service after the decision; NaN where there is none. [day]
    """

    cash_usd: float
    own_h: float
    cool_d: float


def totals(way: AlternativeResult) -> Totals:
    """Return the totals of a way, rounded as they are told."""
    cash = round(float(way.cash_first_cost_usd[0]) / _CASH_STEP_USD) * _CASH_STEP_USD
    day = float(way.in_service_d[0])
    return Totals(cash, round(float(way.own_hours_h[0]), 1), float(int(day)) if isfinite(day) else day)


def cash_mark(before: Totals, after: Totals) -> str:
    """Return by how much the cash moved, such as "+$120"; empty where it did not."""
    return _signed(after.cash_usd - before.cash_usd, money)


def hours_mark(before: Totals, after: Totals) -> str:
    """Return by how much the own hours moved."""
    return _signed(round(after.own_h - before.own_h, 1), lambda hours: f"{tenths(hours)} h")


def day_mark(before: Totals, after: Totals) -> str:
    """Return by how many days the first cool day moved."""
    later = after.cool_d - before.cool_d
    if not isfinite(later) or later == 0.0:
        return ""
    count = int(abs(later))
    return f"{count} {plural('day', count)} {'later' if later > 0.0 else 'earlier'}"


def moved_sentence(before: Totals, after: Totals) -> str:
    """Return what the last change moved; says so where it moved nothing here."""
    marks = (cash_mark(before, after), hours_mark(before, after), day_mark(before, after))
    told = [f"{mark}{noun}" for mark, noun in zip(marks, (" of cash", " of your time", ""), strict=True) if mark]
    return f"Your last change: {', '.join(told)}." if told else "Your last change moved none of the three."


def _signed(value: float, told: Callable[[float], str]) -> str:
    if value == 0.0:
        return ""
    text = told(abs(value))
    return f"{'+' if value > 0.0 else MINUS}{text}"
