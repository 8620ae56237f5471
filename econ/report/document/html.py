"""A document as one HTML file: charts inside, no script, no request, pages numbered in print."""

from collections.abc import Callable
from html import escape
from typing import Any, Final

from econ.report.document import block
from econ.report.document.block import SEVERITY_WORDS, Block, Document, Tone, finding_cells
from econ.report.document.drawing.shape import Disc, Drawing, Shape, Stroke

STYLE: Final = """
:root { color-scheme: light; font-size: 15px; }
body { font: 1rem/1.45 Helvetica, Arial, 'Liberation Sans', sans-serif; color: #1f2a2e; background: #fff;
  max-width: 54rem; margin: 1.5rem auto; padding: 0 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.2rem; margin: 1.6rem 0 .4rem; break-after: avoid; }
h3 { font-size: 1rem; margin: 1rem 0 .3rem; break-after: avoid; }
p { margin: .3rem 0 .6rem; white-space: pre-line; }
p.verdict { font-size: 1.2rem; font-weight: 700; border-left: 4px solid #1f2a2e; padding-left: .8rem; }
p.small { font-size: .85rem; color: #3c4548; }
p.own_words { white-space: pre-wrap; font-size: .9rem; margin-left: .8rem; }
ul { padding-left: 1.1rem; margin: .3rem 0 .6rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; min-width: 38rem; margin: .3rem 0 .8rem; }
table.small { font-size: .85rem; } table.tiny { font-size: .75rem; }
th, td { text-align: left; vertical-align: top; overflow-wrap: break-word;
  padding: .15rem .4rem; border-bottom: 1px solid #9a9a9a; }
thead th { background: #e9e9e9; } thead { display: table-header-group; } tr { break-inside: avoid; }
td.number, th.number { text-align: right; } tr.strong td { font-weight: 700; }
caption { text-align: left; font-weight: 700; padding: .3rem 0; }
figure { margin: .3rem 0 .8rem; break-inside: avoid; } figcaption { margin-bottom: .4rem; }
svg { width: 100%; height: auto; display: block; }
.finding { display: flex; gap: .7rem; padding: .35rem 0; border-bottom: 1px solid #9a9a9a; break-inside: avoid; }
.finding > b { flex: 0 0 4.5rem; } .finding.hold_point > b { border: 2px solid #000; text-align: center;
  align-self: flex-start; } .finding p { margin: 0; } .finding .found { font-weight: 700; }
dl.form { display: grid; grid-template-columns: 36% 64%; margin: .3rem 0 .8rem; }
dl.form dt, dl.form dd { margin: 0; padding: .2rem .3rem; min-height: 1.5rem; }
dl.form dd { border-bottom: 1px solid #777; font-weight: 700; }
.frame { border: 1px dashed #555; }
footer { margin-top: 2rem; border-top: 1px solid #8a8a8a; font-size: .8rem; color: #3c4548; }
@media print { :root { font-size: 8.6pt; } body { line-height: 1.3; max-width: none; margin: 0; padding: 0; }
  td, th { padding-top: .08rem; padding-bottom: .08rem; } h2 { margin-top: .9rem; } dl.form dd { min-height: 1.3rem; }
  table { table-layout: fixed; min-width: 0; } th, td { overflow-wrap: anywhere; }
  figure svg { max-height: 200pt; } .page_end { break-after: page; }
  footer { display: none; } .wide { overflow: visible; } }
"""

SCREEN_PX: Final = 15.0
PRINT_PT: Final = 8.6
"""Letters of the page on screen and in print, as the style above has them."""

_BACKSLASH: Final = "\\"


def html_text(document: Document) -> str:
    """Return the document as the text of an HTML file.

    Parameters
    ----------
    document : Document
        What to print.
    """
    body = "\n".join(_WRITERS[type(each)](each) for each in document.blocks)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{_safe(document.title)}</title>\n<style>{STYLE}{_page_style(document)}</style>\n</head>\n"
        f"<body>\n{body}\n<footer>{_safe(document.footer.text)}</footer>\n</body>\n</html>\n"
    )


def _safe(text: str) -> str:
    """Return text that is read as text, whatever it holds."""
    return escape("".join(letter if letter in "\n\t" or letter.isprintable() else _odd(letter) for letter in text))


def _odd(letter: str) -> str:
    return letter if letter.isspace() else f"[U+{ord(letter):04X}]"


def _page_style(document: Document) -> str:
    """Return sheet, letter size and footer of printed pages, its letters as numbers that end no string and no style."""
    footer, paper = document.footer.text, document.paper
    large = (
        f":root {{ font-size: {SCREEN_PX * paper.scale:g}px; }} "
        f"@media print {{ :root {{ font-size: {PRINT_PT * paper.scale:g}pt; }} }} "
        if paper.is_large
        else ""
    )
    coded = "".join(
        letter if letter.isascii() and letter.isalnum() else f"{_BACKSLASH}{ord(letter):06x}" for letter in footer
    )
    return (
        f"{large}@page {{ size: {paper.size.value}; margin: 14mm 15mm 18mm; "
        f'@bottom-left {{ content: "{coded}"; font: 7pt Helvetica, Arial, sans-serif; width: 85%; }} '
        '@bottom-right { content: "page " counter(page) " of " counter(pages); '
        "font: 7pt Helvetica, Arial, sans-serif; } }"
    )


def _heading(each: block.Heading) -> str:
    return f"<h{each.level}>{_safe(each.text)}</h{each.level}>"


def _sentence(each: block.Sentence) -> str:
    kind = "" if each.tone is Tone.PLAIN else f' class="{each.tone.value}"'
    return f"<p{kind}>{_safe(each.text)}</p>"


def _points(each: block.Points) -> str:
    return f"<ul>{''.join(f'<li>{_safe(text)}</li>' for text in each.texts)}</ul>"


def _grid(each: block.Grid) -> str:
    caption = f"<caption>{_safe(each.caption)}</caption>" if each.caption else ""
    heads = "".join(f"<th{_flush(each, at)}>{_safe(title)}</th>" for at, title in enumerate(each.titles))
    shares = (100.0 * share / sum(each.shares) for share in each.shares)
    widths = "".join(f'<col style="width:{share:.1f}%">' for share in shares)
    columns = f"<colgroup>{widths}</colgroup>"
    rows = "".join(
        f"<tr{_strong(each, at)}>"
        f"{''.join(f'<td{_flush(each, column)}>{_safe(text)}</td>' for column, text in enumerate(row))}</tr>\n"
        for at, row in enumerate(each.rows)
    )
    return (
        f'<div class="wide"><table class="{each.setting.value}">{caption}{columns}<thead><tr>{heads}</tr></thead>\n'
        f"<tbody>{rows}</tbody></table></div>"
    )


def _flush(grid: block.Grid, column: int) -> str:
    return ' class="number"' if column in grid.numbers else ""


def _strong(grid: block.Grid, row: int) -> str:
    return ' class="strong"' if row in grid.strong else ""


def _picture(each: block.Picture) -> str:
    return f"<figure><figcaption>{_safe(each.statement)}</figcaption>\n{svg(each.drawing)}</figure>"


def _findings(each: block.Findings) -> str:
    return "\n".join(_finding(item) for item in each.items)


def _finding(item: block.Finding) -> str:
    found, action, rest, signature = (_safe(text) for text in finding_cells(item))
    parts = [f'<p class="found">{found}</p>', f"<p>{action} <small>{rest}</small> {signature}</p>"]
    return (
        f'<div class="finding {item.severity.value}"><b>{_safe(SEVERITY_WORDS[item.severity])}</b>'
        f"<div>{''.join(parts)}</div></div>"
    )


def _blanks(each: block.Blanks) -> str:
    lines = "".join(f"<dt>{_safe(label)}</dt><dd>{_safe(known)}</dd>" for label, known in each.lines)
    return f'<dl class="form">{lines}</dl>'


def _frame(each: block.Frame) -> str:
    return f'<p class="small">{_safe(each.label)}</p><div class="frame" style="height:{each.height:g}pt"></div>'


def _page_end(_each: block.PageEnd) -> str:
    return '<div class="page_end"></div>'


_WRITERS: Final[dict[type[Block], Callable[[Any], str]]] = {
    block.Heading: _heading,
    block.Sentence: _sentence,
    block.Points: _points,
    block.Grid: _grid,
    block.Picture: _picture,
    block.Findings: _findings,
    block.Blanks: _blanks,
    block.Frame: _frame,
    block.PageEnd: _page_end,
}


def svg(drawing: Drawing) -> str:
    """Return a drawing as SVG inside the page."""
    body = "".join(_shape(shape) for shape in drawing.shapes)
    return (
        f'<svg viewBox="0 0 {_n(drawing.width)} {_n(drawing.height)}" role="img" aria-label="{_safe(drawing.title)}" '
        f'style="max-width:{_n(1.55 * drawing.width)}px" font-family="Helvetica, Arial, sans-serif">{body}</svg>'
    )


def _n(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _shape(shape: Shape) -> str:
    if isinstance(shape, Stroke):
        return _stroke(shape)
    if isinstance(shape, Disc):
        x, y = shape.middle
        return f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(shape.radius)}" {_paint(shape)}/>'
    x, y = shape.at
    weight = ' font-weight="700"' if shape.is_bold else ""
    return (
        f'<text x="{_n(x)}" y="{_n(y)}" font-size="{_n(shape.size)}" text-anchor="{shape.anchor}"{weight} '
        f'fill="{shape.colour}">{_safe(shape.text)}</text>'
    )


def _paint(shape: Stroke | Disc) -> str:
    line = f'stroke="{shape.colour}" stroke-width="{_n(shape.width)}"' if shape.colour else 'stroke="none"'
    return f'{line} fill="{shape.filling or "none"}"'


def _stroke(shape: Stroke) -> str:
    kind = "polygon" if shape.is_closed else "polyline"
    dash = f' stroke-dasharray="{" ".join(_n(part) for part in shape.dash)}"' if shape.dash else ""
    points = " ".join(f"{_n(x)},{_n(y)}" for x, y in shape.points)
    return f'<{kind} points="{points}" {_paint(shape)}{dash}/>'
