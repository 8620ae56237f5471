"""The page of many rooms: sample, paste, refusal, budget; what the command line says; nothing typed is lost."""

import json

import pytest

from econ.__main__ import main
from econ.case.rooms_file import read_rooms
from econ.report import rooms as told_rooms
from econ.report.words import rooms as words
from econ.tables.place import data_root
from econ.ui.building_file import counted_rooms

FOLDER = data_root() / "cases" / "buildings"
BUDGET, BOX = "w_building_budget_usd", "w_building_rooms"


@pytest.fixture
def sampled(screen):
    """Return a tab with the sample building open on the page."""
    return screen.go("rooms").click("sample_building")


def test_the_sample_building_shows_its_plan(sampled):
    assert "24 rows read: 24 taken" in sampled.html
    assert sampled.html.count('class="spot') == 24
    assert "Flat 9" in sampled.html
    assert "You pay" in sampled.html


def test_the_page_says_what_the_command_line_says(sampled, capsys):
    main(["rooms", str(FOLDER / "small_building.csv"), "--case", str(FOLDER / "small_building.toml"), "--json"])
    found = json.loads(capsys.readouterr().out)
    shown = sampled.app.dataframe[-1].value
    assert shown["Cash, $"].tolist() == [round(room["cash_usd"]) for room in found["rooms"]]
    assert shown["Hours too hot now"].tolist() == [round(room["too_hot_now_h"]) for room in found["rooms"]]
    assert shown["Year"].fillna(0).tolist() == [room["year"] or 0 for room in found["rooms"]]


def test_a_smaller_budget_does_less_and_survives_a_reload(sampled):
    sampled.type(BUDGET, "1500")
    assert "of $1,500" in sampled.html
    again = sampled.reloaded().go("rooms")
    assert again.typed(BUDGET) == "1500"
    assert "of $1,500" in again.html
    assert "24 rows read: 24 taken" in again.html


def test_a_refused_row_is_shown_with_what_to_type_and_the_others_work(sampled):
    sampled.app.text_area(key=BOX).set_value("unit,room,floor,size,type\n1,A,1,200,S3\n1,B,one,200,S3\n").run()
    assert not sampled.app.exception
    assert "2 rows read: 1 taken, 1 refused" in sampled.html
    assert "line 3, floor" in sampled.html
    assert "Write 1 or G for the floor at the ground" in sampled.html
    assert sampled.html.count('class="spot') == 1


def test_a_closed_way_is_shown_closed_with_its_reason(sampled):
    assert "Why it is closed" in sampled.html
    assert "exemption does not hold" in sampled.html


def test_a_room_is_added_and_another_is_marked(sampled):
    for key, cell in {"unit": "10", "room": "Hall", "floor": "1", "size": "90", "type": "G"}.items():
        sampled.app.text_input(key=f"w_add_{key}").set_value(cell)
    next(button for button in sampled.app.button if button.label == "Add this room").click().run()
    assert "25 rows read: 25 taken" in sampled.html
    sampled.app.selectbox(key="w_mark_room").set_value(0)
    next(button for button in sampled.app.button if button.label == "Mark it").click().run()
    assert not sampled.app.exception
    assert sampled.html.count("· must</p>") == 2


def test_a_file_of_which_nothing_can_be_read_says_so_and_stays_in_the_box(sampled):
    sampled.app.text_area(key=BOX).set_value("no,heading\nof,ours\n").run()
    assert not sampled.app.exception
    assert "has no column" in sampled.html
    assert sampled.app.text_area(key=BOX).value == "no,heading\nof,ours\n"


def test_without_a_town_the_page_offers_ways_to_begin(screen):
    screen.go("rooms")
    assert screen.app.button(key="sample_building")
    assert "Many rooms are planned together here" in screen.html


def test_rooms_filled_in_from_counts_are_read():
    found = read_rooms(counted_rooms(3, 3, 2, "S3"), ("S3",))
    assert (found.n_room, len(found.refused)) == (18, 0)
    assert len(set(found.text["unit"])) == 9
    assert read_rooms(counted_rooms(1, 1, 1, ""), ()).n_room == 1


def test_sentences_do_not_fail_on_types_without_names():
    assert "No type has a name yet" in words.types_sentence(["", ""], ())
    assert told_rooms.ADDED
