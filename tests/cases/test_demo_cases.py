"""The invented demo cases: each is read without faults, names only what the tables hold, and says what it is for."""

import csv
from pathlib import Path

import pytest

from econ.case.edit import answer_counts, value_at
from econ.case.section import Known
from econ.case.toml import read_case, read_case_file, write_case
from econ.tables.place import data_root

DEMOS = ("garage_studio_hot", "lower_level_cold", "sunroom_with_quote", "top_floor_flat")


def column(table: str, name: str) -> tuple[str, ...]:
    with (data_root() / f"{table}.csv").open(encoding="utf-8", newline="") as lines:
        return tuple(dict.fromkeys(row[name] for row in csv.DictReader(lines)))


@pytest.fixture(scope="module")
def known():
    return Known(
        column("climate/stations", "key"), column("installation/tasks", "task"), column("installation/tools", "tool")
    )


def demo(name: str, known: Known):
    return read_case_file(data_root() / "cases" / f"{name}.toml", known)


def test_four_demo_cases_are_there():
    assert tuple(sorted(path.stem for path in Path(data_root() / "cases").glob("*.toml"))) == DEMOS


@pytest.mark.parametrize("name", DEMOS)
def test_demo_case_is_read_without_faults_and_comes_back(name, known):
    case = demo(name, known)
    assert read_case(write_case(case), known) == case
    assert case.record.name
    assert case.place.decision_date is not None
    assert answer_counts(case)["not_known"] >= (0 if name == "sunroom_with_quote" else 2)


@pytest.mark.parametrize(
    ("name", "area_ft2", "n_room"),
    [
        ("lower_level_cold", 884, 2),
        ("garage_studio_hot", 264, 1),
        ("sunroom_with_quote", 224, 1),
        ("top_floor_flat", 480, 3),
    ],
)
def test_floor_areas_add_up_to_the_scenario(name, area_ft2, n_room, known):
    rooms = demo(name, known).rooms
    assert len(rooms) == n_room
    assert sum(room.floor_area_m2.likely for room in rooms) == pytest.approx(area_ft2 * 0.3048**2)


def test_sunroom_glass_adds_up(known):
    [room] = demo("sunroom_with_quote", known).rooms
    glass = (room.window_north_m2, room.window_east_m2, room.window_south_m2, room.window_west_m2)
    assert sum(side.likely for side in glass) == pytest.approx(110 * 0.3048**2)


def test_quotes_stand_as_given(known):
    assert value_at(demo("lower_level_cold", known), "quote.total_usd").likely == 6300
    assert value_at(demo("sunroom_with_quote", known), "quote.total_usd").likely == 5450
    assert value_at(demo("garage_studio_hot", known), "quote.total_usd") is None


@pytest.mark.parametrize("name", DEMOS)
def test_no_window_lies_in_a_side_that_touches_a_room_or_earth(name, known):
    for room in demo(name, known).rooms:
        for side in ("north", "east", "south", "west"):
            glass = getattr(room, f"window_{side}_m2").likely
            assert glass == 0 or getattr(room, side) == "outside"
