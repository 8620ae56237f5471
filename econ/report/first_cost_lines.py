"""First cost line by line: quantity, price, low, likely and high amount, source, and the tasks that can move a line."""

from typing import Any, Final

import numpy as np

from econ.evaluate.result import Result
from econ.kernel.arrays import FloatArray
from econ.uncertainty.drawn import Drawn

Document = dict[str, Any]

LEVELS: Final = (0.05, 0.95)
"""Shares of the draws that lie below a line's low and its high."""


def ranges_usd(drawn: Drawn | None, place: int) -> FloatArray | None:
    """Return low and high of each line of a way over the draws, shape (2, L); None where nothing was drawn. [USD]"""
    if drawn is None:
        return None
    levels: FloatArray = np.quantile(drawn.line_usd[place], LEVELS, axis=0)
    return levels


def document(result: Result, place: int, drawn: Drawn | None) -> list[Document]:
    """Return every line that costs or saves something as plain values; low and high are null without draws.

    Parameters
    ----------
    result : Result
        Likely row first.
    place : int
        Place of the way in ALTERNATIVES.
    drawn : Drawn or None
        The same at draws.
    """
    items, ranges = result.alternatives[place].line_items, ranges_usd(drawn, place)
    shown = [at for at in range(len(items.key)) if items.amount_usd[0, at] != 0.0]
    return [
        {
            "key": items.key[at],
            "label": items.label[at],
            "category": items.category[at],
            "party": items.party[at],
            "quantity": float(items.quantity[0, at]),
            "unit": items.unit[at],
            "unit_price_usd": float(items.unit_price_usd[0, at]),
            "amount_usd": {
                "low": None if ranges is None else float(ranges[0, at]),
                "likely": float(items.amount_usd[0, at]),
                "high": None if ranges is None else float(ranges[1, at]),
            },
            "is_cash": bool(items.is_cash[at]),
            "source": items.source[at],
            "tasks": list(items.tasks[at]) if items.tasks else [],
        }
        for at in shown
    ]
