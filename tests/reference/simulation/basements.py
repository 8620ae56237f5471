"""More basements of the simulation, no figure of which had a part in choosing the method, all of a city as rows."""

import csv
from functools import lru_cache
from pathlib import Path

import numpy as np

from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate, loads
from econ.loads import gains
from econ.loads.heat_balance import need
from econ.tables.loaders import load_tables
from tests.reference.simulation import product, rooms
from tests.reference.simulation.weather import hourly

FIGURES = Path(__file__).parent / "basements.csv"
"""Shapes and annual figures, kWh: the same engine, first year, and where run the 20th year of 20 on end."""

GYPSUM_R = 0.0127 / 0.16


@lru_cache(maxsize=1)
def shapes():
    """Return the rows of the file, numbers as numbers, NaN where there is none."""
    with FIGURES.open(newline="") as lines:
        rows = list(csv.DictReader(lines))
    return [row | {name: float(cell or "nan") for name, cell in row.items() if name != "city"} for row in rows]


@lru_cache(maxsize=16)
def annual_kwh(city, weather):
    """Return the program's annual heating and cooling of every shape in a city, in the order of the file."""
    here = [shape for shape in shapes() if shape["city"] == city]
    columns = {name: np.array([shape[name] for shape in here]) for name in here[0] if name != "city"}
    structure, sheet = product.prepared_case(
        f"bsmt_{'ins' if city in ('chicago', 'sterling', 'golden') else 'bare'}_{city}"
    )
    values = point(sheet) | values_of(columns)
    days = hourly(city) if weather == "hourly" else climate.weather(structure, load_tables())
    found = need(loads.room_rows(structure, values, len(here), days), days, np.full(len(here), 0.6))
    weight_kd = days.weight_d / 1000.0
    heat, cool = ((power * weight_kd).sum(axis=(0, 2)) for power in (found.heat_w, found.cool_w))
    return list(zip(heat, cool, strict=True))


def values_of(columns):
    """Return the values by path that make the reference basement another one."""
    area = columns["length_m"] * columns["width_m"]
    insulation = columns["insulation_m2k_per_w"]
    wall_r = rooms.CONCRETE_WALL_R + 0.04 + np.where(insulation > 0.0, insulation + GYPSUM_R, 0.0)
    own_w = np.array([float(gains.room_sensible_w(each, 0.0)) for each in area])
    return {
        "rooms[0].floor_area_m2": area,
        "rooms[0].length_m": columns["length_m"],
        "rooms[0].earth_depth_m": columns["depth_m"],
        "rooms[0].earth_wall_u_w_per_m2k": 1.0 / wall_r,
        "rooms[0].floor_u_w_per_m2k": 1.0 / (rooms.SLAB_R + columns["under_slab_m2k_per_w"]),
        "rooms[0].people_count": (400.0 - own_w) / gains.PERSON_SENSIBLE_W,
        "rooms[0].window_south_m2": np.full(len(area), 1.858),
        "place.soil_conductivity_w_per_mk": columns["soil_w_per_mk"],
    }
