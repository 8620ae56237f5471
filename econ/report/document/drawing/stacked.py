"""First cost as bars cut in pieces: cash filled, own time and what is taken off in outline."""

from typing import Final

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import Alternative
from econ.report.document.drawing.axis import (
    PAGE_WIDTH,
    Scale,
    filled,
    level_axis,
    name_of,
    outlined,
    round_steps,
)
from econ.report.document.drawing.shape import SOFT, Drawing, Shape, Word, text_width
from econ.report.numbers import first_cost_money, money, plain_number
from econ.report.pictures.first_cost import CATEGORY_WORDS, category_usd

ROW: Final = 39.0
BAR: Final = 13.0
LEFT: Final = 4.0
RIGHT: Final = 12.0
FOOT: Final = 30.0
OUTLINED: Final = "own_time"


def first_cost_bars(result: Result) -> Drawing:
    """Return the first cost of each way that has one as a bar, its pieces named beneath.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    """
    pieces = {way.name: category_usd(way) for way in result.alternatives}
    low = min(min(0.0, sum(usd for usd in found.values() if usd < 0.0)) for found in pieces.values())
    high = max(sum(usd for usd in found.values() if usd > 0.0) for found in pieces.values()) or 1.0
    scale = Scale(low, high, LEFT, PAGE_WIDTH - RIGHT)
    ways = [way for way in result.alternatives if pieces[way.name]]
    height = ROW * max(len(ways), 1)
    shapes: list[Shape] = level_axis(scale, (4.0, height), round_steps(low, high), money)
    for row, way in enumerate(ways):
        shapes += _bar(way, pieces[way.name], scale, 14.0 + row * ROW)
    title = "First cost in today's dollars; own time and what is taken off in outline"
    shapes.append(Word(title, (LEFT, height + FOOT - 6.0), colour=SOFT))
    return Drawing(PAGE_WIDTH, height + FOOT, tuple(shapes), title)


def _bar(way: AlternativeResult, pieces: dict[str, float], scale: Scale, top: float) -> list[Shape]:
    cash, own = float(way.cash_first_cost_usd[0]), float(way.own_hours_h[0])
    hours = f" + {plain_number(own)} h own time" if own > 0.0 else ""
    shapes = name_of(way.name, (scale.at(0.0), top), f"{first_cost_money(cash)} cash{hours}")
    taken: list[tuple[float, float]] = []
    for category, start, usd in _places(pieces):
        left, right = scale.at(min(start, start + usd)), scale.at(max(start, start + usd))
        shapes += _piece(way.name, category, (left, top + 4.0), right - left, usd)
        shapes += _label(CATEGORY_WORDS.get(category, category), (left, right), top + 4.0 + BAR + 9.0, taken)
    return shapes


def _places(pieces: dict[str, float]) -> list[tuple[str, float, float]]:
    """Return each piece with where it starts; those below zero hang to the left."""
    right = left = 0.0
    found = []
    for category, usd in pieces.items():
        start = right if usd >= 0.0 else left
        found.append((category, start, usd))
        right, left = right + max(usd, 0.0), left + min(usd, 0.0)
    return found


def _piece(name: Alternative, category: str, corner: tuple[float, float], width: float, usd: float) -> list[Shape]:
    if category == OUTLINED or usd < 0.0:
        return [outlined(name, corner, (width, BAR))]
    return filled(name, corner, (width, BAR))


def _label(text: str, span: tuple[float, float], foot: float, taken: list[tuple[float, float]]) -> list[Shape]:
    """Return the name of a piece where it has the room; the table beneath names all."""
    width = text_width(text) + 4.0
    room = (span[0], span[0] + width)
    if span[1] - span[0] < 0.35 * width or room[1] > PAGE_WIDTH or any(room[0] < end for _, end in taken):
        return []
    taken.append(room)
    return [Word(text, (span[0] + 1.0, foot), colour=SOFT)]
