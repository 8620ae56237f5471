"""Which mark on a finding counts."""

from datetime import date

import pytest

from econ.case.edit import with_line, with_sign_off_back
from econ.case.schema import case_from
from econ.caution.sign import KIND_OF
from econ.evaluate.settled import mark_of, marks_of
from econ.kernel.caution import Caution, Severity, Topic

TODAY = date(2027, 6, 1)
BLANK = case_from({"place": {"station": "Somewhere, MN"}, "rooms": [{}]})
CODES = {
    Severity.NOTE: "electrical.panel_unknown",
    Severity.CAUTION: "electrical.stored_charge",
    Severity.HOLD_POINT: "anchor.too_weak",
}


def finding(severity, party="contractor"):
    evidence = (("bracket_pull_n", 812.34, "N"),)
    return Caution(CODES[severity], Topic.WORK, severity, "Found.", "Do.", party, "source", evidence)


def marked(severity, **changed):
    line = {"code": CODES[severity], "kind": KIND_OF[severity].value, "who": "A. Name", "role": "contractor"}
    line |= {"note": "As asked.", "date": "2027-05-30", "figures": "bracket_pull_n 812.3"}
    return with_line(BLANK, "signed", line | changed)


@pytest.mark.parametrize("severity", Severity)
def test_a_mark_settles_its_finding(severity):
    place, line = mark_of(marked(severity), finding(severity), TODAY)
    assert (place, line.code) == (0, CODES[severity])
    assert mark_of(BLANK, finding(severity), TODAY) is None


@pytest.mark.parametrize("severity", Severity)
def test_a_mark_taken_back_or_dated_later_settles_nothing(severity):
    back = with_sign_off_back(marked(severity), 0, "2027-05-31")
    assert mark_of(back, finding(severity), TODAY) is None
    assert mark_of(marked(severity, date="2027-06-02"), finding(severity), TODAY) is None
    assert mark_of(marked(severity, date="2027-06-01"), finding(severity), TODAY) is not None


@pytest.mark.parametrize(("severity", "counts"), [("note", True), ("caution", False), ("hold_point", False)])
def test_other_figures_want_a_new_mark_but_for_a_note(severity, counts):
    case = marked(Severity(severity), figures="bracket_pull_n 700")
    assert (mark_of(case, finding(Severity(severity)), TODAY) is not None) == counts


def test_a_stop_is_settled_by_those_it_asks_for_alone():
    case = marked(Severity.HOLD_POINT)
    assert mark_of(case, finding(Severity.HOLD_POINT, "electrician"), TODAY) is None
    assert mark_of(case, finding(Severity.HOLD_POINT, "whoever fixes the bracket"), TODAY) is not None


def test_every_mark_that_counts_is_listed():
    case = with_line(
        marked(Severity.CAUTION), "signed", {"code": CODES[Severity.CAUTION], "kind": "dealt", "note": "x"}
    )
    assert [place for place, _ in marks_of(case, finding(Severity.CAUTION), TODAY)] == [0, 1]
