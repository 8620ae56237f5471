"""PERT distribution of an uncertain input: low, likely, high, and a tabulated inverse."""

from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError

LIKELY_WEIGHT: Final = 4.0
"""Weight of the likely value in the PERT mean, (low + 4 likely + high) / 6. Malcolm, Roseboom, Clark & Fazar (1959),
Operations Research 7(5), p. 646."""

_NODES: Final = 4097
"""Nodes of the tabulated inverse: within 1e-6 of the range of the exact one, held by a test."""

_STEPS: Final = 4096
"""Even steps of probability whose first node is kept: as many as there are nodes, most of which then hold one."""


def relative_mode(low: FloatArray, likely: FloatArray, high: FloatArray) -> FloatArray:
    """Return where the likely value lies between low and high; 0 where they are equal.

    Parameters
    ----------
    low, likely, high : array_like, shape (...)
        In ascending order. [any]

    Returns
    -------
    mode : ndarray, shape (...)
        0 at the low, 1 at the high. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the three are not in ascending order or not finite.
    """
    bottom, middle, top = (np.asarray(values, dtype=np.float64) for values in (low, likely, high))
    is_wrong: BoolArray = ~((bottom <= middle) & (middle <= top) & np.isfinite(top - bottom))
    if is_wrong.any():
        worst = int(np.argmax(np.atleast_1d(is_wrong)))
        values = [float(np.atleast_1d(side)[worst]) for side in (bottom, middle, top)]
        allowed = f"between its low {values[0]:g} and its high {values[2]:g}, all finite"
        raise OutOfRangeError("likely value", values[1], "", allowed, "Put the three in ascending order.")
    span = top - bottom
    mode: FloatArray = (middle - bottom) / np.where(span > 0.0, span, 1.0)
    return mode


def mean_and_variance(low: FloatArray, likely: FloatArray, high: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the mean and the variance of a PERT distribution.

    Parameters
    ----------
    low, likely, high : array_like, shape (...)
        In ascending order. [any]

    Returns
    -------
    mean : ndarray, shape (...)
        (low + 4 likely + high) / 6. [any]
    variance : ndarray, shape (...)
        (mean - low)(high - mean) / 7. It is (high - low)**2 / 36 only where the likely value lies about a seventh of
        the range from an end. [any**2]

    References
    ----------
    .. [1] Malcolm, Roseboom, Clark & Fazar (1959), Operations Research 7(5), p. 646; beta distribution with
       alpha = 1 + 4 m, beta = 1 + 4 (1 - m).
    """
    mode = relative_mode(low, likely, high)
    span = np.asarray(high, dtype=np.float64) - low
    share = (1.0 + LIKELY_WEIGHT * mode) / (2.0 + LIKELY_WEIGHT)
    mean: FloatArray = low + share * span
    variance: FloatArray = span**2 * share * (1.0 - share) / (3.0 + LIKELY_WEIGHT)
    return mean, variance


def _below(mode: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return places from 0 to 1, crowded at both ends, and the probability below each, one row a mode.

    With x = sin(a)**2 the beta density becomes sin(a)**(2 alpha - 1) cos(a)**(2 beta - 1) da, smooth to both ends;
    two-point Gauss steps add it up, and the last sum makes it 1.
    """
    edge = np.linspace(0.0, 0.5 * np.pi, _NODES)
    half = 0.5 * (edge[1] - edge[0])
    angle = (edge[:-1] + half) + half / np.sqrt(3.0) * np.array([[-1.0], [1.0]])
    rising = (1.0 + 2.0 * LIKELY_WEIGHT * mode)[:, None, None]
    falling = (1.0 + 2.0 * LIKELY_WEIGHT * (1.0 - mode))[:, None, None]
    density = np.exp(rising * np.log(np.sin(angle)) + falling * np.log(np.cos(angle))).sum(axis=1)
    below = np.zeros((len(mode), _NODES))
    np.cumsum(density, axis=1, out=below[:, 1:])
    return np.sin(edge) ** 2, below / below[:, -1:]


@dataclass(frozen=True, slots=True, eq=False)
class _Ladder:
    """Straight lines between places at rising probabilities, of which the right one is found without a search.

    Attributes
    ----------
    below, place : ndarray, shape (_NODES,)
        Probability below each place, and the places. [dimensionless]
    above, rise : ndarray, shape (_NODES,)
        The next probability, infinite at the end, and the slope to there. [dimensionless]
    first : ndarray of int, shape (_STEPS + 1,)
        The last node that is not past each of as many even steps from 0 to 1. [dimensionless]
    """

    below: FloatArray
    place: FloatArray
    above: FloatArray
    rise: FloatArray
    first: IntArray

    def at(self, probability: FloatArray) -> FloatArray:
        """Return what ``np.interp`` gives, shape (n,), at probabilities from 0 to 1. [dimensionless]

        Most steps hold one node at most; where one holds more, its few points are searched for.
        """
        node = self.first.take((probability * _STEPS).astype(np.int64))
        node += self.above.take(node) <= probability
        late = np.flatnonzero(self.above.take(node) <= probability)
        if late.size:
            node[late] = np.searchsorted(self.below, probability[late], side="right") - 1
        place: FloatArray = probability - self.below.take(node)
        place *= self.rise.take(node)
        place += self.place.take(node)
        return place


def _ladder(below: FloatArray, place: FloatArray) -> _Ladder:
    """Return the lines between nodes; nodes without any probability between them are never stood on but at the end."""
    run = np.diff(below)
    rise = np.append(np.divide(np.diff(place), run, out=np.zeros_like(run), where=run > 0.0), 0.0)
    first = np.searchsorted(below, np.arange(_STEPS + 1) / _STEPS, side="right") - 1
    return _Ladder(below, place, np.append(below[1:], np.inf), rise, first)


@dataclass(frozen=True, eq=False)
class PertInverse:
    """The tabulated inverse of every input's distribution.

    Attributes
    ----------
    low, likely, high : ndarray, shape (n_input,)
        In ascending order. [any]
    """

    low: FloatArray
    likely: FloatArray
    high: FloatArray

    @cached_property
    def _ladders(self) -> dict[int, _Ladder]:
        """The tabulated inverse from 0 to 1 of every input with a spread, by position."""
        mode = relative_mode(self.low, self.likely, self.high)
        rows = np.flatnonzero(self.high > self.low)
        shape, which = np.unique(mode[rows], return_inverse=True)  # many inputs lean alike
        place, below = _below(shape)
        ladders = [_ladder(each, place) for each in below]
        return {row: ladders[at] for row, at in zip(rows.tolist(), which.tolist(), strict=True)}

    def at(self, probability: FloatArray, inputs: IntArray | None = None) -> FloatArray:
        """Return the values below which inputs lie with given probabilities.

        Parameters
        ----------
        probability : array_like, shape (n, n_draw)
            Between 0 and 1, a row an input. [dimensionless]
        inputs : ndarray of int, shape (n,), optional
            Which inputs; all of them, in order, if left out. [dimensionless]

        Returns
        -------
        value : ndarray, shape (n, n_draw)
            Within 1e-6 of the range of the exact inverse; exactly the likely value without a spread. [any]

        Raises
        ------
        OutOfRangeError
            If the three numbers of an input are not in ascending order.
        """
        ladders = self._ladders
        chosen = np.arange(len(self.likely)) if inputs is None else inputs
        low, high = self.low[chosen], self.high[chosen]
        value: FloatArray = np.repeat(self.likely[chosen][:, None], np.shape(probability)[-1], axis=1)
        for row in np.flatnonzero(high > low):
            share = ladders[int(chosen[row])].at(probability[row])
            value[row] = low[row] + (high[row] - low[row]) * share
        np.minimum(value, high[:, None], out=value)  # rounding alone can pass the high by one unit in the last place
        return value


def pert_inverse(probability: FloatArray, low: FloatArray, likely: FloatArray, high: FloatArray) -> FloatArray:
    """Return the values below which an input lies with given probabilities.

    Parameters
    ----------
    probability : array_like, shape (n_input, n_draw)
        Between 0 and 1. [dimensionless]
    low, likely, high : array_like, shape (n_input,)
        In ascending order. [any]

    Returns
    -------
    value : ndarray, shape (n_input, n_draw)
        As `PertInverse.at` gives them. [any]

    Raises
    ------
    OutOfRangeError
        If the three are not in ascending order.

    Examples
    --------
    >>> pert_inverse(np.array([[0.0, 0.5, 1.0]]), np.array([0.0]), np.array([5.0]), np.array([10.0])).round(5).tolist()
    [[0.0, 5.0, 10.0]]
    """
    three = (np.asarray(side, dtype=np.float64) for side in (low, likely, high))
    return PertInverse(*three).at(probability)
