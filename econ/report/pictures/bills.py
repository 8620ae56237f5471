"""Bills against the weather: billed and fitted bill by bill, and beneath over the outdoor temperature."""

from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.energy.bill import modelled_kwh
from econ.evaluate.bill_fit import CarrierFit
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import Quantity
from econ.report.pictures.frame import framed, name_upright_axis
from econ.report.style import SMALL_SIZE

HEIGHT_PX: Final = 520
UPPER: Final = (0.60, 1.0)
LOWER: Final = (0.0, 0.36)
"""Shares of the height that the bills in time and over temperature take."""

_STEPS: Final = 60
MOST_TICKS: Final = 6
"""Dates written beneath the bills, at most: more touch each other on a phone."""


def figure(found: CarrierFit, look: Look) -> go.Figure:
    """Return billed energy a day as columns under the fit's line, and both over the outdoor temperature."""
    drawn = framed(look, HEIGHT_PX, {"t": 36, "l": 12})
    days = np.array([float(row.days_d) for row in found.text.rows])
    billed, fitted = found.billed_kwh / days, found.modelled_kwh / days
    _add_time(drawn, found, (billed, fitted), look)
    _add_warmth(drawn, found, billed, look)
    top = 1.15 * max(float(np.nanmax(np.concatenate([billed, fitted]))), 1.0)
    x2, y2 = drawn.layout.xaxis.to_plotly_json(), drawn.layout.yaxis.to_plotly_json()
    step = -(-len(days) // MOST_TICKS)
    warmth = f"Mean outdoors, {look.symbol(Quantity.TEMPERATURE)}"
    named = [f"{row.past:%b %y}" for row in found.text.rows]
    drawn.update_layout(
        yaxis={"domain": UPPER, "range": [0.0, top], "nticks": 5},
        xaxis={"anchor": "y", "tickvals": list(range(0, len(days), step)), "ticktext": named[::step]},
        yaxis2={**y2, "domain": LOWER, "anchor": "x2", "range": [0.0, top], "nticks": 4},
        xaxis2={**x2, "anchor": "y2", "title": {**x2["title"], "text": warmth}},
    )
    key = f"<span style='color:{look.ground.soft}'>■ billed</span>  <span style='color:{look.ground.heat}'>— fit</span>"
    name_upright_axis(drawn, f"kWh a day, bill by bill ({key})", look)
    name_upright_axis(drawn, "kWh a day over the outdoor temperature", look, LOWER[1])
    return drawn


def _add_time(drawn: go.Figure, found: CarrierFit, daily: tuple[FloatArray, FloatArray], look: Look) -> None:
    names = [f"{row.first} to {row.past}" for row in found.text.rows]
    at = list(range(len(names)))
    drawn.add_bar(
        x=at, y=daily[0], name="billed", marker={"color": look.ground.soft, "opacity": 0.55}, customdata=names,
        hovertemplate="%{customdata}: %{y:,.1f} kWh a day billed<extra></extra>",
    )  # fmt: skip
    if found.fit is not None:
        drawn.add_scatter(
            x=at, y=daily[1], name="fit", mode="lines+markers", line={"color": look.ground.heat, "width": 2},
            marker={"size": 6}, customdata=names,
            hovertemplate="%{customdata}: %{y:,.1f} kWh a day by the fit<extra></extra>",
        )  # fmt: skip


def _add_warmth(drawn: go.Figure, found: CarrierFit, billed: FloatArray, look: Look) -> None:
    shown = [look.shown(float(mean), Quantity.TEMPERATURE) for mean in found.mean_c]
    drawn.add_scatter(
        x=shown, y=billed, xaxis="x2", yaxis="y2", name="bills", mode="markers",
        marker={"color": look.ground.soft, "size": 8, "line": {"color": look.ground.paper, "width": 1}},
        hovertemplate="%{x:.0f}: %{y:,.1f} kWh a day billed<extra></extra>",
    )  # fmt: skip
    if found.fit is None:
        return
    warmth = np.linspace(float(found.mean_c.min()), float(found.mean_c.max()), _STEPS)
    drawn.add_scatter(
        x=[look.shown(float(at), Quantity.TEMPERATURE) for at in warmth],
        y=modelled_kwh(found.fit, np.ones(_STEPS), warmth),
        xaxis="x2", yaxis="y2", name="change-point fit", mode="lines", line={"color": look.ground.heat, "width": 2},
        hoverinfo="skip", textfont={"size": SMALL_SIZE},
    )  # fmt: skip
