"""What is done where and when: one way and one year a room, or nothing."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.options import Limits, Options

NEVER = -1
"""Year of a room in which nothing is done."""


@dataclass(frozen=True, slots=True, eq=False)
class Picks:
    """One way a room.

    Attributes
    ----------
    way : ndarray of int, shape (R,)
        Position among the options' ways; keeping where nothing is done. [dimensionless]
    year : ndarray of int, shape (R,)
        Position of the year, 0 the coming one, `NEVER` where nothing is done. [year]
    """

    way: IntArray
    year: IntArray

    @property
    def is_done(self) -> BoolArray:
        """Whether anything is done in the room, shape (R,)."""
        done: BoolArray = self.year != NEVER
        return done


def nothing(options: Options) -> Picks:
    """Return the picks in which every room keeps what is there."""
    return Picks(np.full(options.n_room, options.keep), np.full(options.n_room, NEVER))


def picked(options: Options, picks: Picks, name: str) -> FloatArray:
    """Return one of the options' figures for the way picked in each room, shape (R,). [any]"""
    column: FloatArray = getattr(options, name)[np.arange(options.n_room), picks.way]
    return column


def by_year(options: Options, picks: Picks, name: str, n_year: int) -> FloatArray:
    """Return what one figure comes to in each year over the rooms done in it, shape (Y,). [any]"""
    done = picks.is_done
    total = np.zeros(n_year)
    np.add.at(total, picks.year[done], picked(options, picks, name)[done])
    return total


def setup_usd(options: Options, picks: Picks, n_year: int) -> FloatArray:
    """Return the set-ups paid in each year: one a group in which a way that needs it is done, shape (Y,). [USD]"""
    if not len(options.setup_usd):
        return np.zeros(n_year)
    needs = picks.is_done & options.needs_setup[picks.way]
    used = np.zeros((len(options.setup_usd), n_year), dtype=np.bool_)
    used[options.group[needs], picks.year[needs]] = True
    paid: FloatArray = options.setup_usd @ used
    return paid


def cash_usd(options: Options, picks: Picks, n_year: int) -> FloatArray:
    """Return the cash of each year, set-ups in it, shape (Y,). [USD]"""
    return by_year(options, picks, "cost_usd", n_year) + setup_usd(options, picks, n_year)


def worth_usd(options: Options, picks: Picks, n_year: int) -> float:
    """Return what the picks are worth over keeping everything, set-ups taken off, at present value. [USD]"""
    total = 0.0
    for year, paid in enumerate(setup_usd(options, picks, n_year)):
        rows = np.flatnonzero(picks.year == year)
        total += float(options.worth_usd(year)[rows, picks.way[rows]].sum())
        total -= paid / (1.0 + options.discount_frac) ** year
    return total


def current_a(options: Options, picks: Picks) -> FloatArray:
    """Return what the picks add to each flat's panel, shape (n_flat,). [ampere]"""
    added = np.where(picks.is_done, picked(options, picks, "current_a"), 0.0)
    total = np.zeros(len(options.whole_flat))
    np.add.at(total, options.flat, added)
    return total


def is_within(options: Options, limits: Limits, picks: Picks) -> bool:
    """Return whether picks keep every limit, date and mark, but for rooms that must be done."""
    slack, n_year = 1e-6, limits.n_year
    pairs = (
        (cash_usd(options, picks, n_year), limits.budget_usd),
        (by_year(options, picks, "own_hours_h", n_year), limits.own_hours_h),
        (by_year(options, picks, "electrician_d", n_year), limits.electrician_d),
        (current_a(options, picks), limits.panel_a),
    )
    done = picks.is_done
    opened = options.is_open[np.arange(options.n_room), picks.way]
    return (
        all(bool((used <= most + slack).all()) for used, most in pairs)
        and bool((opened | ~done).all())
        and bool((picks.year >= options.first_year)[done].all())
        and not bool((options.must_not & done).any())
        and _is_whole(options, picks)
    )


def _is_whole(options: Options, picks: Picks) -> bool:
    """Return whether flats that are done all at once are done so: in one year, every room that may be done."""
    counts = options.whole_flat[options.flat] & ~options.must_not
    years = picks.year[counts]
    low = np.full(len(options.whole_flat), np.iinfo(np.int64).max)
    high = np.full(len(options.whole_flat), np.iinfo(np.int64).min)
    np.minimum.at(low, options.flat[counts], years)
    np.maximum.at(high, options.flat[counts], years)
    return bool((low == high)[options.flat[counts]].all())
