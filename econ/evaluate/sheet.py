"""The sheet: every number of a case by path, with low, likely, high, source and whose it is."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Final, Literal

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, read_only
from econ.kernel.errors import UnknownChoiceError
from econ.kernel.spread import Spread

State = Literal["yours", "usual", "not_known", "computed"]
USUAL: Final = ("usual", "computed")


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the sheet.

    Attributes
    ----------
    spread : Spread
        Low, likely, high and where they come from.
    unit : str
        Unit of the three, in pint's spelling.
    state : str
        "yours", "usual", "not_known", or "computed" where the program chose it from other inputs.
    """

    spread: Spread
    unit: str
    state: State = "usual"

    @property
    def likely(self) -> float:
        """The likely value."""
        return self.spread.likely


@dataclass(frozen=True, eq=False)
class Sheet:
    """All inputs of one case as columns.

    Attributes
    ----------
    path, unit, source : tuple of str, length n_input
        Where each stands, its unit, where it comes from.
    state : tuple of str, length n_input
        Whose it is.
    low, likely, high : ndarray, shape (n_input,)
        The three values. [any]
    """

    path: tuple[str, ...]
    unit: tuple[str, ...]
    source: tuple[str, ...]
    state: tuple[State, ...]
    low: FloatArray
    likely: FloatArray
    high: FloatArray

    @cached_property
    def place(self) -> Mapping[str, int]:
        """Position of each path."""
        return {path: position for position, path in enumerate(self.path)}

    @cached_property
    def is_default(self) -> BoolArray:
        """Whether a value is the usual one, shape (n_input,)."""
        return np.array([state in USUAL for state in self.state])

    def entry(self, path: str) -> Entry:
        """Return one line.

        Raises
        ------
        UnknownChoiceError
            If no input has that path.
        """
        if path not in self.place:
            raise UnknownChoiceError("input", path, [known for known in self.path if known.endswith(path[-6:])][:3])
        at = self.place[path]
        spread = Spread(float(self.low[at]), float(self.likely[at]), float(self.high[at]), self.source[at])
        return Entry(spread, self.unit[at], self.state[at])


def sheet_of(entries: Mapping[str, Entry]) -> Sheet:
    """Return the sheet that holds the entries, in their order.

    Parameters
    ----------
    entries : mapping of str to Entry
        Lines by path.
    """
    spreads = [entry.spread for entry in entries.values()]
    return Sheet(
        path=tuple(entries),
        unit=tuple(entry.unit for entry in entries.values()),
        source=tuple(spread.source for spread in spreads),
        state=tuple(entry.state for entry in entries.values()),
        low=read_only(np.array([spread.low for spread in spreads])),
        likely=read_only(np.array([spread.likely for spread in spreads])),
        high=read_only(np.array([spread.high for spread in spreads])),
    )


def point(sheet: Sheet) -> dict[str, FloatArray]:
    """Return the likely value of every input, each of shape ().

    Parameters
    ----------
    sheet : Sheet
        The inputs.

    Returns
    -------
    values : dict of str to ndarray, shape ()
        Numbers by path. [any]
    """
    return {path: np.asarray(value) for path, value in zip(sheet.path, sheet.likely, strict=True)}


def with_columns(sheet: Sheet, column: FloatArray) -> dict[str, FloatArray]:
    """Return drawn values: an array for each input that varies, a scalar for the rest.

    Parameters
    ----------
    sheet : Sheet
        The inputs.
    column : array_like, shape (n_input, B)
        A value of each input for each row. [any]

    Returns
    -------
    values : dict of str to ndarray, shape () or (B,)
        Numbers by path. [any]
    """
    varies = sheet.low < sheet.high
    return {path: column[at] if varies[at] else np.asarray(sheet.likely[at]) for at, path in enumerate(sheet.path)}


def moved(sheet: Sheet, path: str, grid: FloatArray) -> dict[str, FloatArray]:
    """Return likely values with one input set to each value of a grid.

    Parameters
    ----------
    sheet : Sheet
        The inputs.
    path : str
        The input that moves.
    grid : array_like, shape (B,)
        Its values. [any]

    Returns
    -------
    values : dict of str to ndarray, shape () or (B,)
        Numbers by path. [any]

    Raises
    ------
    UnknownChoiceError
        If no input has that path.
    """
    sheet.entry(path)
    return point(sheet) | {path: np.asarray(grid, dtype=np.float64)}
