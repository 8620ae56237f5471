"""Need by month: cooling and heating in pairs, moisture as a dot, and how warm it is outside beneath."""

from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.report.look import Look
from econ.report.numbers import MONTHS, MONTHS_SHORT, Quantity, percent, plain_number
from econ.report.pictures.frame import Columns, framed, name_upright_axis, write
from econ.report.style import SMALL_SIZE

HEIGHT_PX: Final = 430
MONTH_AT: Final = np.arange(len(MONTHS))
DOT_SHIFT: Final = 0.18
"""Months to the right of the middle of a pair: where its cooling column stands."""

UPPER: Final = (0.42, 1.0)
LOWER: Final = (0.0, 0.24)
"""Shares of the height that the need and the outdoor temperature take."""


def figure(result: Result, look: Look) -> go.Figure:
    """Return a year of need as twelve pairs of columns over the year's outdoor temperature."""
    drawn = framed(look, HEIGHT_PX, {"t": 36, "l": 12})
    cool = result.need_cool_kwh[0] + result.need_latent_kwh[0]
    _add_columns(drawn, "Heating need", result.need_heat_kwh[0], look.ground.heat, "")
    _add_columns(drawn, "Cooling need, moisture included", cool, look.ground.cool, "/")
    drawn.add_scatter(
        x=MONTH_AT + DOT_SHIFT,
        y=np.where(result.need_latent_kwh[0] > 0.0, result.need_latent_kwh[0], np.nan),
        name="Moisture part of the cooling need",
        mode="markers",
        marker={
            "symbol": "circle",
            "size": 9,
            "color": look.ground.damp,
            "line": {"color": look.ground.paper, "width": 1.5},
        },
        customdata=MONTHS,
        hovertemplate="%{customdata}: %{y:,.0f} kWh of it moisture<extra></extra>",
    )
    _add_outdoors(drawn, result, look)
    _label(drawn, result, cool, look)
    drawn.update_layout(barmode="group", bargap=0.3, bargroupgap=0.05)
    drawn.update_yaxes(range=[0.0, 1.18 * max(float(cool.max()), float(result.need_heat_kwh[0].max()), 1.0)], nticks=5)
    drawn.update_layout(
        yaxis={"domain": UPPER, "rangemode": "tozero"},
        yaxis2={**drawn.layout.yaxis.to_plotly_json(), "domain": LOWER, "range": None, "anchor": "x", "nticks": 4},
        xaxis={"anchor": "y2", "title": {"text": "Month"}, "tickvals": MONTH_AT[::2], "ticktext": MONTHS_SHORT[::2]},
    )
    dot = f"<span style='color:{look.ground.damp}'>● moisture</span>"
    name_upright_axis(drawn, f"Need of the rooms, kWh a month ({dot})", look)
    name_upright_axis(drawn, f"Mean outdoor temperature, {look.symbol(Quantity.TEMPERATURE)}", look, LOWER[1])
    return drawn


def _add_columns(drawn: go.Figure, name: str, amount: np.ndarray, colour: str, pattern: str) -> None:
    drawn.add_bar(
        x=MONTH_AT,
        y=amount,
        name=name,
        marker={"color": colour, "pattern": {"shape": pattern, "size": 6, "solidity": 0.3, "fillmode": "replace"}},
        customdata=MONTHS,
        hovertemplate=f"%{{customdata}}: %{{y:,.0f}} kWh<br>{name}<extra></extra>",
    )


def _add_outdoors(drawn: go.Figure, result: Result, look: Look) -> None:
    drawn.add_scatter(
        x=MONTH_AT,
        y=[look.shown(float(mean), Quantity.TEMPERATURE) for mean in result.climate.mean_c],
        yaxis="y2",
        name="Mean outdoor temperature",
        mode="lines+markers",
        line={"color": look.ground.soft, "width": 2},
        marker={"size": 5},
        customdata=MONTHS,
        hovertemplate=f"%{{customdata}}: %{{y:.0f}} {look.symbol(Quantity.TEMPERATURE)} on average<extra></extra>",
    )


def _label(drawn: go.Figure, result: Result, cool: np.ndarray, look: Look) -> None:
    """Write what a column means above the tallest of its kind."""
    heat = result.need_heat_kwh[0]
    for word, amount, colour, shift in (
        ("heat", heat, look.ground.heat, -6),
        ("cool", cool, look.ground.cool, 6),
    ):
        if amount.max() <= 0.0:
            continue
        peak = int(np.argmax(amount))
        place = (float(MONTH_AT[peak]), float(amount[peak]))
        write(drawn, word, place, colour, xanchor="center", yanchor="bottom", xshift=shift, font={"size": SMALL_SIZE})


def statement(result: Result, look: Look) -> str:
    """Return the sentence above the picture: the sums, the share of moisture and the degree-days behind them."""
    cool = float(result.need_cool_kwh[0].sum() + result.need_latent_kwh[0].sum())
    heat = float(result.need_heat_kwh[0].sum())
    damp = f", {percent(float(result.need_latent_kwh[0].sum()) / cool)} of it moisture" if cool > 0.0 else ""
    hdd, cdd = (
        look.measure(days, Quantity.DEGREE_DAYS) for days in (result.climate.hdd18_3_kd, result.climate.cdd18_3_kd)
    )
    warmth = f", and {plain_number(heat, -1)} kWh of heating" if heat > 0.0 else ""
    return (
        f"In a typical year the rooms need {plain_number(cool, -1)} kWh of cooling{damp}{warmth}; "
        f"{result.climate.station} has {hdd} of heating and {cdd} of cooling."
    )


def table(result: Result, look: Look) -> Columns:
    """Return need and mean outdoor temperature by month."""
    return {
        "Month": list(MONTHS),
        "Sensible cooling need, kWh": [plain_number(float(amount)) for amount in result.need_cool_kwh[0]],
        "Moisture, kWh": [plain_number(float(amount)) for amount in result.need_latent_kwh[0]],
        "Heating need, kWh": [plain_number(float(amount)) for amount in result.need_heat_kwh[0]],
        "Mean outdoors": [look.measure(float(mean), Quantity.TEMPERATURE) for mean in result.climate.mean_c],
    }
