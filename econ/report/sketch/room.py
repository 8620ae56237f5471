"""The room from above and cut through, drawn from the answers given so far."""

from dataclasses import dataclass
from typing import Final

from econ.report.numbers import Quantity, UnitSystem, listed, measure
from econ.report.sketch.element import LETTER, WINDOW_COLOUR, box, drawing, hatching, line, words

TIMES: Final = "\u00d7"

COMPASS: Final = ("north", "east", "south", "west")

SIDE_WORDS: Final[dict[str, str]] = {
    "outside": "outside",
    "heated_room": "heated room",
    "unheated_room": "unheated room",
    "earth": "earth",
    "not_known": "not known",
}
ABOVE_WORDS: Final[dict[str, str]] = {
    "heated_room": "heated room above",
    "vented_attic": "attic above",
    "flat_roof": "flat roof",
    "sloped_roof": "sloped roof",
    "not_known": "above: not known",
}
BELOW_WORDS: Final[dict[str, str]] = {
    "heated_room": "heated room below",
    "slab_on_grade": "slab on the ground",
    "basement_floor": "floor in the ground",
    "vented_crawl": "crawl space below",
    "unheated_room": "unheated room below",
    "open_air": "open air below",
    "not_known": "below: not known",
}
WIDTH: Final = 360.0
PLAN_HEIGHT: Final = 300.0
SECTION_HEIGHT: Final = 240.0
EARTH_BAND: Final = 16.0

WINDOW_HEIGHT_M: Final = 1.2
"""m; windows are drawn as wide as their area at this height (assumption of the drawing only)."""

LARGEST_SHARE: Final = 0.9
"""Share of a side that its window may take in the drawing."""


@dataclass(frozen=True, slots=True)
class RoomDrawing:
    """What the drawing needs to know of a room.

    Attributes
    ----------
    name : str
        As the user calls it.
    floor_area_m2, length_m, ceiling_height_m : float
        Floor; length of the north and south sides; height. [m^2] [m] [m]
    sides : tuple of str, length 4
        What lies beyond the north, east, south and west side.
    windows_m2 : tuple of float, length 4
        Glass in each side. [m^2]
    earth_depth_m : float
        How deep the floor lies below the earth at earth sides. [m]
    above, below : str
        What lies above and below.
    turned_deg : float
        Azimuth that the side called north really faces. [degree]
    """

    name: str
    floor_area_m2: float
    length_m: float
    ceiling_height_m: float
    sides: tuple[str, str, str, str]
    windows_m2: tuple[float, float, float, float]
    earth_depth_m: float
    above: str
    below: str
    turned_deg: float = 0.0

    @property
    def width_m(self) -> float:
        """Length of the east and west sides. [m]"""
        return self.floor_area_m2 / self.length_m


def description(room: RoomDrawing, units: UnitSystem) -> str:
    """Return in words what plan and section show."""
    length, width, height = (
        measure(size, Quantity.LENGTH, units) for size in (room.length_m, room.width_m, room.ceiling_height_m)
    )
    sides = [f"{name} {SIDE_WORDS[kind]}" for name, kind in zip(COMPASS, room.sides, strict=True)]
    glazed = [
        f"{measure(area, Quantity.AREA, units)} to the {name}"
        for name, area in zip(COMPASS, room.windows_m2, strict=True)
        if area > 0.0
    ]
    glass = f"Windows: {listed(glazed)}." if glazed else "No windows."
    return (
        f"{length} by {width}, {height} high. Sides: {listed(sides)}. "
        f"{glass} {ABOVE_WORDS[room.above].capitalize()}, {BELOW_WORDS[room.below]}."
    )


def plan(room: RoomDrawing, units: UnitSystem) -> str:
    """Return the room from above, its north side on top: earth hatched, outside walls thick, windows blue."""
    scale = min(200.0 / room.length_m, 170.0 / room.width_m)
    size = (room.length_m * scale, room.width_m * scale)
    corner = ((WIDTH - size[0]) / 2.0, (PLAN_HEIGHT - size[1]) / 2.0)
    parts = [f"<defs>{hatching('plan-earth')}</defs>"]
    for position, ends in enumerate(_corners(corner, size)):
        parts += _side(room, position, ends, scale)
    middle = (corner[0] + size[0] / 2.0, corner[1] + size[1] / 2.0)
    length, width = (measure(side, Quantity.LENGTH, units) for side in (room.length_m, room.width_m))
    parts.append(words(room.name, (middle[0], middle[1] - 3.0), more='font-weight="600"'))
    parts.append(words(f"{length} {TIMES} {width}", (middle[0], middle[1] + LETTER + 2.0)))
    parts.append(_compass((WIDTH - 34.0, 44.0), room.turned_deg))
    return drawing((WIDTH, PLAN_HEIGHT), f"{room.name} from above", description(room, units), parts)


def _corners(corner: tuple[float, float], size: tuple[float, float]) -> list[tuple[tuple[float, float], ...]]:
    """Return both ends of the north, east, south and west side, each with the direction out of the room."""
    (x, y), (width, height) = corner, size
    return [
        ((x, y), (x + width, y), (0.0, -1.0)),
        ((x + width, y), (x + width, y + height), (1.0, 0.0)),
        ((x, y + height), (x + width, y + height), (0.0, 1.0)),
        ((x, y), (x, y + height), (-1.0, 0.0)),
    ]


def _side(room: RoomDrawing, position: int, ends: tuple[tuple[float, float], ...], scale: float) -> list[str]:
    start, end, out = ends
    kind, glass_m2 = room.sides[position], room.windows_m2[position]
    parts = [wall_line(kind, start, end)]
    if kind == "earth":
        parts.insert(0, _earth_band(start, end, out))
    if glass_m2 > 0.0:
        parts.append(_window(start, end, glass_m2 / WINDOW_HEIGHT_M * scale))
    middle = ((start[0] + end[0]) / 2.0, (start[1] + end[1]) / 2.0)
    away = EARTH_BAND + 7.0 if kind == "earth" else 10.0
    anchor = {0.0: "middle", 1.0: "start", -1.0: "end"}[out[0]]
    drop = {-1.0: 0.0, 0.0: LETTER / 3.0, 1.0: LETTER * 0.8}[out[1]]
    at = (middle[0] + out[0] * away, middle[1] + out[1] * away + drop)
    folded = SIDE_WORDS[kind].split(" ") if out[0] else [SIDE_WORDS[kind]]
    return parts + [words(word, (at[0], at[1] + LETTER * 1.15 * row), anchor) for row, word in enumerate(folded)]


def wall_line(kind: str, start: tuple[float, float], end: tuple[float, float]) -> str:
    """Return a side: thick to the outside and earth, thin to rooms, broken where unheated or not known."""
    width = 5.0 if kind in {"outside", "earth"} else 1.6
    broken = {"unheated_room": 'stroke-dasharray="7 4"', "not_known": 'stroke-dasharray="2 4"'}
    return line(start, end, width, f'stroke-linecap="square" {broken.get(kind, "")}')


def _earth_band(start: tuple[float, float], end: tuple[float, float], out: tuple[float, float]) -> str:
    x = min(start[0], end[0]) + min(0.0, out[0]) * EARTH_BAND
    y = min(start[1], end[1]) + min(0.0, out[1]) * EARTH_BAND
    size = (abs(end[0] - start[0]) or EARTH_BAND, abs(end[1] - start[1]) or EARTH_BAND)
    return box((x, y), size, 'fill="url(#plan-earth)" stroke="none"')


def _window(start: tuple[float, float], end: tuple[float, float], wanted: float) -> str:
    length = abs(end[0] - start[0]) + abs(end[1] - start[1])
    half = min(wanted, LARGEST_SHARE * length) / length / 2.0
    near, far = (
        (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
        for share in (0.5 - half, 0.5 + half)
    )
    return line(near, far, 6.0, f'style="stroke:{WINDOW_COLOUR}"')


def _compass(at: tuple[float, float], turned_deg: float) -> str:
    """Return the arrow to true north: turned against the room, since the side called north stays on top."""
    x, y = at
    arrow = f'<path d="M{x} {y - 14} L{x + 6} {y + 6} L{x} {y + 2} L{x - 6} {y + 6} Z" fill="currentColor"/>'
    drawn = arrow + words("N", (x, y - 18.0), more='font-weight="600"')
    return f'<g transform="rotate({-turned_deg:.0f} {x} {y})">{drawn}</g>' if turned_deg else drawn


def section(room: RoomDrawing, units: UnitSystem) -> str:
    """Return the room cut through, so that an earth side shows if there is one, with ground, roof and floor."""
    left, right = _cut(room)
    across_m = room.length_m if left == COMPASS.index("west") else room.width_m
    scale = min(210.0 / across_m, 92.0 / room.ceiling_height_m)
    size = (across_m * scale, room.ceiling_height_m * scale)
    corner = ((WIDTH - size[0]) / 2.0, 76.0 + (92.0 - size[1]))
    floor = corner[1] + size[1]
    parts = [f"<defs>{hatching('cut-earth')}</defs>"]
    for position, x, out in ((left, corner[0], -1.0), (right, corner[0] + size[0], 1.0)):
        parts += _ground(room, position, (x, floor), out, scale)
        parts.append(wall_line(room.sides[position], (x, corner[1]), (x, floor)))
        parts.append(words(COMPASS[position], (x + out * 12.0, corner[1] + 14.0), "start" if out > 0.0 else "end"))
        parts += _cut_window(room, position, (x, corner[1]), scale)
    parts += _above(room, corner, size) + _below(room, (corner[0], floor), size[0])
    height = measure(room.ceiling_height_m, Quantity.LENGTH, units)
    parts.append(words(f"{height} high", (WIDTH / 2.0, corner[1] + size[1] / 2.0 + 4.0)))
    return drawing((WIDTH, SECTION_HEIGHT), f"{room.name} cut through", description(room, units), parts)


def _cut(room: RoomDrawing) -> tuple[int, int]:
    """Return the sides that the cut meets, left and right: west and east, unless only north or south is in earth."""
    north, east, south, west = range(4)
    across = "earth" in {room.sides[north], room.sides[south]} and "earth" not in {room.sides[east], room.sides[west]}
    return (south, north) if across else (west, east)


def _ground(room: RoomDrawing, position: int, foot: tuple[float, float], out: float, scale: float) -> list[str]:
    """Return the ground beyond a wall, as high as the room lies deep there; none beyond the walls of other rooms."""
    kind = room.sides[position]
    if kind not in {"earth", "outside"} or room.below in {"heated_room", "unheated_room", "open_air"}:
        return []
    rise = room.earth_depth_m * scale if kind == "earth" else 0.0
    reach = 62.0
    x = foot[0] if out > 0.0 else foot[0] - reach
    ground = box((x, foot[1] - rise), (reach, rise + 18.0), 'fill="url(#cut-earth)" stroke="none"')
    return [ground, line((x, foot[1] - rise), (x + reach, foot[1] - rise), 2.0)]


def _cut_window(room: RoomDrawing, position: int, top: tuple[float, float], scale: float) -> list[str]:
    if room.windows_m2[position] <= 0.0:
        return []
    high = min(WINDOW_HEIGHT_M, LARGEST_SHARE * room.ceiling_height_m) * scale
    start = (room.ceiling_height_m * scale - high) * 0.35
    return [line((top[0], top[1] + start), (top[0], top[1] + start + high), 6.0, f'style="stroke:{WINDOW_COLOUR}"')]


def _above(room: RoomDrawing, corner: tuple[float, float], size: tuple[float, float]) -> list[str]:
    (x, y), (width, _) = corner, size
    kind = "outside" if room.above in {"flat_roof", "sloped_roof"} else "heated_room"
    parts = [wall_line("not_known" if room.above == "not_known" else kind, (x, y), (x + width, y))]
    lift = 12.0
    if room.above in {"vented_attic", "sloped_roof"}:
        lift = 44.0
        peak = (x + width / 2.0, y - 36.0)
        parts += [line((x - 8.0, y), peak, 3.0), line(peak, (x + width + 8.0, y), 3.0)]
    if room.above == "heated_room":
        parts += [line((end, y), (end, y - 26.0), 1.6, 'stroke-dasharray="3 3"') for end in (x, x + width)]
    return [*parts, words(ABOVE_WORDS[room.above], (x + width / 2.0, y - lift))]


def _below(room: RoomDrawing, foot: tuple[float, float], width: float) -> list[str]:
    in_ground = room.below in {"slab_on_grade", "basement_floor"}
    parts = [wall_line("outside" if in_ground else "heated_room", foot, (foot[0] + width, foot[1]))]
    if in_ground:
        parts.append(box(foot, (width, 18.0), 'fill="url(#cut-earth)" stroke="none"'))
    return [*parts, words(BELOW_WORDS[room.below], (WIDTH / 2.0, foot[1] + 36.0))]
