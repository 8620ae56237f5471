"""Rooms in the earth: heat read from the table of two-dimensional conduction."""

from dataclasses import fields, replace

import numpy as np
import pytest

from econ.climate.ground import MID_MONTH_D, YEAR_S
from econ.kernel.errors import OutOfRangeError, ShapeError
from econ.loads import below_grade, buried
from econ.tables.conduction import earth_grid
from tests.reference.simulation.earth import CONDUCTIVITY, HEAT, conductances

ONE = np.ones(1)
SWING = 10.0 - 12.0 * np.cos(2.0 * np.pi * (MID_MONTH_D - 20.0) / 365.0)
SOIL = buried.Soil(CONDUCTIVITY * ONE, HEAT * ONE, SWING[None, :], 0.06 * ONE)


def edge(depth_m=1.2, half_width_m=2.6, wall_r=0.3, floor_r=0.25, thickness_m=0.25):
    k = CONDUCTIVITY
    lengths = depth_m, half_width_m, thickness_m, k * wall_r, k * floor_r, k * 0.06
    return buried.Edge(*(np.atleast_1d(part).astype(float) for part in lengths))


def heat(at, soil=SOIL):
    return buried.edge_heat(at, buried.reach_m(soil), earth_grid())


def both(found):
    return found.wall_frac + found.floor_frac, found.wall_wave_frac + found.floor_wave_frac


@pytest.mark.parametrize(
    ("depth_m", "half_m", "wall_r", "floor_r"),
    [
        (0.0, 3.0, 1.0, 0.22),
        (0.0, 1.5, 1.0, 1.5),
        (0.5, 5.0, 0.13, 0.22),
        (0.5, 2.0, 2.0, 0.22),
        (1.2, 2.6, 0.13, 0.22),
        (1.2, 2.6, 2.0, 0.22),
        (2.1, 1.2, 0.13, 2.0),
        (2.1, 7.0, 3.5, 0.22),
    ],
)
def test_the_table_is_two_dimensional_conduction_solved_on_the_spot(depth_m, half_m, wall_r, floor_r):
    """Within 4 %: what lines between nodes cost, a wave's compared with its steady heat; on grade 6 % of the wave."""
    steady, wave = both(heat(edge(depth_m, half_m, wall_r, floor_r)))
    shape, resistances = (depth_m, half_m, 0.25), (wall_r, floor_r, 0.06)
    solved = sum(conductances(shape, resistances, 0.0)).real / CONDUCTIVITY
    swing = sum(conductances(shape, resistances, 2.0 * np.pi / YEAR_S)) / CONDUCTIVITY
    assert steady[0] == pytest.approx(solved, rel=0.04)
    assert abs(wave[0] - swing) < 0.04 * solved


@pytest.mark.parametrize(("wall_r", "low", "high"), [(0.234, 0.85, 1.0), (2.07, 0.85, 1.05)])
def test_the_standard_s_formulas_lie_near_the_table(wall_r, low, high):
    """ISO 13370:2007, 9.3, of a basement 1.2 m deep: up to 15 % less than two-dimensional conduction."""
    k, film = CONDUCTIVITY * ONE, 0.06
    sizes = (120.8 * ONE, 46.3 * ONE, 1.2 * ONE, 0.2 * ONE)
    basement = below_grade.Basement(*sizes, (wall_r + film) * ONE, (0.222 + film) * ONE)
    wall_u, floor_u = below_grade.basement_u_w_per_m2k(basement, k)
    standard = (wall_u * 1.2 + floor_u * 120.8 / 46.3) / k
    steady = both(heat(edge(1.2, 120.8 / 46.3, wall_r - 0.104, 0.222, 0.2)))[0]
    assert low < standard[0] / steady[0] < high


def test_a_row_is_the_same_alone_and_among_others():
    rng = np.random.default_rng(3)
    many = edge(*(rng.uniform(low, high, 40) for low, high in ((0.0, 5.0), (0.2, 9.0), (0.1, 6.0), (0.1, 6.0))), 0.3)
    many = replace(many, thickness_m=np.full(40, 0.3), film_m=np.full(40, 0.1))
    alone = buried.Edge(*(getattr(many, field.name)[7:8] for field in fields(many)))
    for ours, one in zip(both(heat(many)), both(heat(alone)), strict=True):
        assert ours[7] == one[0]


def test_floor_on_grade_has_no_wall():
    found = heat(buried.on_grade(edge(2.0)))
    assert found.wall_frac[0] == 0.0
    assert found.floor_frac[0] > heat(edge(2.0)).floor_frac[0]


def test_the_deeper_the_floor_the_less_and_the_later_it_swings():
    shallow, deep = (heat(edge(depth)).floor_wave_frac[0] for depth in (0.5, 2.0))
    assert abs(deep) < abs(shallow)
    assert np.angle(deep) < np.angle(shallow) < 0.0


def test_a_film_on_the_ground_is_one_more_resistance():
    thin, thick = (both(heat(replace(edge(), film_m=film * ONE)))[0][0] for film in (0.05, 0.3))
    assert thick < thin


def test_shapes_past_the_table_go_on_along_the_circular_paths():
    near, far = (heat(edge(half_width_m=width)).floor_frac[0] for width in (28.0, 60.0))
    assert near < far < 1.35 * near


def test_ground_swings_with_its_surface_where_nothing_is_stored():
    ground = buried.seen_ground_c(5.0 * ONE, 5.0 * ONE.astype(complex), SOIL)[0]
    assert ground == pytest.approx(SWING, abs=0.15)


def test_ground_that_nothing_conducts_to_is_the_year_s_mean():
    ground = buried.seen_ground_c(np.zeros(1), np.zeros(1, complex), SOIL)[0]
    assert ground == pytest.approx(np.full(12, 10.0), abs=0.15)


# by hand: sqrt(2 a/w) with a 1.731/(1842*419) = 2.2428e-6 m2/s, w = 2 pi/31536000 s
def test_swing_gets_as_deep_as_by_hand():
    assert buried.reach_m(SOIL)[0] == pytest.approx(4.745, abs=5e-4)


@pytest.mark.parametrize("name", ["half_width_m", "wall_m", "floor_m"])
def test_an_edge_without_a_length_is_refused(name):
    with pytest.raises(OutOfRangeError, match=f"{name} is 0 m; it must be above 0 m. Check the U-values"):
        heat(replace(edge(), **{name: np.zeros(1)}))


def test_depth_counts_downwards():
    with pytest.raises(OutOfRangeError, match="depth_m is -1 m; it must be at least 0 m"):
        heat(edge(-1.0))


def test_heat_that_does_not_fit_the_nodes_is_refused():
    nodes = tuple(np.array([0.0, 1.0]) for _ in range(5))
    with pytest.raises(ShapeError, match="does not fit nodes"):
        buried.conduction(nodes, np.zeros((2, 2, 2, 2, 3, 6)))
