"""Heat through earth: walls below grade, basement floors and slabs, along circular paths to the surface."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.ground import MID_MONTH_D, YEAR_S
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.kernel.errors import OutOfRangeError

PATH_POINTS: Final = 24
"""Points of Gauss-Legendre integration along a wall's depth or a floor's reach; a test compares with a closed form."""


@dataclass(frozen=True, slots=True, eq=False)
class Soil:
    """The earth and what its surface does through the year.

    Attributes
    ----------
    conductivity_w_per_mk : ndarray, shape () or (R,)
        Thermal conductivity. [W/(m*K)]
    diffusivity_m2_per_s : ndarray, shape () or (R,)
        Thermal diffusivity. [m^2/s]
    mean_c : ndarray, shape () or (R,)
        Yearly mean of the surface. [degC]
    amplitude_k : ndarray, shape () or (R,)
        Half the yearly swing of the surface. [K]
    coldest_d : ndarray, shape () or (R,)
        Days from 1 January to the surface's coldest day. [day]
    """

    conductivity_w_per_mk: FloatArray
    diffusivity_m2_per_s: FloatArray
    mean_c: FloatArray
    amplitude_k: FloatArray
    coldest_d: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class BuriedPart:
    """Walls or floors against earth, one a row.

    Attributes
    ----------
    area_m2 : ndarray, shape (R,)
        Area, 0 where a room has none. [m^2]
    nearest_m : ndarray, shape (R,)
        Length of the shortest path through earth. [m]
    farthest_m : ndarray, shape (R,)
        Length of the longest. [m]
    resistance_m2k_per_w : ndarray, shape (R,)
        Of the part itself and its inside film, above 0. [m^2*K/W]
    """

    area_m2: FloatArray
    nearest_m: FloatArray
    farthest_m: FloatArray
    resistance_m2k_per_w: FloatArray


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


def buried_wall(
    area_m2: FloatArray, top_m: FloatArray, bottom_m: FloatArray, resistance_m2k_per_w: FloatArray
) -> BuriedPart:
    """Return a wall below grade, its paths quarter circles about the edge of the ground.

    Parameters
    ----------
    area_m2 : array_like, shape (R,)
        Wall area below grade. [m^2]
    top_m : array_like, shape (R,)
        Depth of its upper edge, 0 at grade. [m]
    bottom_m : array_like, shape (R,)
        Depth of its lower edge. [m]
    resistance_m2k_per_w : array_like, shape (R,)
        Of wall and inside film. [m^2*K/W]

    Returns
    -------
    part : BuriedPart
        Paths of pi/2 times the depth of each edge.
    """
    nearest, farthest = (np.pi / 2.0 * np.asarray(depth, dtype=np.float64) for depth in (top_m, bottom_m))
    return BuriedPart(np.asarray(area_m2), nearest, farthest, np.asarray(resistance_m2k_per_w))


def buried_floor(
    area_m2: FloatArray, depth_m: FloatArray, reach_m: FloatArray, resistance_m2k_per_w: FloatArray
) -> BuriedPart:
    """Return a floor at a depth, its paths half circles under the wall.

    Parameters
    ----------
    area_m2 : array_like, shape (R,)
        Floor area. [m^2]
    depth_m : array_like, shape (R,)
        Depth of the floor, 0 on grade. [m]
    reach_m : array_like, shape (R,)
        From an exposed edge to the farthest floor: half the width where two opposite edges are exposed, else the
        width. [m]
    resistance_m2k_per_w : array_like, shape (R,)
        Of slab and inside film. [m^2*K/W]

    Returns
    -------
    part : BuriedPart
        Paths from pi z/2 to pi (z/2 + reach).
    """
    nearest = np.pi / 2.0 * np.asarray(depth_m, dtype=np.float64)
    return BuriedPart(np.asarray(area_m2), nearest, nearest + np.pi * reach_m, np.asarray(resistance_m2k_per_w))


def conductance_w_per_k(part: BuriedPart, soil: Soil) -> FloatArray:
    """Return the steady conductance of buried parts to the ground surface.

    Parameters
    ----------
    part : BuriedPart
        One a row.
    soil : Soil
        Earth.

    Returns
    -------
    conductance_w_per_k : ndarray, shape (R,)
        Mean of k/(k R + path) over the part, times its area. [W/K]

    Notes
    -----
    The integral over evenly spread paths is a logarithm; with the paths of `buried_wall` and `buried_floor` it is
    `wall_u_w_per_m2k` and `floor_u_w_per_m2k`.
    """
    _check(part)
    own = soil.conductivity_w_per_mk * part.resistance_m2k_per_w
    span = part.farthest_m - part.nearest_m
    thin = 1.0 / (own + part.nearest_m)
    with np.errstate(divide="ignore", invalid="ignore"):
        wide = np.log((own + part.farthest_m) / (own + part.nearest_m)) / span
    u: FloatArray = soil.conductivity_w_per_mk * np.where(span > 0.0, wide, thin)
    return u * part.area_m2


def seen_wave_w(part: BuriedPart, soil: Soil) -> FloatArray:
    """Return the monthly heat that the ground surface's yearly swing drives into buried parts.

    Parameters
    ----------
    part : BuriedPart
        One a row.
    soil : Soil
        Earth and its surface.

    Returns
    -------
    wave_w : ndarray, shape (R, 12)
        Departure from the yearly mean of heat into the room, damped and delayed along each path. [W]

    Notes
    -----
    Each path is a slab of earth of its length in one-dimensional periodic conduction, the part's resistance between it
    and a room at steady temperature: transfer admittance 1/(R cosh(g L) + sinh(g L)/(k g)), g = sqrt(i w/a). Departs
    from the sources of the path: they use it for design loss only, with the surface's coldest temperature undamped.

    References
    ----------
    .. [1] H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, 3.7 (periodic flow through slabs).
    """
    _check(part)
    at, weight = np.polynomial.legendre.leggauss(PATH_POINTS)
    length = part.nearest_m[:, None] + (part.farthest_m - part.nearest_m)[:, None] * (at + 1.0) / 2.0
    resistance = np.asarray(part.resistance_m2k_per_w)[:, None]
    conductivity, diffusivity = (
        np.asarray(value, dtype=np.float64)[..., None]
        for value in (soil.conductivity_w_per_mk, soil.diffusivity_m2_per_s)
    )
    growth = np.sqrt(2j * np.pi / (YEAR_S * diffusivity))
    turn = growth * length
    admittance = 1.0 / (resistance * np.cosh(turn) + np.sinh(turn) / (conductivity * growth))
    mean_admittance = (admittance * weight).sum(axis=-1) / 2.0
    since_coldest = 2.0 * np.pi * (MID_MONTH_D - np.asarray(soil.coldest_d, np.float64)[..., None]) / DAYS_PER_YEAR
    surface = -np.asarray(soil.amplitude_k, np.float64)[..., None] * np.exp(1j * since_coldest)
    wave: FloatArray = (surface * (mean_admittance * part.area_m2)[:, None]).real
    return wave


def _check(part: BuriedPart) -> None:
    if not np.all(np.asarray(part.resistance_m2k_per_w) > 0.0):
        worst = float(np.min(part.resistance_m2k_per_w))
        remedy = "The part and its inside film must resist; check the U-value."
        raise OutOfRangeError("resistance of a buried part", worst, "m^2*K/W", "above 0", remedy)
