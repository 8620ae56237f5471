"""The answer in words: a wording for each verdict, at most three sentences, payback never without its base."""

import re
from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW, Alternative, Standing
from econ.report.style import NAMES
from econ.report.words import gaps, money, standing
from econ.report.words.verdict import verdict_text
from tests import builders

NAN = float("nan")
# Hand-worked from the builder at 3 % (15 years: 11.938; year 9: 0.7664; year 15: 0.6419):
# yourself 4,320 + 780 x 11.938 - 300 x 0.6419 = 13,439; hired 7,210 + 790 x 11.938 - 350 x 0.6419 = 16,417;
# window units 1,005 + 1,435 x 11.938 + 870 x 0.7664 - 250 x 0.6419 = 18,642.
REASONS = (
    "A let flat needs licensed electrical work here.",
    "The unit hangs 26 ft up.",
    "The association must agree; its time is in the dates.",
)


def sentences(text):
    return [part for part in re.split(r"(?<=[.!?])\s", text) if part]


def refused(result):
    return builders.with_way(result, SELF, standing=Standing.NOT_ALLOWED, reasons=REASONS)


def test_a_clear_verdict_says_what_to_do_what_it_costs_and_how_sure_it_is(result):
    text = verdict_text(result, builders.verdict(result))
    assert text.startswith("Put it in yourself, with an electrician for the circuit. It costs about $")
    assert "over 15 years; hiring costs about $" in text
    assert "new window units with the heat you have cost about $" in text
    assert text.endswith("It came out cheapest in 19 of 20 tries.")


def test_a_clear_verdict_names_the_others_cheapest_first(result):
    text = verdict_text(result, builders.verdict(result))
    assert text.index("hiring costs") < text.index("new window units")


def test_a_way_that_stood_aside_is_priced_with_its_reason(result):
    found = builders.verdict(result)
    late = replace(found, reasons=((), (), (), ("late", "over_cash")))
    text = verdict_text(result, late)
    assert "hiring costs about $3,000 more (after this year's hot season and above your cash limit)" in text


def test_without_draws_the_verdict_says_that_none_were_run(result):
    text = verdict_text(result, builders.verdict(result, chance=(NAN,) * 4))
    assert "no tries of other values were run" in text
    assert "cheapest in" not in text


def test_a_winner_that_fails_a_test_all_the_same_says_so(result):
    late = builders.with_way(result, SELF, is_in_time=np.zeros(1, dtype=np.bool_))
    text = verdict_text(late, builders.verdict(late))
    assert "though it comes after this year's hot season. It costs" in text


def test_window_units_are_spoken_of_as_several(result):
    found = replace(builders.verdict(result), winner=Alternative.WINDOW_UNITS, chance=(NAN, 0.95, 0.05, 0.0))
    text = verdict_text(result, found)
    assert text.startswith("Buy new window units. They cost about $")
    assert "doing it yourself costs about $5,200 less and hiring costs about $2,200 less" in text
    assert text.endswith("They came out cheapest in 19 of 20 tries.")


def test_a_close_call_names_the_gap_and_both_chances(result):
    found = builders.verdict(result, "too_close", (NAN, 0.0, 0.55, 0.45))
    text = verdict_text(result, found, ["what an hour of yours is worth", "whether the quote includes the circuit"])
    assert text.startswith("Too close to call: doing it yourself and hiring come out within $3,000 over 15 years")
    assert "cheapest in 11 of 20 tries, hiring in 9 of 20 tries" in text
    assert "What would decide it: what an hour of yours is worth and whether the quote includes the circuit." in text


def test_a_close_call_without_a_decider_points_beyond_cost(result):
    text = verdict_text(result, builders.verdict(result, "too_close"))
    assert "Cost alone should not decide" in text


def test_money_against_comfort_is_told_by_the_year(result):
    cheap = replace(result.measures, annualised_cost_usd_per_yr=np.array([[1.0], [200.0], [252.0], [400.0]]))
    found = replace(
        builders.verdict(result, "too_close"), winner=Alternative.WINDOW_UNITS, runner_up=Alternative.SELF_INSTALL
    )
    text = verdict_text(replace(result, measures=cheap), found)
    assert "new window units cost least, by about $52 a year" in text
    assert "worth more than $52 a year to you, doing it yourself is the better buy" in text


def test_a_winner_of_unknown_standing_sends_to_the_permit_office(result):
    unknown = builders.with_way(result, SELF, standing=Standing.UNKNOWN)
    text = verdict_text(unknown, builders.verdict(unknown, "too_close"))
    assert text.startswith("Too early to say")
    assert "permit office" in text


def test_not_allowed_says_do_not_put_this_in_yourself_and_why(result):
    stopped = refused(result)
    text = verdict_text(stopped, builders.verdict(stopped, "not_allowed"))
    assert text.startswith(
        "Don't put this in yourself. Three things stand in the way: a let flat needs licensed electrical work here; "
        "the unit hangs 26 ft up; the association must agree. Your real choice, over 15 years, is hiring (about $"
    )


def test_not_allowed_says_which_choice_only_cools(result):
    stopped = refused(result)
    text = verdict_text(stopped, builders.verdict(stopped, "not_allowed"))
    assert re.search(r"or new window units \(about \$[\d,]+, cooling only\)\.$", text)


def test_more_obstacles_than_three_are_counted(result):
    stopped = builders.with_way(refused(result), SELF, reasons=(*REASONS, "One more.", "And another."))
    text = verdict_text(stopped, builders.verdict(stopped, "not_allowed"))
    assert "Five things stand in the way, above all these: a let flat" in text
    assert "one more" not in text


def test_obstacles_with_colons_of_their_own_are_numbered(result):
    reasons = ("A let home: the exemption does not hold.", *(f"Reason {place}." for place in range(6)))
    text = verdict_text(
        builders.with_way(refused(result), SELF, reasons=reasons), builders.verdict(result, "not_allowed")
    )
    assert "Seven things stand in the way, above all these: (1) a let home: the exemption does not hold; (2) r" in text


def test_one_obstacle_stands_alone(result):
    stopped = builders.with_way(refused(result), SELF, reasons=("HOA rules forbid it.",))
    text = verdict_text(stopped, builders.verdict(stopped, "not_allowed"))
    assert "One thing stands in the way: HOA rules forbid it." in text


def test_with_nothing_open_each_first_obstacle_is_told(result):
    stopped = refused(result)
    found = replace(builders.verdict(stopped, "not_allowed"), winner=None, eligible=(False,) * 4)
    text = verdict_text(stopped, found)
    assert text.startswith("None of these is open yet. What stands in the way: A let flat")


@pytest.mark.parametrize("kind", ["clear", "too_close", "not_allowed"])
def test_a_verdict_has_at_most_three_sentences(result, kind):
    shaped = refused(result) if kind == "not_allowed" else result
    assert len(sentences(verdict_text(shaped, builders.verdict(shaped, kind), ["your hour"]))) <= 3


def test_what_a_way_does_not_do_is_told_in_the_fixed_order(result, look):
    never = np.zeros(1, dtype=np.bool_)
    stopped = builders.with_way(refused(result), SELF, is_in_time=never, spare_d=np.array([-5.0]), is_within_cash=never)
    found = gaps.shortcomings(stopped, Alternative.SELF_INSTALL, look)
    assert found[0] == "Not allowed here."
    assert "coldest weather" in found[1]
    assert found[-2].startswith("Cool from Sat 26 June only: too late for the summer")
    assert found[-1] == "Takes $3,770 in cash, more than you said you can spend."


def test_a_unit_without_heat_is_said_to_cool_only(result, look):
    assert gaps.shortcoming(result, Alternative.WINDOW_UNITS, look).startswith("Cools only")


def test_cooling_only_is_no_shortcoming_where_no_heat_is_asked_for(result, look):
    mild = replace(result, need_heat_kwh=np.zeros((1, 12)))
    assert gaps.shortcoming(mild, Alternative.WINDOW_UNITS, look) == "Leaves nothing out that you asked for."


def test_keeping_what_there_is_tells_its_hot_hours(result, look):
    assert "too warm for about 380 hours a year" in gaps.shortcoming(result, Alternative.KEEP_AS_IS, look)


@pytest.mark.parametrize(("left_kg", "is_told"), [(0.99, False), (1.0, True), (1.01, True)])
def test_moisture_left_is_told_from_one_kilogram_on(result, look, left_kg, is_told):
    damp = builders.with_way(result, WINDOW, unmet_moisture_kg_per_yr=np.array([left_kg]))
    found = " ".join(gaps.shortcomings(damp, Alternative.WINDOW_UNITS, look))
    assert ("of moisture a year" in found) == is_told


def test_a_closed_door_is_told_of_units_that_serve_one_room(result, look):
    line = "Bedroom stays warm: its door is usually closed, so one indoor unit can't be counted on there."
    assert line in gaps.shortcomings(result, Alternative.SELF_INSTALL, look)
    assert line not in gaps.shortcomings(result, Alternative.WINDOW_UNITS, look)


def test_open_doors_need_no_line(result):
    rooms = replace(result.rooms, is_served=np.array([True, True]))
    assert gaps.closed_door_lines(replace(result, rooms=rooms)) == []


@pytest.mark.parametrize("name", ALTERNATIVES)
@pytest.mark.parametrize("base", [KEEP, WINDOW, HIRED])
def test_a_payback_always_says_against_what(name, base):
    text = money.payback_text(builders.result(base=base), name)
    assert f"“{NAMES[ALTERNATIVES[base]]}”" in text


def test_a_payback_tells_the_extra_money_and_the_years(result):
    text = money.payback_text(result, Alternative.SELF_INSTALL)
    assert text == "Against “New window units” the extra $3,320 at the start comes back in about 5 years."


def test_a_payback_that_never_comes_is_told_with_the_years_looked_at(result):
    none = np.zeros((4, 1), dtype=np.bool_)
    never = replace(result, measures=replace(result.measures, simple_payback_exists=none))
    assert "does not come back within 15 years" in money.payback_text(never, Alternative.SELF_INSTALL)


def test_a_payback_undone_later_says_so(result):
    undone = np.ones((4, 1), dtype=np.bool_)
    shaky = replace(result, measures=replace(result.measures, simple_payback_is_undone=undone))
    assert "until a later cost takes it out again" in money.payback_text(shaky, Alternative.SELF_INSTALL)


def test_a_cheaper_start_has_nothing_to_pay_back(result):
    assert "nothing to pay back" in money.payback_text(result, Alternative.KEEP_AS_IS)


def test_own_hours_pay_what_hiring_costs_more_in_cash(result):
    # (7,210 - (3,770 - 100 of incentive)) / 26 h = 136 a h
    assert money.own_time_text(result).startswith("Your own 26 hours pay about $140 each compared with hiring")


def test_own_hours_that_save_nothing_are_not_praised(result):
    dear = builders.with_way(result, SELF, cash_first_cost_usd=np.array([9000.0]))
    assert money.own_time_text(dear) == "Your own 26 hours save nothing compared with hiring."


def test_hours_that_hiring_takes_as_well_are_not_paid_for(result):
    # (7,210 - 3,670) / (26 - 4) h = 161 an hour
    both = builders.with_way(result, HIRED, own_hours_h=np.array([4.0]))
    assert money.own_time_text(both).startswith("The 22 hours that you put in beyond what hiring takes pay about $160")
    assert money.own_time_text(builders.with_way(result, HIRED, own_hours_h=np.array([30.0]))) == ""


def test_without_own_hours_nothing_is_said_of_them(result):
    assert money.own_time_text(builders.with_way(result, SELF, own_hours_h=np.zeros(1))) == ""


def test_the_most_cash_comes_from_the_draws(result):
    assert money.most_cash_text(np.arange(1000.0, 1101.0)).endswith("$1,100.")
    # 95 % of the way from 1,000 to 1,100 is 1,095, to the nearest ten 1,100.
    assert (
        money.most_cash_text(result.alternatives[SELF].cash_first_cost_usd)
        == "The cash you should expect to need is $3,770."
    )


def test_a_sum_that_most_tries_pass_is_told_with_the_middle_of_the_tries():
    tries = np.arange(1000.0, 1100.0)
    assert money.leaning_text(1033.0, tries).endswith("half the tries come to more than $1,050.")
    assert money.leaning_text(1034.0, tries) == ""


def test_reasons_are_told_in_the_order_of_the_verdict(result):
    found = replace(builders.verdict(result), reasons=((), (), ("not_allowed", "late"), ()))
    text = standing.gate_text(found, Alternative.SELF_INSTALL)
    assert text == "“Put it in yourself”: it is not allowed here and it comes after this year's hot season."
    assert standing.gate_text(found, Alternative.KEEP_AS_IS) == ""


def test_every_standing_and_reason_has_words():
    assert set(standing.STANDING_WORDS) == set(Standing)
    assert set(standing.ASIDE_WORDS) < set(standing.REASON_WORDS)
