"""Laws of present value, measures and replacement."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.lifecycle.discount import capital_recovery_factor, escalated_present_value_factor, nominal_rate, present_value
from econ.lifecycle.measures import component_present_value, measures
from econ.lifecycle.nominal import nominal_streams
from econ.lifecycle.payback import discounted_payback
from econ.lifecycle.rate_of_return import internal_rate
from econ.lifecycle.replacement import Component, disposal_stream, replacement_stream, residual_value
from econ.lifecycle.streams import Streams, escalated_stream

money = st.floats(-1e4, 1e4).map(lambda usd: round(usd, 2))
gain = st.floats(1.0, 1e4).map(lambda usd: round(usd, 2))
rate = st.floats(-0.02, 0.3).map(lambda share: round(share, 5))
flow = st.lists(money, min_size=11, max_size=11).map(np.array)
gains = st.lists(gain, min_size=10, max_size=10)


@given(flow, flow, money, rate)
def test_present_value_is_linear_in_the_flow(one, other, times, rate):
    joined = present_value(one + times * other, rate)
    apart = present_value(one, rate) + times * present_value(other, rate)
    assert float(joined) == pytest.approx(float(apart), rel=1e-9, abs=1e-4)


@given(money, gains, rate, st.floats(0.001, 0.2))
def test_present_value_falls_in_the_rate_when_later_flows_are_positive(first, later, rate, more):
    both = present_value(np.array([[first, *later]] * 2), np.array([rate, rate + more]))
    assert both[1] < both[0]


@given(rate, st.floats(-0.05, 0.1), st.integers(1, 40))
def test_escalated_factor_equals_the_discounted_escalated_stream(rate, escalation, years):
    stream = escalated_stream(np.ones(years), np.array(escalation))
    factor = float(escalated_present_value_factor(rate, escalation, years))
    assert factor == pytest.approx(float(present_value(stream, rate)), rel=1e-10)


def two_ways(first: float, extra: float, base: list[float], other: list[float]) -> Streams:
    zero = np.zeros((2, 1, 11))
    energy = zero.copy()
    energy[:, 0, 1:] = [base, other]
    return Streams(np.array([[first], [first + extra]]), energy, zero, zero, zero)


@given(gain, gain, gains, gains, rate)
def test_ratio_is_above_one_exactly_when_net_savings_are_above_nothing(first, extra, base, other, rate):
    found = measures(two_ways(first, extra, base, other), np.array([rate]), 0)
    saved = float(found.net_savings_usd[1, 0])
    assert found.sir_exists[1, 0]
    if abs(saved) > 1e-6:
        assert (float(found.sir[1, 0]) > 1.0) == (saved > 0.0)


@given(st.integers(0, 2**31), rate)
def test_ratio_is_above_one_exactly_when_net_savings_are_whatever_is_paid_and_when(seed, rate):
    """Repairs, upkeep, replacements, disposal, residual, borrowed money and rent: wherever more is invested."""
    rng = np.random.default_rng(seed)
    yearly = [rng.uniform(0.0, top, (4, 64, 9)) for top in rng.uniform(50.0, 1500.0, 8)]
    found = measures(Streams(rng.uniform(0.0, 5000.0, (4, 64)), *yearly), np.array(rate), 0)
    told = found.sir_exists & (np.abs(found.net_savings_usd) > 1e-6)
    assert told.any()
    assert np.array_equal(found.sir[told] > 1.0, found.net_savings_usd[told] > 0.0)
    assert np.array_equal(np.isnan(found.sir), ~found.sir_exists)


@given(gain, gain, gains, gains, rate)
def test_adjusted_rate_is_above_the_discount_rate_exactly_when_the_ratio_is_above_one(first, extra, base, other, rate):
    found = measures(two_ways(first, extra, base, other), np.array([rate]), 0)
    if found.airr_exists[1, 0] and abs(float(found.sir[1, 0]) - 1.0) > 1e-9:
        assert (float(found.airr[1, 0]) > rate) == (float(found.sir[1, 0]) > 1.0)


@given(gain, gain, gains, gains, rate)
def test_payback_that_is_not_undone_exists_exactly_when_net_savings_are_not_negative(first, extra, base, other, rate):
    found = measures(two_ways(first, extra, base, other), np.array([rate]), 0)
    saved = float(found.net_savings_usd[1, 0])
    if abs(saved) > 1e-6 and not found.discounted_payback_is_undone[1, 0]:
        assert bool(found.discounted_payback_exists[1, 0]) == (saved > 0.0)


@given(gain, gains)
def test_internal_rate_makes_present_value_nothing(extra, later):
    flow = np.array([-extra, *later])
    found = internal_rate(flow)
    if found.exists:
        assert float(present_value(flow, found.rate_frac)) == pytest.approx(0.0, abs=1e-8 * np.abs(flow).max())


@given(gain, st.lists(money, min_size=10, max_size=10))
def test_internal_rate_of_any_flow_makes_present_value_nothing_or_does_not_exist(extra, later):
    flow = np.array([-extra, *later])
    found = internal_rate(flow)
    assert not (found.exists and found.is_multiple)
    if found.exists:
        weight = np.abs(flow) @ (1.0 + float(found.rate_frac)) ** -np.arange(11.0)
        assert float(present_value(flow, found.rate_frac)) == pytest.approx(0.0, abs=1e-9 * weight)


@given(gain, gains, st.floats(0.0, 0.2), st.floats(0.001, 0.2))
def test_discounted_payback_never_comes_sooner_at_a_higher_rate(extra, later, low, more):
    flow = np.array([-extra, *later])
    sooner, later_back = (discounted_payback(flow, np.array(d)) for d in (low, low + more))
    if later_back.exists:
        assert sooner.exists
        assert float(later_back.after_yr) >= float(sooner.after_yr) - 1e-9


@given(st.floats(0.3, 40.0), st.floats(0.0, 2.0), st.integers(3, 30))
def test_undiscounted_cost_less_residual_is_price_times_lives_used(life, start, years):
    """Straight-line residual: purchases less what is left is the price of the life consumed, whatever the dates."""
    unit = Component(*(np.array([value]) for value in (100.0, 100.0, life, life, start)))
    paid = 100.0 + float(replacement_stream(unit, years).sum()) - float(residual_value(unit, years)[0])
    assert paid == pytest.approx(100.0 * (years - start) / life, rel=1e-9)


@given(st.floats(0.3, 40.0), st.integers(3, 30), rate)
def test_longer_life_never_raises_the_discounted_cost_of_replacing(life, years, rate):
    lives = np.array([life, 1.1 * life])
    units = Component(np.full(2, 100.0), np.full(2, 100.0), lives, lives, np.zeros(2))
    cost = present_value(replacement_stream(units, years), abs(rate))
    assert cost[1] <= cost[0] + 1e-9


@given(st.integers(0, 10_000), rate, st.floats(-0.02, 0.15))
def test_nominal_dollars_give_the_same_answer(seed, rate, inflation):
    """Every stream in dollars of its year, discounted at the nominal rate, is worth what it is in constant dollars."""
    rng = np.random.default_rng(seed)
    flows = [rng.uniform(0.0, 1000.0, (3, 2, 9)) for _ in range(8)]
    constant = Streams(rng.uniform(0.0, 5000.0, (3, 2)), *flows)
    real = measures(constant, np.array(rate), 0)
    nominal = measures(
        nominal_streams(constant, np.array(inflation)), nominal_rate(np.array(rate), np.array(inflation)), 0
    )
    np.testing.assert_allclose(nominal.lcc_usd, real.lcc_usd, rtol=1e-9)
    np.testing.assert_allclose(nominal.sir, real.sir, rtol=1e-6, atol=1e-9)
    np.testing.assert_array_equal(nominal.discounted_payback_exists, real.discounted_payback_exists)


@given(gain, st.integers(1, 8), st.integers(1, 6), st.floats(-0.02, 0.3).map(lambda share: round(share, 5)))
def test_chain_of_replacements_equals_the_annualised_cost_of_one_piece(price, life, pieces, rate):
    """Over a common multiple of lives a chain costs each year what one piece costs each year of its life."""
    years = life * pieces
    part = Component(*(np.array(number) for number in (price, price, float(life), float(life), 0.0)))
    flow = replacement_stream(part, years)
    flow[0] += price
    assert float(residual_value(part, years)) == 0.0
    chain = float(present_value(flow, rate)) * float(capital_recovery_factor(rate, years))
    assert chain == pytest.approx(price * float(capital_recovery_factor(rate, life)), rel=1e-9)


@given(gain, st.integers(1, 8), st.integers(1, 6))
def test_each_piece_of_a_chain_is_disposed_of_once(price, life, pieces):
    part = Component(*(np.array(number) for number in (price, price, float(life), float(life), 0.0)))
    assert disposal_stream(part, np.array(90.0), life * pieces).sum() == pytest.approx(90.0 * pieces)


@given(st.floats(0.3, 40.0), st.floats(0.0, 2.0), st.integers(3, 30))
def test_disposal_does_not_jump_when_a_life_passes_the_end(life, start, years):
    """Undiscounted, getting rid of pieces costs the price of each times the lives used by then."""
    part = Component(*(np.array(number) for number in (1.0, 1.0, life, life, start)))
    assert disposal_stream(part, np.array(70.0), years).sum() == pytest.approx(70.0 * (years - start) / life)


@given(st.integers(0, 10_000), rate, st.permutations(range(4)))
def test_order_of_ways_changes_no_figure(seed, rate, order):
    rng = np.random.default_rng(seed)
    kept = Streams(rng.uniform(0.0, 5000.0, (4, 2)), *(rng.uniform(0.0, 800.0, (4, 2, 9)) for _ in range(8)))
    names = Streams.__dataclass_fields__
    moved = Streams(**{name: getattr(kept, name)[list(order)] for name in names})
    before, after = measures(kept, np.array(rate), 0), measures(moved, np.array(rate), order.index(0))
    for name in type(before).__dataclass_fields__:
        np.testing.assert_array_equal(getattr(before, name)[list(order)], getattr(after, name))
    pieces = component_present_value(moved, np.array(rate))
    np.testing.assert_allclose(sum(pieces.values()), after.lcc_usd, rtol=1e-12)
