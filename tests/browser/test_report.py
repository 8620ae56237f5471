"""The HTML report in a real browser: it opens from a file, asks for nothing, fits a phone, prints with numbers."""

import io
import os

import pypdfium2
import pytest

from econ.report.document.file import Kind, document_bytes
from econ.report.document.readers import Reader
from econ.tables.loaders import load_tables
from tests.browser.dashboard import browser, chromium
from tests.demo import TODAY, demo_answer

PHONE_PX = 390


@pytest.fixture(scope="module")
def _needs_chromium():
    if not chromium() and os.environ.get("ECON_NEED_BROWSER") != "1":
        pytest.skip("No Chromium was found; install it (apt-get install chromium) to open the report.")


@pytest.fixture(scope="module")
def opened(_needs_chromium, tmp_path_factory):
    """Open the owner's report from its file on a phone-sized page; every request and complaint is noted."""
    file = tmp_path_factory.mktemp("report") / "mine.html"
    found = demo_answer("lower_level_cold", 64)
    file.write_bytes(document_bytes(found, load_tables(), TODAY, Reader.OWNER, Kind.HTML))
    with browser() as started:
        page = started.new_page(viewport={"width": PHONE_PX, "height": 844})
        page.requested, page.complained = [], []
        page.on("request", lambda request: page.requested.append(request.url))
        page.on("console", lambda line: page.complained.append(line.text))
        page.goto(file.as_uri())
        yield page, file


def test_the_report_asks_for_nothing_but_itself(opened):
    page, file = opened
    assert page.requested == [file.as_uri()]
    assert page.complained == []


def test_the_report_fits_a_phone(opened):
    page, _ = opened
    assert page.evaluate("document.documentElement.scrollWidth") == PHONE_PX


def test_printed_pages_are_numbered_and_hold_page_one_on_one_page(opened):
    page, _ = opened
    printed = pypdfium2.PdfDocument(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    texts = [printed[at].get_textpage().get_text_range() for at in range(len(printed))]
    assert f"page 1 of {len(printed)}" in texts[0]
    assert "filled in by Invented demo case" in texts[-1]
    assert "The four ways in figures" in texts[1]
