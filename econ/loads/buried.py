"""Rooms in the earth: heat through buried walls and floors on earth, from a table of two-dimensional conduction."""

from dataclasses import dataclass, replace
from itertools import product
from typing import Final

import numpy as np

from econ.climate.ground import MID_MONTH_D, YEAR_S, yearly_wave
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.kernel.errors import OutOfRangeError, ShapeError

GRID_FILM_FRAC: Final = 0.025
"""Film on the ground in the table, over the depth that the swing gets to; a test holds it to the build script's."""

SIDES_OF_RATIO: Final = 6
"""Columns of heat: wall and floor, steady, in step with the swing and a quarter of a year before it."""


@dataclass(frozen=True, slots=True, eq=False)
class Conduction:
    """Heat into a sunken room on a grid of shapes, over what the circular paths of the handbook would give.

    Attributes
    ----------
    at : tuple of five ndarray
        Nodes: root of depth, logarithm of half width, thickness, logarithms of wall and floor; lengths over the depth
        the swing gets to.
    ratio : ndarray, shape (n_depth, n_half_width, n_thickness, n_wall, n_floor, 6)
        Steady heat of wall and floor over `by_paths`, then the swing's over the steady one: real and imaginary part of
        the wall's and of the floor's. [dimensionless]
    """

    at: tuple[FloatArray, ...]
    ratio: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Edge:
    """An edge of floors along outdoor ground with the wall above it, one a row; lengths of the same unit.

    Attributes
    ----------
    depth_m : ndarray, shape (R,)
        Depth of the floor below the ground, 0 on grade. [m]
    half_width_m : ndarray, shape (R,)
        From the edge to where no heat crosses: floor area over its edges along outdoor ground, above 0. [m]
    thickness_m : ndarray, shape (R,)
        Thickness of the wall, which conducts as soil does, at least 0. [m]
    wall_m : ndarray, shape (R,)
        Thickness of soil that resists as the inner face of the wall and its film do, above 0. [m]
    floor_m : ndarray, shape (R,)
        Thickness of soil that resists as the floor and its film do, above 0. [m]
    film_m : ndarray, shape (R,)
        Thickness of soil that resists as the film on the ground outdoors does, at least 0. [m]
    """

    depth_m: FloatArray
    half_width_m: FloatArray
    thickness_m: FloatArray
    wall_m: FloatArray
    floor_m: FloatArray
    film_m: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class EdgeHeat:
    """Heat into the room from a ground surface 1 K warmer, over conductivity and metre of edge.

    Attributes
    ----------
    wall_frac, floor_frac : ndarray, shape (R,)
        Steady. [dimensionless]
    wall_wave_frac, floor_wave_frac : ndarray of complex, shape (R,)
        Swinging once a year; the angle is the lead. [dimensionless]
    """

    wall_frac: FloatArray
    floor_frac: FloatArray
    wall_wave_frac: FloatArray
    floor_wave_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Soil:
    """The earth and what its surface is drawn to through the year.

    Attributes
    ----------
    conductivity_w_per_mk : ndarray, shape (R,)
        Thermal conductivity. [W/(m*K)]
    heat_j_per_m3k : ndarray, shape (R,)
        Heat capacity. [J/(m^3*K)]
    end_c : ndarray, shape (R, 12)
        What the surface is drawn to, by month. [degC]
    film_m2k_per_w : ndarray, shape (R,)
        Resistance between that and the surface. [m^2*K/W]
    """

    conductivity_w_per_mk: FloatArray
    heat_j_per_m3k: FloatArray
    end_c: FloatArray
    film_m2k_per_w: FloatArray


def by_paths(lengths_frac: tuple[FloatArray, ...]) -> tuple[FloatArray, FloatArray]:
    """Return steady heat through wall and floor along circular paths, over conductivity, kelvin and metre of edge.

    Parameters
    ----------
    lengths_frac : tuple of five ndarray
        Depth z, half width b, thickness t, wall w and floor f; of any one unit. [dimensionless]

    Returns
    -------
    wall_frac, floor_frac : ndarray, shape (R,)
        2/pi ln(1 + pi z/(2 (w + t))) and 1/pi ln(1 + pi b/(f + t + pi z/2)). [dimensionless]

    Notes
    -----
    `below_grade.wall_u_w_per_m2k` and `below_grade.floor_u_w_per_m2k`, the wall's thickness t as soil. They carry the
    table between its nodes and past them; alone they are up to a third off.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 18, eq. 38 and 39.
    """
    depth, half_width, thickness, wall, floor = lengths_frac
    by_wall: FloatArray = 2.0 / np.pi * np.log1p(np.pi * depth / (2.0 * (wall + thickness)))
    by_floor: FloatArray = np.log1p(np.pi * half_width / (floor + thickness + np.pi * depth / 2.0)) / np.pi
    return by_wall, by_floor


def conduction(nodes_frac: tuple[FloatArray, ...], heat_frac: FloatArray) -> Conduction:
    """Return the grid ready to be read between its nodes.

    Parameters
    ----------
    nodes_frac : tuple of five ndarray
        Depths, the first 0, half widths, thicknesses, walls and floors; over the depth the swing gets to.
        [dimensionless]
    heat_frac : array_like, shape (n_depth, n_half_width, n_thickness, n_wall, n_floor, 6)
        Steady heat of wall and floor, then real and imaginary part of the swing's, wall's and floor's. [dimensionless]

    Returns
    -------
    conduction : Conduction
        Ratios; those of a wall of no depth are what they are of the shallowest.

    Raises
    ------
    ShapeError
        If the heat does not fit the nodes.
    """
    if np.shape(heat_frac) != (*(len(part) for part in nodes_frac), SIDES_OF_RATIO):
        raise ShapeError(
            f"heat of shape {np.shape(heat_frac)} does not fit nodes of {[len(part) for part in nodes_frac]}"
        )
    wall, floor = by_paths(tuple(np.meshgrid(*nodes_frac, indexing="ij")))
    with np.errstate(divide="ignore", invalid="ignore"):
        steady = heat_frac[..., :2] / np.stack([wall, floor], axis=-1)
        swing = heat_frac[..., 2:] / heat_frac[..., [0, 0, 1, 1]]
    ratio = np.concatenate([steady, swing], axis=-1)
    ratio[0][..., [0, 2, 3]] = ratio[1][..., [0, 2, 3]]
    return Conduction(_places(nodes_frac), ratio)


def edge_heat(edge: Edge, reach_m: FloatArray, grid: Conduction) -> EdgeHeat:
    """Return heat through wall and floor along an edge.

    Parameters
    ----------
    edge : Edge
        One a row.
    reach_m : array_like, shape (R,)
        Depth that the yearly swing gets to, from `reach_m`. [m]
    grid : Conduction
        Heat on a grid of shapes.

    Returns
    -------
    heat : EdgeHeat
        By row. Shapes past the grid's ends take the ratio at its end: the circular paths carry on. The grid has one
        film on the ground; what a row's film differs from it counts as if it lay on wall and floor.

    Raises
    ------
    OutOfRangeError
        If a half width, wall or floor is not above 0 or a depth is below 0.
    """
    _check(edge)
    thinner_m = edge.film_m - GRID_FILM_FRAC * reach_m
    wall_m, floor_m = (np.maximum(part + thinner_m, part / 2.0) for part in (edge.wall_m, edge.floor_m))
    lengths_m = edge.depth_m, edge.half_width_m, edge.thickness_m, wall_m, floor_m
    lengths = tuple(np.asarray(length, np.float64) / reach_m for length in lengths_m)
    ratio = _between(grid, _places(lengths))
    wall, floor = (part * ratio[:, side] for side, part in enumerate(by_paths(lengths)))
    return EdgeHeat(wall, floor, wall * (ratio[:, 2] + 1j * ratio[:, 3]), floor * (ratio[:, 4] + 1j * ratio[:, 5]))


def on_grade(edge: Edge) -> Edge:
    """Return the same floor with its edge at the level of the ground.

    Parameters
    ----------
    edge : Edge
        One a row.

    Returns
    -------
    edge : Edge
        Its depth 0.
    """
    return replace(edge, depth_m=np.zeros_like(edge.depth_m))


def reach_m(soil: Soil) -> FloatArray:
    """Return the depth that the yearly swing gets to: where it is down to a part in e.

    Parameters
    ----------
    soil : Soil
        Earth.

    Returns
    -------
    reach_m : ndarray, shape (R,)
        sqrt(2 a/w), a the diffusivity and w one turn a year. [m]

    References
    ----------
    .. [1] ISO 13370:2007, annex A (periodic penetration depth).
    """
    diffusivity = soil.conductivity_w_per_mk / soil.heat_j_per_m3k
    reach: FloatArray = np.sqrt(diffusivity * YEAR_S / np.pi)
    return reach


def seen_ground_c(steady_w_per_k: FloatArray, wave_w_per_k: FloatArray, soil: Soil) -> FloatArray:
    """Return the temperature that a steady conductance to the ground works against, by month.

    Parameters
    ----------
    steady_w_per_k : array_like, shape (R,)
        Steady conductance, 0 where there is none. [W/K]
    wave_w_per_k : array_like of complex, shape (R,)
        The same for a swing once a year. [W/K]
    soil : Soil
        Earth.

    Returns
    -------
    ground_c : ndarray, shape (R, 12)
        The year's mean of what the surface is drawn to, plus its first yearly wave, damped and delayed. [degC]
    """
    mean_c, amplitude_k, coldest_d = yearly_wave(soil.end_c)
    since_coldest = 2.0 * np.pi * (MID_MONTH_D - coldest_d[:, None]) / DAYS_PER_YEAR
    steady = np.asarray(steady_w_per_k, np.float64)
    damped = np.divide(wave_w_per_k, steady, out=np.zeros(len(steady), np.complex128), where=steady > 0.0)
    swing: FloatArray = -amplitude_k[:, None] * (np.exp(1j * since_coldest) * damped[:, None]).real
    return mean_c[:, None] + swing


def _places(lengths: tuple[FloatArray, ...]) -> tuple[FloatArray, ...]:
    """Return where shapes lie between nodes: lines are straight in these."""
    depth, half_width, thickness, wall, floor = lengths
    return np.sqrt(depth), np.log(half_width), thickness, np.log(wall), np.log(floor)


def _between(grid: Conduction, at: tuple[FloatArray, ...]) -> FloatArray:
    """Return ratios on straight lines between nodes, (R, 6), held at the ends."""
    lower, share = [], []
    for nodes, place in zip(grid.at, at, strict=True):
        inside = np.clip(place, nodes[0], nodes[-1])
        left = np.clip(np.searchsorted(nodes, inside, side="right") - 1, 0, len(nodes) - 2)
        lower.append(left)
        share.append((inside - nodes[left]) / (nodes[left + 1] - nodes[left]))
    found = np.zeros((len(at[0]), SIDES_OF_RATIO))
    for corner in product((0, 1), repeat=len(at)):
        weight = np.ones(len(at[0]))
        for part, side in zip(share, corner, strict=True):
            weight = weight * (part if side else 1.0 - part)
        found += weight[:, None] * grid.ratio[tuple(left + side for left, side in zip(lower, corner, strict=True))]
    return found


def _check(edge: Edge) -> None:
    for name in ("half_width_m", "wall_m", "floor_m"):
        if not np.all(getattr(edge, name) > 0.0):
            worst = float(np.min(getattr(edge, name)))
            raise OutOfRangeError(name, worst, "m", "above 0", "Check the U-values and the size of the room.")
    if not np.all(np.asarray(edge.depth_m) >= 0.0):
        raise OutOfRangeError("depth_m", float(np.min(edge.depth_m)), "m", "at least 0", "Depth counts downwards.")
