"""Hand checks of heat through earth: the handbook's circular paths and the standard's heated basement.

Rooms are computed by `buried`, from two-dimensional conduction; these published formulas stand beside it in the tests.
"""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError


@dataclass(frozen=True, slots=True, eq=False)
class Basement:
    """Walls and floor of rooms below grade, seen together.

    Attributes
    ----------
    floor_area_m2 : ndarray, shape (R,)
        Floor area. [m^2]
    perimeter_m : ndarray, shape (R,)
        Edge of the floor along earth, above 0. [m]
    depth_m : ndarray, shape (R,)
        Depth of the floor, above 0. [m]
    wall_m : ndarray, shape (R,)
        Thickness of the walls. [m]
    wall_resistance_m2k_per_w, floor_resistance_m2k_per_w : ndarray, shape (R,)
        Of the part with its inside film and the film of the ground outdoors. [m^2*K/W]
    """

    floor_area_m2: FloatArray
    perimeter_m: FloatArray
    depth_m: FloatArray
    wall_m: FloatArray
    wall_resistance_m2k_per_w: FloatArray
    floor_resistance_m2k_per_w: FloatArray


def basement_u_w_per_m2k(basement: Basement, conductivity_w_per_mk: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return mean U-values of walls and floor of a heated basement, all four edges of its floor counted.

    Parameters
    ----------
    basement : Basement
        One a row.
    conductivity_w_per_mk : array_like, shape () or (R,)
        Of the soil. [W/(m*K)]

    Returns
    -------
    wall_u_w_per_m2k, floor_u_w_per_m2k : ndarray, shape (R,)
        Between the room and outdoors. [W/(m^2*K)]

    Raises
    ------
    OutOfRangeError
        If a depth or perimeter is not above 0.

    Notes
    -----
    With B = 2 A/P, d_f and d_w the parts' resistances as thickness of soil (the floor's with the wall's thickness
    added): walls 2 k/(pi z) (1 + d/(2 (d + z))) ln(z/d_w + 1), d the smaller of d_f and d_w; floor
    2 k/(pi B + d_f + z/2) ln(pi B/(d_f + z/2) + 1) where d_f + z/2 < B, else k/(0.457 B + d_f + z/2). Against
    two-dimensional conduction of a basement 1.2 m deep the sum is 5 to 10 % low; a test holds it.

    References
    ----------
    .. [1] ISO 13370:2007, 9.3, eq. 11 to 14 (heated basement).
    """
    k = np.asarray(conductivity_w_per_mk, dtype=np.float64)
    depth, perimeter = (np.asarray(part, dtype=np.float64) for part in (basement.depth_m, basement.perimeter_m))
    for name, value in (("depth of a basement", depth), ("exposed perimeter of a basement", perimeter)):
        if not np.all(value > 0.0):
            raise OutOfRangeError(name, float(np.min(value)), "m", "above 0", "Use a slab on grade instead.")
    width = 2.0 * basement.floor_area_m2 / perimeter
    as_floor = basement.wall_m + k * basement.floor_resistance_m2k_per_w
    as_wall = k * basement.wall_resistance_m2k_per_w
    shallow = as_floor + depth / 2.0
    thin = 2.0 * k / (np.pi * width + shallow) * np.log(np.pi * width / shallow + 1.0)
    floor_u = np.where(shallow < width, thin, k / (0.457 * width + shallow))
    edge = np.minimum(as_floor, as_wall)
    wall_u = 2.0 * k / (np.pi * depth) * (1.0 + edge / (2.0 * (edge + depth))) * np.log(depth / as_wall + 1.0)
    return wall_u, floor_u


def wall_u_w_per_m2k(
    top_m: FloatArray, bottom_m: FloatArray, resistance_m2k_per_w: FloatArray, conductivity_w_per_mk: FloatArray
) -> FloatArray:
    """Return the mean U-value of a wall below grade, earth included.

    Parameters
    ----------
    top_m : array_like, shape (...)
        Depth of the upper edge. [m]
    bottom_m : array_like, shape (...)
        Depth of the lower edge, below the upper. [m]
    resistance_m2k_per_w : array_like, shape (...)
        Of wall, insulation and inside film. [m^2*K/W]
    conductivity_w_per_mk : array_like, shape (...)
        Of the soil. [W/(m*K)]

    Returns
    -------
    u_w_per_m2k : ndarray, shape (...)
        Between the room and the ground surface. [W/(m^2*K)]

    Notes
    -----
    2k/(pi (z2 - z1)) (ln(z2 + 2kR/pi) - ln(z1 + 2kR/pi)): at depth z the heat goes through R and then along a quarter
    circle of radius z.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 18, eq. 38, after J. K. Latta, G. G. Boileau, Heat losses from house
       basements, Canadian Building 19(10), 1969.
    """
    offset = 2.0 * conductivity_w_per_mk * resistance_m2k_per_w / np.pi
    depth = np.asarray(bottom_m, dtype=np.float64) - top_m
    u: FloatArray = 2.0 * conductivity_w_per_mk / (np.pi * depth) * np.log((bottom_m + offset) / (top_m + offset))
    return u


def floor_u_w_per_m2k(
    width_m: FloatArray, depth_m: FloatArray, resistance_m2k_per_w: FloatArray, conductivity_w_per_mk: FloatArray
) -> FloatArray:
    """Return the mean U-value of a floor below or on grade, earth included.

    Parameters
    ----------
    width_m : array_like, shape (...)
        Shorter width between two exposed edges. [m]
    depth_m : array_like, shape (...)
        Depth of the floor. [m]
    resistance_m2k_per_w : array_like, shape (...)
        Of slab, insulation and inside film. [m^2*K/W]
    conductivity_w_per_mk : array_like, shape (...)
        Of the soil. [W/(m*K)]

    Returns
    -------
    u_w_per_m2k : ndarray, shape (...)
        Between the room and the ground surface. [W/(m^2*K)]

    Notes
    -----
    2k/(pi w) (ln(w/2 + z/2 + kR/pi) - ln(z/2 + kR/pi)).

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 18, eq. 39.
    """
    width = np.asarray(width_m, dtype=np.float64)
    near = depth_m / 2.0 + conductivity_w_per_mk * resistance_m2k_per_w / np.pi
    u: FloatArray = 2.0 * conductivity_w_per_mk / (np.pi * width) * np.log((width / 2.0 + near) / near)
    return u
