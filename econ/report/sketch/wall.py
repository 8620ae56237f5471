"""The wall and the line set, cut through and to scale: slope, hole, bites of the bit, slack or shortage."""

from dataclasses import dataclass
from itertools import pairwise
from math import ceil, hypot
from typing import Final

from econ.kernel.constants import FOOT_M
from econ.report.numbers import Quantity, UnitSystem, measure
from econ.report.sketch.element import (
    LETTER,
    SHORTAGE_COLOUR,
    WINDOW_COLOUR,
    box,
    circle,
    drawing,
    hatching,
    line,
    path,
    words,
)

WIDTH: Final = 360.0
HEIGHT: Final = 330.0
TOP: Final = 44.0
LEFT_M: Final = 1.0
"""m of room drawn to the left of the wall."""

INDOOR_M: Final = (0.25, 0.3)
OUTDOOR_M: Final = (0.8, 0.6)
"""m; depth and height of the units as drawn (assumption of the drawing only)."""

FALL_M_PER_M: Final = 0.02
"""m of fall per m of hole toward the outside, a quarter inch in a foot: common practice, no source."""

HIGHEST_DRAWN_M: Final = 1.6
"""m; an outdoor unit higher over the ground is drawn so high, the gap marked and the true height written at it."""

SMALLEST_REACH_M: Final = 0.6
"""m; the outdoor unit stands at least so far from the wall in the drawing."""


@dataclass(frozen=True, slots=True)
class WallDrawing:
    """What the drawing needs to know of the wall and the way of the lines.

    Attributes
    ----------
    wall_thickness_m : float
        Wall to be passed. [m]
    line_run_m, line_set_m : float
        Length of line needed, and length in the box. [m]
    line_rise_m : float
        Height of the indoor unit over the outdoor unit; below zero where the outdoor unit is higher. [m]
    outdoor_height_m : float
        Foot of the outdoor unit over the ground. [m]
    bite_m : float
        How deep the bit cuts before it must be cleared; NaN where not known. [m]
    """

    wall_thickness_m: float
    line_run_m: float
    line_set_m: float
    line_rise_m: float
    outdoor_height_m: float
    bite_m: float = float("nan")

    @property
    def slack_m(self) -> float:
        """Line left over; below zero where it falls short. [m]"""
        return self.line_set_m - self.line_run_m

    @property
    def bites(self) -> int:
        """How many bites of the bit the wall takes; 0 where the bit is not known."""
        return ceil(self.wall_thickness_m / self.bite_m - 1e-9) if self.bite_m > 0.0 else 0


def reach_words(wall: WallDrawing, units: UnitSystem) -> str:
    """Return what the line set does: reaches with slack, or falls short."""
    box_length, run = (measure(length, Quantity.LENGTH, units) for length in (wall.line_set_m, wall.line_run_m))
    spare = measure(abs(wall.slack_m), Quantity.LENGTH, units)
    if wall.slack_m < 0.0:
        return f"{box_length} in the box, {run} needed: {spare} short"
    return f"{box_length} in the box, {run} needed: {spare} to spare"


def description(wall: WallDrawing, units: UnitSystem) -> str:
    """Return in words what the drawing shows."""
    thick = measure(wall.wall_thickness_m, Quantity.SHORT_LENGTH, units)
    rise = measure(abs(wall.line_rise_m), Quantity.LENGTH, units)
    side = "above" if wall.line_rise_m >= 0.0 else "below"
    bites = f" The bit takes {wall.bites} bites to pass it." if wall.bites > 1 else ""
    return (
        f"A wall {thick} thick with a hole that falls toward the outside.{bites} "
        f"The indoor unit hangs {rise} {side} the outdoor unit. {reach_words(wall, units).capitalize()}."
    )


def _reach_m(wall: WallDrawing) -> float:
    """Return how far from the wall the outdoor unit stands: what the run leaves after wall and rise."""
    return max(SMALLEST_REACH_M, wall.line_run_m - abs(wall.line_rise_m) - wall.wall_thickness_m - INDOOR_M[0])


@dataclass(frozen=True, slots=True)
class Place:
    """Where the drawing lies on its sheet, and where things stand in it.

    Attributes
    ----------
    left, px_per_m : float
        Left edge on the sheet; scale.
    across_m, high_m, low_m : float
        Width drawn; highest and lowest point over the ground. [m]
    head_m, foot_m, reach_m : float
        Middle of the indoor unit and foot of the outdoor unit over the ground; outdoor unit from the wall. [m]
    """

    left: float
    px_per_m: float
    across_m: float
    high_m: float
    low_m: float
    head_m: float
    foot_m: float
    reach_m: float

    def at(self, x_m: float, y_m: float) -> tuple[float, float]:
        """Return the point of the sheet for metres from the left edge and over the ground."""
        return self.left + x_m * self.px_per_m, TOP + (self.high_m - y_m) * self.px_per_m


def _place(wall: WallDrawing) -> Place:
    reach = _reach_m(wall)
    across = LEFT_M + wall.wall_thickness_m + reach + OUTDOOR_M[0] + 0.3
    foot = min(max(0.0, wall.outdoor_height_m), HIGHEST_DRAWN_M)
    head = foot + OUTDOOR_M[1] / 2.0 + wall.line_rise_m
    high = max(head + INDOOR_M[1], foot + OUTDOOR_M[1]) + 0.3
    low = min(0.0, head - INDOOR_M[1] - 0.3)
    scale = min((WIDTH - 12.0) / across, (HEIGHT - TOP - 68.0) / (high - low))
    return Place((WIDTH - across * scale) / 2.0, scale, across, high, low, head, foot, reach)


def section(wall: WallDrawing, units: UnitSystem) -> str:
    """Return the cut through wall, hole, lines and both units; all to one scale but a height marked as left out."""
    place = _place(wall)
    face, middle = LEFT_M + wall.wall_thickness_m, place.foot_m + OUTDOOR_M[1] / 2.0
    route = [
        place.at(LEFT_M - INDOOR_M[0] / 2.0, place.head_m),
        place.at(LEFT_M, place.head_m),
        place.at(face, place.head_m - FALL_M_PER_M * wall.wall_thickness_m),
        place.at(face, middle),
        place.at(face + place.reach_m, middle),
    ]
    parts = [f"<defs>{hatching('wall-cut', 5.0)}{hatching('wall-earth', 8.0)}</defs>"]
    parts += _solid(wall, place) + _bites(wall, place) + _lines(wall, route) + _units(wall, place)
    parts += _gap(wall, units, place) + _captions(wall, units, place)
    return drawing((WIDTH, HEIGHT), "Wall and line set, cut through", description(wall, units), parts)


def _solid(wall: WallDrawing, place: Place) -> list[str]:
    top, outside = place.at(LEFT_M, place.high_m), place.at(LEFT_M + wall.wall_thickness_m, 0.0)
    size = (wall.wall_thickness_m * place.px_per_m, (place.high_m - place.low_m) * place.px_per_m)
    right = place.at(place.across_m, 0.0)
    room = place.left + LEFT_M * place.px_per_m / 2.0
    return [
        box(top, size, 'fill="url(#wall-cut)" stroke="currentColor" stroke-width="1.6"'),
        line(outside, right, 2.0),
        box(outside, (right[0] - outside[0], 14.0), 'fill="url(#wall-earth)" stroke="none"'),
        words("room", (room, top[1] - 5.0)),
        words("outside", ((outside[0] + right[0]) / 2.0, top[1] - 5.0)),
    ]


def _bites(wall: WallDrawing, place: Place) -> list[str]:
    """Return a stroke across the hole where the bit must be cleared."""
    stops = [LEFT_M + wall.bite_m * bite for bite in range(1, wall.bites)]
    points = [place.at(stop, place.head_m) for stop in stops]
    return [line((x, y - 9.0), (x, y + 9.0), 1.4) for x, y in points]


def _lines(wall: WallDrawing, route: list[tuple[float, float]]) -> list[str]:
    """Return the way of the lines; what the set in the box does not cover is broken and in a warning colour."""
    covered = min(1.0, wall.line_set_m / wall.line_run_m)
    near, far = _parted(route, covered)
    parts = [path(near, f'stroke="{WINDOW_COLOUR}" stroke-width="5"')]
    if wall.slack_m < 0.0:
        parts.append(path(far, f'stroke="{SHORTAGE_COLOUR}" stroke-width="4" stroke-dasharray="6 5"'))
    return parts


def _parted(
    route: list[tuple[float, float]], share: float
) -> tuple[list[tuple[float, float]], list[tuple[float, float]]]:
    """Return a bent line cut in two at a share of its length."""
    lengths = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(route)]
    left = share * sum(lengths)
    for position, length in enumerate(lengths):
        if left < length:
            (x1, y1), (x2, y2) = route[position], route[position + 1]
            cut = (x1 + (x2 - x1) * left / length, y1 + (y2 - y1) * left / length)
            return [*route[: position + 1], cut], [cut, *route[position + 1 :]]
        left -= length
    return route, []


def _units(wall: WallDrawing, place: Place) -> list[str]:
    scale = place.px_per_m
    indoor = place.at(LEFT_M - INDOOR_M[0], place.head_m + INDOOR_M[1] / 2.0)
    outdoor = place.at(LEFT_M + wall.wall_thickness_m + place.reach_m, place.foot_m + OUTDOOR_M[1])
    solid = 'fill="none" stroke="currentColor" stroke-width="2" rx="2"'
    size = (OUTDOOR_M[0] * scale, OUTDOOR_M[1] * scale)
    fan = (outdoor[0] + size[0] / 2.0, outdoor[1] + size[1] / 2.0)
    parts = [
        box(indoor, (INDOOR_M[0] * scale, INDOOR_M[1] * scale), solid),
        box(outdoor, size, solid),
        circle(fan, size[1] * 0.36),
    ]
    if 0.0 < wall.outdoor_height_m <= HIGHEST_DRAWN_M:
        legs = [outdoor[0] + size[0] * share for share in (0.2, 0.8)]
        parts += [
            line((x, outdoor[1] + size[1]), (x, place.at(0.0, 0.0)[1]), 1.2, 'stroke-dasharray="3 3"') for x in legs
        ]
    return parts


def _gap(wall: WallDrawing, units: UnitSystem, place: Place) -> list[str]:
    """Return two strokes through the wall where height is left out, and the true height."""
    if wall.outdoor_height_m <= HIGHEST_DRAWN_M:
        return []
    left, right = place.at(LEFT_M - 0.15, 0.5), place.at(LEFT_M + wall.wall_thickness_m + 0.15, 0.65)
    strokes = [line((left[0], left[1] - lift), (right[0], right[1] - lift), 2.0) for lift in (0.0, 7.0)]
    text = f"{measure(wall.outdoor_height_m, Quantity.LENGTH, units)} above the ground"
    return [*strokes, words(text, (right[0] + 8.0, right[1]), "start")]


def _captions(wall: WallDrawing, units: UnitSystem, place: Place) -> list[str]:
    thick = measure(wall.wall_thickness_m, Quantity.SHORT_LENGTH, units)
    bites = f", {wall.bites} bites of the bit" if wall.bites > 1 else ""
    colour = WINDOW_COLOUR if wall.slack_m >= 0.0 else SHORTAGE_COLOUR
    foot = HEIGHT - 12.0
    scale = place.px_per_m
    mark = (10.0, 16.0)
    length_m = FOOT_M * 5.0 if units == UnitSystem.US else 2.0
    ruler = line(mark, (mark[0] + length_m * scale, mark[1]), 2.0)
    length = words(
        measure(length_m, Quantity.LENGTH, units), (mark[0] + length_m * scale + 6.0, mark[1] + 4.0), "start"
    )
    return [
        ruler,
        length,
        words(f"Wall {thick}{bites}; the hole falls outward", (WIDTH / 2.0, foot - LETTER * 1.4)),
        words(reach_words(wall, units), (WIDTH / 2.0, foot), more=f'font-weight="600" style="fill:{colour}"'),
    ]
