"""The hole through the wall, enlarged and to its own scale: slope, sleeve, bites of the bit, sealing at both ends."""

from typing import Final

from econ.report.numbers import UnitSystem, plural
from econ.report.sketch.element import LETTER, WINDOW_COLOUR, drawing, hatching, line, path, words
from econ.report.sketch.wall_facts import FALL_WORDS, WallDrawing, fine

WIDTH: Final = 360.0
HOLE_M: Final = 0.089
"""m, 3.5 in: diameter of the hole for a line set with drain and cable; common practice, no source."""

SIDE_M: Final = 0.08
"""m drawn beside the wall."""

SLEEVE_M: Final = 0.01
"""m that the sleeve stands out of the wall on each side. Assumption of the drawing."""

MOST_PX_PER_M: Final = 800.0
TOP: Final = 30.0
MARGIN_PX: Final = 26.0
FOOT: Final = 46.0
_ROOM_PX: Final = 36.0
_OUTSIDE_PX: Final = 54.0
"""Room that the two words take at the edges of the sheet."""

_LEAST_NUMBER_PX: Final = 15.0
"""Bites narrower than this on the sheet are not numbered."""


def statement(wall: WallDrawing, units: UnitSystem) -> str:
    """Return in words what the enlarged hole shows."""
    thick, wide = (fine(length, units) for length in (wall.wall_thickness_m, HOLE_M))
    bites = f" A bit that cuts {fine(wall.bite_m, units)} at a time takes {wall.bites} bites." if wall.bites > 1 else ""
    return f"The hole is {wide} wide and {thick} long, and falls {FALL_WORDS[units]} toward the outside.{bites}"


def detail(wall: WallDrawing, units: UnitSystem) -> str:
    """Return the hole enlarged: the wall in hatching, the sleeve in colour, a stroke at the end of each bite."""
    scale = min((WIDTH - 12.0) / (wall.wall_thickness_m + 2.0 * SIDE_M), MOST_PX_PER_M)
    thick, wide, fall = (length * scale for length in (wall.wall_thickness_m, HOLE_M, wall.fall_m))
    left, high = (WIDTH - thick) / 2.0, 2.0 * MARGIN_PX + wide + fall
    height = TOP + high + FOOT
    upper = (left, TOP + MARGIN_PX)
    parts = [f"<defs>{hatching('hole-cut', 7.0)}</defs>"]
    parts += _solid((left, thick), upper[1], (wide, fall), high)
    parts += _sleeve(upper, (thick, wide, fall), SLEEVE_M * scale)
    parts += _bites(wall, upper, (scale, wide))
    parts += _words(wall, units, (left, thick), height)
    return drawing((WIDTH, height), "The hole, enlarged", statement(wall, units), parts)


def _solid(wall_px: tuple[float, float], hole_top: float, hole: tuple[float, float], high: float) -> list[str]:
    """Return the wall above and below the hole."""
    (left, thick), (wide, fall) = wall_px, hole
    right, top, foot = left + thick, TOP, TOP + high
    cut = 'fill="url(#hole-cut)" stroke="currentColor" stroke-width="1.6"'
    above = ((left, top), (right, top), (right, hole_top + fall), (left, hole_top))
    below = ((left, hole_top + wide), (right, hole_top + fall + wide), (right, foot), (left, foot))
    return [_polygon(corners, cut) for corners in (above, below)]


def _polygon(corners: tuple[tuple[float, float], ...], more: str) -> str:
    return f'<polygon points="{" ".join(f"{x:.1f},{y:.1f}" for x, y in corners)}" {more}/>'


def _sleeve(upper: tuple[float, float], size: tuple[float, float, float], out: float) -> list[str]:
    """Return the two cut edges of the sleeve, and the level line from which the fall is seen."""
    (left, top), (thick, wide, fall) = upper, size
    edges = [[(left - out, y), (left + thick + out, y + fall)] for y in (top, top + wide)]
    level = top + wide
    return [
        *(path(edge, f'stroke="{WINDOW_COLOUR}" stroke-width="3.5"') for edge in edges),
        line((left, level), (left + thick + out, level), 1.0, 'stroke-dasharray="4 3"'),
    ]


def _bites(wall: WallDrawing, upper: tuple[float, float], scale: tuple[float, float]) -> list[str]:
    """Return a stroke at the end of each bite but the last, and its number where there is room."""
    (left, top), (px_per_m, wide) = upper, scale
    if wall.bites < 2:
        return []
    parts = []
    slope = wall.fall_m / wall.wall_thickness_m
    for bite in range(wall.bites):
        start, end = (min(wall.bite_m * at, wall.wall_thickness_m) * px_per_m for at in (bite, bite + 1))
        if bite + 1 < wall.bites:
            drop = slope * end
            parts.append(line((left + end, top + drop), (left + end, top + wide + drop), 1.4))
        if end - start >= _LEAST_NUMBER_PX:
            at = (left + (start + end) / 2.0, top + wide / 2.0 + LETTER / 3.0)
            parts.append(words(str(bite + 1), at))
    return parts


def _words(wall: WallDrawing, units: UnitSystem, wall_px: tuple[float, float], height: float) -> list[str]:
    left, thick = wall_px
    bites = f"; {wall.bites} {plural('bite', wall.bites)} of the bit" if wall.bites else ""
    foot, middle = height - 10.0, WIDTH / 2.0
    return [
        words("room", (max(left - 6.0, _ROOM_PX), TOP - 8.0), "end"),
        words("outside", (min(left + thick + 6.0, WIDTH - _OUTSIDE_PX), TOP - 8.0), "start"),
        words(f"{fine(wall.wall_thickness_m, units)} of wall{bites}", (middle, foot - LETTER * 1.4)),
        words(f"falls {FALL_WORDS[units]}; sleeve sealed at both ends", (middle, foot)),
    ]
