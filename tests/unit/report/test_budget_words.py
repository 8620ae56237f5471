"""Sentences and pictures of a budget: true of the plan they stand above, with a table of the same numbers."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest

from econ.portfolio.choice import choice
from econ.portfolio.frontier import frontier, more, ranking
from econ.portfolio.offer import limits_of
from econ.portfolio.plan import planned
from econ.report.look import Look
from econ.report.pictures import frontier as picture
from econ.report.pictures import plan_years
from econ.report.style import Theme
from econ.report.words import budget as words
from econ.report.words.rooms import gap_sentence, must_sentences
from tests.unit.portfolio.test_plan import demo, limits, made, rooms

LOOK = Look(date(2027, 2, 1), 2027, Theme.DARK)


@pytest.fixture(scope="module")
def plan():
    """Return the demo building's plan for 4,000 dollars."""
    return planned(rooms(), demo(), 4000.0)


@pytest.fixture(scope="module")
def front(plan):
    """Return its budgets."""
    return frontier(plan.rooms.options, plan.limits, plan.picks)


def test_a_budget_is_told_with_rooms_hours_and_worth(front):
    told = words.budget_sentence(front, front.at(4000.0), 24)
    assert told.startswith("With $4,000 this year, 11 of 24 rooms are done this year, which takes away 14,691 hours")
    assert "nothing is done this year" in words.budget_sentence(front, 0, 24)
    assert len(front.budget_usd) == len(picture.table(front)["Worth, all years"])


def test_the_next_thousand_names_rooms_or_says_it_buys_nothing(plan):
    bought = more(plan.rooms.options, plan.limits, plan.picks)
    assert words.next_sentence(bought, plan).startswith("A further $1,000 this year is worth $206 more")
    assert "12 Mill Lane / 6 / Bedroom" in words.next_sentence(bought, plan)
    many = replace(bought, rooms=np.arange(9))
    assert "and 5 more" in words.next_sentence(many, plan)
    rich = planned(rooms(), demo(), 50_000.0)
    assert "buys nothing" in words.next_sentence(more(rich.rooms.options, rich.limits, rich.picks), rich)


def test_the_list_by_payback_is_told_with_the_difference(plan):
    found = ranking(plan.rooms.options, plan.limits, plan.picks)
    worth = choice(plan.rooms.options, plan.limits).worth_usd
    first, why = words.ranking_sentences(found, worth, plan.rooms.options)
    assert "$5,536 less than this plan" in first
    assert "hour too hot" in why
    assert "hour too hot" not in words.ranking_sentences(found, worth, replace(plan.rooms.options, hot_hour_usd=0.0))[1]
    assert "as much here" in words.ranking_sentences(found, found.worth_usd, plan.rooms.options)[0]


def test_the_picture_marks_the_budget_and_says_where_more_adds_nothing(front):
    drawn = picture.figure(front, front.at(4000.0), LOOK)
    assert list(drawn.data[1].x) == [4000.0]
    assert picture.statement(front) == (
        "Half of what money can add this year comes with the first $3,500; past $8,000 more adds nothing."
    )
    flat = replace(front, worth_usd=np.zeros(len(front.budget_usd)))
    assert "gives nothing more" in picture.statement(flat)


def test_columns_of_years_hold_the_cash_of_each_way_and_the_budgets(plan):
    drawn = plan_years.figure(plan, 2027, LOOK)
    bars = [trace for trace in drawn.data if trace.type == "bar"]
    assert sum(float(sum(bar.y)) for bar in bars) == pytest.approx(3800.74 + 4134.58, abs=0.01)
    assert sum(trace.type == "scatter" for trace in drawn.data) == 3
    assert plan_years.statement(plan) == "This year 11 rooms for $3,801; next year 12 rooms for $4,135."
    assert "■ New window units" in plan_years.legend()


def test_a_set_up_is_a_piece_of_its_own_and_an_empty_plan_says_so(plan):
    options = made(setup_usd=np.array([300.0]), group=np.zeros(4, dtype=np.int64), setup_way=(False, True, True, True))
    most = limits(900.0)
    picks = choice(options, most).picks
    own = replace(plan, rooms=replace(plan.rooms, options=options), limits=most, picks=picks)
    assert [bar.name for bar in plan_years.figure(own, 2027, LOOK).data if bar.type == "bar"][-1] == "Paid once"
    empty = replace(own, limits=limits(0.0), picks=choice(options, limits(0.0)).picks)
    assert plan_years.statement(empty) == "Nothing is done in any year."


def test_what_is_in_the_way_is_told_with_the_limit_and_the_amount():
    short = planned(rooms(), demo(budget_2_usd=0, budget_3_usd=0), 1000.0)
    assert limits_of(rooms().table, demo()).n_year == 3
    told = must_sentences(short)
    assert told[0].startswith("12 Mill Lane / 9 / Living must be done and does not fit")
    assert told[-1] == "To do all that must be done, at least this is missing: $106 of money this year."


def test_a_gap_is_told_as_proven():
    plan = planned(rooms(), demo())
    assert gap_sentence(plan) == "Proven: within these limits no choice is worth more."
    assert "0.1 % more than this one" in gap_sentence(replace(plan, gap_frac=0.001))
