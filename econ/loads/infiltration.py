"""Outdoor air that leaks in."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import FOOT_M, HOUR_S, INCH_M

CM2_PER_M2: Final = 1.0e4
"""cm2 per m2."""

STACK_COEFFICIENT: Final = 0.000145
WIND_COEFFICIENT: Final = 0.000174
"""(L/s)**2/(cm**4 K) and (L/s)**2/(cm**4 (m/s)**2); one storey, shelter class 3. ASHRAE Fundamentals (2017), ch. 16."""


def air_flow_m3_per_s(infiltration_per_h: FloatArray, volume_m3: FloatArray) -> FloatArray:
    """Return the air flow of a number of air changes.

    Parameters
    ----------
    infiltration_per_h : array_like, shape (...)
        Air changes. [1/hour]
    volume_m3 : array_like, shape (...)
        Air volume of the room. [m^3]

    Returns
    -------
    air_flow_m3_per_s : ndarray, shape (...)
        Outdoor air entering. [m^3/s]
    """
    flow: FloatArray = np.asarray(infiltration_per_h, dtype=np.float64) * volume_m3 / HOUR_S
    return flow


def leakage_flow_m3_per_s(leakage_m2: FloatArray, difference_k: FloatArray, wind_m_per_s: FloatArray) -> FloatArray:
    """Return the air flow through an effective leakage area of a sheltered one-storey building.

    Parameters
    ----------
    leakage_m2 : array_like, shape (...)
        Effective leakage area at 4 Pa. [m^2]
    difference_k : array_like, shape (...)
        Indoor less outdoor temperature; its size counts. [K]
    wind_m_per_s : array_like, shape (...)
        Wind speed at the weather station. [m/s]

    Returns
    -------
    air_flow_m3_per_s : ndarray, shape (...)
        Outdoor air entering. [m^3/s]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 16, basic model, eq. 48, tables 4 and 6; coefficients from memory.
    """
    drive = STACK_COEFFICIENT * np.abs(np.asarray(difference_k)) + WIND_COEFFICIENT * np.square(wind_m_per_s)
    flow: FloatArray = np.asarray(leakage_m2, dtype=np.float64) * CM2_PER_M2 / 1000.0 * np.sqrt(drive)
    return flow


def heating_driving_m_per_s(height_m: FloatArray, difference_k: FloatArray) -> FloatArray:
    """Return the winter air flow that each square metre of leakage area passes under design conditions.

    Parameters
    ----------
    height_m : array_like, shape (...)
        Mean height of the building above grade. [m]
    difference_k : array_like, shape (...)
        Indoor less outdoor design temperature. [K]

    Returns
    -------
    driving_m_per_s : ndarray, shape (...)
        Infiltration driving force, no flue. [m/s]

    Notes
    -----
    (51 + 0.35 H |dT|)/1000 cfm/in2 with H in ft and dT in degF, turned into SI.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 5 and table 4; coefficients from memory.
    """
    return _driving_m_per_s(51.0, 0.35, height_m, difference_k)


def cooling_driving_m_per_s(height_m: FloatArray, difference_k: FloatArray) -> FloatArray:
    """Return the summer air flow that each square metre of leakage area passes under design conditions.

    Parameters
    ----------
    height_m : array_like, shape (...)
        Mean height of the building above grade. [m]
    difference_k : array_like, shape (...)
        Outdoor design less indoor temperature. [K]

    Returns
    -------
    driving_m_per_s : ndarray, shape (...)
        Infiltration driving force, no flue. [m/s]

    Notes
    -----
    (25 + 0.38 H |dT|)/1000 cfm/in2 with H in ft and dT in degF, turned into SI.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 5 and table 4; coefficients from memory.
    """
    return _driving_m_per_s(25.0, 0.38, height_m, difference_k)


def _driving_m_per_s(constant: float, slope: float, height_m: FloatArray, difference_k: FloatArray) -> FloatArray:
    feet, fahrenheit = np.asarray(height_m) / FOOT_M, np.abs(np.asarray(difference_k)) * 1.8
    cfm_per_in2 = (constant + slope * feet * fahrenheit) / 1000.0
    driving: FloatArray = cfm_per_in2 * FOOT_M**3 / 60.0 / INCH_M**2
    return driving
