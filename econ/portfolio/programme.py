"""The integer programme of a choice: a binary for each room, way and year, set-ups and whole flats beside them."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.options import ROOMS, ROOMS_BY_WAY, Limits, Options
from econ.portfolio.picks import NEVER, Picks

if TYPE_CHECKING:
    from scipy.optimize import LinearConstraint

GAP_FRAC: Final = 1e-6
"""Relative gap to which a programme is solved."""

_INFEASIBLE: Final = 2
"""What the solver calls a programme that nothing fulfils."""


@dataclass(frozen=True, slots=True, eq=False)
class Columns:
    """What may be done, one column each.

    Attributes
    ----------
    room, way, year : ndarray of int, shape (n,)
        Positions. [dimensionless]
    """

    room: IntArray
    way: IntArray
    year: IntArray


@dataclass(frozen=True, slots=True, eq=False)
class Solved:
    """What a programme gave.

    Attributes
    ----------
    picks : Picks or None
        The best choice found; None where nothing fulfils it or none was found in time.
    bound_usd : float
        No choice is worth more. [USD]
    excess : ndarray, shape (n_limit,)
        By how much each limit is overstepped, where that is allowed. [any]
    """

    picks: Picks | None
    bound_usd: float
    excess: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Terms:
    """Limits that many rooms share, one row each, those without a limit left out.

    Attributes
    ----------
    name : tuple of str
        Field of the limits.
    at : ndarray of int, shape (n_limit,)
        Position of the year, or of the flat for a panel. [dimensionless]
    most : ndarray, shape (n_limit,)
        The limits. [any]
    """

    name: tuple[str, ...]
    at: IntArray
    most: FloatArray


USES: Final = {
    "budget_usd": "cost_usd",
    "own_hours_h": "own_hours_h",
    "electrician_d": "electrician_d",
    "panel_a": "current_a",
}
"""What each limit is a limit of."""


def allowed(options: Options, n_year: int) -> BoolArray:
    """Return which ways may be gone in which years, budgets left aside, shape (R, A, Y)."""
    first = options.first_year.copy()
    counts = options.whole_flat[options.flat] & ~options.must_not
    latest = np.zeros(len(options.whole_flat), dtype=np.int64)
    np.maximum.at(latest, options.flat[counts], first[counts])
    first[counts] = latest[options.flat[counts]]
    may = options.is_open & ~options.must_not[:, None] & (np.arange(len(options.name)) != options.keep)
    found: BoolArray = may[:, :, None] & (np.arange(n_year) >= first[:, None])[:, None, :]
    return found


def columns(options: Options, n_year: int) -> Columns:
    """Return everything that may be done."""
    room, way, year = np.nonzero(allowed(options, n_year))
    return Columns(room, way, year)


def only(options: Options, rooms: IntArray) -> Options:
    """Return the options of some rooms, in their order; flats and groups keep their numbers."""
    names = (*ROOMS_BY_WAY, *ROOMS, *(("group",) if len(options.group) else ()))
    return replace(options, **{name: getattr(options, name)[rooms] for name in names})


def terms(limits: Limits) -> Terms:
    """Return the limits that are limits."""
    names, at, most = [], [], []
    for name in USES:
        for place in np.flatnonzero(np.isfinite(getattr(limits, name))):
            names.append(name)
            at.append(int(place))
            most.append(float(getattr(limits, name)[place]))
    return Terms(tuple(names), np.array(at, dtype=np.int64), np.array(most))


class _Rows:
    """Rows of a sparse programme, gathered block by block."""

    def __init__(self) -> None:
        self._parts: list[tuple[IntArray, IntArray, FloatArray]] = []
        self._low: list[FloatArray] = []
        self._high: list[FloatArray] = []
        self.count = 0

    def add(self, low: FloatArray, high: FloatArray, *parts: tuple[IntArray, IntArray, FloatArray]) -> None:
        """Add a block: its bounds, and row within the block, column and coefficient of each entry."""
        self._parts += [(row + self.count, column, value) for row, column, value in parts]
        self._low.append(low)
        self._high.append(high)
        self.count += len(low)

    def constraint(self, n_column: int) -> "LinearConstraint":
        """Return the rows as the solver takes them."""
        from scipy.optimize import LinearConstraint
        from scipy.sparse import csr_array

        row, column, value = (np.concatenate([part[at] for part in self._parts]) for at in range(3))
        matrix = csr_array((value, (row, column)), shape=(self.count, n_column))
        return LinearConstraint(matrix, np.concatenate(self._low), np.concatenate(self._high))


class Programme:
    """A choice as an integer programme.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.
    is_paid : ndarray of bool, shape (n_group, Y), optional
        Set-ups that are paid anyhow.
    """

    def __init__(self, options: Options, limits: Limits, is_paid: BoolArray | None = None) -> None:
        self.options, self.limits, self.terms = options, limits, terms(limits)
        self.columns = columns(options, limits.n_year)
        n_group, n_year = len(options.setup_usd), limits.n_year
        owed = np.repeat(options.setup_usd[:, None], n_year, axis=1) if n_group else np.zeros((0, n_year))
        self._setup_usd = owed if is_paid is None else np.where(is_paid, 0.0, owed)
        self._n = len(self.columns.room)
        self._whole = np.flatnonzero(options.whole_flat)
        self._at_setup = self._n
        self._at_whole = self._at_setup + self._setup_usd.size
        self._at_excess = self._at_whole + len(self._whole) * n_year
        self._at_left = self._at_excess + len(self.terms.most)
        self._n_column = self._at_left + options.n_room

    def best(self, must: BoolArray, seconds: float) -> Solved:
        """Return the choice that is worth most among those that do what must be done.

        Parameters
        ----------
        must : ndarray of bool, shape (R,)
            Rooms in which something is done.
        seconds : float
            Time after which the best choice found so far is taken. [second]
        """
        return self._solved(self._worth_cost(), must, seconds)

    def most_must(self, must: BoolArray, seconds: float) -> Solved:
        """Return a choice that leaves the fewest undone of the rooms that must be done."""
        cost = np.zeros(self._n_column)
        cost[self._at_left :] = 1.0
        return self._solved(cost, must, seconds, may_leave=True)

    def least_excess(self, must: BoolArray, seconds: float) -> Solved:
        """Return a choice that does all that must be done and oversteps the limits least, each as a share of itself."""
        cost = np.zeros(self._n_column)
        cost[self._at_excess : self._at_left] = 1.0
        return self._solved(cost, must, seconds, may_exceed=True)

    def _worth_cost(self) -> FloatArray:
        cost, years = np.zeros(self._n_column), np.arange(self.limits.n_year)
        worth = np.stack([self.options.worth_usd(int(year)) for year in years], axis=2)
        cost[: self._n] = -worth[self.columns.room, self.columns.way, self.columns.year]
        late = self._setup_usd / (1.0 + self.options.discount_frac) ** years
        cost[self._at_setup : self._at_whole] = late.ravel()
        return cost

    def _solved(
        self, cost: FloatArray, must: BoolArray, seconds: float, *, may_leave: bool = False, may_exceed: bool = False
    ) -> Solved:
        from scipy.optimize import Bounds, milp

        if not self._n:
            return self._empty(must, may_leave=may_leave)
        high = np.ones(self._n_column)
        high[self._at_excess : self._at_left] = np.inf if may_exceed else 0.0
        high[self._at_left :] = np.where(must & may_leave, 1.0, 0.0)
        whole = np.ones(self._n_column, dtype=np.int64)
        whole[self._at_excess : self._at_left] = 0 if may_exceed else 1
        found = milp(
            cost,
            integrality=whole,
            bounds=Bounds(np.zeros(self._n_column), high),
            constraints=self._rows(must).constraint(self._n_column),
            options={"mip_rel_gap": GAP_FRAC, "time_limit": seconds},
        )
        if found.x is None:
            return Solved(None, -np.inf if found.status == _INFEASIBLE else np.inf, np.zeros(0))
        bound = found.fun if found.mip_dual_bound is None else found.mip_dual_bound
        excess = found.x[self._at_excess : self._at_left] * self._scale()
        return Solved(self._picks(found.x), -float(bound), excess)

    def _empty(self, must: BoolArray, *, may_leave: bool) -> Solved:
        if must.any() and not may_leave:
            return Solved(None, -np.inf, np.zeros(0))
        rooms = self.options.n_room
        idle = Picks(np.full(rooms, self.options.keep), np.full(rooms, NEVER))
        return Solved(idle, 0.0, np.zeros(len(self.terms.most)))

    def _picks(self, value: FloatArray) -> Picks:
        chosen = np.flatnonzero(value[: self._n] > 0.5)
        way = np.full(self.options.n_room, self.options.keep)
        year = np.full(self.options.n_room, NEVER)
        way[self.columns.room[chosen]] = self.columns.way[chosen]
        year[self.columns.room[chosen]] = self.columns.year[chosen]
        return Picks(way, year)

    def _scale(self) -> FloatArray:
        """Return what each shared limit is divided by, so that the solver's tolerances mean the same for all."""
        scale: FloatArray = np.where(self.terms.most > 0.0, self.terms.most, 1.0)
        return scale

    def _rows(self, must: BoolArray) -> _Rows:
        rows = _Rows()
        self._once(rows, must)
        if len(self.terms.most):
            self._shared(rows)
        if self._setup_usd.size:
            self._set_up(rows)
        if len(self._whole):
            self._at_once(rows)
        return rows

    def _once(self, rows: _Rows, must: BoolArray) -> None:
        """Add that a room is done once at most, and one that must be done once at least, or is counted as left."""
        room, n_room = self.columns.room, self.options.n_room
        every = np.arange(n_room)
        rows.add(
            np.where(must, 1.0, 0.0),
            np.ones(n_room),
            (room, np.arange(self._n), np.ones(self._n)),
            (every, every + self._at_left, np.ones(n_room)),
        )

    def _shared(self, rows: _Rows) -> None:
        """Add the limits that rooms share."""
        scale, parts = self._scale(), []
        for row, (name, at) in enumerate(zip(self.terms.name, self.terms.at, strict=True)):
            here = self.options.flat[self.columns.room] if name == "panel_a" else self.columns.year
            column = np.flatnonzero(here == at)
            used = getattr(self.options, USES[name])[self.columns.room[column], self.columns.way[column]]
            parts.append((np.full(len(column), row), column, used / scale[row]))
            if name == "budget_usd" and self._setup_usd.size:
                n_group, n_year = self._setup_usd.shape
                setup = self._at_setup + np.arange(n_group) * n_year + at
                parts.append((np.full(n_group, row), setup, self._setup_usd[:, at] / scale[row]))
        excess = np.arange(len(scale))
        parts.append((excess, self._at_excess + excess, -np.ones(len(scale))))
        rows.add(np.full(len(scale), -np.inf), self.terms.most / scale, *parts)

    def _set_up(self, rows: _Rows) -> None:
        """Add that a way that needs the set-up of its group is gone only in a year in which it is paid."""
        n_year = self.limits.n_year
        column = np.flatnonzero(self.options.needs_setup[self.columns.way])
        pair = self.columns.room[column] * n_year + self.columns.year[column]
        pairs, row = np.unique(pair, return_inverse=True)
        setup = self._at_setup + self.options.group[pairs // n_year] * n_year + pairs % n_year
        rows.add(
            np.full(len(pairs), -np.inf),
            np.zeros(len(pairs)),
            (row.ravel(), column, np.ones(len(column))),
            (np.arange(len(pairs)), setup, -np.ones(len(pairs))),
        )

    def _at_once(self, rows: _Rows) -> None:
        """Add that the rooms of a whole flat that may be done are done in one year, all or none."""
        n_year, options = self.limits.n_year, self.options
        counted = np.flatnonzero(options.whole_flat[options.flat] & ~options.must_not)
        place = np.full(options.n_room, NEVER)
        place[counted] = np.arange(len(counted))
        column = np.flatnonzero(place[self.columns.room] >= 0)
        row = place[self.columns.room[column]] * n_year + self.columns.year[column]
        flat = np.searchsorted(self._whole, options.flat[counted])
        every = np.arange(len(counted) * n_year)
        held = self._at_whole + flat[every // n_year] * n_year + every % n_year
        rows.add(
            np.zeros(len(every)),
            np.zeros(len(every)),
            (row, column, np.ones(len(column))),
            (every, held, -np.ones(len(every))),
        )
