"""HTML and PDF say the same, on pages that hold together, to a reader who is no engineer."""

import re

import pytest

from econ.evaluate.figures import FIGURES
from econ.report.document.block import Grid
from econ.report.document.readers import MONEYLESS, ONE_PAGE, TWO_PAGES, Reader
from tests.demo import NAMES
from tests.unit.report.document.printed import (
    demo_basis,
    demo_document,
    demo_html,
    demo_pdf,
    figures,
    html_body,
    sentences,
    squeezed,
)

LONG = tuple(reader for reader in Reader if reader not in (*ONE_PAGE, *TWO_PAGES))
MOST_BODY_PAGES = 6
MOST_WORDS = 18
PRINTED = [*((name, Reader.OWNER) for name in NAMES), *((NAMES[2], reader) for reader in Reader if reader != "owner")]
EDGE = 18.0
"""Least distance of text from the edge of the paper. [pt]"""

PAGES_LOOKED_AT = 9
"""Body and the first pages of the appendix; the rest is one table that runs on."""


@pytest.mark.parametrize(("name", "reader"), PRINTED)
def test_html_and_pdf_hold_the_same_figures(name, reader):
    ours, theirs = figures(html_body(demo_html(name, reader))), figures(demo_pdf(name, reader).text)
    assert sum(ours.values()) > (800 if reader in LONG else 3)
    assert ours - theirs == theirs - ours


@pytest.mark.parametrize(("name", "reader"), PRINTED)
def test_html_and_pdf_hold_the_same_words(name, reader):
    html, pdf = (
        re.findall(r"[A-Za-z]{4,}", text) for text in (html_body(demo_html(name, reader)), demo_pdf(name, reader).text)
    )
    assert set(html) - set(pdf) == set()


@pytest.mark.parametrize(("name", "reader"), PRINTED)
def test_no_text_leaves_the_page_or_lies_on_other_text(name, reader):
    pdf = demo_pdf(name, reader)
    for at, page in enumerate(pdf.pages[:PAGES_LOOKED_AT]):
        width, height = page.get_size()
        boxes = pdf.boxes(at)
        outside = [
            box
            for box in boxes
            if box.left < EDGE or box.right > width - EDGE or box.bottom < EDGE or box.top > height - EDGE
        ]
        assert not outside, f"page {at + 1}"
        covered = [(one, two) for number, one in enumerate(boxes) for two in boxes[:number] if one.overlaps(two)]
        assert not covered, f"page {at + 1}"


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", LONG)
def test_a_long_report_has_two_to_six_pages_before_its_appendix(name, reader):
    pdf = demo_pdf(name, reader)
    body = next(at for at in range(len(pdf)) if "Appendix" in pdf.body(at))
    assert 2 <= body <= MOST_BODY_PAGES


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", ONE_PAGE)
def test_a_sheet_is_one_page(name, reader):
    assert len(demo_pdf(name, reader)) == 1


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", TWO_PAGES)
def test_two_pages_are_two(name, reader):
    assert len(demo_pdf(name, reader)) == 2


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", LONG)
def test_page_one_says_the_verdict_who_filled_it_in_and_how_much_is_usual(name, reader):
    from econ.report.words.verdict import answer_text

    answer, first = demo_basis(name).answer, demo_pdf(name, reader).body(0)
    assert squeezed(answer_text(answer)) in squeezed(first)
    assert re.search(r"Madefrom\d+answers?,\d+usual,\d+notknown", squeezed(first))
    assert squeezed("Filled in by Invented demo case") in squeezed(first)
    assert squeezed("The four ways in figures") in squeezed(demo_pdf(name, reader).body(1))


def test_every_page_says_case_version_date_seed_who_and_its_number():
    pdf = demo_pdf(NAMES[0], Reader.OWNER)
    for at in range(len(pdf)):
        foot = pdf.footer(at)
        assert f"page {at + 1} of {len(pdf)}" in foot
        for part in ("Garage studio in the heat", "results version", "2027-03-10", "seed 1", "filled in by Invented"):
            assert part in foot


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", MONEYLESS)
def test_a_sheet_that_money_does_not_concern_holds_none(name, reader):
    text = demo_pdf(name, reader).text + html_body(demo_html(name, reader))
    assert "$" not in text
    assert "USD" not in text


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", tuple(Reader))
def test_sentences_are_short_enough_to_read_once(name, reader):
    words = [len(sentence.split()) for sentence in sentences(demo_document(name, reader))]
    assert sum(words) / len(words) <= MOST_WORDS


@pytest.mark.parametrize("reader", tuple(Reader))
def test_the_html_asks_for_nothing_and_runs_nothing(reader):
    text = demo_html(NAMES[1], reader)
    assert not re.search(
        r"<(script|link|img|iframe|object|embed|base|form)\b|\bon\w+\s*=|url\(|@import|\bsrc\s*=|href", text
    )
    assert "default-src 'none'" in text


def test_every_input_stands_in_the_appendix_with_its_source():
    text = squeezed(demo_pdf(NAMES[3], Reader.OWNER).text)
    basis = demo_basis(NAMES[3])
    from econ.report.labels import labels

    words = labels(basis.answer.sheet, basis.tables, basis.answer.structure.room_names)
    assert not [label for label in words.values() if squeezed(label) not in text]
    assert not [source for source in set(basis.answer.sheet.source) if squeezed(source) not in text]


def test_every_data_table_stands_in_the_appendix():
    text = squeezed(demo_pdf(NAMES[0], Reader.OWNER).text)
    assert not [name for name in demo_basis(NAMES[0]).tables.records if squeezed(name) not in text]


@pytest.mark.parametrize("reader", ["owner", "landlord"])
def test_every_headline_figure_opens_in_the_appendix_on_one_line(reader):
    blocks = demo_document("lower_level_cold", reader).blocks
    grid = next(each for each in blocks if isinstance(each, Grid) and "How it is worked out" in each.titles)
    assert [row[0] for row in grid.rows] == [*(found.label for found in FIGURES), "Cheapest"]
    for row in grid.rows:
        assert all(cell for cell in row)
        assert row[4][0].isdigit()
