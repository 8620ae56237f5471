"""Earth about the reference basement: as the product has it, and by two-dimensional conduction solved on the spot."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from econ.climate.ground import MID_MONTH_D, YEAR_S, Cover, outdoor_end, yearly_wave
from econ.climate.moist_air import pressure_pa, saturation_pressure_pa
from econ.loads import buried
from econ.tables.conduction import earth_grid

CONDUCTIVITY, HEAT, ABSORPTANCE = 1.731, 1842.0 * 419.0, 0.9
"""W/(m K), J/(m3 K) and the share of sun absorbed by bare dry soil, as the simulation's ground has them."""

CONCRETE_R = 0.2032 / 1.95
"""m2 K/W of the concrete in the wall, which the table counts as soil."""

DEEPEST_M, FINEST_M, GROWTH = 40.0, 0.03, 1.2
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


def table_ground(pit, place):
    """Return conductance (1,) and the temperature it works against (1, 12), from the product's table."""
    soil = soil_at(place)
    film = float(soil.film_m2k_per_w[0])
    lengths = (
        pit.depth_m,
        pit.area_m2 / pit.perimeter_m,
        pit.wall_m,
        CONDUCTIVITY * (pit.wall_r - CONCRETE_R),
        CONDUCTIVITY * pit.floor_r,
        CONDUCTIVITY * film,
    )
    heat = buried.edge_heat(buried.Edge(*(np.array([part]) for part in lengths)), buried.reach_m(soil), earth_grid())
    per_m = CONDUCTIVITY * pit.perimeter_m
    steady = per_m * (heat.wall_frac + heat.floor_frac)
    wave = per_m * (heat.wall_wave_frac + heat.floor_wave_frac)
    return steady, buried.seen_ground_c(steady, wave, soil)


def grid_ground(pit, place):
    """Return the same from two-dimensional conduction: a strip as wide as area over perimeter beside the wall."""
    soil = soil_at(place)
    resistances = pit.wall_r - CONCRETE_R, pit.floor_r, float(soil.film_m2k_per_w[0])
    shape = pit.depth_m, pit.area_m2 / pit.perimeter_m, pit.wall_m
    ua = pit.perimeter_m * sum(conductances(shape, resistances, 0.0)).real
    swing = pit.perimeter_m * sum(conductances(shape, resistances, 2.0 * np.pi / YEAR_S))
    mean_c, amplitude_k, coldest_d = yearly_wave(soil.end_c[0])
    turn = np.exp(2j * np.pi * (MID_MONTH_D - coldest_d) / 365.0)
    return np.array([ua]), (mean_c - amplitude_k * (turn * swing).real / ua)[None, :]


def soil_at(place):
    """Return the simulation's soil under bare dry ground that nothing shades."""
    absorptance, wet, opening = np.array([ABSORPTANCE]), np.zeros(1), np.ones(1)
    cover = Cover(absorptance, wet, opening, np.array([float(place.wind_m_per_s.mean())]))
    vapour = saturation_pressure_pa(place.dew_point_c)
    mean_w_per_m2 = place.global_kwh_per_m2 * 1000.0 / 24.0
    end_c, film = outdoor_end(
        place.mean_c[None, :], vapour, mean_w_per_m2, cover, float(pressure_pa(np.array(place.elevation_m)))
    )
    return buried.Soil(np.array([CONDUCTIVITY]), np.array([HEAT]), end_c, film.mean(axis=1))


@lru_cache(maxsize=64)
def conductances(shape, resistances, turn_per_s):
    """Return heat into wall and floor, W/K a metre of wall, of a ground surface that swings once in 2 pi/turn_per_s.

    Depth, half width and wall's thickness; resistances of the wall's inner face, the floor and the ground outdoors.
    Finite volumes; x from the middle of the floor (no flow) to 40 m outdoors, y down to 40 m (no flow); the wall, from
    -thickness to 0, conducts as soil and lets nothing out at its top.
    """
    (depth_m, half_m, thick_m), (wall_r, floor_r, film) = shape, resistances
    from scipy.sparse import coo_array, diags_array
    from scipy.sparse.linalg import spsolve

    n_down = 41 if depth_m > 0.0 else 1
    x = np.concatenate([-_edges(half_m)[:0:-1] - thick_m, np.linspace(-thick_m, 0.0, 9)[:-1], _edges(DEEPEST_M)])
    y = np.concatenate([np.linspace(0.0, depth_m, n_down), depth_m + _edges(DEEPEST_M)[1:]])
    dx, dy = np.diff(x), np.diff(y)
    is_soil = ~((x[1:, None] <= -thick_m + 1e-9) & (y[None, 1:] <= depth_m + 1e-9))
    number = np.cumsum(is_soil).reshape(is_soil.shape) - 1
    across = CONDUCTIVITY * dy[None, :] / ((dx[1:] + dx[:-1])[:, None] / 2.0)
    down = CONDUCTIVITY * dx[:, None] / ((dy[1:] + dy[:-1])[None, :] / 2.0)
    is_across, is_down = is_soil[1:] & is_soil[:-1], is_soil[:, 1:] & is_soil[:, :-1]
    one = np.concatenate([number[:-1][is_across], number[:, :-1][is_down]])
    other = np.concatenate([number[1:][is_across], number[:, 1:][is_down]])
    link = np.concatenate([across[is_across], down[is_down]])
    first_x, first_y = int(np.searchsorted(x, -thick_m - 1e-9)), n_down - 1
    outside = first_x + 8
    to_air, to_wall, to_floor = (np.zeros(is_soil.shape) for _ in range(3))
    to_air[outside:, 0] = dx[outside:] / (dy[0] / 2.0 / CONDUCTIVITY + film)
    to_wall[first_x, :first_y] = dy[:first_y] / (dx[first_x] / 2.0 / CONDUCTIVITY + wall_r)
    to_floor[:first_x, first_y] = dx[:first_x] / (dy[first_y] / 2.0 / CONDUCTIVITY + floor_r)
    out = (to_air + to_wall + to_floor)[is_soil].astype(complex)
    out += 1j * turn_per_s * HEAT * np.outer(dx, dy)[is_soil]
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
