"""The band of the air split: well-formed, on the sheet, its words apart, the reading where it belongs."""

import re
from xml.etree import ElementTree

import pytest

from econ.report.look import Look
from econ.report.numbers import UnitSystem
from econ.report.sketch import split
from econ.report.sketch.element import is_apart, words_box
from econ.report.style import Theme
from tests.demo import TODAY

SVG = "{http://www.w3.org/2000/svg}"
LOOKS = [Look(TODAY, TODAY.year, Theme.LIGHT, units) for units in UnitSystem]
CASES = [(8.0, 17.0, 11.7), (8.0, 17.0, 0.5), (8.0, 17.0, 59.0), (1.0, 1.5, 1.2), (0.0, 60.0, 30.0), (11.0, 25.0, -3.0)]


@pytest.mark.parametrize("look", LOOKS, ids=lambda look: look.units.value)
@pytest.mark.parametrize("ends", CASES)
def test_words_stay_on_the_sheet_and_apart(ends, look):
    tree = ElementTree.fromstring(split.sketch(split.SplitDrawing(*ends), "What it says.", look))
    texts = [(each.text, (float(each.get("x")), float(each.get("y")))) for each in tree.iter(f"{SVG}text")]
    boxes = [words_box(text, at) for text, at in texts]
    assert all(box[0] >= 0.0 and box[2] <= split.WIDTH and box[3] <= split.HEIGHT for box in boxes)
    assert all(is_apart(one, two) for at, one in enumerate(boxes) for two in boxes[:at])


def test_the_reading_lies_in_the_band_where_it_does():
    for reading, is_in in ((11.7, True), (20.0, False)):
        text = split.sketch(split.SplitDrawing(8.0, 17.0, reading), "", LOOKS[0])
        left, width = (float(re.search(rf'<rect [^>]*\b{name}="([\d.]+)"', text)[1]) for name in ("x", "width"))
        mark = float(re.search(r'<polyline points="([\d.]+),', text)[1]) + 6.0
        assert (left <= mark <= left + width) is is_in
