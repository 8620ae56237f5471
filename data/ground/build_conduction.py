"""Build conduction.csv: heat from a ground surface into a sunken room by two-dimensional conduction.

Run as ``python build_conduction.py OUT.csv``; the same script gives the same bytes. A room as a strip, cut in the
middle: its floor reaches from the middle, where no heat crosses, to the wall; the wall stands beside it up to the level
of the ground outside, conducts as soil does, and lets nothing out at its top. The room stands at 0, the ground surface
at 1, steadily or as the real part of e^(i w t). The inner faces of wall and floor and the ground surface resist by a
thickness of soil. All lengths are over the depth sqrt(2 a/w) to which the swing gets, a the diffusivity; heat is
over conductivity, kelvin and metre of wall. Finite volumes, finest at edges.
"""

import csv
import io
import sys
from dataclasses import dataclass
from itertools import product
from pathlib import Path

import numpy as np
from scipy.sparse import coo_array, diags_array
from scipy.sparse.linalg import splu

DEPTHS = (0.0, 0.1, 0.3, 0.6, 1.1, 2.0, 3.6)
HALF_WIDTHS = (0.12, 0.35, 0.9, 2.0, 6.0)
WALLS = (0.03, 0.12, 0.4, 1.5, 7.0)
FLOORS = (0.05, 0.15, 0.4, 1.2, 7.0)
THICKNESSES = (0.04, 0.12)
"""Nodes: depth and half width of the floor, what wall and floor resist as a thickness of soil, the wall's thickness."""

FILM = 0.025
"""What the ground surface resists: 0.06 m2 K/W over soil of 1 to 2 W/(m K) is 0.02 to 0.03."""

FINEST, GROWTH, REACH = 0.008, 1.12, 20.0
"""Finest cell, how much each next one is larger, and where the soil ends without flow."""

COLUMNS = (
    *("depth_frac", "half_width_frac", "thickness_frac", "wall_frac", "floor_frac"),
    *("steady_wall_frac", "steady_floor_frac"),
    *("wave_wall_real_frac", "wave_wall_imaginary_frac", "wave_floor_real_frac", "wave_floor_imaginary_frac"),
)


@dataclass(frozen=True)
class Strip:
    """Soil about one depth and half width, condensed to the cells behind wall and floor.

    `response` is the warmth of each of them per heat put into each, `driven` what the surface makes of them.
    """

    n_wall: int
    size: np.ndarray
    half_cell: np.ndarray
    response: np.ndarray
    driven: np.ndarray

    def heat(self, wall: float, floor: float) -> tuple[complex, complex]:
        """Return heat through wall and floor, resisting by these thicknesses of soil."""
        resisting = np.full(len(self.size), floor)
        resisting[: self.n_wall] = wall
        link = self.size / (self.half_cell + resisting)
        warmth = np.linalg.solve(np.eye(len(link)) + self.response * link[None, :], self.driven)
        into = link * warmth
        return complex(into[: self.n_wall].sum()), complex(into[self.n_wall :].sum())


def strip(depth: float, half_width: float, thickness: float, turn: complex) -> Strip:
    """Return the soil about a room; turn is i w/a, 0 for steady heat."""
    floor_x, wall_x, wall_y = both_ends(half_width), both_ends(thickness), both_ends(depth)
    x = np.concatenate([floor_x, half_width + wall_x[1:], half_width + thickness + one_end(REACH)[1:]])
    y = np.concatenate([wall_y, depth + one_end(REACH)[1:]])
    across, down = np.diff(x), np.diff(y)
    first, n_wall = len(floor_x) - 1, len(wall_y) - 1
    outside = first + len(wall_x) - 1
    is_soil = np.ones((len(across), len(down)), dtype=bool)
    is_soil[:first, :n_wall] = False
    number = np.cumsum(is_soil).reshape(is_soil.shape) - 1
    to_surface = np.zeros(is_soil.shape)
    to_surface[outside:, 0] = across[outside:] / (down[0] / 2.0 + FILM)
    stored = (turn * np.outer(across, down))[is_soil]
    matrix = soil_matrix(across, down, is_soil, number)
    solver = splu((matrix + diags_array(to_surface[is_soil] + stored)).tocsc())
    cells = np.concatenate([number[first, :n_wall], number[:first, n_wall]])
    unit = np.zeros((int(is_soil.sum()), len(cells)), dtype=stored.dtype)
    unit[cells, np.arange(len(cells))] = 1.0
    return Strip(
        n_wall=n_wall,
        size=np.concatenate([down[:n_wall], across[:first]]),
        half_cell=np.concatenate([np.full(n_wall, across[first] / 2.0), np.full(first, down[n_wall] / 2.0)]),
        response=solver.solve(unit)[cells],
        driven=solver.solve(to_surface[is_soil].astype(stored.dtype))[cells],
    )


def soil_matrix(across: np.ndarray, down: np.ndarray, is_soil: np.ndarray, number: np.ndarray) -> coo_array:
    """Return what cells of soil pass on to each other."""
    sideways = down[None, :] / ((across[1:] + across[:-1])[:, None] / 2.0)
    upright = across[:, None] / ((down[1:] + down[:-1])[None, :] / 2.0)
    is_beside, is_above = is_soil[1:] & is_soil[:-1], is_soil[:, 1:] & is_soil[:, :-1]
    one = np.concatenate([number[:-1][is_beside], number[:, :-1][is_above]])
    other = np.concatenate([number[1:][is_beside], number[:, 1:][is_above]])
    link = np.concatenate([sideways[is_beside], upright[is_above]])
    n_cell = int(is_soil.sum())
    own = np.bincount(one, link, n_cell) + np.bincount(other, link, n_cell)
    passed = coo_array(
        (np.tile(-link, 2), (np.concatenate([one, other]), np.concatenate([other, one]))), (n_cell, n_cell)
    )
    return passed + diags_array(own)


def one_end(reach: float, growth: float = GROWTH, n_fine: int = 12) -> np.ndarray:
    """Return cell edges from 0 to the reach, finest first."""
    edges, step = [0.0], FINEST
    while edges[-1] + step < reach:
        edges.append(edges[-1] + step)
        step *= growth if len(edges) > n_fine else 1.0
    return np.array([*edges[:-1], reach]) if len(edges) > 1 else np.array([0.0, reach])


def both_ends(length: float) -> np.ndarray:
    """Return cell edges from 0 to the length, finest at both ends."""
    if length == 0.0:
        return np.zeros(1)
    half = one_end(length / 2.0, 1.15, 3)
    return np.concatenate([half, (length - half[::-1])[1:]])


def built() -> str:
    """Return the text of conduction.csv."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for depth, half_width, thickness in product(DEPTHS, HALF_WIDTHS, THICKNESSES):
        soils = strip(depth, half_width, thickness, 0.0), strip(depth, half_width, thickness, 2j)
        for wall, floor in product(WALLS, FLOORS):
            steady, wave = (soil.heat(wall, floor) for soil in soils)
            heat = [part.real for part in steady] + [p for part in wave for p in (part.real, part.imag)]
            writer.writerow([depth, half_width, thickness, wall, floor, *(f"{part:.5f}" for part in heat)])
    return out.getvalue()


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(built(), encoding="utf-8", newline="\n")
