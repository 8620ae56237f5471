"""Outdoor air that leaks in."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import HOUR_S

CM2_PER_M2: Final = 1.0e4
"""cm2 per m2."""

STACK_COEFFICIENT: Final = 0.000145
WIND_COEFFICIENT: Final = 0.000174
"""(L/s)**2/(cm**4 K) and (L/s)**2/(cm**4 (m/s)**2); one storey, shelter class 3. ASHRAE Fundamentals (2017), ch. 16."""

LEAKAGE_PA: Final = 4.0
BLOWER_PA: Final = 50.0
"""Pa at which a leakage area is stated, and at which a blower door is read. ASTM E779-19."""

LEAKAGE_EXPONENT: Final = 0.65
"""Power of the pressure that leaks follow where the test does not say. ASHRAE Fundamentals (2017), ch. 16."""

LEAST_APART_K: Final = 1.0e-9
"""K that keeps a year without heating and cooling from weighing nothing: its flow is then the plain mean."""

TEST_AIR_KG_PER_M3: Final = 1.2
"""kg/m3 of the air in which a leakage area is stated. ASHRAE Fundamentals (2017), ch. 16."""


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


def leakage_area_m2(air_50pa_m3_per_h: FloatArray) -> FloatArray:
    """Return the effective leakage area at 4 Pa of a blower-door reading.

    Parameters
    ----------
    air_50pa_m3_per_h : array_like, shape (...)
        Air flow at 50 Pa. [m^3/hour]

    Returns
    -------
    leakage_m2 : ndarray, shape (...)
        Area of a hole with a discharge coefficient of 1. [m^2]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 16, eq. 43 to 45.

    Examples
    --------
    >>> round(float(leakage_area_m2(np.array(774.2))) * 1e4, 1)
    161.3
    """
    flow_m3_per_s = (
        np.asarray(air_50pa_m3_per_h, dtype=np.float64) / HOUR_S * (LEAKAGE_PA / BLOWER_PA) ** LEAKAGE_EXPONENT
    )
    area: FloatArray = flow_m3_per_s * np.sqrt(TEST_AIR_KG_PER_M3 / (2.0 * LEAKAGE_PA))
    return area


def yearly_flow_m3_per_s(
    leakage_m2: FloatArray, difference_k: FloatArray, wind_m_per_s: FloatArray, weight_d: FloatArray
) -> FloatArray:
    """Return the constant air flow that carries as much heat over a year as leaks under changing weather.

    Parameters
    ----------
    leakage_m2 : array_like, shape (R,)
        Effective leakage area at 4 Pa. [m^2]
    difference_k : array_like, shape (R, n_day)
        Indoor less outdoor daily mean temperature; its size counts. [K]
    wind_m_per_s : array_like, shape (R,)
        Mean wind speed at the weather station. [m/s]
    weight_d : array_like, shape (n_day,)
        Days that each stands for. [day]

    Returns
    -------
    air_flow_m3_per_s : ndarray, shape (R,)
        Each day's flow weighted by its temperature difference. [m^3/s]
    """
    apart_k = np.abs(np.asarray(difference_k, dtype=np.float64))
    by_day = leakage_flow_m3_per_s(np.asarray(leakage_m2)[:, None], apart_k, np.asarray(wind_m_per_s)[:, None])
    heat = (apart_k + LEAST_APART_K) * weight_d
    flow: FloatArray = (by_day * heat).sum(axis=1) / heat.sum(axis=1)
    return flow


def heating_driving_m_per_s(height_m: FloatArray, difference_k: FloatArray) -> FloatArray:
    """Return the winter air flow that each square metre of leakage area passes under design conditions.

    Parameters
    ----------
    height_m : array_like, shape (...)
        Mean height of ceilings above floors or grade. [m]
    difference_k : array_like, shape (...)
        Indoor less outdoor design temperature. [K]

    Returns
    -------
    driving_m_per_s : ndarray, shape (...)
        Infiltration driving force, no flue, wind of 6.7 m/s. [m/s]

    Notes
    -----
    (51 + 0.35 H |dt|)/1000 L/(s cm2) with H in m and dt in K; agrees with the leakage model above within a tenth.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, eq. 10 and table 5 (SI edition).
    """
    return _driving_m_per_s(51.0, 0.35, height_m, difference_k)


def cooling_driving_m_per_s(height_m: FloatArray, difference_k: FloatArray) -> FloatArray:
    """Return the summer air flow that each square metre of leakage area passes under design conditions.

    Parameters
    ----------
    height_m : array_like, shape (...)
        Mean height of ceilings above floors or grade. [m]
    difference_k : array_like, shape (...)
        Outdoor design less indoor temperature. [K]

    Returns
    -------
    driving_m_per_s : ndarray, shape (...)
        Infiltration driving force, no flue, wind of 3.4 m/s. [m/s]

    Notes
    -----
    (25 + 0.38 H |dt|)/1000 L/(s cm2) with H in m and dt in K.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, eq. 10 and table 5 (SI edition).
    """
    return _driving_m_per_s(25.0, 0.38, height_m, difference_k)


def _driving_m_per_s(constant: float, slope: float, height_m: FloatArray, difference_k: FloatArray) -> FloatArray:
    litre_per_s_cm2 = (constant + slope * np.asarray(height_m) * np.abs(np.asarray(difference_k))) / 1000.0
    driving: FloatArray = litre_per_s_cm2 * CM2_PER_M2 / 1000.0
    return driving
