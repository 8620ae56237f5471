"""How far figures reach, and expected regret."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.alternative import SELF
from econ.uncertainty.information import perfect_information_usd
from econ.uncertainty.spread import expected_regret_usd, quantiles
from tests import builders


def test_quantiles_are_draws_in_order():
    drawn = builders.drawn(101)
    found = quantiles(drawn)["lcc_usd"]
    for at, share in ((0, 0.05), (1, 0.5), (2, 0.95)):
        below = (drawn.measures.lcc_usd[SELF] <= found[at, SELF]).mean()
        assert below == pytest.approx(share, abs=0.02)
    assert np.isin(found[:, SELF], drawn.measures.lcc_usd[SELF]).all()


def test_payback_that_never_comes_is_longer_than_any_and_a_missing_rate_is_none():
    drawn = builders.drawn(11)
    never = drawn.measures.simple_payback_yr.copy()
    never[SELF, 5:] = np.nan
    sir = drawn.measures.sir.copy()
    sir[SELF, 0] = np.nan
    found = quantiles(replace(drawn, measures=replace(drawn.measures, simple_payback_yr=never, sir=sir)))
    assert np.isfinite(found["simple_payback_yr"][0, SELF])
    assert np.isinf(found["simple_payback_yr"][2, SELF])
    assert np.isnan(found["sir"][:, SELF]).all()


def test_least_regret_is_the_value_of_perfect_information():
    cost = np.random.default_rng(3).uniform(0.0, 100.0, (4, 512))
    takes_part = np.array([True, False, True, True])
    found = expected_regret_usd(cost, takes_part)
    assert np.isnan(found[1])
    assert np.nanmin(found) == pytest.approx(float(perfect_information_usd(cost[takes_part])))


def test_nobody_eligible_regrets_nothing():
    assert np.isnan(expected_regret_usd(np.ones((2, 4)), np.zeros(2, dtype=np.bool_))).all()
