"""Earth about the reference basement, twice: by the formulas of the standard, and by two-dimensional conduction."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from econ.climate.ground import GARDEN_WIND_FRAC, MID_MONTH_D, YEAR_S, sunlit_surface_c, yearly_wave
from econ.loads import below_grade

CONDUCTIVITY, DIFFUSIVITY, ABSORPTANCE = 1.731, 1.731 / (1842.0 * 419.0), 0.9
"""W/(m K), m2/s and the share of sun absorbed by bare dry soil, as the simulation's ground has them."""

DEEPEST_M, FINEST_M, GROWTH = 40.0, 0.03, 1.12
"""Reach of the grid sideways and down, its finest cell and how much each next one is larger."""


@dataclass(frozen=True)
class Pit:
    """A basement in earth: floor, perimeter, depth, walls and the resistances of walls and floor with inside film."""

    area_m2: float
    perimeter_m: float
    depth_m: float
    wall_m: float
    wall_r: float
    floor_r: float


def formula_ground(pit, place):
    """Return conductance (1,) and the temperature it works against (1, 12): steady part ISO 13370, swing by paths."""
    film = surface_film(place)
    wall_r, floor_r = np.array([pit.wall_r + film]), np.array([pit.floor_r + film])
    sizes = [np.array([size]) for size in (pit.area_m2, pit.perimeter_m, pit.depth_m, pit.wall_m)]
    area, perimeter, depth, _ = sizes
    wall_u, floor_u = below_grade.basement_u_w_per_m2k(below_grade.Basement(*sizes, wall_r, floor_r), CONDUCTIVITY)
    ua = wall_u * perimeter * depth + floor_u * area
    wave = surface_wave(place)
    soil = below_grade.Soil(np.array([CONDUCTIVITY]), np.array([DIFFUSIVITY]), *(np.array([part]) for part in wave))
    wall = below_grade.buried_wall(perimeter * depth, np.zeros(1), depth, wall_r)
    floor = below_grade.buried_floor(area, depth, area / perimeter, floor_r)
    swing_w = below_grade.seen_wave_w(wall, soil) + below_grade.seen_wave_w(floor, soil)
    return ua, soil.mean_c[:, None] + swing_w / ua[:, None]


def grid_ground(pit, place):
    """Return the same from two-dimensional conduction: a strip as wide as area over perimeter beside the wall."""
    resistances = pit.wall_r, pit.floor_r, surface_film(place)
    half_m = pit.area_m2 / pit.perimeter_m
    ua = pit.perimeter_m * sum(conductances(pit.depth_m, half_m, *resistances, 0.0)).real
    swing = pit.perimeter_m * sum(conductances(pit.depth_m, half_m, *resistances, 2.0 * np.pi / YEAR_S))
    mean_c, amplitude_k, coldest_d = surface_wave(place)
    turn = np.exp(2j * np.pi * (MID_MONTH_D - coldest_d) / 365.0)
    return np.array([ua]), (mean_c - amplitude_k * (turn * swing).real / ua)[None, :]


def surface_film(place):
    """Return the film of the ground, m2 K/W, as `sunlit_surface_c` has it: sol-air stands outside the film."""
    return 1.0 / (4.5 + 4.0 + 4.0 * GARDEN_WIND_FRAC * float(place.wind_m_per_s.mean()))


def surface_wave(place):
    """Return mean, amplitude and coldest day of the sol-air temperature of bare dry soil."""
    mean_w_per_m2 = place.global_kwh_per_m2 * 1000.0 / 24.0
    return yearly_wave(sunlit_surface_c(place.mean_c, mean_w_per_m2, np.array(ABSORPTANCE), place.wind_m_per_s))


@lru_cache(maxsize=64)
def conductances(depth_m, half_m, wall_r, floor_r, film, turn_per_s):
    """Return heat into wall and floor, W/K a metre of wall, of a ground surface that swings once in 2 pi/turn_per_s.

    Finite volumes; x from the middle of the floor (no flow) to 40 m outdoors, y down to 40 m (no flow).
    """
    from scipy.sparse import coo_array, diags_array
    from scipy.sparse.linalg import spsolve

    x = np.concatenate([-_edges(half_m)[:0:-1], _edges(DEEPEST_M)])
    y = np.concatenate([np.linspace(0.0, depth_m, 41), depth_m + _edges(DEEPEST_M)[1:]])
    dx, dy = np.diff(x), np.diff(y)
    is_soil = ~((x[1:, None] <= 0.0) & (y[None, 1:] <= depth_m + 1e-9))
    number = np.cumsum(is_soil).reshape(is_soil.shape) - 1
    across = CONDUCTIVITY * dy[None, :] / ((dx[1:] + dx[:-1])[:, None] / 2.0)
    down = CONDUCTIVITY * dx[:, None] / ((dy[1:] + dy[:-1])[None, :] / 2.0)
    is_across, is_down = is_soil[1:] & is_soil[:-1], is_soil[:, 1:] & is_soil[:, :-1]
    one = np.concatenate([number[:-1][is_across], number[:, :-1][is_down]])
    other = np.concatenate([number[1:][is_across], number[:, 1:][is_down]])
    link = np.concatenate([across[is_across], down[is_down]])
    first_x, first_y = int(np.searchsorted(x, 0.0)), 40
    to_air, to_wall, to_floor = (np.zeros(is_soil.shape) for _ in range(3))
    to_air[first_x:, 0] = dx[first_x:] / (dy[0] / 2.0 / CONDUCTIVITY + film)
    to_wall[first_x, :first_y] = dy[:first_y] / (dx[first_x] / 2.0 / CONDUCTIVITY + wall_r)
    to_floor[:first_x, first_y] = dx[:first_x] / (dy[first_y] / 2.0 / CONDUCTIVITY + floor_r)
    out = (to_air + to_wall + to_floor)[is_soil].astype(complex)
    out += 1j * turn_per_s * CONDUCTIVITY / DIFFUSIVITY * np.outer(dx, dy)[is_soil]
    n_cell = int(is_soil.sum())
    flow = coo_array(
        (np.tile(-link, 2), (np.concatenate([one, other]), np.concatenate([other, one]))), (n_cell, n_cell)
    )
    out += np.bincount(one, link, n_cell) + np.bincount(other, link, n_cell)
    soil_k = spsolve((flow + diags_array(out)).tocsc(), to_air[is_soil].astype(complex))
    return complex(to_wall[is_soil] @ soil_k), complex(to_floor[is_soil] @ soil_k)


def _edges(reach_m):
    """Return cell edges from 0 to the reach, finest first."""
    edges, step = [0.0], FINEST_M
    while edges[-1] + step < reach_m:
        edges.append(edges[-1] + step)
        step = min(step * (GROWTH if len(edges) > 20 else 1.0), 2.0)
    return np.array([*edges[:-1], reach_m])
