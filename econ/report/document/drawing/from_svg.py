"""Sketches of the screen as shapes: the few kinds of SVG that `econ.report.sketch.element` writes, nothing else."""

from typing import Final
from xml.etree import ElementTree

from econ.kernel.errors import UnknownChoiceError
from econ.report.document.drawing.shape import (
    INK,
    LETTER,
    Disc,
    Drawing,
    Point,
    Shape,
    Stroke,
    Word,
    line,
    rectangle,
    slanted,
)

_SVG: Final = "{http://www.w3.org/2000/svg}"
_SKIPPED: Final = frozenset({"title", "desc", "defs", "pattern", "style"})


def shapes_of(svg: str) -> Drawing:
    """Return a sketch as shapes.

    Parameters
    ----------
    svg : str
        What a function of `econ.report.sketch` returns.

    Returns
    -------
    drawing : Drawing
        The same size in points as the sketch in its own units.

    Raises
    ------
    UnknownChoiceError
        If the sketch holds a kind of element that no writer draws: nothing is left out unseen.
    """
    root = ElementTree.fromstring(svg)
    _, _, width, height = (float(side) for side in root.attrib["viewBox"].split())
    shapes: list[Shape] = []
    for element in root:
        shapes += _shapes(element)
    title = root.find(f"{_SVG}title")
    return Drawing(width, height, tuple(shapes), "" if title is None else title.text or "")


def _shapes(element: ElementTree.Element) -> list[Shape]:
    kind = element.tag.removeprefix(_SVG)
    if kind in _SKIPPED:
        return []
    if kind == "g":
        return [shape for child in element for shape in _shapes(child)]
    drawn = {"line": _line, "rect": _rect, "circle": _circle, "polyline": _bent, "polygon": _bent, "text": _text}
    if kind not in drawn:
        raise UnknownChoiceError("piece of a sketch", kind, tuple(drawn))
    return drawn[kind](element)


def _colour(element: ElementTree.Element, name: str, usual: str = "") -> str:
    """Return a colour as hex; the letters' own where it is that of the page, none where there is none."""
    style = dict(part.split(":", 1) for part in element.get("style", "").split(";") if ":" in part)
    written = style.get(name, element.get(name, usual)).strip()
    if written.startswith("#"):
        return written
    return "" if written in ("none", "") or written.startswith("url") else INK


def _number(element: ElementTree.Element, name: str, usual: float = 0.0) -> float:
    return float(element.get(name, usual))


def _dash(element: ElementTree.Element) -> tuple[float, ...]:
    return tuple(float(part) for part in element.get("stroke-dasharray", "").replace(",", " ").split())


def _line(element: ElementTree.Element) -> list[Shape]:
    start, end = ((_number(element, f"x{at}"), _number(element, f"y{at}")) for at in (1, 2))
    return [line(start, end, _colour(element, "stroke", "ink"), _number(element, "stroke-width", 1.0), _dash(element))]


def _rect(element: ElementTree.Element) -> list[Shape]:
    corner = (_number(element, "x"), _number(element, "y"))
    size = (_number(element, "width"), _number(element, "height"))
    outline = rectangle(corner, size)
    shapes: list[Shape] = [
        Stroke(
            outline.points, _colour(element, "stroke"), _number(element, "stroke-width", 1.0), _dash(element),
            _colour(element, "fill"), is_closed=True,
        )
    ]  # fmt: skip
    if element.get("fill", "").startswith("url"):
        shapes += slanted(corner, size, INK, 6.0)
    return shapes


def _circle(element: ElementTree.Element) -> list[Shape]:
    middle = (_number(element, "cx"), _number(element, "cy"))
    width = _number(element, "stroke-width", 1.0)
    return [Disc(middle, _number(element, "r"), _colour(element, "stroke"), width, _colour(element, "fill"))]


def _bent(element: ElementTree.Element) -> list[Shape]:
    points: tuple[Point, ...] = tuple(
        (float(x), float(y)) for x, y in (pair.split(",") for pair in element.get("points", "").split())
    )
    if len(points) < 2:
        return []
    is_closed = element.tag.endswith("polygon")
    return [
        Stroke(
            points, _colour(element, "stroke"), _number(element, "stroke-width", 1.0), _dash(element),
            _colour(element, "fill"), is_closed,
        )
    ]  # fmt: skip


def _text(element: ElementTree.Element) -> list[Shape]:
    at = (_number(element, "x"), _number(element, "y"))
    return [
        Word(
            "".join(element.itertext()), at, _number(element, "font-size", LETTER), element.get("text-anchor", "start"),
            element.get("font-weight", "") in ("600", "700", "bold"), _colour(element, "fill", "ink"),
        )
    ]  # fmt: skip
