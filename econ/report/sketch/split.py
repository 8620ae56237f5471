"""How far the air blown out lies from the air drawn in: a band to expect, and the reading on it."""

from dataclasses import dataclass
from typing import Final

from econ.report.look import Look
from econ.report.numbers import Quantity, plain_number
from econ.report.sketch.element import LETTER, WINDOW_COLOUR, box, drawing, line, path, words

WIDTH: Final = 360.0
HEIGHT: Final = 96.0
SIDE: Final = 24.0
TOP: Final = 40.0
THICK: Final = 16.0
BEYOND: Final = 1.4
"""The scale ends so many times past the greater of band and reading."""

_DIFFERENCE: Final = Quantity.TEMPERATURE_DIFFERENCE


@dataclass(frozen=True, slots=True)
class SplitDrawing:
    """The band and the reading.

    Attributes
    ----------
    low_k, high_k : float
        Ends of the band. [K]
    reading_k : float
        What was read, in the direction of what the unit does. [K]
    """

    low_k: float
    high_k: float
    reading_k: float


def sketch(split: SplitDrawing, statement: str, look: Look) -> str:
    """Return the drawing as SVG.

    Parameters
    ----------
    split : SplitDrawing
        Band and reading.
    statement : str
        What it says, in words.
    look : Look
        Units of the reader.
    """
    end_k = BEYOND * max(split.high_k, split.reading_k)

    def at(apart_k: float) -> float:
        return SIDE + (WIDTH - 2.0 * SIDE) * min(max(apart_k, 0.0), end_k) / end_k

    foot = TOP + THICK
    low, high, read = at(split.low_k), at(split.high_k), at(split.reading_k)
    parts = [
        line((SIDE, foot), (WIDTH - SIDE, foot)),
        box((low, TOP), (high - low, THICK), f'fill="{WINDOW_COLOUR}" fill-opacity="0.35" stroke="currentColor"'),
        *(_named(look, split_k, (x, foot + LETTER + 4.0)) for split_k, x in ((split.low_k, low), (split.high_k, high))),
        words(f"0 {look.symbol(_DIFFERENCE)}", (SIDE, foot + LETTER + 4.0)),
        path(
            ((read - 6.0, TOP - 12.0), (read, TOP - 2.0), (read + 6.0, TOP - 12.0)),
            'stroke="currentColor" stroke-width="2"',
        ),
        line((read, TOP - 2.0), (read, foot), 2.5),
        words(f"read: {look.measure(split.reading_k, _DIFFERENCE)}", (read, TOP - 18.0)),
        words("to expect", ((low + high) / 2.0, foot + 2.0 * LETTER + 8.0)),
    ]
    return drawing((WIDTH, HEIGHT), "Air blown out against air drawn in", statement, parts)


def _named(look: Look, apart_k: float, place: tuple[float, float]) -> str:
    return words(plain_number(look.shown(apart_k, _DIFFERENCE)), place)
