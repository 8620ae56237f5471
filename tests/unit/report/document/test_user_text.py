"""Whatever a user types prints as text: markup, quotes, formulas, odd letters, and far too much of it."""

from dataclasses import replace

import pytest

from econ.case.edit import with_fields, with_value
from econ.report.document.content.basis import basis
from econ.report.document.html import html_text
from econ.report.document.pdf import pdf_bytes
from econ.report.document.readers import Reader, document
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_case
from tests.unit.report.document.printed import Pdf, html_body, squeezed

MARKUP = (
    '<script>alert("1")</script> & <b>bold</b> <font color="red"> </para> <br/> &lt; ]]> <!-- '
    "'single' \"double\" `back` \\ backslash {brace} %s %(x)s }} @page { } */ =SUM(A1:A9)+cmd|' /C calc'!A0 "
    "one\ntwo\n\nfour\twith a tab"
)
LETTERS = "Žluťoučký kůň, Ελλάδα, 日本, 😀, ½ m² \u22125 °C"
HOSTILE = {"markup": MARKUP, "letters": LETTERS, "unbroken": "x" * 10_000}


@pytest.fixture(scope="module")
def documents():
    made = {}

    def written(kind, reader):
        if (kind, reader) not in made:
            text = HOSTILE[kind]
            case = with_fields(demo_case(NAMES[0]), "record", {"name": text, "notes": text, "filled_in_by": text})
            case = with_value(case, "rooms[0].name", text)
            found = answer(case, load_tables(), TODAY, 0)
            made[kind, reader] = document(basis(found, load_tables(), TODAY), reader)
        return made[kind, reader]

    return written


@pytest.mark.parametrize("kind", HOSTILE)
def test_the_html_holds_the_text_and_no_tag_of_it(documents, kind):
    text = html_text(documents(kind, Reader.OWNER))
    assert squeezed(HOSTILE[kind]) in squeezed(html_body(text))
    assert not [tag for tag in ("<script", "<b>bold", "<font", "</para", "<!-- ") if tag in text]
    assert text.count("</style>") == 1


@pytest.mark.parametrize("kind", sorted(set(HOSTILE) - {"letters"}))
def test_the_pdf_holds_the_text_whole_and_nothing_leaves_the_page(documents, kind):
    pdf = Pdf(pdf_bytes(documents(kind, Reader.OWNER)))
    assert squeezed(HOSTILE[kind]) in squeezed(pdf.text)
    for at, page in enumerate(pdf.pages):
        width, _ = page.get_size()
        assert all(box.left > 0.0 and box.right < width for box in pdf.boxes(at))


def test_letters_that_no_face_can_write_stand_as_their_numbers(documents):
    text = squeezed(Pdf(pdf_bytes(documents("letters", Reader.OWNER))).text)
    assert "[U+65E5][U+672C]" in text
    assert "½m²\u22125°C" in text


@pytest.mark.parametrize("kind", ["markup", "unbroken"])
@pytest.mark.parametrize("reader", [Reader.PERMIT, Reader.HELPER, Reader.INSURER, Reader.NEIGHBOUR])
def test_sheets_stay_one_page_whatever_the_name(documents, kind, reader):
    assert len(Pdf(pdf_bytes(documents(kind, reader)))) == 1


def test_a_case_without_a_name_leaves_lines_to_fill_in():
    case = with_fields(demo_case(NAMES[0]), "record", {"name": None, "notes": None, "filled_in_by": None})
    found = answer(case, load_tables(), TODAY, 0)
    pdf = Pdf(pdf_bytes(document(basis(found, load_tables(), TODAY), Reader.OWNER)))
    assert "filled in by ____" in pdf.footer(0)
    assert "Filled in by ____" in pdf.body(0)


def test_without_tries_the_report_says_so():
    found = answer(demo_case(NAMES[0]), load_tables(), TODAY, 0)
    text = squeezed(html_body(html_text(document(basis(found, load_tables(), TODAY), Reader.OWNER))))
    assert "notknown;0tries,seed1." in text


def test_stale_tables_are_told():
    made = basis(answer(demo_case(NAMES[0]), load_tables(), TODAY, 0), load_tables(), TODAY)
    late = replace(made, printed=TODAY.replace(year=2099))
    assert "(past)" in html_text(document(late, Reader.OWNER))
