"""Drawings for print: shapes that add up, kept apart in grey, and sketches read without a loss."""

import numpy as np
import pytest

from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF
from econ.kernel.errors import UnknownChoiceError
from econ.report.document.drawing.axis import PATTERNS, filled
from econ.report.document.drawing.bridge import bridge_statement, bridge_steps
from econ.report.document.drawing.from_svg import shapes_of
from econ.report.document.drawing.shape import Disc, Stroke, Word, dotted, level, placed, slanted
from econ.report.numbers import UnitSystem
from econ.report.sketch import circuit
from econ.report.style import MARKS
from tests.demo import NAMES, demo_answer

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10">{}</svg>'


@pytest.mark.parametrize("name", NAMES)
def test_the_bridge_adds_up_from_the_kit_to_hiring(name):
    result = demo_answer(name).result
    steps = bridge_steps(result)
    (kit, yourself, hired), between = (
        [step.usd for step in steps if step.is_pier],
        [step.usd for step in steps if not step.is_pier],
    )
    assert kit + sum(between[:-1]) == pytest.approx(yourself)
    assert yourself + between[-1] == pytest.approx(hired)
    assert yourself == pytest.approx(float(result.alternatives[SELF].first_cost_usd[0]))
    assert hired == pytest.approx(float(result.alternatives[HIRED].first_cost_usd[0]))
    assert "$" in bridge_statement(result)


def test_bars_of_the_four_ways_differ_without_colour():
    kinds = {
        tuple(sorted({type(shape).__name__ for shape in filled(name, (0.0, 0.0), (40.0, 12.0))}))
        for name in ALTERNATIVES
    }
    directions = {MARKS[name].pattern for name in ALTERNATIVES}
    assert len(directions) == len(ALTERNATIVES)
    assert directions - {""} == set(PATTERNS)
    assert len(kinds) > 1


@pytest.mark.parametrize("pattern", [slanted, level, dotted])
def test_a_filling_stays_inside_its_rectangle(pattern):
    (left, top), (width, height) = (5.0, 7.0), (33.0, 11.0)
    points = []
    for shape in pattern((left, top), (width, height), "#000000"):
        points += list(shape.points) if isinstance(shape, Stroke) else [shape.middle]
    assert points
    xs, ys = np.array(points).T
    assert xs.min() >= left
    assert xs.max() <= left + width + 1e-9
    assert ys.min() >= top
    assert ys.max() <= top + height + 1e-9


def test_a_sketch_keeps_all_its_words_lines_and_boxes():
    drawn = circuit.circuit_drawing(demo_answer(NAMES[1]).sheet)
    svg = circuit.ladder(drawn, UnitSystem.US)
    shapes = shapes_of(svg).shapes
    assert sum(isinstance(shape, Word) for shape in shapes) == svg.count("<text")
    assert sum(isinstance(shape, Stroke) for shape in shapes) == svg.count("<rect") + svg.count("<line")
    assert any(shape.dash for shape in shapes if isinstance(shape, Stroke))


def test_a_piece_that_cannot_be_drawn_is_refused_not_left_out():
    with pytest.raises(UnknownChoiceError, match="piece of a sketch 'ellipse'"):
        shapes_of(SVG.format('<ellipse cx="1" cy="1" rx="1" ry="2"/>'))


def test_groups_polygons_and_styles_are_read():
    drawn = shapes_of(
        SVG.format(
            '<g><polygon points="0,0 1,0 1,1" fill="#123456"/><polyline points="1,1" stroke="#000000"/>'
            '<text x="1" y="2" style="fill:#abcdef">a<tspan>b</tspan></text>'
            '<circle cx="3" cy="3" r="1" fill="none"/></g>'
        )
    )
    polygon, word, disc = drawn.shapes
    assert polygon.is_closed
    assert polygon.filling == "#123456"
    assert (word.text, word.colour) == ("ab", "#abcdef")
    assert disc.filling == ""


def test_shapes_are_placed_and_made_smaller():
    moved = placed((Disc((2.0, 4.0), 2.0), Word("a", (2.0, 4.0), 8.0)), (10.0, 20.0), 0.5)
    assert (moved[0].middle, moved[0].radius) == ((11.0, 22.0), 1.0)
    assert (moved[1].at, moved[1].size) == ((11.0, 22.0), 4.0)
