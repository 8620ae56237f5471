"""What each budget of the coming year gives: choices for a row of budgets, and what the next dollars would buy."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.portfolio.choice import EXACT_ROOMS, better, choice
from econ.portfolio.greedy import by_payback
from econ.portfolio.options import Limits, Options
from econ.portfolio.picks import Picks, cash_usd, picked, worth_usd

NEXT_USD: Final = 1_000.0
"""More money of which it is told what it buys."""

POINTS: Final = 16
"""Steps into which budgets are divided, about; half as many for very many rooms."""

_SECONDS: Final = 4.0
"""Time given to one budget."""

_STEPS: Final = (1.0, 2.0, 2.5, 5.0, 10.0)


@dataclass(frozen=True, slots=True, eq=False)
class Frontier:
    """Choices by budget of the coming year, ascending; the other years' limits as they are.

    Attributes
    ----------
    budget_usd : ndarray, shape (n,)
        Budgets of the coming year. [USD]
    worth_usd : ndarray, shape (n,)
        What the choice is worth over keeping everything. [USD]
    spared_h : ndarray, shape (n,)
        Hours of a year too hot that what is done in the coming year takes away. [hour]
    cash_usd : ndarray, shape (n,)
        Cash it takes in the coming year. [USD]
    room_count : ndarray of int, shape (n,)
        Rooms done in the coming year. [dimensionless]
    picks : tuple of Picks
        The choices.
    gap_frac : ndarray, shape (n,)
        What a better one could be worth more at most, as a part of the bound. [dimensionless]
    """

    budget_usd: FloatArray
    worth_usd: FloatArray
    spared_h: FloatArray
    cash_usd: FloatArray
    room_count: IntArray
    picks: tuple[Picks, ...]
    gap_frac: FloatArray

    def at(self, budget_usd: float) -> int:
        """Return the position of the largest budget that is not above one."""
        return max(int(np.searchsorted(self.budget_usd, budget_usd, side="right")) - 1, 0)


@dataclass(frozen=True, slots=True, eq=False)
class More:
    """What some more money in the coming year buys.

    Attributes
    ----------
    budget_usd : float
        How much more. [USD]
    worth_usd, spared_h : float
        What the choice is then worth more; hours too hot it takes away more in the coming year. [USD] [hour]
    rooms : ndarray of int, shape (n,)
        Rooms for which something else, or another year, is chosen. [dimensionless]
    picks : Picks
        The choice with the money.
    """

    budget_usd: float
    worth_usd: float
    spared_h: float
    rooms: IntArray
    picks: Picks


def frontier(options: Options, limits: Limits, now: Picks, tell: Callable[[int, int], None] | None = None) -> Frontier:
    """Return what each budget of the coming year gives, from nothing to all that is worth doing.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent; its first budget is one of the points.
    now : Picks
        The choice for these limits.
    tell : callable, optional
        Told how many budgets are done and how many there are; what it raises stops the work.

    Returns
    -------
    frontier : Frontier
        Never falling: a choice for less money is kept where no better one is found.
    """
    budgets = _budgets(options, limits)
    known: list[Picks] = []
    gaps = np.zeros(len(budgets))
    for at, budget in enumerate(budgets):
        tried = [*known[-1:], *([now] if budget >= limits.budget_usd[0] else [])]
        found = choice(options, _with(limits, float(budget)), tried, _SECONDS)
        known.append(found.picks)
        gaps[at] = found.gap_frac
        if tell is not None:
            tell(at + 1, len(budgets))
    n_year = limits.n_year
    return Frontier(
        budget_usd=budgets,
        worth_usd=np.array([worth_usd(options, each, n_year) for each in known]),
        spared_h=np.array([spared_h(options, each) for each in known]),
        cash_usd=np.array([cash_usd(options, each, n_year)[0] for each in known]),
        room_count=np.array([int((each.year == 0).sum()) for each in known], dtype=np.int64),
        picks=tuple(known),
        gap_frac=gaps,
    )


def spared_h(options: Options, picks: Picks) -> float:
    """Return the hours of a year too hot that what is done in the coming year takes away, all rooms. [hour]"""
    less = options.too_hot_h[:, options.keep] - picked(options, picks, "too_hot_h")
    return float(less[picks.year == 0].sum())


def _with(limits: Limits, budget_usd: float) -> Limits:
    return replace(limits, budget_usd=np.array([budget_usd, *limits.budget_usd[1:]]))


def _budgets(options: Options, limits: Limits) -> FloatArray:
    """Return even budgets from nothing to what everything worth doing takes, and the one that is set."""
    without = choice(options, _with(limits, np.inf), seconds=_SECONDS).picks
    top = float(cash_usd(options, without, limits.n_year)[0])
    count = POINTS if options.n_room <= EXACT_ROOMS else POINTS // 2
    least = max(top / count, 1.0)
    tens = 10.0 ** np.floor(np.log10(least))
    step = next(tens * each for each in _STEPS if tens * each >= least * (1.0 - 1e-9))
    grid = np.arange(0.0, top + step, step)
    own = limits.budget_usd[:1]
    found: FloatArray = np.unique(np.concatenate([grid, own[np.isfinite(own)]]))
    return found


def more(options: Options, limits: Limits, now: Picks, more_usd: float = NEXT_USD) -> More:
    """Return what some more money in the coming year buys.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent without it.
    now : Picks
        The choice without it.
    more_usd : float
        How much more. [USD]
    """
    richer = _with(limits, float(limits.budget_usd[0]) + more_usd)
    picks = choice(options, richer, [now], _SECONDS).picks
    picks = picks if better(options, richer, picks, now) else now
    changed = (picks.way != now.way) | (picks.year != now.year)
    hours = spared_h(options, picks) - spared_h(options, now)
    gained = worth_usd(options, picks, limits.n_year) - worth_usd(options, now, limits.n_year)
    return More(more_usd, gained, hours, np.flatnonzero(changed), picks)


@dataclass(frozen=True, slots=True, eq=False)
class Ranking:
    """The same money spent down a list ranked by payback.

    Attributes
    ----------
    picks : Picks
        What the list does.
    worth_usd : float
        What it is worth over keeping everything. [USD]
    spared_h : float
        Hours of a year too hot that it takes away in the coming year. [hour]
    cash_usd : float
        Cash it takes in all years. [USD]
    rooms : ndarray of int, shape (n,)
        Rooms for which the choice says something else. [dimensionless]
    """

    picks: Picks
    worth_usd: float
    spared_h: float
    cash_usd: float
    rooms: IntArray


def ranking(options: Options, limits: Limits, now: Picks) -> Ranking:
    """Return what a list ranked by payback would do with the same money.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.
    now : Picks
        The choice.
    """
    picks = by_payback(options, limits)
    return Ranking(
        picks=picks,
        worth_usd=worth_usd(options, picks, limits.n_year),
        spared_h=spared_h(options, picks),
        cash_usd=float(cash_usd(options, picks, limits.n_year).sum()),
        rooms=np.flatnonzero((picks.way != now.way) | (picks.year != now.year)),
    )
