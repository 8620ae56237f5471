"""Measures: existence, the base case, and the pieces."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.measures import Measures, component_present_value, measures
from econ.lifecycle.streams import Streams, escalated_stream

RATE = np.array([0.03, 0.05])


def streams() -> Streams:
    """Return a base, dearer and cheaper to buy, a dearer one that saves nothing; two rows."""
    rng = np.random.default_rng(5)
    first = np.array([[500.0], [3000.0], [200.0], [900.0]]) * np.array([1.0, 1.1])
    yearly = np.array([600.0, 150.0, 700.0, 650.0])[:, None, None] * np.ones((4, 2, 12))
    replacement = np.zeros((4, 2, 13))
    replacement[0, :, 8] = 500.0
    residual = np.zeros((4, 2, 13))
    residual[:, :, 12] = rng.uniform(0.0, 100.0, (4, 2))
    upkeep = escalated_stream(np.full((4, 2, 12), 30.0), np.array(0.0))
    return Streams(first, escalated_stream(yearly, np.array([0.01, 0.0])), upkeep, replacement, residual)


def found() -> Measures:
    return measures(streams(), RATE, 0)


def test_base_case_saves_nothing_and_has_no_ratios():
    base = found()
    assert base.net_savings_usd[0].tolist() == [0.0, 0.0]
    exists = (
        base.sir_exists,
        base.airr_exists,
        base.irr_exists,
        base.simple_payback_exists,
        base.discounted_payback_exists,
    )
    assert not any(flag[0].any() for flag in exists)


def test_cheaper_first_cost_has_no_ratio_and_no_payback():
    cheaper = found()
    assert not cheaper.sir_exists[2].any()
    assert not cheaper.simple_payback_exists[2].any()
    assert not cheaper.irr_exists[2].any()
    assert np.isfinite(cheaper.net_savings_usd[2]).all()


def test_dearer_and_dearer_to_run_has_a_ratio_below_nothing_and_no_adjusted_rate():
    worse = found()
    assert (worse.sir[3] < 0.0).all()
    assert worse.sir_exists[3].all()
    assert not worse.airr_exists[3].any()
    assert np.isnan(worse.airr[3]).all()


def test_no_ratio_where_the_base_case_costs_more_at_first_and_a_later_set_costs_a_little_more_in_all():
    flows = streams()
    later = flows.replacement_usd.copy()
    later[2, :, 8] = 500.0 + 1.03**8 * 328.0
    cheap = measures(replace(flows, replacement_usd=later), np.array([0.03, 0.03]), 0)
    invested = component_present_value(replace(flows, replacement_usd=later), np.array([0.03, 0.03]))
    added = sum(invested[name][2, 0] - invested[name][0, 0] for name in ("first_cost", "replacement", "residual"))
    assert 0.0 < added < 150.0
    assert not cheap.sir_exists[2, 0]
    assert not cheap.airr_exists[2, 0]
    assert np.isfinite(cheap.net_savings_usd[2, 0])


@pytest.mark.parametrize("name", ["sir", "airr", "irr", "simple_payback_yr", "discounted_payback_yr"])
def test_measure_is_nan_exactly_where_it_does_not_exist(name):
    both = found()
    np.testing.assert_array_equal(np.isnan(getattr(both, name)), ~getattr(both, name.removesuffix("_yr") + "_exists"))


def test_pieces_add_up_to_the_life_cycle_cost():
    pieces = component_present_value(streams(), RATE)
    assert list(pieces) == [
        "first_cost",
        "energy",
        "upkeep",
        "repair",
        "replacement",
        "disposal",
        "residual",
        "financing",
        "letting",
    ]
    assert (pieces["residual"] < 0.0).all()
    assert sum(pieces.values()) == pytest.approx(found().lcc_usd, rel=1e-14)


def test_life_cycle_cost_agrees_with_a_loop_over_years():
    total = streams().total_usd
    looped = [
        [sum(c / (1.0 + d) ** t for t, c in enumerate(row)) for row, d in zip(way, RATE, strict=True)] for way in total
    ]
    assert found().lcc_usd == pytest.approx(np.array(looped), rel=1e-12)


def test_totals_leave_the_streams_as_they_were():
    kept = streams()
    before = kept.replacement_usd.copy()
    assert kept.investment_usd[0, 0, 0] == kept.first_usd[0, 0]
    np.testing.assert_array_equal(kept.replacement_usd, before)


def test_row_measures_the_same_alone():
    both, one = streams(), streams()
    names = ("first_usd", "energy_usd", "om_usd", "replacement_usd", "residual_usd")
    alone = measures(Streams(*(getattr(one, n)[:, 1:] for n in names)), RATE[1:], 0)
    for name in Measures.__dataclass_fields__:
        np.testing.assert_array_equal(getattr(measures(both, RATE, 0), name)[:, 1:], getattr(alone, name))


def test_study_period_of_no_years_is_refused():
    nothing = np.zeros((2, 1, 1))
    with pytest.raises(OutOfRangeError, match="study period is 0 years; it must be 1 or more years"):
        measures(Streams(np.zeros((2, 1)), nothing, nothing, nothing, nothing), np.array(0.03), 0)


def test_borrowed_money_moves_cost_and_ratio_but_not_when_the_purchase_pays_back():
    plain = streams()
    borrowed = np.zeros((4, 2, 13))
    borrowed[1, :, 0], borrowed[1, :, 1:4] = -3000.0, 1150.0
    kept, lent = measures(plain, RATE, 0), measures(replace(plain, financing_usd=borrowed), RATE, 0)
    np.testing.assert_allclose(kept.simple_payback_yr, lent.simple_payback_yr, rtol=1e-9)
    np.testing.assert_allclose(kept.irr, lent.irr, rtol=1e-9)
    assert (lent.lcc_usd[1] > kept.lcc_usd[1]).all()
    assert (lent.sir[1] < kept.sir[1]).all()
    np.testing.assert_array_equal(kept.lcc_usd[[0, 2, 3]], lent.lcc_usd[[0, 2, 3]])
