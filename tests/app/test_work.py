"""The work page: re-assign a task and see what moves, locks with their reasons, tools, and it survives a walk."""

import re

from econ.report.numbers import MINUS

TOTALS = re.compile(r'<div class="totals".*?</div>')


def totals(screen):
    return TOTALS.search(screen.html).group()


def said(screen, path):
    section, field = path.split(".")
    return getattr(getattr(screen.app.session_state["case"], section), field)


def test_a_task_given_away_moves_cash_hours_and_date_in_the_same_view(ready):
    before = totals(ready.go("work"))
    after = totals(ready.choose("w_task_line_set", "contractor"))
    assert before != after
    assert re.search(r'Cash \$[\d,]+ <span class="moved">\+\$\d+</span>', after)
    assert re.search(rf'your time [\d.]+ h <span class="moved">{MINUS}[\d.]+ h</span>', after)
    assert "Was: me." in ready.html


def test_marks_stand_until_the_next_change_and_go_with_the_page(ready):
    ready.go("work").choose("w_task_line_set", "contractor").choose("w_units", "si")
    assert "moved" in totals(ready)
    ready.go("room").go("work")
    assert "moved" not in totals(ready)


def test_taking_a_change_back_marks_the_way_back(ready):
    before = totals(ready.go("work"))
    ready.choose("w_task_line_set", "contractor")
    next(button for button in ready.app.button if button.label == "Undo").click().run()
    plain = re.sub(r' <span class="moved">.*?</span>', "", totals(ready))
    assert plain == before
    assert f'<span class="moved">{MINUS}$' in totals(ready)


def test_a_locked_cell_keeps_the_task_where_it_is_and_says_why(ready):
    ready.go("work").choose("w_task_circuit", "self")
    assert said(ready, "work.parties") is None
    assert ready.app.button_group(key="w_task_circuit").value == "electrician"
    assert "Not given to me, it is locked: Electrical work needs a licensed electrician" in ready.html


def test_locks_stand_beside_their_tasks_without_a_tap(ready):
    html = ready.go("work").html
    assert html.count("Locked for you: Electrical work needs a licensed electrician") == 3
    assert '.st-key-task_circuit [data-testid="stButtonGroup"] button:nth-of-type(1)' in html


def test_one_tap_boards_are_kept_over_a_walk(ready):
    ready.go("work").click("split_All hired").go("room").go("work")
    parties = dict(said(ready, "work.parties"))
    assert (parties["wall_hole"], parties["circuit"], parties["inspection"]) == ("contractor", "electrician", "self")
    ready.click("split_All me that may be")
    assert dict(said(ready, "work.parties"))["wall_hole"] == "self"
    ready.click("split_usual")
    assert said(ready, "work.parties") is None


def test_a_given_task_survives_a_walk_and_a_reload(ready):
    ready.go("work").choose("w_task_wall_hole", "contractor").go("answer").go("work")
    assert ready.app.button_group(key="w_task_wall_hole").value == "contractor"
    assert ready.reloaded().go("work").app.button_group(key="w_task_wall_hole").value == "contractor"


def test_a_change_on_the_board_is_one_step_of_undo(ready):
    ready.go("work").click("split_All hired")
    next(button for button in ready.app.button if button.label == "Undo").click().run()
    assert said(ready, "work.parties") is None


def test_the_board_adds_up_to_the_cash_told(ready):
    html = ready.go("work").html
    together = re.search(r'Together</div><div class="own">[\d.]+ h</div><div class="cash">\$([\d,]+)<', html).group(1)
    told = re.search(r"Cash \$([\d,]+)<", totals(ready)).group(1)
    assert round(int(together.replace(",", "")), -1) == int(told.replace(",", ""))


def test_a_tool_that_is_there_costs_nothing_and_borrowing_is_an_answer_too(ready):
    ready.go("work").choose("w_tool_dust_extractor", "borrow")
    assert said(ready, "work.tools_borrowed") == ("dust_extractor",)
    assert "Borrow: fine-dust (HEPA) extractor." in ready.html
    ready.choose("w_tool_dust_extractor", "have")
    assert said(ready, "work.tools_borrowed") is None
    assert "dust_extractor" in said(ready, "work.tools_owned")
    ready.choose("w_tool_dust_extractor", None)
    assert said(ready, "work.tools_owned") == ("level_stud_finder",)


def test_a_tool_that_is_not_needed_now_can_be_ticked_too(ready):
    ready.go("work").choose("w_tools_other", ["extension_ladder"])
    assert set(said(ready, "work.tools_owned")) == {"level_stud_finder", "extension_ladder"}


def test_a_tap_sets_what_an_hour_is_worth_and_tells_the_answer_at_nothing(ready):
    assert "If your hours counted for nothing, the cheapest way would still be" in ready.go("work").html
    ready.choose("w_hour_taps", 40.0)
    assert said(ready, "work.hour_value_usd_per_h").likely == 40.0
    assert ready.typed("w_work_hour_value_usd_per_h") == "40"
    ready.type("w_work_hour_value_usd_per_h", "33")
    assert ready.app.button_group(key="w_hour_taps").value is None
    ready.choose("w_hour_taps", 0.0)
    assert "counted for nothing" not in ready.html


def test_a_wall_and_lines_that_do_not_fit_are_told_with_what_would(ready):
    ready.go("work").type("w_site_wall_thickness_m", "30").type("w_site_line_run_m", "31")
    assert "25 ft line set, 31 ft needed: bring the units 6 ft closer" in ready.html
    assert re.search(r"The bit takes \d bites to pass it", ready.html)


def test_the_site_from_above_names_what_nobody_has_measured(ready):
    assert "Not measured yet: gas meter or regulator" in ready.go("work").html


def test_who_would_finish_the_kit_is_asked_and_priced_both_ways(ready):
    ready.go("work")
    assert "No task of yours waits for a contractor" in ready.html
    ready.choose("w_task_connect_lines", "contractor")
    assert "If a contractor takes on your kit: $" in ready.html
    assert "If none does: those tasks are yours again: $" in ready.html
    ready.choose("w_work_contractor_finishes", "yes")
    assert said(ready, "work.contractor_finishes") == "yes"
    assert "If none does" not in ready.html


def test_plan_b_stands_on_the_page_with_who_cost_and_days(ready):
    html = ready.go("work").html
    assert "Set aside, chance times cost: $" in html
    assert all(words in html for words in ("Line kinked or crushed", "Days later", "Firm closes before the warranty"))


def test_what_was_done_before_moves_the_hours_and_opens_no_lock(ready):
    before = totals(ready.go("work"))
    ready.choose("w_work_skill_masonry", "no")
    assert re.search(r'your time [\d.]+ h <span class="moved">\+[\d.]+ h</span>', totals(ready))
    assert ready.html.count("Locked for you: Electrical work needs a licensed electrician") == 3
    ready.go("room").go("work").choose("w_work_skill_masonry", "a_little")
    assert (
        re.search(r"your time ([\d.]+) h", totals(ready)).group() == re.search(r"your time ([\d.]+) h", before).group()
    )


def test_a_quote_is_set_beside_the_job_built_up_from_own_items(ready):
    html = ready.go("work").html
    assert re.search(r"With all it lacks, taxes and your own outlays the quote comes to \$[\d,]+, about as much", html)
    ready.type("w_quote_total_usd", "20000")
    assert "more than the $" in ready.html
    ready.type("w_quote_total_usd", "")
    assert "Without a quote hiring is built up from this program&#x27;s own items: $" in ready.html


def test_a_way_that_is_locked_says_so_first_with_its_reason(ready):
    ready.go("work").choose("w_site_owner_may_mechanical", "no")
    assert "Locked: mechanical work here is for a licensed contractor, owners included." in ready.html
    assert "tasks are not yours to do here. See “Hire it out”." in ready.html
    assert "The best split with" not in ready.html


def test_a_handyman_is_called_so_on_the_board_and_takes_a_task_alone(ready):
    ready.go("work").choose("w_work_helper", "handyman").choose("w_task_line_set", "helper")
    assert "Handyman" in ready.app.button_group(key="w_task_line_set").options
    assert "A handyman does part of the work" in ready.html


def test_every_row_says_whose_choice_its_hands_are(ready):
    usual, yours = '<span class="state usual"><b>usual</b></span>', '<span class="state yours"><b>you said</b></span>'
    assert yours not in ready.go("work").html
    before = ready.html.count(usual)
    ready.choose("w_task_wall_hole", "contractor")
    assert (ready.html.count(yours), ready.html.count(usual)) == (1, before - 1)
