"""Which way is the cheapest over two inputs: areas with their names, and where you are."""

import numpy as np
import plotly.graph_objects as go

from econ.kernel.alternative import ALTERNATIVES
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
    across, up = np.meshgrid(found.map.across, found.map.up)
    for place, name in enumerate(ALTERNATIVES):
        is_here = found.map.difference_usd == place
        if not is_here.any():
            continue
        drawn.add_trace(
            go.Scatter(
                x=across[is_here],
                y=up[is_here],
                mode="markers",
                marker={"symbol": MARKS[name].symbol, "size": 9, "color": faint(look.colour(name), 0.75)},
                name=NAMES[name],
                hovertemplate=f"{NAMES[name]}<extra></extra>",
            )
        )
        middle = float(across[is_here].mean()), float(up[is_here].mean())
        write(
            drawn, f"<b>{NAMES[name]}</b>", middle, look.ground.ink,
            xanchor="center", bgcolor=look.ground.paper, opacity=0.92,
        )  # fmt: skip
    drawn.add_trace(
        go.Scatter(
            x=[now[0]], y=[now[1]], mode="markers+text", text=["you are here"], textposition="top center",
            marker={"symbol": "circle-open", "size": 18, "color": look.ground.ink, "line": {"width": 3}},
            hoverinfo="skip",
        )
    )  # fmt: skip
    for axis, path, grid in (
        ("x", found.map_paths[0], found.map.across),
        ("y", found.map_paths[1], found.map.up),
    ):
        ticks = grid[:: max(1, len(grid) // 4)]
        settings = {"tickvals": ticks, "ticktext": [value_text(path, float(tick), look) for tick in ticks]}
        title = words_of(path).capitalize()
        if axis == "x":
            drawn.update_xaxes(**settings, title_text=title)
        else:
            drawn.update_yaxes(**settings)
            name_upright_axis(drawn, title, look)
    return drawn


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
