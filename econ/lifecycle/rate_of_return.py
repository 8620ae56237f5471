"""Internal rate of return of many rows at once, with a plain word where there is none or more than one."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray, read_only

LOWEST_RATE: Final = -0.99
HIGHEST_RATE: Final = 1000.0
"""Rates looked at: from losing all but a hundredth each year to a thousandfold gain. Assumption: beyond them a rate
tells nobody anything."""

_PASSES: Final = 80
_STEP: Final = 1e-6
"""A step of Halley's rule below this leaves an error of its cube: below a double's rounding."""

_ROWS_AT_ONCE: Final = 4096
"""Rows worked at a time, so that their years stay in the processor's cache: half the time of all at once."""


@lru_cache(maxsize=1)
def _scan() -> FloatArray:
    """Return log(1 + rate) at which signs are looked at: close together where rates are ordinary."""
    low, high = np.log1p(LOWEST_RATE), np.log1p(HIGHEST_RATE)
    parts = (
        np.linspace(low, -0.7, 16, endpoint=False),
        np.linspace(-0.7, 0.7, 40, endpoint=False),
        np.linspace(0.7, high, 16),
    )
    return read_only(np.concatenate(parts))


@dataclass(frozen=True, slots=True, eq=False)
class InternalRate:
    """The rate at which a flow is worth nothing.

    Attributes
    ----------
    rate_frac : ndarray, shape (...)
        Internal rate of return; NaN where there is none or more than one. [dimensionless]
    exists : ndarray of bool, shape (...)
        Exactly one such rate, of money put in first and got back later.
    is_multiple : ndarray of bool, shape (...)
        More than one such rate.
    """

    rate_frac: FloatArray
    exists: BoolArray
    is_multiple: BoolArray


def _sign_changes(values: FloatArray) -> IntArray:
    """Return how often each row changes sign, zeros passed over."""
    sign = (values > 0.0).view(np.int8) - (values < 0.0).view(np.int8)
    if not sign.all():
        places = np.where(sign != 0, np.arange(sign.shape[-1]), 0)
        sign = np.take_along_axis(sign, np.maximum.accumulate(places, axis=-1), axis=-1)
    changes: IntArray = np.count_nonzero((sign[:, 1:] != sign[:, :-1]) & (sign[:, :-1] != 0), axis=-1)
    return changes


def _powers(base: FloatArray, count: int) -> FloatArray:
    """Return base to the power 0, 1, ... on a new first axis, by doubling what is filled."""
    powers = np.empty((count, *base.shape))
    powers[0] = 1.0
    filled = 1
    while filled < count:
        more = min(filled, count - filled)
        np.multiply(powers[:more], powers[filled - 1] * base, out=powers[filled : filled + more])
        filled += more
    return powers


def _over_years(by_year: FloatArray) -> FloatArray:
    """Return sums over the first axis, added in the same order however many rows there are."""
    n_row = by_year.shape[1]
    total: FloatArray = (by_year if n_row > 1 else np.repeat(by_year, 2, axis=1)).sum(axis=0)
    return total[:n_row]


def _weighted(weights: FloatArray, by_year: FloatArray) -> FloatArray:
    """Return sums over the first axis of products, added in the same order however many rows there are."""
    n_row = by_year.shape[1]
    if n_row == 1:
        weights, by_year = np.repeat(weights, 2, axis=1), np.repeat(by_year, 2, axis=1)
    total: FloatArray = np.einsum("tn,tn->n", weights, by_year)
    return total[:n_row]


def _halley_step(
    by_year: FloatArray, moments: tuple[FloatArray, FloatArray], growth: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Return present value at a growth, and the next growth by Halley's rule; years on the first axis."""
    weights = _powers(np.exp(-growth), len(by_year))
    worth, slope, bend = _weighted(weights, by_year), -_weighted(weights, moments[0]), _weighted(weights, moments[1])
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        return worth, growth - 2.0 * worth * slope / (2.0 * slope * slope - worth * bend)


def _start(by_year: FloatArray, moment: FloatArray, low: FloatArray, high: FloatArray) -> FloatArray:
    """Return a first guess: the growth that turns what is put in into what comes back at its mean time."""
    returned = _over_years(np.maximum(by_year, 0.0))
    spent = returned - _over_years(by_year)
    later = _over_years(np.maximum(moment, 0.0))
    span = later / returned - (later - _over_years(moment)) / spent
    guess = np.log(returned / spent) / np.where(span > 0.0, span, 1.0)
    return np.where((guess > low) & (guess < high), guess, 0.5 * (low + high))


def _root(flow: FloatArray, bracket: "_Bracket") -> FloatArray:
    """Return the growth in each bracket at which a flow is worth nothing: Halley, halving where it would step out."""
    by_year = np.ascontiguousarray(flow.T)
    years = np.arange(len(by_year), dtype=np.float64)[:, None]
    moment = by_year * years
    moments = moment, moment * years
    low, high = bracket.low.copy(), bracket.high.copy()
    growth = _start(by_year, moment, low, high)
    is_live = np.ones(len(growth), dtype=np.bool_)
    for _ in range(_PASSES):
        worth, step = _halley_step(by_year, moments, growth)
        is_left = (worth > 0.0) == bracket.is_falling
        np.copyto(low, growth, where=is_live & is_left)
        np.copyto(high, growth, where=is_live & ~is_left)
        is_inside = (step >= low) & (step <= high)
        refined = np.where(is_inside, step, 0.5 * (low + high))
        is_near = (np.abs(refined - growth) <= _STEP * (1.0 + np.abs(refined))) & is_inside
        moves = is_live & (worth != 0.0) & (refined != growth)
        np.copyto(growth, refined, where=moves)
        is_live = moves & ~is_near
        if not is_live.any():
            break
    return growth


@dataclass(frozen=True, slots=True, eq=False)
class _Bracket:
    """Where the one root of a row lies, in log(1 + rate), whether worth falls there, and how many roots there are."""

    low: FloatArray
    high: FloatArray
    is_falling: BoolArray
    count: IntArray

    def of(self, rows: BoolArray) -> "_Bracket":
        """Return the brackets of some rows."""
        return _Bracket(self.low[rows], self.high[rows], self.is_falling[rows], self.count[rows])


def _scanned(flow: FloatArray, scan: FloatArray) -> _Bracket:
    """Return brackets from the signs of present value along a scan of rates."""
    years = np.arange(flow.shape[-1], dtype=np.float64)
    is_positive = flow @ np.exp(-np.outer(years, scan)) > 0.0
    is_crossing = is_positive[:, 1:] != is_positive[:, :-1]
    place = np.argmax(is_crossing, axis=-1)
    is_falling = np.take_along_axis(is_positive, place[:, None], axis=-1)[:, 0]
    return _Bracket(scan[place], scan[place + 1], is_falling, np.count_nonzero(is_crossing, axis=-1))


def _bracket(flow: FloatArray) -> _Bracket:
    """Return brackets by the cheapest rule that proves a single rate, else by the scan."""
    scan, is_single = _scan(), _sign_changes(flow) == 1
    if is_single.all():
        return _scanned(flow, np.array([scan[0], scan[-1]]))
    is_ordinary = np.zeros(len(flow), dtype=np.bool_)
    total = np.cumsum(flow[~is_single], axis=-1)
    is_ordinary[~is_single] = (_sign_changes(total) == 1) & (total[:, -1] > 0.0)
    low, high, is_falling = np.empty(len(flow)), np.empty(len(flow)), np.empty(len(flow), dtype=np.bool_)
    found = _Bracket(low, high, is_falling, np.empty(len(flow), dtype=np.int64))
    whole = (np.array([scan[0], scan[-1]]), np.array([0.0, scan[-1]]), scan)
    for rows, ends in zip((is_single, is_ordinary, ~(is_single | is_ordinary)), whole, strict=True):
        part = _scanned(flow[rows], ends)
        found.low[rows], found.high[rows] = part.low, part.high
        found.is_falling[rows], found.count[rows] = part.is_falling, part.count
    return found


def internal_rate(flow_usd: FloatArray) -> InternalRate:
    """Return the rate at which extra money put in first earns exactly nothing over its cost.

    Parameters
    ----------
    flow_usd : array_like, shape (..., n_year + 1)
        Costs of the base case less those of the alternative: money put in negative, got back positive. [USD]

    Returns
    -------
    rate : InternalRate
        Does not exist where the first amount that is not nothing is positive (money is got first), where no rate within
        `LOWEST_RATE` to `HIGHEST_RATE` fits, or where more than one does.

    Notes
    -----
    One sign change of the flow proves a single rate (Descartes); one sign change of its running total, ending above
    nothing, proves a single rate above 0 (Norstrom), and a rate below 0 beside it is left aside. Other flows are looked
    at along a scan of rates; two rates closer together than its step (0.035 in log(1 + rate) where rates are ordinary)
    count as none.

    References
    ----------
    .. [1] ASTM E1057, internal rate of return.
    .. [2] Norstrom, C. J. (1972), J. Financial and Quantitative Analysis 7(3), p. 1835.

    Examples
    --------
    >>> round(float(internal_rate(np.array([-100.0, 39.0, 59.0, 55.0, 20.0])).rate_frac), 5)
    0.28095
    """
    given = np.asarray(flow_usd, dtype=np.float64)
    flow = np.ascontiguousarray(given.reshape(-1, given.shape[-1]))
    rate, count = np.full(len(flow), np.nan), np.zeros(len(flow), dtype=np.int64)
    for start in range(0, len(flow), _ROWS_AT_ONCE):
        part = slice(start, start + _ROWS_AT_ONCE)
        rate[part], count[part] = _rates(flow[part])
    shape = given.shape[:-1]
    return InternalRate(rate.reshape(shape), (count == 1).reshape(shape), (count > 1).reshape(shape))


def _rates(flow: FloatArray) -> tuple[FloatArray, IntArray]:
    """Return the internal rate of each row, NaN where there is not exactly one, and how many there are."""
    rate, count = np.full(len(flow), np.nan), np.zeros(len(flow), dtype=np.int64)
    first = np.take_along_axis(flow, np.argmax(flow != 0.0, axis=-1)[:, None], axis=-1)[:, 0]
    is_asked = (first < 0.0) & (flow > 0.0).any(axis=-1)
    asked = flow if is_asked.all() else flow[is_asked]
    found = _bracket(asked)
    count[is_asked] = found.count
    is_one = found.count == 1
    one = asked if is_one.all() else asked[is_one]
    rate[np.flatnonzero(is_asked)[is_one]] = np.expm1(_root(one, found.of(is_one)))
    return rate, count
