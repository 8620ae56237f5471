"""The factor, row by row, at which a rating comes out as published."""

from collections.abc import Callable
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError

Rating = Callable[[FloatArray], FloatArray]

PASSES: Final = 9
"""Passes of the Illinois rule; in logarithms a rating is nearly straight in its factor. A test holds the residual."""


ROUNDING: Final = 1e-12
"""Share by which a published value may lie outside the bracket from rounding alone."""


def matched_factor(
    rating_at: Callable[[FloatArray], FloatArray],
    target_btu_per_wh: FloatArray,
    bracket_frac: tuple[float, float],
    name: str,
) -> FloatArray:
    """Return the factor at which a rating equals its published value.

    Parameters
    ----------
    rating_at : callable
        Rating of every row at a factor a row; falls as the factor rises. [any]
    target_btu_per_wh : ndarray, shape (B,)
        Published values. [Btu/(W*hour)]
    bracket_frac : tuple of float
        Least and greatest factor. [dimensionless]
    name : str
        The rating's name, for the error.

    Returns
    -------
    factor : ndarray, shape (B,)
        Found by the Illinois rule in logarithms, always the same number of passes. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If a published value lies outside what the bracket gives.

    References
    ----------
    .. [1] Dowell, Jarratt (1971), A modified regula falsi method, BIT 11, 168-174.
    """
    left, right = (np.full(target_btu_per_wh.shape, np.log(end)) for end in bracket_frac)
    best, worst = rating_at(np.exp(left)), rating_at(np.exp(right))
    _refuse_outside(target_btu_per_wh, worst, best, name)
    left_miss, right_miss = np.log(best / target_btu_per_wh), np.log(worst / target_btu_per_wh)
    for _ in range(PASSES):
        rise = right_miss - left_miss
        is_done = (rise == 0.0) | (right_miss == 0.0)
        step = np.where(is_done, 0.0, right_miss * (right - left) / np.where(is_done, 1.0, rise))
        trial = right - step
        miss = np.log(rating_at(np.exp(trial)) / target_btu_per_wh)
        is_same_side = miss * right_miss > 0.0
        left = np.where(is_same_side, left, right)
        left_miss = np.where(is_same_side, 0.5 * left_miss, right_miss)
        right, right_miss = trial, miss
    factor: FloatArray = np.exp(right)
    return factor


def _refuse_outside(target_btu_per_wh: FloatArray, worst: FloatArray, best: FloatArray, name: str) -> None:
    """Raise for the first published value that no factor of the bracket gives."""
    is_outside = (target_btu_per_wh > best * (1.0 + ROUNDING)) | (target_btu_per_wh < worst * (1.0 - ROUNDING))
    if is_outside.any():
        row = int(np.argmax(is_outside))
        allowed = f"between {worst[row]:.2f} and {best[row]:.2f}"
        remedy = "Check that all ratings belong to one unit and to the 2023 procedure."
        raise OutOfRangeError(name, float(target_btu_per_wh[row]), "Btu/Wh", allowed, remedy)
