"""The room and the basement of the hourly simulation, built from its own layers and dimensions."""

from functools import lru_cache

import numpy as np

from econ.climate.ground import sunlit_surface_c, yearly_wave
from econ.climate.weather import hot_design_day, monthly_weather
from econ.loads import below_grade, infiltration, surfaces
from econ.loads.rooms import RoomRows
from econ.tables import sun
from econ.tables.loaders import load_tables

STATIONS = {
    "chicago": "Chicago Ohare Intl AP, IL",
    "tampa": "Tampa International AP, FL",
    "sf": "San Francisco Intl AP, CA",
    "golden": "Denver/Centennial [Golden - NREL], CO",
    "sterling": "Washington Dc Dulles Int'l Ar [Sterling -  ISIS], VA",
}

HEIGHT_M = 2.4384
HEAT_C, COOL_C = 21.111111, 23.888889
WINDOW_U, WINDOW_SHGC = 1.9873, 0.40
WALL_ABSORPTANCE, ROOF_ABSORPTANCE = 0.7, 0.8

# layers: thickness m over conductivity W/(m K), or resistance m2 K/W; surface films of ISO 6946:2017, table 7
WALL_U = 1.0 / (0.13 + 0.0127 / 0.16 + 1.9371 + 0.0127 / 0.12 + 0.010 / 0.094 + 0.04)
ROOF_U = 1.0 / (0.10 + 0.0127 / 0.16 + 5.283 + 0.0127 / 0.12 + 0.0064 / 0.16 + 0.04)
CONCRETE_WALL_R = 0.13 + 0.2032 / 1.95
INSULATION_R = 0.05283 / 0.03 + 0.0127 / 0.16
SLAB_R = 0.17 + 0.1016 / 1.95

# heat capacity of the first 10 cm or up to the insulation, J/(m2 K): thickness x density x specific heat
GYPSUM_KAPPA = 0.0127 * 800.0 * 1090.0
WOOD_FLOOR_KAPPA = 0.0191 * 600.0 * 1200.0
CONCRETE_KAPPA = 0.10 * 2240.0 * 900.0

SOIL_CONDUCTIVITY, SOIL_DIFFUSIVITY, SOIL_ABSORPTANCE = 1.731, 1.731 / (1842.0 * 419.0), 0.9
MOST_MASS_AREA = 4.0


@lru_cache(maxsize=8)
def station(city):
    return load_tables().stations.station(STATIONS[city])


@lru_cache(maxsize=8)
def weather(city):
    return monthly_weather(station(city), sun.irradiance_by_month(station(city)))


@lru_cache(maxsize=8)
def hot_day(city):
    place = station(city)
    return hot_design_day(place, sun.clear_day_irradiance(place, int(place.mean_c.argmax())))


def room(has_windows=True, gain_w=150.0, changes_per_h=0.35):
    """Return the room: south and west walls and the roof outdoors, all else kept at the same temperature."""
    length_m, width_m = 6.096, 3.81
    area = length_m * width_m
    glass = np.zeros(9)
    glass[[4, 6]] = (2.7871, 1.3935) if has_windows else (0.0, 0.0)
    gross = np.zeros(9)
    gross[[4, 6]] = length_m * HEIGHT_M, width_m * HEIGHT_M
    ua = WALL_U * (gross - glass)
    ua[8] = ROOF_U * area
    outer_m2 = gross.sum() - glass.sum()
    parts = (
        (area, WOOD_FLOOR_KAPPA),
        (area, GYPSUM_KAPPA),
        (outer_m2, GYPSUM_KAPPA),
        (gross.sum(), 2.0 * GYPSUM_KAPPA),
    )
    return _rows(area, (ua, glass), parts, (gain_w, changes_per_h), _no_ground())


def basement(city, is_insulated):
    """Return the basement: walls half above grade, bare slab, ceiling kept at the same temperature."""
    length_m, width_m, depth_m = 15.24, 7.9248, 1.2192
    area, perimeter = length_m * width_m, 2.0 * (length_m + width_m)
    glass = np.zeros(9)
    glass[4] = 1.858
    gross = np.zeros(9)
    gross[[0, 2, 4, 6]] = np.array([length_m, width_m, length_m, width_m]) * (HEIGHT_M - depth_m)
    buried_m2 = np.array([perimeter * depth_m])
    wall_r = np.array([CONCRETE_WALL_R + (INSULATION_R if is_insulated else 0.0)])
    wall = below_grade.buried_wall(buried_m2, np.zeros(1), np.array([depth_m]), wall_r)
    floor = below_grade.buried_floor(
        np.array([area]), np.array([depth_m]), np.array([width_m / 2.0]), np.array([SLAB_R])
    )
    parts = (
        (area, CONCRETE_KAPPA),
        (area, GYPSUM_KAPPA),
        (gross.sum() - glass.sum(), GYPSUM_KAPPA),
        (float(buried_m2[0]), GYPSUM_KAPPA if is_insulated else CONCRETE_KAPPA),
    )
    return _rows(area, (WALL_U * (gross - glass), glass), parts, (400.0, 0.25), _ground(city, wall, floor))


def _no_ground():
    return np.zeros(1), np.full((1, 12), 10.0)


def _ground(city, wall, floor):
    """Conductance to the ground and its temperature by month, the surface being bare dry soil in the sun."""
    place = station(city)
    mean_w_per_m2 = place.global_kwh_per_m2 * 1000.0 / 24.0
    surface_c = sunlit_surface_c(place.mean_c, mean_w_per_m2, np.array(SOIL_ABSORPTANCE), place.wind_m_per_s)
    wave = (np.array([part]) for part in yearly_wave(surface_c))
    soil = below_grade.Soil(np.array([SOIL_CONDUCTIVITY]), np.array([SOIL_DIFFUSIVITY]), *wave)
    ua = below_grade.conductance_w_per_k(wall, soil) + below_grade.conductance_w_per_k(floor, soil)
    swing_w = below_grade.seen_wave_w(wall, soil) + below_grade.seen_wave_w(floor, soil)
    return ua, soil.mean_c[:, None] + swing_w / ua[:, None]


def _rows(area, skin, parts, inside, ground):
    """One room row; mass and mass area from the parts by ISO 13790:2008, eq. 65 and 66."""
    (ua, glass), (gain_w, changes_per_h) = skin, inside
    mass = sum(part_m2 * kappa for part_m2, kappa in parts)
    mass_area = mass**2 / sum(part_m2 * kappa**2 for part_m2, kappa in parts)
    absorptance = np.full(9, WALL_ABSORPTANCE)
    absorptance[8] = ROOF_ABSORPTANCE
    sunlit = surfaces.opaque_aperture_m2(ua[None, :], np.ones(1)) * absorptance
    window_ua = WINDOW_U * glass.sum()
    volume_m3 = np.array([area * HEIGHT_M])
    always = np.ones((1, 24), bool)
    return RoomRows(
        floor_area_m2=np.array([area]),
        volume_m3=volume_m3,
        ua_opaque_w_per_k=np.array([ua.sum()]),
        ua_window_w_per_k=np.array([window_ua]),
        ua_ground_w_per_k=ground[0],
        ground_c=ground[1],
        air_flow_m3_per_s=infiltration.air_flow_m3_per_s(np.array([changes_per_h]), volume_m3),
        mass_j_per_k=np.array([mass]),
        mass_area_m2=np.array([min(mass_area, MOST_MASS_AREA * area)]),
        window_aperture_m2=surfaces.window_aperture_m2(glass[None, :], np.array([WINDOW_SHGC]), np.ones(1)),
        opaque_aperture_m2=sunlit,
        sky_loss_w=surfaces.sky_loss_w(np.array([ua[:8].sum() + window_ua]), ua[8:]),
        gain_w=np.full((1, 24), gain_w),
        moisture_gain_kg_per_s=np.zeros((1, 24)),
        heat_setpoint_c=np.full((1, 24), HEAT_C),
        cool_setpoint_c=np.full((1, 24), COOL_C),
        is_heated=always,
        is_cooled=always,
        is_dried=~always,
        cool_day_above_c=np.array([-99.0]),
        warming_k=np.zeros(1),
        owner=np.zeros(1, int),
    )


CASES = {
    "room_chicago": ("chicago", room),
    "room_tampa": ("tampa", room),
    "room_sf": ("sf", room),
    "room_chicago_nowin": ("chicago", lambda: room(has_windows=False)),
    "room_chicago_nowin_nogain_noinf": ("chicago", lambda: room(False, 0.0, 0.0)),
    "room_chicago_gain400": ("chicago", lambda: room(gain_w=400.0)),
    "room_chicago_leaky1ach": ("chicago", lambda: room(changes_per_h=1.0)),
    "bsmt_ins_chicago": ("chicago", lambda: basement("chicago", True)),
    "bsmt_bare_chicago": ("chicago", lambda: basement("chicago", False)),
    "bsmt_ins_sterling": ("sterling", lambda: basement("sterling", True)),
    "bsmt_ins_golden": ("golden", lambda: basement("golden", True)),
    "bsmt_bare_tampa": ("tampa", lambda: basement("tampa", False)),
    "bsmt_bare_sf": ("sf", lambda: basement("sf", False)),
}
"""City and builder of each simulated case."""
