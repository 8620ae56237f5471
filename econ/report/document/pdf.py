"""A document as PDF: pages with numbers, tables that run on, drawings as vectors; no browser, no system library."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any, Final

from reportlab.lib import colors
from reportlab.lib.pagesizes import A4, letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    KeepTogether,
    PageBreak,
    PageTemplate,
    Paragraph,
    Spacer,
)
from reportlab.platypus import (
    Frame as PageFrame,
)

from econ.report.document import block
from econ.report.document.block import Block, Document, Setting, Size, Tone
from econ.report.document.pdf_drawing import PdfDrawing
from econ.report.document.pdf_table import findings_table, form_table, grid_table
from econ.report.document.pdf_text import BOLD_FACE, PLAIN_FACE, marked, runs, width_of

SHEETS: Final = {Size.LETTER: letter, Size.A4: A4}
SIDE: Final = 46.0
TOP: Final = 40.0
FOOT: Final = 46.0
FOOT_SIZE: Final = 7.0
Group = list[Flowable]
"""What stays on one page."""

NEAR_END: Final = 96.0
"""A heading with less room beneath it goes to the next page. [pt]"""

_PLAIN: Final = ParagraphStyle(
    "plain", fontName=PLAIN_FACE, fontSize=9.0, leading=12.0, spaceAfter=4.0, splitLongWords=1
)
_STYLES: Final = {
    Tone.PLAIN: _PLAIN,
    Tone.VERDICT: ParagraphStyle(
        "verdict", _PLAIN, fontName=BOLD_FACE, fontSize=11.5, leading=15.5, spaceBefore=4.0, spaceAfter=6.0
    ),
    Tone.SMALL: ParagraphStyle("small", _PLAIN, fontSize=7.5, leading=9.5, textColor=colors.HexColor("#3c4548")),
    Tone.OWN_WORDS: ParagraphStyle("own", _PLAIN, fontSize=8.0, leading=10.5, leftIndent=8.0),
}
_POINT: Final = ParagraphStyle("point", _PLAIN, leftIndent=11.0, bulletIndent=2.0, spaceAfter=2.0)
_HEADINGS: Final = {
    1: ParagraphStyle("title", _PLAIN, fontName=BOLD_FACE, fontSize=17.0, leading=21.0, spaceAfter=3.0),
    2: ParagraphStyle("head", _PLAIN, fontName=BOLD_FACE, fontSize=11.5, leading=14.0, spaceBefore=9.0, spaceAfter=3.0),
    3: ParagraphStyle("under", _PLAIN, fontName=BOLD_FACE, fontSize=9.0, leading=12.0, spaceBefore=5.0, spaceAfter=2.0),
}


def pdf_bytes(document: Document) -> bytes:
    """Return the document as a PDF file.

    Parameters
    ----------
    document : Document
        What to print.
    """
    written, sheet = BytesIO(), Sheet(SHEETS[document.paper.size], document.paper.scale)
    template = BaseDocTemplate(written, pagesize=sheet.size, title=document.title, author="", invariant=1)
    left, foot, (width, height) = SIDE / sheet.scale, FOOT / sheet.scale, sheet.inside
    frame = PageFrame(left, foot, width, height, leftPadding=0, rightPadding=0, topPadding=0)
    template.addPageTemplates([PageTemplate("page", [frame], onPage=sheet.enlarge)])
    flow = _flow(document.blocks, width)
    footer = document.footer.text
    template.build(flow, canvasmaker=lambda *given, **more: _Numbered(sheet, footer, *given, **more))
    return written.getvalue()


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet of paper, and how much larger than usual everything on it is.

    Attributes
    ----------
    size : (float, float)
        Width and height. [pt]
    scale : float
        1 for usual print. [dimensionless]
    """

    size: tuple[float, float]
    scale: float

    @property
    def inside(self) -> tuple[float, float]:
        """Width and height within the margins, in units that the scale makes larger. [pt]"""
        width, height = self.size
        return (width - 2.0 * SIDE) / self.scale, (height - TOP - FOOT) / self.scale

    def enlarge(self, canvas: Canvas, _template: BaseDocTemplate) -> None:
        """Make all that follows on a page larger."""
        canvas.scale(self.scale, self.scale)


def _flow(blocks: Sequence[Block], width: float) -> list[Flowable]:
    """Return what the library sets, in order: headings stay with what follows them, small groups stay whole."""
    flow: list[Flowable] = []
    heads: list[Flowable] = []
    for each in blocks:
        if isinstance(each, block.Heading):
            heads.append(Paragraph(marked(each.text), _HEADINGS[each.level]))
            continue
        groups = _WRITERS[type(each)](each, width)
        if heads and groups:
            groups[0] = [*heads, *groups[0]]
            flow.append(CondPageBreak(NEAR_END))
            heads = []
        flow += map(_kept, groups)
    return [*flow, *heads]


def _kept(group: Group) -> Flowable:
    return group[0] if len(group) == 1 else KeepTogether(group)


def _sentence(each: block.Sentence, _width: float) -> list[Group]:
    return [[Paragraph(marked(each.text), _STYLES[each.tone])]]


def _points(each: block.Points, _width: float) -> list[Group]:
    return [[Paragraph(marked(text), _POINT, bulletText="\u2022")] for text in each.texts]


def _grid(each: block.Grid, width: float) -> list[Group]:
    caption: Group = [Paragraph(marked(each.caption), _HEADINGS[3])] if each.caption else []
    table, space = grid_table(each, width), Spacer(0, 5)
    if each.setting is not Setting.TINY:
        return [[*caption, table, space]]
    return [[CondPageBreak(NEAR_END), *caption], [table], [space]]


def _picture(each: block.Picture, width: float) -> list[Group]:
    return [[Paragraph(marked(each.statement), _PLAIN), PdfDrawing(each.drawing, width), Spacer(0, 5)]]


def _findings(each: block.Findings, width: float) -> list[Group]:
    return [[findings_table(each, width)], [Spacer(0, 5)]]


def _blanks(each: block.Blanks, width: float) -> list[Group]:
    return [[form_table(each, width), Spacer(0, 5)]]


def _frame(each: block.Frame, width: float) -> list[Group]:
    return [[Paragraph(marked(each.label), _STYLES[Tone.SMALL]), _Empty(width, each.height), Spacer(0, 5)]]


def _page_end(_each: block.PageEnd, _width: float) -> list[Group]:
    return [[PageBreak()]]


_WRITERS: Final[dict[type[Block], Callable[[Any, float], list[Group]]]] = {
    block.Sentence: _sentence,
    block.Points: _points,
    block.Grid: _grid,
    block.Picture: _picture,
    block.Findings: _findings,
    block.Blanks: _blanks,
    block.Frame: _frame,
    block.PageEnd: _page_end,
}


class _Empty(Flowable):  # type: ignore[misc]
    """A frame to draw in by hand."""

    def __init__(self, width: float, height: float) -> None:
        super().__init__()
        self.width, self.height = width, height

    def draw(self) -> None:
        """Draw its border."""
        self.canv.setLineWidth(0.6)
        self.canv.setDash(1.5, 2.0)
        self.canv.rect(0.0, 0.0, self.width, self.height)


class _Numbered(Canvas):  # type: ignore[misc]
    """Pages that wait until their number is known; then each gets its footer."""

    def __init__(self, sheet: Sheet, footer: str, *given: Any, **more: Any) -> None:
        super().__init__(*given, **more)
        self._sheet, self._footer = sheet, footer
        self._waiting: list[dict[str, Any]] = []

    def showPage(self) -> None:  # noqa: N802 - the library's name
        """Keep the page for later."""
        self._waiting.append(dict(self.__dict__))
        self._startPage()

    def save(self) -> None:
        """Write every page with its footer."""
        waiting = self._waiting
        for number, page in enumerate(waiting, start=1):
            self.__dict__.update(page)
            self._foot(f"page {number} of {len(waiting)}")
            super().showPage()
        super().save()

    def _foot(self, number: str) -> None:
        right = self._sheet.size[0] - SIDE
        self.scale(1.0 / self._sheet.scale, 1.0 / self._sheet.scale)
        self.setDash()
        self.setStrokeColor(colors.HexColor("#8a8a8a"))
        self.setLineWidth(0.4)
        self.line(SIDE, FOOT - 10.0, right, FOOT - 10.0)
        self.setFillColor(colors.HexColor("#3c4548"))
        self._write(self._footer, SIDE)
        self._write(number, right - width_of(number, FOOT_SIZE))

    def _write(self, text: str, left: float) -> None:
        line = self.beginText(left, FOOT - 20.0)
        for face, part in runs(text):
            line.setFont(face, FOOT_SIZE)
            line.textOut(part)
        self.drawText(line)
