"""Energy bought by month: electricity and fuel of a full year of service, one line an alternative."""

from typing import Final

import plotly.graph_objects as go

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import MONTHS, MONTHS_SHORT, lifetime_money, plain_number
from econ.report.pictures.frame import Columns, framed, label_line_ends, line_look, mark_look, name_upright_axis
from econ.report.style import NAMES

HEIGHT_PX: Final = 360
PLOT_PX: Final = HEIGHT_PX - 84.0


def _bought_kwh(way: AlternativeResult) -> FloatArray:
    bought: FloatArray = way.electricity_kwh[0] + way.fuel_kwh[0]
    return bought


def figure(result: Result, look: Look) -> go.Figure:
    """Return energy bought by month for each alternative."""
    drawn = framed(look, HEIGHT_PX, {"r": 92, "t": 36})
    for way in result.alternatives:
        drawn.add_scatter(
            x=list(range(len(MONTHS))),
            y=_bought_kwh(way),
            name=NAMES[way.name],
            mode="lines+markers",
            line=line_look(way.name, look),
            marker=mark_look(way.name, look),
            customdata=MONTHS,
            hovertemplate=f"{NAMES[way.name]}<br>%{{customdata}}: %{{y:,.0f}} kWh bought<extra></extra>",
            cliponaxis=False,
        )
    top = 1.08 * max(float(_bought_kwh(way).max()) for way in result.alternatives) or 1.0
    last = len(MONTHS) - 1
    ends = {way.name: (float(last), float(_bought_kwh(way)[last])) for way in result.alternatives}
    label_line_ends(drawn, ends, look, PLOT_PX / top)
    name_upright_axis(drawn, "Electricity and fuel bought, kWh a month", look)
    drawn.update_yaxes(range=[0.0, top], nticks=5)
    ticks = list(range(0, len(MONTHS), 2))
    drawn.update_xaxes(
        title_text="Month", range=[-0.2, last], tickvals=ticks, ticktext=[MONTHS_SHORT[tick] for tick in ticks]
    )
    return drawn


def statement(result: Result, look: Look) -> str:  # noqa: ARG001 - every statement takes the same two
    """Return the sentence above the picture: the smallest and largest yearly energy cost."""
    order = sorted(result.alternatives, key=lambda way: float(way.energy_cost_usd_per_yr[0]))
    least, most = order[0], order[-1]
    low, high = (lifetime_money(float(way.energy_cost_usd_per_yr[0])) for way in (least, most))
    return (
        f"A full year's energy costs least with “{NAMES[least.name]}”, {low}, "
        f"and most with “{NAMES[most.name]}”, {high}."
    )


def table(result: Result, look: Look) -> Columns:  # noqa: ARG001 - every table takes the same two
    """Return electricity and fuel by month and alternative."""
    columns: Columns = {"Month": list(MONTHS)}
    for way in result.alternatives:
        columns[f"{NAMES[way.name]}, electricity kWh"] = [plain_number(float(kwh)) for kwh in way.electricity_kwh[0]]
        if way.fuel_kwh[0].any():
            columns[f"{NAMES[way.name]}, fuel kWh"] = [plain_number(float(kwh)) for kwh in way.fuel_kwh[0]]
    return columns
