"""Distributions, sampling errors and the value of information against recomputed and published figures."""

import numpy as np
import pytest
from scipy import stats

from econ.uncertainty.chance import binomial_error, draws_needed
from econ.uncertainty.information import perfect_information_usd
from econ.uncertainty.pert import mean_and_variance, pert_inverse
from tests.printed import printed

LOW, LIKELY, HIGH = np.array([100.0]), np.array([150.0]), np.array([300.0])


# Triangular(100, 150, 300): the other common reading of low, likely, high; its figures are not those of PERT
def test_triangular_reading_of_the_same_three_numbers_is_wider_than_pert():
    triangular = stats.triang(0.25, loc=100.0, scale=200.0)
    assert triangular.mean() == printed("183.333333")
    assert triangular.var() == printed("1805.555556")
    assert triangular.ppf([0.5, 0.1, 0.9]).tolist() == [
        printed("177.525513"),
        printed("131.622777"),
        printed("245.227744"),
    ]
    _, variance = mean_and_variance(LOW, LIKELY, HIGH)
    assert float(variance[0]) < triangular.var()


# Malcolm et al. (1959); alpha = 2, beta = 4
def test_pert_mean_and_variance():
    mean, variance = mean_and_variance(LOW, LIKELY, HIGH)
    assert float(mean[0]) == printed("166.666667")
    assert float(variance[0]) == printed("1269.841270")
    assert float(np.sqrt(variance[0])) == printed("35.634832")


def test_pert_inverse_has_the_printed_shape_two_and_four():
    probability = np.array([[0.1, 0.5, 0.9]])
    exact = 100.0 + 200.0 * stats.beta(2.0, 4.0).ppf(probability)
    assert pert_inverse(probability, LOW, LIKELY, HIGH) == pytest.approx(exact, abs=1e-6 * 200.0)


# A published page claims a variance of range^2/36; it holds only at a relative mode of 0.14645 or 0.85355
@pytest.mark.parametrize(("mode", "is_exact"), [(0.5, False), (0.14645, True), (0.85355, True)])
def test_thirty_sixth_of_the_range_squared_is_not_the_variance_of_a_central_pert(mode, is_exact):
    _, variance = mean_and_variance(np.array(0.0), np.array(mode), np.array(1.0))
    assert (abs(float(variance) - 1.0 / 36.0) < 1e-6) is is_exact


def test_central_pert_has_a_twenty_eighth_of_the_range_squared():
    _, variance = mean_and_variance(np.array(0.0), np.array(0.5), np.array(1.0))
    assert float(variance) == pytest.approx(1.0 / 28.0, rel=1e-12)


# Binomial standard error: sqrt(0.2 x 0.8 / 10,000) = 0.004; 9603.65 rounded up
def test_sampling_error_of_a_share_and_draws_needed():
    assert binomial_error(0.2, 10_000) == pytest.approx(0.004, rel=1e-12)
    assert draws_needed(0.5, 0.01, 0.95) == 9_604


# Published example: three markets, three investments; EMV 680, 590, 500 and EVPI 350
def test_value_of_perfect_information_of_a_published_example():
    payoff = np.array([[1500.0, 300.0, -800.0], [900.0, 600.0, -200.0], [500.0, 500.0, 500.0]])
    chance = np.array([0.5, 0.3, 0.2])
    assert (payoff @ chance).tolist() == pytest.approx([680.0, 590.0, 500.0], rel=1e-12)
    assert float(chance @ payoff.max(axis=0)) == pytest.approx(1030.0, rel=1e-12)
    assert float(perfect_information_usd(-payoff, chance)) == pytest.approx(350.0, rel=1e-12)


# Perfect information is worth nothing where one alternative is lowest in every draw; else the expected regret
def test_value_of_perfect_information_is_the_expected_regret():
    cost = np.random.default_rng(7).normal(100.0, 20.0, (4, 1000))
    regret = (cost - cost.min(axis=0)).mean(axis=1).min()
    assert float(perfect_information_usd(cost)) == pytest.approx(regret, rel=1e-9)
    cost[2] = cost.min(axis=0) - 1.0
    assert float(perfect_information_usd(cost)) == 0.0
