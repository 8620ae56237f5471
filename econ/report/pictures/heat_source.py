"""Where the heat comes from on the hottest day: one bar cut in named pieces."""

from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.report.look import Look
from econ.report.numbers import Quantity, percent
from econ.report.pictures.frame import LINE_PX, Columns, framed, moved_apart, write
from econ.report.style import faint

FRAME_PX: Final = 46
PIECE_PX: Final = 46
"""Height that a piece's two lines of words take."""

BAR_SHARE: Final = 0.22
"""How much of the width the bar takes; the names stand beside it."""

FAINTEST: Final = 0.25
"""How much of the colour the smallest piece keeps."""


def pieces_w(result: Result) -> dict[str, float]:
    """Return where the heat of the rooms served comes from, largest first; every room where none is served."""
    loads = result.rooms
    counted = loads.is_served if loads.is_served.any() else np.ones_like(loads.is_served)
    sums = loads.piece_w[counted].sum(axis=0)
    order = np.argsort(-sums, kind="stable")
    return {loads.piece_label[piece]: float(sums[piece]) for piece in order}


def figure(result: Result, look: Look) -> go.Figure:
    """Return one standing bar, largest piece on top, each named beside it with its share of the heat that comes in."""
    pieces = {label: power for label, power in pieces_w(result).items() if abs(power) > 0.0}
    plot_px = PIECE_PX * max(len(pieces), 4)
    drawn = framed(look, plot_px + FRAME_PX, {"l": 4, "t": 12, "b": 34})
    gains = sum(power for power in pieces.values() if power > 0.0) or 1.0
    low = sum(power for power in pieces.values() if power < 0.0)
    middles = _middles(pieces)
    for position, (label, power) in enumerate(reversed(pieces.items())):
        _add_piece(drawn, (label, power), FAINTEST + (1.0 - FAINTEST) * (position + 1) / len(pieces), look)
    names = sorted(middles, key=lambda label: middles[label])
    gap = 2.5 * LINE_PX * (gains - low) / plot_px
    places = moved_apart([middles[label] for label in names], gap)
    for label, place in zip(names, places, strict=True):
        share = f", {percent(pieces[label] / gains)}" if pieces[label] > 0.0 else ", carried away"
        text = f"<b>{label}</b><br>{look.measure(pieces[label], Quantity.POWER)}{share}"
        write(drawn, text, (BAR_SHARE + 0.06, place), look.ground.ink)
        leader = {"color": look.ground.soft, "width": 1}
        drawn.add_shape(type="line", x0=BAR_SHARE, x1=BAR_SHARE + 0.05, y0=middles[label], y1=place, line=leader)
    drawn.update_layout(barmode="relative", bargap=0.0)
    drawn.update_xaxes(range=[-0.01, 1.0], showticklabels=False, showline=False, title_text=_axis_title(look))
    drawn.update_yaxes(visible=False, range=[min([low, *places]) - gap / 2.0, max([gains, *places]) + gap / 2.0])
    return drawn


def _axis_title(look: Look) -> str:
    return f"{look.symbol(Quantity.POWER)} on the design day, and share of the heat coming in"


def _middles(pieces: dict[str, float]) -> dict[str, float]:
    """Return the height of the middle of each piece, the largest on top, losses hanging below zero."""
    middles, top, bottom = {}, 0.0, 0.0
    for label, power in reversed(pieces.items()):
        if power > 0.0:
            middles[label], top = top + power / 2.0, top + power
        else:
            middles[label], bottom = bottom + power / 2.0, bottom + power
    return middles


def _add_piece(drawn: go.Figure, piece: tuple[str, float], strength: float, look: Look) -> None:
    label, power = piece
    hollow = power < 0.0
    drawn.add_bar(
        x=[BAR_SHARE / 2.0],
        width=[BAR_SHARE],
        y=[power],
        name=label,
        marker={
            "color": "rgba(0,0,0,0)" if hollow else faint(look.ground.heat, strength),
            "line": {"color": look.ground.heat if hollow else look.ground.paper, "width": 1.5},
        },
        hovertemplate=f"{label}: {look.measure(power, Quantity.POWER)}<extra></extra>",
    )


def statement(result: Result, look: Look) -> str:
    """Return the sentence above the picture: the design load and its largest piece."""
    loads = result.rooms
    counted = loads.is_served if loads.is_served.any() else np.ones_like(loads.is_served)
    load = float((loads.design_cooling_sensible_w + loads.design_cooling_latent_w)[counted].sum())
    pieces = pieces_w(result)
    gains = sum(power for power in pieces.values() if power > 0.0)
    largest = next(iter(pieces), "")
    if gains <= 0.0:
        return "On the design day no heat comes in that would have to be taken out."
    share = percent(pieces[largest] / gains)
    noun = "room needs" if int(counted.sum()) == 1 else "rooms need"
    return (
        f"On a hot afternoon the {noun} about {look.measure(load, Quantity.POWER)} of cooling; "
        f"the largest part of the heat, {share}, comes from {largest}."
    )


def table(result: Result, look: Look) -> Columns:
    """Return every piece with its power and its share of all heat that comes in."""
    pieces = pieces_w(result)
    gains = sum(power for power in pieces.values() if power > 0.0) or float("nan")
    return {
        "From": list(pieces),
        "Heat on the design day": [look.measure(power, Quantity.POWER) for power in pieces.values()],
        "Share of all heat that comes in": [percent(power / gains) if power > 0.0 else "" for power in pieces.values()],
    }
