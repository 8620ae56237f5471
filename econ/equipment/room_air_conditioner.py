"""The published rating (CEER) of room air conditioners, row by row."""

from typing import Final

import numpy as np

from econ.equipment.points import A_C, B_C, E_C, Point, celsius
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH

COOLING_HOURS_H: Final = 750.0
"""h/yr of cooling in the rating. 10 CFR 430 subpart B appendix F, section 5 (recalled)."""

IDLE_HOURS_H: Final = 5115.0
"""h/yr inactive or off in the rating. Same section (recalled)."""

CONDITION_C: Final = np.array([A_C, celsius(92.0), E_C, B_C])
"""degC; outdoor dry bulb of the four variable-speed tests. Appendix F, table 1 (recalled)."""

CONDITION_FRAC: Final = np.array([0.05, 0.16, 0.31, 0.48])
"""Weights of the four tests. Appendix F, table 4 (recalled; agrees with the cooling bins of AHRI 210/240)."""

COMPARISON_CAPACITY_PER_K: Final = 0.0099 * 1.8
"""1/K; capacity a single-speed comparison unit gains below 95 degF. Appendix F, 5.3 (recalled; 0.0099 per degF)."""

COMPARISON_POWER_PER_K: Final = 0.0076 * 1.8
"""1/K; power it loses below 95 degF. Same section (recalled; 0.0076 per degF)."""

COMPARISON_CYCLING_FRAC: Final = np.array([1.0, 0.971, 0.923, 0.875])
"""Cycling loss factors of the comparison unit at the four tests. Same section (recalled)."""


def single_speed_ceer(point: Point, standby_w: FloatArray) -> FloatArray:
    """Return CEER of a unit tested at one condition.

    Parameters
    ----------
    point : Point, shape (...)
        Capacity and power of the test.
    standby_w : ndarray, shape () or (...)
        Inactive or off power. [W]

    Returns
    -------
    ceer : ndarray, shape (...)
        Combined energy efficiency ratio. [Btu/(W*hour)]

    References
    ----------
    .. [1] 10 CFR 430 subpart B appendix F, section 5.2 (recalled): yearly cooling over yearly energy.
    """
    energy_wh = COOLING_HOURS_H * point.power_w + IDLE_HOURS_H * np.asarray(standby_w)
    ceer: FloatArray = COOLING_HOURS_H * point.capacity_w / energy_wh * BTU_PER_WH
    return ceer


def single_speed_power_w(capacity_w: FloatArray, ceer: FloatArray, standby_w: FloatArray) -> FloatArray:
    """Return the power at 95 degF that gives a CEER.

    Parameters
    ----------
    capacity_w : ndarray, shape (B,)
        Capacity at 95 degF. [W]
    ceer : ndarray, shape (B,)
        Combined energy efficiency ratio. [Btu/(W*hour)]
    standby_w : ndarray, shape () or (B,)
        Inactive or off power. [W]

    Returns
    -------
    power_w : ndarray, shape (B,)
        The inverse of `single_speed_ceer`. [W]
    """
    power: FloatArray = capacity_w * BTU_PER_WH / ceer - np.asarray(standby_w) * IDLE_HOURS_H / COOLING_HOURS_H
    return power


def variable_speed_ceer(tested: Point, standby_w: FloatArray) -> FloatArray:
    """Return CEER of a variable-speed unit.

    Parameters
    ----------
    tested : Point, shape (B, 4)
        Full speed at 95 and 92 degF, intermediate at 87, low at 82.
    standby_w : ndarray, shape (B,)
        Inactive or off power. [W]

    Returns
    -------
    ceer : ndarray, shape (B,)
        CEER at 95 degF x (1 + performance adjustment); the adjustment compares the weighted tests with those of a
        single-speed unit of the same size and power at 95 degF. [Btu/(W*hour)]

    References
    ----------
    .. [1] 10 CFR 430 subpart B appendix F, section 5.3 (recalled).
    """
    standby = np.asarray(standby_w)[..., None]
    below_k = A_C - CONDITION_C
    comparison = Point(
        tested.capacity_w[:, :1] * (1.0 + COMPARISON_CAPACITY_PER_K * below_k),
        tested.power_w[:, :1] * (1.0 - COMPARISON_POWER_PER_K * below_k),
    )
    variable = single_speed_ceer(tested, standby)
    single = single_speed_ceer(comparison, standby) * COMPARISON_CYCLING_FRAC
    weighted = [np.cumsum(tests * CONDITION_FRAC, axis=-1)[:, -1] for tests in (variable, single)]
    ceer: FloatArray = variable[:, 0] * weighted[0] / weighted[1]
    return ceer
