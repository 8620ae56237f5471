"""Headline figures opened: how far each ranged input alone moves every figure of every way, in one batch."""

from dataclasses import dataclass

import numpy as np

from econ.evaluate.evaluate import evaluate
from econ.evaluate.figures import FIGURES, figure, inputs_behind
from econ.evaluate.result import Result
from econ.evaluate.sheet import Sheet, point, with_columns
from econ.evaluate.structure import Structure
from econ.kernel.arrays import FloatArray
from econ.tables.loaders import Tables
from econ.uncertainty.draws import drawn

DOUBT_DRAWS = 256
"""Draws behind the range of a figure: one block, so that it opens at once."""

LEAST_FRAC = 1e-6
"""Share of a figure below which an input is not told as moving it. Assumption: nobody acts on less."""


@dataclass(frozen=True, slots=True)
class Mover:
    """One input that moves a figure.

    Attributes
    ----------
    path : str
        The input.
    at_low, at_high : float
        The figure with the input at either end of its range, all others likely. [any]
    """

    path: str
    at_low: float
    at_high: float


@dataclass(frozen=True, eq=False)
class Opened:
    """What stands behind the figures of a case.

    Attributes
    ----------
    path : tuple of str, length n
        Inputs with a range.
    likely, at_low, at_high : dict of str to ndarray, shape (A,), (A, n), (A, n)
        Each figure by key: all inputs likely; one at its low; one at its high. One way where it is no way's own. [any]
    ends : dict of str to ndarray, shape (A, B)
        Each figure at draws of every input. [any]
    """

    path: tuple[str, ...]
    likely: dict[str, FloatArray]
    at_low: dict[str, FloatArray]
    at_high: dict[str, FloatArray]
    ends: dict[str, FloatArray]

    def movers(self, key: str, way: int) -> tuple[Mover, ...]:
        """Return the inputs that move a figure of one way, the strongest first.

        Parameters
        ----------
        key : str
            Of a figure.
        way : int
            Position in ALTERNATIVES; of no account where the figure is no way's own. [dimensionless]
        """
        at = way if figure(key).is_of_a_way else 0
        low, high, likely = self.at_low[key][at], self.at_high[key][at], self.likely[key][at]
        swing = np.nan_to_num(np.maximum(np.abs(low - likely), np.abs(high - likely)))
        is_lost = np.isnan(low) != np.isnan(likely)
        is_lost |= np.isnan(high) != np.isnan(likely)
        least = LEAST_FRAC * abs(float(np.nan_to_num(likely)))
        order = sorted(np.flatnonzero((swing > least) | is_lost), key=lambda place: -swing[place])
        return tuple(Mover(self.path[place], float(low[place]), float(high[place])) for place in order)


def doubt(structure: Structure, sheet: Sheet, tables: Tables, seed: int) -> Result:
    """Return the result at a few draws of every ranged input.

    Parameters
    ----------
    structure : Structure
        What picks formulas.
    sheet : Sheet
        Ranges.
    tables : Tables
        Stations.
    seed : int
        Seed of the draws. [dimensionless]
    """
    columns = drawn(sheet.low, sheet.likely, sheet.high, DOUBT_DRAWS, seed)
    return evaluate(structure, with_columns(sheet, columns), tables)


def opened(structure: Structure, sheet: Sheet, tables: Tables, seed: int) -> Opened:
    """Return what stands behind every figure of a case.

    Parameters
    ----------
    structure : Structure
        What picks formulas.
    sheet : Sheet
        Ranges.
    tables : Tables
        Stations.
    seed : int
        Seed of the draws behind the ranges. [dimensionless]

    Returns
    -------
    opened : Opened
        From one batch of 1 + 2 n rows, and one of draws.
    """
    behind = set().union(*(inputs_behind(found.key, sheet) for found in FIGURES))
    ranged = [at for at in np.flatnonzero(sheet.low < sheet.high) if sheet.path[at] in behind]
    n_input = len(ranged)
    values = point(sheet)
    for place, at in enumerate(ranged):
        column = np.full(1 + 2 * n_input, sheet.likely[at])
        column[1 + place], column[1 + n_input + place] = sheet.low[at], sheet.high[at]
        values[sheet.path[at]] = column
    result = evaluate(structure, values, tables)
    found = {each.key: each.of(result) for each in FIGURES}
    at_draws = doubt(structure, sheet, tables, seed)
    return Opened(
        path=tuple(sheet.path[at] for at in ranged),
        likely={key: rows[:, 0].copy() for key, rows in found.items()},
        at_low={key: rows[:, 1 : 1 + n_input].copy() for key, rows in found.items()},
        at_high={key: rows[:, 1 + n_input :].copy() for key, rows in found.items()},
        ends={each.key: np.array(each.of(at_draws)) for each in FIGURES},
    )
