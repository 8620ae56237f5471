"""A building to test with: three types, and as many rooms as asked for, no two alike."""

import random
from datetime import date
from functools import cache

from econ.case.rooms_columns import COLUMNS
from econ.case.rooms_file import read_rooms
from econ.case.rooms_out import rows_text
from econ.case.schema import case_from, plain
from econ.case.toml import read_case_file
from econ.evaluate.known import known_names
from econ.tables.place import data_root

TODAY = date(2027, 2, 1)
HEADINGS = [column.heading for column in COLUMNS]
TYPES = ("Top large", "Top west", "Top north")


@cache
def case(**building):
    """Return the rooms of the demo flat as types, in a building without a quote; keywords go into its section."""
    tables = plain(read_case_file(data_root() / "cases" / "top_floor_flat.toml", known_names()))
    del tables["quote"], tables["site"]["outdoor_height_m"]
    for room, name in zip(tables["rooms"], TYPES, strict=True):
        room["name"] = name
    return case_from({**tables, "building": building})


def file_of(n_room: int, seed: int = 1) -> str:
    """Return a file of rooms in a few buildings, every cell drawn."""
    rng = random.Random(seed)
    return rows_text([HEADINGS, *(_row(rng, at) for at in range(n_room))])


def _row(rng: random.Random, at: int) -> list[str]:
    """Return one row."""
    said = {
        "building": f"House {at // 200}",
        "unit": str(at // 3),
        "room": f"Room {at}",
        "floor": str(1 + rng.randrange(3)),
        "size": f"{rng.uniform(80, 400):.1f}",
        "type": rng.choice(TYPES),
        "exposure": rng.choice(("S", "SW", "N", "none", "N/E", "")),
        "windows": rng.choice(("small", "large", "", "20")),
        "wall": rng.choice(("brick", "frame", "")),
        "cooling": rng.choice(("none", "window units", "2 window units", "portable", "")),
        "age": str(rng.randrange(12)),
        "heat": rng.choice(("gas", "electric", "oil", "")),
        "pays": rng.choice(("tenant", "me", "")),
        "rent": str(rng.randrange(500, 2000)),
    }
    return [said.get(column.key, "") for column in COLUMNS]


def rooms(n_room: int, seed: int = 1):
    """Return them as read."""
    return read_rooms(file_of(n_room, seed), TYPES)
