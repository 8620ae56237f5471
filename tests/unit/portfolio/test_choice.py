"""What is in the way of rooms that must be done is named, with how much is missing; very many rooms go by prices."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.portfolio.bound import at_best_prices
from econ.portfolio.choice import Choice, better, choice, exact
from econ.portfolio.greedy import greedy
from econ.portfolio.obstacle import Obstacle, obstacles
from econ.portfolio.options import Limits
from econ.portfolio.picks import is_within, nothing, worth_usd
from econ.portfolio.priced import priced
from tests.unit.portfolio.drawn import drawn
from tests.unit.portfolio.test_plan import limits, made

MUST = np.ones(4, dtype=bool)


def test_money_that_is_missing_for_what_must_be_done_is_named_to_the_dollar():
    chosen = made(must=MUST)
    assert obstacles(chosen, limits(250.0)) == (Obstacle("budget_usd", 0, pytest.approx(150.0)),)
    assert obstacles(chosen, limits(400.0)) == ()
    assert int(choice(chosen, limits(250.0)).picks.is_done.sum()) == 2


def test_a_panel_that_is_too_small_is_named_with_its_flat():
    chosen = made(must=MUST, current_a=np.tile([0.0, 5.0, 16.0, 16.0], (4, 1)))
    assert obstacles(chosen, limits(1e6, panel_a=np.array([20.0, 8.0]))) == (
        Obstacle("panel_a", 1, pytest.approx(2.0)),
    )


def test_hours_and_days_that_are_missing_are_named():
    hours = np.tile([0.0, 2.0, 9.0, 9.0], (4, 1))
    chosen = made(must=MUST, own_hours_h=hours, electrician_d=hours / 2.0)
    few = limits(1e6, own_hours_h=np.array([6.0]), electrician_d=np.array([3.0]))
    assert obstacles(chosen, few) == (
        Obstacle("own_hours_h", 0, pytest.approx(2.0)), Obstacle("electrician_d", 0, pytest.approx(1.0)),
    )  # fmt: skip


def test_a_set_up_counts_in_what_is_missing():
    chosen = made(
        must=MUST, setup_usd=np.array([300.0]), group=np.zeros(4, dtype=np.int64), setup_way=(False, True, True, True)
    )
    assert obstacles(chosen, limits(500.0)) == (Obstacle("budget_usd", 0, pytest.approx(200.0)),)


def test_a_room_that_no_limit_keeps_undone_is_no_obstacle():
    chosen = made(must=MUST, first_year=np.full(4, 3))
    assert obstacles(chosen, limits(1e6)) == ()
    assert not choice(chosen, limits(1e6)).picks.is_done.any()


@pytest.mark.parametrize(("seed", "n_room", "n_year"), [(1, 200, 1), (2, 30, 2), (4, 200, 1)])
def test_prices_bound_what_can_be_reached_and_come_near_it(seed, n_room, n_year):
    options, most = drawn(seed, n_room, n_year)
    most = replace(most, panel_a=np.full_like(most.panel_a, np.inf))
    simple = greedy(options, most)
    options = replace(options, must=options.must & simple.is_done)
    best, bound = exact(options, most, 20.0)
    found, proven = priced(options, most, simple, 20.0)
    found = simple if found is None else found
    assert is_within(options, most, found)
    reached = worth_usd(options, best, n_year)
    assert bound <= proven + 1e-6 * abs(proven) + 1e-6
    assert reached <= proven + 1e-6
    assert worth_usd(options, found, n_year) >= reached * (1.0 - 2e-3)


@pytest.mark.parametrize("seed", range(3))
def test_prices_bound_with_panels_too(seed):
    options, most = drawn(seed, 90, 1)
    simple = greedy(options, most)
    must = options.must & simple.is_done
    found = at_best_prices(options, most, must, worth_usd(options, simple, 1))
    best, _ = exact(replace(options, must=must), most, 20.0)
    assert found.bound_usd >= worth_usd(options, best, 1) - 1e-6


def test_more_than_three_years_are_refused_for_very_many_rooms():
    options, most = drawn(1, 6, 4)
    with pytest.raises(OutOfRangeError, match="years planned is 4 year"):
        at_best_prices(options, most, options.must, 0.0)


def test_a_gap_is_what_may_be_missed_of_the_bound():
    options, _ = drawn(1, 3, 1)
    assert Choice(nothing(options), 999.0, 1000.0).gap_frac == pytest.approx(0.001)
    assert Choice(nothing(options), 0.0, 0.0).gap_frac == 0.0


def test_doing_what_must_be_done_comes_before_worth():
    chosen = made(must=np.array([True, False, False, False]))
    one = choice(chosen, limits(100.0)).picks
    assert one.is_done.tolist() == [True, False, False, False]
    assert better(chosen, limits(100.0), one, nothing(chosen))


def test_no_rooms_that_may_be_done_is_a_choice_too():
    chosen = made(must_not=MUST)
    found = choice(chosen, Limits(np.array([np.inf]), np.array([np.inf]), np.array([np.inf]), np.full(2, np.inf)))
    assert not found.picks.is_done.any()
    assert found.gap_frac == 0.0
