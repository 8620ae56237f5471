"""Condensate by gravity: the fall a drain wants, and how far a given drop lets it run."""

import numpy as np

from econ.kernel.arrays import FloatArray


def drain_fall_m(run_m: FloatArray, slope_frac: FloatArray) -> FloatArray:
    """Return how much lower the end of a drain must lie than its beginning.

    Parameters
    ----------
    run_m : array_like, shape () or (B,)
        Length of the drain. [m]
    slope_frac : array_like, shape () or (B,)
        Fall by length. [dimensionless]

    Returns
    -------
    drain_fall_m : ndarray, shape () or (B,)
        Length times slope. [m]

    Examples
    --------
    >>> float(drain_fall_m(6.0, 0.02))
    0.12
    """
    fall: FloatArray = np.asarray(run_m, dtype=np.float64) * slope_frac
    return fall


def drain_reach_m(drop_m: FloatArray, slope_frac: FloatArray) -> FloatArray:
    """Return how long a drain may be with the drop there is.

    Parameters
    ----------
    drop_m : array_like, shape () or (B,)
        How much lower its end lies. [m]
    slope_frac : array_like, shape () or (B,)
        Fall by length, above 0. [dimensionless]

    Returns
    -------
    drain_reach_m : ndarray, shape () or (B,)
        Drop over slope. [m]

    Examples
    --------
    >>> float(drain_reach_m(0.12, 0.02))
    6.0
    """
    reach: FloatArray = np.asarray(drop_m, dtype=np.float64) / slope_frac
    return reach
