"""Dates and waiting in words."""

from dataclasses import replace

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.kernel.alternative import HIRED, KEEP, SELF, Alternative
from econ.report.plain import compare_json
from econ.report.terminal import compare_text, look_of
from econ.report.words import waiting
from econ.report.words.gaps import shortcomings
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests import builders
from tests.demo import NAMES, TODAY, demo_answer, demo_case


def test_the_first_cool_day_is_told_with_its_range(result, look):
    told = waiting.cool_day_sentence(result, result.alternatives[SELF], look)
    assert told.startswith(
        "“Put it in yourself” cools from Sat 26 June; if waits and work go quicker or slower, 19 June"
    )
    assert "to 17 July in eight tries of ten. Decide by 12 June to make the summer" in told


def test_a_date_that_does_not_move_has_no_range(result, look):
    fixed = replace(result.first_cool_days, low_d=result.first_cool_days.high_d)
    still = replace(result, first_cool_days=fixed)
    assert waiting.span_text(still, still.alternatives[SELF], look) == ""
    assert "; if waits" not in waiting.cool_day_sentence(still, still.alternatives[SELF], look)


def test_a_range_within_another_year_says_the_year_once(result, look):
    later = replace(look, this_year=2026)
    assert waiting.span_text(result, result.alternatives[SELF], later) == "19 June to 17 July 2027"


def test_what_is_there_already_has_no_first_cool_day(result, look):
    keep = result.alternatives[KEEP]
    assert waiting.cool_day_sentence(result, keep, look) == waiting.chain_text(keep, look) == ""
    assert not waiting.misses_summer(result, keep)


def test_by_when_to_decide_if_waits_run_long(result, look):
    # 60 - 37 = 23 days to spare, 12 June; with the late end of 58 days, 2 days, 22 May.
    told = waiting.summer_text(result, result.alternatives[SELF], look)
    assert told == "decide by 12 June to make the summer, by 22 May if waits run long"


def test_too_late_already_if_waits_run_long(result, look):
    slow = replace(result.first_cool_days, high_d=np.array([np.nan, 14.0, 61.0, 140.0]))
    told = waiting.summer_text(replace(result, first_cool_days=slow), result.alternatives[SELF], look)
    assert told.endswith("decide by 12 June to make the summer, too late already if waits run long")


def test_a_way_after_the_end_of_the_summer_one_is_in_misses_it(result, look):
    # In summer since ten days, which ends in 30; in service on day 37, yet before half of the coming year's heat.
    now = replace(result, waiting=replace(result.waiting, summer_from_d=-10.0, summer_to_d=30.0))
    assert waiting.misses_summer(now, now.alternatives[SELF])
    told = waiting.summer_text(now, now.alternatives[SELF], look)
    assert told.startswith("too late for what is left of this summer, which ends about 19 June")
    assert not waiting.misses_summer(result, result.alternatives[SELF])


def test_where_no_cooling_is_asked_for_nothing_is_said_of_summer(result, look):
    without = builders.with_way(result, SELF, spare_d=np.array([np.nan]))
    assert waiting.summer_text(without, without.alternatives[SELF], look) == ""
    assert "no cooling asked for" in waiting.table(without, look)["Put it in yourself"]


def test_in_summer_one_decides_to_have_any_of_it(result, look):
    # In summer since ten days, to day 50; in service on day 37: 13 days to spare, 2 June.
    now = replace(result, waiting=replace(result.waiting, summer_from_d=-10.0, summer_to_d=50.0))
    told = waiting.summer_text(now, now.alternatives[SELF], look)
    assert told == "decide by 2 June to have any of this summer, too late already if waits run long"


def test_a_way_that_misses_the_summer_says_its_date_among_what_it_does_not_do(result, look):
    late = builders.with_way(result, HIRED, is_in_time=np.array([False]), spare_d=np.array([-36.0]))
    lines = shortcomings(late, Alternative.CONTRACTED_INSTALL, look)
    assert (
        "Cool from Tue 24 August only: too late for the summer, half of it over by 19 July: that took a decision by 14 "
        "April."
    ) in lines


def test_usual_queues_are_told_by_season_from_the_table():
    # Survey visit and start together: 5 + 10, 8 + 18 and 12 + 35 days; decided on 20 May.
    told = waiting.queue_text(demo_answer("lower_level_cold"))
    assert "the contractor, visits and start together, 15, 26, 47 days" in told
    assert "the permit 9 days always" in told
    assert "falls in spring and autumn" in told


def test_a_day_of_waiting_in_the_warmest_month_has_its_hours_and_dollars(result, look):
    # July: 310 hours over 31 days; 155 dollars of hire and electricity over as many.
    told = waiting.worst_day_text(result, look)
    assert told.startswith("A day of waiting in July is 10 hours too warm")
    assert "cost about $5 that day" in told


def test_the_wait_of_a_kit_names_delivery_permit_and_electrician():
    told = waiting.waits_text(demo_answer("sunroom_with_quote").result.alternatives[SELF])
    assert told == (
        "“Put it in yourself” waits 9 days for the permit, 8 days for the electrician, 7 days for delivery and 3 days "
        "for buried lines to be marked, some of it side by side."
    )


def test_the_waits_that_set_the_day_are_named():
    found = demo_answer("lower_level_cold")
    told = waiting.chain_text(found.result.alternatives[HIRED], look_of(found))
    assert told == "With “Hire it out” 5 August hangs on the contractor (77 days): sooner there is sooner cool."


@pytest.mark.parametrize(
    ("days", "words"),
    [("weekends", "Saturdays and Sundays, 6 hours"), ("evenings", "evenings of Monday to Friday"), ("any", "any day")],
)
def test_the_calendar_is_stated_and_holidays_said_to_be_left_out(days, words):
    case = with_value(demo_case("lower_level_cold"), "work.days", days)
    told = waiting.calendar_text(answer(case, load_tables(), TODAY, 0))
    assert words in told
    assert "Public holidays are not counted" in told


@pytest.mark.parametrize("name", NAMES)
def test_screen_and_terminal_say_the_same_of_dates(name):
    found = demo_answer(name)
    printed = " ".join(compare_text(found).split())
    for way in found.result.alternatives:
        assert waiting.cool_day_sentence(found.result, way, look_of(found)) in printed
    assert waiting.calendar_text(found) in printed


def test_dates_and_waiting_are_in_the_plain_object():
    ways = compare_json(demo_answer("lower_level_cold"))["alternatives"]
    assert ways[SELF]["in_service_date_low"] <= ways[SELF]["in_service_date"] <= ways[SELF]["in_service_date_high"]
    assert [way["misses_summer"] for way in ways] == [False, False, False, True]
    assert ways[HIRED]["decide_by_date"] < "2027-05-20" < ways[SELF]["decide_by_date"]
    assert ways[KEEP]["in_service_date_high"] is None
    assert ways[KEEP]["decide_by_date"] is None


def test_keeping_what_cools_now_where_nothing_does_is_said():
    case = with_value(
        with_value(demo_case("sunroom_with_quote"), "now.cooling", "none"), "work.interim", "keep_old_units"
    )
    assert "but you said that nothing is there" in waiting.meanwhile_text(answer(case, load_tables(), TODAY, 0))


def test_every_answer_about_cooling_meanwhile_has_words():
    for said in ("nothing", "keep_old_units", "borrow", "rent_portable", "not_known"):
        case = with_value(demo_case("lower_level_cold"), "work.interim", said)
        assert waiting.meanwhile_text(answer(case, load_tables(), TODAY, 0)).endswith(".")
