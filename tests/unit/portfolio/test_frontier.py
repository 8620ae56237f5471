"""What each budget gives never falls; the next dollars and a list ranked by payback are told beside the choice."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from econ.portfolio.choice import choice
from econ.portfolio.frontier import frontier, more, ranking, spared_h
from econ.portfolio.greedy import by_payback, payback_yr
from econ.portfolio.picks import is_within, worth_usd
from tests.unit.portfolio.drawn import drawn
from tests.unit.portfolio.test_plan import limits, made


def found(options, most):
    return frontier(options, most, choice(options, most).picks)


@pytest.mark.parametrize(("seed", "n_year"), [(1, 1), (2, 1), (3, 2)])
def test_more_money_never_gives_less_along_the_frontier(seed, n_year):
    options, most = drawn(seed, 18, n_year)
    options = replace(options, must=np.zeros_like(options.must))
    front = found(options, most)
    assert (np.diff(front.worth_usd) >= -1e-9).all()
    assert (np.diff(front.budget_usd) > 0.0).all()
    assert (front.cash_usd <= front.budget_usd + 1e-6).all()


def test_the_budget_that_is_set_is_a_point_with_its_own_choice():
    options, most = drawn(4, 18, 1)
    front, now = found(options, most), choice(options, most)
    at = front.at(float(most.budget_usd[0]))
    assert front.budget_usd[at] == most.budget_usd[0]
    assert front.worth_usd[at] == pytest.approx(now.worth_usd)


def test_the_frontier_ends_where_everything_worth_doing_is_done():
    options = made(study_period_yr=10)
    front = found(options, limits(500.0))
    assert front.budget_usd[-1] >= 4 * 2000.0
    assert front.worth_usd[-1] == pytest.approx(4 * 4000.0)
    assert front.worth_usd[0] == 0.0
    assert front.room_count[-1] == 4


def test_a_budget_between_two_points_reads_the_smaller():
    front = found(made(), limits(500.0))
    assert front.at(-1.0) == 0
    assert front.budget_usd[front.at(1e9)] == front.budget_usd[-1]
    assert front.budget_usd[front.at(float(front.budget_usd[3]) + 0.5)] == front.budget_usd[3]


def test_being_told_can_stop_the_work():
    def stop(done, of):
        assert 0 < done <= of
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        frontier(made(), limits(500.0), choice(made(), limits(500.0)).picks, stop)


def test_the_next_dollars_are_spent_on_what_they_buy_most_with():
    chosen = made(too_hot_h=np.tile([50.0, 0.0, 0.0, 0.0], (4, 1)))
    now = choice(chosen, limits(100.0)).picks
    bought = more(chosen, limits(100.0), now, 100.0)
    assert bought.worth_usd == pytest.approx(200.0)
    assert bought.spared_h == pytest.approx(50.0)
    assert len(bought.rooms) == 1
    nothing_more = more(chosen, limits(1e5), choice(chosen, limits(1e5)).picks)
    assert (nothing_more.worth_usd, len(nothing_more.rooms)) == (0.0, 0)


def test_only_rooms_of_the_coming_year_count_in_its_hours():
    chosen = made(
        too_hot_h=np.tile([50.0, 0.0, 10.0, 0.0], (4, 1)), first_year=np.array([0, 0, 1, 1]), study_period_yr=9
    )
    picks = choice(chosen, limits([1e5, 1e5])).picks
    assert picks.year.tolist() == [0, 0, 1, 1]
    assert spared_h(chosen, picks) == pytest.approx(100.0)


def test_payback_is_cash_over_the_equal_yearly_amount():
    cost, gain = 1000.0, 250.0
    annuity = (1.0 - 1.03**-10) / 0.03
    chosen = made(discount_frac=0.03, study_period_yr=10)
    benefit = np.tile([0.0, -200.0, gain * annuity - cost, 0.0], (4, 1))
    payback = payback_yr(replace(chosen, benefit_usd=benefit))
    assert payback[0, SELF] == pytest.approx(4.0)
    assert np.isinf(payback[0, [KEEP, WINDOW]]).all()


def test_a_list_ranked_by_payback_takes_the_cheap_way_where_the_dear_one_is_worth_more():
    """Paid back in 2 years and not 2.5, a window unit closes the room to one that is worth seven times as much."""
    benefit = np.tile([0.0, 400.0, 3000.0, 0.0], (4, 1))
    chosen = made(benefit_usd=benefit, study_period_yr=10)
    most = limits(4000.0)
    now = choice(chosen, most)
    listed = ranking(chosen, most, now.picks)
    assert listed.picks.way.tolist() == [WINDOW] * 4
    assert now.picks.way.tolist() == [SELF] * 4
    assert (listed.worth_usd, now.worth_usd) == (1600.0, 12_000.0)
    assert len(listed.rooms) == 4
    assert listed.cash_usd == 400.0


@pytest.mark.parametrize("seed", range(6))
def test_the_list_keeps_every_limit_and_is_never_worth_more(seed):
    options, most = drawn(seed, 24, 1 + seed % 2)
    options = replace(options, must=np.zeros_like(options.must))
    listed = by_payback(options, most)
    assert is_within(options, most, listed)
    assert worth_usd(options, listed, most.n_year) <= choice(options, most).worth_usd * (1.0 + 1e-6) + 1e-6


def test_what_never_pays_back_in_time_is_not_on_the_list():
    chosen = made(benefit_usd=np.tile([0.0, -90.0, -900.0, -1900.0], (4, 1)), study_period_yr=5)
    assert not by_payback(chosen, limits(1e6)).is_done.any()
    must = replace(chosen, must=np.array([True, False, False, False]))
    assert by_payback(must, limits(1e6)).way.tolist() == [WINDOW, KEEP, KEEP, KEEP]
    assert HIRED not in by_payback(must, limits(1e6)).way
