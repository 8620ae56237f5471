"""The simple choice: the most worth for each dollar first, as far as money, hours and panels go."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.options import Limits, Options
from econ.portfolio.picks import NEVER, Picks


@dataclass(frozen=True, slots=True, eq=False)
class _Left:
    """What is left to spend, changed as rooms are taken, and what each way is worth in each year."""

    budget_usd: FloatArray
    own_hours_h: FloatArray
    electrician_d: FloatArray
    panel_a: FloatArray
    has_setup: BoolArray
    worth_usd: tuple[FloatArray, ...]


def greedy(options: Options, limits: Limits) -> Picks:
    """Return a choice that keeps every limit: rooms that must be done first, then by worth a dollar.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.

    Returns
    -------
    picks : Picks
        A room that must be done and does not fit is left undone.
    """
    left = _Left(
        limits.budget_usd.copy(), limits.own_hours_h.copy(), limits.electrician_d.copy(), limits.panel_a.copy(),
        np.zeros((max(len(options.setup_usd), 1), limits.n_year), dtype=np.bool_),
        tuple(np.where(options.is_open, options.worth_usd(year), -np.inf) for year in range(limits.n_year)),
    )  # fmt: skip
    way, year = np.full(options.n_room, options.keep), np.full(options.n_room, NEVER)
    for rooms in _ordered(options):
        for at in range(int(options.first_year[rooms].max()), limits.n_year):
            found = _best(options, left, rooms, at)
            if found is not None:
                _take(options, left, rooms, found, at)
                way[rooms], year[rooms] = found, at
                break
    return Picks(way, year)


def _ordered(options: Options) -> list[IntArray]:
    """Return rooms, or flats that are done at once, in the order in which they are tried."""
    free = np.flatnonzero(~options.must_not)
    at_once = options.whole_flat[options.flat]
    units = [np.array([room]) for room in free[~at_once[free]]]
    whole = free[at_once[free]]
    units += [whole[options.flat[whole] == flat] for flat in np.unique(options.flat[whole])]
    worth = np.where(options.is_open, options.worth_usd(), -np.inf)
    worth[:, options.keep] = -np.inf
    best = worth.argmax(axis=1)
    rooms = np.arange(options.n_room)
    value, cost = worth[rooms, best], np.maximum(options.cost_usd[rooms, best], 1.0)
    rank = [(not options.must[unit].any(), -float(value[unit].sum() / cost[unit].sum())) for unit in units]
    return [units[at] for at in sorted(range(len(units)), key=lambda at: (*rank[at], int(units[at][0])))]


def _best(options: Options, left: _Left, rooms: IntArray, year: int) -> IntArray | None:
    """Return the ways of the rooms that are worth most and still fit in a year, or None."""
    worth = left.worth_usd[year][rooms]
    worth[:, options.keep] = -np.inf
    must = options.must[rooms]
    for rank in range(worth.shape[1] - 1):
        ways = np.argsort(-worth, axis=1, kind="stable")[:, rank]
        value = worth[np.arange(len(rooms)), ways]
        if not np.isfinite(value).all() or (value.sum() <= 0.0 and not must.any()):
            return None
        if _fits(options, left, rooms, ways, year):
            return ways
    return None


def _fits(options: Options, left: _Left, rooms: IntArray, ways: IntArray, year: int) -> bool:
    cash = options.cost_usd[rooms, ways].sum() + _setup_usd(options, left, rooms, ways, year)
    return bool(
        cash <= left.budget_usd[year]
        and options.own_hours_h[rooms, ways].sum() <= left.own_hours_h[year]
        and options.electrician_d[rooms, ways].sum() <= left.electrician_d[year]
        and all(
            options.current_a[rooms, ways][options.flat[rooms] == flat].sum() <= left.panel_a[flat]
            for flat in set(options.flat[rooms].tolist())
        )
    )


def _new_groups(options: Options, left: _Left, rooms: IntArray, ways: IntArray, year: int) -> IntArray:
    if not len(options.setup_usd):
        return np.zeros(0, dtype=np.int64)
    groups = np.unique(options.group[rooms[options.needs_setup[ways]]])
    fresh: IntArray = groups[~left.has_setup[groups, year]]
    return fresh


def _setup_usd(options: Options, left: _Left, rooms: IntArray, ways: IntArray, year: int) -> float:
    return float(options.setup_usd[_new_groups(options, left, rooms, ways, year)].sum())


def _take(options: Options, left: _Left, rooms: IntArray, ways: IntArray, year: int) -> None:
    left.budget_usd[year] -= options.cost_usd[rooms, ways].sum() + _setup_usd(options, left, rooms, ways, year)
    left.has_setup[_new_groups(options, left, rooms, ways, year), year] = True
    left.own_hours_h[year] -= options.own_hours_h[rooms, ways].sum()
    left.electrician_d[year] -= options.electrician_d[rooms, ways].sum()
    np.subtract.at(left.panel_a, options.flat[rooms], options.current_a[rooms, ways])
