"""What moves the difference between two ways: one input at a time, or two together, all in one batch."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from econ.evaluate.sheet import Sheet, point
from econ.kernel.arrays import FloatArray

Values = Mapping[str, FloatArray]
Difference = Callable[[Values], FloatArray]
"""Numbers by path in, difference of lifetime cost of each row out."""


@dataclass(frozen=True, slots=True, eq=False)
class Swings:
    """How far each input alone moves the difference, widest first.

    Attributes
    ----------
    path : tuple of str, length n
        The inputs.
    low, high : ndarray, shape (n,)
        Ends of their ranges. [any]
    at_low_usd, at_high_usd : ndarray, shape (n,)
        Difference with that input at its low and its high end, all others likely. [USD]
    likely_usd : float
        Difference with all inputs likely. [USD]
    """

    path: tuple[str, ...]
    low: FloatArray
    high: FloatArray
    at_low_usd: FloatArray
    at_high_usd: FloatArray
    likely_usd: float

    @property
    def swing_usd(self) -> FloatArray:
        """Return how far apart the two ends are. [USD]"""
        swing: FloatArray = np.abs(self.at_high_usd - self.at_low_usd)
        return swing


@dataclass(frozen=True, slots=True, eq=False)
class Map:
    """The difference over two inputs.

    Attributes
    ----------
    across, up : ndarray, shape (n_across,), (n_up,)
        Values of the two inputs. [any]
    difference_usd : ndarray, shape (n_up, n_across)
        Difference at each pair. [USD]
    """

    across: FloatArray
    up: FloatArray
    difference_usd: FloatArray


def swings(sheet: Sheet, difference: Difference) -> Swings:
    """Return how far each ranged input moves the difference on its own.

    Parameters
    ----------
    sheet : Sheet
        The inputs; those without a range are left out.
    difference : callable
        Lifetime cost of one way less that of another, row by row.

    Returns
    -------
    swings : Swings
        From one batch of 1 + 2 n rows; sorted by the swing.
    """
    ranged = np.flatnonzero(sheet.low < sheet.high)
    n_input = len(ranged)
    low_row, high_row = 1 + np.arange(n_input), 1 + n_input + np.arange(n_input)
    values = point(sheet)
    for place, at in enumerate(ranged):
        column = np.full(1 + 2 * n_input, sheet.likely[at])
        column[low_row[place]], column[high_row[place]] = sheet.low[at], sheet.high[at]
        values[sheet.path[at]] = column
    found = difference(values)
    at_low, at_high = found[low_row], found[high_row]
    order = np.argsort(-np.abs(at_high - at_low), kind="stable")
    return Swings(
        path=tuple(sheet.path[ranged[place]] for place in order),
        low=sheet.low[ranged][order],
        high=sheet.high[ranged][order],
        at_low_usd=at_low[order],
        at_high_usd=at_high[order],
        likely_usd=float(found[0]),
    )


def two_way(sheet: Sheet, difference: Difference, across: tuple[str, FloatArray], up: tuple[str, FloatArray]) -> Map:
    """Return the difference over a grid of two inputs.

    Parameters
    ----------
    sheet : Sheet
        The inputs; all others stay likely.
    difference : callable
        As `swings`.
    across, up : tuple of str and ndarray, shape (n_across,), (n_up,)
        Path and values of each input. [any]

    Returns
    -------
    map : Map
        From one batch of n_up times n_across rows.

    Raises
    ------
    UnknownChoiceError
        If no input has one of the paths.
    """
    for path, _ in (across, up):
        sheet.entry(path)
    grid_up, grid_across = np.meshgrid(up[1], across[1], indexing="ij")
    values = point(sheet) | {across[0]: grid_across.ravel(), up[0]: grid_up.ravel()}
    found = difference(values).reshape(grid_up.shape)
    return Map(np.asarray(across[1], dtype=np.float64), np.asarray(up[1], dtype=np.float64), found)
