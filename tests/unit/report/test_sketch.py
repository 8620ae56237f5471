"""Drawings of the room and the wall: well-formed, spoken, to scale, readable on light and dark."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from econ.evaluate.sheet import Entry, sheet_of
from econ.kernel.spread import Spread
from econ.report.numbers import UnitSystem
from econ.report.sketch import circuit, hole, room, wall
from econ.report.sketch.element import SHORTAGE_COLOUR, WINDOW_COLOUR
from econ.report.style import GROUNDS, contrast
from tests.unit.installation.site_values import site_values

SVG = "{http://www.w3.org/2000/svg}"
LOWER_LEVEL = room.RoomDrawing(
    name="Den <main>",
    floor_area_m2=82.0,
    length_m=10.0,
    ceiling_height_m=2.3,
    sides=("earth", "earth", "outside", "heated_room"),
    windows_m2=(0.0, 0.0, 2.4, 0.0),
    earth_depth_m=1.2,
    above="heated_room",
    below="basement_floor",
)
WALL = wall.WallDrawing(0.25, 5.8, 7.6, 1.5, 0.1, 0.1)
LADDER = circuit.CircuitDrawing(
    service_a=100.0,
    load_a=85.4,
    breaker_a=20.0,
    size_awg=12.0,
    conductor_a=20.0,
    is_wire_named=True,
    length_m=9.1,
    drop_frac=0.0072,
    supply_v=240.0,
    protection="ground-fault protection: asked by this code",
    mca_a=15.0,
    mop_a=25.0,
    is_label_read=True,
)
NOTHING_KNOWN = replace(
    LADDER,
    service_a=float("nan"),
    breaker_a=float("nan"),
    is_wire_named=False,
    protection="ground-fault protection: code not known",
    is_label_read=False,
)
DRAWINGS = [
    (room.plan, LOWER_LEVEL),
    (room.section, LOWER_LEVEL),
    (wall.section, WALL),
    (hole.detail, WALL),
    (circuit.ladder, LADDER),
    (circuit.ladder, replace(LADDER, breaker_a=40.0)),
    (circuit.ladder, NOTHING_KNOWN),
]


@pytest.mark.parametrize(("drawn", "thing"), DRAWINGS)
@pytest.mark.parametrize("units", list(UnitSystem))
def test_a_drawing_is_well_formed_and_speaks(drawn, thing, units):
    tree = ElementTree.fromstring(drawn(thing, units))
    assert tree.find(f"{SVG}title").text
    assert tree.find(f"{SVG}desc").text
    assert tree.get("role") == "img"


@pytest.mark.parametrize("hex_colour", [WINDOW_COLOUR, SHORTAGE_COLOUR])
@pytest.mark.parametrize("ground", GROUNDS.values())
def test_fixed_colours_stand_out_on_both_grounds(hex_colour, ground):
    # W3C, Web Content Accessibility Guidelines 2.2, 1.4.11: graphics 3 to 1.
    assert contrast(hex_colour, ground.paper) >= 3.0


@pytest.mark.parametrize(("drawn", "thing"), DRAWINGS)
def test_every_other_colour_is_that_of_the_pages_letters(drawn, thing):
    text = drawn(thing, UnitSystem.US)
    colours = set(re.findall(r'(?:stroke|fill)(?:="|:)([^";]+)', text))
    assert {c for c in colours if not c.startswith("url(")} <= {"currentColor", "none", WINDOW_COLOUR, SHORTAGE_COLOUR}


def test_earth_sides_are_hatched_and_only_those():
    assert room.plan(LOWER_LEVEL, UnitSystem.US).count('fill="url(#plan-earth)"') == 2


def test_outside_and_earth_walls_are_thick_and_room_walls_thin():
    tree = ElementTree.fromstring(room.plan(LOWER_LEVEL, UnitSystem.US))
    widths = [line.get("stroke-width") for line in tree.iter(f"{SVG}line") if line.get("stroke-linecap") == "square"]
    assert widths == ["5", "5", "5", "1.6"]


def test_a_window_is_drawn_as_wide_as_its_area():
    tree = ElementTree.fromstring(room.plan(LOWER_LEVEL, UnitSystem.US))
    window = next(line for line in tree.iter(f"{SVG}line") if WINDOW_COLOUR in (line.get("style") or ""))
    side = next(line for line in tree.iter(f"{SVG}line") if line.get("stroke-linecap") == "square")
    drawn, length = (abs(float(line.get("x2")) - float(line.get("x1"))) for line in (window, side))
    assert drawn / length == pytest.approx(2.4 / room.WINDOW_HEIGHT_M / 10.0, abs=0.01)


def test_the_cut_shows_an_earth_side_where_there_is_one():
    assert room._cut(LOWER_LEVEL) == (3, 1)
    turned = replace(LOWER_LEVEL, sides=("earth", "outside", "outside", "outside"))
    assert room._cut(turned) == (2, 0)


@pytest.mark.parametrize("above", room.ABOVE_WORDS)
@pytest.mark.parametrize("below", room.BELOW_WORDS)
def test_every_answer_about_above_and_below_can_be_drawn(above, below):
    text = room.section(replace(LOWER_LEVEL, above=above, below=below), UnitSystem.US)
    assert room.ABOVE_WORDS[above] in text
    assert room.BELOW_WORDS[below] in text


def test_a_name_cannot_break_the_drawing():
    assert "Den &lt;main&gt;" in room.plan(LOWER_LEVEL, UnitSystem.US)


@pytest.mark.parametrize(
    ("line_set_m", "said", "is_short"),
    [
        (5.79, "0 m short", True),
        (5.8, "0 m to spare", False),
        (7.8, "2 m to spare", False),
        (4.8, "1 m short", True),
    ],
)
def test_slack_or_shortage_is_told_and_drawn(line_set_m, said, is_short):
    text = wall.section(replace(WALL, line_set_m=line_set_m), UnitSystem.SI)
    assert said in text
    assert ('stroke-dasharray="6 5"' in text) == is_short


def test_the_covered_part_is_as_long_as_the_set_in_the_box():
    near, far = wall._parted([(0.0, 0.0), (3.0, 0.0), (3.0, 4.0)], [3.0, 4.0], 5.0 / 7.0)
    assert near == [(0.0, 0.0), (3.0, 0.0), (3.0, pytest.approx(2.0))]
    assert far == [near[-1], (3.0, 4.0)]


@pytest.mark.parametrize(("bite_m", "bites"), [(0.25, 1), (0.249, 2), (0.125, 2), (0.1, 3), (float("nan"), 0)])
def test_bites_are_counted_whole(bite_m, bites):
    assert replace(WALL, bite_m=bite_m).bites == bites


def test_an_outdoor_unit_above_the_indoor_one_is_told_as_below():
    assert "hangs 1 m below the outdoor unit" in wall.description(replace(WALL, line_rise_m=-1.0), UnitSystem.SI)


def broken(drawn):
    return circuit.ladder(drawn, UnitSystem.US).count("stroke-dasharray")


def test_what_is_known_of_the_circuit_is_drawn_whole_and_the_rest_broken():
    assert (broken(LADDER), broken(NOTHING_KNOWN)) == (0, 5)
    assert broken(replace(LADDER, breaker_a=float("nan"))) == 1


def test_what_is_not_known_of_the_circuit_is_told():
    told = circuit.description(NOTHING_KNOWN, UnitSystem.US)
    assert "Still to be found out: panel, breaker, wire, switch, unit." in told
    assert "read your unit's label" in told
    assert "Still to be found out" not in circuit.description(LADDER, UnitSystem.US)


@pytest.mark.parametrize(
    ("changed", "part"),
    [
        ({"breaker_a": 25.1}, "breaker"),
        ({"breaker_a": 14.9}, "breaker"),
        ({"conductor_a": 14.9}, "wire"),
        ({"load_a": 100.1}, "panel"),
    ],
)
def test_a_part_that_does_not_fit_is_told_and_marked(changed, part):
    odd = replace(LADDER, **changed)
    assert f"Does not fit: {part}." in circuit.description(odd, UnitSystem.US)
    assert SHORTAGE_COLOUR in circuit.ladder(odd, UnitSystem.US)
    assert SHORTAGE_COLOUR not in circuit.ladder(LADDER, UnitSystem.US)


def test_the_ladder_of_a_case_shows_its_likely_values():
    values = site_values(site__breaker_a=20.0, site__conductor="12", site__code_edition="not_known")
    entries = {path: Entry(Spread(*(float(value),) * 3, "test"), "") for path, value in values.items()}
    drawn = circuit.circuit_drawing(sheet_of(entries))
    assert (drawn.breaker_a, drawn.size_awg, drawn.conductor_a, drawn.supply_v) == (20.0, 12.0, 20.0, 240.0)
    assert drawn.is_wire_named
    assert drawn.is_label_read
    assert "code not known" in drawn.protection
