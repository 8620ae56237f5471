"""Which single input is most worth knowing before deciding."""

import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.arrays import FloatArray, IntArray
from econ.uncertainty.answer import Answer
from econ.uncertainty.draws import draws_of
from econ.uncertainty.information import input_information_usd

LEAST_USD: Final = 10.0
"""Worth below which nobody would pick up the phone (assumption)."""

ABOVE_CHANCE: Final = 2.0
"""Times the worth that an input without any bearing seems to have, as draws are few in each bin (assumption)."""

NUMBERS_AT_A_TIME: Final = 1 << 20
"""Inputs times draws looked at in one go, so that memory does not grow with the draws."""

ENDS: Final = 8
"""An end of an input is the lowest or highest one in so many of its draws (assumption)."""


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


def worth_knowing(answer: Answer) -> tuple[Worth, ...]:
    """Return the ranged inputs that could turn the choice, the most valuable first.

    Parameters
    ----------
    answer : Answer
        An answer with draws; none without, or where fewer than two ways may be chosen.

    Returns
    -------
    worth : tuple of Worth
        Those worth at least `LEAST_USD` and more than an input without bearing seems to be.
    """
    is_eligible = np.array(answer.verdict.eligible)
    if answer.drawn is None or is_eligible.sum() < 2:
        return ()
    sheet = answer.sheet
    ranged = np.flatnonzero(sheet.low < sheet.high)
    cost_usd = answer.drawn.measures.lcc_usd[is_eligible]
    draws = draws_of(sheet.low, sheet.likely, sheet.high, answer.draws_used, answer.seed)
    n_part = max(1, math.ceil(len(ranged) * answer.draws_used / NUMBERS_AT_A_TIME))
    parts = np.array_split(ranged, n_part)
    usd = np.concatenate([input_information_usd(cost_usd, draws.of(part)) for part in parts])
    least = max(LEAST_USD, ABOVE_CHANCE * _by_chance_usd(cost_usd, answer.seed))
    order = np.argsort(-usd, kind="stable")
    named = [way for way, takes_part in zip(ALTERNATIVES, is_eligible, strict=True) if takes_part]
    kept = [int(at) for at in order if usd[at] >= least]
    ends = _cheapest_at_ends(cost_usd, draws.of(ranged[kept])) if kept else np.empty((2, 0), dtype=np.int64)
    return tuple(
        Worth(sheet.path[ranged[at]], float(usd[at]), named[ends[0, place]], named[ends[1, place]])
        for place, at in enumerate(kept)
    )


def _cheapest_at_ends(cost_usd: FloatArray, value: FloatArray) -> IntArray:
    """Return who is cheapest on average in the lowest and highest part of each input's draws, shape (2, n)."""
    order = np.argsort(value, axis=-1, kind="stable")
    size = max(1, value.shape[-1] // ENDS)
    parts = (order[:, :size], order[:, -size:])
    return np.stack([cost_usd[:, part].mean(axis=-1).argmin(axis=0) for part in parts])


def _by_chance_usd(cost_usd: FloatArray, seed: int) -> float:
    """Return the worth that numbers without any bearing on the costs seem to have. [USD]"""
    idle = np.random.default_rng(seed).random((1, cost_usd.shape[1]))
    return float(input_information_usd(cost_usd, idle)[0])
