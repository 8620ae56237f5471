"""The record of the work is kept as typed, refuses what cannot be, and moves no number."""

import pytest

from econ.case.edit import answer_counts, value_at, with_value, without_value
from econ.case.form import all_fields
from econ.case.schema import case_from
from econ.case.section import Known
from econ.case.sections.as_built import RECORDS
from econ.case.toml import inputs_text, read_case, write_case
from econ.kernel.errors import CaseError

SMALL = {"place": {"station": "Somewhere, MN"}, "rooms": [{}]}
KNOWN = Known(tasks=("wall_hole", "line_set"))
HOSTILE = ('<script>alert("1")</script>', "=SUM(A1:A9)+cmd|' /C calc'!A0", "x" * 10_000, "two\nlines\twith '''\"\"\"")
FREE = [info for info in all_fields() if info.path.partition(".")[0] in RECORDS and info.kind == "text"]
NOTED = (
    "phone.answers.permit_needed",
    "phone.spoke_to.utility",
    "as_built.done_by.wall_hole",
    "as_built.licence.line_set",
)


def faults(path, value):
    with pytest.raises(CaseError) as refused:
        with_value(case_from(SMALL), path, value, KNOWN)
    return refused.value.faults[0]


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("path", [*(info.path for info in FREE), *NOTED])
def test_whatever_is_typed_comes_back_from_the_file_as_typed(path, text):
    case = with_value(case_from(SMALL), path, text, KNOWN)
    assert value_at(read_case(write_case(case)), path) == text


@pytest.mark.parametrize("path", [*(info.path for info in FREE), *NOTED])
def test_text_of_more_than_ten_thousand_letters_is_refused_by_name(path):
    found = faults(path, "x" * 10_001)
    assert found.path == path
    assert "at most 10000 letters" in found.problem


def test_the_record_moves_no_number_and_counts_as_no_answer():
    case = case_from(SMALL)
    told = with_value(with_value(case, "tests.supply_c", "54 degF"), "as_built.permit_no", "B-12")
    assert inputs_text(told) == inputs_text(case)
    assert answer_counts(told) == answer_counts(case)


def test_a_reading_is_kept_in_its_own_unit_and_read_in_the_cores():
    case = with_value(case_from(SMALL), "tests.supply_c", "50 degF")
    assert value_at(case, "tests.supply_c").likely == pytest.approx(10.0)
    assert 'supply_c = "50 degF"' in write_case(case)


@pytest.mark.parametrize(
    ("path", "value", "problem"),
    [
        ("tests.supply_c", "300 degF", "must be between"),
        ("tests.volts_v", 12, "must be between 90 and 300"),
        ("tests.joints.outdoor_wide_1.at_once", "perhaps", "must be one of: tight, leaks, not_tested"),
        ("tests.joints.outdoor_wide_1.later", "tight", "must end in one of: at_once, after_day, after_month"),
        ("tests.leak_at_once_on", "in June", "must be a date"),
        ("as_built.done_on.wall_hole", "2027-06-31", "must be a date"),
        ("as_built.hours_h.wall_hole", -1, "must be between 0 and 500"),
        ("as_built.cost_usd.wall_hole", 1e9, "must be between 0 and 1,000,000"),
        ("as_built.done_by.no_such_task", "me", "is not a task"),
        ("as_built.way", "keep_as_is", "must be one of: window_units, self_install, contracted_install"),
        ("paper.size", "A5", "must be one of: letter, a4"),
    ],
)
def test_what_cannot_be_is_refused_with_field_value_and_what_is_allowed(path, value, problem):
    found = faults(path, value)
    assert problem in found.problem
    assert found.path == path
    assert found.remedy


def test_names_in_a_file_must_be_short_and_plain():
    with pytest.raises(CaseError, match="must be named in small letters"):
        case_from(SMALL | {"phone": {"answers": {"What?": "yes"}}})
    with pytest.raises(CaseError, match="must be a table of name = value"):
        case_from(SMALL | {"phone": {"answers": "yes"}})


def test_taking_the_last_entry_back_leaves_an_empty_record():
    case = with_value(case_from(SMALL), "phone.answers.permit_needed", "yes")
    assert without_value(case, "phone.answers.permit_needed") == case_from(SMALL)


def test_a_table_of_notes_stays_small_enough_to_be_read_back():
    full = {f"question_{at}": "x" * 10_000 for at in range(5)}
    case = case_from(SMALL | {"phone": {"answers": full}})
    assert read_case(write_case(case)) == case
    with pytest.raises(CaseError) as refused:
        with_value(case, "phone.answers.permit_needed", "y")
    assert "phone.answers | must hold at most 50,000 letters in all | got 50,001 letters" in str(refused.value)
