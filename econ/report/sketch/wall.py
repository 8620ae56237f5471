"""The wall and the line set, cut through and to scale: hole, bites of the bit, lift, slack or shortage.

What is too long to be drawn is left out between two slanted strokes; all else keeps one scale.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import isfinite
from typing import Final

from econ.kernel.constants import FOOT_M
from econ.report.numbers import Quantity, UnitSystem, measure
from econ.report.sketch.element import (
    LETTER,
    SHORTAGE_COLOUR,
    WINDOW_COLOUR,
    Box,
    box,
    break_strokes,
    circle,
    drawing,
    hatching,
    is_apart,
    line,
    path,
    words,
    words_box,
)
from econ.report.sketch.wall_facts import FALL_M_PER_M, WallDrawing, apart, description, fine, reach_words

WIDTH: Final = 360.0
TOP: Final = 44.0
FOOT: Final = 50.0
"""Above the drawing: ruler and names; below it: two lines of words."""

LEFT_M: Final = 1.0
"""m of room drawn to the left of the wall."""

MOST_PX_PER_M: Final = 64.0

INDOOR_M: Final = (0.25, 0.3)
OUTDOOR_M: Final = (0.8, 0.6)
"""m; depth and height of the units as drawn (assumption of the drawing only)."""

SMALLEST_REACH_M: Final = 0.6
"""m; the outdoor unit stands at least so far from the wall in the drawing."""

MOST_REACH_M: Final = 4.0
MOST_RISE_M: Final = 3.0
MOST_FOOT_M: Final = 1.2
MOST_CEILING_M: Final = 0.6
"""m; what is longer or higher is drawn so long, with a mark for the part left out."""

LEAST_LIFT_M: Final = 0.5
"""m; a smaller lift leaves no room for its label."""

GROUND_PX: Final = 14.0
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Place:
    """Where the drawing lies on its sheet, and where things stand in it.

    Attributes
    ----------
    left, px_per_m, height : float
        Left edge on the sheet; scale; height of the sheet.
    face_m, across_m, high_m, low_m : float
        Outside of the wall and width drawn; highest and lowest point over the ground. [m]
    head_m, foot_m, reach_m : float
        Middle of the indoor unit and foot of the outdoor unit over the ground; outdoor unit from the wall. [m]
    """

    left: float
    px_per_m: float
    height: float
    face_m: float
    across_m: float
    high_m: float
    low_m: float
    head_m: float
    foot_m: float
    reach_m: float

    @property
    def middle_m(self) -> float:
        """Middle of the outdoor unit over the ground. [m]"""
        return self.foot_m + OUTDOOR_M[1] / 2.0

    def at(self, x_m: float, y_m: float) -> Point:
        """Return the point of the sheet for metres from the left edge and over the ground."""
        return self.left + x_m * self.px_per_m, TOP + (self.high_m - y_m) * self.px_per_m


def true_reach_m(wall: WallDrawing) -> float:
    """Return how far from the wall the outdoor unit stands: what the run leaves after wall and rise. [m]"""
    return max(SMALLEST_REACH_M, wall.line_run_m - abs(wall.line_rise_m) - wall.wall_thickness_m - INDOOR_M[0])


def _clipped(value: float, most: float) -> float:
    return max(-most, min(most, value))


def _place(wall: WallDrawing) -> Place:
    reach = min(MOST_REACH_M, true_reach_m(wall))
    face = LEFT_M + wall.wall_thickness_m
    across = face + reach + OUTDOOR_M[0] + 0.3
    foot = min(max(0.0, wall.outdoor_height_m), MOST_FOOT_M)
    head = foot + OUTDOOR_M[1] / 2.0 + _clipped(wall.line_rise_m, MOST_RISE_M)
    ceiling = min(wall.head_above_m, MOST_CEILING_M) if isfinite(wall.head_above_m) else 0.15
    high = max(head + INDOOR_M[1] / 2.0 + ceiling + 0.1, foot + OUTDOOR_M[1] + 0.15)
    low = min(0.0, head - INDOOR_M[1] / 2.0 - 0.3)
    scale = min((WIDTH - 12.0) / across, MOST_PX_PER_M)
    height = TOP + (high - low) * scale + GROUND_PX + FOOT
    return Place((WIDTH - across * scale) / 2.0, scale, height, face, across, high, low, head, foot, reach)


def section(wall: WallDrawing, units: UnitSystem) -> str:
    """Return the cut through wall, hole, lines and both units, to one scale but for what is marked as left out."""
    place = _place(wall)
    parts = [f"<defs>{hatching('wall-cut', 5.0)}{hatching('wall-earth', 8.0)}</defs>"]
    parts += _solid(place) + _bites(wall, place) + _ceiling(wall, units, place) + _lines(wall, place)
    parts += _units(wall, place) + _breaks(wall, place) + _labels(wall, units, place) + _captions(wall, units, place)
    return drawing((WIDTH, place.height), "Wall and line set, cut through", description(wall, units), parts)


def _solid(place: Place) -> list[str]:
    top, outside = place.at(LEFT_M, place.high_m), place.at(place.face_m, 0.0)
    size = (outside[0] - top[0], (place.high_m - place.low_m) * place.px_per_m)
    right = place.at(place.across_m, 0.0)
    room = place.left + LEFT_M * place.px_per_m / 2.0
    return [
        box(top, size, 'fill="url(#wall-cut)" stroke="currentColor" stroke-width="1.6"'),
        line(outside, right, 2.0),
        box(outside, (right[0] - outside[0], GROUND_PX), 'fill="url(#wall-earth)" stroke="none"'),
        words("room", (room, top[1] - 5.0)),
        words("outside", ((outside[0] + right[0]) / 2.0, top[1] - 5.0)),
    ]


def _bites(wall: WallDrawing, place: Place) -> list[str]:
    """Return a stroke across the hole where the bit must be cleared."""
    stops = [LEFT_M + wall.bite_m * bite for bite in range(1, wall.bites)]
    points = [place.at(stop, place.head_m) for stop in stops]
    return [line((x, y - 9.0), (x, y + 9.0), 1.4) for x, y in points]


def _ceiling(wall: WallDrawing, units: UnitSystem, place: Place) -> list[str]:
    """Return the ceiling over the indoor unit, where the space between has been measured."""
    if not isfinite(wall.head_above_m):
        return []
    head_top = place.head_m + INDOOR_M[1] / 2.0
    level = head_top + min(wall.head_above_m, MOST_CEILING_M)
    unit_x = LEFT_M - INDOOR_M[0]
    text, at = fine(wall.head_above_m, units), place.at(unit_x - 0.06, head_top)
    return [
        line(place.at(0.0, level), place.at(LEFT_M, level), 2.0),
        line(place.at(unit_x + 0.08, level), place.at(unit_x + 0.08, head_top), 1.0, 'stroke-dasharray="2 2"'),
        words(text, (at[0], at[1] + LETTER), "end"),
    ]


def _route(wall: WallDrawing, place: Place) -> tuple[list[Point], list[float]]:
    """Return the way of the lines as drawn, and the true length of each of its straight parts."""
    wall_end = place.head_m - FALL_M_PER_M * wall.wall_thickness_m
    route = [
        place.at(LEFT_M - INDOOR_M[0] / 2.0, place.head_m),
        place.at(LEFT_M, place.head_m),
        place.at(place.face_m, wall_end),
        place.at(place.face_m, place.middle_m),
        place.at(place.face_m + place.reach_m, place.middle_m),
    ]
    return route, [INDOOR_M[0] / 2.0, wall.wall_thickness_m, abs(wall.line_rise_m), true_reach_m(wall)]


def _lines(wall: WallDrawing, place: Place) -> list[str]:
    """Return the way of the lines; what the set in the box does not cover is broken and in a warning colour."""
    route, lengths = _route(wall, place)
    near, far = _parted(route, lengths, min(1.0, wall.line_set_m / wall.line_run_m))
    parts = [path(near, f'stroke="{WINDOW_COLOUR}" stroke-width="5"')]
    if wall.slack_m < 0.0:
        parts.append(path(far, f'stroke="{SHORTAGE_COLOUR}" stroke-width="4" stroke-dasharray="6 5"'))
    return parts


def _parted(route: list[Point], lengths: list[float], share: float) -> tuple[list[Point], list[Point]]:
    """Return a bent line cut in two at a share of its true length."""
    left = share * sum(lengths)
    for position, ((x1, y1), (x2, y2)) in enumerate(pairwise(route)):
        length = lengths[position]
        if left < length:
            cut = (x1 + (x2 - x1) * left / length, y1 + (y2 - y1) * left / length)
            return [*route[: position + 1], cut], [cut, *route[position + 1 :]]
        left -= length
    return route, []


def unit_boxes(place: Place) -> tuple[Box, Box]:
    """Return where the indoor and the outdoor unit are drawn."""
    indoor = place.at(LEFT_M - INDOOR_M[0], place.head_m + INDOOR_M[1] / 2.0)
    outdoor = place.at(place.face_m + place.reach_m, place.foot_m + OUTDOOR_M[1])
    sizes = ([side * place.px_per_m for side in unit] for unit in (INDOOR_M, OUTDOOR_M))
    (in_w, in_h), (out_w, out_h) = sizes
    return (*indoor, indoor[0] + in_w, indoor[1] + in_h), (*outdoor, outdoor[0] + out_w, outdoor[1] + out_h)


def _units(wall: WallDrawing, place: Place) -> list[str]:
    solid = 'fill="none" stroke="currentColor" stroke-width="2" rx="2"'
    indoor, outdoor = unit_boxes(place)
    parts = [box(unit[:2], (unit[2] - unit[0], unit[3] - unit[1]), solid) for unit in (indoor, outdoor)]
    high, ground = outdoor[3] - outdoor[1], place.at(0.0, 0.0)[1]
    parts.append(circle(((outdoor[0] + outdoor[2]) / 2.0, outdoor[1] + high / 2.0), high * 0.36))
    if 0.0 < wall.outdoor_height_m <= MOST_FOOT_M:
        legs = [outdoor[0] + (outdoor[2] - outdoor[0]) * share for share in (0.2, 0.8)]
        parts += [line((x, outdoor[3]), (x, ground), 1.2, 'stroke-dasharray="3 3"') for x in legs]
    return parts


def _breaks(wall: WallDrawing, place: Place) -> list[str]:
    """Return the strokes where length, lift or height above the ground is left out."""
    strokes: list[str] = []
    if true_reach_m(wall) > MOST_REACH_M:
        strokes += break_strokes(place.at(place.face_m + place.reach_m / 2.0, place.middle_m), is_upright=False)
    if abs(wall.line_rise_m) > MOST_RISE_M:
        strokes += break_strokes(place.at(place.face_m, (place.head_m + place.middle_m) / 2.0), is_upright=True)
    if wall.outdoor_height_m > MOST_FOOT_M:
        x, foot, ground = _plumb(place)
        strokes.append(line((x, foot), (x, ground), 1.2, 'stroke-dasharray="3 3"'))
        strokes += break_strokes((x, (foot + ground) / 2.0), is_upright=True)
    return strokes


def _plumb(place: Place) -> tuple[float, float, float]:
    """Return where a plumb line hangs from the foot of the outdoor unit to the ground."""
    outdoor = unit_boxes(place)[1]
    return (outdoor[0] + outdoor[2]) / 2.0, outdoor[3], place.at(0.0, 0.0)[1]


def _labels(wall: WallDrawing, units: UnitSystem, place: Place) -> list[str]:
    """Return lift, length left out and height over the ground, each where nothing else stands."""
    taken = [*unit_boxes(place), _strip(place.at(place.face_m, 0.0), place.at(place.across_m, 0.0), GROUND_PX)]
    route, _ = _route(wall, place)
    taken += [_strip(start, end, 4.0) for start, end in pairwise(route)]
    parts: list[str] = []
    for text, spots in _wanted(wall, units, place):
        free = (spot for spot in spots if all(is_apart(words_box(text, *spot), other) for other in taken))
        if (spot := next(free, None)) is not None:
            taken.append(words_box(text, *spot))
            parts.append(words(text, *spot))
    return parts


def _wanted(wall: WallDrawing, units: UnitSystem, place: Place) -> list[tuple[str, list[tuple[Point, str]]]]:
    """Return labels with the spots each may take, best first."""
    shares = (0.5, 0.35, 0.65, 0.2, 0.8)
    wanted: list[tuple[str, list[tuple[Point, str]]]] = []
    if wall.outdoor_height_m > MOST_FOOT_M:
        text = f"{apart(wall.outdoor_height_m, units)} above the ground"
        wanted.append(
            (text, [((_plumb(place)[0] - 14.0, place.at(0.0, place.foot_m * share)[1]), "end") for share in shares])
        )
    if true_reach_m(wall) > MOST_REACH_M:
        x, y = place.at(place.face_m + place.reach_m / 2.0, place.middle_m)
        text = f"about {apart(true_reach_m(wall), units)} along"
        wanted.append((text, [((x, y - 12.0), "middle"), ((x, y + 22.0), "middle")]))
    if abs(wall.line_rise_m) >= LEAST_LIFT_M:
        text = f"{apart(abs(wall.line_rise_m), units)} {'up' if wall.line_rise_m > 0.0 else 'down'}"
        levels = [place.middle_m + share * (place.head_m - place.middle_m) for share in shares]
        spots = [place.at(place.face_m, level) for level in levels]
        wanted.append((text, [((x + 12.0, y + LETTER / 3.0), "start") for x, y in spots]))
    return wanted


def _strip(start: Point, end: Point, thick: float) -> Box:
    """Return the box of a straight line of some thickness, or of a band beneath it."""
    (x1, y1), (x2, y2) = start, end
    return min(x1, x2) - 2.0, min(y1, y2) - 2.0, max(x1, x2) + 2.0, max(y1, y2) + thick


def _captions(wall: WallDrawing, units: UnitSystem, place: Place) -> list[str]:
    bites = f", {wall.bites} bites of the bit" if wall.bites > 1 else ""
    colour = WINDOW_COLOUR if wall.slack_m >= 0.0 else SHORTAGE_COLOUR
    foot = place.height - 10.0
    mark, length_m = (10.0, 16.0), FOOT_M * 2.0 if units == UnitSystem.US else 0.5
    end = mark[0] + length_m * place.px_per_m
    thick = fine(wall.wall_thickness_m, units)
    return [
        line(mark, (end, mark[1]), 2.0),
        words(measure(length_m, Quantity.LENGTH, units), (end + 6.0, mark[1] + 4.0), "start"),
        words(f"Wall {thick}{bites}; the hole falls outward", (WIDTH / 2.0, foot - LETTER * 1.4)),
        words(reach_words(wall, units), (WIDTH / 2.0, foot), more=f'font-weight="600" style="fill:{colour}"'),
    ]
