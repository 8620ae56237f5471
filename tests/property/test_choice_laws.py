"""The choice is the best there is, keeps all limits, never loses to the simple one; more money never gives less."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.portfolio.choice import choice
from econ.portfolio.greedy import greedy
from econ.portfolio.picks import is_within, worth_usd
from econ.portfolio.programme import GAP_FRAC
from tests.unit.portfolio.drawn import best_by_search, drawn

SEEDS = st.integers(0, 2**32 - 1)
TIGHT = st.sampled_from([0.1, 0.4, 1.0])
MOST_ROOMS = {1: 8, 2: 6, 3: 5}
"""Rooms by years, so that all choices can be tried."""


def rank(options, limits, picks):
    return int((options.must & picks.is_done).sum()), worth_usd(options, picks, limits.n_year)


@given(SEEDS, st.sampled_from([1, 2, 3]), TIGHT, st.data())
@settings(max_examples=40, deadline=None)
def test_the_choice_is_the_best_of_all_choices(seed, n_year, tight_frac, data):
    options, limits = drawn(seed, data.draw(st.integers(1, MOST_ROOMS[n_year])), n_year, tight_frac)
    found = choice(options, limits)
    musts, worth = best_by_search(options, limits)
    assert is_within(options, limits, found.picks)
    assert int((options.must & found.picks.is_done).sum()) == musts
    assert found.worth_usd == pytest.approx(worth, rel=GAP_FRAC, abs=1e-6)
    assert found.bound_usd >= worth - 1e-6


@pytest.mark.parametrize("seed", range(2))
def test_ten_rooms_and_four_ways_are_the_best_of_a_million_choices(seed):
    options, limits = drawn(seed, 10, 1)
    assert choice(options, limits).worth_usd == pytest.approx(best_by_search(options, limits)[1], rel=GAP_FRAC)


@given(SEEDS, st.integers(1, 40), st.sampled_from([1, 2]), TIGHT)
@settings(max_examples=30, deadline=None)
def test_the_choice_never_loses_to_the_simple_one(seed, n_room, n_year, tight_frac):
    options, limits = drawn(seed, n_room, n_year, tight_frac)
    simple = greedy(options, limits)
    assert is_within(options, limits, simple)
    assert rank(options, limits, choice(options, limits).picks) >= rank(options, limits, simple)


@given(SEEDS, st.integers(1, 24), TIGHT)
@settings(max_examples=20, deadline=None)
def test_more_money_never_gives_less(seed, n_room, tight_frac):
    options, limits = drawn(seed, n_room, 1, tight_frac)
    last = None
    for factor in (0.0, 0.5, 1.0, 1.1, 2.0):
        more = replace(limits, budget_usd=limits.budget_usd * factor)
        found = choice(options, more, [last.picks] if last else [])
        if last:
            assert rank(options, more, found.picks) >= rank(options, more, last.picks)
        last = found


def test_a_choice_proves_what_it_may_miss():
    options, limits = drawn(5, 60, 1)
    found = choice(options, limits)
    assert 0.0 <= found.gap_frac <= GAP_FRAC
    assert found.bound_usd >= found.worth_usd


def test_without_any_limit_every_room_takes_its_best_way():
    options, limits = drawn(3, 30, 1)
    none = replace(
        limits, budget_usd=np.array([np.inf]), own_hours_h=np.array([np.inf]), electrician_d=np.array([np.inf]),
        panel_a=np.full_like(limits.panel_a, np.inf),
    )  # fmt: skip
    options = replace(
        options, setup_usd=np.zeros_like(options.setup_usd), whole_flat=np.zeros_like(options.whole_flat),
        must=np.zeros_like(options.must), first_year=np.zeros_like(options.first_year),
    )  # fmt: skip
    may = options.is_open & ~options.must_not[:, None]
    best = np.where(may, options.worth_usd(), 0.0).max(axis=1).sum()
    assert choice(options, none).worth_usd == pytest.approx(best)
