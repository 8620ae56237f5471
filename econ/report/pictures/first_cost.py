"""First cost: what leaves the pocket before the room is cool, piece by piece, own time in outline."""

from typing import Final

import plotly.graph_objects as go

from econ.evaluate.result import AlternativeResult, Result
from econ.report.look import Look
from econ.report.numbers import first_cost_money, hours, plain_number
from econ.report.pictures.frame import Columns
from econ.report.pictures.stack import Bar, Piece, stacked
from econ.report.style import NAMES

CATEGORY_WORDS: Final[dict[str, str]] = {
    "equipment": "equipment",
    "materials": "materials",
    "measures": "the room itself",
    "tools": "tools",
    "labour": "paid work",
    "permit": "permit",
    "tax": "sales tax",
    "disposal": "removal",
    "allowance": "what may go wrong",
    "interim": "cooling meanwhile",
    "own_time": "own time",
    "incentive": "incentive",
}
"""Categories of first-cost lines in the order of the bar, in the words of the screen."""


def category_usd(way: AlternativeResult) -> dict[str, float]:
    """Return the likely first cost by category, in the order of the bar; a category nobody knows comes last."""
    items = way.line_items
    order = dict.fromkeys([*CATEGORY_WORDS, *items.category], 0.0)
    for category, amount in zip(items.category, items.amount_usd[0], strict=True):
        order[category] += float(amount)
    return {category: amount for category, amount in order.items() if amount != 0.0}


def _bar(way: AlternativeResult) -> Bar:
    pieces = tuple(
        Piece(CATEGORY_WORDS.get(category, category), amount, category != "own_time")
        for category, amount in category_usd(way).items()
    )
    cash, own = float(way.cash_first_cost_usd[0]), float(way.own_hours_h[0])
    return Bar(
        way.name, f"{first_cost_money(cash)} cash" + (f" + {plain_number(own)} h own time" if own > 0.0 else ""), pieces
    )


def figure(result: Result, look: Look) -> go.Figure:
    """Return each alternative's first cost as a bar: cash filled, own time in outline."""
    bars = [_bar(way) for way in result.alternatives]
    return stacked(bars, look, "First cost, today's dollars (outline: own time, money back)")


def statement(result: Result, look: Look) -> str:  # noqa: ARG001 - every statement takes the same two
    """Return the sentence above the picture: most and least cash before the room is cool."""
    buying = [way for way in result.alternatives if way.in_service_exists]
    least = min(buying, key=lambda way: float(way.cash_first_cost_usd[0]))
    most = max(buying, key=lambda way: float(way.cash_first_cost_usd[0]))
    low, high = (first_cost_money(float(way.cash_first_cost_usd[0])) for way in (least, most))
    return (
        f"Of the ways that bring something new, “{NAMES[least.name]}” takes the least cash, {low}, "
        f"and “{NAMES[most.name]}” the most, {high}."
    )


def table(result: Result, look: Look) -> Columns:  # noqa: ARG001 - every table takes the same two
    """Return first cost by category and alternative, cash and own time apart."""
    amounts = {way.name: category_usd(way) for way in result.alternatives}
    used = [key for key in CATEGORY_WORDS if any(key in amount for amount in amounts.values())]
    columns: Columns = {"Piece": [CATEGORY_WORDS[key] for key in used] + ["cash in all", "own hours"]}
    for way in result.alternatives:
        cells = [first_cost_money(amounts[way.name].get(key, 0.0)) for key in used]
        totals = [first_cost_money(float(way.cash_first_cost_usd[0])), hours(float(way.own_hours_h[0]))]
        columns[NAMES[way.name]] = cells + totals
    return columns
