"""How far the air blown out lies from the air drawn in: a band to expect, and the reading on it."""

from dataclasses import dataclass
from typing import Final

from econ.report.look import Look
from econ.report.numbers import Quantity, plain_number
from econ.report.sketch.element import LETTER, WINDOW_COLOUR, box, drawing, is_apart, line, path, words, words_box

WIDTH: Final = 360.0
HEIGHT: Final = 96.0
SIDE: Final = 24.0
TOP: Final = 40.0
THICK: Final = 16.0
GAP: Final = 4.0
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

    foot, said = TOP + THICK, f"read: {look.measure(split.reading_k, _DIFFERENCE)}"
    low, high, read = at(split.low_k), at(split.high_k), at(split.reading_k)
    parts = [
        line((SIDE, foot), (WIDTH - SIDE, foot)),
        box((low, TOP), (high - low, THICK), f'fill="{WINDOW_COLOUR}" fill-opacity="0.35" stroke="currentColor"'),
        *_scale(split, look, ((low, high), foot + LETTER + 4.0)),
        path(
            ((read - 6.0, TOP - 12.0), (read, TOP - 2.0), (read + 6.0, TOP - 12.0)),
            'stroke="currentColor" stroke-width="2"',
        ),
        line((read, TOP - 2.0), (read, foot), 2.5),
        words(said, (_inside(said, read), TOP - 18.0)),
        words("to expect", ((low + high) / 2.0, foot + 2.0 * LETTER + 8.0)),
    ]
    return drawing((WIDTH, HEIGHT), "Air blown out against air drawn in", statement, parts)


def _scale(split: SplitDrawing, look: Look, place: tuple[tuple[float, float], float]) -> list[str]:
    """Return the ends of the band and the zero beneath the scale; of words that would touch the first stands."""
    (low, high), level = place
    wanted = (
        (plain_number(look.shown(split.low_k, _DIFFERENCE)), low),
        (plain_number(look.shown(split.high_k, _DIFFERENCE)), high),
        (f"0 {look.symbol(_DIFFERENCE)}", SIDE),
    )
    shown: list[tuple[str, tuple[float, float]]] = []
    for text, x in wanted:
        box_of = words_box(text, (x, level))
        if all(is_apart(box_of, words_box(other, at), GAP) for other, at in shown):
            shown.append((text, (x, level)))
    return [words(text, at) for text, at in shown]


def _inside(text: str, x: float) -> float:
    """Return where the middle of a word must stand to stay on the sheet."""
    left, _, right, _ = words_box(text, (0.0, 0.0))
    return min(max(x, -left + 2.0), WIDTH - right - 2.0)
