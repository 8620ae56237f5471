"""Every page opens, with nothing answered and with a whole case, and shows what it is for."""

from datetime import date

import pytest

from econ.ui import cached
from tests.app.screen import FULL_DRAWS, PAGES, STATION
from tests.demo import demo_case


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


def test_a_headline_figure_opens_to_value_range_formula_and_source(ready):
    ready.go("figures")
    assert "Cash now, put it in yourself: $" in ready.html
    assert "Nine tries of ten: $" in ready.html
    ready.app.selectbox(key="w_headline_figure").set_value("lcc_usd").run()
    assert "divided by (1 + rate)^t" in ready.html
    assert "10 CFR 436.19" in ready.html


def test_every_figure_of_cards_and_strip_opens_where_it_stands(ready):
    html = ready.go("answer").html
    cards = html[html.index('class="cards"') :]
    assert cards.count('<details class="opens" name="cards">') == 4 * 5
    assert ready.strip.count('<details class="opens" name="strip">') == 4 * 2
    assert "open=annualised_cost_usd_per_yr&amp;way=self_install" in cards
    assert "Every line of first cost that is paid in money" in cards
    assert "Nine tries of ten: $" in cards


def test_an_address_that_names_a_figure_opens_it(ready):
    ready.go("figures")
    ready.app.query_params.update({"open": "own_hours_h", "way": "window_units"})
    ready.app.run()
    assert "Your hours, new window units: " in ready.html


def opened_figures(screen):
    return next(part.value for part in screen.app.dataframe if "In the case file" in part.value.columns)


def line_of(screen, path):
    table = opened_figures(screen)
    return table[table["In the case file"] == path].iloc[0]


def test_figures_page_opens_every_figure_in_words_with_its_source(ready):
    ready.go("figures")
    table = opened_figures(ready)
    sheet = cached.answer(demo_case("lower_level_cold"), date.today(), 0).sheet
    assert set(table["In the case file"]) == set(sheet.path)
    assert all(table["What"])
    assert not any("_" in words for words in table["What"])
    assert all(table["Source"])
    assert line_of(ready, "kit.price_usd")["What"] == "Kit: price of the kit"


def test_figures_are_shown_in_the_units_on_screen(ready):
    row = line_of(ready.go("figures"), "rooms[0].floor_area_m2")
    assert (row["Likely"], row["Unit"]) == ("624", "ft²")
    ready.choose("w_units", "si")
    row = line_of(ready, "rooms[0].floor_area_m2")
    assert (float(row["Likely"]), row["Unit"]) == (pytest.approx(624 * 0.3048**2, abs=5e-4), "m²")


def test_figures_are_found_by_words_and_kept_to_a_topic(ready):
    ready.go("figures").type("w_opened_input", "ground pad")
    assert "costs.ground_pad_usd" in set(opened_figures(ready)["In the case file"])
    ready.type("w_opened_input", "")
    ready.app.selectbox(key="w_opened_topic").set_value("Kit").run()
    assert {path.partition(".")[0] for path in opened_figures(ready)["In the case file"]} == {"kit"}


def test_search_that_finds_nothing_says_so(ready):
    assert "Nothing here is called “zebra”" in ready.go("figures").type("w_opened_input", "zebra").html


def test_a_figure_that_no_form_asks_for_can_be_changed_and_put_back(ready):
    ready.go("figures")
    ready.app.selectbox(key="w_changed_path").set_value("costs.ground_pad_usd").run()
    ready.type("w_changed_value", "$45")
    row = line_of(ready, "costs.ground_pad_usd")
    assert (row["Likely"], row["Whose"]) == ("45", "you said")
    ready.click(next(button.key for button in ready.app.button if button.label == "Back to the usual value"))
    assert line_of(ready, "costs.ground_pad_usd")["Whose"] == "usual value"


def test_a_figure_is_changed_in_the_unit_on_screen(ready):
    ready.go("figures")
    ready.app.selectbox(key="w_changed_path").set_value("kit.cutout_c").run()
    ready.type("w_changed_value", "-13")
    assert dict(ready.app.session_state["case"].figures.changed)["kit.cutout_c"].likely == pytest.approx(-25.0)


def test_a_figure_that_cannot_be_read_is_refused_in_words(ready):
    ready.go("figures")
    ready.app.selectbox(key="w_changed_path").set_value("costs.ground_pad_usd").run()
    ready.type("w_changed_value", "cheap")
    assert "Not taken: “cheap”.</b> It is no number." in ready.html


def test_equipment_page_says_why_a_size_is_what_it_is(ready):
    assert "times as much" in ready.go("equipment").html


def test_answer_page_says_what_to_find_out_and_what_is_not_counted(ready):
    html = ready.go("answer").html
    assert "Find this out first" in [part.value for part in ready.app.subheader]
    assert 'class="finds"' in html or "would change the choice" in html
    assert "Not counted in any figure: noise" in html


def test_what_the_others_are_compared_with_is_chosen_on_the_answer_page(ready):
    ready.go("answer").choose("w_money_base_case", "keep_as_is")
    assert '<th scope="col">Keep what you have (base)</th>' in ready.html
    assert '<th scope="row">Savings against base</th><td class="number">$0</td>' in ready.html


def test_a_wait_stands_on_the_board_without_an_owner(ready):
    ready.go("work")
    assert "Wait for the electrician: " in ready.html
    keys = {str(group.key) for group in ready.app.button_group}
    assert not keys & {"w_task_book_electrician", "w_task_permit_granted"}
    assert "w_task_wall_hole" in keys


def test_what_the_quote_does_not_say_is_told_with_its_amount_on_the_work_page(ready):
    assert "does not say whether it includes the circuit: the whole of it, $" in ready.go("work").html


def test_each_task_tells_what_hiring_it_costs_and_saves_and_the_totals_follow(ready):
    before = ready.go("work").html.split('class="totals"')[1].split("</div>")[0]
    assert " h of yours" in ready.html
    ready.choose("w_task_wall_hole", "contractor")
    assert ready.html.split('class="totals"')[1].split("</div>")[0] != before


def test_any_other_figure_is_told_to_turn_the_choice_or_not(ready):
    ready.go("what_if").app.selectbox(key="w_any_tip").set_value("costs.board_fitted_usd").run()
    assert not ready.app.exception
    assert "control board" in ready.html.lower()
    assert "does not change the choice" in ready.html or "becomes the cheapest" in ready.html
