"""Laws of draws, chances and the value of information."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.uncertainty.chance import chance_of_lowest
from econ.uncertainty.draws import drawn
from econ.uncertainty.information import input_information_usd, perfect_information_usd
from econ.uncertainty.pert import pert_inverse

side = st.floats(-1e6, 1e6)
three = st.tuples(side, side, side).map(sorted)
seed = st.integers(0, 2**32 - 1)


@given(st.lists(side, min_size=1, max_size=12), seed)
def test_draws_without_spread_equal_the_point(values, seed):
    point = np.array(values)
    np.testing.assert_array_equal(drawn(point, point, point, 16, seed), np.repeat(point[:, None], 16, axis=1))


@given(three)
def test_inverse_rises_with_probability_and_stays_within_the_range(three):
    low, likely, high = (np.array([value]) for value in three)
    values = pert_inverse(np.linspace(0.0, 1.0, 257)[None], low, likely, high)[0]
    assert (np.diff(values) >= 0.0).all()
    assert values[0] >= three[0]
    assert values[-1] <= three[2]


@given(three, st.floats(-1e3, 1e3), st.floats(0.1, 10.0))
def test_inverse_moves_and_stretches_with_its_three_values(three, shift, scale):
    probability = np.linspace(0.01, 0.99, 33)[None]
    plain = pert_inverse(probability, *(np.array([value]) for value in three))
    moved = pert_inverse(probability, *(np.array([shift + scale * value]) for value in three))
    span = 1.0 + abs(shift) + scale * max(abs(value) for value in three)
    assert moved == pytest.approx(shift + scale * plain, abs=2e-6 * span)


@given(seed)
def test_chances_add_up_to_one(seed):
    cost = np.random.default_rng(seed).integers(0, 5, (4, 64)).astype(float)
    found = chance_of_lowest(cost, np.array([True, True, False, True]))
    assert np.nansum(found.share_frac) == pytest.approx(1.0)


@given(seed, st.floats(1.0, 1e4))
def test_raising_every_cost_alike_changes_no_chance(seed, more):
    cost = np.random.default_rng(seed).integers(0, 1000, (4, 64)).astype(float)
    everyone = np.ones(4, dtype=bool)
    raised = chance_of_lowest(cost + round(more), everyone)
    np.testing.assert_array_equal(raised.share_frac, chance_of_lowest(cost, everyone).share_frac)


@given(seed)
def test_knowing_one_input_is_never_worth_more_than_knowing_all(seed):
    rng = np.random.default_rng(seed)
    cost, value = rng.normal(0.0, 100.0, (3, 256)), rng.random((5, 256))
    worth = input_information_usd(cost, value)
    assert (worth >= 0.0).all()
    assert (worth <= float(perfect_information_usd(cost)) + 1e-9).all()
