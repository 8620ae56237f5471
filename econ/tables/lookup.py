"""Rows of a table found by their key: texts, numbers and ranges by name."""

import difflib
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final, TypeVar

from econ.kernel.errors import UnknownChoiceError
from econ.kernel.spread import Spread
from econ.tables.record import Table

STEPS: Final = ("low", "likely", "high")
Cell = TypeVar("Cell")


@dataclass(frozen=True, slots=True)
class Entry:
    """One row of a table.

    Attributes
    ----------
    texts : mapping of str to str
        Text cells by column.
    numbers : mapping of str to float
        Number cells by column, in the unit of the table's record; empty cells are NaN.
    spreads : mapping of str to Spread
        Ranges by name: the columns ``name.low``, ``name.likely`` and ``name.high`` of the row, and under "value" the
        columns ``low``, ``likely`` and ``high``; a range with an empty cell is left out.
    """

    texts: Mapping[str, str]
    numbers: Mapping[str, float]
    spreads: Mapping[str, Spread]

    def text(self, name: str) -> str:
        """Return a text cell."""
        return _found(self.texts, "column", name)

    def number(self, name: str) -> float:
        """Return a number cell, in the unit of the table's record."""
        return _found(self.numbers, "column", name)

    def spread(self, name: str = "value") -> Spread:
        """Return a range, in the unit of the table's record."""
        return _found(self.spreads, "range", name)


@dataclass(frozen=True, slots=True)
class Lookup:
    """Rows by key, in the order of the table.

    Attributes
    ----------
    subject : str
        What the key is of, for error texts.
    entries : mapping of str to Entry
        Rows by key; several key columns are joined by a slash.
    """

    subject: str
    entries: Mapping[str, Entry]

    def __getitem__(self, key: str | tuple[str, ...]) -> Entry:
        joined = key if isinstance(key, str) else "/".join(key)
        return _found(self.entries, self.subject, joined)

    def __contains__(self, key: object) -> bool:
        return key in self.entries

    @property
    def keys(self) -> tuple[str, ...]:
        """Keys in the order of the table."""
        return tuple(self.entries)


def nearest_names(name: str, known: Iterable[str], count: int = 3) -> tuple[str, ...]:
    """Return the known names that are spelled most alike, best first.

    Parameters
    ----------
    name : str
        What was given.
    known : iterable of str
        What exists.
    count : int
        How many at most.

    Returns
    -------
    nearest : tuple of str
        As they are spelled in known; upper and lower case count as the same.
    """
    by_folded = {other.casefold(): other for other in known}
    alike = difflib.get_close_matches(name.casefold(), by_folded, n=count, cutoff=0.0)
    return tuple(by_folded[folded] for folded in alike)


def lookup(table: Table, subject: str, *key_columns: str) -> Lookup:
    """Return a table's rows by the text in its key columns.

    Parameters
    ----------
    table : Table
        A checked table; the key columns together name each row once.
    subject : str
        What the key is of, for error texts.
    *key_columns : str
        Text columns; several are joined by a slash.

    Returns
    -------
    lookup : Lookup
        Rows by key.
    """
    rows = table.rows()
    return Lookup(subject, {"/".join(row[column] for column in key_columns): _entry(row) for row in rows})


def _entry(row: Mapping[str, str | float]) -> Entry:
    texts = {name: cell for name, cell in row.items() if isinstance(cell, str)}
    numbers = {name: float(cell) for name, cell in row.items() if not isinstance(cell, str)}
    source = texts.get("source", "")
    spreads = {}
    for column in numbers:
        stem, dot, step = column.rpartition(".")
        if step == STEPS[0]:
            low, likely, high = (numbers.get(f"{stem}{dot}{each}", math.nan) for each in STEPS)
            if not math.isnan(low + likely + high):
                spreads[stem or "value"] = Spread(low, likely, high, source)
    return Entry(texts, numbers, spreads)


def _found(cells: Mapping[str, Cell], subject: str, name: str) -> Cell:
    if name not in cells:
        raise UnknownChoiceError(subject, name, nearest_names(name, cells))
    return cells[name]
