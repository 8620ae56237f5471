"""Advice on who should do what, on the invented site."""

import math

import pytest

from econ.evaluate.split import split_advice, tool_plan
from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd, incentive_usd
from econ.kernel.alternative import SELF, Party
from econ.report.words.tools import tool_sentences
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()


def advice(shape=None, **changed):
    return split_advice(shape or structure(), site_values(**changed), TABLES)


def margin_of(found, task):
    return next(each for each in found.tasks if each.task == task)


# Frame wall, free helper: 1 h shared by two, so half an hour is one's own. Hired: a contractor's crew at 95 for half an
# hour, 47.50, and a trip of 85; saved are the hole saw 35, respirator 55 (7 % tax in: 96.30) and a mishap share of
# 0.1 x 800 x 0.3 = 24 and a wrong hole 0.04 x 150 = 6, which would take 0.1 x 0.3 x 3 + 0.04 x 2 = 0.17 h.
def test_the_margin_of_the_hole_by_hand():
    hole = margin_of(advice(), "wall_hole")
    assert (hole.now, hole.hired_by) == (Party.SELF, Party.CONTRACTOR)
    assert hole.saved_h == pytest.approx(0.67)
    assert hole.extra_cash_usd == pytest.approx(47.5 + 85.0 - 96.3 - 30.0)
    assert hole.flip_usd_per_h == pytest.approx((47.5 + 85.0 - 96.3 - 30.0) / 0.67)


def test_work_that_is_barred_or_only_ones_own_has_no_margin():
    found = advice()
    for task in ("circuit", "final_connection", "survey", "inspection"):
        assert math.isnan(margin_of(found, task).flip_usd_per_h)


@pytest.mark.parametrize("hour_value", [0.0, 25.0, 60.0, 150.0])
@pytest.mark.parametrize("helper", ["free", "paid", "handyman"])
@pytest.mark.parametrize("offered_usd", [0.0, 150.0, 1500.0])
def test_the_best_split_saves_what_the_cost_lines_save(hour_value, helper, offered_usd):
    values = site_values(
        work__hour_value_usd_per_h=hour_value,
        work__helper=helper,
        money__incentive_self_usd=offered_usd,
        money__incentive_self_terms="licensed_commissioning",
    )
    found = split_advice(structure(), values, TABLES)
    best = structure(parties=tuple(found.parties.items()))
    before, after = (installation(shape, values, TABLES, 1)[SELF] for shape in (structure(), best))
    spent = [
        (cash_first_cost_usd(way.line_items) - incentive_usd(way.line_items) - way.tool_resale_usd)[0]
        for way in (before, after)
    ]
    saved = spent[0] - spent[1]
    assert found.saved_cash_usd == pytest.approx(saved, abs=1e-6)
    assert found.saved_h == pytest.approx(before.own_hours_h[0] - after.own_hours_h[0])
    assert found.saved_usd >= -1e-6


def test_a_large_incentive_for_a_licensed_start_buys_the_contractors_visit():
    terms = {"money__incentive_self_terms": "licensed_commissioning", "work__hour_value_usd_per_h": 0.0}
    small, large = (advice(money__incentive_self_usd=usd, **terms) for usd in (100.0, 2000.0))
    started = ("connect_lines", "leak_check")
    assert {small.parties[task] for task in started} == {"self"}
    assert {large.parties[task] for task in started} == {"contractor"}


def test_the_advice_once_taken_saves_nothing_more():
    found = advice(work__hour_value_usd_per_h=60.0)
    again = advice(structure(parties=tuple(found.parties.items())), work__hour_value_usd_per_h=60.0)
    assert again.saved_usd == pytest.approx(0.0, abs=1e-6)


# Concrete, 10 in: hole 5 h shared by two, 2.5 h of a day of 8: the rig for one day at 125, 7 % tax in; the scanner is
# lent, the level is there, the extractor is hired for hole and plate, one day at 65.
def test_the_tool_plan_says_how_each_tool_is_come_by():
    shape = structure(tools_owned=("level_stud_finder",), tools_borrowed=("wall_scanner",))
    values = site_values(site__wall="poured_concrete", site__wall_thickness_m=0.254)
    plans = tool_plan(shape, values, TABLES)
    found = {plan.tool: (plan.way, plan.hire_d, round(plan.cost_usd, 2)) for plan in plans}
    assert found["core_rig"] == ("hire", 1.0, 133.75)
    assert found["dust_extractor"] == ("hire", 1.0, 69.55)
    assert found["wall_scanner"] == ("borrow", 0.0, 0.0)
    assert found["level_stud_finder"] == ("own", 0.0, 0.0)
    assert "hole_saw" not in found
    lines = installation(shape, values, TABLES, 1)[SELF].line_items
    tools = [category == "tools" for category in lines.category]
    assert sum(plan.cost_usd for plan in plans) == pytest.approx(lines.amount_usd[0, tools].sum())


def test_the_tool_plan_in_words():
    shape = structure(tools_owned=("level_stud_finder",), tools_borrowed=("wall_scanner",))
    values = site_values(site__wall="poured_concrete", site__wall_thickness_m=0.254)
    said = tool_sentences(tool_plan(shape, values, TABLES))
    assert any(
        sentence.startswith("Hire: ") and "core rig with stand for 1 day ($134)" in sentence for sentence in said
    )
    assert "Borrow: wall and rebar scanner." in said
    assert "You have: level, stud finder, tape." in said
    assert said[-1].startswith("Together $")
    assert tool_sentences(()) == ()
