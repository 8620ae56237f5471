"""PERT inverse: exact where nothing is in doubt, close to the exact inverse elsewhere."""

import numpy as np
import pytest
from scipy import stats

from econ.kernel.errors import OutOfRangeError
from econ.uncertainty.pert import mean_and_variance, pert_inverse, relative_mode


def one(probability, low, likely, high):
    return pert_inverse(np.atleast_2d(probability), *(np.array([float(side)]) for side in (low, likely, high)))[0]


@pytest.mark.parametrize("mode", [0.0, 0.01, 0.146, 0.3, 0.5, 0.9, 0.999, 1.0])
def test_tabulated_inverse_is_within_a_millionth_of_the_range(mode):
    tail = np.geomspace(1e-9, 1e-2, 200)
    probability = np.concatenate([np.linspace(0.0, 1.0, 2000), tail, 1.0 - tail])
    exact = stats.beta(1.0 + 4.0 * mode, 5.0 - 4.0 * mode).ppf(probability)
    assert one(probability, 0.0, mode, 1.0) == pytest.approx(exact, rel=0, abs=1e-6)


def test_no_spread_gives_the_value_exactly():
    value = 0.1 + 0.2
    assert set(one([0.0, 0.3, 0.999], value, value, value)) == {value}


def test_ends_of_the_range_are_reached_and_never_passed():
    ends = one([0.0, 1.0 - 2.0**-53, 1.0], 0.1, 0.2, 0.7)
    assert ends[0] == 0.1
    assert ends.max() == 0.7


def test_likely_value_at_an_end_is_allowed():
    assert one([0.5], 2.0, 2.0, 3.0)[0] == pytest.approx(2.0 + stats.beta(1.0, 5.0).ppf(0.5), abs=1e-6)


def test_row_is_the_same_alone_and_among_others():
    probability = np.random.default_rng(1).random((3, 50))
    low, likely, high = np.array([0.0, 5.0, 1.0]), np.array([1.0, 5.0, 2.0]), np.array([4.0, 5.0, 9.0])
    alone = [
        pert_inverse(probability[i : i + 1], low[i : i + 1], likely[i : i + 1], high[i : i + 1])[0] for i in range(3)
    ]
    np.testing.assert_array_equal(pert_inverse(probability, low, likely, high), np.array(alone))


def test_evenly_spread_draws_have_the_mean_and_variance_of_the_formula():
    probability = (np.arange(4096) + 0.5) / 4096
    values = one(probability, 10.0, 12.0, 30.0)
    mean, variance = mean_and_variance(np.array(10.0), np.array(12.0), np.array(30.0))
    assert values.mean() == pytest.approx(float(mean), rel=1e-4)
    assert values.var() == pytest.approx(float(variance), rel=1e-3)


@pytest.mark.parametrize(
    "three", [(2.0, 1.0, 3.0), (1.0, 4.0, 3.0), (1.0, float("nan"), 3.0), (1.0, 2.0, float("inf"))]
)
def test_three_values_out_of_order_are_refused(three):
    with pytest.raises(OutOfRangeError, match="Put the three in ascending order"):
        relative_mode(*(np.array(side) for side in three))


def test_first_wrong_row_is_named():
    with pytest.raises(OutOfRangeError, match="likely value is 9; it must be between its low 1 and its high 3"):
        relative_mode(np.array([0.0, 1.0]), np.array([1.0, 9.0]), np.array([2.0, 3.0]))
