"""Laws of draws, chances and the value of information."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.evaluate.sheet import Entry, sheet_of
from econ.kernel.spread import Spread
from econ.uncertainty.break_even import break_even
from econ.uncertainty.chance import chance_of_lowest
from econ.uncertainty.draws import drawn
from econ.uncertainty.information import input_information_usd, perfect_information_usd
from econ.uncertainty.pert import pert_inverse
from econ.uncertainty.spread import expected_regret_usd

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


@given(seed, st.integers(0, 3))
def test_knowing_is_never_worth_less_than_nothing_and_nothing_where_one_way_always_wins(seed, best):
    rng = np.random.default_rng(seed)
    cost, value = rng.normal(1000.0, 300.0, (4, 256)), rng.random((3, 256))
    assert float(perfect_information_usd(cost)) >= 0.0
    assert (input_information_usd(cost, value) >= 0.0).all()
    cost[best] = cost.min(axis=0) - rng.uniform(0.0, 50.0, 256)
    assert float(perfect_information_usd(cost)) == 0.0
    np.testing.assert_allclose(input_information_usd(cost, value), 0.0, atol=1e-9)


@given(seed, st.permutations(range(4)))
def test_order_of_ways_changes_no_chance_and_no_regret(seed, order):
    cost = np.random.default_rng(seed).normal(1000.0, 300.0, (4, 256))
    takes_part, moved = np.array([True, True, False, True]), list(order)
    before, after = chance_of_lowest(cost, takes_part), chance_of_lowest(cost[moved], takes_part[moved])
    np.testing.assert_array_equal(before.share_frac[moved], after.share_frac)
    np.testing.assert_array_equal(
        expected_regret_usd(cost, takes_part)[moved], expected_regret_usd(cost[moved], takes_part[moved])
    )


@given(st.floats(5.0, 95.0), st.floats(-3.0, 3.0).filter(lambda slope: abs(slope) > 0.1), st.floats(-0.5, 0.5))
def test_break_even_found_is_a_root(at, slope, cubic):
    sheet = sheet_of({"price": Entry(Spread(0.0, 50.0, 100.0, "made up"), "USD")})

    def lead(values):
        apart = np.asarray(values["price"], dtype=np.float64) - at
        return np.atleast_1d(slope * apart + np.sign(slope) * abs(cubic) * 1e-3 * apart**3)

    found = break_even(sheet, lead, {"price": (0.0, 100.0)})
    assert found.exists.all()
    assert float(found.value[0]) == pytest.approx(at, abs=100.0 / 16.0 / 16.0**4)
    assert bool(found.rises[0]) is (slope > 0.0)
