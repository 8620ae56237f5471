"""The wall, the hole and the lines at usual and extreme sizes: to scale, nothing over anything else, told in words."""

from dataclasses import replace
from itertools import combinations, product
from xml.etree import ElementTree

import pytest

from econ.kernel.constants import FOOT_M
from econ.report.numbers import UnitSystem
from econ.report.sketch import hole, wall
from econ.report.sketch.wall_facts import WallDrawing, description, fit_sentences, reach_words, table

SVG = "{http://www.w3.org/2000/svg}"
USUAL = WallDrawing(0.25, 5.8, 7.6, 1.5, 0.1, 0.1)
LETTER_WIDTH = 0.5
"""Mean width of a letter over its height in the sans-serif fonts of browsers, from memory; digits are 0.56."""

WALLS = (0.05, 0.2, 0.762, 1.5)
RUNS = (0.3, 4.6, 60.0)
RISES = (-30.0, -3.0, 0.0, 0.4, 1.5, 30.0)
FOOTS = (0.0, 0.15, 1.2, 9.0)
EXTREMES = [
    WallDrawing(thick, run, 7.6, rise, foot, bite, head_above_m=above)
    for thick, run, rise, foot, (bite, above) in product(
        WALLS, RUNS, RISES, FOOTS, ((0.1, 0.15), (float("nan"), float("nan")))
    )
]


def boxes(tree):
    """Return each word's box, by its text."""
    found = []
    for text in tree.iter(f"{SVG}text"):
        size, x, y = (float(text.get(name)) for name in ("font-size", "x", "y"))
        width = LETTER_WIDTH * size * len(text.text)
        left = x - {"start": 0.0, "middle": width / 2.0, "end": width}[text.get("text-anchor")]
        found.append((text.text, (left, y - 0.75 * size, left + width, y + 0.2 * size)))
    return found


def overlap(one, other):
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def sheet(tree):
    return tuple(float(part) for part in tree.get("viewBox").split())


def assert_words_stand_free(svg, solid=()):
    tree = ElementTree.fromstring(svg)
    named, (_, _, width, height) = boxes(tree), sheet(tree)
    for text, (left, top, right, bottom) in named:
        assert left >= 0.0, text
        assert top >= 0.0, text
        assert right <= width, text
        assert bottom <= height, text
    for (one, its), (other, others) in combinations(named, 2):
        assert not overlap(its, others), (one, other)
    for (text, its), thing in product(named, solid):
        assert not overlap(its, thing), text


@pytest.mark.parametrize("units", list(UnitSystem))
def test_no_word_lies_over_another_or_over_a_unit_at_any_size(units):
    for drawn in EXTREMES:
        assert_words_stand_free(wall.section(drawn, units), wall.unit_boxes(wall._place(drawn)))
        assert_words_stand_free(hole.detail(drawn, units))


def test_everything_drawn_stays_on_the_sheet():
    for drawn in EXTREMES:
        tree = ElementTree.fromstring(wall.section(drawn, UnitSystem.US))
        _, _, width, height = sheet(tree)
        for line in tree.iter(f"{SVG}polyline"):
            points = [tuple(map(float, pair.split(","))) for pair in line.get("points").split()]
            assert all(0.0 <= x <= width and 0.0 <= y <= height for x, y in points)


def test_the_wall_is_drawn_to_the_scale_of_its_ruler():
    for drawn in EXTREMES:
        tree = ElementTree.fromstring(wall.section(drawn, UnitSystem.SI))
        solid = next(box for box in tree.iter(f"{SVG}rect") if box.get("fill") == "url(#wall-cut)")
        ruler = next(line for line in tree.iter(f"{SVG}line") if line.get("y1") == "16")
        px_per_m = (float(ruler.get("x2")) - float(ruler.get("x1"))) / 0.5
        assert float(solid.get("width")) == pytest.approx(drawn.wall_thickness_m * px_per_m, abs=0.3)


def test_the_hole_is_drawn_with_its_fall_and_its_bites():
    drawn = replace(USUAL, wall_thickness_m=0.762, bite_m=0.1016)
    tree = ElementTree.fromstring(hole.detail(drawn, UnitSystem.US))
    edge = next(tree.iter(f"{SVG}polyline")).get("points").split()
    (x1, y1), (x2, y2) = (tuple(map(float, pair.split(","))) for pair in edge)
    out = 2.0 * hole.SLEEVE_M / 0.762
    assert (y2 - y1) / (x2 - x1) == pytest.approx(1.0 / 48.0 / (1.0 + out), abs=0.002)
    assert [text.text for text in tree.iter(f"{SVG}text") if text.text.isdigit()] == list("12345678")


# 30 in of stone, 60 m of lines, no difference in height.
def test_what_is_left_out_is_marked_and_its_true_length_written():
    long = wall.section(replace(USUAL, line_run_m=60.0, line_rise_m=0.0), UnitSystem.SI)
    assert "about 60 m along" in long
    assert "along" not in wall.section(replace(USUAL, line_run_m=5.8), UnitSystem.SI)
    assert "30 m up" in wall.section(replace(USUAL, line_run_m=40.0, line_rise_m=30.0), UnitSystem.SI)
    assert "9 m above the ground" in wall.section(replace(USUAL, outdoor_height_m=9.0), UnitSystem.SI)


def feet(**changed):
    lengths = {name: value * FOOT_M for name, value in changed.items()}
    return fit_sentences(replace(USUAL, **lengths), UnitSystem.US)


def test_a_short_set_says_what_would_fit():
    assert feet(line_set_m=18.0, line_run_m=24.0) == (
        "18 ft line set, 24 ft needed: bring the units 6 ft closer, or have a contractor make up the line; a coil of "
        "extra line is not a fix you may make.",
    )


@pytest.mark.parametrize(("extension_m", "reaches"), [(5.9, False), (6.0, True), (12.0, True)])
def test_an_extension_is_offered_exactly_where_it_reaches(extension_m, reaches):
    told = feet(line_set_m=18.0, line_run_m=24.0, extension_m=extension_m)
    assert ("which this maker allows" in told[0]) == reaches


@pytest.mark.parametrize(("limit_m", "is_told"), [(4.9, True), (5.0, False), (5.1, False), (float("nan"), False)])
def test_a_lift_beyond_the_limit_says_by_how_much(limit_m, is_told):
    told = feet(line_rise_m=5.0, rise_limit_m=limit_m, line_set_m=19.0, line_run_m=19.0)
    assert bool(told) == is_told
    if is_told:
        assert told[0] == "5 ft between the heights of the units, 4.9 ft allowed: bring them 0.1 ft closer in height."


def test_a_run_shorter_than_wall_and_lift_is_questioned():
    told = feet(line_run_m=10.0, line_set_m=10.0, line_rise_m=12.0, wall_thickness_m=1.0)
    assert told == (
        "Wall and height alone take 13 ft of line, more than the 10 ft said to be needed: measure the way of the lines "
        "again.",
    )


def test_line_left_over_is_laid_in_a_loop():
    assert feet(line_set_m=25.0, line_run_m=19.0)[0].startswith("Lay the 6 ft left over in a wide, flat loop")
    assert feet(line_set_m=19.5, line_run_m=19.0) == ()


def test_level_units_are_told_as_level():
    assert "Both units stand at about one height." in description(replace(USUAL, line_rise_m=0.0), UnitSystem.US)


def test_the_table_says_what_was_not_measured():
    rows = dict(zip(*table(USUAL, UnitSystem.US).values(), strict=True))
    assert rows["Free above the indoor unit"] == "not measured"
    assert rows["Bites of the bit"] == "3"
    assert (
        dict(zip(*table(replace(USUAL, bite_m=float("nan")), UnitSystem.US).values(), strict=True))["Bites of the bit"]
        == "no core bit"
    )


def test_lengths_told_as_a_sum_come_out():
    usual = replace(USUAL, line_set_m=6.1, line_run_m=4.6)
    assert reach_words(usual, UnitSystem.US) == "20 ft in the box, 15.1 ft needed: 4.9 ft to spare"
