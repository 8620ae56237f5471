"""Calendar: one lane an alternative from the decision to the first cool day, waits hatched."""

from datetime import date, timedelta
from math import floor
from typing import Any, Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, PARTIES, Party
from econ.report.look import Look
from econ.report.numbers import first_cost_money, listed, plain_number
from econ.report.pictures.frame import Columns, framed, write
from econ.report.style import MARKS, NAMES, SMALL_SIZE, faint
from econ.report.words.waiting import misses_summer, span_text, summer_text

ROW_PX: Final = 104
FRAME_PX: Final = 84
BAR_WIDTH: Final = 0.27
"""Height of a lane's bars; a lane and what is written over it are 1."""

AROUND: Final = (0.5, 0.2)
"""Room under the last lane, and over the first, which has no bars."""

CHAIN_BELOW: Final = 0.21
RANGE_BELOW: Final = 0.35
"""How far under a lane the chain that decides the day is ruled, and the range of the first cool day."""

KEY_WORDS: Final = "hatched: waiting; filled: work; ruled beneath:<br>what decides the day; thin line: its range"

SUMMER_WITHIN: Final = 1.6
"""A summer is drawn where it begins within so many times the days shown otherwise, else it is only named."""

Span = tuple[float, float, str]
"""Start and end in days after the decision, and what it is."""

_WHO: Final = {party: "you" if party is Party.SELF else party.value for party in PARTIES}

MS_PER_D: Final = 86_400_000.0
"""ms in a day: how the drawing library measures lengths on a date axis."""


def figure(result: Result, look: Look) -> go.Figure:
    """Return lanes of waits (hatched) and work (filled); the first cool day closes each lane, its range beneath."""
    height_px = round(ROW_PX * (len(ALTERNATIVES) - 1 + sum(AROUND))) + FRAME_PX
    drawn = framed(look, height_px, {"l": 8, "r": 20, "t": 22, "b": 62})
    last = max((_last_day(result, way) for way in result.alternatives if way.in_service_exists), default=1.0)
    end_d = _end_d(result, last)
    _add_summer(drawn, result, end_d, look)
    for way in result.alternatives:
        row = len(ALTERNATIVES) - 1 - ALTERNATIVES.index(way.name)
        _head_lane(drawn, result, way, row, look)
        if way.in_service_exists:
            _add_lane(drawn, way, row, look)
            _add_chain(drawn, way, row, look)
            _add_range(drawn, result, way, row, look)
    drawn.update_layout(barmode="overlay")
    drawn.update_xaxes(
        type="date",
        range=[look.decision, look.decision + timedelta(days=end_d)],
        title_text=f"Date ({KEY_WORDS})",
        tickformat="%-d %b",
        nticks=6,
        showgrid=True,
    )
    drawn.update_yaxes(visible=False, range=[-AROUND[0], len(ALTERNATIVES) - 1 + AROUND[1]])
    return drawn


def _last_day(result: Result, way: AlternativeResult) -> float:
    """Return the day of service, its late end, or that of the last task, whichever comes last."""
    finish = way.schedule.finish_d[0][way.schedule.is_active[0]]
    high_d = _range_d(result, way)[1]
    return max(float(way.in_service_d[0]), high_d, float(finish[np.isfinite(finish)].max(initial=0.0)))


def _range_d(result: Result, way: AlternativeResult) -> tuple[float, float]:
    """Return the low and high of the first cool day, both the likely one where nobody has tried others."""
    found, at = result.first_cool_days, ALTERNATIVES.index(way.name)
    if found is None:
        return float(way.in_service_d[0]), float(way.in_service_d[0])
    return float(found.low_d[at]), float(found.high_d[at])


def _end_d(result: Result, last_d: float) -> float:
    """Return the last day drawn: that of the lanes, and far enough to see the summer begin where it is near."""
    summer = result.waiting.summer_from_d
    shown = summer * 1.15 if last_d < summer <= SUMMER_WITHIN * last_d else last_d
    return float(np.ceil(1.04 * shown)) + 1.0


def _add_summer(drawn: go.Figure, result: Result, end_d: float, look: Look) -> None:
    """Shade the hot season between two rules, or say when it begins where that lies beyond the drawing."""
    from_d, to_d = result.waiting.summer_from_d, result.waiting.summer_to_d
    if not np.isfinite(from_d):
        return
    font = {"size": SMALL_SIZE, "color": look.ground.soft}
    if from_d >= end_d:
        words = f"summer begins {look.short_day(from_d)} \u2192"
        write(
            drawn,
            words,
            (1.0, 1.0),
            look.ground.soft,
            xref="paper",
            yref="paper",
            xanchor="right",
            yshift=10,
            font=font,
        )
        return
    start, end = max(from_d, 0.0), min(to_d, end_d)
    edge = {"color": look.ground.soft, "width": 1, "dash": "dot"}
    drawn.add_vrect(
        x0=_moment(start, look), x1=_moment(end, look), fillcolor=look.ground.heat, opacity=0.09, line_width=0
    )
    for day in (from_d, to_d):
        if 0.0 < day < end_d:
            drawn.add_vline(x=_moment(day, look), line=edge)
    words = f"summer, to {look.short_day(to_d)}" if from_d <= 0.0 else "summer"
    write(drawn, words, (_moment(start, look), 1.0), look.ground.soft, yref="paper", yshift=10, font=font)


def _head_lane(drawn: go.Figure, result: Result, way: AlternativeResult, row: int, look: Look) -> None:
    """Write name and first cool day over a lane, its range and whether it makes the summer beneath."""
    name = f"<b>{MARKS[way.name].glyph} {NAMES[way.name]}</b>"
    if not way.in_service_exists:
        write(drawn, f"{name}  goes on as it is", (look.decision, row), look.colour(way.name), name=NAMES[way.name])
        return
    first = f"{name}  cool from {look.day(float(way.in_service_d[0]))}"
    write(drawn, first, (look.decision, row), look.colour(way.name), yshift=44, name=NAMES[way.name])
    late = "<b>misses the summer</b>" if misses_summer(result, way) else ""
    span = span_text(result, way, look)
    under = ", ".join(part for part in (f"8 tries of 10: {span}" if span else "", late) if part)
    if under:
        small = {"size": SMALL_SIZE}
        write(
            drawn, under, (look.decision, row), look.ground.ink, yshift=27, name=f"{NAMES[way.name]}: range", font=small
        )


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


def _add_chain(drawn: go.Figure, way: AlternativeResult, row: int, look: Look) -> None:
    """Rule in ink what decides the first cool day, beneath the lane: its waits thin, its work thick."""
    plan, chain = way.schedule, np.flatnonzero(way.schedule.is_critical[0])
    waits = [(plan.wait_start_d[0, task], plan.start_d[0, task], plan.label[task]) for task in chain]
    work = [(plan.start_d[0, task], plan.finish_d[0, task], plan.label[task]) for task in chain]
    for kind, spans, width in (("waiting", waits, 1.6), ("work", work, 6.0)):
        kept = [span for span in spans if span[1] > span[0]]
        days = [day for start, end, _ in kept for day in (_moment(float(start), look), _moment(float(end), look), None)]
        drawn.add_scatter(
            x=days,
            y=[row - CHAIN_BELOW] * len(days),
            name=f"{NAMES[way.name]}: {kind} that decides the day",
            mode="lines",
            line={"color": look.ground.ink, "width": width},
            customdata=[label for _, _, label in kept for _ in range(3)],
            hovertemplate=f"{NAMES[way.name]}, {kind} that decides the day<br>%{{customdata}}<extra></extra>",
        )


def _add_range(drawn: go.Figure, result: Result, way: AlternativeResult, row: int, look: Look) -> None:
    """Draw the range of the first cool day: a thin line with stops at low and high and the likely day's mark."""
    low, high = _range_d(result, way)
    days = [low, float(way.in_service_d[0]), high]
    words = ["one try in ten sooner than", "likely", "one try in ten later than"]
    colour = look.colour(way.name)
    drawn.add_scatter(
        x=[_moment(day, look) for day in days],
        y=[row - RANGE_BELOW] * len(days),
        name=f"{NAMES[way.name]}: range of the first cool day",
        mode="lines+markers",
        line={"color": colour, "width": 1.6},
        marker={
            "symbol": ["line-ns", MARKS[way.name].symbol, "line-ns"],
            "size": [10, 8, 10],
            "opacity": 1.0,
            "color": colour,
            "line": {"color": colour, "width": 2},
        },
        customdata=[f"{word} {look.day(day)}" for word, day in zip(words, days, strict=True)],
        hovertemplate=f"{NAMES[way.name]}, first cool day<br>%{{customdata}}<extra></extra>",
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
        width=BAR_WIDTH,
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
    told = [
        f"“{NAMES[way.name]}” on {look.day(float(way.in_service_d[0]))}{_beside(result, way, look)}" for way in buying
    ]
    return (
        f"The first cool day comes with {listed(told)}." if told else "None of these brings anything new into service."
    )


def _beside(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return, in brackets, how far that day may move, how warm it stays until then, and by when to decide."""
    span, warm_h = span_text(result, way, look), plain_number(float(way.waiting_h[0]))
    parts = (
        f"from {span}" if span else "",
        "" if warm_h == "0" else f"{warm_h} hours too warm until then",
        summer_text(result, way, look),
    )
    told = "; ".join(part for part in parts if part)
    return f" ({told})" if told else ""


def table(result: Result, look: Look) -> Columns:
    """Return every task: whose, who does it, its days and whether it decides; then what else has a day."""
    rows = [
        row
        for way in result.alternatives
        for row in (
            *_task_rows(way, look),
            *_return_row(way, look),
            *_service_rows(result, way, look),
            *_register_row(way, look),
        )
    ]
    titles = (
        "Way to go",
        "Task",
        "Who",
        "Wait begins",
        "Work begins",
        "Done",
        "Days after the decision",
        "Decides the day",
    )
    return {title: [row[position] for row in rows] for position, title in enumerate(titles)}


def _whole_days(after_d: float) -> str:
    """Return days after the decision as the dates beside them count: part of a day is the day it is in."""
    return plain_number(floor(after_d))


def _task_rows(way: AlternativeResult, look: Look) -> list[tuple[str, ...]]:
    plan = way.schedule
    return [
        (
            NAMES[way.name],
            plan.label[task],
            _WHO[PARTIES[int(plan.party[0, task])]],
            *(look.day(float(days[0, task])) for days in (plan.wait_start_d, plan.start_d, plan.finish_d)),
            _whole_days(float(plan.finish_d[0, task])),
            "yes" if plan.is_critical[0, task] else "no",
        )
        for task in np.flatnonzero(plan.is_active[0])
    ]


def _return_row(way: AlternativeResult, look: Look) -> list[tuple[str, ...]]:
    """Return the last day on which the kit may go back, and the fee; nothing for ways without a kit."""
    last_d = float(way.return_by_d[0])
    if not np.isfinite(last_d):
        return []
    words = f"Last day to send the kit back ({first_cost_money(float(way.restocking_usd[0]))} kept, freight apart)"
    return [(NAMES[way.name], words, "", "", "", look.day(last_d), _whole_days(last_d), "")]


def _service_rows(result: Result, way: AlternativeResult, look: Look) -> list[tuple[str, ...]]:
    """Return the first cool day: likely, one try in ten sooner, one in ten later."""
    if not way.in_service_exists:
        return []
    low, high = _range_d(result, way)
    days = {"likely": float(way.in_service_d[0]), "one try in ten sooner": low, "one try in ten later": high}
    return [
        (NAMES[way.name], f"First cool day, {words}", "", "", "", look.day(day), _whole_days(day), "")
        for words, day in days.items()
    ]


def _register_row(way: AlternativeResult, look: Look) -> list[tuple[str, ...]]:
    """Return the last day to register the warranty, by the usual deadline; nothing where nothing is registered."""
    last_d = float(way.in_service_d[0] + way.warranty.register_within_d[0])
    if not np.isfinite(last_d):
        return []
    words = "Last day to register the warranty (usual deadline; the paper decides)"
    return [(NAMES[way.name], words, "", "", "", look.day(last_d), _whole_days(last_d), "")]
