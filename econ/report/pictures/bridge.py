"""The bridge from the price of a kit to a quote, and its mirror: level bars, one a step, that a phone can show."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

import plotly.graph_objects as go

from econ.installation.quote_bridge import REST, Bridge, Step
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF, Alternative
from econ.kernel.constants import CENTS_PER_USD
from econ.kernel.spread import Spread
from econ.report.look import Look
from econ.report.numbers import MINUS, first_cost_money, money
from econ.report.pictures.frame import bar_look, framed
from econ.report.style import SMALL_SIZE
from econ.report.words.quote import STEP_WORDS

ABOUT_USD: Final = 0.5
"""Rounding of a step's items to cents."""

ROW_PX: Final = 34
FRAME_PX: Final = 92

BarKind = Literal["pier", "said", "ours", "rest"]


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar.

    Attributes
    ----------
    label : str
        What it is.
    start, usd : float
        Where it begins and how far it reaches; below nothing where it takes off. [USD]
    kind : str
        A pier stands on nothing; the quote's own figures are filled, ours hollow, and what neither tells dashed.
    name : Alternative
        Whose colour it has.
    ends : tuple of float
        Where it may end, from low to high; empty where it is certain or not ours to say. [USD]
    """

    label: str
    start: float
    usd: float
    kind: BarKind
    name: Alternative
    ends: tuple[float, ...] = ()


def bars(bridge: Bridge, ranges: Mapping[str, Spread] | None = None) -> tuple[Bar, ...]:
    """Return the bars from kit to quote, and on to the whole job where the quote lacks something.

    Parameters
    ----------
    bridge : Bridge
        As it adds up.
    ranges : mapping of str to Spread, optional
        What each step comes to from own items; shown where a bar stands at its likely value. [USD]
    """
    spans = ranges or {}
    own, hired = ALTERNATIVES[SELF], ALTERNATIVES[HIRED]
    found = [Bar("the kit", 0.0, bridge.kit_cents / CENTS_PER_USD, "pier", own)]
    at = bridge.kit_cents
    for step in bridge.steps:
        kind: BarKind = "rest" if step.key == REST else ("said" if step.origin == "said" else "ours")
        found.append(_ranged(_bar(STEP_WORDS[step.key], at, step.cents, kind), step, spans, bridge.kit_cents))
        at += step.cents
    found.append(Bar("the quote", 0.0, bridge.total_cents / CENTS_PER_USD, "pier", hired))
    for step in bridge.missing:
        found.append(_ranged(_bar(STEP_WORDS[step.key], at, step.cents, "ours"), step, spans, 0))
        at += step.cents
    if bridge.missing:
        found.append(Bar("with all its parts", 0.0, bridge.whole_cents / CENTS_PER_USD, "pier", hired))
    return tuple(found)


def _bar(label: str, at_cents: int, cents: int, kind: BarKind) -> Bar:
    return Bar(label, at_cents / CENTS_PER_USD, cents / CENTS_PER_USD, kind, ALTERNATIVES[HIRED])


def _ranged(bar: Bar, step: Step, ranges: Mapping[str, Spread], kit_cents: int) -> Bar:
    """Return a bar of own items with where it may end; one made smaller to fit what is left has none."""
    span = ranges.get(step.key)
    if step.origin != "ours" or span is None:
        return bar
    off = kit_cents / CENTS_PER_USD if step.key == "equipment" else 0.0
    if abs(span.likely - off - bar.usd) > ABOUT_USD:
        return bar
    return replace(bar, ends=(bar.start + span.low - off, bar.start + span.high - off))


def mirror_bars(kit_cents: int, pieces: Sequence[tuple[str, int]]) -> tuple[Bar, ...]:
    """Return the bars from the kit to doing it oneself, all in.

    Parameters
    ----------
    kit_cents : int
        Price of the kit, in hundredths of a dollar.
    pieces : sequence of (str, int)
        What its price leaves out, in cents; below nothing where it comes back.
    """
    own = ALTERNATIVES[SELF]
    found, at = [Bar("the kit", 0.0, kit_cents / CENTS_PER_USD, "pier", own)], kit_cents
    for label, cents in pieces:
        found.append(Bar(label, at / CENTS_PER_USD, cents / CENTS_PER_USD, "said", own))
        at += cents
    return (*found, Bar("yourself, all in", 0.0, at / CENTS_PER_USD, "pier", own))


def figure(drawn: Sequence[Bar], look: Look) -> go.Figure:
    """Return bars as a figure: the first on top, each with its amount beside it.

    Parameters
    ----------
    drawn : sequence of Bar
        In order.
    look : Look
        Ground of the reader.
    """
    made = framed(look, FRAME_PX + ROW_PX * len(drawn), {"l": 8, "r": 8, "t": 8, "b": 40})
    rows = list(range(len(drawn)))
    for row, bar in zip(rows, drawn, strict=True):
        made.add_bar(
            x=[bar.usd], y=[row], base=[bar.start], orientation="h", width=0.66, marker=_marker(bar, look),
            hovertemplate=f"{bar.label}: {amount(bar)}<extra></extra>",
        )  # fmt: skip
        _add_ends(made, row, bar, look)
    ends = [max(bar.start, bar.start + bar.usd, *bar.ends) for bar in drawn]
    for row, bar, end in zip(rows, drawn, ends, strict=True):
        text = f"<b>{amount(bar)}</b>" if bar.kind == "pier" else amount(bar)
        made.add_annotation(
            x=end, y=row, text=text, showarrow=False, xanchor="left", xshift=5, font={"size": SMALL_SIZE}
        )
    low, high = min(0.0, *(min(bar.start, bar.start + bar.usd) for bar in drawn)), max(*ends, 1.0)
    made.update_xaxes(range=[low * 1.05, high * 1.22], tickprefix="$", tickformat=",.0f", nticks=5, showgrid=True)
    made.update_yaxes(
        range=[len(drawn) - 0.4, -0.6], tickvals=rows, ticktext=[_folded(bar) for bar in drawn], showgrid=False
    )
    return made


def _add_ends(made: go.Figure, row: int, bar: Bar, look: Look) -> None:
    """Draw from where to where a bar may end."""
    if not bar.ends:
        return
    low, high = (first_cost_money(end - bar.start) for end in bar.ends)
    made.add_scatter(
        x=list(bar.ends), y=[row, row], mode="lines+markers", line={"color": look.colour(bar.name), "width": 1.2},
        marker={"symbol": "line-ns-open", "size": 9, "color": look.colour(bar.name)},
        hovertemplate=f"{bar.label}: {low} to {high}<extra></extra>",
    )  # fmt: skip


def _folded(bar: Bar) -> str:
    """Return a label in two rows where it is long, in bold where it is a pier."""
    words, rows = bar.label.split(), [""]
    for word in words:
        if len(rows[-1]) + len(word) > 16 and rows[-1]:
            rows.append(word)
        else:
            rows[-1] = f"{rows[-1]} {word}".strip()
    text = "<br>".join(rows)
    return f"<b>{text}</b>" if bar.kind == "pier" else text


def _marker(bar: Bar, look: Look) -> dict[str, object]:
    if bar.kind in ("pier", "said"):
        return bar_look(bar.name, look)
    colour = look.colour(bar.name) if bar.kind == "ours" else look.ground.soft
    pattern = {"shape": "", "fgcolor": colour} if bar.kind == "ours" else {"shape": "x", "fgcolor": colour, "size": 5}
    return {"color": "rgba(0,0,0,0)", "pattern": pattern, "line": {"color": colour, "width": 1.6}}


def amount(bar: Bar) -> str:
    """Return a bar's amount: as it stands for a pier, with its sign for a step."""
    if bar.kind == "pier":
        return first_cost_money(bar.usd)
    return f"{MINUS if bar.usd < 0.0 else '+'}{money(abs(bar.usd))}"
