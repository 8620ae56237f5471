"""Several indoor units: rooms behind closed doors are served where one hangs, and everything scales with the sets."""

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.served import own_units, served_rooms
from econ.evaluate.sheet import point
from econ.evaluate.wiring.equipment import machines
from econ.kernel.alternative import HIRED, SELF, WINDOW
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_case

TABLES = load_tables()
NAME = "lower_level_cold"
"""A den and a bedroom behind a closed door."""


def sheet_of(**changed):
    case = with_value(demo_case(NAME), "quote.total_usd", None)
    for path, value in changed.items():
        case = with_value(case, path.replace("room__", "rooms[1].").replace("__", "."), value)
    return prepared(case, TABLES, TODAY)


def result_of(**changed):
    structure, sheet = sheet_of(**changed)
    return evaluate(structure, point(sheet), TABLES)


def line(way, key):
    at = way.line_items.key.index(key)
    return way.line_items.quantity[0, at], way.line_items.unit_price_usd[0, at]


@pytest.fixture(scope="module")
def one():
    return result_of()


@pytest.fixture(scope="module")
def two():
    return result_of(room__own_unit="yes")


def test_a_room_with_a_unit_of_its_own_is_served_on_every_way(one, two):
    structure, sheet = sheet_of(room__own_unit="yes")
    assert served_rooms(structure, point(sheet), 1)[:, 0].tolist() == [True, True]
    assert own_units(structure, point(sheet), 1)[:, 0].tolist() == [True, True]
    assert two.need_cool_kwh.sum() > one.need_cool_kwh.sum()
    assert "room.closed_door" not in {caution.code for caution in two.cautions}
    assert not {caution.code for caution in two.cautions} & {f"sizing.{way}_too_few" for way in ("window", "kit")}


def test_each_way_gets_enough_units():
    sheet = sheet_of(room__own_unit="yes")[1]
    counts = [sheet.entry(path).likely for path in ("kit.count", "kit.heads", "hired.count", "hired.heads")]
    assert counts == [2.0, 1.0, 2.0, 1.0]
    assert sheet.entry("window.count").likely >= 2.0


def test_price_hours_and_circuits_scale_with_the_sets(one, two):
    assert line(two.alternatives[SELF], "kit")[0] == line(two.alternatives[HIRED], "hired_set")[0] == 2.0
    assert line(two.alternatives[SELF], "circuit")[0] == 2.0 * line(one.alternatives[SELF], "circuit")[0]
    for key in ("anchors_indoor_usd", "wall_sleeve_usd", "ground_pad_usd", "line_cover_kit_usd"):
        assert line(two.alternatives[SELF], key)[0] == 2.0 * line(one.alternatives[SELF], key)[0]
    assert one.alternatives[SELF].own_hours_h[0] < two.alternatives[SELF].own_hours_h[0]
    assert two.alternatives[SELF].own_hours_h[0] < 2.0 * one.alternatives[SELF].own_hours_h[0]


def test_both_ductless_ways_still_use_the_same_energy(two):
    np.testing.assert_array_equal(two.alternatives[SELF].electricity_kwh, two.alternatives[HIRED].electricity_kwh)


def test_one_outdoor_unit_may_serve_both_rooms():
    structure, sheet = sheet_of(room__own_unit="yes", hired__heads=2)
    numbers = [sheet.entry(path).likely for path in ("kit.count", "hired.count", "hired.heads")]
    assert numbers == [2.0, 1.0, 2.0]
    assert sheet.entry("hired.capacity_w").likely >= 2.0 * sheet.entry("kit.capacity_w").likely - 1.0
    way = evaluate(structure, point(sheet), TABLES).alternatives[HIRED]
    quantity, price = line(way, "hired_set")
    markup = sheet.entry("costs.equipment_markup_frac").likely
    each = sheet.entry("hired.equipment_usd").likely + sheet.entry("hired.extra_head_usd").likely
    assert (quantity, price) == (1.0, pytest.approx(markup * each))
    assert line(way, "anchors_indoor_usd")[0] == 2.0
    assert line(way, "ground_pad_usd")[0] + line(way, "wall_bracket_usd")[0] == 1.0
    assert "2 indoor units each" in way.capability.label


def test_sets_alike_are_one_of_their_total_size():
    structure, sheet = sheet_of(room__own_unit="yes")
    values = point(sheet)
    single = machines(structure, values | {"kit.count": np.asarray(1.0)}, 1)[SELF]
    double = machines(structure, values, 1)[SELF]
    assert double.cooling.a_full.capacity_w == pytest.approx(2.0 * single.cooling.a_full.capacity_w)
    assert double.cooling.a_full.cop == pytest.approx(single.cooling.a_full.cop, rel=1e-9)
    assert double.standby_w == pytest.approx(2.0 * single.standby_w)
    assert double.auxiliary.pan_heater_w == pytest.approx(2.0 * single.auxiliary.pan_heater_w)


def test_fewer_units_than_rooms_is_found():
    found = {caution.code for caution in result_of(room__own_unit="yes", kit__count=1, window__count=1).cautions}
    assert {"sizing.kit_too_few", "sizing.window_too_few"} <= found


def test_window_units_cost_by_their_number():
    quantity = [line(result_of(window__count=count).alternatives[WINDOW], "window_bracket_usd")[0] for count in (1, 3)]
    assert quantity == [1.0, 3.0]
