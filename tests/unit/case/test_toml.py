"""Case files: read, refused in words, written."""

import pytest

from econ.case.schema import SCHEMA_VERSION, case_from
from econ.case.toml import MOST_BYTES, inputs_text, read_case, read_case_file, write_case
from econ.case.upgrade import upgraded
from econ.kernel.errors import CaseError

SMALL = '[place]\nstation = "Alder Field, MN"\n[[rooms]]\nfloor_area_m2 = "224 ft**2"\n'


def only_fault(read, *given):
    with pytest.raises(CaseError) as refused:
        read(*given)
    [fault] = refused.value.faults
    return fault


def test_units_are_written_as_typed():
    expected = """\
schema_version = 1

[place]
station = "Alder Field, MN"

[[rooms]]
floor_area_m2 = "224 ft**2"
"""
    assert write_case(read_case(SMALL)) == expected


def test_toml_date_is_read_as_its_text():
    case = read_case(SMALL.replace("[[rooms]]", "decision_date = 2027-05-20\n[[rooms]]"))
    assert case.place.decision_date == "2027-05-20"


def test_text_cut_in_half_names_the_line():
    fault = only_fault(read_case, SMALL[: SMALL.index("Field")])
    assert fault.path == "line 2"
    assert fault.problem.startswith("cannot be read as TOML: ")
    assert fault.got == "'station = \"Alder'"
    assert "cut off" in fault.remedy


def test_syntax_error_in_the_middle_names_its_line():
    fault = only_fault(read_case, "schema_version = 1\n[place\nstation = 'x'\n")
    assert (fault.path, fault.got) == ("line 2", "'[place'")


def test_empty_text_is_a_case_without_its_parts():
    with pytest.raises(CaseError, match=r"place \| is missing"):
        read_case("")


def test_nan_in_a_file_is_refused():
    fault = only_fault(read_case, SMALL + "people_count = nan\n")
    assert fault.path == "rooms[0].people_count"
    assert str(fault).startswith(
        "rooms[0].people_count | must be a number, not NaN or infinity | got nan | Give a number"
    )


@pytest.mark.parametrize("text", ["x = " + "[" * 50_000, "x = " + "9" * 50_000])
def test_text_that_would_exhaust_the_reader_is_refused(text):
    fault = only_fault(read_case, text)
    assert fault.problem.startswith("cannot be read as TOML")


def test_three_megabytes_are_refused_before_reading(tmp_path):
    path = tmp_path / "big.toml"
    path.write_bytes(b"#" * 3_000_000)
    fault = only_fault(read_case_file, path)
    assert (
        str(fault) == "file | must be at most 1,000,000 bytes | got 3,000,000 bytes | Check that this is a case file."
    )


def test_size_limit_holds_on_each_side():
    filler = "#" * (MOST_BYTES - len(SMALL))
    assert read_case(SMALL + filler) == read_case(SMALL)
    assert only_fault(read_case, SMALL + filler + "#").path == "file"


def test_other_encoding_is_refused():
    fault = only_fault(read_case, SMALL.replace("Alder", "Ålder").encode("latin-1"))
    assert fault.problem == "is not text in UTF-8"


def test_byte_order_mark_is_no_fault():
    assert read_case(SMALL.encode("utf-8-sig")) == read_case(SMALL)


@pytest.mark.parametrize("name", ["absent.toml", ""])
def test_file_that_cannot_be_opened_is_named(tmp_path, name):
    fault = only_fault(read_case_file, tmp_path / name)
    assert fault.problem == "cannot be opened"
    assert str(tmp_path) in fault.got


def test_texts_with_quotes_and_control_letters_come_back():
    notes = 'say "hi"\\ \n\t\x01\x7f \u2028 é 😀'
    case = case_from({"record": {"notes": notes}, "place": {"station": "x"}, "rooms": [{}]})
    assert read_case(write_case(case)) == case


def test_record_is_no_input():
    with_notes = read_case(SMALL + '[record]\nnotes = "x"\n')
    assert inputs_text(with_notes) == inputs_text(read_case(SMALL))
    assert inputs_text(read_case(SMALL + '[kit]\nsize = "9"\n')) != inputs_text(read_case(SMALL))


def test_newer_file_is_refused():
    fault = only_fault(read_case, f"schema_version = {SCHEMA_VERSION + 1}\n{SMALL}")
    assert fault.path == "schema_version"
    assert "newer than this program" in fault.problem


@pytest.mark.parametrize("version", ["0", "-1", "true", '"1"', "1.0"])
def test_version_that_is_no_number_from_one_is_refused(version):
    assert only_fault(read_case, f"schema_version = {version}\n{SMALL}").path == "schema_version"


def test_old_file_goes_through_every_step():
    steps = {1: lambda tables: tables | {"a": 1}, 2: lambda tables: tables | {"b": tables["a"] + 1}}
    assert upgraded({"schema_version": 1}, steps, 3) == {"a": 1, "b": 2}
    assert upgraded({"schema_version": 2, "a": 5}, steps, 3) == {"a": 5, "b": 6}
    assert upgraded({}, steps, 1) == {}
