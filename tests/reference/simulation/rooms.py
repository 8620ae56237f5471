"""Rooms and basements of the hourly simulation, built from the layers and dimensions of its own models."""

from dataclasses import replace

import numpy as np

from econ.kernel.constants import VAPOUR_HEAT_J_PER_KG
from econ.loads import infiltration, surfaces
from econ.loads.rooms import RoomRows
from tests.reference.simulation.earth import Pit, grid_ground, table_ground
from tests.reference.simulation.weather import monthly, station

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

PRINTED = (WALL_U, ROOF_U, WINDOW_U)
IN_USE = (
    float(surfaces.in_use_u_w_per_m2k(WALL_U, surfaces.OUTER_FILM_M2K_PER_W)),
    float(surfaces.in_use_u_w_per_m2k(ROOF_U, surfaces.OUTER_FILM_M2K_PER_W)),
    float(surfaces.in_use_u_w_per_m2k(WINDOW_U, surfaces.RATED_WINDOW_FILM_M2K_PER_W)),
)
"""U-values of wall, roof and window: with the films of a windy design day, and with those of the year's mean wind."""

MOST_MASS_AREA = 4.0
"""Mass area over floor area at most: the standard's 4.5 of all surfaces less room for windows."""


def room(has_windows=True, gain_w=150.0, changes_per_h=0.35, u_values=IN_USE):
    """Return the room: south and west walls and the roof outdoors, all else kept at the same temperature."""
    wall_u, roof_u, window_u = u_values
    length_m, width_m = 6.096, 3.81
    area = length_m * width_m
    glass = np.zeros(9)
    glass[[4, 6]] = (2.7871, 1.3935) if has_windows else (0.0, 0.0)
    gross = np.zeros(9)
    gross[[4, 6]] = length_m * HEIGHT_M, width_m * HEIGHT_M
    ua = wall_u * (gross - glass)
    ua[8] = roof_u * area
    outer_m2 = gross.sum() - glass.sum()
    parts = (
        (area, WOOD_FLOOR_KAPPA),
        (area, GYPSUM_KAPPA),
        (outer_m2, GYPSUM_KAPPA),
        (gross.sum(), 2.0 * GYPSUM_KAPPA),
    )
    absorptance = np.append(np.full(8, WALL_ABSORPTANCE), ROOF_ABSORPTANCE)
    return _rows(
        area,
        (ua, glass, absorptance, window_u * glass.sum()),
        parts,
        (gain_w, changes_per_h),
        (np.zeros(1), np.full((1, 12), 10.0)),
    )


def leaky_room(city):
    """Return the room with 161.3 cm2 of leaks, at the one air flow that carries as much heat over the year.

    The room model has one air flow for all hours; the simulation lets it follow wind and temperature.
    """
    days, wind = monthly(city), np.array([station(city).wind_m_per_s.mean()])
    outdoor_c = days.dry_bulb_c.mean(axis=0)[None, :]
    apart_k = np.maximum(np.maximum(HEAT_C - outdoor_c, outdoor_c - COOL_C), 0.0)
    flow = infiltration.yearly_flow_m3_per_s(np.array([161.3e-4]), apart_k, wind, days.weight_d)
    return replace(room(), air_flow_m3_per_s=flow)


def damp_room():
    """Return the room with 110 W of moisture set free, dried all hours; 50 % is the limit to ask for."""
    moisture = np.full((1, 24), 110.0 / VAPOUR_HEAT_J_PER_KG)
    return replace(room(), moisture_gain_kg_per_s=moisture, is_dried=np.ones((1, 24), bool))


def basement(city, is_insulated, ground=table_ground):
    """Return the basement: walls half above grade, bare slab, ceiling kept at the same temperature."""
    length_m, width_m, depth_m = 15.24, 7.9248, 1.2192
    area, perimeter = length_m * width_m, 2.0 * (length_m + width_m)
    glass = np.zeros(9)
    glass[4] = 1.858
    gross = np.zeros(9)
    gross[[0, 2, 4, 6]] = np.array([length_m, width_m, length_m, width_m]) * (HEIGHT_M - depth_m)
    wall_r = CONCRETE_WALL_R + (INSULATION_R if is_insulated else 0.0)
    wall_m = 0.2032 + (0.05283 + 0.0127 if is_insulated else 0.0)
    parts = (
        (area, CONCRETE_KAPPA),
        (area, GYPSUM_KAPPA),
        (gross.sum() - glass.sum(), GYPSUM_KAPPA),
        (perimeter * depth_m, GYPSUM_KAPPA if is_insulated else CONCRETE_KAPPA),
    )
    wall_u, _, window_u = IN_USE
    skin = wall_u * (gross - glass), glass, np.full(9, WALL_ABSORPTANCE), window_u * glass.sum()
    earth = ground(Pit(area, perimeter, depth_m, wall_m, wall_r, SLAB_R), station(city))
    return _rows(area, skin, parts, (400.0, 0.25), earth)


def gridded_basement(city, is_insulated):
    """Return the basement with two-dimensional conduction in its earth."""
    return basement(city, is_insulated, grid_ground)


def damp_basement(city):
    """Return the insulated basement with 110 W of moisture set free, dried all hours."""
    moisture = np.full((1, 24), 110.0 / VAPOUR_HEAT_J_PER_KG)
    return replace(basement(city, True), moisture_gain_kg_per_s=moisture, is_dried=np.ones((1, 24), bool))


def _rows(area, skin, parts, inside, ground):
    """One room row; mass and mass area from the parts by ISO 13790:2008, eq. 65 and 66."""
    (ua, glass, absorptance, window_ua), (gain_w, changes_per_h) = skin, inside
    mass = sum(part_m2 * kappa for part_m2, kappa in parts)
    mass_area = mass**2 / sum(part_m2 * kappa**2 for part_m2, kappa in parts)
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
        window_sun_frac=np.ones((1, 12)),
        opaque_aperture_m2=surfaces.opaque_aperture_m2(ua[None, :], np.ones(1)) * absorptance,
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
    "room_chicago_ela25in2": ("chicago", lambda: leaky_room("chicago")),
    "bsmt_ins_chicago": ("chicago", lambda: basement("chicago", True)),
    "bsmt_bare_chicago": ("chicago", lambda: basement("chicago", False)),
    "bsmt_ins_sterling": ("sterling", lambda: basement("sterling", True)),
    "bsmt_ins_golden": ("golden", lambda: basement("golden", True)),
    "bsmt_bare_tampa": ("tampa", lambda: basement("tampa", False)),
    "bsmt_bare_sf": ("sf", lambda: basement("sf", False)),
}
"""City and builder of each simulated case."""

DESIGN = {
    "room_chicago": ("chicago", lambda: room(u_values=PRINTED)),
    "room_tampa": ("tampa", lambda: room(u_values=PRINTED)),
    "room_sf": ("sf", lambda: room(u_values=PRINTED)),
    "room_chicago_nowin": ("chicago", lambda: room(False, u_values=PRINTED)),
    "room_chicago_nowin_nogain_noinf": ("chicago", lambda: room(False, 0.0, 0.0, u_values=PRINTED)),
    "room_chicago_gain400": ("chicago", lambda: room(gain_w=400.0, u_values=PRINTED)),
    "room_chicago_leaky1ach": ("chicago", lambda: room(changes_per_h=1.0, u_values=PRINTED)),
}
"""The rooms with printed U-values, for design days."""

GRIDDED = {
    f"bsmt_{wall}_{city}": (city, lambda city=city, wall=wall: gridded_basement(city, wall == "ins"))
    for wall, city in (
        ("ins", "chicago"),
        ("bare", "chicago"),
        ("ins", "sterling"),
        ("ins", "golden"),
        ("bare", "tampa"),
        ("bare", "sf"),
    )
}
"""The basements with two-dimensional conduction in their earth."""

DAMP = {
    "room_tampa_dehum50": ("tampa", damp_room),
    "bsmt_ins_sterling_dehum50": ("sterling", lambda: damp_basement("sterling")),
}
"""Cases kept at 50 % relative humidity."""
