"""What may be said of a finding and of a step, and what is refused."""

import pytest

from econ.case.edit import with_line, with_sign_off_back
from econ.case.schema import MOST, case_from
from econ.case.section import Known
from econ.case.toml import inputs_text, read_case, write_case
from econ.kernel.errors import CaseError

KNOWN = Known(tasks=("survey", "circuit"))
BLANK = case_from({"place": {"station": "Somewhere, MN"}, "rooms": [{}]})
STOP = {
    "code": "permit.landlord_consent",
    "kind": "signed",
    "who": "B. Owner",
    "role": "landlord",
    "date": "2027-03-01",
}
DONE = {"route": "self_install", "task": "survey", "state": "done", "date": "2027-03-01"}


def refused(section, line, known=None):
    with pytest.raises(CaseError) as caught:
        with_line(BLANK, section, line, known)
    return str(caught.value)


def test_a_sign_off_is_kept_and_moves_no_number():
    case = with_line(BLANK, "signed", STOP)
    assert read_case(write_case(case)) == case
    assert case.signed[0].who == "B. Owner"
    assert inputs_text(case) == inputs_text(BLANK)


@pytest.mark.parametrize("field", ["who", "role", "date"])
def test_a_stop_wants_who_as_what_and_when(field):
    text = refused("signed", {**STOP, field: ""})
    assert f"signed[0].{field} | is missing" in text


@pytest.mark.parametrize(
    ("code", "kind", "asked"),
    [
        ("permit.landlord_consent", "read", "signed"),
        ("permit.landlord_consent", "dealt", "signed"),
        ("electrical.stored_charge", "read", "dealt"),
        ("electrical.stored_charge", "signed", "dealt"),
        ("electrical.panel_unknown", "dealt", "read"),
        ("step.outlet", "read", "signed"),
    ],
)
def test_a_finding_is_settled_in_its_own_way_alone(code, kind, asked):
    assert f'signed[0].kind | must be "{asked}" for {code}' in refused("signed", {**STOP, "code": code, "kind": kind})


def test_a_caution_wants_how_it_was_dealt_with():
    line = {"code": "electrical.stored_charge", "kind": "dealt"}
    assert "signed[0].note | is missing" in refused("signed", line)
    assert with_line(BLANK, "signed", {**line, "note": "Waited ten minutes."}).signed[0].note


def test_a_note_is_read_with_nothing_more():
    assert with_line(BLANK, "signed", {"code": "electrical.panel_unknown", "kind": "read"}).signed


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [
        ("code", "permit.landlord", "is not the code of a finding"),
        ("code", "", "is missing"),
        ("role", "uncle", "must be one of: owner"),
        ("route", "by_hand", "must be one of: keep_as_is"),
        ("date", "1 March", "must be a date"),
        ("taken_back", "2027-13-01", "must be a date"),
    ],
)
def test_anything_else_is_refused_by_name(field, value, says):
    text = refused("signed", {**STOP, field: value})
    assert f"signed[0].{field} | {says}" in text


def test_a_sign_off_taken_back_stays_on_record():
    case = with_sign_off_back(with_line(BLANK, "signed", STOP), 0, "2027-03-02", "Wrong wall.")
    assert case.signed[0].who == "B. Owner"
    assert (case.signed[0].taken_back, case.signed[0].why_back) == ("2027-03-02", "Wrong wall.")


def test_only_a_line_that_is_there_can_be_taken_back():
    with pytest.raises(CaseError, match=r"signed\[0\] \| has 0 lines"):
        with_sign_off_back(BLANK, 0, "2027-03-02")


def test_a_step_is_done_on_a_day():
    assert with_line(BLANK, "steps", DONE, KNOWN).steps[0].task == "survey"
    assert "steps[0].date | is missing" in refused("steps", {**DONE, "date": ""})


def test_a_skipped_step_says_why():
    assert "steps[0].reason | is missing" in refused("steps", {**DONE, "state": "skipped"})
    assert with_line(BLANK, "steps", {**DONE, "state": "skipped", "reason": "none here"}).steps


@pytest.mark.parametrize(
    ("field", "value"), [("route", "by_hand"), ("state", "perhaps"), ("task", "surveys"), ("task", "")]
)
def test_a_step_names_what_is_there(field, value):
    with pytest.raises(CaseError, match=rf"steps\[0\].{field} \| "):
        with_line(BLANK, "steps", {**DONE, field: value}, KNOWN)


def test_lines_are_counted():
    with pytest.raises(CaseError, match="must hold at most"):
        case_from({"place": {"station": "x"}, "rooms": [{}], "steps": [DONE] * (MOST["steps"] + 1)})
    with pytest.raises(CaseError, match="must be a list of tables"):
        case_from({"place": {"station": "x"}, "rooms": [{}], "signed": STOP})
