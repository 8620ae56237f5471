"""How far each input alone moves the lead of the cheapest way: widest bar first."""

from typing import Final

import plotly.graph_objects as go

from econ.report.look import Look
from econ.report.numbers import money
from econ.report.pictures.frame import Columns, framed, write
from econ.report.style import NAMES, SMALL_SIZE, faint
from econ.uncertainty.what_if import WhatIf

MOST_BARS: Final = 8
BAR_PX: Final = 44.0


def shown_count(found: WhatIf) -> int:
    """Return how many bars are drawn: those that move the lead by a dollar or more, at most eight."""
    return int(min(MOST_BARS, (found.swings.swing_usd >= 1.0).sum()))


def figure(found: WhatIf, labels: dict[str, str], look: Look) -> go.Figure:
    """Return the picture: the lead with each input at its low and at its high end.

    Parameters
    ----------
    found : WhatIf
        The swings.
    labels : dict of str to str
        Name of each input by path.
    look : Look
        Ground and units.
    """
    count, swings = shown_count(found), found.swings
    drawn = framed(look, int(88 + BAR_PX * count), {"l": 8, "r": 24, "b": 62})
    colour = look.colour(found.winner)
    for place in range(count):
        low, high = float(swings.at_low_usd[place]), float(swings.at_high_usd[place])
        drawn.add_trace(
            go.Bar(
                x=[high - low],
                base=[low],
                y=[place],
                orientation="h",
                width=0.34,
                marker={"color": faint(colour, 0.55), "line": {"color": colour, "width": 1.2}},
                hovertemplate=f"{labels[swings.path[place]]}: {money(low)} to {money(high)} ahead<extra></extra>",
            )
        )
        write(
            drawn, labels[swings.path[place]], (0, place), look.ground.ink,
            xref="paper", yshift=15, font={"size": SMALL_SIZE},
        )  # fmt: skip
    drawn.add_vline(x=0.0, line={"color": look.ground.ink, "width": 1.4})
    drawn.add_vline(x=swings.likely_usd, line={"color": colour, "width": 1.2, "dash": "dot"})
    drawn.update_yaxes(range=[count - 0.45, -0.75], showticklabels=False, showgrid=False)
    drawn.update_xaxes(title_text=f"Lead of “{NAMES[found.winner]}” over the next,<br>lifetime dollars (0: even)")
    return drawn


def statement(found: WhatIf, labels: dict[str, str]) -> str:
    """Return the sentence above the picture."""
    if not shown_count(found):
        return "No input moves the lead by as much as a dollar."
    path = found.swings.path[0]
    low, high = sorted((float(found.swings.at_low_usd[0]), float(found.swings.at_high_usd[0])))
    return (
        f"“{labels[path]}” moves the lead most: from {money(low)} to {money(high)} within its range, "
        f"where the likely lead is {money(found.swings.likely_usd)}."
    )


def table(found: WhatIf, labels: dict[str, str]) -> Columns:
    """Return every swing as a table, widest first."""
    swings = found.swings
    return {
        "Input": [labels[path] for path in swings.path],
        "Low end": [f"{value:g}" for value in swings.low],
        "Lead at low end": [money(float(value)) for value in swings.at_low_usd],
        "High end": [f"{value:g}" for value in swings.high],
        "Lead at high end": [money(float(value)) for value in swings.at_high_usd],
    }
