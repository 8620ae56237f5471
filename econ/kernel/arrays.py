"""Array types that every domain function speaks."""

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]
BoolArray = NDArray[np.bool_]


def read_only(values: FloatArray) -> FloatArray:
    """Return the same numbers in an array that refuses to be written.

    Parameters
    ----------
    values : array_like
        Any shape. [any]

    Returns
    -------
    frozen : ndarray
        A contiguous copy, not writeable. [any]
    """
    frozen = np.array(values, dtype=np.float64)
    frozen.flags.writeable = False
    return frozen


def on_own_days(hourly: FloatArray, rows: IntArray, days: IntArray) -> FloatArray:
    """Return an array of rows and days by the hour for some rows, each on days of its own.

    Parameters
    ----------
    hourly : ndarray, shape (n_hour, B, n_day)
        Anything. [any]
    rows : ndarray of int, shape (n,)
        Positions of rows; one may come more than once. [dimensionless]
    days : ndarray of int, shape (n, m) or (1, m)
        Positions of each row's days. [dimensionless]

    Returns
    -------
    taken : ndarray, shape (n_hour, n, m)
        A copy. [any]
    """
    n_hour, n_row, n_day = hourly.shape
    taken: FloatArray = hourly.reshape(n_hour, n_row * n_day).take(rows[:, None] * n_day + days, axis=1)
    return taken
