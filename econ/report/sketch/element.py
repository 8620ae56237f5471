"""Pieces of a drawing as SVG text: lines, boxes, words and hatching in the colour of the page's own letters."""

from collections.abc import Sequence
from html import escape
from typing import Final

WINDOW_COLOUR: Final = "#3a82b8"
"""Glass, and refrigerant lines that reach: seen on light and dark pages alike."""

SHORTAGE_COLOUR: Final = "#c95a3c"
"""What is missing: seen on light and dark pages alike."""

LETTER: Final = 12.0
"""Letter height in units of the drawing, which is shown about one to one on a phone."""


def number(value: float) -> str:
    """Return a coordinate short enough to read."""
    return f"{value:.1f}".rstrip("0").rstrip(".")


def line(start: tuple[float, float], end: tuple[float, float], width: float = 1.5, more: str = "") -> str:
    """Return a straight line."""
    (x1, y1), (x2, y2) = start, end
    return (
        f'<line x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}" '
        f'stroke="currentColor" stroke-width="{number(width)}" {more}/>'
    )


def box(corner: tuple[float, float], size: tuple[float, float], more: str = 'fill="none" stroke="currentColor"') -> str:
    """Return a rectangle by its upper left corner, width and height."""
    (x, y), (width, height) = corner, size
    return f'<rect x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}" {more}/>'


def circle(middle: tuple[float, float], radius: float) -> str:
    """Return a circle in outline."""
    return (
        f'<circle cx="{number(middle[0])}" cy="{number(middle[1])}" r="{number(radius)}" fill="none" '
        f'stroke="currentColor"/>'
    )


def path(points: Sequence[tuple[float, float]], more: str) -> str:
    """Return a bent line through points."""
    joined = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    return f'<polyline points="{joined}" fill="none" stroke-linejoin="round" {more}/>'


def words(text: str, at: tuple[float, float], anchor: str = "middle", more: str = "") -> str:
    """Return a word or two."""
    return (
        f'<text x="{number(at[0])}" y="{number(at[1])}" text-anchor="{anchor}" font-size="{number(LETTER)}" '
        f'fill="currentColor" {more}>{escape(text)}</text>'
    )


Box = tuple[float, float, float, float]
"""Left, top, right, bottom on the sheet."""

_LETTER_WIDTH: Final = 0.58
"""Mean width of a letter over its height: sans-serif fonts, measured on the words of these drawings."""


def words_box(text: str, at: tuple[float, float], anchor: str = "middle") -> Box:
    """Return the box that a word or two fills, on the safe side."""
    width = _LETTER_WIDTH * LETTER * len(text)
    left = at[0] - {"start": 0.0, "middle": width / 2.0, "end": width}[anchor]
    return left, at[1] - LETTER * 0.85, left + width, at[1] + LETTER * 0.25


def is_apart(one: Box, other: Box, gap: float = 1.0) -> bool:
    """Return whether two boxes leave a gap between them."""
    return one[2] + gap <= other[0] or other[2] + gap <= one[0] or one[3] + gap <= other[1] or other[3] + gap <= one[1]


def break_strokes(middle: tuple[float, float], *, is_upright: bool) -> list[str]:
    """Return two slanted strokes across a line where a part of it is left out; upright lines are cut across."""
    x, y = middle
    strokes = []
    for shift in (-3.0, 3.0):
        if is_upright:
            strokes.append(line((x - 8.0, y + shift + 3.0), (x + 8.0, y + shift - 3.0), 2.0))
        else:
            strokes.append(line((x + shift - 3.0, y + 8.0), (x + shift + 3.0, y - 8.0), 2.0))
    return strokes


def hatching(key: str, step: float = 7.0) -> str:
    """Return a filling of slanting lines, used as ``url(#key)``."""
    return (
        f'<pattern id="{key}" width="{number(step)}" height="{number(step)}" patternUnits="userSpaceOnUse" '
        f'patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="{number(step)}" stroke="currentColor" '
        f'stroke-width="1.2" stroke-opacity="0.55"/></pattern>'
    )


def drawing(size: tuple[float, float], title: str, description: str, parts: Sequence[str]) -> str:
    """Return a whole drawing with the title and description that a screen reader speaks."""
    width, height = (number(side) for side in size)
    body = "\n".join(parts)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" role="img" '
        f'aria-label="{escape(title)}" style="width:100%;max-width:{width}px;height:auto;font-family:inherit">\n'
        f"<title>{escape(title)}</title>\n<desc>{escape(description)}</desc>\n{body}\n</svg>"
    )
