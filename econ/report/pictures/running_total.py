"""Running total: what has been spent by each year, and where one line passes another."""

from dataclasses import dataclass
from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import first_cost_money, listed, years
from econ.report.pictures.frame import (
    BAND_OPACITY,
    Columns,
    framed,
    label_line_ends,
    line_look,
    mark_look,
    name_upright_axis,
    write,
)
from econ.report.style import MARKS, NAMES, SMALL_SIZE, faint
from econ.uncertainty.drawn import Drawn

HEIGHT_PX: Final = 400
PLOT_PX: Final = HEIGHT_PX - 84.0
LABEL_STEP: Final = 0.12
"""How far below each other the words at crossings stand, as a share of the height."""

BAND: Final = (0.1, 0.9)
"""Quantiles between which the band behind a line lies: eight draws in ten."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """Where an alternative's running total passes that of the base case.

    Attributes
    ----------
    name : Alternative
        Whose line.
    year_yr : float
        Years after the decision, interpolated within the year. [year]
    spent_usd : float
        What both have cost by then. [USD]
    is_cheaper_after : bool
        Whether the alternative has cost less from there on.
    """

    name: Alternative
    year_yr: float
    spent_usd: float
    is_cheaper_after: bool


def crossings(result: Result) -> tuple[Crossing, ...]:
    """Return every place where a likely running total passes that of the base case, earliest first."""
    spent = result.streams.running_total_usd[:, 0]
    base = spent[ALTERNATIVES.index(result.base_case)]
    found = [
        crossing
        for name, line in zip(ALTERNATIVES, spent, strict=True)
        if name != result.base_case
        for crossing in _passes(name, line, base)
    ]
    return tuple(sorted(found, key=lambda crossing: crossing.year_yr))


def _passes(name: Alternative, line: FloatArray, base: FloatArray) -> list[Crossing]:
    ahead = line - base
    is_dearer = ahead > 0.0
    turns = np.flatnonzero(is_dearer[:-1] != is_dearer[1:])
    share = ahead[turns] / (ahead[turns] - ahead[turns + 1])
    spent = line[turns] + share * (line[turns + 1] - line[turns])
    return [
        Crossing(name, float(turn + part), float(amount), bool(ahead[turn] > 0.0))
        for turn, part, amount in zip(turns, share, spent, strict=True)
    ]


def figure(result: Result, look: Look, drawn_rows: Drawn | None = None) -> go.Figure:
    """Return the running totals of all alternatives, doubt as a band where draws are given, crossings named there."""
    spent = result.streams.running_total_usd
    doubt = spent if drawn_rows is None else drawn_rows.running_total_usd
    year = np.arange(spent.shape[-1], dtype=np.float64)
    drawn = framed(look, HEIGHT_PX, {"r": 92, "t": 36})
    highest = max(float(np.quantile(doubt[:, :, -1], BAND[1], axis=1).max()), float(spent[:, 0].max()))
    top = 1.12 * highest or 1.0
    for name, rows, draws in zip(ALTERNATIVES, spent, doubt, strict=True):
        if drawn_rows is not None:
            _add_band(drawn, year, draws, name, look)
        _add_line(drawn, year, rows[0], name, look)
    ends = {name: (float(year[-1]), float(rows[0, -1])) for name, rows in zip(ALTERNATIVES, spent, strict=True)}
    label_line_ends(drawn, ends, look, PLOT_PX / top)
    drawn.update_yaxes(range=[0.0, top], tickprefix="$", tickformat="~s", nticks=6)
    _name_crossings(drawn, result, look)
    name_upright_axis(drawn, "Spent so far, in today's dollars", look)
    drawn.update_xaxes(
        title_text="Years after the decision",
        range=[-0.02 * float(year[-1]), float(year[-1])],
        dtick=_year_step(len(year)),
    )
    return drawn


def _year_step(n_point: int) -> int:
    return max(1, round(n_point / 6))


def _add_line(drawn: go.Figure, year: FloatArray, line: FloatArray, name: Alternative, look: Look) -> None:
    drawn.add_scatter(
        x=year,
        y=line,
        name=NAMES[name],
        mode="lines+markers",
        line=line_look(name, look),
        marker=mark_look(name, look) | {"maxdisplayed": 6},
        hovertemplate=f"{NAMES[name]}<br>year %{{x}}: $%{{y:,.0f}} spent<extra></extra>",
        cliponaxis=False,
    )


def _add_band(drawn: go.Figure, year: FloatArray, rows: FloatArray, name: Alternative, look: Look) -> None:
    low, high = np.quantile(rows, BAND, axis=0)
    drawn.add_scatter(
        x=np.concatenate([year, year[::-1]]),
        y=np.concatenate([high, low[::-1]]),
        name=f"{NAMES[name]}: eight draws in ten",
        mode="lines",
        line={"width": 0},
        fill="toself",
        fillcolor=faint(look.colour(name), BAND_OPACITY),
        hoverinfo="skip",
    )


def _name_crossings(drawn: go.Figure, result: Result, look: Look) -> None:
    """Mark the crossings after which an alternative has cost less, with words in the empty corner above the lines."""
    gains = _gains(result)
    half, top = result.study_period_yr / 2.0, float(drawn.layout.yaxis.range[1])
    for position, crossing in enumerate(gains):
        level = 1.0 - LABEL_STEP * (len(gains) - 1 - position)
        _drop_line(drawn, crossing, level * top, look)
        drawn.add_scatter(
            x=[crossing.year_yr],
            y=[crossing.spent_usd],
            name=f"{NAMES[crossing.name]}: crossing",
            mode="markers",
            marker={"symbol": "circle-open", "size": 15, "color": look.ground.ink, "line": {"width": 1.6}},
            hoverinfo="skip",
        )
        side = "left" if crossing.year_yr < half else "right"
        write(
            drawn,
            f"{MARKS[crossing.name].glyph} cheaper<br>after {years(crossing.year_yr)}",
            (crossing.year_yr, level * top),
            look.colour(crossing.name),
            xanchor=side,
            align=side,
            xshift=5 if side == "left" else -5,
            yanchor="top",
            bgcolor=faint(look.ground.paper, 0.8),
            font={"size": SMALL_SIZE},
        )


def _drop_line(drawn: go.Figure, crossing: Crossing, from_usd: float, look: Look) -> None:
    drawn.add_shape(
        type="line",
        x0=crossing.year_yr,
        x1=crossing.year_yr,
        y0=crossing.spent_usd,
        y1=from_usd,
        line={"color": look.ground.soft, "width": 1},
    )


def _gains(result: Result) -> tuple[Crossing, ...]:
    return tuple(crossing for crossing in crossings(result) if crossing.is_cheaper_after)


def statement(result: Result, look: Look) -> str:  # noqa: ARG001 - every statement takes the same two
    """Return the sentence above the picture: who has caught up with the base case, and when."""
    base = NAMES[result.base_case]
    lasting = {crossing.name: crossing for crossing in crossings(result)}
    told = [
        f"“{NAMES[name]}” has caught up for good after about {years(crossing.year_yr)}"
        for name, crossing in lasting.items()
        if crossing.is_cheaper_after
    ]
    if not told:
        span = f"Within {result.study_period_yr} years"
        return f"{span}, no way that costs more at the start than “{base}” catches up with it for good."
    return f"Compared with “{base}”, {listed(told)}."


def table(result: Result, look: Look) -> Columns:  # noqa: ARG001 - every table takes the same two
    """Return the running totals year by year."""
    spent = result.streams.running_total_usd[:, 0]
    columns: Columns = {"Year": list(range(spent.shape[-1]))}
    for name, line in zip(ALTERNATIVES, spent, strict=True):
        columns[f"{NAMES[name]}, spent so far"] = [first_cost_money(float(amount)) for amount in line]
    return columns
