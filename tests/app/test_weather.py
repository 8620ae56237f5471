"""Towns that no list has, uploaded hours and typed months: given once, kept after a reload."""

import tomllib

import pytest

from econ.case.edit import with_fields
from econ.case.months import monthly
from econ.case.toml import read_case, write_case
from econ.store import cases
from econ.store.connection import store_path
from econ.tables.epw import SIZE_LIMIT_BYTE
from econ.ui import own_weather
from tests.app.screen import ROOT, STATION
from tests.unit.tables.test_epw import file_of, rows

NEAR = "near_Phoenix Sky Harbor Intl AP, AZ"


def near(screen):
    return [button.label for button in screen.app.button if str(button.key).startswith("near_")]


def test_unlisted_town_offers_the_three_nearest_with_distance_and_height(screen):
    found = near(screen.type("w_place_search", "Mesa, AZ"))
    assert len(found) == 3
    assert found[0] == "Phoenix Sky Harbor Intl AP, AZ: 9 miles away, 82 ft lower"


def test_towns_of_one_name_are_told_apart_and_beginnings_come_first(screen):
    screen.type("w_place_search", "mesa")
    towns = next(group for group in screen.app.button_group if str(group.key).startswith("w_place_town"))
    assert towns.options[0] == "Mesa, AZ"
    assert not any("FL" in town for town in towns.options)


def test_point_offers_the_three_nearest(screen):
    found = near(screen.type("w_place_search", "35.2, -111.6"))
    assert found[0] == "Winslow Municipal AP, AZ: 51 miles away, at 4888 ft above the sea"


def test_words_that_name_no_town_say_what_to_do(screen):
    screen.type("w_place_search", "Xyzzy")
    assert any("latitude and longitude" in caption.value for caption in screen.app.caption)
    assert near(screen) == []


def test_chosen_town_is_kept_after_a_reload(screen):
    screen.type("w_place_search", "Mesa, AZ").click(NEAR)
    again = screen.reloaded().go("place")
    assert again.app.selectbox(key="w_place_station").value == "Phoenix Sky Harbor Intl AP, AZ"
    assert any("9 miles from Mesa, AZ, 82 ft lower" in caption.value for caption in again.app.caption)


def test_listed_place_forgets_the_town(screen):
    screen.type("w_place_search", "Mesa, AZ").click(NEAR)
    screen.app.selectbox(key="w_place_station").set_value(STATION).run()
    screen.go("place")
    assert not any("Mesa" in caption.value for caption in screen.app.caption)


def test_uploaded_hours_become_the_weather_and_outlive_a_reload(ready):
    ready.go("place")
    ready.app.file_uploader(key="w_place_hourly_file").set_value(("year.epw", file_of(rows()), "text/plain")).run()
    assert not ready.app.exception
    again = ready.reloaded().go("place")
    assert "an hourly file (year.epw)" in again.html
    assert "Anyplace, IL" in again.html
    again.click("b_listed_weather")
    assert STATION in again.html
    assert "an hourly file" not in again.html


def test_choosing_a_listed_place_leaves_the_uploaded_hours_and_undo_brings_them_back(ready):
    ready.go("place")
    ready.app.file_uploader(key="w_place_hourly_file").set_value(("year.epw", file_of(rows()), "text/plain")).run()
    ready.app.selectbox(key="w_place_station").set_value("Phoenix Sky Harbor Intl AP, AZ").run()
    assert "an hourly file" not in ready.html
    next(button for button in ready.app.button if button.label == "Undo").click().run()
    assert "an hourly file (year.epw)" in ready.html


def test_broken_hours_are_refused_with_their_line_and_change_nothing(ready):
    ready.go("place")
    body = rows()
    body[5] = body[5].replace("0,?,11.0", "0,?,99.9")
    ready.app.file_uploader(key="w_place_hourly_file").set_value(("year.epw", file_of(body), "text/plain")).run()
    assert "year.epw, line 14, dry bulb" in ready.html
    assert "an hourly file" not in ready.html


def test_file_that_is_not_kept_here_is_said(ready):
    line = cases.listed(store_path())[0]
    stands = cases.opened(store_path(), line.case_id)
    case = with_fields(read_case(stands.text), "place", {"hourly_file": "sha256:0"})
    cases.save(store_path(), line.case_id, write_case(case), stands.head)
    again = ready.reloaded().go("place")
    assert "not kept on this machine" in again.html
    assert any("place.hourly_file" in error.value.replace("\\", "") for error in again.app.error)


def test_typed_months_need_a_point_and_become_the_weather(screen, monkeypatch):
    screen.go("place")
    columns = own_weather.table_of((), is_si=False)
    columns["Mean temperature, °F"] = [24, 28, 38, 49, 59, 69, 74, 72, 64, 53, 40, 28]
    monkeypatch.setattr("streamlit.data_editor", lambda *_args, **_settings: columns)
    screen.go("place").click("b_take_months")
    assert "Latitude:" in screen.html
    screen.app.number_input(key="w_place_latitude_deg").set_value(42.0)
    screen.app.number_input(key="w_place_longitude_deg").set_value(-88.0)
    screen.app.number_input(key="w_place_elevation_m").set_value(650.0)
    screen.click("b_take_months")
    assert "months you typed in" in screen.html
    again = screen.reloaded().go("place")
    assert "months you typed in" in again.html
    assert again.app.number_input(key="w_place_elevation_m").value == pytest.approx(650.0)
    assert any("Estimated, not known: the daily range" in caption.value for caption in again.app.caption)


def test_empty_table_is_refused_and_moves_nothing(ready):
    ready.go("place")
    ready.app.number_input(key="w_place_elevation_m").set_value(5000.0)
    before = ready.strip
    ready.click("b_take_months")
    assert "Mean temperature: nothing." in ready.html
    assert ready.strip == before


def test_server_takes_files_as_large_as_the_reader_does():
    server = tomllib.loads((ROOT / ".streamlit" / "config.toml").read_text(encoding="utf-8"))["server"]
    assert server["maxUploadSize"] * 1_000_000 >= SIZE_LIMIT_BYTE


def test_month_left_empty_is_named():
    columns = own_weather.table_of((), is_si=True)
    columns["Mean temperature, °C"] = [*([1.0] * 11), None]
    written = own_weather.written_of(columns, is_si=True)
    assert written == {"mean_c": [*([1.0] * 11), None]}


def test_table_of_months_comes_back_as_it_was_shown():
    typed = {"mean_c": ["50 degF"] * 12, "sd_k": [4.0] * 12, "global_kwh_per_m2": [3.5] * 12}
    for is_si in (False, True):
        again = own_weather.written_of(own_weather.table_of(monthly(typed), is_si=is_si), is_si=is_si)
        assert monthly(again)[0][1].values == pytest.approx((10.0,) * 12, abs=0.01)
        assert set(again) == set(typed)
