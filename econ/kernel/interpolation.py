"""Straight lines between points, row by row, continued past the ends."""

import numpy as np

from econ.kernel.arrays import FloatArray


def along_points(at: FloatArray, point_at: FloatArray, point_value: FloatArray) -> FloatArray:
    """Return values on the straight lines through each row's points, continued past both ends.

    Parameters
    ----------
    at : array_like, shape (...)
        Where a value is wanted, the same for each row. [any]
    point_at : array_like, shape (n_point,)
        Ascending places of the points, at least two. [any]
    point_value : array_like, shape (n_row, n_point)
        Values at the points. [any]

    Returns
    -------
    value : ndarray, shape (n_row, ...)
        Piecewise linear; the end segments are continued, a caller that must not go past them clips and says so. [any]

    Examples
    --------
    >>> along_points(np.array([0.5, 3.0]), np.array([0.0, 1.0, 2.0]), np.array([[0.0, 1.0, 3.0]])).tolist()
    [[0.5, 5.0]]
    """
    at, point_at = np.asarray(at, dtype=np.float64), np.asarray(point_at, dtype=np.float64)
    rows = np.atleast_2d(np.asarray(point_value, dtype=np.float64))
    left = np.clip(np.searchsorted(point_at, at, side="right") - 1, 0, len(point_at) - 2)
    share = (at - point_at[left]) / (point_at[left + 1] - point_at[left])
    value: FloatArray = rows[:, left] * (1.0 - share) + rows[:, left + 1] * share
    return value
