"""The bridge from a kit to a quote in print: level bars, told apart without colour."""

from collections.abc import Sequence
from typing import Final

from econ.kernel.alternative import Alternative
from econ.report.document.drawing.axis import PAGE_WIDTH, Scale, filled, level_axis, outlined, round_steps
from econ.report.document.drawing.shape import INK, PAPER, SOFT, Drawing, Shape, Word, line, rectangle, slanted
from econ.report.numbers import money
from econ.report.pictures.bridge import Bar, amount

ROW: Final = 16.5
MOST_HIGH: Final = 250.0
BAR_SHARE: Final = 0.62
LEFT: Final = 142.0
RIGHT: Final = 52.0
FOOT: Final = 16.0
LETTERS: Final = 8.0


def quote_bridge(drawn: Sequence[Bar], title: str) -> Drawing:
    """Return level bars, the first on top: filled as quoted, in outline at own items, slanted where nothing tells.

    Parameters
    ----------
    drawn : sequence of Bar
        As `econ.report.pictures.bridge.bars` gives them.
    title : str
        What it shows, for who cannot see it.
    """
    ends = [end for bar in drawn for end in (bar.start, bar.start + bar.usd, *bar.ends)]
    row_high = min(ROW, MOST_HIGH / len(drawn))
    low, high, foot = min(0.0, *ends), max(*ends, 1.0), row_high * len(drawn) + 3.0
    across = Scale(low, high, LEFT, PAGE_WIDTH - RIGHT)
    shapes: list[Shape] = level_axis(across, (0.0, foot), round_steps(low, high, 6), money)
    for row, bar in enumerate(drawn):
        shapes += _row(bar, across, (row_high * row + 3.0, row_high * BAR_SHARE))
    shapes.append(line((across.at(0.0), 0.0), (across.at(0.0), foot), SOFT, 0.8))
    return Drawing(PAGE_WIDTH, foot + FOOT, tuple(shapes), title)


def _row(bar: Bar, across: Scale, place: tuple[float, float]) -> list[Shape]:
    top, height = place
    left, right = sorted((across.at(bar.start), across.at(bar.start + bar.usd)))
    is_pier, foot = bar.kind == "pier", top + height / 2.0 + 0.36 * LETTERS
    span = [across.at(end) for end in bar.ends]
    right = max(right, *span) if span else right
    return [
        *_body(bar, (left, top), (max(abs(across.at(bar.usd) - across.at(0.0)), 0.8), height)),
        *_ends(span, top, height),
        Word(bar.label, (LEFT - 8.0, foot), LETTERS, "end", is_pier),
        Word(amount(bar), (right + 4.0, foot), LETTERS, "start", is_pier),
    ]


def _ends(span: list[float], top: float, height: float) -> list[Shape]:
    """Return a thin line with ends from where to where a bar may end."""
    if not span:
        return []
    middle, tick = top + height / 2.0, 0.22 * height
    upright = [line((at, middle - tick), (at, middle + tick), INK, 0.6) for at in span]
    return [line((span[0], middle), (span[1], middle), INK, 0.6), *upright]


def _body(bar: Bar, corner: tuple[float, float], size: tuple[float, float]) -> list[Shape]:
    name: Alternative = bar.name
    if bar.kind in ("pier", "said"):
        return filled(name, corner, size)
    if bar.kind == "ours":
        return [outlined(name, corner, size)]
    return [rectangle(corner, size, INK, PAPER), *slanted(corner, size, SOFT)]
