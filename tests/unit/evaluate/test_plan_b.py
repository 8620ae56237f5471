"""Plan B, and the self-installation with and without contractors who finish a kit bought elsewhere."""

import math
from dataclasses import replace
from datetime import date

import pytest

from econ.case.quantity import Amount
from econ.evaluate.finish import both_ways
from econ.evaluate.plan_b import plans_b
from econ.kernel.alternative import HIRED, SELF
from econ.report.plain import compare_json
from econ.report.words.work_risk import finish_sentences, incentive_sentence, way_risks
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_answer, demo_case

TABLES = load_tables()
NAME = "sunroom_with_quote"
BY = "Then running by about"
STARTED = (("connect_lines", "contractor"), ("leak_check", "contractor"))


def answered(parties=(), money=None, **work):
    """Return the answer to the sunroom with some of its work changed."""
    case = demo_case(NAME)
    given_out = tuple({**dict(case.work.parties or ()), **dict(parties)}.items())
    changed = {"work": case.work.model_copy(update={"parties": given_out, **work})}
    changed["money"] = case.money.model_copy(update=money or {})
    return answer(case.model_copy(update=changed), TABLES, TODAY, 0)


def usd(amount):
    return Amount(amount, amount, amount, False, str(amount))


def plans(found, way=SELF):
    return {plan.key: plan for plan in plans_b(found.result.alternatives[way], found.sheet, TABLES)}


# Rows of installation/mishaps: a kinked line 150, 260, 420, 5 to 45 days; all of its chance in the user's hands.
def test_plan_b_of_a_kinked_line_says_who_what_and_when():
    plan = plans(demo_answer(NAME))["kinked_line"]
    assert plan.party == "contractor"
    assert plan.chance_frac == pytest.approx(0.03)
    assert (plan.cost_usd.low, plan.cost_usd.likely, plan.cost_usd.high) == (150.0, 260.0, 420.0)
    assert (plan.days_d.low, plan.days_d.likely, plan.days_d.high) == (5.0, 14.0, 45.0)


def test_a_plan_b_is_dated_its_likely_days_after_service_was_to_start():
    found = demo_answer(NAME)
    written = compare_json(found)
    way, plan = found.result.alternatives[SELF], plans(found)["kinked_line"]
    said = next(each for each in written["work_risk"][SELF]["plan_b"] if each["key"] == "kinked_line")
    start = date.fromisoformat(written["alternatives"][SELF]["in_service_date"])
    late = (date.fromisoformat(said["running_by_date"]) - start).days
    assert late == plan.days_d.likely
    assert float(way.in_service_d[0]) > 0.0


def test_handing_the_whole_over_is_priced_both_ways_where_nobody_has_asked():
    keys = {word: set(plans(answered(contractor_finishes=word))) for word in ("yes", "no", "not_known")}
    assert "hand_over_kit" in keys["yes"] - keys["no"]
    assert "hand_over_new_set" in keys["no"] - keys["yes"]
    assert {"hand_over_kit", "hand_over_new_set"} <= keys["not_known"]


# Rows of the cost table: to install a set the owner bought 1,100 to 3,200; whole quote, 9-12 kBtu/h, 3,300 to 7,200.
def test_handing_over_costs_what_its_row_says():
    found = plans(demo_answer(NAME))
    assert (found["hand_over_kit"].cost_usd.low, found["hand_over_kit"].cost_usd.high) == (1100.0, 3200.0)
    assert (found["hand_over_new_set"].cost_usd.low, found["hand_over_new_set"].cost_usd.high) == (3300.0, 7200.0)
    assert math.isnan(found["hand_over_kit"].chance_frac)


def test_hiring_has_a_plan_b_for_each_of_its_doubts():
    assert set(plans(demo_answer(NAME), HIRED)) == {"call_back", "no_show", "remade_flare", "closed_firm"}


def test_nothing_hangs_on_contractors_where_none_is_asked():
    found = demo_answer(NAME)
    both = both_ways(found.structure, found.sheet, TABLES)
    assert not both.matters
    assert both.if_yes == both.if_no
    assert len(finish_sentences(both)) == 1


@pytest.mark.parametrize("word", ["yes", "no"])
def test_either_answer_given_is_what_not_known_shows(word):
    unknown = answered(STARTED, contractor_finishes="not_known")
    both = both_ways(unknown.structure, unknown.sheet, TABLES)
    shown = both.if_yes if word == "yes" else both.if_no
    said = answered(STARTED, contractor_finishes=word).result.alternatives[SELF]
    assert shown.cash_usd == pytest.approx(float(said.cash_first_cost_usd[0]))
    assert shown.own_h == pytest.approx(float(said.own_hours_h[0]))
    assert shown.in_service_d == pytest.approx(float(said.in_service_d[0]))
    assert both.matters


def test_both_prices_stand_in_words_and_json_where_nobody_has_asked():
    found = answered(STARTED, contractor_finishes="not_known")
    both = both_ways(found.structure, found.sheet, TABLES)
    told = finish_sentences(both)
    assert told[0].startswith("Phone two or three before you buy: one takes it on with a chance of 25 % (5 % to 50 %)")
    assert told[1].startswith("If a contractor takes on your kit: $")
    assert told[2].startswith("If none does: those tasks are yours again: $")
    said = compare_json(found)["contractor_finishes"]
    assert said["answer"] == "not_known"
    assert said["if_yes"]["cash_first_cost_usd"] == pytest.approx(both.if_yes.cash_usd)
    assert said["if_no"]["contractor_tasks"] == []


def test_a_flared_kit_without_a_contractor_is_priced_as_hiring_the_whole():
    kit = demo_case(NAME).kit.model_copy(update={"connection": "flare_with_charged_outdoor_unit"})
    found = answer(demo_case(NAME).model_copy(update={"kit": kit}), TABLES, TODAY, 0)
    both = both_ways(found.structure, found.sheet, TABLES)
    assert both.if_yes.is_open
    assert not both.if_no.is_open
    assert both.if_no.cash_usd == pytest.approx(float(found.result.alternatives[HIRED].cash_first_cost_usd[0]))
    assert "it cannot be finished, and the whole is hired" in finish_sentences(both)[-1]


# 300 at a chance of 0.8, for a contractor's start: nothing while the user starts it.
def test_an_incentive_says_its_terms_and_whether_they_are_met():
    money = {"incentive_self_usd": usd(300.0), "incentive_self_terms": "licensed_commissioning"}
    mine, theirs = answered(money=money), answered(STARTED, money=money, contractor_finishes="yes")
    assert "not so here" in incentive_sentence(mine, SELF)
    assert "$240 counted" in incentive_sentence(theirs, SELF)
    documents = [compare_json(found)["work_risk"][SELF]["incentive"] for found in (mine, theirs)]
    assert [each["counted_usd"] for each in documents] == [0.0, pytest.approx(240.0)]


def test_the_risks_of_both_ways_are_told_with_their_plans():
    own, hired = way_risks(demo_answer(NAME), TABLES)
    assert own.sentences[0].startswith("Set aside, chance times cost: $")
    assert any(sentence.startswith("Warranty, usual terms: parts 5 years") for sentence in own.sentences)
    assert len(own.plan_b["Then"]) == len(plans(demo_answer(NAME)))
    assert "you" in own.plan_b["Who"]
    assert all(day.split()[0] in {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"} for day in own.plan_b[BY])
    assert "Firm closes before the warranty ends" in hired.plan_b["If this happens"]


def test_a_way_that_is_closed_anyway_does_not_hang_on_contractors():
    found = demo_answer("top_floor_flat")
    both = both_ways(found.structure, found.sheet, TABLES)
    assert "closed anyway" in finish_sentences(replace(both, answer="not_known"))[0]
