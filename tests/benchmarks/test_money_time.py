"""Cash flows, present values, internal rates and paybacks of many draws, against numpy-financial in a loop."""

import numpy as np
import numpy_financial as npf

from econ.lifecycle.discount import present_value
from econ.lifecycle.payback import discounted_payback, simple_payback
from econ.lifecycle.rate_of_return import internal_rate
from econ.lifecycle.streams import escalated_stream
from tests.benchmarks.clock import shortest

N_DRAW, N_WAY, N_YEAR = 8192, 4, 20
LOOPED = 256
"""Draws that the loop is timed on: its time grows with their number, so that all would take 32 times as long."""


def figures():
    """Return first costs, yearly energy and growth of every draw and way, and rates."""
    rng = np.random.default_rng(20)
    first = rng.uniform(2000.0, 6000.0, (N_WAY, N_DRAW))
    yearly = np.repeat(rng.uniform(300.0, 900.0, (N_WAY, N_DRAW, 1)), N_YEAR, axis=-1)
    return first, yearly, rng.uniform(-0.01, 0.03, N_DRAW), rng.uniform(0.01, 0.08, N_DRAW)


def ours(first, yearly, growth, rate):
    """Return what each way is worth, its rate and paybacks, all rows at once."""
    flow = escalated_stream(yearly, growth)
    flow[..., 0] = -first
    paid = simple_payback(flow).after_yr, discounted_payback(flow, rate).after_yr
    return present_value(flow, rate), internal_rate(flow).rate_frac, *paid


def looped(first, yearly, growth, rate):
    """Return the same by numpy-financial, one draw and way at a time, paybacks by plain Python."""
    worth, found, paid = (np.empty(first.shape) for _ in range(3))
    for way in range(first.shape[0]):
        for draw in range(first.shape[1]):
            flow = [-first[way, draw]]
            flow += [yearly[way, draw, t - 1] * (1.0 + growth[draw]) ** t for t in range(1, N_YEAR + 1)]
            worth[way, draw] = npf.npv(rate[draw], flow)
            found[way, draw] = npf.irr(flow)
            paid[way, draw] = _crossing(flow)
            _crossing([amount / (1.0 + rate[draw]) ** t for t, amount in enumerate(flow)])
    return worth, found, paid


def _crossing(flow):
    total = flow[0]
    for year, amount in enumerate(flow[1:], start=1):
        if total + amount >= 0.0:
            return year - 1 - total / amount
        total += amount
    return np.nan


def test_money_of_all_draws_is_a_hundred_times_faster_than_the_loop():
    whole = figures()
    few = tuple(column[:, :LOOPED] if column.ndim > 1 else column[:LOOPED] for column in whole)
    fast, slow = shortest(lambda: ours(*whole), 5).worked_s, shortest(lambda: looped(*few), 1).worked_s
    ratio = slow * N_DRAW / LOOPED / fast
    print(f"{N_DRAW} draws x {N_WAY} ways x {N_YEAR} years: {1e3 * fast:.0f} ms, loop {ratio:.0f} times as long")
    assert ratio >= 100.0


def test_both_find_the_same():
    few = tuple(column[:, :LOOPED] if column.ndim > 1 else column[:LOOPED] for column in figures())
    worth, rate, paid, _ = ours(*few)
    expected = looped(*few)
    np.testing.assert_allclose(worth, expected[0], rtol=1e-9, atol=1e-6)
    np.testing.assert_allclose(rate, expected[1], rtol=1e-8, atol=1e-10)
    np.testing.assert_allclose(paid, expected[2], rtol=1e-9)
