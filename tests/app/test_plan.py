"""The plan page: what comes next, a stop signed, a step done, and all of it still there after a reload."""

import re
from html import escape

from econ.caution.registry import RULES
from econ.report.words.refusal import COUNTS
from econ.ui import marking

WALL = "drilling.behind_the_wall"
SELF = "Put it in yourself"


def sign(ready, code, who="A. Name", role="owner"):
    ready.app.text_input(key=marking.key(code, "who")).set_value(who)
    ready.app.selectbox(key=marking.key(code, "role")).set_value(role)
    ready.app.button(key=marking.key(code, "sign")).click().run()
    assert not ready.app.exception
    return ready


def ahead(ready):
    """Return how many stops the first line tells of."""
    return COUNTS.index(re.search(r"(\w+) stops? ahead", ready.html)[1])


def plan(ready):
    return ready.go("plan")


def test_the_first_line_says_what_comes_next_and_how_many_stops_lie_ahead(ready):
    plan(ready)
    assert "Next: read the manual, survey and mark out (3 h, you). " in ready.html
    assert ahead(ready) > 1


def test_behind_a_stop_a_step_shows_its_name_and_no_instruction(ready):
    plan(ready)
    held = [part for part in ready.html.split("\n") if 'class="step behind"' in part]
    assert any("Drill the wall for the line set" in part for part in held)
    assert not any("Know what is in and behind the wall" in part for part in held)
    keys = {button.key for button in ready.app.button}
    assert marking.key("survey", "done") in keys
    assert marking.key("wall_hole", "done") not in keys


def test_a_step_that_is_done_makes_room_for_the_next_and_stays_after_a_reload(ready):
    plan(ready).click(marking.key("survey", "done"))
    assert "Next: apply for the permits" in ready.html
    again = plan(ready.reloaded())
    assert "Next: apply for the permits" in again.html
    again.click(marking.key("survey", "again"))
    assert "Next: read the manual" in again.html


def test_a_step_is_not_skipped_without_a_reason(ready):
    plan(ready).click(marking.key("survey", "skipped"))
    assert "reason is missing. Write why the step was skipped." in ready.html
    ready.type(marking.key("survey", "reason"), "Seen last week").click(marking.key("survey", "skipped"))
    assert "Next: apply for the permits" in ready.html


def test_a_stop_wants_a_name_and_opens_when_it_is_signed(ready):
    plan(ready)
    before = ahead(ready)
    sign(ready, WALL, who="")
    assert "who is missing. Write the name of the person who signed." in ready.html
    sign(ready, WALL)
    assert ahead(ready) == before - 1
    again = plan(ready.reloaded())
    assert ahead(again) == before - 1
    assert "Signed by A. Name (you, the owner)" in again.html
    again.click(marking.key("0", "undo"))
    assert ahead(again) == before
    assert "Taken back on" in again.html


def test_a_caution_is_dealt_with_in_words_and_a_note_read(ready):
    plan(ready)
    first = next(button for button in ready.app.button if button.label == "Dealt with")
    ready.click(first.key)
    assert "note is missing. Write how it was dealt with." in ready.html
    ready.type(first.key.replace("_settle", "_note"), "Asked the office").click(first.key)
    assert "Dealt with: Asked the office" in ready.html


def test_other_ways_have_plans_and_keeping_has_none(ready):
    plan(ready).choose("w_plan_way", "window_units")
    assert "Next: buy the units" in ready.html
    ready.choose("w_plan_way", "contracted_install")
    assert "Next: apply for the permits" in ready.html
    assert "in the quote" in ready.html


def test_the_page_waits_for_a_place(screen):
    screen.go("plan")
    assert "A plan follows from a first look" in screen.html


def test_the_answer_shows_five_findings_of_the_leading_way_and_leads_to_all(ready):
    ready.go("answer")
    shown = re.findall(r'class="finding (\w+)"', ready.html)
    assert len(shown) == 5
    assert shown == sorted(shown, key=["hold_point", "caution", "note"].index)
    assert "For “Put it in yourself”, stops first." in ready.html
    links = [part.proto.label for part in ready.app.get("page_link")]
    assert any(re.fullmatch(r"All \d+ in the plan, step by step", label) for label in links)


def test_every_rule_checked_is_told_with_why_it_is_not_raised(ready):
    ready.go("answer")
    counted = [part.label for part in ready.app.expander if part.label.startswith("All rules checked")]
    total, raised = map(int, re.findall(r"\d+", counted[0]))
    assert total > raised > 0
    assert "Why not" in ready.html


def test_a_stop_that_is_signed_is_still_shown_as_a_finding(ready):
    sign(plan(ready), WALL)
    ready.go("answer")
    assert escape(next(rule.message for rule in RULES if rule.code == WALL)) in ready.html


def test_a_step_of_another_way_is_kept_too(ready):
    plan(ready).choose("w_plan_way", "window_units").click(marking.key("buy_carry", "begun"))
    assert "Under way on" in ready.html
    again = plan(ready.reloaded())
    assert again.app.button_group(key="w_plan_way").value == "window_units"
    assert "Under way on" in again.html


def test_a_leak_check_is_not_signed_before_its_turn(ready):
    plan(ready)
    keys = {button.key for button in ready.app.button}
    assert marking.key(WALL, "sign") in keys
    assert marking.key("refrigerant.leak_check", "sign") not in keys
    assert "It is signed when its turn comes: first “" in ready.html


def test_what_the_page_recorded_is_told_at_its_end(ready):
    plan(ready)
    assert "What this page changed.</b> Nothing so far." in ready.html
    ready.click(marking.key("survey", "done"))
    assert "Recorded: 1 step. No figure of the comparison moves by it." in ready.html
