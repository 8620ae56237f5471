"""Heat and moisture that people, light and things set free."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH, FOOT_M

PERSON_SENSIBLE_W: Final = 70.0
PERSON_LATENT_W: Final = 45.0
"""W of a person seated, very light work. ASHRAE Handbook Fundamentals (2017), ch. 18, table 1, from memory."""

SCREEN_W: Final = 100.0
"""W of one television or computer with its screen in use. Assumption; between 50 and 150."""

HOUSE_SENSIBLE_BTU_PER_H: Final = 464.0
HOUSE_LATENT_BTU_PER_H: Final = 68.0
FLOOR_SENSIBLE_BTU_PER_H: Final = 0.7
FLOOR_LATENT_BTU_PER_H: Final = 0.07
OCCUPANT_SENSIBLE_BTU_PER_H: Final = 75.0
OCCUPANT_LATENT_BTU_PER_H: Final = 41.0
"""Btu/h of the house, of each square foot and of each occupant.

ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 30 and 31.
"""


def dwelling_sensible_w(floor_area_m2: FloatArray, people_count: FloatArray) -> FloatArray:
    """Return the mean sensible gain of a whole dwelling.

    Parameters
    ----------
    floor_area_m2 : array_like, shape (...)
        Conditioned floor area. [m^2]
    people_count : array_like, shape (...)
        People living there. [dimensionless]

    Returns
    -------
    gain_w : ndarray, shape (...)
        Sensible heat. [W]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 30: 464 + 0.7 A + 75 N Btu/h, A in ft2.
    """
    per_floor = FLOOR_SENSIBLE_BTU_PER_H * np.asarray(floor_area_m2, dtype=np.float64) / FOOT_M**2
    people = OCCUPANT_SENSIBLE_BTU_PER_H * np.asarray(people_count)
    gain: FloatArray = (HOUSE_SENSIBLE_BTU_PER_H + per_floor + people) / BTU_PER_WH
    return gain


def dwelling_latent_w(floor_area_m2: FloatArray, people_count: FloatArray) -> FloatArray:
    """Return the mean latent gain of a whole dwelling.

    Parameters
    ----------
    floor_area_m2 : array_like, shape (...)
        Conditioned floor area. [m^2]
    people_count : array_like, shape (...)
        People living there. [dimensionless]

    Returns
    -------
    gain_w : ndarray, shape (...)
        Latent heat. [W]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 31: 68 + 0.07 A + 41 N Btu/h, A in ft2.
    """
    per_floor = FLOOR_LATENT_BTU_PER_H * np.asarray(floor_area_m2, dtype=np.float64) / FOOT_M**2
    people = OCCUPANT_LATENT_BTU_PER_H * np.asarray(people_count)
    gain: FloatArray = (HOUSE_LATENT_BTU_PER_H + per_floor + people) / BTU_PER_WH
    return gain


def room_sensible_w(floor_area_m2: FloatArray, kitchen_frac: FloatArray) -> FloatArray:
    """Return the sensible gain of a room that runs all day, people and screens apart.

    Parameters
    ----------
    floor_area_m2 : array_like, shape (...)
        Floor area. [m^2]
    kitchen_frac : array_like, shape (...)
        1 where the kitchen is in the room: the house's fixed part is its appliances; 0 elsewhere. [dimensionless]

    Returns
    -------
    gain_w : ndarray, shape (...)
        Sensible heat. [W]

    Notes
    -----
    The whole-dwelling formula shared out: the part per floor area to every room, the fixed part to the kitchen.
    Assumption: refrigerator and cooking make most of the fixed part.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 30.
    """
    nobody = np.zeros_like(np.asarray(floor_area_m2, dtype=np.float64))
    gain: FloatArray = dwelling_sensible_w(floor_area_m2, nobody) - _elsewhere(HOUSE_SENSIBLE_BTU_PER_H, kitchen_frac)
    return gain


def room_latent_w(floor_area_m2: FloatArray, kitchen_frac: FloatArray) -> FloatArray:
    """Return the latent gain of a room that runs all day, people apart.

    Parameters
    ----------
    floor_area_m2 : array_like, shape (...)
        Floor area. [m^2]
    kitchen_frac : array_like, shape (...)
        1 where the kitchen is in the room, 0 elsewhere. [dimensionless]

    Returns
    -------
    gain_w : ndarray, shape (...)
        Latent heat. [W]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, eq. 31, shared out as in `room_sensible_w`.
    """
    nobody = np.zeros_like(np.asarray(floor_area_m2, dtype=np.float64))
    gain: FloatArray = dwelling_latent_w(floor_area_m2, nobody) - _elsewhere(HOUSE_LATENT_BTU_PER_H, kitchen_frac)
    return gain


def _elsewhere(house_btu_per_h: float, kitchen_frac: FloatArray) -> FloatArray:
    """Return the house's fixed part where the kitchen is in another room."""
    elsewhere: FloatArray = (1.0 - np.asarray(kitchen_frac, dtype=np.float64)) * house_btu_per_h / BTU_PER_WH
    return elsewhere
