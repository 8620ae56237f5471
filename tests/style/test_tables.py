"""Every table travels with its record, and the records hold together."""

import dataclasses
import datetime
import importlib.util
import re
from itertools import product
from pathlib import Path
from types import ModuleType

import numpy as np
import pint
import pytest

from econ.case.choices import CHOICES
from econ.climate.station import Station
from econ.kernel.units import SUFFIX_UNITS, suffix_of
from econ.tables.loaders import TABLE_NAMES, load_tables
from econ.tables.place import data_root
from econ.tables.record import read_table

ROOT = data_root()
CASES = ROOT / "cases"
"""Demo cases: what a user might have typed, files of rooms among them, and no table."""

NAMES = sorted(str(path.relative_to(ROOT).with_suffix("")) for path in ROOT.rglob("*.csv") if CASES not in path.parents)
RECORD_LISTS = {f"installation/{name}" for name in ("care", "photos", "questions", "splits")}
WORK_LISTS = {f"installation/{name}" for name in ("stops", "tasks", "tools")}
OTHER_LOADER = {"climate/towns", "draws/sobol", "words/glossary", *WORK_LISTS, *RECORD_LISTS}
LATE_BY_D = 180
UNITS = pint.UnitRegistry()
UNITS.define("USD = [currency]")
UNITS.define("cord = 128 * foot**3")

RULES = {
    "wind",
    "optional",
    "as_kit",
    "room_kinds",
    "era",
    "mass",
    "unit_life",
    "square_root_of_area",
    "warming",
    "sizing",
    "energy_by_state",
    "structure",
}
"""Where a usual value comes from when it is not one cell of one table."""


def build_script(name: str) -> ModuleType:
    topic, table = name.split("/")
    spec = importlib.util.spec_from_file_location(f"build_{table}", ROOT / topic / f"build_{table}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("name", NAMES)
def test_table_agrees_with_its_record(name: str) -> None:
    assert len(read_table(name)) > 0


@pytest.mark.parametrize("name", NAMES)
def test_units_of_columns_can_be_read(name: str) -> None:
    table = read_table(name)
    for column, entry in table.record["columns"].items():
        if entry["kind"] == "number" and entry["unit"] != "by row":
            UNITS.parse_units(entry["unit"])
        if entry.get("unit") == "by row":
            for unit in set(table.texts("unit")):
                UNITS.parse_units(unit)
        assert entry["meaning"], column


@pytest.mark.parametrize("name", NAMES)
def test_record_is_not_long_overdue_for_review(name: str) -> None:
    record = read_table(name).record
    assert record["retrieved"] <= record["review_by"]
    assert datetime.date.today() <= record["review_by"] + datetime.timedelta(days=LATE_BY_D)


@pytest.mark.parametrize("name", NAMES)
def test_ranges_ascend(name: str) -> None:
    table = read_table(name)
    for column in table.columns:
        if column == "low" or column.endswith(".low"):
            low, likely, high = (table.numbers(column.removesuffix("low") + step) for step in ("low", "likely", "high"))
            known = ~np.isnan(low)
            assert np.all(low[known] <= likely[known]), column
            assert np.all(likely[known] <= high[known]), column


@pytest.mark.parametrize("name", NAMES)
def test_no_maker_is_named(name: str) -> None:
    mark = re.compile(r"®|™|\b(?:Inc|LLC|Corp|Ltd|GmbH)\b|\b[A-Z]{2,}\d{2,}[A-Z]+\d*\b")
    for file in (ROOT / f"{name}.csv", ROOT / f"{name}.toml"):
        text = re.sub(r"^(?:raw_)?sha256 = .*$", "", file.read_text(encoding="utf-8"), flags=re.MULTILINE)
        assert mark.findall(text) == []


def test_every_table_has_a_loader() -> None:
    assert set(NAMES) == set(TABLE_NAMES) | OTHER_LOADER


@pytest.mark.parametrize("name", ["equipment/ductless", "equipment/window"])
def test_building_a_derived_table_again_gives_the_same_bytes(name: str) -> None:
    costs = (ROOT / "installation" / "costs.csv").read_text(encoding="utf-8")
    assert build_script(name).built(costs).encode() == (ROOT / f"{name}.csv").read_bytes()


@pytest.mark.parametrize(
    "name",
    ["climate/stations", "climate/towns", "climate/world_cities", "installation/costs", "prices/energy_by_state"],
)
def test_record_and_build_script_name_the_same_raw_file(name: str) -> None:
    assert read_table(name).record["raw_sha256"] == build_script(name).RAW_SHA256


def test_build_scripts_name_no_machine_path() -> None:
    for script in ROOT.rglob("build_*.py"):
        assert re.search(r"/(?:home|work|tmp|Users)/", script.read_text(encoding="utf-8")) is None, script


def test_every_kind_size_and_grade_is_there() -> None:
    tables = load_tables()
    for kind, size, grade in product(("kit", "trade"), (6, 9, 12, 18, 24, 30, 36), CHOICES["kit.grade"][:-1]):
        entry = tables.ductless(kind, size, grade)
        assert entry.number("size_kbtu_per_h") == size
    assert len(tables.ductless_sets.entries) == 42


def test_every_window_size_that_can_be_chosen_is_there() -> None:
    sizes = tuple(int(size) for size in CHOICES["window.size"] if size.isdigit())
    assert load_tables().window_sizes() == sizes == load_tables().window_sizes("old_stock")


def test_cost_keys_end_in_the_unit_of_their_row() -> None:
    for key, cost in load_tables().costs.entries.items():
        ending = suffix_of(key) or suffix_of(key.rsplit("_", maxsplit=1)[1])
        assert ending is not None, key
        assert UNITS.parse_units(ending) == UNITS.parse_units(cost.text("unit")), key


def test_suffixes_of_costs_are_the_shared_ones() -> None:
    assert {"_usd_per_kg", "_usd_per_m2"} <= set(SUFFIX_UNITS)


def test_rows_without_a_source_say_assumption() -> None:
    for key, cost in load_tables().costs.entries.items():
        source = cost.text("source")
        assert source, key
        if "no source" in source or "weak" in source:
            assert "assumption" in source, key


def test_every_choice_has_a_usual_option() -> None:
    inputs = load_tables().inputs
    choices = {path for path in inputs.keys if inputs[path].text("kind") == "choice"}
    assert choices == set(CHOICES)
    for path in choices:
        entry = inputs[path]
        assert entry.text("unknown_choice") in CHOICES[path][:-1], path
        assert entry.text("choice") in CHOICES[path] or entry.text("from"), path


def test_every_amount_has_a_range_or_says_where_it_comes_from() -> None:
    for path, entry in load_tables().inputs.entries.items():
        if entry.text("kind") == "amount":
            assert ("value" in entry.spreads) != bool(entry.text("from")), path
        assert entry.text("source"), path


def test_ranges_for_not_known_hold_the_usual_value() -> None:
    for path, entry in load_tables().inputs.entries.items():
        low, high = entry.number("unknown_low"), entry.number("unknown_high")
        assert np.isnan(low) == np.isnan(high), path
        if not np.isnan(low):
            assert low <= high, path
            if "value" in entry.spreads:
                assert low <= entry.spread().low, path
                assert entry.spread().high <= high, path


def test_usual_values_come_from_tables_that_exist() -> None:
    tables = load_tables()
    ductless, window = tables.ductless("kit", 12, "standard"), tables.window(12)
    known = {
        "ductless": lambda name: name in ductless.spreads or name in ductless.numbers,
        "trade": lambda name: name in ductless.spreads,
        "window": lambda name: name in window.spreads,
        "costs": lambda name: name in tables.costs,
        "lives": lambda name: name in tables.lives,
        "otherwise": lambda name: name in tables.otherwise["mixed"].spreads,
        "walls": lambda name: name in tables.walls["block", "yes"].spreads,
        "roofs": lambda name: name in tables.roof("flat_roof", "from_1980").spreads,
        "floors": lambda name: name in tables.floor("open_air", "from_1980").spreads,
        "glazing": lambda name: name in tables.glazing["double"].spreads,
        "covers": lambda name: name in tables.covers["lawn"].spreads,
        "earth_walls": lambda name: name in tables.walls["block", "yes"].spreads,
        "draughts": lambda name: name in tables.draughts["tight"].spreads,
        "heaters": lambda name: name in tables.heaters["gas"].spreads,
        "clock": lambda name: not name,
        "fuels": lambda name: name in tables.fuels["gas"].spreads,
        "tariff": lambda name: name in {"summer", "peak", "upper"},
        "openings": lambda name: name in tables.openings["sash"].spreads,
        "season_waits": lambda name: f"{name}/peak" in tables.season_waits,
        "rooms[0]": lambda name: f"rooms[].{name}" in tables.inputs,
        "station": lambda name: name in {field.name for field in dataclasses.fields(Station)},
    }
    for path, entry in tables.inputs.entries.items():
        rule, _, name = entry.text("from").partition(".")
        if rule and rule not in RULES:
            assert known[rule](name), path


def test_every_room_kind_gives_every_field_that_points_to_it() -> None:
    tables = load_tables()
    fields = {p.removeprefix("rooms[].") for p, e in tables.inputs.entries.items() if e.text("from") == "room_kinds"}
    for kind, field in product(CHOICES["rooms[].kind"], fields):
        entry = tables.room_kinds[kind, field]
        option = entry.text("choice")
        assert ("value" in entry.spreads) != bool(option), (kind, field)
        if option:
            assert option in CHOICES[f"rooms[].{field}"], (kind, field)


@pytest.mark.parametrize(
    ("path", "field"),
    [("rooms[].glazing", "glazing"), ("rooms[].shade", "shading"), ("rooms[].draughts", "draughts")],
)
def test_every_option_has_its_row(path: str, field: str) -> None:
    assert getattr(load_tables(), field).keys == CHOICES[path]


def test_every_wall_roof_and_floor_that_can_be_chosen_has_its_row() -> None:
    tables = load_tables()
    for wall, insulated in product(CHOICES["rooms[].wall"], CHOICES["rooms[].wall_insulated"]):
        assert tables.walls[wall, insulated].spread("u_w_per_m2k").likely > 0.0
    for when in ("before_1980", "from_1980"):
        for above in CHOICES["rooms[].above"]:
            assert tables.roof(above, when).spread("u_w_per_m2k").low >= 0.0
        for below in CHOICES["rooms[].below"]:
            assert tables.floor(below, when).spread("u_w_per_m2k").low >= 0.0


def test_every_heater_that_can_be_chosen_has_its_row() -> None:
    assert load_tables().heaters.keys == CHOICES["now.heat"]


def test_tables_live_in_topic_folders() -> None:
    assert all(len(Path(name).parts) == 2 for name in NAMES)
