"""Bars cut in pieces, one bar an alternative, its name and sum written above it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

import plotly.graph_objects as go

from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.look import Look
from econ.report.numbers import money
from econ.report.pictures.frame import bar_look, framed, write
from econ.report.style import MARKS, NAMES, SMALL_SIZE

ROW_PX: Final = 80
FRAME_PX: Final = 62
NARROW_PX: Final = 360.0
"""px of drawing that a phone of 390 px leaves: labels that fit there fit everywhere."""

EDGE_PX: Final = 14.0
"""px that a label may run past the end of the longest bar."""

LETTER_PX: Final = 7.4
"""px that a small letter takes on average (assumption, a wide face)."""

LEAST_SHARE: Final = 0.35
"""A label may run past its piece, but not when the piece is shorter than this share of it."""

LIGHTEST: Final = 0.42
"""How much of an alternative's colour the last of its pieces keeps."""


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of a bar.

    Attributes
    ----------
    label : str
        What it is, written inside where it fits.
    amount_usd : float
        Its length; below zero it hangs to the left of the start. [USD]
    is_cash : bool
        False draws it in outline only.
    """

    label: str
    amount_usd: float
    is_cash: bool = True


@dataclass(frozen=True, slots=True)
class Bar:
    """One alternative's bar: the words above it and its pieces in order."""

    name: Alternative
    heading: str
    pieces: tuple[Piece, ...]


def stacked(bars: Sequence[Bar], look: Look, axis_title: str) -> go.Figure:
    """Return bars beneath each other, to one scale."""
    drawn = framed(look, ROW_PX * len(bars) + FRAME_PX, {"l": 4, "r": 12, "t": 8})
    for bar in bars:
        _add_pieces(drawn, bar, look)
        _label_pieces(drawn, bar, look, (_start(bars), max(map(_end, bars))))
        heading = f"<b>{MARKS[bar.name].glyph} {NAMES[bar.name]}</b>  {bar.heading}"
        write(drawn, heading, (_start(bars), _row(bar.name)), look.colour(bar.name), yshift=25, name=NAMES[bar.name])
    drawn.update_layout(barmode="relative", bargap=0.58)
    low, high = _start(bars), max((_end(bar) for bar in bars), default=1.0)
    room = 0.02 * (high - low) or 1.0
    drawn.update_xaxes(
        title_text=axis_title, tickprefix="$", tickformat="~s", showgrid=True, range=[low, high + room], nticks=6
    )
    drawn.update_yaxes(visible=False, range=[-0.62, len(ALTERNATIVES) - 0.25])
    return drawn


def _row(name: Alternative) -> int:
    """Return the height at which an alternative's bar lies: the first on top."""
    return len(ALTERNATIVES) - 1 - ALTERNATIVES.index(name)


def _start(bars: Sequence[Bar]) -> float:
    return min(0.0, min((_below(bar) for bar in bars), default=0.0))


def _below(bar: Bar) -> float:
    return sum(min(0.0, piece.amount_usd) for piece in bar.pieces)


def _end(bar: Bar) -> float:
    return sum(max(0.0, piece.amount_usd) for piece in bar.pieces)


def _add_pieces(drawn: go.Figure, bar: Bar, look: Look) -> None:
    for position, piece in enumerate(bar.pieces):
        strength = 1.0 - (1.0 - LIGHTEST) * position / max(len(bar.pieces) - 1, 1)
        drawn.add_bar(
            x=[piece.amount_usd],
            y=[_row(bar.name)],
            orientation="h",
            name=f"{NAMES[bar.name]}: {piece.label}",
            marker=_filling(bar.name, piece, look, strength),
            hovertemplate=f"{NAMES[bar.name]}<br>{piece.label}: {money(piece.amount_usd)}<extra></extra>",
        )


def _filling(name: Alternative, piece: Piece, look: Look, strength: float) -> dict[str, Any]:
    if piece.is_cash and piece.amount_usd >= 0.0:
        return bar_look(name, look, strength) | {"line": {"color": look.ground.paper, "width": 1.5}}
    return {"color": "rgba(0,0,0,0)", "line": {"color": look.colour(name), "width": 1.8}}


def _label_pieces(drawn: go.Figure, bar: Bar, look: Look, span_usd: tuple[float, float]) -> None:
    """Write beneath the bar what its pieces are, the largest first, each only where it has the room on a phone."""
    usd_per_px = (span_usd[1] - span_usd[0]) / NARROW_PX
    edge = span_usd[1] + EDGE_PX * usd_per_px
    taken: list[tuple[float, float]] = []
    for piece, start in sorted(_starts(bar), key=lambda found: -abs(found[0].amount_usd)):
        width = (len(piece.label) * LETTER_PX + 8.0) * usd_per_px
        room = (start, start + width)
        is_wide = abs(piece.amount_usd) > LEAST_SHARE * width
        if is_wide and room[1] <= edge and all(room[1] <= low or room[0] >= high for low, high in taken):
            taken.append(room)
            write(
                drawn,
                piece.label,
                (start, _row(bar.name)),
                look.ground.soft,
                yshift=-22,
                font={"size": SMALL_SIZE},
            )


def _starts(bar: Bar) -> list[tuple[Piece, float]]:
    """Return each piece with the place of its left edge; those below zero hang to the left, one after the other."""
    right, left, found = 0.0, 0.0, []
    for piece in bar.pieces:
        if piece.amount_usd >= 0.0:
            found.append((piece, right))
            right += piece.amount_usd
        else:
            left += piece.amount_usd
            found.append((piece, left))
    return found
