"""The hole in the wall: bites of a core bit."""

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError

_ROUNDING = 1e-9


def core_bites(wall_thickness_m: FloatArray, bite_m: FloatArray) -> FloatArray:
    """Return how often a core bit must be emptied and set again to get through a wall.

    Parameters
    ----------
    wall_thickness_m : array_like, shape () or (B,)
        What is drilled, above 0. [m]
    bite_m : array_like, shape () or (B,)
        Depth of one bite of the bit, above 0. [m]

    Returns
    -------
    bites_count : ndarray, shape () or (B,)
        Whole number of bites, at least 1. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If thickness or bite is not above 0.

    Examples
    --------
    >>> float(core_bites(0.254, 0.1016))
    3.0
    """
    thickness, bite = np.asarray(wall_thickness_m, dtype=np.float64), np.asarray(bite_m, dtype=np.float64)
    for name, value in (("wall thickness", thickness), ("depth of a bite", bite)):
        if not np.all(value > 0.0):
            raise OutOfRangeError(name, float(np.min(value)), "m", "above 0", "Measure it at a door or window.")
    bites: FloatArray = np.ceil(thickness / bite - _ROUNDING)
    return bites
