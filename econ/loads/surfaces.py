"""Walls, roofs, floors and windows: what they conduct, what sun they let in and what they lose to the sky."""

from typing import Final

import numpy as np

from econ.climate.ground import SKY_COLDER_K, SKY_RADIATION_W_PER_M2K
from econ.kernel.arrays import FloatArray

OUTER_FILM_M2K_PER_W: Final = 0.04
"""m2 K/W between an outer surface and outdoor air. ISO 6946:2017, table 7."""

IN_USE_FILM_M2K_PER_W: Final = 0.06
"""m2 K/W of the same film in the wind that a house sees: 1/(4.5 + 4 + 4 v), v = 2.0 m/s.

ISO 6946:2017, annex C, and ISO 13790:2008, 11.4.6 (radiation); the 0.04 above holds for 4 m/s at the wall. v: the mean
of the station table, 3.7 m/s 10 m above open ground, 2.5 m above suburban ground by ASHRAE Fundamentals (2017), ch. 24,
eq. 4 and table 1. U-values move little; sun and sky on walls and roofs count for half as much again. A test derives it.
"""

RATED_WINDOW_FILM_M2K_PER_W: Final = 0.033
"""m2 K/W outside a rated window: 26 W/(m2 K) of winter wind and 4 of radiation. NFRC 100 (2014), from memory."""

SKY_VIEW_WALL_FRAC: Final = 0.35
"""How much of its view is cold sky: of the half that is sky, the square root of a half; near the horizon it is as air.

G. N. Walton, Thermal Analysis Research Program Reference Manual, NBSIR 83-2655, 1983. Departs from ISO 13790:2008,
11.4.6, which counts the whole half; ASHRAE Fundamentals (2017), ch. 18, counts none.
"""

SKY_VIEW_ROOF_FRAC: Final = 1.0
"""The same of a roof. ISO 13790:2008, 11.4.6."""

SLANT_FRAC: Final = 0.9
"""Window sun at all angles over sun straight on. ISO 13790:2008, 11.4.2, non-scattering glazing."""

UNHEATED_ROOM_FRAC: Final = 0.5
"""Part of the indoor-outdoor difference left to an unheated room beside or below.

Two outer walls without door, or a cellar without windows. DIN EN 12831 supplement 1:2008, as reproduced in open code.
"""

VENTED_CRAWL_FRAC: Final = 0.8
"""The same for a suspended floor over a vented crawl space. DIN EN 12831 supplement 1:2008, table 6."""

VENTED_ATTIC_FRAC: Final = 0.9
"""The same for a vented attic with a roof that is not insulated. DIN EN 12831 supplement 1:2008, table 6."""

VENTED_ATTIC_SUN_FRAC: Final = 0.37
"""Sun felt through a ceiling under a vented attic over that through a roof that is itself the ceiling.

ASHRAE Handbook Fundamentals (2017), ch. 17, table 7: opaque surface factors 25.7 over 68.9, from memory.
"""


def in_use_u_w_per_m2k(u_w_per_m2k: FloatArray, film_m2k_per_w: float) -> FloatArray:
    """Return a printed U-value with the outer film that a house sees in use.

    Parameters
    ----------
    u_w_per_m2k : array_like, shape (...)
        Printed U-value. [W/(m^2*K)]
    film_m2k_per_w : float
        Outer film that it was printed with, such as `OUTER_FILM_M2K_PER_W`. [m^2*K/W]

    Returns
    -------
    u_w_per_m2k : ndarray, shape (...)
        The same part in the wind of a house. [W/(m^2*K)]

    Notes
    -----
    1/(1/U + in-use film - printed film): 1 % less for an insulated wall, a tenth less for single glass.
    """
    u = np.asarray(u_w_per_m2k, dtype=np.float64)
    in_use: FloatArray = u / (1.0 + u * (IN_USE_FILM_M2K_PER_W - film_m2k_per_w))
    return in_use


def opaque_aperture_m2(ua_w_per_k: FloatArray, absorptance_frac: FloatArray) -> FloatArray:
    """Return the area of full sun that opaque parts let in, per face.

    Parameters
    ----------
    ua_w_per_k : array_like, shape (R, 9)
        Conductance of opaque parts on each face. [W/K]
    absorptance_frac : array_like, shape (R,)
        Sun absorbed by their outer surfaces. [dimensionless]

    Returns
    -------
    aperture_m2 : ndarray, shape (R, 9)
        Absorptance times outer film resistance times conductance. [m^2]

    References
    ----------
    .. [1] ISO 13790:2008, 11.3.4, eq. 45.
    """
    absorptance = np.asarray(absorptance_frac, dtype=np.float64)[:, None]
    aperture: FloatArray = absorptance * IN_USE_FILM_M2K_PER_W * np.asarray(ua_w_per_k)
    return aperture


def window_aperture_m2(area_m2: FloatArray, shgc_frac: FloatArray, shade_frac: FloatArray) -> FloatArray:
    """Return the area of full sun that windows let in, per face.

    Parameters
    ----------
    area_m2 : array_like, shape (R, 9)
        Window area on each face, frames included. [m^2]
    shgc_frac : array_like, shape (R,)
        Solar heat gain coefficient of the whole window, frame counted, sun straight on. [dimensionless]
    shade_frac : array_like, shape (R,)
        What blinds, trees and overhangs leave. [dimensionless]

    Returns
    -------
    aperture_m2 : ndarray, shape (R, 9)
        Area of full sun. [m^2]

    References
    ----------
    .. [1] ISO 13790:2008, 11.3.3, eq. 44, and 11.4.2.
    """
    passing = SLANT_FRAC * np.asarray(shgc_frac, dtype=np.float64) * np.asarray(shade_frac)
    aperture: FloatArray = passing[:, None] * np.asarray(area_m2)
    return aperture


def sky_loss_w(wall_w_per_k: FloatArray, roof_w_per_k: FloatArray) -> FloatArray:
    """Return the heat lost to the sky beyond what the air temperature accounts for.

    Parameters
    ----------
    wall_w_per_k : array_like, shape (R,)
        Conductance of walls and windows that see the sky. [W/K]
    roof_w_per_k : array_like, shape (R,)
        Conductance of roofs that see the sky. [W/K]

    Returns
    -------
    sky_loss_w : ndarray, shape (R,)
        Extra long-wave loss, the same day and night. [W]

    References
    ----------
    .. [1] ISO 13790:2008, 11.3.5, eq. 46, and 11.4.6.
    """
    seen = SKY_VIEW_WALL_FRAC * np.asarray(wall_w_per_k) + SKY_VIEW_ROOF_FRAC * np.asarray(roof_w_per_k)
    loss: FloatArray = IN_USE_FILM_M2K_PER_W * SKY_RADIATION_W_PER_M2K * SKY_COLDER_K * seen
    return loss


def mass_area_m2(floor_area_m2: FloatArray, mass_j_per_m2k: FloatArray) -> FloatArray:
    """Return the effective mass area of rooms.

    Parameters
    ----------
    floor_area_m2 : array_like, shape (R,)
        Floor area. [m^2]
    mass_j_per_m2k : array_like, shape (R,)
        Heat capacity per floor area. [J/(m^2*K)]

    Returns
    -------
    mass_area_m2 : ndarray, shape (R,)
        2.5 times the floor up to medium rooms, 3.0 in heavy and 3.5 in very heavy ones, straight lines between. [m^2]

    References
    ----------
    .. [1] ISO 13790:2008, 12.3.1.2, table 12; classes at 165, 260 and 370 kJ/(m2 K).
    """
    ratio = np.interp(mass_j_per_m2k, [165e3, 260e3, 370e3], [2.5, 3.0, 3.5])
    area: FloatArray = ratio * np.asarray(floor_area_m2)
    return area
