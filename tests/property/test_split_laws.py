"""The best split against every split, and what margins promise."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.installation.split import margins
from econ.installation.split_programme import best_split
from tests.unit.installation.splits import SELF, cost_usd, least_usd, random_problem

SEEDS = st.integers(0, 2**31)
HOUR_VALUES = st.sampled_from([0.0, 12.5, 25.0, 60.0, 150.0])


@given(SEEDS, st.integers(1, 8), HOUR_VALUES)
@settings(max_examples=60, deadline=None)
def test_no_split_of_8_tasks_and_3_parties_is_cheaper_than_the_best(seed, n_task, hour_value):
    site = random_problem(np.random.default_rng(seed), n_task)
    party = best_split(site, hour_value)
    assert site.is_allowed[np.arange(n_task), party].all()
    assert np.isclose(cost_usd(site, party, hour_value), least_usd(site, hour_value), rtol=0.0, atol=0.005)


@given(SEEDS, st.integers(1, 8), HOUR_VALUES)
@settings(max_examples=40, deadline=None)
def test_below_its_flip_a_task_is_cheaper_oneself_and_above_it_hired(seed, n_task, hour_value):
    site = random_problem(np.random.default_rng(seed), n_task)
    party = best_split(site, hour_value)
    found = margins(site, party, hour_value)
    for task in np.flatnonzero(np.isfinite(found.flip_usd_per_h)):
        own, hired = party.copy(), party.copy()
        own[task], hired[task] = SELF, found.hired_by[task]
        flip = found.flip_usd_per_h[task]
        assert cost_usd(site, own, flip - 1.0) < cost_usd(site, hired, flip - 1.0)
        assert cost_usd(site, own, flip + 1.0) > cost_usd(site, hired, flip + 1.0)


@given(SEEDS, st.integers(1, 8), HOUR_VALUES)
@settings(max_examples=40, deadline=None)
def test_no_single_move_improves_the_best_split(seed, n_task, hour_value):
    site = random_problem(np.random.default_rng(seed), n_task)
    found = margins(site, best_split(site, hour_value), hour_value)
    assert np.nanmin(found.extra_cash_usd + hour_value * found.extra_own_h) >= -0.005


@given(SEEDS, st.integers(2, 8))
@settings(max_examples=30, deadline=None)
def test_own_hours_of_the_best_split_never_rise_with_their_value(seed, n_task):
    site = random_problem(np.random.default_rng(seed), n_task)
    own = [site.own_h[np.arange(n_task), best_split(site, value)].sum() for value in (0.0, 20.0, 60.0, 200.0)]
    assert np.all(np.diff(own) <= 1e-6)
