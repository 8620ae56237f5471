"""Tables of the PDF: cells that wrap, rows that run on over pages, heads that are repeated."""

from typing import Any, Final, TypeAlias

from reportlab.lib import colors
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph, Table

from econ.kernel.caution import Severity
from econ.report.document.block import SEVERITY_WORDS, Blanks, Finding, Findings, Grid, Setting, finding_cells
from econ.report.document.pdf_text import BOLD_FACE, PLAIN_FACE, is_plain, marked, width_of

RULE: Final = colors.HexColor("#9a9a9a")
HEAD_GREY: Final = colors.HexColor("#e9e9e9")
SIZES: Final = {Setting.NORMAL: 8.5, Setting.SMALL: 7.5, Setting.TINY: 6.2}
PADS: Final = {Setting.NORMAL: 2.2, Setting.SMALL: 1.3, Setting.TINY: 0.6}
INSET: Final = 3.0
SMALL_SIZE: Final = 6.8
LABEL_WIDTH: Final = 52.0
LEAST_LINE: Final = 15.0
"""Height of a line to write on by hand. [pt]"""

Cell: TypeAlias = str | Paragraph


def _style(size: float, *, is_bold: bool = False, is_number: bool = False) -> ParagraphStyle:
    return ParagraphStyle(
        "cell", fontName=BOLD_FACE if is_bold else PLAIN_FACE, fontSize=size, leading=size * 1.2,
        alignment=2 if is_number else 0, splitLongWords=1,
    )  # fmt: skip


def grid_table(grid: Grid, width: float) -> Table:
    """Return a table of the PDF.

    Parameters
    ----------
    grid : Grid
        Its cells.
    width : float
        The page's. [pt]
    """
    size, pad = SIZES[grid.setting], PADS[grid.setting]
    widths = [share * width / sum(grid.shares) for share in grid.shares]
    styles = {
        (bold, number): _style(size, is_bold=bold, is_number=number)
        for bold in (True, False)
        for number in (True, False)
    }

    def cell(text: str, column: int, *, is_bold: bool) -> Cell:
        fits = is_plain(text) and width_of(text, size, is_bold=is_bold) <= widths[column] - 2.0 * INSET
        return text if fits else Paragraph(marked(text), styles[is_bold, column in grid.numbers])

    rows = [[cell(text, column, is_bold=True) for column, text in enumerate(grid.titles)]]
    for at, row in enumerate(grid.rows):
        rows.append([cell(text, column, is_bold=at in grid.strong) for column, text in enumerate(row)])
    commands: list[tuple[Any, ...]] = [
        ("FONT", (0, 0), (-1, -1), PLAIN_FACE, size, size * 1.2),
        ("FONT", (0, 0), (-1, 0), BOLD_FACE, size, size * 1.2),
        ("BACKGROUND", (0, 0), (-1, 0), HEAD_GREY),
        *_frame_commands(pad),
        *(("ALIGN", (column, 0), (column, -1), "RIGHT") for column in grid.numbers),
        *(("FONT", (0, at + 1), (-1, at + 1), BOLD_FACE, size, size * 1.2) for at in grid.strong),
    ]
    return Table(rows, colWidths=widths, style=commands, repeatRows=1, splitInRow=1)


def _frame_commands(pad: float) -> list[tuple[Any, ...]]:
    return [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LINEBELOW", (0, 0), (-1, -1), 0.25, RULE),
        ("LEFTPADDING", (0, 0), (-1, -1), INSET),
        ("RIGHTPADDING", (0, 0), (-1, -1), INSET),
        ("TOPPADDING", (0, 0), (-1, -1), pad),
        ("BOTTOMPADDING", (0, 0), (-1, -1), pad + 0.8),
    ]


def findings_table(findings: Findings, width: float) -> Table:
    """Return things to mind as a table: the severity in a frame, then what, what to do, who, and a line to sign on."""
    rows = [[_severity(item), _finding(item)] for item in findings.items]
    commands = [*_frame_commands(0.9)]
    for at, item in enumerate(findings.items):
        if item.severity is Severity.HOLD_POINT:
            commands.append(("BOX", (0, at), (0, at), 1.2, colors.black))
    return Table(rows, colWidths=[LABEL_WIDTH, width - LABEL_WIDTH], style=commands)


def _severity(item: Finding) -> Paragraph:
    return Paragraph(marked(SEVERITY_WORDS[item.severity]), _style(8.0, is_bold=True))


def _finding(item: Finding) -> Paragraph:
    """Return the found in bold, then the action, the rest small, and the line to sign on, in one run of lines."""
    found, action, rest, signature = finding_cells(item)
    small = f'<font size="{SMALL_SIZE}">{marked(rest)}</font>'
    told = f'<font face="{BOLD_FACE}">{marked(found)}</font> {marked(action)} {small} {marked(signature)}'
    return Paragraph(told.rstrip(), _style(8.2))


def form_table(blanks: Blanks, width: float) -> Table:
    """Return the lines of a form: a label, and what is known or a line to write on."""
    label, known = _style(8.5), _style(8.5, is_bold=True)
    rows = [[Paragraph(marked(name), label), Paragraph(marked(value), known)] for name, value in blanks.lines]
    commands = [
        ("VALIGN", (0, 0), (-1, -1), "BOTTOM"),
        ("LINEBELOW", (1, 0), (1, -1), 0.5, RULE),
        ("LEFTPADDING", (0, 0), (-1, -1), INSET),
        ("TOPPADDING", (0, 0), (-1, -1), 1.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
    ]
    heights = [None if value or len(name) > 40 else LEAST_LINE for name, value in blanks.lines]
    return Table(rows, colWidths=[0.36 * width, 0.64 * width], rowHeights=heights, style=commands)
