"""Value of knowing an input before deciding."""

import numpy as np
import pytest

from econ.kernel.errors import ShapeError
from econ.uncertainty.information import input_information_usd, perfect_information_usd

X = (np.arange(4096) + 0.5) / 4096
NOISE = np.random.default_rng(2).permutation(X)


def test_input_that_decides_alone_is_worth_perfect_information():
    cost = np.stack([X * 100.0, np.full(4096, 50.0)])
    worth = input_information_usd(cost, X[None])
    assert worth[0] == pytest.approx(12.5, rel=1e-3)  # mean of max(0.5 - x, 0) over evenly spread x, in $100
    assert worth[0] <= float(perfect_information_usd(cost)) + 1e-9


def test_input_that_does_not_matter_is_worth_next_to_nothing():
    cost = np.stack([X * 100.0, np.full(4096, 45.0)])
    assert input_information_usd(cost, NOISE[None])[0] < 1.0


def test_input_without_spread_is_worth_nothing():
    cost = np.stack([X * 100.0, np.full(4096, 50.0)])
    assert input_information_usd(cost, np.full((1, 4096), 3.0)).tolist() == [0.0]


def test_knowing_is_worth_nothing_where_one_alternative_always_wins():
    cost = np.stack([X * 100.0, X * 100.0 + 1.0])
    assert input_information_usd(cost, np.stack([X, NOISE])).tolist() == [0.0, 0.0]


def test_fewer_draws_than_bins_take_one_a_bin():
    assert input_information_usd(np.array([[0.0, 4.0], [2.0, 2.0]]), np.array([[0.0, 1.0]])).tolist() == [1.0]


def test_draws_that_do_not_split_are_refused():
    with pytest.raises(ShapeError, match="do not split into 64 equal bins"):
        input_information_usd(np.zeros((2, 100)), np.zeros((1, 100)))
