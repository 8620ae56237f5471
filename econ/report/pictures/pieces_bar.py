"""One standing bar cut in named pieces: where heat comes from, or where it goes."""

from dataclasses import dataclass
from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.kernel.arrays import BoolArray
from econ.report.look import Look
from econ.report.numbers import Quantity, percent
from econ.report.pictures.frame import LINE_PX, framed, moved_apart, write
from econ.report.style import faint

FRAME_PX: Final = 46
PIECE_PX: Final = 46
"""Height that a piece's two lines of words take."""

BAR_SHARE: Final = 0.22
"""How much of the width the bar takes; the names stand beside it."""

FAINTEST: Final = 0.25
"""How much of the colour the smallest piece keeps."""


@dataclass(frozen=True, slots=True)
class Wording:
    """How a bar is drawn and worded.

    Attributes
    ----------
    colour : str
        Of its pieces.
    against : str
        What is said of a piece that works the other way.
    axis : str
        What the bar measures, after its unit.
    """

    colour: str
    against: str
    axis: str


def counted_rooms(result: Result) -> BoolArray:
    """Return the rooms that a bar counts: those served, every room where none is."""
    served = result.rooms.is_served
    return served if served.any() else np.ones_like(served)


def largest_first(
    labels: tuple[str, ...], sums_w: "np.ndarray[tuple[int, ...], np.dtype[np.float64]]"
) -> dict[str, float]:
    """Return pieces by name, the largest first."""
    order = np.argsort(-sums_w, kind="stable")
    return {labels[piece]: float(sums_w[piece]) for piece in order}


def positive(pieces: dict[str, float]) -> float:
    """Return the sum of the pieces that are above zero."""
    return sum(power for power in pieces.values() if power > 0.0)


def standing_bar(pieces_w: dict[str, float], wording: Wording, look: Look) -> go.Figure:
    """Return one standing bar, largest piece on top, each named beside it with its share of those above zero."""
    pieces = {label: power for label, power in pieces_w.items() if abs(power) > 0.0}
    plot_px = PIECE_PX * max(len(pieces), 4)
    drawn = framed(look, plot_px + FRAME_PX, {"l": 4, "t": 12, "b": 34})
    gains = positive(pieces) or 1.0
    low = sum(power for power in pieces.values() if power < 0.0)
    middles = _middles(pieces)
    for position, piece in enumerate(reversed(pieces.items())):
        strength = FAINTEST + (1.0 - FAINTEST) * (position + 1) / len(pieces)
        _add_piece(drawn, piece, faint(wording.colour, strength), wording, look)
    names = sorted(middles, key=lambda label: middles[label])
    gap = 2.5 * LINE_PX * (gains - low) / plot_px
    places = moved_apart([middles[label] for label in names], gap)
    for label, place in zip(names, places, strict=True):
        share = f", {percent(pieces[label] / gains)}" if pieces[label] > 0.0 else f", {wording.against}"
        text = f"<b>{label}</b><br>{look.measure(pieces[label], Quantity.POWER)}{share}"
        write(drawn, text, (BAR_SHARE + 0.06, place), look.ground.ink)
        leader = {"color": look.ground.soft, "width": 1}
        drawn.add_shape(type="line", x0=BAR_SHARE, x1=BAR_SHARE + 0.05, y0=middles[label], y1=place, line=leader)
    drawn.update_layout(barmode="relative", bargap=0.0)
    title = f"{look.symbol(Quantity.POWER)} {wording.axis}"
    drawn.update_xaxes(range=[-0.01, 1.0], showticklabels=False, showline=False, title_text=title)
    drawn.update_yaxes(visible=False, range=[min([low, *places]) - gap / 2.0, max([gains, *places]) + gap / 2.0])
    return drawn


def _middles(pieces: dict[str, float]) -> dict[str, float]:
    """Return the height of the middle of each piece, the largest on top, those below zero hanging down."""
    middles, top, bottom = {}, 0.0, 0.0
    for label, power in reversed(pieces.items()):
        if power > 0.0:
            middles[label], top = top + power / 2.0, top + power
        else:
            middles[label], bottom = bottom + power / 2.0, bottom + power
    return middles


def _add_piece(drawn: go.Figure, piece: tuple[str, float], filling: str, wording: Wording, look: Look) -> None:
    label, power = piece
    hollow = power < 0.0
    drawn.add_bar(
        x=[BAR_SHARE / 2.0],
        width=[BAR_SHARE],
        y=[power],
        name=label,
        marker={
            "color": "rgba(0,0,0,0)" if hollow else filling,
            "line": {"color": wording.colour if hollow else look.ground.paper, "width": 1.5},
        },
        hovertemplate=f"{label}: {look.measure(power, Quantity.POWER)}<extra></extra>",
    )
