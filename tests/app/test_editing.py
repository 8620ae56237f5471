"""What is typed stays, is saved before it is drawn, can be taken back, and is refused in words."""

import re

from tests.app.screen import PAGES, STATION

AREA = "w_rooms_0_floor_area_m2"
KIT_PRICE = "w_kit_price_usd"


def test_edit_survives_going_elsewhere_and_back(ready):
    ready.go("room").type(AREA, "700").go("work").go("room")
    assert ready.typed(AREA) == "700"


def test_edit_survives_a_walk_over_every_page(ready):
    ready.go("equipment").type(KIT_PRICE, "2345")
    for page in PAGES:
        ready.go(page)
    assert ready.go("equipment").typed(KIT_PRICE) == "2345"


def test_edit_survives_a_reload(ready):
    ready.go("room").type(AREA, "700")
    assert ready.reloaded().go("room").typed(AREA) == "700"


def test_answers_given_before_the_town_survive_a_reload(screen):
    screen.type(AREA, "300")
    assert screen.reloaded().typed(AREA) == "300"


def test_address_of_no_saved_case_says_so_and_opens_nothing(ready):
    ready.app.query_params["case"] = "999"
    again = ready.reloaded()
    assert "Case 999 is not here" in again.app.warning[0].value
    assert again.app.session_state["saved"] is None
    assert not again.app.session_state["case"].place.station


def test_notice_of_a_case_that_is_not_here_goes_once_another_is_opened(ready):
    ready.app.query_params["case"] = "999"
    again = ready.reloaded().go("cases").click("open_1")
    assert not again.app.warning


def test_fresh_browser_says_which_case_it_opened_and_offers_a_new_one(ready):
    del ready.app.query_params["case"]
    again = ready.reloaded()
    assert "Opened your last case: <b>" in again.html
    again.click("start_new_one")
    assert again.app.session_state["saved"] is None
    assert "Opened your last case" not in again.html


def test_case_asked_for_by_its_address_opens_without_a_word(ready):
    assert "Opened your last case" not in ready.reloaded().html


def test_list_says_when_each_case_was_saved_last_changed_first(ready):
    ready.go("cases").click("copy_1").go("room").type(AREA, "700").go("cases")
    assert len(re.findall(r'class="when">saved \w{3} \d+ \w+(?: \d{4})? \d\d:\d\d<', ready.html)) == 2
    assert [button.key for button in ready.app.button if str(button.key).startswith("open_")] == ["open_2", "open_1"]


def test_edit_moves_the_strip_in_the_same_view(ready):
    before = ready.go("equipment").strip
    assert ready.type(KIT_PRICE, "4000").strip != before


def test_range_typed_in_one_line_is_kept_as_low_likely_and_high(ready):
    ready.go("equipment").type(KIT_PRICE, "1,900 (1700 to 2,200)")
    assert ready.typed(KIT_PRICE) == "1900 (1700 to 2200)"


def test_percent_sign_is_understood(ready):
    ready.go("place").type("w_money_discount_rate_real_frac", "6 %")
    assert ready.app.session_state["case"].money.discount_rate_real_frac.likely == 0.06


def test_dont_know_is_one_tap_and_says_what_is_assumed(ready):
    ready.go("room").click("b_rooms_0_floor_area_m2")
    assert ready.app.session_state["case"].rooms[0].floor_area_m2.is_unknown
    assert '<div class="state not_known"><b>not known</b>: we assume' in ready.html


def test_dont_know_can_be_undone_to_what_was_said(ready):
    ready.go("room").type(AREA, "700").click("b_rooms_0_floor_area_m2").click("b_rooms_0_floor_area_m2")
    assert ready.typed(AREA) == "700"


def test_emptied_field_goes_back_to_its_usual_value(ready):
    ready.go("equipment").type(KIT_PRICE, "")
    assert ready.app.session_state["case"].kit.price_usd is None
    assert ready.app.text_input(key=KIT_PRICE).placeholder.startswith("$")


def test_choice_tapped_again_goes_back_to_its_usual_value(ready):
    ready.go("room").choose("w_use_dry", None)
    assert ready.app.session_state["case"].use.dry is None


def test_negative_area_is_refused_beside_its_field_with_what_is_allowed(ready):
    ready.go("room").type(AREA, "-4")
    assert ready.typed(AREA) == "-4"
    assert "Not taken: “-4”.</b> Too small: the least allowed here is 10.8 ft²." in ready.html
    assert "**" not in ready.html


def test_refusal_in_si_speaks_square_metres(ready):
    ready.go("room").choose("w_units", "si").type(AREA, "1e9")
    assert "Too large: the most allowed here is 1,000 m²." in ready.html


def test_beside_a_refused_entry_stands_the_good_answer_that_is_kept(ready):
    ready.go("room").type(AREA, "green")
    assert '<div class="state refused"><b>not taken</b>: last good answer kept, 624 ft²</div>' in ready.html


def test_a_feet_and_inches_entry_is_taken_and_shown_in_feet(ready):
    ready.go("room").type("w_rooms_0_ceiling_height_m", "7 ft 6 in")
    assert ready.typed("w_rooms_0_ceiling_height_m") == "7.5"


def test_source_of_a_usual_value_is_a_short_phrase_with_the_whole_beneath(ready):
    html = ready.go("place").html
    assert '<details class="source"><summary title="US EIA' in html


def test_usual_value_that_is_not_known_says_so_before_its_source(ready):
    html = ready.go("work").html
    assert "<b>usual value</b>: not known " in html
    assert "<b>usual value</b> <details" not in html


def test_date_left_empty_says_how_it_is_taken(ready):
    assert ready.go("place").app.text_input(key="w_place_decision_date").placeholder == "today"


def test_refused_entry_leaves_case_and_answer_as_they_were(ready):
    before = ready.go("room").strip
    ready.type(AREA, "green")
    assert ready.strip == before
    assert ready.app.session_state["case"].rooms[0].floor_area_m2.written == "624 ft**2"


def test_refusal_goes_away_once_a_good_value_is_typed(ready):
    ready.go("room").type(AREA, "green").type(AREA, "600")
    assert "Not taken" not in ready.html


def test_unit_switch_shows_the_same_room_in_square_metres(ready):
    ready.go("room").type(AREA, "1000").choose("w_units", "si")
    assert ready.typed(AREA) == "92.903"


def test_unit_switch_never_writes_the_case(ready):
    before = ready.app.session_state["case"]
    ready.go("room").choose("w_units", "si").choose("w_units", "us")
    assert ready.app.session_state["case"] == before


def test_unit_typed_by_hand_is_taken_in_either_display(ready):
    ready.go("room").type(AREA, "50 m2")
    assert ready.app.session_state["case"].rooms[0].floor_area_m2.likely == 50.0


def test_undo_takes_the_last_change_back_and_redo_brings_it_again(ready):
    ready.go("room").type(AREA, "700")
    undo, redo = (next(button for button in ready.app.button if button.label == word) for word in ("Undo", "Redo"))
    undo.click().run()
    assert ready.typed(AREA) == "624"
    redo = next(button for button in ready.app.button if button.label == "Redo")
    redo.click().run()
    assert ready.typed(AREA) == "700"


def test_two_tabs_are_told_when_both_change_the_same_case(ready):
    other = ready.reloaded()
    ready.go("room").type(AREA, "700")
    other.go("room").type(AREA, "800")
    assert any("changed in another tab" in warning.value for warning in other.app.warning)


def test_a_room_can_be_added_and_named(ready):
    ready.go("room")
    next(button for button in ready.app.button if button.label == "Add a room").click().run()
    ready.type("w_rooms_2_name", "Study")
    assert ready.app.session_state["case"].rooms[2].name == "Study"


def test_task_given_to_another_party_is_kept(ready):
    ready.go("work").choose("w_task_wall_hole", "contractor")
    assert dict(ready.app.session_state["case"].work.parties)["wall_hole"] == "contractor"


def test_the_plan_for_tools_is_told_and_follows_what_is_owned(ready):
    assert "You have: level, stud finder, tape." in ready.go("work").html
    ready.choose("w_tool_multimeter", "have")
    assert "You have: level, stud finder, tape; multimeter and contactless tester." in ready.html


def test_best_split_gives_every_task_to_somebody_and_is_kept(ready):
    ready.go("work").click("split_best").go("room").go("work")
    parties = dict(ready.app.session_state["case"].work.parties)
    assert parties["circuit"] == "electrician"
    assert parties["survey"] == "self"
    assert len(parties) >= 10


def test_new_case_is_not_saved_before_its_first_answer(screen):
    assert screen.app.session_state["saved"] is None
    screen.app.selectbox(key="w_place_station").set_value(STATION).run()
    assert screen.app.session_state["saved"].case_id == 1


def test_copy_of_a_case_leaves_the_first_as_it_was(ready):
    ready.go("cases").click("copy_1").go("room").type(AREA, "700")
    ready.go("cases").click("open_1").go("room")
    assert ready.typed(AREA) == "624"


def test_deleted_case_can_be_brought_back(ready):
    ready.go("cases").click("delete_1").click("back_1")
    assert ready.app.button(key="open_1")


def test_case_file_with_faults_lists_every_one_and_opens_nothing(ready):
    ready.go("cases")
    broken = b'[place]\nstation = "Nowhere, XX"\n[[rooms]]\nfloor_area_m2 = "-4 ft**2"\n'
    ready.app.file_uploader(key="w_file").upload("case.toml", broken, "application/toml").run()
    assert "place.station" in ready.html
    assert "rooms[0].floor_area_m2" in ready.html


def test_run_that_follows_an_edit_overwrites_no_other_field(ready):
    ready.go("room").type("w_rooms_0_floor_area_m2", "650")
    others = [field.proto for field in ready.app.text_input if field.key != "w_rooms_0_floor_area_m2"]
    assert len(others) > 3
    assert not any(proto.set_value for proto in others)
