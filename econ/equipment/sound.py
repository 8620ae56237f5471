"""Sound outdoors: how loud a unit is some way off."""

import numpy as np

from econ.kernel.arrays import FloatArray

NEAR_M = 1.0
"""m; how far off the level of a class is stated: common practice, no source."""

WALL_GAIN_DB = 3.0
"""dB that one wall behind the unit adds at most, by sending half of the sound forward: common practice, no source."""


def level_db(near_db: FloatArray, distance_m: FloatArray) -> FloatArray:
    """Return the sound level at a distance in the open.

    Parameters
    ----------
    near_db : array_like, shape () or (B,)
        Level `NEAR_M` from the unit. [dimensionless]
    distance_m : array_like, shape () or (B,)
        From the unit; nearer than `NEAR_M` counts as that. [m]

    Returns
    -------
    level_db : ndarray, shape (B,)
        6 dB less at each doubling. [dimensionless]

    Notes
    -----
    L(d) = L(d0) - 20 lg(d / d0): spreading over a sphere. Ground, walls and air are left out.

    References
    ----------
    .. [1] ISO 9613-2:1996, equation (7): geometrical divergence 20 lg(d / d0) + 11 dB from a point source's power.

    Examples
    --------
    >>> float(level_db(58.0, 10.0))
    38.0
    """
    far: FloatArray = np.asarray(near_db - 20.0 * np.log10(np.maximum(distance_m, NEAR_M) / NEAR_M))
    return far
