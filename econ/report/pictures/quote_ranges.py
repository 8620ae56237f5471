"""Where each kind of a quote's lines lies on the range of own items, and several quotes on equal scope."""

from collections.abc import Sequence
from html import escape
from typing import Final

import plotly.graph_objects as go

from econ.kernel.alternative import ALTERNATIVES, HIRED
from econ.kernel.constants import CENTS_PER_USD
from econ.report.look import Look
from econ.report.numbers import first_cost_money
from econ.report.pictures.frame import BAND_OPACITY, bar_look, framed
from econ.report.style import SMALL_SIZE, faint
from econ.report.words.quote import KIND_WORDS
from econ.report.words.quote_lines import ABOVE, BELOW, Row
from econ.report.words.quotes import ADDED_WORDS
from econ.uncertainty.quotes import Compared, names

ROW_PX: Final = 34
FRAME_PX: Final = 70
MOST_LETTERS: Final = 22


def ranges_figure(rows: Sequence[Row], look: Look) -> go.Figure:
    """Return each kind as a band with the quote's own figure as a mark; one outside is hollow.

    Parameters
    ----------
    rows : sequence of Row
        As `econ.report.words.quote_lines.rows` gives them.
    look : Look
        Ground of the reader.
    """
    colour = look.colour(ALTERNATIVES[HIRED])
    made = framed(look, FRAME_PX + ROW_PX * len(rows), {"l": 8, "r": 8, "t": 8, "b": 40})
    for row, (kind, _, (low, high), _, _) in enumerate(rows):
        made.add_bar(
            x=[high - low], y=[row], base=[low], orientation="h", width=0.5,
            marker={"color": faint(colour, BAND_OPACITY), "line": {"color": colour, "width": 1}},
            hovertemplate=f"{KIND_WORDS[kind]}: {first_cost_money(low)} to {first_cost_money(high)}<extra></extra>",
        )  # fmt: skip
    marks = [
        (row, cents / CENTS_PER_USD, place) for row, (_, cents, _, place, _) in enumerate(rows) if cents is not None
    ]
    made.add_scatter(
        x=[usd for _, usd, _ in marks], y=[row for row, _, _ in marks], mode="markers",
        marker={
            "size": 12,
            "color": colour,
            "symbol": ["triangle-up-open" if place in (ABOVE, BELOW) else "triangle-up" for *_, place in marks],
            "line": {"width": 2, "color": colour},
        },
        text=[f"{first_cost_money(usd)}, {place}" for _, usd, place in marks],
        hovertemplate="%{text}<extra></extra>",
    )  # fmt: skip
    made.update_xaxes(tickprefix="$", tickformat=",.0f", nticks=5, showgrid=True, rangemode="tozero")
    made.update_yaxes(
        range=[len(rows) - 0.4, -0.6],
        tickvals=list(range(len(rows))),
        ticktext=[KIND_WORDS[kind].replace(" and ", "<br>and ") for kind, *_ in rows],
        showgrid=False,
    )
    return made


def quotes_figure(quotes: Sequence[Compared], look: Look) -> go.Figure:
    """Return quotes as level bars: filled as quoted, hollow for what is added so that all do the same job.

    Parameters
    ----------
    quotes : sequence of Compared
        On equal scope.
    look : Look
        Ground of the reader.
    """
    hired = ALTERNATIVES[HIRED]
    made = framed(look, FRAME_PX + 2 * ROW_PX * len(quotes), {"l": 8, "r": 8, "t": 8, "b": 40})
    made.update_layout(barmode="overlay")
    for row, each in enumerate(quotes):
        at = each.quoted.said.total_cents / CENTS_PER_USD
        made.add_bar(x=[at], y=[row], orientation="h", width=0.55, marker=bar_look(hired, look), hoverinfo="skip")
        for key, cents in each.added:
            made.add_bar(
                x=[cents / CENTS_PER_USD], y=[row], base=[at], orientation="h", width=0.55,
                marker={"color": "rgba(0,0,0,0)", "line": {"color": look.colour(hired), "width": 1.6}},
                hovertemplate=f"{ADDED_WORDS[key]}: {first_cost_money(cents / CENTS_PER_USD)}<extra></extra>",
            )  # fmt: skip
            at += cents / CENTS_PER_USD
        made.add_annotation(
            x=at, y=row, text=f"<b>{first_cost_money(at)}</b>", showarrow=False, xanchor="left", xshift=5,
            font={"size": SMALL_SIZE},
        )  # fmt: skip
    high = max(each.equal_cents for each in quotes) / CENTS_PER_USD
    made.update_xaxes(range=[0.0, high * 1.2], tickprefix="$", tickformat=",.0f", nticks=5, showgrid=True)
    made.update_yaxes(
        range=[len(quotes) - 0.4, -0.6],
        tickvals=list(range(len(quotes))),
        ticktext=[
            escape(name if len(name) <= MOST_LETTERS else f"{name[: MOST_LETTERS - 1]}…") for name in names(quotes)
        ],
        showgrid=False,
    )
    return made
