"""Energy bought by month and use: a full year of service, one row of stacked columns an alternative, to one scale."""

from typing import Any, Final

import plotly.graph_objects as go

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import MONTHS, MONTHS_SHORT, lifetime_money, plain_number
from econ.report.pictures.frame import Columns, framed, name_upright_axis, write
from econ.report.style import MARKS, NAMES, SMALL_SIZE, faint

HEIGHT_PX: Final = 640
TOP_PX: Final = 62
FUEL: Final = "fuel for make-up heat"
SEEN_KWH: Final = 0.5
"""kWh a year; a use that takes less is not drawn (assumption of the drawing only)."""

ROW_SHARE: Final = 0.74
"""Share of a row's height that its columns take; its name stands above them."""


def uses_kwh(way: AlternativeResult) -> dict[str, FloatArray]:
    """Return what a way buys by use and month, fuel last; uses that take nothing are left out."""
    found = dict(zip(way.use_label, way.electricity_by_use_kwh, strict=True)) | {FUEL: way.fuel_kwh[0]}
    return {use: kwh for use, kwh in found.items() if float(kwh.sum()) >= SEEN_KWH}


def figure(result: Result, look: Look) -> go.Figure:
    """Return four rows of monthly columns cut by use, all to one scale, with a key above."""
    drawn = framed(look, HEIGHT_PX, {"t": TOP_PX, "l": 12})
    top = 1.05 * max(float(_bought_kwh(way).max()) for way in result.alternatives) or 1.0
    for place, way in enumerate(result.alternatives):
        axis = "" if place == 0 else str(place + 1)
        low = 1.0 - (place + 1) / len(ALTERNATIVES)
        domain = (low, low + ROW_SHARE / len(ALTERNATIVES))
        row = {"domain": domain, "range": [0.0, top], "nticks": 4, "anchor": "x"}
        drawn.update_layout({f"yaxis{axis}": {**drawn.layout.yaxis.to_plotly_json(), **row}})
        for use, kwh in uses_kwh(way).items():
            drawn.add_bar(
                x=list(range(len(MONTHS))),
                y=kwh,
                yaxis=f"y{axis}",
                name=f"{NAMES[way.name]}: {use}",
                marker=_filling(use, look),
                customdata=MONTHS,
                hovertemplate=f"{NAMES[way.name]}<br>%{{customdata}}: %{{y:,.0f}} kWh of {use}<extra></extra>",
            )
        _name(drawn, way, domain[1], look)
    ticks = list(range(0, len(MONTHS), 2))
    drawn.update_layout(barmode="stack", bargap=0.25, xaxis_anchor=f"y{len(ALTERNATIVES)}")
    drawn.update_xaxes(title_text="Month", tickvals=ticks, ticktext=[MONTHS_SHORT[tick] for tick in ticks])
    name_upright_axis(drawn, f"Bought, kWh a month: {_key(result, look)}", look, 1.0)
    return drawn


def _bought_kwh(way: AlternativeResult) -> FloatArray:
    bought: FloatArray = way.electricity_kwh[0] + way.fuel_kwh[0]
    return bought


def _name(drawn: go.Figure, way: AlternativeResult, at_frac: float, look: Look) -> None:
    yearly = plain_number(float(_bought_kwh(way).sum()), -1)
    text = f"<b>{MARKS[way.name].glyph} {NAMES[way.name]}</b>  {yearly} kWh a year"
    write(
        drawn,
        text,
        (0.0, at_frac),
        look.colour(way.name),
        xref="paper",
        yref="paper",
        yanchor="bottom",
        yshift=1,
        name=NAMES[way.name],
        font={"size": SMALL_SIZE},
    )


def _look(use: str, look: Look) -> tuple[str, str]:
    """Return colour and pattern of a use; the pattern tells it apart in grey."""
    ground = look.ground
    known = {
        "cooling": (ground.cool, ""),
        "heating": (ground.heat, ""),
        "make-up heat": (ground.heat, "/"),
        "drying": (ground.damp, "."),
        FUEL: (ground.heat, "x"),
    }
    return known.get(use, (ground.plain, "-"))


def _filling(use: str, look: Look) -> dict[str, Any]:
    colour, shape = _look(use, look)
    pattern: dict[str, Any] = {"shape": shape}
    if shape:
        pattern |= {"fgcolor": colour, "bgcolor": faint(colour, 0.2), "size": 6, "solidity": 0.35}
    return {"color": colour, "pattern": pattern, "line": {"color": colour, "width": 0.6}}


def _key(result: Result, look: Look) -> str:
    """Return the uses that are drawn, each after its colour and the sign of its pattern."""
    signs = {"": "■", "/": "▨", ".": "▒", "x": "▩", "-": "▤"}
    uses = dict.fromkeys(use for way in result.alternatives for use in uses_kwh(way))
    found = []
    for use in uses:
        colour, shape = _look(use, look)
        found.append(f"<span style='color:{colour}'>{signs[shape]} {use}</span>")
    half = (len(found) + 1) // 2
    return "<br>" + "<br>".join("  ".join(part) for part in (found[:half], found[half:]) if part)


def statement(result: Result, look: Look) -> str:  # noqa: ARG001 - every statement takes the same two
    """Return the sentence above the picture: the smallest and largest yearly energy cost, and its largest use."""
    order = sorted(result.alternatives, key=lambda way: float(way.energy_cost_usd_per_yr[0]))
    least, most = order[0], order[-1]
    low, high = (lifetime_money(float(way.energy_cost_usd_per_yr[0])) for way in (least, most))
    uses = uses_kwh(most)
    largest = max(uses, key=lambda use: float(uses[use].sum()), default="")
    mostly = f", mostly {largest}" if largest else ""
    return (
        f"A full year's energy costs least with “{NAMES[least.name]}”, {low}, "
        f"and most with “{NAMES[most.name]}”, {high}{mostly}."
    )


def table(result: Result, look: Look) -> Columns:  # noqa: ARG001 - every table takes the same two
    """Return what is bought by month, alternative and use."""
    columns: Columns = {"Month": [*MONTHS, "Year"]}
    for way in result.alternatives:
        for use, kwh in uses_kwh(way).items():
            title = f"{NAMES[way.name]}, {use}, kWh"
            columns[title] = [plain_number(float(each)) for each in (*kwh, kwh.sum())]
    return columns
