"""Edits: one thing changes, the case given stays as it was."""

import pytest

from econ.case.edit import (
    add_room,
    answer_counts,
    asked_paths,
    is_asked,
    remove_room,
    state_of,
    states,
    value_at,
    with_value,
    without_value,
)
from econ.case.form import all_fields, field_at
from econ.case.quantity import Measure, amount
from econ.case.schema import case_from
from econ.case.section import Known
from econ.kernel.errors import CaseError

CASE = case_from(
    {"place": {"station": "x"}, "rooms": [{"wall": "block"}, {"name": "den"}], "use": {"heat": "not known"}}
)


def test_value_is_set_in_a_new_case():
    changed = with_value(CASE, "rooms[1].floor_area_m2", "224 ft**2")
    assert value_at(changed, "rooms[1].floor_area_m2").text == "224 ft**2"
    assert value_at(CASE, "rooms[1].floor_area_m2") is None
    assert changed.rooms[0] == CASE.rooms[0]


def test_amount_is_taken_as_it_is():
    span = amount({"low": 1, "likely": 2, "high": 3}, Measure("", "", 0.0, 5.0))
    assert value_at(with_value(CASE, "rooms[0].people_count", span), "rooms[0].people_count") == span


def test_value_taken_away_is_usual_again():
    changed = with_value(CASE, "kit.price_usd", 1890)
    assert state_of(changed, "kit.price_usd") == "yours"
    assert without_value(changed, "kit.price_usd") == CASE
    assert without_value(CASE, "kit.price_usd") == CASE


def test_station_cannot_be_taken_away():
    with pytest.raises(CaseError, match=r"place"):
        without_value(CASE, "place.station")


@pytest.mark.parametrize("value", ["not known", "not_known"])
def test_not_known_is_a_state_of_its_own(value):
    assert state_of(with_value(CASE, "kit.price_usd", value), "kit.price_usd") == "not_known"
    assert state_of(CASE, "use.heat") == "not_known"
    assert state_of(CASE, "use.cool") == "usual"


def test_counts_add_up_over_rooms():
    counted = answer_counts(CASE)
    fields_once = [info for info in all_fields() if info.kind in ("amount", "choice")]
    of_rooms = [info for info in fields_once if info.path.startswith("rooms")]
    assert counted["yours"] == 1 + 1
    assert counted["not_known"] == 1
    assert sum(counted.values()) == len(fields_once) + len(of_rooms) + 1 == len(states(CASE)) + 1


def test_a_town_that_is_chosen_counts_as_one_answer():
    before = answer_counts(with_value(CASE, "place.station", ""))["yours"]
    assert answer_counts(CASE)["yours"] == before + 1


def test_paths_name_each_room():
    paths = [path for path, _ in asked_paths(CASE)]
    assert "rooms[0].wall" in paths
    assert "rooms[1].wall" in paths
    assert "rooms[2].wall" not in paths


def test_task_is_given_to_a_party_and_back():
    changed = with_value(with_value(CASE, "work.parties.wall_hole", "helper"), "work.parties.survey", "self")
    assert changed.work.parties == (("wall_hole", "helper"), ("survey", "self"))
    assert value_at(changed, "work.parties.wall_hole") == "helper"
    assert value_at(CASE, "work.parties.wall_hole") is None
    back = without_value(without_value(changed, "work.parties.survey"), "work.parties.wall_hole")
    assert back == CASE


def test_refused_value_leaves_its_path():
    with pytest.raises(CaseError) as refused:
        with_value(CASE, "rooms[1].ceiling_height_m", "80 ft")
    [fault] = refused.value.faults
    assert fault.path == "rooms[1].ceiling_height_m"
    assert fault.problem == "must be between 1.5 and 10 m (4.921 and 32.8084 ft)"


def test_known_names_are_checked():
    with pytest.raises(CaseError, match="is not a listed weather place"):
        with_value(CASE, "place.station", "y", Known(stations=("x",)))


@pytest.mark.parametrize(
    ("path", "problem"),
    [
        ("kit.prize_usd", "is not a field"),
        ("kit", "is not the path of a field"),
        ("rooms.wall", "is not the path of a field"),
        ("kit[0].size", "is not the path of a field"),
        ("rooms[2].wall", "names a room that is not there; there are 2"),
        ("kit.size.x", "is not the path of a field"),
        ("boat.size", "is not a field"),
    ],
)
def test_path_that_is_not_there_is_refused(path, problem):
    for edit in (lambda: with_value(CASE, path, 1), lambda: without_value(CASE, path), lambda: value_at(CASE, path)):
        with pytest.raises(CaseError) as refused:
            edit()
        assert (refused.value.faults[0].path, refused.value.faults[0].problem) == (path, problem)


def test_room_is_added_at_the_end_and_removed():
    longer = add_room(CASE, {"name": "attic"})
    assert [room.name for room in longer.rooms] == [None, "den", "attic"]
    assert remove_room(longer, 2) == CASE
    assert [room.name for room in remove_room(CASE, 0).rooms] == ["den"]


def test_last_room_stays_and_absent_room_is_refused():
    one = remove_room(CASE, 0)
    with pytest.raises(CaseError, match="must hold 1 to 100 rooms"):
        remove_room(one, 0)
    for index in (-1, 2):
        with pytest.raises(CaseError, match="has rooms 0 to 1"):
            remove_room(CASE, index)


@pytest.mark.parametrize(
    ("cooling", "usual", "asked"),
    [
        (None, {}, True),
        (None, {"now.cooling": "none"}, False),
        ("portable", {}, True),
        ("none", {}, False),
        ("not known", {}, True),
    ],
)
def test_later_question_waits_for_its_answer(cooling, usual, asked):
    case = CASE if cooling is None else with_value(CASE, "now.cooling", cooling)
    assert is_asked(case, field_at("now.unit_age_yr"), usual) is asked
    assert is_asked(case, field_at("now.cooling"), usual)
