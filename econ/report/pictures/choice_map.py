"""Which way is the cheapest over two inputs: areas with their names, and where you are."""

from typing import Any

import numpy as np
import plotly.graph_objects as go

from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.pictures.frame import Columns, framed, name_upright_axis, write
from econ.report.style import MARKS, NAMES, faint
from econ.report.what_if import value_text, words_of
from econ.uncertainty.what_if import WhatIf


def figure(found: WhatIf, now: tuple[float, float], look: Look) -> go.Figure:
    """Return the picture: one field of marks for each way, and a ring where the case stands.

    Parameters
    ----------
    found : WhatIf
        The map.
    now : tuple of float
        Likely value of the input across and of the input up. [any]
    look : Look
        Ground and units.
    """
    drawn = framed(look, 420)
    for place in range(len(ALTERNATIVES)):
        _area(drawn, found, place, look)
    drawn.add_trace(
        go.Scatter(
            x=[now[0]], y=[now[1]], mode="markers+text", text=["you are here"], textposition="top center",
            marker={"symbol": "circle-open", "size": 18, "color": look.ground.ink, "line": {"width": 3}},
            hoverinfo="skip",
        )
    )  # fmt: skip
    drawn.update_xaxes(**_ticks(found.map_paths[0], found.map.across, look), title_text=_title(found.map_paths[0]))
    drawn.update_yaxes(**_ticks(found.map_paths[1], found.map.up, look))
    name_upright_axis(drawn, _title(found.map_paths[1]), look)
    return drawn


def _area(drawn: go.Figure, found: WhatIf, place: int, look: Look) -> None:
    """Draw the marks of one way where it is the cheapest, with its name in their middle."""
    name, is_here = ALTERNATIVES[place], found.map.difference_usd == place
    if not is_here.any():
        return
    across, up = (grid[is_here] for grid in np.meshgrid(found.map.across, found.map.up))
    drawn.add_trace(
        go.Scatter(
            x=across,
            y=up,
            mode="markers",
            marker={"symbol": MARKS[name].symbol, "size": 9, "color": faint(look.colour(name), 0.75)},
            name=NAMES[name],
            hovertemplate=f"{NAMES[name]}<extra></extra>",
        )
    )
    write(
        drawn, f"<b>{NAMES[name]}</b>", (float(across.mean()), float(up.mean())), look.ground.ink,
        xanchor="center", bgcolor=look.ground.paper, opacity=0.92,
    )  # fmt: skip


def _ticks(path: str, grid: FloatArray, look: Look) -> dict[str, Any]:
    ticks = grid[:: max(1, len(grid) // 4)]
    return {"tickvals": ticks, "ticktext": [value_text(path, float(tick), look) for tick in ticks]}


def _title(path: str) -> str:
    return words_of(path).capitalize()


def statement(found: WhatIf) -> str:
    """Return the sentence above the picture."""
    places = [int(place) for place in np.unique(found.map.difference_usd)]
    pair = f"{words_of(found.map_paths[0])} and {words_of(found.map_paths[1])}"
    if len(places) == 1:
        return f"“{NAMES[ALTERNATIVES[places[0]]]}” is the cheapest whatever {pair} are, within what was looked at."
    shares = {place: float((found.map.difference_usd == place).mean()) for place in places}
    most = max(shares, key=lambda place: shares[place])
    return f"Over {pair}, “{NAMES[ALTERNATIVES[most]]}” is the cheapest in most of what was looked at."


def table(found: WhatIf, look: Look) -> Columns:
    """Return the map at every fifth point as a table."""
    step = 5
    columns: Columns = {
        words_of(found.map_paths[1]).capitalize(): [
            value_text(found.map_paths[1], float(value), look) for value in found.map.up[::step]
        ]
    }
    for place in range(0, len(found.map.across), step):
        title = value_text(found.map_paths[0], float(found.map.across[place]), look)
        columns[title] = [NAMES[ALTERNATIVES[int(code)]] for code in found.map.difference_usd[::step, place]]
    return columns
