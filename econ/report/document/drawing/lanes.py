"""Calendar: one lane a way from the decision to the first cool day, waits slanted, work filled."""

from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import Alternative
from econ.report.document.drawing.axis import PAGE_WIDTH, Scale, level_axis, name_of, round_steps
from econ.report.document.drawing.shape import PAPER, SOFT, Drawing, Shape, Word, rectangle, slanted, star
from econ.report.look import Look
from econ.report.style import MARKS, Theme, colour

ROW: Final = 34.0
BAR: Final = 10.0
LEFT: Final = 26.0
RIGHT: Final = 28.0
FOOT: Final = 28.0
THINNEST: Final = 1.6
"""Least width of a piece of work. [pt]"""


def calendar_lanes(result: Result, look: Look) -> Drawing:
    """Return the lanes.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    look : Look
        Calendar of the reader.
    """
    ways = [way for way in result.alternatives if way.in_service_exists]
    last = max((_last_d(way) for way in ways), default=1.0)
    scale = Scale(0.0, last or 1.0, LEFT, PAGE_WIDTH - RIGHT)
    height = ROW * max(len(ways), 1)
    steps = [step for step in round_steps(0.0, scale.high, 5) if step == int(step)]
    shapes: list[Shape] = level_axis(scale, (4.0, height), steps, lambda day: _short(look, day))
    for row, way in enumerate(ways):
        shapes += _lane(way, scale, 12.0 + row * ROW, look)
    foot = "From the decision on. Slanted: waiting; filled: work; mark: first cool day"
    shapes.append(Word(foot, (LEFT, height + FOOT - 6.0), colour=SOFT))
    return Drawing(PAGE_WIDTH, height + FOOT, tuple(shapes), "Calendar to the first cool day")


def _short(look: Look, day: float) -> str:
    """Return a day without its weekday."""
    return look.day(day).split(" ", 1)[1]


def _last_d(way: AlternativeResult) -> float:
    finish = way.schedule.finish_d[0]
    return max(
        float(way.in_service_d[0]), float(np.nanmax(np.where(way.schedule.is_active[0], finish, 0.0), initial=0))
    )


def _lane(way: AlternativeResult, scale: Scale, top: float, look: Look) -> list[Shape]:
    plan, ink = way.schedule, colour(way.name, Theme.LIGHT)
    service_d = float(way.in_service_d[0])
    shapes = name_of(way.name, (LEFT, top), f"cool from {look.day(service_d)}")
    spans = [
        tuple(float(days[0, task]) for days in (plan.wait_start_d, plan.start_d, plan.finish_d))
        for task in np.flatnonzero(plan.is_active[0])
    ]
    for wait, start, _ in spans:
        shapes += _wait(way.name, scale, (wait, start), top + 4.0)
    for _, start, finish in spans:
        left = scale.at(start)
        shapes.append(rectangle((left, top + 4.0), (max(THINNEST, scale.at(finish) - left), BAR), "", ink))
    shapes.append(star(MARKS[way.name].symbol, (scale.at(service_d), top + 4.0 + BAR / 2.0), 5.5, ink))
    return shapes


def _wait(name: Alternative, scale: Scale, span: tuple[float, float], top: float) -> list[Shape]:
    left, width = scale.at(span[0]), scale.at(span[1]) - scale.at(span[0])
    if not width > THINNEST:
        return []
    ink, corner, size = colour(name, Theme.LIGHT), (left, top), (width, BAR)
    return [rectangle(corner, size, ink, PAPER), *slanted(corner, size, ink, 5.0)]
