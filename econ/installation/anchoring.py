"""Anchors of the outdoor bracket and the indoor plate: what they must hold, and what they may be asked to."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import GRAVITY_M_PER_S2
from econ.kernel.errors import OutOfRangeError

SAFETY_FACTOR: Final = 4.0
"""Ultimate over allowable load of an anchor. Common practice of anchor makers for sustained loads, no source."""

HOLDING_BASES: Final = ("studs", "ledger", "concrete", "grouted_block", "through_bolted_block")
"""What an outdoor bracket may be fixed to."""

YIELDING_BASES: Final = ("hollow_block", "veneer", "siding_or_foam")
"""What carries no outdoor unit, whatever the anchor: toggles in it included."""


def top_pull_n(weight_kg: FloatArray, reach_m: FloatArray, bracket_height_m: FloatArray) -> FloatArray:
    """Return how hard a bracket pulls its top pair of anchors out of the wall.

    Parameters
    ----------
    weight_kg : array_like, shape (B,)
        Mass of the outdoor unit. [kg]
    reach_m : array_like, shape (B,)
        From the wall to the middle of the unit. [m]
    bracket_height_m : array_like, shape (B,)
        From the lower to the upper anchors, above 0. [m]

    Returns
    -------
    pull_n : ndarray, shape (B,)
        Moment of the weight over the height between the anchors. [N]

    Raises
    ------
    OutOfRangeError
        If the height is not above 0.

    Notes
    -----
    Statics: the moment about the lower anchors, weight times reach, is held by the upper pair alone.

    Examples
    --------
    >>> round(float(top_pull_n(40.0, 0.35, 0.35)), 1)
    392.3
    """
    height = np.asarray(bracket_height_m, dtype=np.float64)
    if not np.all(height > 0.0):
        remedy = "Measure between the upper and the lower bolts of the bracket."
        raise OutOfRangeError("height of the bracket", float(np.min(height)), "m", "above 0", remedy)
    weight, reach = np.asarray(weight_kg, dtype=np.float64), np.asarray(reach_m, dtype=np.float64)
    pull: FloatArray = weight * GRAVITY_M_PER_S2 * reach / height
    return pull


def allowable_n(ultimate_n: FloatArray) -> FloatArray:
    """Return what one anchor may be asked to hold.

    Parameters
    ----------
    ultimate_n : array_like, shape (B,)
        Breaking load in this wall as the anchor's maker prints it. [N]

    Returns
    -------
    allowable_n : ndarray, shape (B,)
        A quarter of it, for one anchor: ratings of several are never added up, as they never share evenly. [N]
    """
    allowable: FloatArray = np.asarray(ultimate_n, dtype=np.float64) / SAFETY_FACTOR
    return allowable
