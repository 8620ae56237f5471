"""Rooms of a file go through the one evaluation: each as if it stood alone, and as a case of one room would."""

import csv
import io
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from econ.case.choices import CHOICES
from econ.case.rooms_cell import BLANK, SIDES
from econ.case.rooms_file import read_rooms
from econ.case.rooms_out import rows_text
from econ.case.schema import case_from, plain
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.portfolio.outcome import outcomes
from econ.portfolio.spoken import cooling_now, kinds_of
from econ.portfolio.templates import case_of
from econ.portfolio.values import building_rows, group_count
from econ.tables.loaders import load_tables
from tests.unit.portfolio.building import HEADINGS, TODAY, TYPES, case, file_of, rooms

TABLES = load_tables()
COMPARED = ("cash_usd", "lcc_usd", "energy_usd_per_yr", "own_hours_h", "too_hot_h", "cool_kwh", "heat_kwh", "standing")


def found(table):
    """Return rows and outcomes of a file."""
    rows = building_rows(table, case(), TABLES, TODAY)
    return rows, outcomes(rows, TABLES)


def said_by_hand(table, at):
    """Return the case of one room as somebody would type it, every cell of its row in the field it stands for."""
    kinds, kind = kinds_of(table)
    tables = plain(case_of(case(), kinds[kind[at]]))
    room = tables["rooms"][0]
    own = plain(case())["rooms"][TYPES.index(table.text["type"][at])]
    room["floor_area_m2"] = f"{float(table.number['size'][at])!r} m**2"
    bits = table.number["exposure"][at]
    sides = (
        [s for i, s in enumerate(SIDES) if int(bits) >> i & 1]
        if bits != BLANK
        else [s for s in SIDES if own[s] == "outside"]
    )
    if bits != BLANK:
        room |= {side: "outside" if side in sides else "heated_room" for side in SIDES}
    glass = glass_of(table.text["windows"][at], own, len(sides), bits != BLANK)
    if glass is not None:
        room |= {f"window_{s}_m2": f"{glass / max(len(sides), 1) if s in sides else 0.0!r} m**2" for s in SIDES}
    _, count = cooling_now(table.text["cooling"])
    now = tables["now"] | {"unit_age_yr": float(table.number["age"][at])}
    now |= {} if np.isnan(count[at]) else {"units_count": float(count[at])}
    above_m = (table.number["floor"][at] - 1.0) * 2.9
    tables["site"]["outdoor_height_m"] = f"{float(0.15 + above_m)!r} m"
    if table.option["pays"][at] != BLANK:
        tables["prices"]["pays_bill"] = CHOICES["prices.pays_bill"][table.option["pays"][at]]
    return case_from(tables | {"now": now})


def glass_of(word, own, n_side, is_moved):
    """Return the glass of a room, or None where its type's windows stay as they are."""
    if word in ("small", "large"):
        return {"small": 0.7, "large": 2.8}[word] * n_side
    if word:
        return float(word)
    areas = [float(str(own[f"window_{side}_m2"]).split()[0]) * 0.3048**2 for side in SIDES]
    return sum(areas) if is_moved else None


@cache
def dozen():
    """Return twelve rooms, as read, as numbers and as evaluated."""
    table = rooms(12, seed=5)
    return table, *found(table)


@pytest.mark.parametrize("at", range(12))
def test_a_row_gives_what_a_case_of_that_room_gives(at):
    table, rows, several = dozen()
    structure, sheet = prepared(said_by_hand(table, at), TABLES, TODAY)
    result = evaluate(structure, point(sheet), TABLES)
    ways = result.alternatives
    assert several.cash_usd[at] == pytest.approx([float(way.cash_first_cost_usd[0]) for way in ways], rel=1e-9)
    assert several.lcc_usd[at] == pytest.approx(result.measures.lcc_usd[:, 0], rel=1e-7)
    assert several.own_hours_h[at] == pytest.approx([float(way.own_hours_h[0]) for way in ways], rel=1e-9)
    assert several.too_hot_h[at] == pytest.approx([float(way.unmet_cooling_h[0]) for way in ways], abs=1e-6)
    assert several.cool_kwh[at] == pytest.approx(float((result.need_cool_kwh + result.need_latent_kwh).sum()), rel=1e-9)
    assert [several.reasons[place] if place >= 0 else "" for place in several.reason[at]] == [
        "\n".join(way.reasons) for way in ways
    ]
    assert rows.n_room == 12


def test_a_room_alone_and_among_others_gives_the_same_numbers():
    table = rooms(300, seed=2)
    _, several = found(table)
    for at in (0, 17, 299):
        _, alone = found(read_rooms(rows_text([HEADINGS, row_of(table, at)]), TYPES))
        for name in COMPARED:
            assert getattr(alone, name)[0] == pytest.approx(getattr(several, name)[at], rel=1e-12, abs=1e-9), name


def row_of(table, at):
    """Return one row of the file as it was typed."""
    return list(csv.reader(io.StringIO(file_of(300, 2))))[table.line[at] - 1]


def test_a_blank_cell_takes_what_the_type_says():
    text = rows_text([["unit", "room", "floor", "type"], ["1", "A", "1", "Top west"]])
    rows = building_rows(read_rooms(text, TYPES), case(), TABLES, TODAY)
    usual = prepared(case_of(case(), kinds_of(read_rooms(text, TYPES))[0][0]), TABLES, TODAY)[1]
    assert rows.cooling_w[0] > 0.0
    assert rows.made.column("rooms[0].floor_area_m2")[0] == usual.entry("rooms[0].floor_area_m2").likely


def test_rooms_of_all_sorts_fall_into_few_groups():
    rows = building_rows(rooms(400), case(), TABLES, TODAY)
    assert group_count(rows) < 20


def test_the_work_is_told_and_stops_where_told_to():
    class StoppedError(Exception):
        pass

    seen = []

    def progress(done, of):
        seen.append((done, of))
        raise StoppedError

    with pytest.raises(StoppedError):
        outcomes(building_rows(rooms(30), case(), TABLES, TODAY), TABLES, progress)
    assert len(seen) == 1
    assert seen[0][1] == 30


def test_higher_floors_hang_higher():
    text = rows_text([["unit", "room", "floor", "size"], ["1", "A", "1", "200"], ["2", "A", "3", "200"]])
    rows = building_rows(read_rooms(text, TYPES), case(), TABLES, TODAY)
    low, high = rows.numbers["site.outdoor_height_m"]
    assert high - low == pytest.approx(2 * 2.9)
    assert replace(rows, notes=()).n_room == 2
