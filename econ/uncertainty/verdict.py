"""The verdict: which way to go, and how firm that is."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.alternative import ALTERNATIVES, SELF, Alternative, Standing
from econ.kernel.arrays import BoolArray, FloatArray
from econ.uncertainty.chance import Chance

CLEAR_CHANCE: Final = 0.75
"""Share of draws the winner must win to be called clear. Assumption: three tries in four is where most people stop
looking for more facts before spending a few thousand dollars."""

CLEAR_GAP: Final = 0.05
"""Gap to the runner-up, as a share of its lifetime cost, that is called clear when nothing was drawn. Assumption: below
a twentieth the doubt of first costs alone can turn the order."""

CLEAR, TOO_CLOSE, NOT_ALLOWED = "clear", "too_close", "not_allowed"


@dataclass(frozen=True, slots=True, eq=False)
class Candidates:
    """What the verdict looks at, likely values, one entry an alternative.

    Attributes
    ----------
    standing : tuple of Standing, length A
        Whether each may be done.
    meets_need, is_in_time, is_within_cash : ndarray of bool, shape (A,)
        Whether it does the job, works in time and keeps the cash limit.
    lcc_usd : ndarray, shape (A,)
        Life-cycle cost. [USD]
    """

    standing: tuple[Standing, ...]
    meets_need: BoolArray
    is_in_time: BoolArray
    is_within_cash: BoolArray
    lcc_usd: FloatArray


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the numbers say; the wording belongs to the report.

    Attributes
    ----------
    kind : str
        ``clear``, ``too_close`` or ``not_allowed`` (self_install may not be done; the winner among the rest is named).
    winner : Alternative or None
        Lowest lifetime cost among the eligible; None where none is eligible.
    runner_up : Alternative or None
        The next; None where fewer than two are eligible.
    gap_usd : float
        Lifetime cost of the runner-up less that of the winner, likely values; NaN without a runner-up. [USD]
    chance : tuple of float, length A
        Share of draws in which each eligible alternative has the lowest lifetime cost; NaN where it is not eligible or
        nothing was drawn. [dimensionless]
    chance_error : tuple of float, length A
        Standard error of each chance; NaN alike. [dimensionless]
    reasons : tuple of tuple of str, length A
        Codes of what an alternative fails, in the fixed order ``not_allowed``, ``standing_unknown``,
        ``short_of_need``, ``late``, ``over_cash``; empty where it passes all.
    eligible : tuple of bool, length A
        Whether it takes part in the choice by lifetime cost.
    """

    kind: str
    winner: Alternative | None
    runner_up: Alternative | None
    gap_usd: float
    chance: tuple[float, ...]
    chance_error: tuple[float, ...]
    reasons: tuple[tuple[str, ...], ...]
    eligible: tuple[bool, ...]


def _gates(candidates: Candidates) -> Iterator[tuple[str, BoolArray]]:
    """Yield each reason code with whom it stops, in the fixed order."""
    yield "not_allowed", np.array([standing is Standing.NOT_ALLOWED for standing in candidates.standing])
    yield "short_of_need", ~np.asarray(candidates.meets_need)
    yield "late", ~np.asarray(candidates.is_in_time)
    yield "over_cash", ~np.asarray(candidates.is_within_cash)


def eligible(candidates: Candidates) -> BoolArray:
    """Return which alternatives take part in the choice by lifetime cost.

    Parameters
    ----------
    candidates : Candidates
        The alternatives at likely values.

    Returns
    -------
    is_eligible : ndarray of bool, shape (A,)
        Those that pass every gate: allowed, does the job, in time, within cash. Where none does, the later gates give
        way first; that of being allowed never does.
    """
    is_left = np.ones(len(candidates.standing), dtype=np.bool_)
    for code, is_stopped in _gates(candidates):
        remaining = is_left & ~is_stopped
        if not remaining.any() and code != "not_allowed":
            break
        is_left = remaining
    return is_left


def _reasons(candidates: Candidates) -> tuple[tuple[str, ...], ...]:
    """Return what each alternative fails, in the fixed order; a standing not known is listed but stops nothing."""
    unknown = np.array([standing is Standing.UNKNOWN for standing in candidates.standing])
    gates = dict(_gates(candidates))
    found = {"not_allowed": gates.pop("not_allowed"), "standing_unknown": unknown, **gates}
    return tuple(tuple(code for code, stops in found.items() if stops[way]) for way in range(len(candidates.standing)))


def _is_clear(candidates: Candidates, chance: Chance | None, order: list[int]) -> bool:
    """Return whether the first in order of lifetime cost is a clear winner."""
    if not order or candidates.standing[order[0]] is Standing.UNKNOWN:
        return False
    if len(order) == 1:
        return True
    if chance is not None:
        return float(chance.share_frac[order[0]]) >= CLEAR_CHANCE
    first, second = (float(candidates.lcc_usd[way]) for way in order[:2])
    return second - first > 0.0 and second - first >= CLEAR_GAP * abs(second)


def verdict(candidates: Candidates, chance: Chance | None) -> Verdict:
    """Return which way to go and how firm that is.

    Parameters
    ----------
    candidates : Candidates
        The alternatives at likely values, in the order of ALTERNATIVES.
    chance : Chance or None
        Chances among the `eligible`; None if nothing was drawn.

    Returns
    -------
    verdict : Verdict
        The winner is the eligible alternative of lowest lifetime cost. It is clear if it is the only one, if it wins
        at least `CLEAR_CHANCE` of the draws, or, with nothing drawn, if the runner-up costs at least `CLEAR_GAP` more;
        never while its standing is not known. `not_allowed` whenever self_install may not be done, however the others
        compare.
    """
    is_eligible = eligible(candidates)
    cost = np.asarray(candidates.lcc_usd, dtype=np.float64)
    order = [int(way) for way in np.argsort(cost, kind="stable") if is_eligible[way]]
    none = (float("nan"),) * len(cost)
    kind = CLEAR if _is_clear(candidates, chance, order) else TOO_CLOSE
    return Verdict(
        kind=NOT_ALLOWED if candidates.standing[SELF] is Standing.NOT_ALLOWED else kind,
        winner=ALTERNATIVES[order[0]] if order else None,
        runner_up=ALTERNATIVES[order[1]] if len(order) > 1 else None,
        gap_usd=float(cost[order[1]] - cost[order[0]]) if len(order) > 1 else float("nan"),
        chance=none if chance is None else tuple(chance.share_frac.tolist()),
        chance_error=none if chance is None else tuple(chance.error_frac.tolist()),
        reasons=_reasons(candidates),
        eligible=tuple(is_eligible.tolist()),
    )
