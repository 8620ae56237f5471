"""Prices on the limits that rooms share: with them each room chooses for itself, and no choice is worth more.

Lagrangian relaxation: a limit is taken away and what is used of it is charged instead. Whatever the prices, what rooms
then reach, plus what the limits themselves are worth at these prices, is a bound on every choice that keeps the limits.

References
----------
.. [1] M. L. Fisher, The Lagrangian relaxation method for solving integer programming problems, Management Science 27
   (1981): the bound, and the length of a step by what is known to be reachable (equation 6 there, from memory).
"""

from dataclasses import dataclass
from itertools import product
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError
from econ.portfolio.options import Limits, Options
from econ.portfolio.picks import NEVER, Picks
from econ.portfolio.programme import USES, allowed, terms

MOST_YEARS: Final = 3
"""Years up to which prices are looked for: every set of years in which a set-up may be paid is tried."""

_STEPS: Final = 250
_PATIENCE: Final = 8
"""Steps without a lower bound after which steps are halved."""

_SHORTEST: Final = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class Priced:
    """What rooms choose for themselves at the best prices found.

    Attributes
    ----------
    picks : Picks
        What they choose; limits may be overstepped a little.
    margin_usd : ndarray, shape (R,)
        By how much each room, or its whole flat, prefers that to the next best. [USD]
    is_paid : ndarray of bool, shape (n_group, Y)
        Set-ups that are paid.
    bound_usd : float
        No choice is worth more. [USD]
    """

    picks: Picks
    margin_usd: FloatArray
    is_paid: BoolArray
    bound_usd: float


def at_best_prices(options: Options, limits: Limits, must: BoolArray, reached_usd: float) -> Priced:
    """Return what rooms choose at the prices that bound the choice most closely.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.
    must : ndarray of bool, shape (R,)
        Rooms in which something is done.
    reached_usd : float
        What some choice that keeps the limits is worth: it sets the length of the steps. [USD]

    Raises
    ------
    OutOfRangeError
        If more than three years are planned.
    """
    if limits.n_year > MOST_YEARS:
        raise OutOfRangeError("years planned", limits.n_year, "year", f"at most {MOST_YEARS}", "Plan fewer years.")
    market = _Market(options, limits, must)
    price = np.zeros(len(market.most))
    best, length, waited = market.answer(price), 1.0, 0
    found = best
    for _ in range(_STEPS):
        over = found.used - market.most
        over[(price <= 0.0) & (over < 0.0)] = 0.0
        over *= market.pace
        square = float(over @ over)
        if square == 0.0 or length < _SHORTEST:
            break
        step = length * max(found.bound_usd - reached_usd, 1e-9 * abs(found.bound_usd)) / square
        price = np.maximum(price + step * market.pace * over, 0.0)
        found = market.answer(price)
        waited += 1
        if found.bound_usd < best.bound_usd:
            best, waited = found, 0
        elif waited >= _PATIENCE:
            price, found, length, waited = best.price, best, length / 2.0, 0
    return market.priced(best)


@dataclass(frozen=True, slots=True, eq=False)
class _Answer:
    """What the rooms take at some prices, how much of each limit that uses, and the bound it gives."""

    price: FloatArray
    way: IntArray
    year: IntArray
    value_usd: FloatArray
    is_paid: BoolArray
    used: FloatArray
    bound_usd: float


class _Market:
    """Rooms that choose for themselves at the prices they are told, all at once."""

    def __init__(self, options: Options, limits: Limits, must: BoolArray) -> None:
        self._options, self._must, self._n_year = options, must, limits.n_year
        self._may = allowed(options, limits.n_year)
        worth = np.stack([options.worth_usd(year) for year in range(limits.n_year)], axis=2)
        self._worth_usd = np.where(self._may, worth, -np.inf)
        self._terms = terms(limits)
        self._scale = np.where(self._terms.most > 0.0, self._terms.most, 1.0)
        self.most = self._terms.most / self._scale
        is_panel = np.array([name == "panel_a" for name in self._terms.name], dtype=np.bool_)
        self.pace = np.where(is_panel, max(1, is_panel.sum()) ** -0.5, 1.0)
        self._has_group = len(options.setup_usd) > 0
        self._group = options.group if self._has_group else np.zeros(options.n_room, dtype=np.int64)
        self._setup_usd = options.setup_usd if self._has_group else np.zeros(1)
        self._late = (1.0 + options.discount_frac) ** -np.arange(limits.n_year)
        self._needs = options.needs_setup & self._has_group
        self._whole = self._whole_flats()

    def _whole_flats(self) -> BoolArray:
        """Return which rooms move with their whole flat; a flat over several groups is let go: that bounds as well."""
        options = self._options
        low = np.full(len(options.whole_flat), np.iinfo(np.int64).max)
        high = np.full(len(options.whole_flat), -1)
        np.minimum.at(low, options.flat, self._group)
        np.maximum.at(high, options.flat, self._group)
        found: BoolArray = (options.whole_flat & (low == high))[options.flat] & ~options.must_not
        return found

    def answer(self, price: FloatArray) -> _Answer:
        """Return what rooms take at some prices."""
        each = price / self._scale
        net = self._net_usd(each)
        free = net[:, ~self._needs].max(axis=1)
        with_setup = np.maximum(free, net[:, self._needs].max(axis=1, initial=-np.inf))
        sets = np.array(list(product((False, True), repeat=self._n_year if self._has_group else 0)), dtype=np.bool_)
        sets = sets if self._has_group else np.zeros((1, self._n_year), dtype=np.bool_)
        setup = self._setup_usd[:, None] * (self._late + self._budget_price(each))
        value = np.stack(
            [self._by_group(self._taken(np.where(which, with_setup, free))[2]) - setup @ which for which in sets],
            axis=1,
        )
        is_paid = sets[value.argmax(axis=1)]
        year, idle, worth = self._taken(np.where(is_paid[self._group], with_setup, free))
        way = np.where(idle, self._options.keep, self._ways(net, year, is_paid))
        year = np.where(idle, NEVER, year)
        bound = float(value.max(axis=1).sum() + price @ self.most)
        return _Answer(price, way, year, worth, is_paid, self._used(way, year, is_paid), bound)

    def _ways(self, net: FloatArray, year: IntArray, is_paid: BoolArray) -> IntArray:
        """Return the best way of each room in the year it takes."""
        rooms = np.arange(len(year))
        shut = self._needs & ~is_paid[self._group, year][:, None]
        way: IntArray = np.where(shut, -np.inf, net[rooms, :, year]).argmax(axis=1)
        return way

    def _by_group(self, worth_usd: FloatArray) -> FloatArray:
        total = np.zeros(len(self._setup_usd))
        np.add.at(total, self._group, worth_usd)
        return total

    def _budget_price(self, each: FloatArray) -> FloatArray:
        price = np.zeros(self._n_year)
        for at, name in enumerate(self._terms.name):
            if name == "budget_usd":
                price[self._terms.at[at]] = each[at]
        return price

    def _net_usd(self, each: FloatArray) -> FloatArray:
        """Return what each way is worth less what it uses at its price, shape (R, A, Y). [USD]"""
        net = self._worth_usd.copy()
        panel = np.zeros(len(self._options.whole_flat))
        for at, (name, place) in enumerate(zip(self._terms.name, self._terms.at, strict=True)):
            if name == "panel_a":
                panel[place] = each[at]
            elif each[at] > 0.0:
                net[:, :, place] -= getattr(self._options, USES[name]) * each[at]
        if panel.any():
            net -= (self._options.current_a * panel[self._options.flat][:, None])[:, :, None]
        return net

    def _taken(self, by_year: FloatArray) -> tuple[IntArray, BoolArray, FloatArray]:
        """Return the year each room takes, whether it does nothing, and what that is worth."""
        year, worth = by_year.argmax(axis=1), by_year.max(axis=1)
        idle = ~self._must & ~(worth > 0.0)
        if self._whole.any():
            year[self._whole], idle[self._whole] = self._flat_years(by_year)
            worth = by_year[np.arange(len(year)), year]
        return year, idle, np.where(idle, 0.0, worth)

    def _flat_years(self, by_year: FloatArray) -> tuple[IntArray, BoolArray]:
        """Return the year each room of a whole flat takes with the others, and whether the flat does nothing."""
        flat = self._options.flat[self._whole]
        total = np.zeros((len(self._options.whole_flat), self._n_year))
        must = np.zeros(len(total), dtype=np.bool_)
        np.add.at(total, flat, by_year[self._whole])
        np.logical_or.at(must, flat, self._must[self._whole])
        return total.argmax(axis=1)[flat], ~(must | (total.max(axis=1) > 0.0))[flat]

    def _used(self, way: IntArray, year: IntArray, is_paid: BoolArray) -> FloatArray:
        """Return what is used of each limit, each as a share of it."""
        done, options = year != NEVER, self._options
        rooms, at_flat = np.flatnonzero(done), np.zeros(len(options.whole_flat))
        np.add.at(at_flat, options.flat[rooms], options.current_a[rooms, way[rooms]])
        by_name = {"panel_a": at_flat}
        for name in ("budget_usd", "own_hours_h", "electrician_d"):
            by_name[name] = np.zeros(self._n_year)
            np.add.at(by_name[name], year[rooms], getattr(options, USES[name])[rooms, way[rooms]])
        by_name["budget_usd"] += self._setup_usd @ is_paid
        pairs = zip(self._terms.name, self._terms.at, strict=True)
        return np.array([by_name[name][at] for name, at in pairs]) / self._scale

    def priced(self, found: _Answer) -> Priced:
        """Return an answer with what each room prefers by how much."""
        net = self._net_usd(found.price / self._scale)
        shut = self._needs[None, :, None] & ~found.is_paid[self._group][:, None, :]
        flat_net = np.where(shut, -np.inf, net).reshape(len(net), -1)
        taken = np.where(found.year == NEVER, 0, found.way * self._n_year + found.year)
        flat_net[np.arange(len(net)), taken] = -np.inf
        other = np.maximum(flat_net.max(axis=1), np.where((found.year == NEVER) | self._must, -np.inf, 0.0))
        margin = found.value_usd - other
        by_flat = np.full(len(self._options.whole_flat), np.inf)
        np.minimum.at(by_flat, self._options.flat, margin)
        margin = np.where(self._whole, by_flat[self._options.flat], margin)
        return Priced(Picks(found.way, found.year), margin, found.is_paid, found.bound_usd)
