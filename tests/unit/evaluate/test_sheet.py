"""The sheet: numbers by path, with range, source and whose they are."""

import numpy as np
import pytest

from econ.evaluate.sheet import Entry, moved, point, sheet_of, with_columns
from econ.kernel.errors import UnknownChoiceError
from econ.kernel.spread import Spread


@pytest.fixture
def sheet():
    return sheet_of(
        {
            "kit.price_usd": Entry(Spread(1000.0, 1200.0, 1500.0, "assumption"), "USD"),
            "kit.life_yr": Entry(Spread(15.0, 15.0, 15.0, "what you said"), "year", "yours"),
        }
    )


def test_point_holds_the_likely_values(sheet):
    assert {path: float(value) for path, value in point(sheet).items()} == {
        "kit.price_usd": 1200.0,
        "kit.life_yr": 15.0,
    }


def test_only_inputs_with_doubt_become_columns(sheet):
    values = with_columns(sheet, np.array([[1000.0, 1500.0], [0.0, 0.0]]))
    assert values["kit.price_usd"].tolist() == [1000.0, 1500.0]
    assert np.shape(values["kit.life_yr"]) == ()
    assert float(values["kit.life_yr"]) == 15.0


def test_moved_sets_one_input_to_a_grid(sheet):
    values = moved(sheet, "kit.life_yr", np.array([10.0, 20.0]))
    assert values["kit.life_yr"].tolist() == [10.0, 20.0]
    assert float(values["kit.price_usd"]) == 1200.0


def test_moving_an_unknown_path_is_refused(sheet):
    with pytest.raises(UnknownChoiceError, match=r"input 'kit.lives_yr' is not known"):
        moved(sheet, "kit.lives_yr", np.array([1.0]))


def test_usual_values_are_told_from_the_users(sheet):
    assert sheet.is_default.tolist() == [True, False]


def test_a_line_is_read_back_whole(sheet):
    entry = sheet.entry("kit.life_yr")
    assert (entry.unit, entry.state, entry.likely, entry.spread.source) == ("year", "yours", 15.0, "what you said")
