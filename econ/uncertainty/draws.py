"""Draws of all uncertain inputs together: scrambled Sobol points through each input's distribution."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError
from econ.uncertainty.pert import PertInverse
from econ.uncertainty.sobol import Sequence, scrambled_sequence

SCRAMBLES: Final = 16
"""Independent scrambles the draws are split into, so that they show their own sampling error. Assumption: sixteen give
that error within a fifth, and leave each scramble long enough to be evenly spread."""


def draw_count(asked: int) -> int:
    """Return the number of draws used: the next power of two, or none.

    Parameters
    ----------
    asked : int
        Number asked for, 0 for none. [dimensionless]

    Returns
    -------
    used : int
        0, or the smallest power of two not below what was asked and not below `SCRAMBLES`. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If a negative number is asked for.

    Examples
    --------
    >>> draw_count(0), draw_count(1), draw_count(1000), draw_count(4096)
    (0, 16, 1024, 4096)
    """
    if asked < 0:
        raise OutOfRangeError("draws", asked, "", "0 or more", "Ask for 0 to leave chances out.")
    return max(SCRAMBLES, 1 << (asked - 1).bit_length()) if asked else 0


@dataclass(frozen=True, slots=True, eq=False)
class Draws:
    """Draws of every input, of which any run can be had without the rest.

    Attributes
    ----------
    n_draw : int
        How many there are. [dimensionless]
    sequences : tuple of Sequence, length SCRAMBLES
        Independent scrambles, one after the other.
    inverse : PertInverse
        Each input's distribution.
    """

    n_draw: int
    sequences: tuple[Sequence, ...]
    inverse: PertInverse

    def runs(self, most: int) -> list[tuple[int, int]]:
        """Return first and length of each run of at most so many draws: whole scrambles, or even parts of one.

        Parameters
        ----------
        most : int
            A power of two. [dimensionless]
        """
        length = min(most, self.n_draw)
        return [(first, length) for first in range(0, self.n_draw, length)]

    def points(self, first: int, count: int, inputs: IntArray | None = None) -> FloatArray:
        """Return evenly spread points, shape (n_input, count), from 0 to below 1. [dimensionless]

        Parameters
        ----------
        first, count : int
            A run as `runs` gives it. [dimensionless]
        inputs : ndarray of int, shape (n,), optional
            Only these inputs. [dimensionless]
        """
        each = self.n_draw // SCRAMBLES
        length = min(count, each)
        parts = [
            (self.sequences[at // each] if inputs is None else self.sequences[at // each].only(inputs), at % each)
            for at in range(first, first + count, length)
        ]
        return np.concatenate([sequence.points(start, length) for sequence, start in parts], axis=1)

    def values(self, first: int, count: int) -> FloatArray:
        """Return a run of draws of every input, shape (n_input, count). [any]

        Parameters
        ----------
        first, count : int
            A run as `runs` gives it. [dimensionless]
        """
        return self.inverse.at(self.points(first, count))

    def of(self, inputs: IntArray) -> FloatArray:
        """Return all draws of some inputs, shape (n, n_draw). [any]

        Parameters
        ----------
        inputs : ndarray of int, shape (n,)
            Positions. [dimensionless]
        """
        return self.inverse.at(self.points(0, self.n_draw, inputs), inputs)


def draws_of(low: FloatArray, likely: FloatArray, high: FloatArray, n_draw: int, seed: int) -> Draws:
    """Return draws of every input, each through its PERT distribution.

    Parameters
    ----------
    low, likely, high : array_like, shape (n_input,)
        In ascending order; equal values mean no doubt and come back as they are. [any]
    n_draw : int
        Number of draws, one that `draw_count` returns. [dimensionless]
    seed : int
        Seed of the scrambles; part of the case and shown in the report. [dimensionless]

    Returns
    -------
    draws : Draws
        The same for all alternatives, and for the same seed. An input keeps its coordinate whatever the spread of
        the others.

    Raises
    ------
    OutOfRangeError
        If the number of draws is not one that `draw_count` returns, or 0.

    References
    ----------
    .. [1] Owen (1998), J. Complexity 14(4), scrambled nets; the points are those of scipy.stats.qmc.Sobol.
    """
    if n_draw <= 0 or draw_count(n_draw) != n_draw:
        allowed = f"a power of two from {SCRAMBLES}"
        raise OutOfRangeError("draws", n_draw, "", allowed, "Round it up with draw_count first.")
    streams = np.random.default_rng(seed).spawn(SCRAMBLES)
    sequences = tuple(scrambled_sequence(len(np.asarray(likely)), stream) for stream in streams)
    three = (np.asarray(side, dtype=np.float64) for side in (low, likely, high))
    return Draws(n_draw, sequences, PertInverse(*three))


def drawn(low: FloatArray, likely: FloatArray, high: FloatArray, n_draw: int, seed: int) -> FloatArray:
    """Return all draws of every input at once.

    Parameters
    ----------
    low, likely, high : array_like, shape (n_input,)
        In ascending order; equal values mean no doubt and come back as they are. [any]
    n_draw : int
        Number of draws, one that `draw_count` returns. [dimensionless]
    seed : int
        Seed of the scrambles. [dimensionless]

    Returns
    -------
    value : ndarray, shape (n_input, n_draw)
        One column a draw. [any]

    Raises
    ------
    OutOfRangeError
        If an input is out of order, or the number of draws not allowed.
    """
    return draws_of(low, likely, high, n_draw, seed).values(0, n_draw)


def drawn_option(probability: FloatArray, share_frac: FloatArray) -> IntArray:
    """Return which option each draw takes when an answer is not known.

    Parameters
    ----------
    probability : array_like, shape (n_draw,)
        Evenly spread points from 0 to below 1. [dimensionless]
    share_frac : array_like, shape (n_option,)
        How likely each option is; they add up to 1. [dimensionless]

    Returns
    -------
    option : ndarray of int, shape (n_draw,)
        Position of the option. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If a share is negative or they do not add up to 1.

    Examples
    --------
    >>> drawn_option(np.array([0.1, 0.6, 0.9]), np.array([0.5, 0.25, 0.25])).tolist()
    [0, 1, 2]
    """
    share = np.asarray(share_frac, dtype=np.float64)
    total = float(share.sum())
    if (share < 0.0).any() or abs(total - 1.0) > len(share) * np.finfo(np.float64).eps:
        raise OutOfRangeError("sum of shares", total, "", "1, none negative", "Give each option its share.")
    option: IntArray = np.searchsorted(np.cumsum(share[:-1]), probability, side="right").astype(np.int64)
    return option
