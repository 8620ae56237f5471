"""Draws of all uncertain inputs together: scrambled Sobol points through each input's distribution."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError
from econ.uncertainty.pert import pert_inverse
from econ.uncertainty.sobol import sobol_points

SCRAMBLES: Final = 8
"""Independent scrambles the draws are split into, so that they show their own sampling error. Assumption: eight give
that error within a third, and leave each scramble long enough to be evenly spread."""


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
    (0, 8, 1024, 4096)
    """
    if asked < 0:
        raise OutOfRangeError("draws", asked, "", "0 or more", "Ask for 0 to leave chances out.")
    return max(SCRAMBLES, 1 << (asked - 1).bit_length()) if asked else 0


def uniform_points(n_input: int, n_draw: int, seed: int) -> FloatArray:
    """Return evenly spread points, one coordinate an input, in `SCRAMBLES` independent runs one after the other.

    Parameters
    ----------
    n_input : int
        Coordinates. [dimensionless]
    n_draw : int
        Points, a number that `draw_count` returns. [dimensionless]
    seed : int
        Seed of the scrambles. [dimensionless]

    Returns
    -------
    points : ndarray, shape (n_input, n_draw)
        From 0 to below 1. The same seed gives the same points. [dimensionless]

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
    each = n_draw // SCRAMBLES
    streams = np.random.default_rng(seed).spawn(SCRAMBLES)
    return np.concatenate([sobol_points(n_input, each, stream) for stream in streams], axis=1)


def drawn(low: FloatArray, likely: FloatArray, high: FloatArray, n_draw: int, seed: int) -> FloatArray:
    """Return draws of every input, each through its PERT distribution.

    Parameters
    ----------
    low, likely, high : array_like, shape (n_input,)
        In ascending order; equal values mean no doubt and come back as they are. [any]
    n_draw : int
        Number of draws, one that `draw_count` returns. [dimensionless]
    seed : int
        Seed; part of the case and shown in the report. [dimensionless]

    Returns
    -------
    value : ndarray, shape (n_input, n_draw)
        One column a draw, the same for all alternatives. An input keeps its coordinate whatever the spread of the
        others. [any]

    Raises
    ------
    OutOfRangeError
        If an input is out of order, or the number of draws not allowed.
    """
    n_input = len(np.asarray(likely))
    return pert_inverse(uniform_points(n_input, n_draw, seed), low, likely, high)


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
