"""Scales and axes of drawings: round steps, quiet lines, words that do not touch."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import floor, log10
from typing import Final

from econ.kernel.alternative import Alternative
from econ.report.document.drawing.shape import (
    GRID,
    LETTER,
    PAPER,
    SOFT,
    Point,
    Shape,
    Stroke,
    Word,
    dotted,
    level,
    line,
    rectangle,
    slanted,
    star,
)
from econ.report.style import MARKS, NAMES, Theme, colour

PAGE_WIDTH: Final = 520.0
"""Width of a drawing that fills the page. [pt]"""

DASHES: Final[dict[str, tuple[float, ...]]] = {
    "solid": (),
    "dash": (6.0, 3.0),
    "dot": (1.5, 2.5),
    "longdashdot": (9.0, 3.0, 1.5, 3.0),
}


PATTERNS: Final[dict[str, Callable[[Point, tuple[float, float], str], Sequence[Shape]]]] = {
    "-": level,
    "/": slanted,
    ".": dotted,
}
"""Fillings of bars by the pattern of their way to go; none is whole."""


@dataclass(frozen=True, slots=True)
class Scale:
    """From numbers to places on the paper.

    Attributes
    ----------
    low, high : float
        Ends of the numbers. [any]
    start, end : float
        Where these lie. [pt]
    """

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Return where a number lies. [pt]"""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)


def round_steps(low: float, high: float, most: int = 6) -> list[float]:
    """Return round numbers between two ends, so many at most.

    Examples
    --------
    >>> round_steps(0.0, 47.0, 6)
    [0.0, 10.0, 20.0, 30.0, 40.0]
    """
    raw = (high - low) / most
    size = 10.0 ** floor(log10(raw))
    step = next(size * factor for factor in (1.0, 2.0, 5.0, 10.0) if size * factor >= raw * (1.0 - 1e-9))
    first = -floor(-low / step + 1e-9)
    count = floor(high / step + 1e-9) - first
    return [step * (first + at) for at in range(count + 1)]


def level_axis(
    scale: Scale, span: tuple[float, float], steps: Sequence[float], words: Callable[[float], str]
) -> list[Shape]:
    """Return upright grid lines between two heights, their numbers beneath."""
    top, foot = span
    lines: list[Shape] = [line((scale.at(step), top), (scale.at(step), foot), GRID, 0.6) for step in steps]
    return [
        *lines,
        *(Word(words(step), (scale.at(step), foot + 10.0), LETTER, "middle", colour=SOFT) for step in steps),
    ]


def upright_axis(
    scale: Scale, span: tuple[float, float], steps: Sequence[float], words: Callable[[float], str]
) -> list[Shape]:
    """Return level grid lines between two sides, their numbers to the left."""
    left, right = span
    lines: list[Shape] = [line((left, scale.at(step)), (right, scale.at(step)), GRID, 0.6) for step in steps]
    return [
        *lines,
        *(Word(words(step), (left - 7.0, scale.at(step) + 2.8), LETTER, "end", colour=SOFT) for step in steps),
    ]


def filled(name: Alternative, corner: Point, size: tuple[float, float]) -> list[Shape]:
    """Return a bar of a way to go: its colour and its pattern, which a grey print keeps apart."""
    ink = colour(name, Theme.LIGHT)
    pattern = PATTERNS.get(MARKS[name].pattern)
    if pattern is None:
        return [rectangle(corner, size, PAPER, ink)]
    return [rectangle(corner, size, ink, PAPER), *pattern(corner, size, ink)]


def outlined(name: Alternative, corner: Point, size: tuple[float, float]) -> Stroke:
    """Return the bar of what is no cash, or is taken off: in outline."""
    return Stroke(rectangle(corner, size).points, colour(name, Theme.LIGHT), 1.2, (2.0, 1.5), PAPER, is_closed=True)


def name_of(name: Alternative, at: Point, more: str = "") -> list[Shape]:
    """Return the mark and name of a way to go, with what is said of it."""
    x, y = at
    ink = colour(name, Theme.LIGHT)
    words = f"{NAMES[name]}  {more}" if more else NAMES[name]
    return [star(MARKS[name].symbol, (x + 4.0, y - 3.0), 4.0, ink), Word(words, (x + 12.0, y), 8.5, "start", True, ink)]
