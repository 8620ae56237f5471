"""The simple choice: the most worth for each dollar first, as far as money, hours and panels go."""

from dataclasses import dataclass, replace

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.options import Limits, Options, annuity_yr
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
    return _in_order(options, limits, _ordered(options, _units(options), _by_dollar(options)))


def by_payback(options: Options, limits: Limits) -> Picks:
    """Return the choice of a list ranked by payback: in each room the way that pays back soonest, soonest first.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.

    Returns
    -------
    picks : Picks
        Rooms that must be done first; what does not pay back within the years counted is passed over; every limit is
        kept. In a flat done at once a room that never pays back goes its cheapest way with the others.
    """
    soonest = _soonest(options)
    rooms = np.arange(options.n_room)
    listed = replace(options, is_open=(np.arange(len(options.name)) == soonest[:, None]) & options.is_open)
    yearly = _yearly_usd(options)[rooms, soonest]
    cost = options.cost_usd[rooms, soonest]
    units, place = _units(options), np.full(options.n_room, np.inf)
    for unit in units:
        gain = yearly[unit].sum()
        place[unit] = cost[unit].sum() / gain if gain > 0.0 else np.inf
    listed = replace(listed, must=options.must | (place <= options.study_period_yr))
    kept = [unit for unit in units if listed.must[unit].any()]
    return _in_order(listed, limits, _ordered(options, kept, place))


def _soonest(options: Options) -> IntArray:
    """Return the open way of each room that pays back soonest, the cheapest where none does in time, else keeping."""
    payback = payback_yr(options)
    payback = np.where(payback <= options.study_period_yr, payback, np.inf)
    may = options.is_open & (np.arange(len(options.name)) != options.keep)
    cheapest = np.where(may, options.cost_usd, np.inf).argmin(axis=1)
    found: IntArray = np.where(np.isfinite(payback.min(axis=1)), payback.argmin(axis=1), cheapest)
    return np.where(may.any(axis=1), found, options.keep)


def _yearly_usd(options: Options) -> FloatArray:
    """Return the equal yearly amount that is worth what each way brings beside its cash, shape (R, A). [USD/year]"""
    years = annuity_yr(options.discount_frac, options.study_period_yr)
    found: FloatArray = (options.benefit_usd + options.cost_usd) / years
    return found


def payback_yr(options: Options) -> FloatArray:
    """Return in how many years each open way gives back its cash, infinity for never, shape (R, A). [year]

    What a way brings a year is the same in each year here: the equal yearly amount that is worth as much.
    """
    yearly = _yearly_usd(options)
    may = options.is_open & (yearly > 0.0) & (np.arange(len(options.name)) != options.keep)
    found: FloatArray = np.where(may, options.cost_usd / np.where(may, yearly, 1.0), np.inf)
    return found


def _in_order(options: Options, limits: Limits, units: list[IntArray]) -> Picks:
    """Return what fits of rooms, or of flats done at once, tried in an order."""
    left = _Left(
        limits.budget_usd.copy(), limits.own_hours_h.copy(), limits.electrician_d.copy(), limits.panel_a.copy(),
        np.zeros((max(len(options.setup_usd), 1), limits.n_year), dtype=np.bool_),
        tuple(np.where(options.is_open, options.worth_usd(year), -np.inf) for year in range(limits.n_year)),
    )  # fmt: skip
    way, year = np.full(options.n_room, options.keep), np.full(options.n_room, NEVER)
    for rooms in units:
        for at in range(int(options.first_year[rooms].max()), limits.n_year):
            found = _best(options, left, rooms, at)
            if found is not None:
                _take(options, left, rooms, found, at)
                way[rooms], year[rooms] = found, at
                break
    return Picks(way, year)


def _by_dollar(options: Options) -> FloatArray:
    """Return each room's place by the worth of its best way a dollar, the most first."""
    worth = np.where(options.is_open, options.worth_usd(), -np.inf)
    worth[:, options.keep] = -np.inf
    best, rooms = worth.argmax(axis=1), np.arange(options.n_room)
    found: FloatArray = -worth[rooms, best] / np.maximum(options.cost_usd[rooms, best], 1.0)
    return found


def _units(options: Options) -> list[IntArray]:
    """Return rooms, or flats that are done at once, in which anything may be done."""
    free = np.flatnonzero(~options.must_not)
    at_once = options.whole_flat[options.flat]
    units = [np.array([room]) for room in free[~at_once[free]]]
    whole = free[at_once[free]]
    order = np.argsort(options.flat[whole], kind="stable")
    starts = np.flatnonzero(np.diff(options.flat[whole][order])) + 1
    return units + [np.sort(each) for each in np.split(whole[order], starts) if len(each)]


def _ordered(options: Options, units: list[IntArray], place: FloatArray) -> list[IntArray]:
    """Return rooms, or flats that are done at once, in the order in which they are tried: what must be done first."""
    rank = [(not options.must[unit].any(), float(place[unit].mean())) for unit in units]
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
