"""First cost: line items, each a quantity times a unit price, cash and own time apart."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import UnknownChoiceError

CATEGORIES: Final = (
    "equipment",
    "materials",
    "measures",
    "tools",
    "labour",
    "permit",
    "tax",
    "disposal",
    "allowance",
    "interim",
    "own_time",
    "incentive",
)
"""What a line may be for, in the order of printing."""

LATER: Final = "incentive"
"""Comes back after it works: no part of a first cost, but of what is counted at the start of a lifetime's cost."""

NO_CASH: Final = frozenset({"own_time", LATER})


@dataclass(frozen=True, slots=True, eq=False)
class LineItems:
    """First cost of one alternative, line by line.

    Attributes
    ----------
    key : tuple of str, length L
        Stable name of each line.
    label : tuple of str, length L
        What the line is, in plain words.
    category : tuple of str, length L
        One of `CATEGORIES`.
    party : tuple of str, length L
        Who is paid or who gives the hours.
    unit : tuple of str, length L
        Unit of the quantity.
    source : tuple of str, length L
        Where the unit price comes from, or the word "assumption".
    is_cash : ndarray, shape (L,)
        Whether it is money out before it works: not own time, and not an incentive, which comes afterwards.
    quantity : ndarray, shape (B, L)
        How many units. [any]
    unit_price_usd : ndarray, shape (B, L)
        Price of one unit; incentives negative. [USD]
    amount_usd : ndarray, shape (B, L)
        Quantity times unit price. [USD]
    tasks : tuple of tuple of str, length L
        Tasks whose change of hands can move the line; no other task does.
    """

    key: tuple[str, ...]
    label: tuple[str, ...]
    category: tuple[str, ...]
    party: tuple[str, ...]
    unit: tuple[str, ...]
    source: tuple[str, ...]
    is_cash: BoolArray
    quantity: FloatArray
    unit_price_usd: FloatArray
    amount_usd: FloatArray
    tasks: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Line:
    """One line before it is put in the table.

    Attributes
    ----------
    key, label, category, party, unit, source : str
        As in `LineItems`.
    quantity : ndarray, shape () or (B,)
        How many units. [any]
    unit_price_usd : ndarray, shape () or (B,)
        Price of one. [USD]
    tasks : tuple of str
        Tasks whose change of hands can move it.
    """

    key: str
    label: str
    category: str
    party: str
    unit: str
    source: str
    quantity: FloatArray
    unit_price_usd: FloatArray
    tasks: tuple[str, ...] = ()


def line_items(lines: Sequence[Line], n_row: int) -> LineItems:
    """Return lines as one table, in the order of the categories.

    Parameters
    ----------
    lines : sequence of Line, length L
        In the order in which lines of a category are printed.
    n_row : int
        Decision rows. [any]

    Returns
    -------
    items : LineItems
        Every amount is its quantity times its unit price.

    Raises
    ------
    UnknownChoiceError
        If a category is not among CATEGORIES.
    """
    for line in lines:
        if line.category not in CATEGORIES:
            raise UnknownChoiceError("category of a cost line", line.category, CATEGORIES[:3])
    ordered = sorted(lines, key=lambda line: CATEGORIES.index(line.category))
    quantity, price = np.empty((n_row, len(ordered))), np.empty((n_row, len(ordered)))
    for position, line in enumerate(ordered):
        quantity[:, position], price[:, position] = line.quantity, line.unit_price_usd
    return LineItems(
        key=tuple(line.key for line in ordered),
        label=tuple(line.label for line in ordered),
        category=tuple(line.category for line in ordered),
        party=tuple(line.party for line in ordered),
        unit=tuple(line.unit for line in ordered),
        source=tuple(line.source for line in ordered),
        is_cash=np.array([line.category not in NO_CASH for line in ordered], dtype=np.bool_),
        quantity=quantity,
        unit_price_usd=price,
        amount_usd=quantity * price,
        tasks=tuple(line.tasks for line in ordered),
    )


def first_cost_usd(items: LineItems) -> FloatArray:
    """Return the cash first cost with own time priced on top.

    Parameters
    ----------
    items : LineItems
        The lines.

    Returns
    -------
    first_cost_usd : ndarray, shape (B,)
        Sum of all amounts but incentives, which come after it works. [USD]
    """
    total: FloatArray = items.amount_usd.sum(axis=1) + incentive_usd(items)
    return total


def cash_first_cost_usd(items: LineItems) -> FloatArray:
    """Return the most money that is out before it works.

    Parameters
    ----------
    items : LineItems
        The lines.

    Returns
    -------
    cash_usd : ndarray, shape (B,)
        Sum of the amounts that are cash, tools at their whole price. [USD]
    """
    total: FloatArray = items.amount_usd[:, items.is_cash].sum(axis=1)
    return total


def incentive_usd(items: LineItems) -> FloatArray:
    """Return what comes back after it works, amount times chance.

    Parameters
    ----------
    items : LineItems
        The lines.

    Returns
    -------
    incentive_usd : ndarray, shape (B,)
        Nothing or more. [USD]
    """
    is_later = np.array([category == LATER for category in items.category], dtype=np.bool_)
    back: FloatArray = 0.0 - items.amount_usd[:, is_later].sum(axis=1)
    return back


def amount_of_usd(lines: Sequence[Line], categories: Sequence[str], n_row: int) -> FloatArray:
    """Return what the lines of some categories come to.

    Parameters
    ----------
    lines : sequence of Line
        The lines.
    categories : sequence of str
        Categories that count.
    n_row : int
        Decision rows. [any]

    Returns
    -------
    amount_usd : ndarray, shape (B,)
        Sum of quantity times unit price. [USD]
    """
    amount = np.zeros(n_row)
    for line in lines:
        if line.category in categories:
            amount = amount + line.quantity * line.unit_price_usd
    return amount


def tasks_of(lines: Sequence[Line], categories: Sequence[str] = CATEGORIES) -> tuple[str, ...]:
    """Return the tasks that lines of some categories list, each once, in the order met.

    Parameters
    ----------
    lines : sequence of Line
        The lines.
    categories : sequence of str
        Categories that count.
    """
    return tuple(dict.fromkeys(task for line in lines if line.category in categories for task in line.tasks))
