"""Lifetime cost by piece: what each way to go costs over the years, in today's money."""

from typing import Final

import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES
from econ.report.look import Look
from econ.report.numbers import lifetime_money, money, percent
from econ.report.pictures.frame import Columns
from econ.report.pictures.stack import Bar, Piece, stacked
from econ.report.style import NAMES

PIECE_WORDS: Final[dict[str, str]] = {
    "first_cost": "first cost",
    "energy": "energy",
    "upkeep": "upkeep",
    "repair": "repairs",
    "replacement": "replacement",
    "disposal": "disposal",
    "residual": "worth at the end",
    "financing": "borrowed money",
    "letting": "rent and taxes",
}
"""Pieces of a lifetime cost in the order of the bar, in the words of the screen."""


def _amounts(result: Result, position: int) -> dict[str, float]:
    return {key: float(result.component_usd[key][position, 0]) for key in PIECE_WORDS if key in result.component_usd}


def figure(result: Result, look: Look) -> go.Figure:
    """Return each alternative's lifetime cost as a bar; what is left at the end hangs to the left of zero."""
    bars = [
        Bar(
            name,
            lifetime_money(float(result.measures.lcc_usd[position, 0])),
            tuple(
                Piece(PIECE_WORDS[key], amount) for key, amount in _amounts(result, position).items() if amount != 0.0
            ),
        )
        for position, name in enumerate(ALTERNATIVES)
    ]
    return stacked(bars, look, f"Over {result.study_period_yr} years, today's dollars (outline: taken off)")


def statement(result: Result, look: Look) -> str:  # noqa: ARG001 - every statement takes the same two
    """Return the sentence above the picture: the largest share of energy in a lifetime cost, and of what."""
    shares = {
        name: _amounts(result, position).get("energy", 0.0) / float(result.measures.lcc_usd[position, 0])
        for position, name in enumerate(ALTERNATIVES)
        if float(result.measures.lcc_usd[position, 0]) > 0.0
    }
    if not shares:
        return f"Nothing here costs anything over {result.study_period_yr} years."
    most, least = max(shares, key=lambda name: shares[name]), min(shares, key=lambda name: shares[name])
    return (
        f"Energy is {percent(shares[most])} of the lifetime cost of “{NAMES[most]}” "
        f"and {percent(shares[least])} of that of “{NAMES[least]}”."
    )


def table(result: Result, look: Look) -> Columns:  # noqa: ARG001 - every table takes the same two
    """Return lifetime cost by piece and alternative, to the dollar."""
    amounts = [_amounts(result, position) for position in range(len(ALTERNATIVES))]
    keys = [key for key in amounts[0] if any(each[key] for each in amounts)]
    columns: Columns = {"Piece": [PIECE_WORDS[key] for key in keys] + ["lifetime cost"]}
    for position, name in enumerate(ALTERNATIVES):
        cells = [money(amounts[position][key]) for key in keys]
        columns[NAMES[name]] = [*cells, money(float(result.measures.lcc_usd[position, 0]))]
    return columns
