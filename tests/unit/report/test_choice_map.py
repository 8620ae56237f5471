"""The map of two inputs: names stand on their own area, none on where one is."""

from types import SimpleNamespace

import numpy as np
import pytest

from econ.kernel.alternative import ALTERNATIVES, SELF, WINDOW
from econ.report.pictures import choice_map
from econ.report.style import NAMES

PATHS = ("kit.price_usd", "kit.life_yr")


def found(is_window):
    across, up = np.linspace(0.0, 4000.0, 21), np.linspace(4.0, 60.0, 21)
    cheapest = np.where(is_window(*np.meshgrid(across, up)), WINDOW, SELF)
    return SimpleNamespace(map_paths=PATHS, map=SimpleNamespace(across=across, up=up, difference_usd=cheapest))


@pytest.mark.parametrize(
    "is_window", [lambda x, y: (x > 3200.0) | (y < 9.0), lambda x, _: x < 400.0, lambda _, y: y > 30.0]
)
def test_each_name_stands_on_its_own_area_and_clear_of_where_one_is(is_window, look):
    now = (1150.0, 15.0)
    told = found(is_window)
    notes = {note.text: note for note in choice_map.figure(told, now, look).layout.annotations}
    for place in (WINDOW, SELF):
        note = notes[f"<b>{NAMES[ALTERNATIVES[place]]}</b>"]
        at = np.argmin(np.abs(told.map.up - note.y)), np.argmin(np.abs(told.map.across - note.x))
        assert told.map.difference_usd[at] == place
        assert abs(note.y - now[1]) > 0.15 * 56.0
    first, second = (notes[f"<b>{NAMES[ALTERNATIVES[place]]}</b>"].y for place in (WINDOW, SELF))
    assert abs(first - second) > 0.15 * 56.0
    assert (notes["you are here"].x, notes["you are here"].y) == now


def test_words_near_a_side_turn_inward(look):
    drawn = choice_map.figure(found(lambda x, _: x < 400.0), (3900.0, 15.0), look)
    notes = {note.text: note for note in drawn.layout.annotations}
    assert notes["you are here"].xanchor == "right"
    assert notes[f"<b>{NAMES[ALTERNATIVES[WINDOW]]}</b>"].xanchor == "left"
