"""A year of need: heating and cooling by month in pairs, a dot for the moisture part."""

from typing import Final

from econ.evaluate.result import Result
from econ.report.document.drawing.axis import PAGE_WIDTH, Scale, round_steps, upright_axis
from econ.report.document.drawing.shape import (
    PAPER,
    SOFT,
    Disc,
    Drawing,
    Shape,
    Word,
    line,
    rectangle,
    slanted,
)
from econ.report.numbers import MONTHS_SHORT, plain_number
from econ.report.style import GROUNDS, Theme

HEIGHT: Final = 132.0
TOP: Final = 20.0
FOOT: Final = 108.0
LEFT: Final = 44.0
SEEN_SHARE: Final = 0.01
"""Share of the highest column below which no dot is drawn (assumption of the drawing only)."""

SHARE: Final = 0.34
"""Width of a column as a share of its month."""


def need_columns(result: Result) -> Drawing:
    """Return the columns.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    """
    ground = GROUNDS[Theme.LIGHT]
    heat, damp = result.need_heat_kwh[0], result.need_latent_kwh[0]
    cool = result.need_cool_kwh[0] + damp
    high = max(float(heat.max()), float(cool.max()), 1.0)
    up, pace = Scale(0.0, high, FOOT, TOP), (PAGE_WIDTH - LEFT) / 12.0
    shapes: list[Shape] = upright_axis(up, (LEFT, PAGE_WIDTH), round_steps(0.0, high, 4), plain_number)
    for month, word in enumerate(MONTHS_SHORT):
        left = LEFT + month * pace + (0.5 - SHARE) * pace
        warm, cold = up.at(float(heat[month])), up.at(float(cool[month]))
        corner, size = (left + SHARE * pace, cold), (SHARE * pace, FOOT - cold)
        shapes += [rectangle((left, warm), (SHARE * pace, FOOT - warm), "", ground.heat)]
        shapes += [rectangle(corner, size, ground.cool, PAPER), *slanted(corner, size, ground.cool)]
        if damp[month] > SEEN_SHARE * high:
            shapes.append(Disc((left + 1.5 * SHARE * pace, up.at(float(damp[month]))), 2.6, PAPER, 0.8, ground.damp))
        shapes.append(Word(word, (LEFT + (month + 0.5) * pace, FOOT + 10.0), 8.0, "middle", colour=SOFT))
    shapes.append(line((LEFT, FOOT), (PAGE_WIDTH, FOOT), SOFT, 0.8))
    legend = "Need of the rooms, kWh a month: heating filled, cooling slanted, a dot at the moisture part"
    shapes.append(Word(legend, (4.0, 9.0), colour=SOFT))
    return Drawing(PAGE_WIDTH, HEIGHT, tuple(shapes), "A year of need")
