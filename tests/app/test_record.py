"""The record on screen: every entry is kept at once, comes back after a reload, and is shown as text."""

import pytest
from streamlit.testing.v1 import AppTest

from econ.case.toml import write_case
from econ.store import cases
from econ.store.connection import store_path
from tests.app.screen import ROOT, Screen
from tests.demo import demo_case

PAGE = str(ROOT / "tests" / "app" / "record_page.py")
PARTS = (
    "x_to_buy_and_to_hire",
    "x_whom_to_phone_and_what_to_ask",
    "x_tests_before_it_is_handed_over",
    "x_who_really_did_what",
    "x_looking_after_it_season_by_season",
    "x_the_first_year_bills_against_the_forecast",
)
WHOM = "w_record_whom"
HOSTILE = ('<script>alert("1")</script> & <b>bold</b>', "=SUM(A1:A9)+cmd|' /C calc'!A0", "x" * 10_000)


@pytest.fixture
def record(tmp_path, monkeypatch):
    """Return a way to open the record with some parts unfolded, as after a reload."""
    monkeypatch.setenv("ECON_STORE", str(tmp_path / "cases.sqlite3"))
    saved = cases.create(store_path(), "Lower level", write_case(demo_case("lower_level_cold")))

    def opened(*parts, way="self_install"):
        app = AppTest.from_file(PAGE, default_timeout=60)
        app.query_params["case"] = saved.address
        app.session_state["way"] = way
        for part in parts:
            app.session_state[part] = True
        app.run()
        assert not app.exception
        return Screen(app)

    return opened


def test_folded_parts_draw_nothing(record):
    screen = record()
    assert "To take along, and to keep" in [each.value for each in screen.app.subheader]
    assert not screen.app.text_area


@pytest.mark.parametrize("way", ["window_units", "self_install", "contracted_install"])
def test_every_part_opens_for_every_way(record, way):
    assert "It is not proof of compliance" in record(*PARTS, way=way).html


def test_the_shopping_list_and_the_hire_list_are_tables(record):
    html = record(PARTS[0]).html
    assert "Ductless kit" in html
    assert "SDS-plus rotary hammer" in html
    assert "Estimated" in html
    assert "measured" not in html


@pytest.mark.parametrize("text", HOSTILE)
def test_answers_by_phone_survive_a_reload_and_stay_text(record, text):
    screen = record(PARTS[1])
    screen.app.text_area(key="w_phone_answers_permit_needed").set_value(text).run()
    assert not screen.app.exception
    assert "Permit office (1 of 8)" in screen.app.button_group(key=WHOM).options
    screen.choose(WHOM, "electrician").type("w_phone_spoke_to_electrician", text[:200])
    again = record(PARTS[1])
    assert again.app.text_area(key="w_phone_answers_permit_needed").value == text
    assert again.choose(WHOM, "electrician").typed("w_phone_spoke_to_electrician") == text[:200]
    assert "<script>alert" not in again.html


def test_what_the_permit_office_says_moves_the_case_from_the_card(record):
    screen = record(PARTS[1]).choose("w_site_owner_may_electrical", "yes")
    again = record(PARTS[1])
    assert again.app.button_group(key="w_site_owner_may_electrical").value == "yes"
    assert screen.strip != record(PARTS[1]).choose("w_site_permit", "not_needed").strip


def test_readings_are_kept_in_the_unit_on_screen_and_placed_on_the_band(record):
    screen = record(PARTS[2])
    screen.choose("w_tests_mode", "test_mode").choose("w_tests_running", "cooling")
    for key, text in (("minutes_min", "20"), ("return_c", "76"), ("supply_c", "55")):
        screen.type(f"w_tests_{key}", text)
    assert "it lies inside" in screen.html
    again = record(PARTS[2])
    assert again.typed("w_tests_supply_c") == "55"
    assert "21.0 °F colder" in again.html


def test_no_band_is_drawn_where_it_is_not_known_how_the_unit_ran(record):
    screen = record(PARTS[2])
    screen.choose("w_tests_mode", "not_known").type("w_tests_return_c", "76").type("w_tests_supply_c", "55")
    assert "No band is shown" in screen.html
    assert "Air blown out against air drawn in" not in screen.html


def test_what_is_refused_stays_in_its_box_with_the_reason(record):
    screen = record(PARTS[2]).type("w_tests_volts_v", "12")
    assert "90" in screen.html
    assert "Not taken" in screen.html
    assert screen.typed("w_tests_volts_v") == "12"


def test_a_leaking_joint_stops_the_unit_on_screen(record):
    screen = record(PARTS[2])
    screen.app.selectbox(key="w_tests_joints_indoor_wide_1_at_once").set_value("leaks").run()
    assert "Stop: indoors, thick pipe leaks" in screen.html
    assert record(PARTS[2]).app.selectbox(key="w_tests_joints_indoor_wide_1_at_once").value == "leaks"


def test_the_first_entry_says_which_way_was_gone(record):
    screen = record(PARTS[3], way="contracted_install")
    screen.app.text_area(key="w_as_built_equipment").set_value("Maker X, 18k").run()
    again = record(PARTS[3])
    assert again.app.selectbox(key="w_as_built_way").value == "contracted_install"
    assert again.app.text_area(key="w_as_built_equipment").value == "Maker X, 18k"


def test_work_done_is_entered_task_by_task_and_summed_beside_the_estimate(record):
    screen = record(PARTS[3])
    screen.app.selectbox(key="w_record_task").set_value("wall_hole").run()
    screen.type("w_as_built_done_by_wall_hole", "me").type("w_as_built_hours_h_wall_hole", "3.5")
    screen.type("w_as_built_cost_usd_wall_hole", "$60")
    assert "Entered so far: 3.5 hours and $60. Estimated before the work" in screen.html
    assert "3.5" in record(PARTS[3]).html


def test_photos_ticked_are_kept(record):
    screen = record(PARTS[2])
    screen.app.button_group(key="w_tests_photos").set_value(["panel", "drain_end"]).run()
    assert not screen.app.exception
    assert list(record(PARTS[2]).app.button_group(key="w_tests_photos").value) == ["panel", "drain_end"]


def test_bills_since_are_set_against_the_forecast_or_told_why_not(record):
    screen = record(PARTS[5])
    screen.app.text_area(key="w_first_year_electricity").set_value("2028-07 1210 kWh 74 F\nnot a bill at all 99").run()
    assert not screen.app.exception
    assert "1 electricity bill from" in screen.html
    assert "Paste a year of bills from before" in screen.html
    assert "row 2" in screen.html
    screen.app.text_area(key="w_first_year_electricity").set_value("").run()
    assert "1 electricity bill from" not in record(PARTS[5]).html
