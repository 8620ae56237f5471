"""The outdoor unit seen from above, to scale: the way along the wall, the panel, and what is near it.

Distances are drawn true, up to where the sheet ends; the directions in which things lie are not known and are drawn
one beside the other.
"""

from dataclasses import dataclass
from math import cos, isfinite, radians, sin
from typing import Final

from econ.kernel.constants import FOOT_M
from econ.report.numbers import Quantity, UnitSystem, listed, measure
from econ.report.pictures.frame import Columns
from econ.report.sketch.element import (
    LETTER,
    WINDOW_COLOUR,
    box,
    break_strokes,
    circle,
    drawing,
    hatching,
    line,
    path,
    words,
)
from econ.report.sketch.wall_facts import NOT_KNOWN_M, apart

WIDTH: Final = 360.0
PX_PER_M: Final = 40.0
WALL_TOP: Final = 56.0
WALL_PX: Final = 10.0
HEAD_X: Final = 52.0
UNIT_X: Final = 170.0
"""Where the hole and the left edge of the outdoor unit stand on the sheet."""

UNIT_M: Final = (0.8, 0.35)
HEAD_M: Final = (0.8, 0.25)
BACK_M: Final = 0.3
"""m; width and depth of the units, and space behind the outdoor one, as drawn where nobody has measured it."""

FAR_M: Final = 3.0
"""m from the outdoor unit to the edge of the sheet: what lies beyond is drawn there with a mark."""

NUMBER_PX: Final = 42.0
"""Least distance of a number from the middle of the unit: nearer ones would lie over each other."""

DISC_PX: Final = 9.0
LEAST_DEEP_PX: Final = 70.0
NONE_NEAR_M: Final = 30.0
"""m from which on a thing counts as not there: the form says to type 100 ft for none."""

LINE_PX: Final = LETTER * 1.5

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class SitePlan:
    """What the plan needs to know; NaN where nobody has measured.

    Attributes
    ----------
    along_m : float
        Way of the lines along the wall, from the hole to the outdoor unit. [m]
    panel_m : float
        Way of the wire from the panel. [m]
    back_m, front_m : float
        Free space behind and before the outdoor unit. [m]
    boundary_m, gas_meter_m, vents_m, bedroom_window_m : float
        From the outdoor unit to each. [m]
    """

    along_m: float
    panel_m: float
    back_m: float = NOT_KNOWN_M
    front_m: float = NOT_KNOWN_M
    boundary_m: float = NOT_KNOWN_M
    gas_meter_m: float = NOT_KNOWN_M
    vents_m: float = NOT_KNOWN_M
    bedroom_window_m: float = NOT_KNOWN_M


NEAR: Final = (
    ("gas_meter_m", "gas meter or regulator", 12.0),
    ("vents_m", "vent or flue", 42.0),
    ("bedroom_window_m", "bedroom window", 72.0),
    ("boundary_m", "boundary", 102.0),
)
"""Field, name, and the direction in which it is drawn, degrees from along the wall toward away from it."""

_ALL: Final = (*((field, name) for field, name, _ in NEAR), ("back_m", "wall behind it"), ("front_m", "free before it"))


def statement(plan: SitePlan, units: UnitSystem) -> str:
    """Return in words what the plan shows."""
    near = [f"{apart(_of(plan, field), units)} to the {name}" for field, name, _ in NEAR if _is_near(plan, field)]
    lacking = [name for field, name in _ALL if not isfinite(_of(plan, field))]
    told = f" It is {listed(near)}." if near else ""
    open_end = f" Not measured yet: {listed(lacking)}." if lacking else ""
    way = f"The outdoor unit stands about {apart(plan.along_m, units)} along the wall from the hole"
    return f"{way}, the wire from the panel is {apart(plan.panel_m, units)} long.{told}{open_end}"


def _of(plan: SitePlan, field: str) -> float:
    length: float = getattr(plan, field)
    return length


def _is_near(plan: SitePlan, field: str) -> bool:
    return _of(plan, field) < NONE_NEAR_M


def table(plan: SitePlan, units: UnitSystem) -> Columns:
    """Return the distances as a table."""
    rows = [("Along the wall to the hole", plan.along_m), ("Wire to the panel", plan.panel_m)]
    rows += [(name.capitalize(), _of(plan, field)) for field, name in _ALL]
    return {"From the outdoor unit": [name for name, _ in rows], "How far": [_told(far, units) for _, far in rows]}


def _told(length_m: float, units: UnitSystem) -> str:
    if not isfinite(length_m):
        return "not measured"
    return apart(length_m, units) if length_m < NONE_NEAR_M else "none near"


def plan_view(plan: SitePlan, units: UnitSystem) -> str:
    """Return the plan: wall, indoor unit, lines, outdoor unit, panel, and numbered things near it."""
    legend, ground = _legend(plan, units), _ground_px(plan)
    height = ground + 26.0 + LINE_PX * len(legend)
    parts = [f"<defs>{hatching('site-wall', 5.0)}</defs>", *_house(), *_way(plan, units), *_unit(plan)]
    for number, (field, _, angle) in enumerate(NEAR, 1):
        if _is_near(plan, field):
            parts += _thing(number, _middle(plan), _of(plan, field), angle)
    top = ground + 18.0
    parts.append(words("outside", (10.0, ground - 2.0), "start"))
    parts += [words(text, (10.0, top + LINE_PX * row), "start") for row, text in enumerate(legend)]
    return drawing((WIDTH, height), "The site from above", statement(plan, units), [*parts, *_ruler(units)])


def _ground_px(plan: SitePlan) -> float:
    """Return how far down the sheet the drawing reaches."""
    tips = [
        _middle(plan)[1] + sin(radians(angle)) * _tip_px(number, _of(plan, field)) + DISC_PX
        for number, (field, _, angle) in enumerate(NEAR, 1)
        if _is_near(plan, field)
    ]
    return max([WALL_TOP + WALL_PX + LEAST_DEEP_PX, *tips])


def _edge_px(number: int) -> float:
    """Return how far from its middle the outdoor unit ends, toward a thing near it."""
    return UNIT_M[0] / 2.0 * PX_PER_M if number == 1 else (UNIT_M[1] / 2.0 + 0.05) * PX_PER_M


def _tip_px(number: int, far_m: float) -> float:
    """Return how far from the middle of the outdoor unit the number of a thing stands."""
    return max(NUMBER_PX, _edge_px(number) + min(far_m, FAR_M) * PX_PER_M + DISC_PX + 2.0)


def _house() -> list[str]:
    head = (HEAD_X - HEAD_M[0] * PX_PER_M / 2.0, WALL_TOP - HEAD_M[1] * PX_PER_M)
    return [
        box((0.0, WALL_TOP), (WIDTH, WALL_PX), 'fill="url(#site-wall)" stroke="currentColor" stroke-width="1.4"'),
        box(head, (HEAD_M[0] * PX_PER_M, HEAD_M[1] * PX_PER_M), 'fill="none" stroke="currentColor" stroke-width="2"'),
        words("room", (HEAD_X + 46.0, WALL_TOP - 8.0)),
    ]


def _middle(plan: SitePlan) -> Point:
    """Return the middle of the outdoor unit on the sheet."""
    back = plan.back_m if isfinite(plan.back_m) else BACK_M
    down = min(back, 1.0) + UNIT_M[1] / 2.0
    return UNIT_X + UNIT_M[0] * PX_PER_M / 2.0, WALL_TOP + WALL_PX + down * PX_PER_M


def _way(plan: SitePlan, units: UnitSystem) -> list[str]:
    """Return the lines along the wall and the wire to the panel, each with a mark where it is not drawn whole."""
    (_, y), wall = _middle(plan), WALL_TOP + WALL_PX
    drawn_m = (UNIT_X - HEAD_X) / PX_PER_M
    start = max(HEAD_X, UNIT_X - plan.along_m * PX_PER_M)
    lines = [(start, WALL_TOP - 4.0), (start, y), (UNIT_X, y)]
    parts = [path(lines, f'stroke="{WINDOW_COLOUR}" stroke-width="4"')]
    middle = ((start + UNIT_X) / 2.0, y)
    if plan.along_m > drawn_m:
        parts += break_strokes(middle, is_upright=False)
    parts.append(words(apart(plan.along_m, units), (UNIT_X - 10.0, y + LETTER * 1.9), "end"))
    panel = (WIDTH - 46.0, WALL_TOP - 22.0)
    right = UNIT_X + UNIT_M[0] * PX_PER_M
    wire = [(panel[0] + 8.0, WALL_TOP - 2.0), (panel[0] + 8.0, wall + 5.0), (right - 6.0, wall + 5.0)]
    parts.append(
        path(
            [*wire, (right - 6.0, y - UNIT_M[1] * PX_PER_M / 2.0)],
            'stroke="currentColor" stroke-width="1.4" stroke-dasharray="5 3"',
        )
    )
    parts.append(box(panel, (16.0, 20.0), 'fill="none" stroke="currentColor" stroke-width="2"'))
    parts.append(words(f"panel, {apart(plan.panel_m, units)} of wire", (panel[0] - 6.0, WALL_TOP - 8.0), "end"))
    return parts


def _unit(plan: SitePlan) -> list[str]:
    x, y = _middle(plan)
    size = (UNIT_M[0] * PX_PER_M, UNIT_M[1] * PX_PER_M)
    corner = (x - size[0] / 2.0, y - size[1] / 2.0)
    return [box(corner, size, 'fill="none" stroke="currentColor" stroke-width="2" rx="2"'), circle((x, y), 4.5)]


def _thing(number: int, middle: Point, far_m: float, angle_deg: float) -> list[str]:
    """Return a ray from the outdoor unit to a thing near it, with its number at the end."""
    along, away = cos(radians(angle_deg)), sin(radians(angle_deg))
    edge, tip_px = _edge_px(number), _tip_px(number, far_m)
    reaches = (edge, edge + min(far_m, FAR_M) * PX_PER_M, tip_px - DISC_PX, tip_px)
    near, far, rim, tip = ((middle[0] + along * reach, middle[1] + away * reach) for reach in reaches)
    mark = break_strokes(((near[0] + far[0]) / 2.0, (near[1] + far[1]) / 2.0), is_upright=angle_deg > 45.0)
    return [
        line(near, far, 1.6),
        line(far, rim, 1.0, 'stroke-dasharray="1 2"'),
        circle(tip, DISC_PX),
        words(str(number), (tip[0], tip[1] + LETTER / 3.0)),
        *(mark if far_m > FAR_M else []),
    ]


def _legend(plan: SitePlan, units: UnitSystem) -> list[str]:
    told = [
        f"{number}  {name}: {apart(_of(plan, field), units)}"
        for number, (field, name, _) in enumerate(NEAR, 1)
        if _is_near(plan, field)
    ]
    lacking = [name for field, name, _ in NEAR if not isfinite(_of(plan, field))]
    return [*told, *(f"?  {name}: not measured" for name in lacking)]


def _ruler(units: UnitSystem) -> list[str]:
    length_m = FOOT_M * 5.0 if units == UnitSystem.US else 2.0
    end = 10.0 + length_m * PX_PER_M
    return [
        line((10.0, 16.0), (end, 16.0), 2.0),
        words(measure(length_m, Quantity.LENGTH, units), (end + 6.0, 20.0), "start"),
    ]
