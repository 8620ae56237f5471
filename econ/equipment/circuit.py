"""Branch circuits: ampacity, breaker, and what a cord-connected unit may take of a circuit."""

from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import OutOfRangeError

LARGEST_MOTOR_FRAC: Final = 1.25
"""Ampacity over the largest motor's current. NEC art. 440.32 (recalled, text not quoted)."""

BREAKER_FRAC: Final = 1.75
"""Ceiling of the breaker over the compressor's current. NEC art. 440.22(A) (recalled)."""

BREAKER_START_FRAC: Final = 2.25
"""Ceiling where the compressor would not start otherwise. Same article (recalled)."""

SOLE_LOAD_FRAC: Final = 0.80
"""Share of a circuit that a cord-connected unit may take alone. NEC art. 440.62(B) (recalled)."""

SHARED_LOAD_FRAC: Final = 0.50
"""Share where the circuit serves other loads too. NEC art. 440.62(C) (recalled)."""

BREAKER_SIZES_A: Final = np.array([15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0])
"""A; standard ratings up to 60. NEC table 240.6(A) (recalled)."""


def minimum_ampacity_a(compressor_a: FloatArray, others_a: FloatArray) -> FloatArray:
    """Return MCA, the least current the circuit's conductors must carry.

    Parameters
    ----------
    compressor_a : ndarray, shape (B,)
        Rated-load current of the largest motor. [A]
    others_a : ndarray, shape (B,)
        Sum of the fans and everything else. [A]

    Returns
    -------
    mca_a : ndarray, shape (B,)
        1.25 times the largest motor, plus the others. [A]
    """
    mca: FloatArray = LARGEST_MOTOR_FRAC * np.asarray(compressor_a) + np.asarray(others_a)
    return mca


def greatest_protection_a(compressor_a: FloatArray, others_a: FloatArray, *, is_hard_to_start: bool) -> FloatArray:
    """Return the ceiling of the breaker, before it is rounded to a standard size.

    Parameters
    ----------
    compressor_a : ndarray, shape (B,)
        Rated-load current of the compressor. [A]
    others_a : ndarray, shape (B,)
        Sum of the fans and everything else. [A]
    is_hard_to_start : bool
        Whether the lower ceiling would not let it start.

    Returns
    -------
    mop_a : ndarray, shape (B,)
        1.75 (or 2.25) times the compressor, plus the others. [A]
    """
    share = BREAKER_START_FRAC if is_hard_to_start else BREAKER_FRAC
    mop: FloatArray = share * np.asarray(compressor_a) + np.asarray(others_a)
    return mop


def breaker_a(mca_a: FloatArray, mop_a: FloatArray) -> FloatArray:
    """Return the breaker: the largest standard size not above MOP, but never below 15 A.

    Parameters
    ----------
    mca_a, mop_a : ndarray, shape (B,)
        Least ampacity and greatest protection from the nameplate. [A]

    Returns
    -------
    breaker_a : ndarray, shape (B,)
        Standard size. [A]

    Raises
    ------
    OutOfRangeError
        If MOP lies above the largest size of the table, or MCA above MOP and 15 A.
    """
    mop = np.maximum(np.asarray(mop_a, dtype=np.float64), BREAKER_SIZES_A[0])
    if np.any(mop >= BREAKER_SIZES_A[-1] + 1.0):
        raise OutOfRangeError("mop_a", float(mop.max()), "A", "at most 60", "Ask an electrician for a unit this large.")
    if np.any(np.asarray(mca_a) > mop):
        worst = float(np.max(mca_a))
        raise OutOfRangeError("mca_a", worst, "A", "at most the greatest protection", "Read both off the nameplate.")
    size: FloatArray = BREAKER_SIZES_A[np.searchsorted(BREAKER_SIZES_A, mop, side="right") - 1]
    return size


def breaker_fits(breaker_a: FloatArray, mca_a: FloatArray, mop_a: FloatArray) -> BoolArray:
    """Return whether a breaker lies between MCA and MOP.

    Parameters
    ----------
    breaker_a : ndarray, shape (B,)
        The breaker that is there or planned. [A]
    mca_a, mop_a : ndarray, shape (B,)
        Least ampacity and greatest protection from the nameplate. [A]

    Returns
    -------
    fits : ndarray, shape (B,)
        The claim. [dimensionless]
    """
    fits: BoolArray = (breaker_a >= mca_a) & (breaker_a <= mop_a)
    return fits


def cord_limit_a(circuit_a: FloatArray, is_shared: BoolArray) -> FloatArray:
    """Return the greatest current of a cord-connected unit on a circuit.

    Parameters
    ----------
    circuit_a : ndarray, shape (B,)
        Rating of the circuit. [A]
    is_shared : ndarray, shape (B,)
        Whether lamps or other things hang on it too.

    Returns
    -------
    limit_a : ndarray, shape (B,)
        80 % of a circuit of its own, 50 % of a shared one. [A]
    """
    limit: FloatArray = np.asarray(circuit_a) * np.where(is_shared, SHARED_LOAD_FRAC, SOLE_LOAD_FRAC)
    return limit


def running_current_a(power_w: FloatArray, supply_v: FloatArray) -> FloatArray:
    """Return the current of a unit at power factor 1, which room units come close to.

    Parameters
    ----------
    power_w : ndarray, shape (B,)
        Full-speed electric power. [W]
    supply_v : ndarray, shape (B,)
        Supply voltage. [V]

    Returns
    -------
    current_a : ndarray, shape (B,)
        Power over voltage; the nameplate current is what counts where it is known. [A]
    """
    current: FloatArray = np.asarray(power_w) / np.asarray(supply_v)
    return current
