"""The choice for very many rooms: prices settle most of them, the programme those whose choice is close."""

from dataclasses import replace
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, IntArray
from econ.portfolio.bound import Priced, at_best_prices
from econ.portfolio.options import Limits, Options
from econ.portfolio.picks import Picks, by_year, current_a, is_within, setup_usd, worth_usd
from econ.portfolio.programme import Programme, only

CLOSE_ROOMS: Final = (400, 1_200, 3_600)
"""Rooms given to the programme: those whose choice is closest; more where fewer do not do."""

ENOUGH_FRAC: Final = 2e-4
"""Gap at which no more rooms are given to the programme; a fifth of what is promised."""


def priced(options: Options, limits: Limits, simple: Picks, seconds: float) -> tuple[Picks | None, float]:
    """Return a choice and a proven bound.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.
    simple : Picks
        A choice that keeps the limits; of what must be done, what it does is done.
    seconds : float
        Time given to each programme. [second]

    Returns
    -------
    picks : Picks or None
        None where no programme gave any.
    bound_usd : float
        No choice that does what the simple one does of what must be done is worth more. [USD]
    """
    must = options.must & simple.is_done
    reached = worth_usd(options, simple, limits.n_year)
    found = at_best_prices(options, limits, must, reached)
    best: Picks | None = None
    for count in CLOSE_ROOMS:
        if found.bound_usd - reached <= ENOUGH_FRAC * abs(found.bound_usd):
            break
        picks = _mended(options, limits, found, _closest(options, limits, found, count), must, seconds)
        if picks is not None and worth_usd(options, picks, limits.n_year) > reached:
            best, reached = picks, worth_usd(options, picks, limits.n_year)
    return best, found.bound_usd


def _closest(options: Options, limits: Limits, found: Priced, count: int) -> IntArray:
    """Return the rooms whose choice is closest, and all rooms of flats done at once or with too much on their panel."""
    chosen = np.zeros(options.n_room, dtype=np.bool_)
    chosen[np.argsort(found.margin_usd, kind="stable")[:count]] = True
    touched = np.zeros(len(options.whole_flat), dtype=np.bool_)
    over = current_a(options, found.picks) > limits.panel_a
    touched[options.flat[chosen | over[options.flat]]] = True
    rooms: IntArray = np.flatnonzero(chosen | (touched & (options.whole_flat | over))[options.flat])
    return rooms


def _mended(
    options: Options, limits: Limits, found: Priced, rooms: IntArray, must: BoolArray, seconds: float
) -> Picks | None:
    """Return what rooms chose with some chosen anew by the programme under what the others leave, or None."""
    way, year = found.picks.way.copy(), found.picks.year.copy()
    way[rooms], year[rooms] = options.keep, -1
    others = Picks(way, year)
    left = _left(options, limits, others)
    if min(left.budget_usd.min(), left.own_hours_h.min(), left.electrician_d.min(), left.panel_a.min()) < 0.0:
        return None
    solved = Programme(only(options, rooms), left, _paid(options, others, limits.n_year)).best(must[rooms], seconds)
    if solved.picks is None:
        return None
    way[rooms], year[rooms] = solved.picks.way, solved.picks.year
    picks = Picks(way, year)
    return picks if is_within(options, limits, picks) else None


def _left(options: Options, limits: Limits, others: Picks) -> Limits:
    """Return what rooms that are settled leave of the limits."""
    n_year = limits.n_year
    cash = by_year(options, others, "cost_usd", n_year) + setup_usd(options, others, n_year)
    return replace(
        limits,
        budget_usd=limits.budget_usd - cash,
        own_hours_h=limits.own_hours_h - by_year(options, others, "own_hours_h", n_year),
        electrician_d=limits.electrician_d - by_year(options, others, "electrician_d", n_year),
        panel_a=limits.panel_a - current_a(options, others),
    )


def _paid(options: Options, others: Picks, n_year: int) -> BoolArray:
    """Return the set-ups that rooms which are settled pay, shape (n_group, Y)."""
    paid = np.zeros((len(options.setup_usd), n_year), dtype=np.bool_)
    if len(options.setup_usd):
        needs = others.is_done & options.needs_setup[others.way]
        paid[options.group[needs], others.year[needs]] = True
    return paid
