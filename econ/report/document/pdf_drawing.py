"""Drawings in the PDF: shapes as vectors, words as text."""

from typing import Any, Final

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable

from econ.report.document.drawing.shape import Disc, Drawing, Shape, Stroke, Word
from econ.report.document.pdf_text import runs, width_of

Canvas = Any
"""The library's canvas, which has no types."""

_SHIFT: Final = {"start": 0.0, "middle": 0.5, "end": 1.0}


class PdfDrawing(Flowable):  # type: ignore[misc]
    """A drawing as the library places it; wider ones are made to fit."""

    def __init__(self, drawing: Drawing, most_width: float) -> None:
        super().__init__()
        self.drawing = drawing
        self.scale = min(1.0, most_width / drawing.width)
        self.width, self.height = drawing.width * self.scale, drawing.height * self.scale

    def draw(self) -> None:
        """Draw it on the canvas of its page."""
        canvas = self.canv
        canvas.saveState()
        canvas.scale(self.scale, self.scale)
        for shape in self.drawing.shapes:
            _draw(canvas, shape, self.drawing.height)
        canvas.restoreState()


def _draw(canvas: Canvas, shape: Shape, height: float) -> None:
    if isinstance(shape, Stroke):
        _stroke(canvas, shape, height)
    elif isinstance(shape, Disc):
        _disc(canvas, shape, height)
    else:
        _word(canvas, shape, height)


def _prepare(canvas: Canvas, shape: Stroke | Disc) -> None:
    if shape.colour:
        canvas.setStrokeColor(HexColor(shape.colour))
        canvas.setLineWidth(shape.width)
    if shape.filling:
        canvas.setFillColor(HexColor(shape.filling))


def _stroke(canvas: Canvas, shape: Stroke, height: float) -> None:
    _prepare(canvas, shape)
    canvas.setDash(list(shape.dash)) if shape.dash else canvas.setDash()
    path = canvas.beginPath()
    (x, y), *rest = shape.points
    path.moveTo(x, height - y)
    for x, y in rest:
        path.lineTo(x, height - y)
    if shape.is_closed:
        path.close()
    canvas.drawPath(path, stroke=int(bool(shape.colour)), fill=int(bool(shape.filling)))


def _disc(canvas: Canvas, shape: Disc, height: float) -> None:
    _prepare(canvas, shape)
    canvas.setDash()
    x, y = shape.middle
    canvas.circle(x, height - y, shape.radius, stroke=int(bool(shape.colour)), fill=int(bool(shape.filling)))


def _word(canvas: Canvas, shape: Word, height: float) -> None:
    canvas.setFillColor(HexColor(shape.colour))
    x = shape.at[0] - _SHIFT[shape.anchor] * width_of(shape.text, shape.size, is_bold=shape.is_bold)
    line = canvas.beginText(x, height - shape.at[1])
    for face, part in runs(shape.text, is_bold=shape.is_bold):
        line.setFont(face, shape.size)
        line.textOut(part)
    canvas.drawText(line)
