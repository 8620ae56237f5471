"""How long the choice takes for very many rooms, and what gap it proves."""

import time
from dataclasses import replace

import numpy as np
import pytest

from econ.portfolio.choice import PROMISED_FRAC, choice
from econ.portfolio.picks import is_within
from tests.unit.portfolio.drawn import drawn

HOUSE = 60
"""Rooms that share a set-up."""


def many(n_room, n_year, *, has_panels):
    """Return rooms and limits, with larger houses than the small ones drawn."""
    options, limits = drawn(1, n_room, n_year)
    group = np.arange(n_room) // HOUSE
    options = replace(options, group=group, setup_usd=np.full(group[-1] + 1, 400.0))
    if not has_panels:
        limits = replace(limits, panel_a=np.full_like(limits.panel_a, np.inf))
    return options, limits


def told(n_room, n_year, *, has_panels):
    """Return the processor time and gap of a choice, printed."""
    options, limits = many(n_room, n_year, has_panels=has_panels)
    began = time.process_time()
    found = choice(options, limits)
    took = time.process_time() - began
    words = "with" if has_panels else "without"
    print(f"{n_room:,} rooms x 4 ways x {n_year} years {words} panels: {took:.1f} s, gap {100 * found.gap_frac:.4f} %")
    assert is_within(options, limits, found.picks)
    return took, found.gap_frac


def test_ten_thousand_rooms_are_chosen_in_seconds_within_the_gap_promised():
    took, gap = told(10_000, 1, has_panels=False)
    assert took < 10.0
    assert gap <= PROMISED_FRAC


@pytest.mark.long
@pytest.mark.parametrize(("n_room", "n_year", "has_panels"), [(10_000, 3, True), (100_000, 3, False)])
def test_many_rooms_over_three_years_stay_within_the_gap_promised(n_room, n_year, has_panels):
    took, gap = told(n_room, n_year, has_panels=has_panels)
    assert took < 120.0
    assert gap <= PROMISED_FRAC
