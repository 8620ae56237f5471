"""The choice: one way and one year a room, worth most under every limit, with a proven bound on what is missed."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray
from econ.portfolio.greedy import greedy
from econ.portfolio.options import Limits, Options
from econ.portfolio.picks import Picks, is_within, nothing, worth_usd
from econ.portfolio.priced import priced
from econ.portfolio.programme import Programme, allowed

EXACT_ROOMS: Final = 2_000
"""Rooms up to which the whole integer programme is solved."""

WHOLE_ROOMS: Final = 20_000
"""Rooms up to which the whole programme is tried too, where prices alone leave a gap above what is promised."""

PROMISED_FRAC: Final = 1e-3
"""Gap that is promised."""

SECONDS: Final = 20.0
"""Time after which a programme's best choice so far is taken; the gap then says how far it may be from the best."""

_ROUNDING_FRAC: Final = 5e-6
"""By how much limits are drawn in where the solver's own tolerance let one be overstepped."""


@dataclass(frozen=True, slots=True, eq=False)
class Choice:
    """A choice and what is proven of it.

    Attributes
    ----------
    picks : Picks
        What is done.
    worth_usd : float
        What it is worth over keeping everything. [USD]
    bound_usd : float
        No choice that does as much of what must be done is worth more. [USD]
    """

    picks: Picks
    worth_usd: float
    bound_usd: float

    @property
    def gap_frac(self) -> float:
        """What may at most be missed, as a part of the bound."""
        missed = max(self.bound_usd - self.worth_usd, 0.0)
        return missed / max(abs(self.bound_usd), 1.0)


def choice(options: Options, limits: Limits, known: Sequence[Picks] = (), seconds: float = SECONDS) -> Choice:
    """Return the best choice found: of the programme, the simple choice, and choices known from smaller budgets.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.
    known : sequence of Picks
        Choices that keep these limits too, such as those of smaller budgets.
    seconds : float
        Time given to a programme. [second]

    Returns
    -------
    choice : Choice
        Rooms that must be done come first: of two choices the one that leaves fewer of them undone is better.
    """
    simple = greedy(options, limits)
    if options.n_room > EXACT_ROOMS:
        found, bound = _both(options, limits, simple, seconds)
    else:
        best, bound = exact(options, limits, seconds)
        found = [best] if best is not None else []
    tried = [simple, *found, nothing(options), *known]
    picks = max(
        (each for each in tried if is_within(options, limits, each)), key=lambda each: _rank(options, limits, each)
    )
    worth = worth_usd(options, picks, limits.n_year)
    return Choice(picks, worth, max(bound, worth))


def _both(options: Options, limits: Limits, simple: Picks, seconds: float) -> tuple[list[Picks], float]:
    """Return choices by prices, and by the whole programme where panels leave the prices too far apart, and a bound."""
    picks, bound = priced(options, limits, simple, seconds)
    found = [picks] if picks is not None else []
    reached = max(worth_usd(options, each, limits.n_year) for each in (simple, *found))
    if bound - reached <= PROMISED_FRAC * abs(bound) or options.n_room > WHOLE_ROOMS:
        return found, bound
    solved = Programme(options, limits).best(options.must & simple.is_done, 3.0 * seconds)
    return found + ([solved.picks] if solved.picks is not None else []), min(bound, solved.bound_usd)


def _rank(options: Options, limits: Limits, picks: Picks) -> tuple[int, float]:
    return int((options.must & picks.is_done).sum()), worth_usd(options, picks, limits.n_year)


def better(options: Options, limits: Limits, one: Picks, other: Picks) -> bool:
    """Return whether one choice does more of what must be done than another, or as much and is worth more."""
    return _rank(options, limits, one) > _rank(options, limits, other)


def doable(options: Options, n_year: int) -> BoolArray:
    """Return the rooms in which something may be done at all, money left aside, shape (R,)."""
    found: BoolArray = np.any(allowed(options, n_year), axis=(1, 2))
    return found


def exact(options: Options, limits: Limits, seconds: float = SECONDS) -> tuple[Picks | None, float]:
    """Return the choice of the whole integer programme and its bound.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.
    seconds : float
        Time given to each programme. [second]

    Returns
    -------
    picks : Picks or None
        None where none was found in time.
    bound_usd : float
        No choice that does as much of what must be done is worth more. [USD]
    """
    programme = Programme(options, limits)
    must: BoolArray = options.must & doable(options, limits.n_year)
    found = programme.best(must, seconds)
    if found.picks is None and must.any():
        fewest = programme.most_must(must, seconds)
        must = must & (nothing(options) if fewest.picks is None else fewest.picks).is_done
        found = programme.best(must, seconds)
    if found.picks is not None and not is_within(options, limits, found.picks):
        return Programme(options, _drawn_in(limits)).best(must, seconds).picks, found.bound_usd
    return found.picks, found.bound_usd


def _drawn_in(limits: Limits) -> Limits:
    part = 1.0 - _ROUNDING_FRAC
    names = ("budget_usd", "own_hours_h", "electrician_d", "panel_a")
    return replace(limits, **{name: getattr(limits, name) * part for name in names})
