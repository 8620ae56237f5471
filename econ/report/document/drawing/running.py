"""Running total over the years: a line a way, its name and doubt at the end, crossings named."""

from typing import Final

import numpy as np

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.arrays import FloatArray
from econ.report.document.drawing.axis import DASHES, PAGE_WIDTH, Scale, level_axis, round_steps, upright_axis
from econ.report.document.drawing.shape import INK, SOFT, Disc, Drawing, Shape, Stroke, Word, line, star, text_width
from econ.report.numbers import money, plain_number, years
from econ.report.pictures.frame import moved_apart
from econ.report.pictures.running_total import BAND, Crossing, crossings
from econ.report.style import MARKS, NAMES, Theme, colour

HEIGHT: Final = 190.0
TOP: Final = 20.0
FOOT: Final = 162.0
LEFT: Final = 44.0
RIGHT: Final = PAGE_WIDTH - 118.0
GAP: Final = 12.0
"""Least distance between the names at the ends of lines. [pt]"""


def running_total(result: Result, doubt: Result) -> Drawing:
    """Return the running totals.

    Parameters
    ----------
    result : Result
        Likely values in row 0: the lines.
    doubt : Result
        At draws: the bars at the ends of the lines.
    """
    spent, drawn = result.streams.running_total_usd[:, 0], doubt.streams.running_total_usd[:, :, -1]
    ends = np.quantile(drawn, BAND, axis=1)
    high = max(float(spent.max()), float(ends.max()), 1.0)
    up, along = Scale(0.0, high, FOOT, TOP), Scale(0.0, spent.shape[-1] - 1.0, LEFT, RIGHT)
    shapes: list[Shape] = upright_axis(up, (LEFT, RIGHT), round_steps(0.0, high, 5), money)
    steps = [step for step in round_steps(0.0, along.high, 8) if step == int(step)]
    shapes += level_axis(along, (FOOT, FOOT), steps, plain_number)
    for name, totals in zip(ALTERNATIVES, spent, strict=True):
        shapes += _line(name, totals, up, along)
    shapes += _ends(spent[:, -1], ends, up) + _crossings(result, up, along)
    shapes.append(Word("Spent so far, in today's dollars", (4.0, 9.0), colour=SOFT))
    foot = "Years after the decision (bars at the right: eight tries in ten end within them)"
    shapes.append(Word(foot, (LEFT, HEIGHT - 5.0), colour=SOFT))
    return Drawing(PAGE_WIDTH, HEIGHT, tuple(shapes), "Running total over the years")


def _line(name: Alternative, totals: FloatArray, up: Scale, along: Scale) -> list[Shape]:
    ink = colour(name, Theme.LIGHT)
    points = tuple((along.at(float(year)), up.at(float(usd))) for year, usd in enumerate(totals))
    marks = points[:: max(1, len(points) // 4)]
    return [
        Stroke(points, ink, 1.8, DASHES[MARKS[name].dash]),
        *(star(MARKS[name].symbol, at, 3.4, ink) for at in marks),
    ]


def _ends(spent: FloatArray, ends: FloatArray, up: Scale) -> list[Shape]:
    """Return the names at the ends of the lines, apart, each with the bar of its doubt."""
    order = sorted(range(len(ALTERNATIVES)), key=lambda at: -spent[at])
    places = moved_apart([up.at(float(spent[at])) for at in order], GAP)
    lift = min(0.0, FOOT - places[-1]) + max(0.0, TOP - places[0])
    shapes: list[Shape] = []
    for column, at in enumerate(order):
        name, ink, x = ALTERNATIVES[at], colour(ALTERNATIVES[at], Theme.LIGHT), RIGHT + 5.0 + 5.0 * at
        low, high = (up.at(float(end)) for end in ends[:, at])
        shapes += [line((x, low), (x, high), ink, 1.6)]
        shapes += [line((x - 2.0, end), (x + 2.0, end), ink, 1.2) for end in (low, high)]
        shapes.append(star(MARKS[name].symbol, (RIGHT + 31.0, places[column] + lift), 3.4, ink))
        shapes.append(Word(NAMES[name], (RIGHT + 37.0, places[column] + lift + 2.8), 8.0, "start", True, ink))
    return shapes


def _crossings(result: Result, up: Scale, along: Scale) -> list[Shape]:
    """Return a ring where a way has cost less from there on, with words above the lines."""
    shapes: list[Shape] = []
    for position, found in enumerate([each for each in crossings(result) if each.is_cheaper_after]):
        shapes += _crossing(found, (along.at(found.year_yr), up.at(found.spent_usd)), TOP + 10.0 * position)
    return shapes


def _crossing(found: Crossing, at: tuple[float, float], foot: float) -> list[Shape]:
    words = f"{NAMES[found.name]}: cheaper after {years(found.year_yr)}"
    is_left = at[0] + text_width(words) < PAGE_WIDTH
    return [
        Disc(at, 4.5, INK, 1.0),
        line((at[0], at[1] - 4.5), (at[0], foot - 6.0), SOFT, 0.5),
        Word(words, (at[0] + (3.0 if is_left else -3.0), foot), 8.0, "start" if is_left else "end"),
    ]
