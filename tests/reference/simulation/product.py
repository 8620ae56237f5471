"""The simulated rooms as cases: what the program itself makes of them, from a case's fields to yearly needs."""

from datetime import date
from functools import lru_cache

from econ.case.form import all_fields
from econ.case.schema import case_from
from econ.evaluate.physics import room_month_kwh
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate
from econ.loads import gains
from econ.tables.loaders import load_tables
from tests.reference.simulation import rooms
from tests.reference.simulation.weather import STATIONS, hourly

USE = {
    "cool": "yes",
    "heat": "yes",
    "dry": "no",
    "when": "day_and_night",
    "cooling_setpoint_c": rooms.COOL_C,
    "heating_setpoint_c": rooms.HEAT_C,
}
EARTH = {"warming_offset_k": 0.0, "soil_conductivity_w_per_mk": 1.731, "soil_heat_j_per_m3k": 1842.0 * 419.0}
BARE_GROUND = {
    "ground_cover": "bare_soil",
    "ground_absorptance_frac": 0.9,
    "ground_wet_frac": 0.0,
    "ground_open_frac": 1.0,
}
"""The simulation's ground: it absorbs 0.9 of the sun, evaporates nothing, and nothing shades it."""

SKIN = {
    "above": "heated_room",
    "below": "heated_room",
    "wall": "wood_frame",
    "wall_u_w_per_m2k": rooms.WALL_U,
    "window_u_w_per_m2k": rooms.WINDOW_U,
    "window_shgc_frac": rooms.WINDOW_SHGC,
    "absorptance_frac": rooms.WALL_ABSORPTANCE,
    "ceiling_height_m": rooms.HEIGHT_M,
    "screens_count": 0.0,
    "shade": "none",
} | {f"window_{side}_m2": 0.0 for side in ("north", "east", "south", "west")}


def people(area_m2, gain_w):
    """Return how many people bring the gain up to a figure, beside what the floor area brings."""
    return max(0.0, (gain_w - float(gains.room_sensible_w(area_m2, 0.0))) / gains.PERSON_SENSIBLE_W)


def mass(rows):
    """Return heat stored per floor area of a room row, from the simulation's layers."""
    return float(rows.mass_j_per_k[0] / rows.floor_area_m2[0])


def room(has_windows=True, gain_w=150.0, changes_per_h=0.35):
    """Return the fields of the room: south and west walls and a flat roof outdoors."""
    area = 6.096 * 3.81
    glass = {"window_south_m2": 2.7871, "window_west_m2": 1.3935} if has_windows else {}
    return SKIN | {
        "floor_area_m2": area,
        "length_m": 6.096,
        "north": "heated_room",
        "east": "heated_room",
        "south": "outside",
        "west": "outside",
        "above": "flat_roof",
        "roof_u_w_per_m2k": rooms.ROOF_U,
        "infiltration_per_h": changes_per_h,
        "people_count": people(area, gain_w),
        "mass_j_per_m2k": mass(rooms.room()),
    } | glass  # fmt: skip


def basement(is_insulated):
    """Return the fields of the basement: all sides in earth half up, a bare slab, a window above ground."""
    area = 15.24 * 7.9248
    wall_r = rooms.CONCRETE_WALL_R + 0.04 + (rooms.INSULATION_R if is_insulated else 0.0)
    sides = dict.fromkeys(("north", "east", "south", "west"), "earth")
    return SKIN | sides | BARE_GROUND | {
        "floor_area_m2": area,
        "length_m": 15.24,
        "earth_depth_m": 1.2192,
        "below": "basement_floor",
        "earth_wall_u_w_per_m2k": 1.0 / wall_r,
        "floor_u_w_per_m2k": 1.0 / rooms.SLAB_R,
        "window_south_m2": 1.858,
        "infiltration_per_h": 0.25,
        "people_count": people(area, 400.0),
        "mass_j_per_m2k": mass(rooms.basement("chicago", is_insulated)),
    }  # fmt: skip


CASES = {
    "room_chicago": ("chicago", room()),
    "room_tampa": ("tampa", room()),
    "room_sf": ("sf", room()),
    "room_chicago_nowin": ("chicago", room(has_windows=False)),
    "room_chicago_gain400": ("chicago", room(gain_w=400.0)),
    "room_chicago_leaky1ach": ("chicago", room(changes_per_h=1.0)),
} | {
    f"bsmt_{wall}_{city}": (city, basement(wall == "ins"))
    for wall, city in (
        ("ins", "chicago"), ("bare", "chicago"), ("ins", "sterling"), ("ins", "golden"),
        ("bare", "tampa"), ("bare", "sf"),
    )
}  # fmt: skip
"""City and the fields of the room of each case."""


def whole_case(city, fields):
    """Return the case of one room at a station."""
    plain = {"place": {"station": STATIONS[city]} | EARTH, "use": USE, "now": {"heat": "electric"}, "rooms": [fields]}
    plain["figures"] = {"changed": {"rooms[0].shade_frac": 1.0}}
    written = {
        head: [_written("rooms[]", fields)] if head == "rooms" else _written(head, part) for head, part in plain.items()
    }
    return case_from(written)


def _written(head, fields):
    """Return a section's fields as a case file has them: amounts with their units."""
    units = {info.path: info.unit for info in all_fields() if info.needs_unit}
    return {
        name: f"{value} {units[path]}" if (path := f"{head}.{name}") in units else value
        for name, value in fields.items()
    }


@lru_cache(maxsize=64)
def prepared_case(name):
    """Return structure and sheet of a case."""
    return prepared(whole_case(*CASES[name]), load_tables(), date(2026, 11, 25))


@lru_cache(maxsize=64)
def annual_kwh(name, weather="monthly"):
    """Return the program's annual cooling, drying and heating of a case, from its own monthly days or hourly ones."""
    tables = load_tables()
    structure, sheet = prepared_case(name)
    days = hourly(CASES[name][0]) if weather == "hourly" else climate.weather(structure, tables)
    cool, latent, heat = room_month_kwh(structure, point(sheet), days)[:, 0].sum(axis=1)
    return {"cool": float(cool), "latent": float(latent), "heat": float(heat)}
