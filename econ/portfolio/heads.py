"""One outdoor unit for all rooms of a flat against one for each: what either takes, from the same line items."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd
from econ.kernel.alternative import HIRED
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.plan import Evaluated
from econ.portfolio.values import BuildingRows, groups, row_values
from econ.tables.loaders import Tables
from econ.tables.tasks import installation_tables

FEWEST: Final = 2
MOST: Final = 5
"""Indoor units on one outdoor unit. Assumption: sets of two to five are common, from memory."""


@dataclass(frozen=True, slots=True, eq=False)
class SharedOutdoor:
    """Flats of two to five rooms that may be hired out, F of them.

    Attributes
    ----------
    flat : ndarray of int, shape (F,)
        Positions among the flats. [dimensionless]
    room_count : ndarray of int, shape (F,)
        Rooms that get an indoor unit. [dimensionless]
    single_usd : ndarray, shape (F,)
        A set for each room, from our own line items, permits and travel paid once. [USD]
    shared_usd : ndarray, shape (F,)
        One outdoor unit with an indoor unit in each room, from the same items. [USD]
    size_kbtu_per_h : ndarray, shape (F,)
        Size of that outdoor unit: the smallest that is as large as the single ones together. [kBtu/hour]
    """

    flat: IntArray
    room_count: IntArray
    single_usd: FloatArray
    shared_usd: FloatArray
    size_kbtu_per_h: FloatArray


def shared_outdoor(rooms: Evaluated, tables: Tables) -> SharedOutdoor:
    """Return, flat by flat, one outdoor unit against several; a quote is left aside, as it is for one of the two.

    Parameters
    ----------
    rooms : Evaluated
        The rooms.
    tables : Tables
        Sizes and prices of sets, and the lines that are paid once.
    """
    numbers = replace(rooms.rows, kit=rooms.found.kit, window=rooms.found.window)
    served = rooms.options.is_open[:, HIRED] & ~rooms.options.must_not
    count = np.bincount(rooms.options.flat[served], minlength=len(rooms.where.flat_name))
    sizes, prices = _sets(rooms, tables)
    total = np.zeros(len(count))
    own = np.array([float(size) for size in rooms.rows.lines.kit])[numbers.kit]
    np.add.at(total, rooms.options.flat[served], own[served])
    flats = np.flatnonzero((count >= FEWEST) & (count <= MOST) & (total <= sizes[-1]))
    first = _first_rooms(rooms.options.flat, served, flats)
    at = np.searchsorted(sizes, total[flats])
    alone, once = np.zeros(len(served)), np.zeros(len(served))
    alone[served], once[served] = _cash_usd(numbers, np.flatnonzero(served), tables, {})
    single = np.zeros(len(count))
    np.add.at(single, rooms.options.flat[served], (alone - once)[served])
    changed = {"hired.heads": count[flats].astype(np.float64), "hired.equipment_usd": prices[at]}
    shared, _ = _cash_usd(numbers, first, tables, changed)
    return SharedOutdoor(flats, count[flats], single[flats] + once[first], shared, sizes[at])


def _sets(rooms: Evaluated, tables: Tables) -> tuple[FloatArray, FloatArray]:
    """Return the contractor's sizes of the grade asked for, ascending, and their prices. [kBtu/hour] [USD]"""
    draft = rooms.rows.made.drafts[0]
    grade = draft.taken("hired.grade")
    grade = draft.taken("kit.grade") if grade == "same_as_kit" else grade
    sizes = tables.ductless_sizes("trade", grade)
    prices = [tables.ductless("trade", size, grade).spread("price_usd").likely for size in sizes]
    return np.array(sizes, dtype=np.float64), np.array(prices)


def _first_rooms(flat: IntArray, served: BoolArray, flats: IntArray) -> IntArray:
    """Return the first room of each flat that gets an indoor unit."""
    rows = np.flatnonzero(served)
    found, first = np.unique(flat[rows], return_index=True)
    place: IntArray = rows[first[np.searchsorted(found, flats)]]
    return place


def _cash_usd(
    numbers: BuildingRows, wanted: IntArray, tables: Tables, changed: dict[str, FloatArray]
) -> tuple[FloatArray, FloatArray]:
    """Return the cash of a hired set in some rooms from our own items, and what of it rooms share. [USD] [USD]"""
    cash, once = np.zeros(len(wanted)), np.zeros(len(wanted))
    place = {int(row): at for at, row in enumerate(wanted)}
    for structure, part in groups(numbers, wanted):
        at = [place[int(row)] for row in part]
        values = row_values(numbers, part) | {path: column[at] for path, column in changed.items()}
        items = installation(replace(structure, has_quote=False), values, installation_tables(), len(part))[
            HIRED
        ].line_items
        is_once = [
            key in tables.shared or of in tables.shared for key, of in zip(items.key, items.category, strict=True)
        ]
        cash[at], once[at] = cash_first_cost_usd(items), items.amount_usd[:, is_once].sum(axis=1)
    return cash, once
