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
        False for own time only.
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
        is_cash=np.array([line.category != "own_time" for line in ordered], dtype=np.bool_),
        quantity=quantity,
        unit_price_usd=price,
        amount_usd=quantity * price,
        tasks=tuple(line.tasks for line in ordered),
    )


def first_cost_usd(items: LineItems) -> FloatArray:
    """Return the first cost with own time priced.

    Parameters
    ----------
    items : LineItems
        The lines.

    Returns
    -------
    first_cost_usd : ndarray, shape (B,)
        Sum of all amounts. [USD]
    """
    total: FloatArray = items.amount_usd.sum(axis=1)
    return total


def cash_first_cost_usd(items: LineItems) -> FloatArray:
    """Return the money that leaves the pocket.

    Parameters
    ----------
    items : LineItems
        The lines.

    Returns
    -------
    cash_usd : ndarray, shape (B,)
        Sum of the amounts that are cash. [USD]
    """
    total: FloatArray = items.amount_usd[:, items.is_cash].sum(axis=1)
    return total


def cash_before_service_usd(items: LineItems) -> FloatArray:
    """Return the most money that is out before it works: incentives come after that.

    Parameters
    ----------
    items : LineItems
        The lines.

    Returns
    -------
    cash_usd : ndarray, shape (B,)
        Sum of the amounts that are cash, incentives left out. [USD]
    """
    is_late = np.array([category == "incentive" for category in items.category], dtype=np.bool_)
    total: FloatArray = items.amount_usd[:, items.is_cash & ~is_late].sum(axis=1)
    return total


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
