"""Every page opens, with nothing answered and with a whole case, and shows what it is for."""

import pytest

from tests.app.screen import FULL_DRAWS, PAGES, STATION


@pytest.mark.parametrize("page", PAGES)
def test_page_opens_with_nothing_answered(screen, page):
    screen.go(page)
    assert screen.app.title[0].value.endswith("?")


@pytest.mark.parametrize("page", PAGES)
def test_page_opens_with_a_whole_case(ready, page):
    ready.go(page)
    assert ready.app.title[0].value.endswith("?")


@pytest.mark.parametrize("page", PAGES)
def test_strip_names_the_four_ways_on_every_page(ready, page):
    strip = ready.go(page).strip
    for name in ("Keep what you have", "New window units", "Put it in yourself", "Hire it out"):
        assert name in strip


@pytest.mark.parametrize("key", ["garage_studio_hot", "sunroom_with_quote", "top_floor_flat"])
def test_ready_made_case_opens_on_its_answer(screen, key):
    screen.click(f"ready_{key}")
    assert 'class="cards"' in screen.html


def test_answer_page_shows_the_verdict_before_the_cards(ready):
    html = ready.go("answer").html
    assert 0 < html.index('class="verdict"') < html.index('class="cards"')


def test_answer_page_ends_on_the_full_number_of_tries(ready):
    assert f"{FULL_DRAWS} tries" in ready.go("answer").html


def test_flat_that_may_not_be_done_by_oneself_is_told_so(screen):
    screen.click("ready_top_floor_flat")
    assert "Don&#x27;t put this in yourself" in screen.html


def test_work_page_shows_a_row_for_each_task(ready):
    rows = [group for group in ready.go("work").app.button_group if str(group.key).startswith("w_task_")]
    assert len(rows) >= 10


def test_answer_page_without_a_town_asks_for_the_four_things(screen):
    screen.go("answer")
    assert screen.app.selectbox(key="w_place_station").options
    assert screen.app.text_input(key="w_rooms_0_floor_area_m2")


def test_choosing_a_town_on_the_first_look_is_enough_for_an_answer(screen):
    screen.app.selectbox(key="w_place_station").set_value(STATION).run()
    screen.click("onward")
    assert "Which one" in screen.app.title[0].value
    assert 'class="cards"' in screen.html


def test_expert_fields_of_another_heat_source_are_not_asked(ready):
    ready.go("place")
    keys = {field.key for field in ready.app.text_input}
    assert "w_prices_electricity_usd_per_kwh" in keys
    assert "w_prices_propane_usd_per_gal" not in keys


def test_price_of_a_fuel_is_asked_once_it_heats_the_room(ready):
    ready.go("place").choose("w_now_heat", "propane")
    assert "w_prices_propane_usd_per_gal" in {field.key for field in ready.app.text_input}


def test_figures_page_opens_every_input_with_its_source(ready):
    table = ready.go("figures").app.dataframe
    inputs = next(part.value for part in table if "Input" in part.value.columns)
    assert {"kit.price_usd", "costs.ground_pad_usd"} <= set(inputs["Input"])
    assert all(inputs["Source"])


def test_a_figure_that_no_form_asks_for_can_be_changed_and_put_back(ready):
    ready.go("figures")
    ready.app.selectbox(key="w_changed_path").set_value("costs.ground_pad_usd").run()
    ready.type("w_changed_value", "45")
    inputs = next(part.value for part in ready.app.dataframe if "Input" in part.value.columns)
    row = inputs[inputs["Input"] == "costs.ground_pad_usd"].iloc[0]
    assert (row["Likely"], row["Whose"]) == ("45", "you said")
    ready.click(next(button.key for button in ready.app.button if button.label == "Back to the usual value"))
    inputs = next(part.value for part in ready.app.dataframe if "Input" in part.value.columns)
    assert inputs[inputs["Input"] == "costs.ground_pad_usd"].iloc[0]["Whose"] == "usual value"


def test_equipment_page_says_why_a_size_is_what_it_is(ready):
    assert "times as much" in ready.go("equipment").html


def test_answer_page_says_what_to_find_out_and_what_is_not_counted(ready):
    html = ready.go("answer").html
    assert "Find this out first" in [part.value for part in ready.app.subheader]
    assert 'class="finds"' in html or "would change the choice" in html
    assert "Not counted in any figure: noise" in html


def test_what_the_others_are_compared_with_is_chosen_on_the_answer_page(ready):
    ready.go("answer").choose("w_money_base_case", "keep_as_is")
    [compared] = [part.value for part in ready.app.dataframe if "Keep what you have (base)" in part.value.columns]
    assert compared["Keep what you have (base)"].tolist()[8] == "$0"


def test_a_wait_stands_on_the_board_without_an_owner(ready):
    ready.go("work")
    assert "Wait for the electrician: " in ready.html
    keys = {str(group.key) for group in ready.app.button_group}
    assert not keys & {"w_task_book_electrician", "w_task_permit_granted"}
    assert "w_task_wall_hole" in keys


def test_what_the_quote_does_not_say_is_told_with_its_amount_on_the_work_page(ready):
    assert "does not say whether it includes the circuit: the whole of it, $" in ready.go("work").html
