"""The value of an input at which two ways cost the same."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.evaluate.sheet import Sheet, point
from econ.kernel.arrays import BoolArray, FloatArray
from econ.uncertainty.sensitivity import Difference

SCANNED: Final = 17
"""Points between the ends of the search at which a change of sign is looked for; a pair of roots closer together than
a sixteenth of the range is not seen."""

NARROWED: Final = 5
"""Times the bracket is cut into `SLICES`: 16 / 16^5 of the range is left, below a part in 60,000."""

SLICES: Final = 16


@dataclass(frozen=True, slots=True, eq=False)
class BreakEven:
    """Where the sign of a difference changes along each of some inputs.

    Attributes
    ----------
    path : tuple of str, length n
        The inputs.
    value : ndarray, shape (n,)
        Root nearest to the likely value; NaN where `exists` is False. [any]
    exists : ndarray of bool, shape (n,)
        Whether the sign changes between the ends of the search.
    rises : ndarray of bool, shape (n,)
        Whether the difference grows with the input there.
    low, high : ndarray, shape (n,)
        Ends of the search. [any]
    """

    path: tuple[str, ...]
    value: FloatArray
    exists: BoolArray
    rises: BoolArray
    low: FloatArray
    high: FloatArray


def break_even(sheet: Sheet, difference: Difference, search: dict[str, tuple[float, float]]) -> BreakEven:
    """Return the break-even value of some inputs, each alone, all others likely.

    Parameters
    ----------
    sheet : Sheet
        The inputs.
    difference : callable
        Lifetime cost of one way less that of another, row by row; continuous in the inputs searched.
    search : dict of str to (float, float)
        Ends of the search by path. [any]

    Returns
    -------
    found : BreakEven
        By bracketing in batches: one scan, then `NARROWED` cuts, never a loop of single evaluations.

    Raises
    ------
    UnknownChoiceError
        If no input has one of the paths.

    Notes
    -----
    Where a difference jumps, the jump is found; the root is then the place of the jump.
    """
    likely = np.array([sheet.entry(path).likely for path in search])
    low, high = (np.array([ends[end] for ends in search.values()], dtype=np.float64) for end in (0, 1))
    grid = np.linspace(low, high, SCANNED, axis=1)
    along = _along(sheet, difference, tuple(search), grid)
    left, exists = _bracket(grid, along, likely)
    row = np.arange(len(low))
    rises = along[row, left + 1] >= along[row, left]
    lower, upper = grid[row, left], grid[row, left + 1]
    for _ in range(NARROWED):
        cut = np.linspace(lower, upper, SLICES + 1, axis=1)
        place, _ = _bracket(cut, _along(sheet, difference, tuple(search), cut), 0.5 * (lower + upper))
        lower, upper = cut[row, place], cut[row, place + 1]
    value = np.where(exists, 0.5 * (lower + upper), np.nan)
    return BreakEven(tuple(search), value, exists, rises & exists, low, high)


def _along(sheet: Sheet, difference: Difference, paths: tuple[str, ...], grid: FloatArray) -> FloatArray:
    """Return the difference with each input at its points, shape (n, n_point): one batch for all."""
    n_input, n_point = grid.shape
    values = point(sheet)
    for place, path in enumerate(paths):
        column = np.full(n_input * n_point, float(values[path]))
        column[place * n_point : (place + 1) * n_point] = grid[place]
        values[path] = column
    return difference(values).reshape(n_input, n_point)


def _bracket(grid: FloatArray, along: FloatArray, near: FloatArray) -> tuple[np.ndarray, BoolArray]:
    """Return where the sign changes nearest to a value, and whether it does."""
    changes = (along[:, :-1] > 0.0) != (along[:, 1:] > 0.0)
    middle = 0.5 * (grid[:, :-1] + grid[:, 1:])
    distance = np.where(changes, np.abs(middle - near[:, None]), np.inf)
    return np.argmin(distance, axis=1), changes.any(axis=1)
