"""Lines, areas, discs and words of a drawing, in points from the upper left corner: what every writer can draw."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

INK: Final = "#1f2a2e"
SOFT: Final = "#586268"
GRID: Final = "#cfcfcf"
PAPER: Final = "#ffffff"
LETTER: Final = 8.0
"""Height of letters in drawings. [pt]"""

LETTER_SHARE: Final = 0.54
"""Width of a mean letter as a share of its height: Helvetica runs to about 0.5 (assumption of the drawing only)."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Stroke:
    """A bent line, closed or not, with or without a filling.

    Attributes
    ----------
    points : tuple of (float, float)
        Corners.
    colour : str
        Of the line, as hex; empty for none.
    width : float
        Of the line.
    dash : tuple of float
        Lengths drawn and left out; empty for a whole line.
    filling : str
        As hex; empty for none.
    is_closed : bool
        Whether the last corner joins the first.
    """

    points: tuple[Point, ...]
    colour: str = INK
    width: float = 1.0
    dash: tuple[float, ...] = ()
    filling: str = ""
    is_closed: bool = False


@dataclass(frozen=True, slots=True)
class Disc:
    """A circle."""

    middle: Point
    radius: float
    colour: str = INK
    width: float = 1.0
    filling: str = ""


@dataclass(frozen=True, slots=True)
class Word:
    """A word or a line of them; `at` is the foot of its first, middle or last letter."""

    text: str
    at: Point
    size: float = LETTER
    anchor: str = "start"
    is_bold: bool = False
    colour: str = INK


Shape = Stroke | Disc | Word


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing.

    Attributes
    ----------
    width, height : float
        Its size. [pt]
    shapes : tuple of Shape
        In the order of drawing.
    title : str
        What it shows, for who cannot see it.
    """

    width: float
    height: float
    shapes: tuple[Shape, ...] = field(default=())
    title: str = ""


def line(start: Point, end: Point, colour: str = INK, width: float = 1.0, dash: tuple[float, ...] = ()) -> Stroke:
    """Return a straight line."""
    return Stroke((start, end), colour, width, dash)


def rectangle(corner: Point, size: tuple[float, float], colour: str = INK, filling: str = "") -> Stroke:
    """Return a rectangle by its upper left corner, width and height."""
    (x, y), (width, height) = corner, size
    return Stroke(
        ((x, y), (x + width, y), (x + width, y + height), (x, y + height)), colour, 1.0, (), filling, is_closed=True
    )


def text_width(text: str, size: float = LETTER) -> float:
    """Return about how wide a line of words is. [pt]"""
    return len(text) * size * LETTER_SHARE


def slanted(corner: Point, size: tuple[float, float], colour: str, step: float = 4.0) -> tuple[Stroke, ...]:
    """Return slanting lines that fill a rectangle.

    Examples
    --------
    >>> [stroke.points for stroke in slanted((0.0, 0.0), (2.0, 2.0), "#000000", 2.0)]
    [((0.0, 2.0), (2.0, 0.0))]
    """
    (x, y), (width, height) = corner, size
    lines = []
    start = -height + step
    while start < width:
        low, high = max(0.0, -start), min(height, width - start)
        if high > low:
            lines.append(line((x + start + low, y + height - low), (x + start + high, y + height - high), colour, 0.7))
        start += step
    return tuple(lines)


def level(corner: Point, size: tuple[float, float], colour: str, step: float = 3.0) -> tuple[Stroke, ...]:
    """Return level lines that fill a rectangle."""
    (x, y), (width, height) = corner, size
    count = int((height - 0.5) // step)
    return tuple(line((x, y + step * (at + 1)), (x + width, y + step * (at + 1)), colour, 0.7) for at in range(count))


def dotted(corner: Point, size: tuple[float, float], colour: str, step: float = 4.0) -> tuple[Disc, ...]:
    """Return dots that fill a rectangle."""
    (x, y), (width, height) = corner, size
    across, down = (int((side - 1.6) // step) + 1 if side > 1.6 else 0 for side in (width, height))
    return tuple(
        Disc((x + 1.6 + step * column, y + 1.6 + step * row), 0.75, "", 0.0, colour)
        for row in range(down)
        for column in range(across)
    )


def star(name: str, middle: Point, radius: float, colour: str) -> Shape:
    """Return the mark of a way to go: open diamond, square, disc or triangle."""
    x, y = middle
    corners = {
        "diamond-open": ((x, y - radius), (x + radius, y), (x, y + radius), (x - radius, y)),
        "square": (
            (x - 0.8 * radius, y - 0.8 * radius),
            (x + 0.8 * radius, y - 0.8 * radius),
            (x + 0.8 * radius, y + 0.8 * radius),
            (x - 0.8 * radius, y + 0.8 * radius),
        ),
        "triangle-up": ((x, y - radius), (x + radius, y + 0.8 * radius), (x - radius, y + 0.8 * radius)),
    }
    if name == "circle":
        return Disc(middle, 0.85 * radius, colour, 1.0, colour)
    return Stroke(corners[name], colour, 1.2, (), PAPER if name == "diamond-open" else colour, is_closed=True)


def placed(shapes: Sequence[Shape], corner: Point, scale: float) -> tuple[Shape, ...]:
    """Return shapes made smaller or larger, in another place.

    Parameters
    ----------
    shapes : sequence of Shape
        As drawn from the upper left corner.
    corner : (float, float)
        Where that corner comes to lie. [pt]
    scale : float
        How much larger. [dimensionless]
    """

    def at(point: Point) -> Point:
        return corner[0] + scale * point[0], corner[1] + scale * point[1]

    return tuple(_placed(shape, at, scale) for shape in shapes)


def _placed(shape: Shape, at: Callable[[Point], Point], scale: float) -> Shape:
    if isinstance(shape, Stroke):
        dash = tuple(scale * part for part in shape.dash)
        return replace(shape, points=tuple(map(at, shape.points)), width=scale * shape.width, dash=dash)
    if isinstance(shape, Disc):
        return replace(shape, middle=at(shape.middle), radius=scale * shape.radius, width=scale * shape.width)
    return replace(shape, at=at(shape.at), size=scale * shape.size)
