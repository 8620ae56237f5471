"""The earth against a room from a case's values: what its surface is drawn to, and what conducts to it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.ground import Cover, outdoor_end
from econ.climate.moist_air import vapour_pressure_pa
from econ.climate.weather import FACES, Weather
from econ.evaluate.wiring.reading import amount, is_option, looked_up, room_amount
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import MONTH_DAYS
from econ.loads import buried
from econ.loads.surfaces import OUTER_FILM_M2K_PER_W
from econ.tables.conduction import earth_grid

Values = Mapping[str, FloatArray]

HORIZONTAL: Final = FACES.index("horizontal")

EDGE_FRAC: Final = {"outside": 1.0, "heated_room": 0.0, "unheated_room": 0.0, "earth": 1.0, "not_known": 1.0}
"""Which sides of a floor on earth are edges along outdoor ground. Assumption: none beside an unheated room."""

ON_EARTH_FRAC: Final = {
    "heated_room": 0.0,
    "slab_on_grade": 1.0,
    "basement_floor": 1.0,
    "vented_crawl": 0.0,
    "unheated_room": 0.0,
    "open_air": 0.0,
    "not_known": 0.0,
}
"""Which floors lie on earth; the others let nothing through to it."""

MASONRY_W_PER_MK: Final = 1.95
"""W/(m K) of foundation walls, which count as soil. ISO 10456:2007, table 3: concrete has 1.65 to 2.0."""

INNER_FILM_M2K_PER_W: Final = 0.13
"""m2 K/W inside a wall, the least that its inner face resists. ISO 6946:2017, table 7."""

NO_FLOOR_M2K_PER_W: Final = 100.0
"""m2 K/W in place of a floor that does not lie on earth, so that it takes no heat from the wall's."""


@dataclass(frozen=True, slots=True, eq=False)
class Months:
    """Monthly means that the ground's surface feels: air and vapour, sun on the horizontal, each (12,); pressure."""

    air_c: FloatArray
    vapour_pa: FloatArray
    sun_w_per_m2: FloatArray
    pressure_pa: float


def months_of(weather: Weather) -> Months:
    """Return the monthly means of weather days, by their weights."""
    in_month = weather.weight_d * (weather.month == np.arange(len(MONTH_DAYS))[:, None])
    with np.errstate(invalid="ignore"):
        share = in_month / in_month.sum(axis=1, keepdims=True)
    vapour = vapour_pressure_pa(weather.humidity_ratio, np.asarray(weather.pressure_pa))
    return Months(
        air_c=weather.monthly_mean_c(),
        vapour_pa=share @ vapour.mean(axis=0),
        sun_w_per_m2=share @ weather.irradiance[:, :, HORIZONTAL].mean(axis=0),
        pressure_pa=weather.pressure_pa,
    )


def soil_of(values: Values, index: int, months: Months, n_row: int) -> buried.Soil:
    """Return the earth about one room, its surface after sun, sky, air and what lies on it."""
    absorptance, wet, opening = (
        room_amount(values, index, f"ground_{name}_frac", n_row) for name in ("absorptance", "wet", "open")
    )
    cover = Cover(absorptance, wet, opening, amount(values, "place.wind_m_per_s", n_row))
    air_c = months.air_c + amount(values, "place.warming_offset_k", n_row)[:, None]
    end_c, film = outdoor_end(air_c, months.vapour_pa, months.sun_w_per_m2, cover, months.pressure_pa)
    return buried.Soil(
        conductivity_w_per_mk=amount(values, "place.soil_conductivity_w_per_mk", n_row),
        heat_j_per_m3k=amount(values, "place.soil_heat_j_per_m3k", n_row),
        end_c=end_c,
        film_m2k_per_w=film.mean(axis=1),
    )


def ground_of(values: Values, index: int, side_m: FloatArray, soil: buried.Soil) -> tuple[FloatArray, FloatArray]:
    """Return conductance to the ground and the temperature that it works against by month: walls and floor together.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path. [any]
    index : int
        The room.
    side_m : ndarray, shape (B, 4)
        Length of each side. [m]
    soil : Soil
        Earth, one a row.

    Returns
    -------
    conductance_w_per_k : ndarray, shape (B,)
        To the ground. [W/K]
    ground_c : ndarray, shape (B, 12)
        What it works against. [degC]

    Notes
    -----
    Sides in earth are edges of the floor at its depth, with the wall above them as far up as the room is high; sides
    outdoors are edges on grade. A wall whose top lies below grade takes the part of the whole wall's heat that the
    circular paths give it.
    """
    n_row = len(side_m)
    paths = [f"rooms[{index}].{side}" for side in ("north", "east", "south", "west")]
    is_earth = np.stack([is_option(values, path, "earth", n_row) for path in paths], axis=1)
    is_edge = np.stack([looked_up(values, path, EDGE_FRAC, n_row) for path in paths], axis=1)
    depth_m, height_m, area_m2 = (
        room_amount(values, index, name, n_row) for name in ("earth_depth_m", "ceiling_height_m", "floor_area_m2")
    )
    deep_m, edges_m = (side_m * is_earth).sum(axis=1), (side_m * is_edge).sum(axis=1)
    on_earth = looked_up(values, f"rooms[{index}].below", ON_EARTH_FRAC, n_row)
    if not np.any(deep_m + edges_m * on_earth > 0.0):
        return np.zeros(n_row), buried.seen_ground_c(np.zeros(n_row), np.zeros(n_row, np.complex128), soil)
    edge = _edge(values, index, soil, (depth_m, area_m2, edges_m, on_earth))
    k, grade_m = soil.conductivity_w_per_mk, (edges_m - deep_m) * on_earth
    deep, grade = _heats(edge, soil, grade_m)
    top = _wall_share(edge, np.maximum(depth_m - height_m, 0.0))
    steady = k * (deep_m * (top * deep.wall_frac + on_earth * deep.floor_frac) + grade_m * grade.floor_frac)
    wave = deep_m * (top * deep.wall_wave_frac + on_earth * deep.floor_wave_frac) + grade_m * grade.floor_wave_frac
    return steady, buried.seen_ground_c(steady, k * wave, soil)


def _edge(
    values: Values, index: int, soil: buried.Soil, sizes: tuple[FloatArray, FloatArray, FloatArray, FloatArray]
) -> buried.Edge:
    """Return the floor's edge along earth from depth, floor area, length of edges, and whether it lies on earth."""
    depth_m, area_m2, edges_m, on_earth = sizes
    n_row = len(area_m2)
    wall_u, floor_u = (
        room_amount(values, index, name, n_row) for name in ("earth_wall_u_w_per_m2k", "floor_u_w_per_m2k")
    )
    thickness_m = amount(values, "earth.wall_thickness_m", n_row)
    inner = np.maximum(1.0 / wall_u - OUTER_FILM_M2K_PER_W - thickness_m / MASONRY_W_PER_MK, INNER_FILM_M2K_PER_W)
    floor = np.divide(1.0, floor_u, out=np.full(n_row, NO_FLOOR_M2K_PER_W), where=on_earth > 0.0)
    k = soil.conductivity_w_per_mk
    half_width_m = np.divide(area_m2, edges_m, out=np.sqrt(area_m2), where=edges_m > 0.0)
    return buried.Edge(depth_m, half_width_m, thickness_m, k * inner, k * floor, k * soil.film_m2k_per_w)


def _heats(edge: buried.Edge, soil: buried.Soil, grade_m: FloatArray) -> tuple[buried.EdgeHeat, buried.EdgeHeat]:
    """Return heat along an edge at its depth and along one on grade; the first again where none is on grade."""
    reach, grid = buried.reach_m(soil), earth_grid()
    deep = buried.edge_heat(edge, reach, grid)
    return deep, buried.edge_heat(buried.on_grade(edge), reach, grid) if np.any(grade_m > 0.0) else deep


def _wall_share(edge: buried.Edge, top_m: FloatArray) -> FloatArray:
    """Return the part of a wall's heat that comes in below a depth, by circular paths; 1 from the surface down."""
    own_m = 2.0 / np.pi * (edge.wall_m + edge.thickness_m)
    whole, above = np.log1p(edge.depth_m / own_m), np.log1p(top_m / own_m)
    return 1.0 - np.divide(above, whole, out=np.zeros_like(whole), where=whole > 0.0)
