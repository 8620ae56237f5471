"""Paper, large print, and a print without address and names: the same words on other sheets, and nobody named."""

import re
from dataclasses import replace

import pytest

from econ.case.edit import with_fields, with_value
from econ.case.schema import SECTIONS
from econ.report.document.block import LARGE, Paper, Size
from econ.report.document.content.basis import basis
from econ.report.document.content.private import PERSONAL
from econ.report.document.html import html_text
from econ.report.document.pdf import pdf_bytes
from econ.report.document.readers import Reader, document
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_case
from tests.unit.report.document.printed import Pdf, demo_document, demo_html, demo_pdf, figures, html_body, squeezed
from tests.unit.report.document.test_record import BUILT, TESTED, written
from tests.unit.report.document.test_writers import EDGE, MOST_BODY_PAGES, PAGES_LOOKED_AT

LOWER = "lower_level_cold"
A4, LARGE_PRINT = Paper(Size.A4), Paper(Size.LETTER, is_large=True)
WHO = "Zwölf Quixote-Nobody"
SIGNED = {"code": "refrigerant.leak_check", "kind": "signed", "who": WHO, "role": "owner", "date": "2027-06-26"}


def printed_on(name, reader, paper):
    return Pdf(pdf_bytes(replace(demo_document(name, reader), paper=paper)))


@pytest.mark.parametrize("name", NAMES)
def test_on_a4_the_owners_report_has_two_to_six_pages_before_its_appendix(name):
    pdf = printed_on(name, "owner", A4)
    # ISO 216: A4 is 210 by 297 mm; 1 pt is 25.4 / 72 mm.
    assert pdf.pages[0].get_size() == pytest.approx((210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0), abs=0.5)
    body = next(at for at in range(len(pdf)) if "Appendix" in pdf.body(at))
    assert 2 <= body <= MOST_BODY_PAGES


@pytest.mark.parametrize("reader", ["permit", "insurer", "neighbour", "helper"])
def test_on_a4_a_sheet_is_one_page(reader):
    assert len(printed_on(LOWER, reader, A4)) == 1


@pytest.mark.parametrize("paper", [A4, LARGE_PRINT], ids=["a4", "large"])
@pytest.mark.parametrize("reader", ["owner", "insurer", "helper"])
def test_the_same_words_lie_on_other_paper_without_overlap(reader, paper):
    pdf = printed_on(LOWER, reader, paper)
    whole = squeezed(pdf.text)
    assert not [word for word in re.findall(r"\S{4,}", html_body(demo_html(LOWER, reader))) if word not in whole]
    assert figures(pdf.text) == figures(demo_pdf(LOWER, reader).text)
    for at, page in enumerate(pdf.pages[:PAGES_LOOKED_AT]):
        width, height = page.get_size()
        boxes = pdf.boxes(at)
        assert all(box.left > EDGE and box.right < width - EDGE for box in boxes), at
        assert all(box.bottom > EDGE and box.top < height - EDGE for box in boxes), at
        assert not [(one, two) for number, one in enumerate(boxes) for two in boxes[:number] if one.overlaps(two)], at


def test_large_print_is_a_quarter_larger():
    usual, large = (
        next(box for box in pdf.boxes(0) if box.text.startswith("Lower level"))
        for pdf in (demo_pdf(LOWER, "owner"), printed_on(LOWER, "owner", LARGE_PRINT))
    )
    assert (large.right - large.left) / (usual.right - usual.left) == pytest.approx(LARGE, rel=0.02)
    assert "page 1 of" in printed_on(LOWER, "owner", LARGE_PRINT).footer(0)


def test_the_html_prints_on_the_paper_asked_for():
    page = html_text(replace(demo_document(LOWER, "owner"), paper=Paper(Size.A4, is_large=True)))
    assert "@page { size: a4;" in page
    assert "font-size: 10.75pt" in page
    assert "@page { size: letter;" in demo_html(LOWER, "owner")
    assert "10.75pt" not in demo_html(LOWER, "owner")


def test_paper_is_taken_from_the_case():
    case = with_fields(demo_case(LOWER), "paper", {"size": "a4", "large_print": "yes"})
    made = basis(answer(case, load_tables(), TODAY, 0), load_tables(), TODAY)
    assert document(made, Reader.HELPER).paper == Paper(Size.A4, is_large=True)


def named(**paper):
    """Return a case in which every field that may name a person or a place does."""
    case = with_fields(with_fields(demo_case(LOWER), "tests", TESTED), "as_built", BUILT)
    for section, names in PERSONAL.items():
        kinds = {name: SECTIONS[section].model_fields[name].json_schema_extra["kind"] for name in names}
        keys = {"spoke_to": "electrician", "answers": "permit_needed"}
        for name, kind in kinds.items():
            path = f"{section}.{name}" if kind == "text" else f"{section}.{name}.{keys.get(name, 'circuit')}"
            case = with_value(case, path, WHO)
    case = with_value(case, "rooms[0].name", WHO)
    case = case.model_copy(update={"signed": (SECTIONS["signed"](**SIGNED),)})
    return with_fields(case, "paper", paper) if paper else case


def text_of(case, reader):
    made = basis(answer(case, load_tables(), TODAY, 0), load_tables(), TODAY)
    return html_body(html_text(document(made, reader))) + html_text(document(made, reader))


@pytest.mark.parametrize("reader", list(Reader))
def test_nobody_and_no_place_is_named_where_they_are_to_be_left_out(reader):
    assert WHO not in text_of(named(leave_out="yes"), reader)


@pytest.mark.parametrize("reader", [Reader.OWNER, Reader.INSURER, Reader.PERMIT, Reader.NEIGHBOUR])
def test_they_are_named_otherwise(reader):
    assert WHO in text_of(named(), reader)


def test_leaving_names_out_changes_no_figure():
    whole, left = (
        basis(answer(case, load_tables(), TODAY, 0), load_tables(), TODAY) for case in (named(), named(leave_out="yes"))
    )
    assert left.result.measures.lcc_usd.tolist() == whole.result.measures.lcc_usd.tolist()
    assert left.result.rooms.name[0] == "Room 1"
    assert left.made_from == whole.made_from


def test_a_record_in_large_print_holds_together():
    pdf = Pdf(pdf_bytes(replace(written("owner"), paper=LARGE_PRINT)))
    at = next(at for at in range(len(pdf)) if "To buy" in pdf.body(at))
    boxes = pdf.boxes(at)
    assert not [(one, two) for number, one in enumerate(boxes) for two in boxes[:number] if one.overlaps(two)]
