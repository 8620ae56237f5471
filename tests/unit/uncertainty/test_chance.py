"""Chance of the lowest cost and its error."""

import numpy as np
import pytest
from scipy import stats

from econ.kernel.errors import OutOfRangeError, ShapeError
from econ.uncertainty.chance import T_95, binomial_error, chance_of_lowest, draws_needed, is_lowest_share
from econ.uncertainty.draws import SCRAMBLES, drawn

ALL = np.ones(2, dtype=bool)


def test_share_of_draws_in_which_each_is_lowest():
    cost = np.array([[1.0] * 12 + [3.0] * 4, [2.0] * 16])
    assert chance_of_lowest(cost, ALL).share_frac.tolist() == [0.75, 0.25]


def test_equals_share_a_draw():
    assert is_lowest_share(np.array([[1.0], [1.0], [2.0]]), np.ones(3, dtype=bool))[:, 0].tolist() == [0.5, 0.5, 0.0]


def test_alternative_that_takes_no_part_has_no_chance_even_if_cheapest():
    found = chance_of_lowest(np.array([[1.0] * 16, [2.0] * 16]), np.array([False, True]))
    assert np.isnan([found.share_frac[0], found.error_frac[0]]).all()
    assert (found.share_frac[1], found.error_frac[1], found.draws_used) == (1.0, 0.0, 16)


def test_error_is_that_of_the_mean_of_the_scrambles():
    lowest = np.array([0.0] * 4 + [1.0] * 12)
    found = chance_of_lowest(np.stack([np.repeat(-lowest, 2), np.full(32, -0.5)]), ALL)
    assert found.share_frac[0] == 0.75
    assert found.error_frac[0] == pytest.approx(np.std(lowest, ddof=1) / np.sqrt(16.0))


def test_runs_that_all_agree_still_have_half_a_draw_of_error():
    found = chance_of_lowest(np.stack([np.zeros(64), np.ones(64)]), ALL)
    assert found.share_frac.tolist() == [1.0, 0.0]
    assert found.error_frac == pytest.approx(np.full(2, 0.5 / 4.0 / np.sqrt(16.0)))


def test_error_covers_a_known_chance():
    """Three standard errors from sixteen runs miss one time in a hundred; over forty seeds three are allowed."""
    three = [np.array([side]) for side in (0.0, 0.3, 1.0)]
    far = drawn(*three, 2**16, 99)[0]
    truth = float((far < 0.35).mean())
    outside = 0
    for seed in range(40):
        cost = np.stack([drawn(*three, 256, seed)[0], np.full(256, 0.35)])
        found = chance_of_lowest(cost, ALL)
        outside += bool(abs(found.share_frac[0] - truth) > 3.0 * found.error_frac[0])
    assert outside <= 3


def test_evenly_spread_draws_err_less_than_plain_ones():
    cost = np.stack([drawn(*(np.array([side]) for side in (0.0, 0.3, 1.0)), 4096, 3)[0], np.full(4096, 0.35)])
    found = chance_of_lowest(cost, ALL)
    assert found.error_frac[0] < 0.2 * binomial_error(float(found.share_frac[0]), 4096)


@pytest.mark.parametrize("count", [0, 12])
def test_draws_that_do_not_split_are_refused(count):
    with pytest.raises(ShapeError, match="do not split into 16 equal scrambles"):
        chance_of_lowest(np.zeros((2, count)), ALL)


@pytest.mark.parametrize(("share", "count", "text"), [(1.1, 10, "share is 1.1"), (0.5, 0, "draws is 0")])
def test_error_of_an_impossible_share_is_refused(share, count, text):
    with pytest.raises(OutOfRangeError, match=text):
        binomial_error(share, count)


def test_half_width_of_nothing_is_refused():
    with pytest.raises(OutOfRangeError, match="half width is 0"):
        draws_needed(0.5, 0.0, 0.95)


def test_interval_is_students_for_the_number_of_scrambles():
    assert pytest.approx(float(stats.t.ppf(0.975, SCRAMBLES - 1)), rel=1e-12) == T_95


@pytest.mark.parametrize(("other", "n_draw"), [(0.42, 512), (0.2, 4096), (0.42, 4096), (0.7, 4096)])
def test_interval_holds_the_exact_chance_in_at_least_ninety_of_a_hundred_seeds(other, n_draw):
    """A way that costs x against one that costs c: its chance is the share of the PERT below c, known exactly.

    Of 100 intervals that hold with a chance of 0.95 each, fewer than 90 hold once in 97 tries: the seeds are fixed. At
    512 draws, 32 a scramble, a chance of 0.95 is held by 89: few scrambles then meet the rare side at all.
    """
    low, likely, high = 0.0, 0.3, 1.0
    exact = float(stats.beta.cdf(other, 1.0 + 4.0 * likely, 5.0 - 4.0 * likely))
    three = [np.array([side]) for side in (low, likely, high)]
    held = 0
    for seed in range(100):
        found = chance_of_lowest(np.stack([drawn(*three, n_draw, seed)[0], np.full(n_draw, other)]), ALL)
        held += bool(abs(found.share_frac[0] - exact) <= found.half_width_frac[0])
    assert held >= 90
