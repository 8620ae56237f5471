"""The best split: what is shared decides, and every task says at what hourly value it flips."""

from dataclasses import replace

import numpy as np
import pytest

from econ.installation.split import JointFloor, margins, split_cost
from econ.installation.split_programme import best_split
from tests.unit.installation.splits import (
    CONTRACTOR,
    ELECTRICIAN,
    SELF,
    cost_usd,
    every_split,
    least_usd,
    problem,
    random_problem,
    tools,
)


def only(*parties, n_task):
    allowed = np.zeros((n_task, 4), dtype=bool)
    allowed[:, list(parties)] = True
    return allowed


@pytest.mark.parametrize(("hour_value", "party"), [(0.0, SELF), (99.0, SELF), (101.0, CONTRACTOR)])
def test_a_task_alone_flips_at_its_price_an_hour(hour_value, party):
    one = problem(1, is_allowed=only(SELF, CONTRACTOR, n_task=1))
    assert best_split(one, hour_value).tolist() == [party]
    assert margins(one, best_split(one, hour_value), hour_value).flip_usd_per_h[0] == pytest.approx(100.0)


# Each task would take the user an hour at 60. A contractor asks 100 for coming and 10 a task: dearer for one, cheaper
# for three together (130 against 180), though no task pays on its own.
def test_tasks_that_pay_only_together_are_given_away_together():
    charge = np.zeros((3, 4))
    charge[:, CONTRACTOR] = 10.0
    three = problem(3, is_allowed=only(SELF, CONTRACTOR, n_task=3), charge_usd=charge, trip_usd=np.array([0.0, 100.0]))
    mine = np.zeros(3, dtype=np.int64)
    assert np.nanmin(margins(three, mine, 60.0).extra_cash_usd[:, CONTRACTOR]) == pytest.approx(110.0)
    assert best_split(three, 60.0).tolist() == [CONTRACTOR] * 3
    assert best_split(three, 43.0).tolist() == [SELF] * 3


# A hired tool costs 30 for the day, whichever of the two tasks needs it; each takes half a day.
def test_a_tool_that_another_task_needs_anyway_is_not_saved():
    two = problem(2, is_allowed=only(SELF, CONTRACTOR, n_task=2), tools=tools(2, uses=[(0, 1)], days=0.5))
    found = margins(two, np.array([SELF, SELF]), 25.0)
    assert found.extra_cash_usd[:, CONTRACTOR].tolist() == pytest.approx([100.0, 100.0])
    assert margins(two, np.array([SELF, CONTRACTOR]), 25.0).extra_cash_usd[0, CONTRACTOR] == pytest.approx(70.0)


def test_two_days_of_hire_are_bought_instead_when_that_is_cheaper():
    uses = tools(2, uses=[(0, 1)], days=1.0, buy_usd=100.0, resale_frac=0.55)
    mine = problem(2, tools=uses)
    # 45 to buy and sell again against 60 for two days; one day alone is hired for 30
    assert split_cost(mine, np.array([[SELF, SELF], [SELF, CONTRACTOR]])).cash_usd.tolist() == pytest.approx(
        [45.0, 130.0]
    )


def test_connecting_a_circuit_that_the_user_ran_has_its_own_floor():
    joint = JointFloor(1, ELECTRICIAN, 0, (SELF,), 220.0)
    two = problem(2, joint_floors=(joint,))
    found = split_cost(two, np.array([[SELF, ELECTRICIAN], [ELECTRICIAN, ELECTRICIAN], [SELF, SELF]])).cash_usd
    assert found.tolist() == [220.0, 200.0, 0.0]
    barred = replace(two, is_allowed=np.array([[True, False, True, False], [False, False, True, False]]))
    assert best_split(barred, 25.0).tolist() == [ELECTRICIAN, ELECTRICIAN]


def test_a_task_that_only_one_may_do_has_no_flip():
    one = problem(1, is_allowed=only(SELF, n_task=1))
    found = margins(one, np.array([SELF]), 25.0)
    assert found.hired_by.tolist() == [-1]
    assert np.isnan(found.flip_usd_per_h[0])


def test_a_task_the_user_may_not_do_has_no_flip():
    one = problem(1, is_allowed=only(CONTRACTOR, n_task=1))
    assert np.isnan(margins(one, np.array([CONTRACTOR]), 25.0).flip_usd_per_h[0])


@pytest.mark.parametrize("seed", range(12))
def test_eight_tasks_and_three_parties_against_every_split(seed):
    site = random_problem(np.random.default_rng(seed), 8)
    assert len(every_split(site)) <= 3**8
    assert cost_usd(site, best_split(site, 30.0), 30.0) == pytest.approx(least_usd(site, 30.0), abs=0.005)
