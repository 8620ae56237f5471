"""Whether a unit goes in, in words."""

from dataclasses import replace

import pytest

from econ.kernel.alternative import SELF, WINDOW, Alternative, Standing
from econ.report.words.fit import fit_lines
from econ.report.words.standing import reason_words, standing_words
from tests import builders


def lines(**changed):
    made = builders.result()
    ways = list(made.alternatives)
    ways[WINDOW] = replace(ways[WINDOW], **changed)
    return fit_lines(replace(made, alternatives=tuple(ways)))


@pytest.mark.parametrize(
    ("standing", "words"),
    [
        (Standing.OPEN, "It can go in."),
        (Standing.WITH_HELP, "It can go in, with a trade for part of it."),
        (Standing.UNKNOWN, "Whether it can go in is not known yet."),
        (Standing.NOT_ALLOWED, "It cannot go in."),
    ],
)
def test_the_claim_comes_first_then_each_reason_then_the_hours_of_every_year(standing, words):
    found = lines(standing=standing, reasons=("One.", "Two."))
    assert found[:3] == (words, "One.", "Two.")
    assert found[3] == "Every year it takes you about 2.5 hours to store, fit, seal or cover it."


def test_no_hours_are_not_spoken_of():
    none = builders.result().alternatives[WINDOW].upkeep_own_h_per_yr * 0.0
    assert lines(standing=Standing.OPEN, reasons=(), upkeep_own_h_per_yr=none) == ("It can go in.",)


@pytest.mark.parametrize(
    ("standing", "window", "kit"),
    [
        (Standing.NOT_ALLOWED, "Cannot go in here", "Not allowed here"),
        (Standing.UNKNOWN, "Not known yet whether it can go in", "Not known yet whether allowed"),
        (Standing.OPEN, "Open to you", "Open to you"),
    ],
)
def test_a_unit_without_room_is_not_called_forbidden(standing, window, kit):
    ways = builders.result().alternatives
    assert standing_words(replace(ways[WINDOW], standing=standing)) == window
    assert standing_words(replace(ways[SELF], standing=standing)) == kit


def test_the_test_that_window_units_fail_is_told_in_their_own_words():
    assert reason_words(Alternative.WINDOW_UNITS, "not_allowed") == "it cannot go in here"
    assert reason_words(Alternative.SELF_INSTALL, "not_allowed") == "it is not allowed here"
    assert reason_words(Alternative.WINDOW_UNITS, "late") == reason_words(Alternative.SELF_INSTALL, "late")
