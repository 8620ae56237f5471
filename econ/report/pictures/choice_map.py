"""Which way is the cheapest over two inputs: areas with their names, and where you are."""

from typing import Any, Final

import numpy as np
import plotly.graph_objects as go

from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.pictures.frame import Columns, framed, name_upright_axis, write
from econ.report.style import MARKS, NAMES, faint
from econ.report.what_if import value_text, words_of
from econ.uncertainty.what_if import WhatIf

CLEAR_FRAC: Final = 0.15
"""How far, up or down the map, a name keeps from where one is now and from other names."""

Spot = tuple[float, float]
"""A place on the map: across and up."""

EDGE_FRAC: Final = 0.3
"""Nearer than this to a side, words begin or end there."""


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
    taken = [now]
    for place in range(len(ALTERNATIVES)):
        _area(drawn, found, place, look)
        taken += _name_area(drawn, found, place, taken, look)
    drawn.add_trace(
        go.Scatter(
            x=[now[0]], y=[now[1]], mode="markers",
            marker={"symbol": "circle-open", "size": 18, "color": look.ground.ink, "line": {"width": 3}},
            hoverinfo="skip",
        )
    )  # fmt: skip
    write(drawn, "you are here", now, look.ground.ink, yshift=20, **_written(found, now, look))
    drawn.update_xaxes(**_ticks(found.map_paths[0], found.map.across, look), title_text=_title(found.map_paths[0]))
    drawn.update_yaxes(**_ticks(found.map_paths[1], found.map.up, look))
    name_upright_axis(drawn, _title(found.map_paths[1]), look)
    return drawn


def _area(drawn: go.Figure, found: WhatIf, place: int, look: Look) -> None:
    """Draw the marks of one way where it is the cheapest."""
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


def _name_area(drawn: go.Figure, found: WhatIf, place: int, taken: list[Spot], look: Look) -> list[Spot]:
    """Write the name of one way on that mark of its area which is nearest the middle and clear of what is written."""
    is_here = found.map.difference_usd == place
    if not is_here.any():
        return []
    marks = np.array([grid[is_here] for grid in np.meshgrid(found.map.across, found.map.up)])
    span = np.array([[np.ptp(found.map.across)], [np.ptp(found.map.up)]])
    away = np.abs(marks - marks.mean(axis=1, keepdims=True)) / span
    is_clear = np.all([np.abs(marks[1] - up) / span[1] > CLEAR_FRAC for _, up in taken], axis=0)
    chosen = int(np.argmin(away.sum(axis=0) + np.where(is_clear, 0.0, np.inf if is_clear.any() else 0.0)))
    at = (float(marks[0, chosen]), float(marks[1, chosen]))
    write(drawn, f"<b>{NAMES[ALTERNATIVES[place]]}</b>", at, look.ground.ink, **_written(found, at, look))
    return [at]


def _written(found: WhatIf, at: tuple[float, float], look: Look) -> dict[str, Any]:
    """Return how words lie on the map: on paper, and turned inward near its edges."""
    across = found.map.across
    share = (at[0] - float(across[0])) / float(np.ptp(across))
    side = "left" if share < EDGE_FRAC else "right" if share > 1.0 - EDGE_FRAC else "center"
    return {"xanchor": side, "bgcolor": look.ground.paper, "opacity": 0.92}


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
