"""The record of the work in print: whole, as text, on pages that hold together, and never as a proof."""

from functools import cache

import pytest

from econ.case.edit import with_fields, with_value
from econ.case.schema import SECTIONS
from econ.case.sections.as_built import RECORDS
from econ.kernel.alternative import Alternative
from econ.report.document.block import Blanks, Grid
from econ.report.document.content.basis import basis
from econ.report.document.html import html_text
from econ.report.document.pdf import pdf_bytes
from econ.report.document.readers import Reader, document
from econ.report.numbers import NONE_TEXT
from econ.report.words.record import days_done
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_case
from tests.unit.report.document.printed import Pdf, demo_document, html_body, squeezed
from tests.unit.report.document.test_user_text import MARKUP
from tests.unit.report.document.test_writers import EDGE

LOWER = "lower_level_cold"
JOINTS = ("outdoor_wide_1", "outdoor_thin_1", "indoor_wide_1", "indoor_thin_1")
TESTED = {
    "leak_means": "both",
    "leak_at_once_on": "2027-06-26",
    "joints": {f"{joint}.at_once": "tight" for joint in JOINTS},
    "mode": "test_mode",
    "running": "cooling",
    "minutes_min": 20,
    "return_c": "76 degF",
    "supply_c": "55 degF",
    "drain": "ran_clear",
    "breaker_a": 30,
    "volts_v": 241,
    "photos": ["panel", "drain_end"],
}
BUILT = {
    "way": "self_install",
    "in_service_on": "2027-06-26",
    "permit_no": "M-113",
    "inspected_by": "the city",
    "inspected_on": "2027-06-29",
    "done_by": {"circuit": "Volt and Sons"},
    "licence": {"circuit": "EL-4455"},
    "done_on": {"circuit": "2027-06-12"},
    "hours_h": {"wall_hole": 3.5},
    "cost_usd": {"circuit": 820},
}
FREE = [
    (f"{section.path}.{name}", kind["kind"])
    for section in RECORDS.values()
    for name, declared in section.model_fields.items()
    if isinstance(kind := declared.json_schema_extra, dict) and kind["kind"] in ("text", "notes")
    if section.path != "first_year"
]
KEYS = {"phone.answers": "permit_needed", "phone.spoke_to": "electrician"}


@cache
def written(reader, text=""):
    case = with_fields(with_fields(demo_case(LOWER), "tests", TESTED), "as_built", BUILT)
    for path, kind in FREE if text else ():
        case = with_value(case, path if kind == "text" else f"{path}.{KEYS.get(path, 'circuit')}", text)
    return document(basis(answer(case, load_tables(), TODAY, 0), load_tables(), TODAY), Reader(reader))


def lines(content):
    return {label: value for each in content.blocks if isinstance(each, Blanks) for label, value in each.lines}


def cells(content, title):
    return next(each.rows for each in content.blocks if isinstance(each, Grid) and title in each.titles)


def test_every_section_of_the_record_is_tried():
    assert {path.partition(".")[0] for path, _ in FREE} == set(RECORDS) - {"first_year"}
    assert set(RECORDS) < set(SECTIONS)


def test_the_insurers_sheet_prints_what_was_entered_and_leaves_the_rest_open():
    known = lines(written("insurer"))
    assert known["Leak test: with what, on"] == "Both; 2027-06-26, 4 of 4 joints tight"
    assert known["Breaker; volts at the unit"] == "30 A; 241 V"
    assert known["Inspected by; on"] == "the city; 2027-06-29"
    assert known["Again after 24 hours; after 30 days"] == ""
    circuit = next(
        row for row in cells(written("insurer"), "Done by, licence no.") if row[0].startswith("Run the new circuit")
    )
    assert circuit[3:] == ("Volt and Sons, EL-4455", "2027-06-12")
    assert not any(lines(demo_document(LOWER, "insurer"))[label] for label in list(known)[-6:])


def test_the_owner_reads_hours_and_cost_entered_beside_the_estimate_by_its_name():
    content = written("owner")
    assert {row[4:] for row in cells(content, "Paid, entered")} == {("3.5", NONE_TEXT), (NONE_TEXT, "$820")}
    text = squeezed(html_body(html_text(content)))
    assert squeezed("Entered so far: 3.5 hours and $820. Estimated before the work") in text
    assert "measured" not in squeezed(" ".join(str(row) for row in cells(content, "To buy")))
    assert squeezed("It records what was entered. It is not proof of compliance.") in text


def test_nothing_entered_prints_no_record():
    titles = [getattr(each, "text", "") for each in demo_document(LOWER, "owner").blocks]
    assert "The record of the work" not in titles
    assert [title for title in titles if title.startswith("Appendix: to buy, to hire, to ask.")]


def test_a_client_is_given_no_lists_of_the_owners():
    titles = [getattr(each, "text", "") for each in demo_document("sunroom_with_quote", "client").blocks]
    assert not [title for title in titles if title.startswith("Appendix: to buy")]


@pytest.mark.parametrize("text", [MARKUP, "x" * 10_000], ids=["markup", "long"])
def test_whatever_is_entered_prints_whole_and_as_text(text):
    page, pdf = html_text(written("owner", text)), Pdf(pdf_bytes(written("owner", text)))
    assert squeezed(html_body(page)).count(squeezed(text)) >= len(FREE)
    assert not [tag for tag in ("<script", "<b>bold", "<font", "</para", "<!-- ") if tag in page]
    assert squeezed(pdf.text).count(squeezed(text)) >= len(FREE) - 2
    for at, sheet in enumerate(pdf.pages):
        width, _ = sheet.get_size()
        assert all(box.left > 0.0 and box.right < width for box in pdf.boxes(at))


@pytest.mark.parametrize("reader", ["permit", "insurer", "neighbour", "helper"])
@pytest.mark.parametrize("text", ["", MARKUP, "x" * 10_000], ids=["plain", "markup", "long"])
def test_sheets_stay_one_page_whatever_is_entered(reader, text):
    assert len(Pdf(pdf_bytes(written(reader, text)))) == 1


def test_pages_of_the_record_hold_together():
    pdf = Pdf(pdf_bytes(written("owner")))
    pages = [at for at in range(len(pdf)) if "To buy" in pdf.body(at) or "record of the work" in pdf.body(at)]
    assert pages
    for at in range(min(pages), max(pages) + 2):
        width, height = pdf.pages[at].get_size()
        boxes = pdf.boxes(at)
        assert all(box.left > EDGE and box.right < width - EDGE for box in boxes)
        assert all(box.bottom > EDGE and box.top < height - EDGE for box in boxes)
        assert not [(one, two) for number, one in enumerate(boxes) for two in boxes[:number] if one.overlaps(two)]


def test_every_demo_case_prints_its_lists():
    assert NAMES
    for name in NAMES:
        assert cells(demo_document(name, "owner"), "To ask by phone")


def test_a_step_marked_done_gives_its_day_and_the_record_comes_first():
    step = {"route": "self_install", "task": "wall_hole", "state": "done", "date": "2027-06-13"}
    steps = (
        step,
        step | {"task": "circuit"},
        step | {"task": "line_set"},
        step | {"task": "line_set", "state": "open"},
    )
    case = with_fields(demo_case(LOWER), "as_built", BUILT)
    case = case.model_copy(update={"steps": tuple(SECTIONS["steps"](**line) for line in steps)})
    days = days_done(case, Alternative.SELF_INSTALL)
    assert days == {"wall_hole": "2027-06-13", "circuit": "2027-06-12"}
    assert days_done(case, Alternative.CONTRACTED_INSTALL) == {"circuit": "2027-06-12"}


def test_the_helper_reads_parts_and_tests_and_no_money():
    known = lines(written("helper"))
    assert known["Air drawn in; blown out; how it ran"] == "76 °F; 55 °F; The maker's test mode"
    ((tools, parts),) = cells(written("helper"), "Parts to have at hand")
    assert "SDS-plus rotary hammer (hired: fetch it)" in tools
    assert "Vibration isolators" in parts
    assert "$" not in tools + parts


def test_lists_are_those_of_the_way_whose_steps_were_marked():
    line = {"route": "window_units", "task": "buy_carry", "state": "done", "date": "2027-06-01"}
    case = demo_case(LOWER).model_copy(update={"steps": (SECTIONS["steps"](**line),)})
    made = document(basis(answer(case, load_tables(), TODAY, 0), load_tables(), TODAY), Reader.OWNER)
    assert "Window unit" in {row[0] for row in cells(made, "To buy")}
