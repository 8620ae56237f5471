"""Calendar: one lane an alternative from the decision to the first cool day, waits hatched."""

from datetime import date, timedelta
from typing import Any, Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, PARTIES
from econ.report.look import Look
from econ.report.numbers import listed, plain_number
from econ.report.pictures.frame import Columns, framed, write
from econ.report.style import MARKS, NAMES, faint

ROW_PX: Final = 66
FRAME_PX: Final = 70
Span = tuple[float, float, str]
"""Start and end in days after the decision, and what it is."""

MS_PER_D: Final = 86_400_000.0
"""ms in a day: how the drawing library measures lengths on a date axis."""


def figure(result: Result, look: Look) -> go.Figure:
    """Return lanes of waits (hatched) and work (filled); the first cool day closes each lane."""
    drawn = framed(look, ROW_PX * len(ALTERNATIVES) + FRAME_PX, {"l": 4, "r": 16, "t": 8, "b": 48})
    last = max((_last_day(way) for way in result.alternatives if way.in_service_exists), default=1.0)
    for way in result.alternatives:
        row = len(ALTERNATIVES) - 1 - ALTERNATIVES.index(way.name)
        heading = f"<b>{MARKS[way.name].glyph} {NAMES[way.name]}</b>  {_ending(way, look)}"
        write(drawn, heading, (look.decision, row), look.colour(way.name), yshift=24, name=NAMES[way.name])
        if way.in_service_exists:
            _add_lane(drawn, way, row, look)
    end = look.decision + timedelta(days=float(np.ceil(1.04 * last)) + 1.0)
    drawn.update_layout(barmode="overlay", bargap=0.62)
    drawn.update_xaxes(
        type="date",
        range=[look.decision, end],
        title_text="Date (hatched: waiting; filled: work)",
        tickformat="%-d %b",
        nticks=6,
        showgrid=True,
    )
    drawn.update_yaxes(visible=False, range=[-0.6, len(ALTERNATIVES) - 0.3])
    return drawn


def _last_day(way: AlternativeResult) -> float:
    """Return the day of service or of the last task, whichever is later."""
    finish = way.schedule.finish_d[0][way.schedule.is_active[0]]
    return max(float(way.in_service_d[0]), float(finish[np.isfinite(finish)].max(initial=0.0)))


def _ending(way: AlternativeResult, look: Look) -> str:
    if not way.in_service_exists:
        return "goes on as it is"
    return f"cool from {look.day(float(way.in_service_d[0]))}"


def _add_lane(drawn: go.Figure, way: AlternativeResult, row: int, look: Look) -> None:
    plan = way.schedule
    active = np.flatnonzero(plan.is_active[0])
    waits = _merged([(plan.wait_start_d[0, task], plan.start_d[0, task], plan.label[task]) for task in active])
    work = [(plan.start_d[0, task], plan.finish_d[0, task], plan.label[task]) for task in active]
    colour = look.colour(way.name)
    hatch = {"shape": "/", "fgcolor": colour, "bgcolor": faint(colour, 0.08), "size": 6, "solidity": 0.18}
    _add_spans(drawn, (way, "waiting", row), waits, {"color": faint(colour, 0.08), "pattern": hatch}, look)
    _add_spans(drawn, (way, "work", row), work, {"color": colour, "line": {"color": colour, "width": 2.5}}, look)
    drawn.add_scatter(
        x=[_moment(float(way.in_service_d[0]), look)],
        y=[row],
        name=f"{NAMES[way.name]}: first cool day",
        mode="markers",
        marker={
            "symbol": MARKS[way.name].symbol,
            "size": 15,
            "color": colour,
            "line": {"color": look.ground.paper, "width": 2},
        },
        hovertemplate=f"{NAMES[way.name]}<br>first cool day: {look.day(float(way.in_service_d[0]))}<extra></extra>",
        cliponaxis=False,
    )


def _merged(spans: list[Span]) -> list[Span]:
    """Return spans of which none overlap, the labels of those that did put together; empty spans are dropped."""
    merged: list[Span] = []
    for start, end, label in sorted(span for span in spans if np.isfinite(span[0]) and span[1] > span[0]):
        if merged and start <= merged[-1][1]:
            first, last, labels = merged[-1]
            merged[-1] = (first, max(last, end), f"{labels}; {label}")
        else:
            merged.append((start, end, label))
    return merged


def _add_spans(
    drawn: go.Figure, lane: tuple[AlternativeResult, str, int], spans: list[Span], marker: dict[str, Any], look: Look
) -> None:
    way, kind, row = lane
    kept = [span for span in spans if np.isfinite(span[0]) and span[1] > span[0]]
    words = [f"{span[2]}: {look.day(float(span[0]))} to {look.day(float(span[1]))}" for span in kept]
    drawn.add_bar(
        base=[_moment(float(span[0]), look) for span in kept],
        x=[(span[1] - span[0]) * MS_PER_D for span in kept],
        y=[row] * len(kept),
        orientation="h",
        name=f"{NAMES[way.name]}: {kind}",
        marker=marker,
        customdata=words,
        hovertemplate=f"{NAMES[way.name]}, {kind}<br>%{{customdata}}<extra></extra>",
    )


def _moment(after_d: float, look: Look) -> str:
    """Return a moment, counted from the decision, as the drawing library reads it."""
    hours = timedelta(days=after_d)
    start = date(look.decision.year, look.decision.month, look.decision.day)
    return f"{start + timedelta(days=hours.days)} {hours.seconds // 3600:02d}:{hours.seconds % 3600 // 60:02d}"


def statement(result: Result, look: Look) -> str:
    """Return the sentence above the picture: the first cool day of each way that has one, soonest first."""
    buying = sorted(
        (way for way in result.alternatives if way.in_service_exists), key=lambda way: float(way.in_service_d[0])
    )
    told = [f"“{NAMES[way.name]}” on {look.day(float(way.in_service_d[0]))}{_waiting(way, look)}" for way in buying]
    return (
        f"The first cool day comes with {listed(told)}." if told else "None of these brings anything new into service."
    )


def _waiting(way: AlternativeResult, look: Look) -> str:
    """Return what waiting for a way means in the room as it is, and by when to decide for it."""
    spare_d = float(way.spare_d[0])
    if not np.isfinite(spare_d):
        return ""
    warm_h = plain_number(float(way.waiting_h[0]))
    warm = "" if warm_h == "0" else f"{warm_h} hours too warm until then; "
    if spare_d < 0.0:
        return f" ({warm}too late for this summer, which took a decision by {look.day(spare_d)})"
    return f" ({warm}decide by {look.day(spare_d)} to make the summer)"


def table(result: Result, look: Look) -> Columns:
    """Return every task: whose, who does it, and its days."""
    rows = [row for way in result.alternatives for row in _task_rows(way, look)]
    titles = ("Way to go", "Task", "Who", "Wait begins", "Work begins", "Done", "Days after the decision")
    return {title: [row[position] for row in rows] for position, title in enumerate(titles)}


def _task_rows(way: AlternativeResult, look: Look) -> list[tuple[str, ...]]:
    plan = way.schedule
    return [
        (
            NAMES[way.name],
            plan.label[task],
            PARTIES[int(plan.party[0, task])].value,
            *(look.day(float(days[0, task])) for days in (plan.wait_start_d, plan.start_d, plan.finish_d)),
            plain_number(float(plan.finish_d[0, task])),
        )
        for task in np.flatnonzero(plan.is_active[0])
    ]
