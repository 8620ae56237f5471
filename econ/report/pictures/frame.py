"""What all figures share: paper, letters, axes, and labels written where the eye already is."""

from collections.abc import Sequence
from typing import Any, Final

import plotly.graph_objects as go

from econ.kernel.alternative import Alternative
from econ.report.look import Look
from econ.report.style import MARKS, NAMES, SMALL_SIZE, TEXT_FONT, TEXT_SIZE, faint

BAND_OPACITY: Final = 0.14
"""How strongly a range is tinted behind its line."""

LINE_PX: Final = 17.0
"""Height of one line of a label, in px."""

Cells = list[str] | list[float] | list[int]
Columns = dict[str, Cells]
"""A table beneath a picture: column title to cells."""


def framed(look: Look, height_px: int, margin: dict[str, int] | None = None) -> go.Figure:
    """Return an empty figure that takes the width it is given, down to 390 px."""
    ground = look.ground
    figure = go.Figure()
    figure.update_layout(
        template="none",
        autosize=True,
        height=height_px,
        margin={"l": 8, "r": 8, "t": 28, "b": 44} | (margin or {}),
        paper_bgcolor="rgba(0,0,0,0)",
        plot_bgcolor="rgba(0,0,0,0)",
        font={"family": TEXT_FONT, "size": TEXT_SIZE, "color": ground.ink},
        hoverlabel={
            "bgcolor": ground.paper,
            "bordercolor": ground.soft,
            "font": {"color": ground.ink},
            "align": "left",
        },
        showlegend=False,
        dragmode=False,
        bargap=0.5,
        uniformtext={"minsize": SMALL_SIZE - 1, "mode": "hide"},
        modebar={"bgcolor": "rgba(0,0,0,0)", "color": ground.soft, "activecolor": ground.ink},
    )
    figure.update_xaxes(**axis(look), showgrid=False)
    figure.update_yaxes(**axis(look), showgrid=True)
    return figure


def axis(look: Look) -> dict[str, Any]:
    """Return what every axis looks like: quiet lines, no zoom under the thumb."""
    ground = look.ground
    return {
        "gridcolor": ground.line,
        "linecolor": ground.soft,
        "zeroline": False,
        "fixedrange": True,
        "ticks": "",
        "tickfont": {"size": SMALL_SIZE, "color": ground.soft},
        "title": {"font": {"size": SMALL_SIZE, "color": ground.soft}, "standoff": 8},
        "automargin": True,
    }


def name_upright_axis(figure: go.Figure, text: str, look: Look, at_frac: float = 1.0) -> None:
    """Write what the upright axis measures level above it, where it needs no turned head and no width."""
    figure.add_annotation(
        name="upright axis",
        text=text,
        xref="paper",
        yref="paper",
        x=0.0,
        y=at_frac,
        xanchor="left",
        yanchor="bottom",
        yshift=6,
        showarrow=False,
        align="left",
        font={"size": SMALL_SIZE, "color": look.ground.soft},
    )


def write(figure: go.Figure, text: str, at: tuple[Any, Any], colour: str, **more: Any) -> None:
    """Write a word at a place of the drawing."""
    given: dict[str, Any] = {"showarrow": False, "xanchor": "left", "yanchor": "middle", "align": "left"} | more
    font = {"color": colour, "size": TEXT_SIZE} | given.pop("font", {})
    figure.add_annotation(text=text, x=at[0], y=at[1], font=font, **given)


def line_look(name: Alternative, look: Look) -> dict[str, Any]:
    """Return colour and dash of an alternative's line."""
    return {"color": look.colour(name), "dash": MARKS[name].dash, "width": 2.6}


def mark_look(name: Alternative, look: Look) -> dict[str, Any]:
    """Return shape and colour of an alternative's points."""
    colour = look.colour(name)
    return {"symbol": MARKS[name].symbol, "size": 8, "color": colour, "line": {"width": 1.6, "color": colour}}


def bar_look(name: Alternative, look: Look, opacity_frac: float = 1.0) -> dict[str, Any]:
    """Return filling and outline of an alternative's bar: its colour and its pattern."""
    colour = look.colour(name)
    pattern: dict[str, Any] = {"shape": MARKS[name].pattern}
    if MARKS[name].pattern:
        pattern |= {"fgcolor": colour, "bgcolor": faint(colour, 0.22 * opacity_frac), "size": 7, "solidity": 0.35}
    return {
        "color": faint(colour, opacity_frac),
        "pattern": pattern,
        "line": {"color": colour, "width": 1.2},
    }


def label_line_ends(
    figure: go.Figure, ends: dict[Alternative, tuple[float, float]], look: Look, px_per_unit: float
) -> None:
    """Write each alternative's name beside the end of its line, moved apart where two would touch."""
    order = sorted(ends, key=lambda name: ends[name][1])
    gap = 2.0 * LINE_PX / px_per_unit
    places = lifted(moved_apart([ends[name][1] for name in order], gap), 0.4 * gap, gap)
    for name, height in zip(order, places, strict=True):
        x, end = ends[name]
        write(
            figure,
            MARKS[name].folded_name,
            (x, end),
            look.colour(name),
            xshift=8,
            yshift=(height - end) * px_per_unit,
            name=NAMES[name],
            font={"size": SMALL_SIZE},
        )


def moved_apart(ascending: Sequence[float], gap: float) -> list[float]:
    """Return places at least a gap apart, as near as may be to those given in ascending order.

    Examples
    --------
    >>> moved_apart([0.0, 1.0, 10.0], 4.0)
    [-1.5, 2.5, 10.0]
    """
    groups: list[list[float]] = []
    for place in ascending:
        groups.append([place])
        while len(groups) > 1 and _top(groups[-2], gap) + gap > _bottom(groups[-1], gap):
            upper = groups.pop()
            groups[-1] = groups[-1] + upper
    return [_bottom(group, gap) + gap * position for group in groups for position in range(len(group))]


def lifted(ascending: Sequence[float], floor: float, gap: float) -> list[float]:
    """Return places none of which lies below a floor, still at least a gap apart.

    Examples
    --------
    >>> lifted([-1.0, 3.0, 10.0], 0.0, 4.0)
    [0.0, 4.0, 10.0]
    """
    places: list[float] = []
    for place in ascending:
        places.append(max(place, places[-1] + gap if places else floor))
    return places


def _bottom(group: list[float], gap: float) -> float:
    return sum(group) / len(group) - gap * (len(group) - 1) / 2.0


def _top(group: list[float], gap: float) -> float:
    return sum(group) / len(group) + gap * (len(group) - 1) / 2.0
