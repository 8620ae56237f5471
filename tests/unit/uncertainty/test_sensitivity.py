"""Swings, maps and break-even values on a cheap model with known answers."""

import numpy as np
import pytest

from econ.evaluate.sheet import Entry, sheet_of
from econ.kernel.errors import UnknownChoiceError
from econ.kernel.spread import Spread
from econ.uncertainty.break_even import break_even
from econ.uncertainty.sensitivity import swings, two_way

SHEET = sheet_of(
    {
        "price": Entry(Spread(1.0, 2.0, 4.0, "made up"), "USD"),
        "years": Entry(Spread(5.0, 10.0, 12.0, "made up"), "year"),
        "extra": Entry(Spread(30.0, 30.0, 30.0, "made up"), "USD"),
    }
)


def saved(values):
    """Return what is saved less what is paid: price times years less the extra."""
    return values["price"] * values["years"] - values["extra"]


def test_each_input_swings_alone_and_the_widest_comes_first():
    found = swings(SHEET, lambda values: np.broadcast_to(saved(values), (5,)))
    assert found.path == ("price", "years")
    assert found.likely_usd == -10.0
    assert found.at_low_usd.tolist() == [-20.0, -20.0]
    assert found.at_high_usd.tolist() == [10.0, -6.0]
    assert found.swing_usd.tolist() == [30.0, 14.0]


def test_a_map_holds_every_pair():
    found = two_way(SHEET, saved, ("price", np.array([1.0, 3.0])), ("years", np.array([10.0, 20.0, 30.0])))
    assert found.difference_usd.tolist() == [[-20.0, 0.0], [-10.0, 30.0], [0.0, 60.0]]


def test_break_even_is_a_root():
    found = break_even(SHEET, saved, {"price": (0.0, 10.0), "years": (0.0, 40.0)})
    assert found.value == pytest.approx([3.0, 15.0], rel=1e-4)
    assert found.exists.all()
    assert found.rises.all()


def test_an_input_that_never_turns_the_order_has_no_break_even():
    found = break_even(SHEET, saved, {"price": (0.0, 2.5)})
    assert not found.exists[0]
    assert np.isnan(found.value[0])


def test_of_several_roots_the_one_nearest_to_the_likely_value_is_taken():
    found = break_even(SHEET, lambda values: (values["price"] - 2.6) * (values["price"] - 9.0), {"price": (0.0, 10.0)})
    assert found.value == pytest.approx([2.6], rel=1e-4)
    assert not found.rises[0]


@pytest.mark.parametrize(
    "call",
    [
        lambda: break_even(SHEET, saved, {"moon": (0.0, 1.0)}),
        lambda: two_way(SHEET, saved, ("moon", np.ones(2)), ("years", np.ones(2))),
    ],
)
def test_an_input_that_is_not_there_is_refused(call):
    with pytest.raises(UnknownChoiceError, match="'moon' is not known"):
        call()
