"""Which single input is most worth knowing before deciding."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.evaluate.sheet import Sheet, with_columns
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.uncertainty.draws import Draws, draws_of
from econ.uncertainty.information import BINS, input_information_usd, perfect_information_usd

LEAST_USD: Final = 10.0
"""Worth below which nobody would pick up the phone (assumption)."""

DRAWS_A_BIN: Final = 64
"""Draws in each bin, so that what an input seems to be worth is not the luck of a few: 64 bins of the usual 4,096."""

IDLE: Final = 256
"""Numbers without any bearing on the costs that an input must seem to be worth more than, each of them (assumption)."""

TRIED: Final = 40
"""Inputs that seem to be worth most, moved from end to end to see what they can do: one block of rows in all."""

BASES: Final = 2
"""Draws that an input is moved in, beside the likely values: one may bear on the choice in some of them only."""

NUMBERS_AT_A_TIME: Final = 1 << 20
"""Inputs times draws looked at in one go, so that memory does not grow with the draws."""

ENDS: Final = 8
"""An end of an input is the lowest or highest one in so many of its draws (assumption)."""

Cost = Callable[[Mapping[str, FloatArray]], FloatArray]
"""Numbers by path in, lifetime cost of every way out, shape (A, B)."""


@dataclass(frozen=True, slots=True)
class Worth:
    """What it is worth to know one input.

    Attributes
    ----------
    path : str
        The input.
    usd : float
        Expected lifetime dollars saved by knowing it before deciding. [USD]
    at_low, at_high : Alternative
        Who is cheapest on average where it comes out in the lowest and in the highest eighth of its draws.
    """

    path: str
    usd: float
    at_low: Alternative
    at_high: Alternative


@dataclass(frozen=True, slots=True, eq=False)
class Question:
    """A choice between ways under doubt.

    Attributes
    ----------
    sheet : Sheet
        The inputs.
    cost_usd : ndarray, shape (A, B)
        Lifetime cost at the draws. [USD]
    is_eligible : ndarray of bool, shape (A,)
        Which ways may be chosen.
    seed : int
        Seed of the draws.
    """

    sheet: Sheet
    cost_usd: FloatArray
    is_eligible: BoolArray
    seed: int

    @property
    def draws(self) -> Draws:
        """Return the draws that the costs come from."""
        return draws_of(self.sheet.low, self.sheet.likely, self.sheet.high, self.cost_usd.shape[1], self.seed)


def worth_knowing(question: Question, cost_of: Cost) -> tuple[Worth, ...]:
    """Return the ranged inputs that could turn the choice, the most valuable first.

    Parameters
    ----------
    question : Question
        Costs at the draws; none is worth knowing where fewer than two ways may be chosen.
    cost_of : callable
        The costs at other values.

    Returns
    -------
    worth : tuple of Worth
        Those worth at least `LEAST_USD` and more than inputs without bearing seem to be.

    Notes
    -----
    Among so many inputs some look alike over the draws, and one that moves nothing would seem to be worth what its
    look-alike is. So none is told to be worth more than it can be by what it moves: a lead that is not negative on
    average and moves over a range R is negative by at most R / 4 on average, and each further way adds as much.
    """
    cost_usd = question.cost_usd[question.is_eligible]
    if len(cost_usd) < 2 or float(perfect_information_usd(cost_usd)) < LEAST_USD:
        return ()  # no input is worth more than all of them together
    ranged = np.flatnonzero(question.sheet.low < question.sheet.high)
    seeming_usd, chance_usd = _seeming_usd(question, cost_usd, ranged)
    order = np.argsort(-seeming_usd, kind="stable")[:TRIED]
    tried = order[seeming_usd[order] >= max(LEAST_USD, chance_usd)]
    if not len(tried):
        return ()
    most_usd = 0.25 * (len(cost_usd) - 1) * _reach_usd(question, cost_of, ranged[tried])
    usd = np.minimum(seeming_usd[tried], most_usd)
    place = np.argsort(-usd, kind="stable")
    kept = place[usd[place] >= max(LEAST_USD, chance_usd)]
    inputs = ranged[tried[kept]]
    named = [way for way, takes_part in zip(ALTERNATIVES, question.is_eligible, strict=True) if takes_part]
    ends = _cheapest_at_ends(cost_usd, question.draws.of(inputs)) if len(inputs) else np.empty((2, 0), dtype=np.int64)
    return tuple(
        Worth(question.sheet.path[at], float(worth), named[low], named[high])
        for at, worth, low, high in zip(inputs, usd[kept], ends[0], ends[1], strict=True)
    )


def _seeming_usd(question: Question, cost_usd: FloatArray, inputs: IntArray) -> tuple[FloatArray, float]:
    """Return what each input seems to be worth over the draws, and the most that any idle number seems to be."""
    n_draw = cost_usd.shape[1]
    n_bin = min(BINS, max(1, n_draw // DRAWS_A_BIN))
    draws, rng = question.draws, np.random.default_rng(question.seed)
    seeming = [input_information_usd(cost_usd, draws.of(part), n_bin) for part in _parts(inputs, n_draw)]
    idle = [
        float(input_information_usd(cost_usd, rng.random((len(part), n_draw)), n_bin).max())
        for part in _parts(np.arange(IDLE), n_draw)
    ]
    return np.concatenate(seeming), max(idle)


def _parts(inputs: IntArray, n_draw: int) -> list[IntArray]:
    """Return inputs a few at a time."""
    return np.array_split(inputs, max(1, math.ceil(len(inputs) * n_draw / NUMBERS_AT_A_TIME)))


def _reach_usd(question: Question, cost_of: Cost, inputs: IntArray) -> FloatArray:
    """Return how far each input on its own moves one way against another, from its low to its high end, shape (n,).

    The most of the likely values and of `BASES` draws, all in one batch.
    """
    sheet, n_input = question.sheet, len(inputs)
    bases = np.concatenate([np.asarray(sheet.likely)[:, None], question.draws.values(0, BASES)], axis=1)
    column = np.repeat(bases, 2 * n_input, axis=1)
    for base in range(bases.shape[1]):
        for end, side in enumerate((sheet.low, sheet.high)):
            first = (2 * base + end) * n_input
            column[inputs, first + np.arange(n_input)] = np.asarray(side)[inputs]
    cost = cost_of(with_columns(sheet, column))[question.is_eligible]
    moved = np.diff(cost.reshape(len(cost), -1, 2, n_input), axis=2)[:, :, 0]
    reach: FloatArray = np.ptp(moved, axis=0).max(axis=0)
    return reach


def _cheapest_at_ends(cost_usd: FloatArray, value: FloatArray) -> IntArray:
    """Return who is cheapest on average in the lowest and highest part of each input's draws, shape (2, n)."""
    order = np.argsort(value, axis=-1, kind="stable")
    size = max(1, value.shape[-1] // ENDS)
    parts = (order[:, :size], order[:, -size:])
    return np.stack([cost_usd[:, part].mean(axis=-1).argmin(axis=0) for part in parts])
