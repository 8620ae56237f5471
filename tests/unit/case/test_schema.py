"""The schema: what a case may hold, and every fault at once."""

import pytest

from econ.case.choices import CHOICES, PICKS
from econ.case.form import all_fields, field_at, fields, json_schema
from econ.case.schema import MOST, MOST_ROOMS, SECTIONS, case_from, plain
from econ.case.section import Known
from econ.kernel.errors import CaseError, UnknownChoiceError
from econ.kernel.units import suffix_of

KNOWN = Known(
    stations=("Alder Field, MN", "Alder Lake, WI", "Birch Hill, AZ", "Cedar Bay, NC"),
    tasks=("survey", "wall_hole"),
    tools=("multimeter", "hole_saw"),
)
SMALL = {"place": {"station": "Alder Field, MN"}, "rooms": [{}]}


def faults(plain_case, known=KNOWN):
    with pytest.raises(CaseError) as refused:
        case_from(plain_case, known)
    return {fault.path: fault for fault in refused.value.faults}


def test_smallest_case_is_a_station_and_a_room():
    assert plain(case_from(SMALL, KNOWN)) == SMALL


def test_only_what_was_set_is_kept():
    case = case_from(SMALL | {"kit": {"volts": 240, "price_usd": 1890}}, KNOWN)
    assert plain(case)["kit"] == {"volts": "240", "price_usd": 1890}
    assert case.kit.grade is None


def test_all_faults_are_listed_at_once_with_their_paths():
    wrong = {
        "place": {"station": "Alder, MN", "state": "Minn", "decision_date": "20 May 2027"},
        "rooms": [{}, {"floor_area_m2": "-4 m**2", "wall": "mud", "ceiling_height_m": 8}],
        "kit": {"price": 3},
        "heating": 1,
    }
    assert list(faults(wrong)) == [
        "place.station", "place.state", "place.decision_date", "rooms[1].floor_area_m2", "rooms[1].ceiling_height_m",
        "rooms[1].wall", "kit.price", "heating",
    ]  # fmt: skip


def test_unknown_station_names_the_three_nearest():
    fault = faults(SMALL | {"place": {"station": "Alder Feild, MN"}})["place.station"]
    assert fault.problem == "is not a listed weather place"
    assert fault.remedy.startswith("Nearest names: Alder Field, MN; Alder Lake, WI; Cedar Bay, NC. Or give town")


def test_state_without_prices_is_refused_with_those_that_have_them():
    place = {"station": "Alder Field, MN", "state": "ZZ"}
    fault = faults(SMALL | {"place": place}, Known(states=("MN", "WI")))["place.state"]
    assert fault.remedy == "Write one of MN, WI."
    assert case_from(SMALL | {"place": place | {"state": "WI"}}, Known(states=("MN", "WI"))).place.state == "WI"


def test_station_is_not_looked_up_without_a_table():
    assert case_from(SMALL | {"place": {"station": "Anywhere"}}).place.station == "Anywhere"


def test_missing_station_and_rooms_say_what_to_write():
    found = faults({"place": {}})
    assert 'station = "' in found["place.station"].remedy
    assert "[[rooms]]" in found["rooms"].remedy


@pytest.mark.parametrize("rooms", [[], [{}] * (MOST_ROOMS + 1)])
def test_number_of_rooms_has_bounds(rooms):
    fault = faults(SMALL | {"rooms": rooms})["rooms"]
    assert fault.problem == "must hold 1 to 100 rooms"
    assert fault.got == str(len(rooms))


def test_faulty_room_is_still_counted_as_a_room():
    assert list(faults(SMALL | {"rooms": [{"wall": "mud"}]})) == ["rooms[0].wall"]


def test_as_many_rooms_as_allowed_are_read():
    assert len(case_from(SMALL | {"rooms": [{}] * MOST_ROOMS}).rooms) == MOST_ROOMS


def test_unknown_field_suggests_the_nearest():
    assert faults(SMALL | {"kit": {"price": 3}})["kit.price"].remedy == "Nearest: price_usd."


def test_field_of_another_section_says_where_it_belongs():
    assert faults(SMALL | {"kit": {"cash_limit_usd": 3}})["kit.cash_limit_usd"].remedy == "It belongs in money."


def test_wrong_option_lists_the_options():
    fault = faults(SMALL | {"use": {"heat": "maybe"}})["use.heat"]
    assert fault.problem == 'must be one of: yes, sometimes, no, or "not known"'
    assert fault.got == "'maybe'"


def test_true_is_not_an_option():
    assert "use.cool" in faults(SMALL | {"use": {"cool": True}})


@pytest.mark.parametrize("spelling", ["not known", "not_known", "?"])
def test_choice_may_be_not_known(spelling):
    assert case_from(SMALL | {"use": {"heat": spelling}}).use.heat == "not_known"


@pytest.mark.parametrize("written", ["2027-02-30", "20270520", "2027-5-2", "1999-12-31", "2101-01-01", "tomorrow"])
def test_date_in_another_form_is_refused(written):
    fault = faults(SMALL | {"place": {"station": "Alder Field, MN", "decision_date": written}})["place.decision_date"]
    assert '"2027-05-20"' in fault.remedy


def test_section_that_is_no_table_is_refused():
    fault = faults(SMALL | {"window": 7})["window"]
    assert fault.problem == "must be a table of fields"
    assert fault.remedy == "Begin it with [window] on a line."


def test_rooms_that_are_no_list_are_refused():
    assert "[[rooms]]" in faults(SMALL | {"rooms": {}})["rooms"].remedy


def test_field_name_that_is_no_text_is_refused():
    assert "has the wrong form" in next(iter(faults(SMALL | {"kit": {5: 1}}).values())).problem


def test_absent_value_is_as_if_left_out():
    assert case_from(SMALL | {"kit": {"size": None, "price_usd": None}}) == case_from(SMALL)


def test_text_has_a_limit_and_must_be_text():
    assert "record.notes" in faults(SMALL | {"record": {"notes": "x" * 10_001}})
    assert "record.name" in faults(SMALL | {"record": {"name": 5}})
    assert "record.name" in faults(SMALL | {"record": {"name": "\ud800"}})


def test_parties_and_tools_are_checked_against_the_tables():
    found = faults(SMALL | {"work": {"parties": {"wall_hoel": "self", "survey": "me"}, "tools_owned": ["saw"]}})
    assert found["work.parties.wall_hoel"].remedy.startswith("Nearest: wall_hole")
    assert found["work.parties.survey"].problem == "must be one of: self, helper, electrician, contractor"
    assert found["work.tools_owned"].got == "'saw'"


@pytest.mark.parametrize(
    ("field", "value"), [("parties", ["a"]), ("parties", {"a": 1}), ("tools_owned", "drill"), ("tools_owned", ["A b"])]
)
def test_parties_and_tools_of_the_wrong_form_are_refused(field, value):
    assert f"work.{field}" in faults(SMALL | {"work": {field: value}})


def test_tools_are_kept_once_in_order():
    case = case_from(SMALL | {"work": {"tools_owned": ["multimeter", "hole_saw", "multimeter"]}})
    assert case.work.tools_owned == ("multimeter", "hole_saw")


def test_case_cannot_be_changed_in_place():
    with pytest.raises(ValueError, match="frozen"):
        case_from(SMALL).place.station = "x"


@pytest.mark.parametrize("info", all_fields(), ids=lambda info: info.path)
def test_field_is_fully_described(info):
    assert info.label
    assert info.help.endswith((".", "?"))
    assert (info.kind in ("choice", "pick", "mark", "marks")) == bool(info.options)
    assert (info.kind in ("amount", "aside", "asides")) == (info.low < info.high)


@pytest.mark.parametrize("info", [i for i in all_fields() if i.kind == "amount"], ids=lambda info: info.path)
def test_unit_of_an_amount_is_that_of_its_name(info):
    named = suffix_of(info.name)
    if named is not None:  # year_built is a calendar year
        assert (info.unit or "dimensionless") == named.replace("^", "**")


def test_every_choice_of_the_list_is_a_field():
    assert {info.path for info in all_fields() if info.kind == "choice"} == set(CHOICES)
    assert {info.path for info in all_fields() if info.kind == "pick"} == set(PICKS)


def test_later_questions_name_a_choice_and_its_options():
    for info in all_fields():
        if info.asks_after:
            path, _, options = info.asks_after.partition("=")
            assert set(options.lstrip("=").split("|")) < set(CHOICES[path])


def test_physical_amounts_have_a_us_unit_and_others_their_own():
    assert (field_at("rooms[4].floor_area_m2").us_unit, field_at("money.cash_limit_usd").us_unit) == ("ft**2", "USD")
    assert field_at("site.wall_thickness_m").us_unit == "in"


def test_unknown_section_or_field_names_the_nearest():
    with pytest.raises(UnknownChoiceError, match="rooms"):
        fields("roms")
    with pytest.raises(UnknownChoiceError, match=r"kit\.price_usd"):
        field_at("kit.price_us")


def test_json_schema_holds_every_field():
    schema = json_schema()
    for name in SECTIONS:
        table = schema["properties"][name]
        properties = (table["items"] if name in MOST else table)["properties"]
        assert set(properties) == {info.name for info in fields(name)}
    assert schema["properties"]["use"]["properties"]["heat"]["enum"] == [
        "yes",
        "sometimes",
        "no",
        "not_known",
        "not known",
    ]


def test_a_connection_as_earlier_files_spell_it_is_read_as_what_it_is_called_now():
    assert case_from(SMALL | {"kit": {"connection": "flare"}}).kit.connection == "flare_with_charged_outdoor_unit"
