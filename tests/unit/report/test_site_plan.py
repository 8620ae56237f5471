"""The site from above: words stand free at any distance, distances are drawn true, what lacks is named."""

import math
from dataclasses import replace
from itertools import product
from xml.etree import ElementTree

import pytest

from econ.report.numbers import UnitSystem
from econ.report.sketch import site_plan
from econ.report.sketch.site_plan import SitePlan, plan_view, statement, table
from tests.unit.report.test_wall_sketch import SVG, assert_words_stand_free

NAN = float("nan")
MEASURED = SitePlan(4.0, 10.0, 0.3, 1.5, 1.2, 2.0, 1.5, 2.5)
NEARS = (0.0, 0.5, 2.0, 20.0, 31.0, NAN)


@pytest.mark.parametrize("units", list(UnitSystem))
def test_no_word_lies_over_another_at_any_distance(units):
    for along, back, gas, vent, window in product((0.0, 4.0, 60.0), (0.0, NAN, 5.0), NEARS, NEARS, NEARS):
        assert_words_stand_free(plan_view(SitePlan(along, 150.0, back, NAN, vent, gas, window, vent), units))


def test_a_distance_is_drawn_as_long_as_it_is():
    tree = ElementTree.fromstring(plan_view(MEASURED, UnitSystem.SI))
    rays = [
        math.hypot(*(float(line.get(f"{axis}2")) - float(line.get(f"{axis}1")) for axis in "xy"))
        for line in tree.iter(f"{SVG}line")
        if line.get("stroke-width") == "1.6"
    ]
    ruler = next(line for line in tree.iter(f"{SVG}line") if line.get("y1") == "16")
    px_per_m = (float(ruler.get("x2")) - float(ruler.get("x1"))) / 2.0
    assert [ray / px_per_m for ray in rays] == pytest.approx([2.0, 1.5, 2.5, 1.2], abs=0.01)


def test_what_nobody_has_measured_is_named_and_not_drawn():
    drawn = replace(MEASURED, gas_meter_m=NAN)
    assert "Not measured yet: gas meter or regulator." in statement(drawn, UnitSystem.US)
    assert "?  gas meter or regulator: not measured" in plan_view(drawn, UnitSystem.US)
    assert table(drawn, UnitSystem.US)["How far"].count("not measured") == 1


def test_a_thing_said_not_to_be_there_is_left_out():
    none = replace(MEASURED, vents_m=site_plan.NONE_NEAR_M)
    assert "vent" not in plan_view(none, UnitSystem.US)
    assert "none near" in table(none, UnitSystem.US)["How far"]
    assert "vent" not in statement(none, UnitSystem.US)
