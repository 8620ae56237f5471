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
