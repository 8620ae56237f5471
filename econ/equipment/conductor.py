"""Copper wire of a branch circuit: area, resistance, what it carries, and the voltage it loses."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError

SIZES_AWG: Final = np.array([14.0, 12.0, 10.0, 8.0, 6.0])
"""American wire gauge numbers of branch circuits up to 55 A; a smaller number is a thicker wire."""

AMPACITY_A: Final = np.array([15.0, 20.0, 30.0, 40.0, 55.0])
"""A that copper of each size carries, 60 degC column, which cable inside houses keeps to. NEC table 310.16 (recalled).

Rules for warm attics and bundled cables lower it: the electrician's work.
"""

COPPER_OHM_M: Final = 1.0e-6 / 58.0
"""ohm m of annealed copper at 20 degC. IEC 60028:1925, 1/58 ohm mm2/m."""

COPPER_PER_K: Final = 0.00393
"""1/K, growth of that resistance around 20 degC. IEC 60028:1925."""

CONDUCTOR_C: Final = 75.0
"""degC at which tables of resistance are printed. NEC chapter 9, table 8."""

DROP_GUIDE_FRAC: Final = 0.03
"""Share of the supply that a branch circuit should lose at most; advice, no rule. NEC 210.19, informational note."""


def conductor_area_m2(size_awg: FloatArray) -> FloatArray:
    """Return the copper cross-section of an American wire gauge number.

    Parameters
    ----------
    size_awg : array_like, shape () or (B,)
        Gauge number. [dimensionless]

    Returns
    -------
    area_m2 : ndarray, shape () or (B,)
        Area of the solid wire. [m^2]

    References
    ----------
    .. [1] ASTM B258: diameter 0.005 in at gauge 36, growing by the 39th root of 92 with each gauge.

    Examples
    --------
    >>> round(float(conductor_area_m2(12.0)) * 1e6, 2)
    3.31
    """
    diameter = 0.000127 * 92.0 ** ((36.0 - np.asarray(size_awg, dtype=np.float64)) / 39.0)
    area: FloatArray = np.pi / 4.0 * diameter**2
    return area


def conductor_resistance_ohm_per_m(size_awg: FloatArray) -> FloatArray:
    """Return the direct-current resistance of one copper conductor at 75 degC.

    Parameters
    ----------
    size_awg : array_like, shape () or (B,)
        Gauge number. [dimensionless]

    Returns
    -------
    resistance_ohm_per_m : ndarray, shape () or (B,)
        Of one conductor, one way. [ohm/m]
    """
    warm = COPPER_OHM_M * (1.0 + COPPER_PER_K * (CONDUCTOR_C - 20.0))
    resistance: FloatArray = warm / conductor_area_m2(size_awg)
    return resistance


def voltage_drop_frac(
    length_m: FloatArray, current_a: FloatArray, size_awg: FloatArray, supply_v: FloatArray
) -> FloatArray:
    """Return the share of the supply voltage that is lost on the way to the unit and back.

    Parameters
    ----------
    length_m : array_like, shape () or (B,)
        Wire from panel to unit, one way. [m]
    current_a : array_like, shape () or (B,)
        Current. [A]
    size_awg : array_like, shape () or (B,)
        Gauge number of the copper. [dimensionless]
    supply_v : array_like, shape () or (B,)
        Supply voltage. [V]

    Returns
    -------
    drop_frac : ndarray, shape () or (B,)
        Two conductors carry the current; reactance is left out, which is small at these sizes. [dimensionless]

    Examples
    --------
    >>> round(float(voltage_drop_frac(30.0, 15.0, 12.0, 240.0)), 4)
    0.0238
    """
    lost = 2.0 * np.asarray(length_m) * np.asarray(current_a) * conductor_resistance_ohm_per_m(size_awg)
    drop: FloatArray = lost / np.asarray(supply_v)
    return drop


def ampacity_a(size_awg: FloatArray) -> FloatArray:
    """Return what a copper conductor of a listed size carries.

    Parameters
    ----------
    size_awg : ndarray, shape (B,)
        One of `SIZES_AWG`. [dimensionless]

    Returns
    -------
    ampacity_a : ndarray, shape (B,)
        Before corrections for heat and bundling. [A]

    Raises
    ------
    OutOfRangeError
        If a size is not listed.
    """
    size = np.asarray(size_awg, dtype=np.float64)
    is_size = size[..., None] == SIZES_AWG
    if not np.all(is_size.any(axis=-1)):
        odd = float(size[~is_size.any(axis=-1)][0])
        raise OutOfRangeError("wire size", odd, "AWG", "14, 12, 10, 8 or 6", "Read it off the cable's jacket.")
    ampacity: FloatArray = AMPACITY_A[np.argmax(is_size, axis=-1)]
    return ampacity


def least_size_awg(current_a: FloatArray) -> FloatArray:
    """Return the thinnest listed copper that carries a current.

    Parameters
    ----------
    current_a : ndarray, shape (B,)
        Least ampacity that the label asks for. [A]

    Returns
    -------
    size_awg : ndarray, shape (B,)
        Gauge number; the thickest listed where none carries it, which `ampacity_a` then shows. [dimensionless]

    Examples
    --------
    >>> least_size_awg(np.array([14.9, 15.0, 15.1, 80.0])).tolist()
    [14.0, 14.0, 12.0, 6.0]
    """
    at: IntArray = np.minimum(np.searchsorted(AMPACITY_A, np.asarray(current_a), side="left"), len(SIZES_AWG) - 1)
    size: FloatArray = SIZES_AWG[at]
    return size
