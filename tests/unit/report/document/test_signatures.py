"""The report prints the plan with its stops, who signed, and no instruction behind an open stop."""

from dataclasses import replace

import pytest

from econ.case.edit import with_fields, with_line, with_sign_off_back
from econ.report.document.block import Findings, Grid, Heading, Points
from econ.report.document.content.basis import basis
from econ.report.document.html import html_text
from econ.report.document.readers import Reader, document
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_case
from tests.unit.report.document.printed import html_body, squeezed

NAME = "lower_level_cold"
WALL = "drilling.behind_the_wall"
SIGNED = {"code": WALL, "kind": "signed", "who": "Ada Name", "role": "contractor", "date": "2027-03-09"}
SIGNED |= {"licence": "L-77", "note": "Scanned from both sides", "route": "self_install"}


@pytest.fixture(scope="module")
def printed():
    found = answer(demo_case(NAME), load_tables(), TODAY, 0)

    def made(case, reader=Reader.OWNER):
        return document(basis(replace(found, case=case), load_tables(), TODAY), reader)

    return made


def steps(content):
    grid = next(each for each in content.blocks if isinstance(each, Grid) and each.titles[0] == "Step")
    return {row[0].partition(". ")[2]: row for row in grid.rows}


def finding(content, message):
    each = (item for block in content.blocks if isinstance(block, Findings) for item in block.items)
    return next(item for item in each if message in item.message)


def case_with(*lines):
    case = demo_case(NAME)
    for line in lines:
        case = with_line(case, "signed", line)
    return case


def test_behind_an_open_stop_a_step_is_printed_without_its_instruction(printed):
    rows = steps(printed(demo_case(NAME)))
    assert "what is in and behind the wall" not in rows["Drill the wall for the line set"][-1]
    assert rows["Fit the sleeve, seal and patch"][-1] == "Behind a stop."
    assert rows["Dry-fit indoor unit, line and outdoor unit"][-1].startswith("Nothing is cut")
    assert "STOP" in rows["Fix the plate and hang the indoor unit"][-1]


def test_a_signature_is_printed_at_its_stop_its_finding_and_on_record(printed):
    content = printed(case_with(SIGNED))
    told = "Signed by Ada Name (a contractor, number L-77) on Tue 9 March."
    assert told in steps(content)["Fix the plate and hang the indoor unit"][-1]
    assert finding(content, "Cables, pipes").signed.startswith("Signed by Ada Name (a contractor, number L-77)")
    record = next(each for each in content.blocks if isinstance(each, Grid) and each.titles[0] == "Finding")
    assert record.rows[0][1:5] == ("signed", "Ada Name (a contractor)", "L-77", "Tue 9 March")


def test_a_signature_taken_back_is_printed_as_that_and_leaves_the_line(printed):
    content = printed(with_sign_off_back(case_with(SIGNED), 0, "2027-03-10", "Wrong wall"))
    assert finding(content, "Cables, pipes").signed == ""
    record = next(each for each in content.blocks if isinstance(each, Grid) and each.titles[0] == "Finding")
    assert record.rows[0][-1] == "Scanned from both sides Taken back on Wed 10 March: Wrong wall."


def test_a_stop_is_not_printed_as_signed_by_whom_it_does_not_ask_for(printed):
    content = printed(case_with({**SIGNED, "role": "landlord"}))
    assert "It does not count: this stop is signed by others. Signed" in finding(content, "Cables, pipes").signed
    told = steps(content)["Fix the plate and hang the indoor unit"][-1]
    assert "STOP" in told


def test_a_caution_dealt_with_and_a_note_read_are_printed_so(printed):
    dealt = {"code": "electrical.stored_charge", "kind": "dealt", "note": "Waited ten minutes"}
    content = printed(case_with(dealt))
    assert finding(content, "dangerous charge").signed == "Dealt with: Waited ten minutes."


def test_names_stay_out_where_the_user_wants_them_left_out(printed):
    case = with_fields(case_with(SIGNED), "paper", {"leave_out": "yes"})
    text = html_text(printed(case))
    assert "Ada Name" not in text
    assert "L-77" not in text
    assert "a named person" in text


def test_what_is_typed_at_a_signature_prints_as_text(printed):
    hostile = '<script>alert(1)</script> =SUM(A1) "quoted" ' + "y" * 3000
    line = {**SIGNED, "who": hostile, "note": hostile, "licence": hostile}
    text = html_text(printed(case_with(line)))
    assert "<script" not in text
    assert squeezed(hostile) in squeezed(html_body(text))


@pytest.mark.parametrize("reader", [Reader.OWNER, Reader.LANDLORD])
def test_every_long_report_prints_the_plan(printed, reader):
    assert steps(printed(demo_case(NAME), reader))


def test_page_one_names_stops_that_are_not_signed_first_and_counts_the_others(printed):
    content = printed(case_with(SIGNED))
    heading = next(each.text for each in content.blocks if isinstance(each, Heading) and "findings in all" in each.text)
    assert "(1 signed)" in heading
    points = [text for each in content.blocks if isinstance(each, Points) for text in each.texts]
    assert not any(text.startswith("Stop: Cables, pipes") for text in points)
