"""Documents of the demo cases, written once a process, and what can be read back from them."""

import re
from collections import Counter
from dataclasses import dataclass
from functools import cache
from html.parser import HTMLParser

import pypdfium2

from econ.report.document import block
from econ.report.document.content.basis import basis
from econ.report.document.html import html_text
from econ.report.document.pdf import FOOT, pdf_bytes
from econ.report.document.readers import Reader, document
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_answer

FIGURE = re.compile(r"[\u2212-]?\$?\d[\d,]*(?:\.\d+)?")
DRAWS = 64


@cache
def demo_basis(name):
    return basis(demo_answer(name, DRAWS), load_tables(), TODAY)


@cache
def demo_document(name, reader):
    return document(demo_basis(name), Reader(reader))


@cache
def demo_html(name, reader):
    return html_text(demo_document(name, reader))


@cache
def demo_pdf(name, reader):
    return Pdf(pdf_bytes(demo_document(name, reader)))


@dataclass(frozen=True)
class Box:
    """One run of text on a page, in points from its lower left corner."""

    left: float
    bottom: float
    right: float
    top: float
    text: str

    def overlaps(self, other, most=1.0):
        """Return whether two runs cover more of each other than so many points each way."""
        across = min(self.right, other.right) - max(self.left, other.left)
        up = min(self.top, other.top) - max(self.bottom, other.bottom)
        return across > most and up > most


class Pdf:
    """A written PDF, read back."""

    def __init__(self, content):
        self.content = content
        self.file = pypdfium2.PdfDocument(content)
        self.pages = [self.file[at] for at in range(len(self.file))]

    def __len__(self):
        return len(self.pages)

    def body(self, at):
        """Return the text of a page without its footer."""
        page = self.pages[at]
        width, height = page.get_size()
        return page.get_textpage().get_text_bounded(0.0, FOOT - 8.0, width, height)

    def footer(self, at):
        """Return the text at the foot of a page."""
        width, _ = self.pages[at].get_size()
        return self.pages[at].get_textpage().get_text_bounded(0.0, 0.0, width, FOOT - 8.0)

    @property
    def text(self):
        """All text without footers."""
        return "\n".join(self.body(at) for at in range(len(self)))

    def boxes(self, at):
        """Return the runs of text of a page."""
        page = self.pages[at].get_textpage()
        found = [page.get_rect(number) for number in range(page.count_rects())]
        return [Box(*rect, page.get_text_bounded(*rect)) for rect in found]


class _Text(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.parts, self.hidden = [], 0

    def handle_starttag(self, tag, _attrs):
        self.hidden += tag in ("style", "title", "footer", "script")
        self.parts.append(" ")

    def handle_endtag(self, tag):
        self.hidden -= tag in ("style", "title", "footer", "script")

    def handle_data(self, data):
        if not self.hidden:
            self.parts.append(data)


def html_body(text):
    """Return the text of an HTML file without title and footer."""
    reader = _Text()
    reader.feed(text)
    return "".join(reader.parts)


def figures(text):
    """Return every figure of a text with how often it stands there."""
    return Counter(FIGURE.findall(text))


def sentences(content):
    """Return the sentences of a document: running text, points, statements, findings."""
    for each in content.blocks:
        for text in _texts(each):
            yield from (part for part in re.split(r"(?<=[.?!])\s+(?=[A-Z\u201c])", text) if part.strip())


def _texts(each):
    if isinstance(each, block.Sentence):
        return [each.text]
    if isinstance(each, block.Points):
        return each.texts
    if isinstance(each, block.Picture):
        return [each.statement]
    if isinstance(each, block.Findings):
        return [text for item in each.items for text in (item.message, item.action)]
    return []


def squeezed(text):
    """Return a text without blanks and line ends, as lines are broken differently."""
    return re.sub(r"\s+", "", text)
