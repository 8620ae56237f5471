"""Laws of waiting: longer is never better, and before the season it makes no difference."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.case.edit import with_value
from econ.climate.season import hot_season_d
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import moved
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.waiting import interim_lines, passed
from econ.installation.waiting import InterimNeed, warm_days
from econ.kernel.alternative import HIRED
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.lifecycle.service import yearly_cost, yearly_upkeep
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import answer
from econ.uncertainty.dates import outer
from tests.demo import NAMES, TODAY, demo_answer, demo_case
from tests.unit.evaluate.wiring import test_waiting as by_hand

MONTHS = st.lists(st.floats(0.0, 700.0), min_size=12, max_size=12).map(np.array)
WAITS = st.lists(st.floats(0.0, 900.0), min_size=2, max_size=9).map(sorted).map(np.array)
SUMMING = ("waiting_h", "waiting_kh", "waiting_cdd_kd", "until_service_usd")


@given(MONTHS, WAITS, st.integers(0, 364))
def test_a_longer_wait_never_lets_less_pass(months, waits, doy):
    inputs = Inputs({"place.decision_doy": np.asarray(float(doy))}, len(waits))
    found = passed(np.tile(months, (len(waits), 1)), waits, inputs)
    assert (np.diff(found) >= -1e-6).all()


@given(MONTHS, WAITS, st.sampled_from(["rent_portable", "borrow", "nothing"]))
def test_a_longer_wait_never_costs_less_cooling_meanwhile(warm_h, waits, interim):
    n_row = len(waits)
    rows = np.tile(warm_h, (n_row, 1))
    days = warm_days(rows, np.array(MONTH_DAYS, dtype=float), np.ones(n_row))
    need = InterimNeed(rows, rows, days, rows, rows)
    lines = interim_lines(by_hand.inputs(interim, n_row), installation_tables(), need, waits)
    for line in lines:
        assert (np.diff(line.quantity) >= -1e-6).all()


@pytest.mark.parametrize("name", NAMES)
def test_a_contractor_who_comes_later_never_leaves_fewer_hours_too_warm(name):
    case = with_value(with_value(demo_case(name), "now.cooling", "none"), "work.interim", "rent_portable")
    structure, sheet = prepared(case, load_tables(), TODAY)
    path = "quote.wait_d" if structure.has_quote else "work.contractor_wait_d"
    found = evaluate(structure, moved(sheet, path, np.linspace(1.0, 300.0, 40)), load_tables()).alternatives[HIRED]
    assert (np.diff(found.in_service_d) >= 0.0).all()
    for figure in (*SUMMING, "interim_cost_usd"):
        assert (np.diff(getattr(found, figure)) >= -1e-9).all(), figure
    assert found.interim_cost_usd[-1] > found.interim_cost_usd[0]


def test_ways_that_come_before_the_season_leave_the_same_hours():
    case = with_value(
        with_value(demo_case("top_floor_flat"), "now.cooling", "none"), "place.decision_date", "2027-01-04"
    )
    structure, sheet = prepared(case, load_tables(), TODAY)
    found = evaluate(structure, moved(sheet, "quote.wait_d", np.array([5.0, 30.0, 60.0])), load_tables())
    late = found.alternatives[HIRED]
    assert late.in_service_d[0] < late.in_service_d[2] < found.waiting.summer_from_d
    assert late.waiting_h.tolist() == [late.waiting_h[0]] * 3 == [0.0] * 3
    assert late.interim_cost_usd.tolist() == [0.0] * 3


@pytest.mark.parametrize("interim", ["nothing", "rent_portable"])
@pytest.mark.parametrize("name", NAMES)
def test_low_comes_before_likely_and_likely_before_high(name, interim):
    case = with_value(with_value(demo_case(name), "work.interim", interim), "now.cooling", "none")
    found = answer(case, load_tables(), TODAY, 0).result
    range_of = found.first_cool_days
    for at, way in enumerate(found.alternatives):
        if way.in_service_exists:
            assert range_of.low_d[at] <= way.in_service_d[0] <= range_of.high_d[at]
        else:
            assert np.isnan(range_of.low_d[at])
        assert range_of.interim_low_usd[at] <= way.interim_cost_usd[0] <= range_of.interim_high_usd[at]


@pytest.mark.parametrize("name", NAMES)
def test_dates_do_not_move_with_the_draws_asked_for(name):
    one, other = (demo_answer(name, draws).result.first_cool_days for draws in (0, 64))
    np.testing.assert_array_equal(one.low_d, other.low_d)
    np.testing.assert_array_equal(one.high_d, other.high_d)


@given(st.lists(st.floats(0.0, 400.0), min_size=3, max_size=30), st.floats(0.0, 400.0))
def test_a_range_of_dates_holds_the_likely_one_and_eight_tries_of_ten(tries, likely):
    low, high = outer(np.array([tries]), np.array([[likely]]))
    assert low[0] <= likely <= high[0]
    within = np.mean((np.array(tries) >= low[0] - 1e-9) & (np.array(tries) <= high[0] + 1e-9))
    assert within >= 0.8 - 2.0 / len(tries)


@given(MONTHS.filter(lambda months: months.sum() > 1.0), st.integers(0, 364))
@settings(deadline=None)
def test_a_summer_ends_after_it_begins_and_not_before_the_decision(months, doy):
    from_d, to_d = hot_season_d(months, float(doy))
    assert from_d <= to_d
    assert 0.0 <= to_d <= 365.0


@given(MONTHS, WAITS, st.integers(0, 364))
def test_what_is_told_until_service_is_what_the_yearly_costs_hold(months, waits, doy):
    """A way that itself costs nothing is charged exactly what is there now until service, over all its years."""
    inputs = Inputs({"place.decision_doy": np.asarray(float(doy))}, len(waits))
    rows = np.tile(months, (len(waits), 1))
    charged = yearly_cost(np.zeros((1, *rows.shape)), rows, waits[None, :], float(doy), 5).sum(axis=-1)
    np.testing.assert_allclose(passed(rows, waits, inputs), charged[0], rtol=1e-9, atol=1e-6)
    upkeep = yearly_upkeep(np.zeros((1, len(waits))), np.full(len(waits), 40.0), waits[None, :], 5).sum(axis=-1)
    np.testing.assert_allclose(40.0 * waits / DAYS_PER_YEAR, upkeep[0], rtol=1e-9, atol=1e-9)


def test_a_hired_unit_is_paid_once_and_only_in_the_first_cost():
    case = with_value(demo_case("sunroom_with_quote"), "place.decision_date", "2027-06-10")
    plain, hired = (
        answer(with_value(case, "work.interim", interim), load_tables(), TODAY, 0).result
        for interim in ("nothing", "rent_portable")
    )
    for at, (before, after) in enumerate(zip(plain.alternatives, hired.alternatives, strict=True)):
        extra = after.interim_cost_usd[0]
        assert after.cash_first_cost_usd[0] - before.cash_first_cost_usd[0] == pytest.approx(extra)
        assert hired.measures.lcc_usd[at, 0] - plain.measures.lcc_usd[at, 0] == pytest.approx(extra)
        np.testing.assert_array_equal(before.waiting_h, after.waiting_h)
    assert hired.alternatives[HIRED].interim_cost_usd[0] > 100.0
