"""What each budget of the coming year gives: worth against money, the chosen budget marked."""

from typing import Final

import plotly.graph_objects as go

from econ.portfolio.frontier import Frontier
from econ.report.look import Look
from econ.report.numbers import money, plain_number
from econ.report.pictures.frame import Columns, framed, name_upright_axis, write
from econ.report.style import SMALL_SIZE

HEIGHT_PX: Final = 340
_MIDDLE: Final = 0.6
"""Part of the width past which the words at the mark stand to its left."""


def figure(found: Frontier, at: int, look: Look) -> go.Figure:
    """Return the picture.

    Parameters
    ----------
    found : Frontier
        Choices by budget.
    at : int
        Position of the budget that is marked.
    look : Look
        Ground.
    """
    ground = look.ground
    drawn = framed(look, HEIGHT_PX, {"r": 20, "t": 40})
    drawn.add_scatter(
        x=found.budget_usd, y=found.worth_usd, mode="lines+markers",
        line={"color": ground.cool, "width": 2.6}, marker={"size": 6, "color": ground.cool},
        customdata=[[int(count)] for count in found.room_count],
        hovertemplate="$%{x:,.0f} this year<br>worth $%{y:,.0f}<br>%{customdata[0]} rooms this year<extra></extra>",
    )  # fmt: skip
    here = (float(found.budget_usd[at]), float(found.worth_usd[at]))
    drawn.add_scatter(
        x=[here[0]], y=[here[1]], mode="markers", hoverinfo="skip",
        marker={"symbol": "circle-open", "size": 17, "color": ground.ink, "line": {"width": 3}},
    )  # fmt: skip
    is_right = here[0] > _MIDDLE * float(found.budget_usd[-1])
    write(
        drawn, f"<b>{money(here[0])}</b>: worth {money(here[1])}", here, ground.ink,
        xanchor="right" if is_right else "left", xshift=-6 if is_right else 10, yshift=-22,
        font={"size": SMALL_SIZE}, bgcolor=ground.paper,
    )  # fmt: skip
    drawn.update_xaxes(title_text="Budget of the coming year", tickprefix="$", tickformat="~s", nticks=6)
    drawn.update_yaxes(tickprefix="$", tickformat="~s", nticks=6)
    name_upright_axis(drawn, "Worth over keeping everything, all years", look)
    return drawn


def statement(found: Frontier) -> str:
    """Return the sentence above the picture."""
    first, last = float(found.worth_usd[0]), float(found.worth_usd[-1])
    if last - first < 1.0:
        return "More money this year gives nothing more: what is worth doing is done without it."
    half = next(at for at, worth in enumerate(found.worth_usd) if worth - first >= (last - first) / 2.0)
    enough = next(at for at, worth in enumerate(found.worth_usd) if last - worth < 1.0)
    return (
        f"Half of what money can add this year comes with the first {money(float(found.budget_usd[half]))}; "
        f"past {money(float(found.budget_usd[enough]))} more adds nothing."
    )


def table(found: Frontier) -> Columns:
    """Return the picture as a table."""
    return {
        "Budget this year": [money(float(each)) for each in found.budget_usd],
        "Spent this year": [money(float(each)) for each in found.cash_usd],
        "Rooms this year": [str(int(each)) for each in found.room_count],
        "Hours too hot taken away": [plain_number(float(each)) for each in found.spared_h],
        "Worth, all years": [money(float(each)) for each in found.worth_usd],
    }
