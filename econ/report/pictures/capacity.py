"""Capacity against need over outdoor temperature, with the hours beneath."""

from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import Quantity, hours, plain_number
from econ.report.pictures.frame import (
    Columns,
    framed,
    label_line_ends,
    line_look,
    name_upright_axis,
    write,
)
from econ.report.style import NAMES, SMALL_SIZE, faint

HEIGHT_PX: Final = 460
UPPER: Final = (0.36, 1.0)
LOWER: Final = (0.0, 0.2)
PLOT_PX: Final = (HEIGHT_PX - 92) * (UPPER[1] - UPPER[0])

LEAST_NEED: Final = 0.03
"""Share of the largest need below which a capacity line is not drawn (assumption of the drawing only)."""

SEEN_H: Final = 1.0
"""h a year; a temperature that comes up less often lies outside the drawing (assumption)."""


def figure(result: Result, look: Look) -> go.Figure:
    """Return what each unit can give and what the rooms need, over the outdoor temperature and its hours."""
    drawn = framed(look, HEIGHT_PX, {"r": 92, "t": 36, "b": 56})
    seen = result.climate.bin_h >= SEEN_H
    at = _temperatures(result.climate.bin_c[seen], look)
    _add_need(drawn, result, seen, look)
    for way in result.alternatives:
        _add_capacity(drawn, way, _wanted(result), look)
    _add_hours(drawn, at, result.climate.bin_h[seen], look)
    top = 1.12 * _highest(result, look)
    step = float(at[1] - at[0]) if len(at) > 1 else 1.0
    span = (float(at[0]) - step, float(at[-1]) + step)
    ends = _ends(result, span[1], look)
    _lay_out(drawn, span, top, look)
    label_line_ends(drawn, ends, look, PLOT_PX / top)
    return drawn


def _lay_out(drawn: go.Figure, span: tuple[float, float], top: float, look: Look) -> None:
    drawn.update_layout(
        yaxis={"domain": UPPER, "range": [0.0, top], "tickformat": "~s", "nticks": 5},
        yaxis2={**drawn.layout.yaxis.to_plotly_json(), "domain": LOWER, "anchor": "x", "nticks": 3},
        xaxis={
            "anchor": "y2",
            "range": span,
            "title": {"text": f"Outdoor temperature, {look.symbol(Quantity.TEMPERATURE)}"},
        },
        bargap=0.15,
    )
    name_upright_axis(drawn, f"Capacity and need, {look.symbol(Quantity.POWER)}", look)
    name_upright_axis(drawn, "Hours a year", look, LOWER[1])


def _temperatures(at_c: FloatArray, look: Look) -> FloatArray:
    return np.array([look.shown(float(at), Quantity.TEMPERATURE) for at in at_c])


def _powers(power_w: FloatArray, look: Look) -> FloatArray:
    return np.array([look.shown(float(power), Quantity.POWER) for power in power_w])


def _highest(result: Result, look: Look) -> float:
    climate = result.climate
    powers = [climate.bin_cool_high_w, climate.bin_heat_high_w]
    powers += [curve for way in result.alternatives for curve in (way.capability.cool_w, way.capability.heat_w)]
    finite = np.concatenate(powers)
    return look.shown(float(finite[np.isfinite(finite)].max()), Quantity.POWER) or 1.0


def _add_need(drawn: go.Figure, result: Result, seen: np.ndarray, look: Look) -> None:
    climate, ground = result.climate, look.ground
    at = _temperatures(climate.bin_c[seen], look)
    for word, need_w, high_w, colour in (
        ("heat needed", climate.bin_heat_w, climate.bin_heat_high_w, ground.heat),
        ("cooling needed", climate.bin_cool_w, climate.bin_cool_high_w, ground.cool),
    ):
        power = _powers(need_w[seen], look)
        if power.max(initial=0.0) <= 0.0:
            continue
        _add_highest(drawn, word, (at, _powers(high_w[seen], look)), colour, look)
        drawn.add_scatter(
            x=at,
            y=power,
            name=f"The rooms: {word}",
            mode="lines",
            line={"color": colour, "width": 1},
            fill="tozeroy",
            fillcolor=faint(colour, 0.18),
            hovertemplate=(
                f"%{{x:.0f}} {look.symbol(Quantity.TEMPERATURE)}: %{{y:,.3~s}} {look.symbol(Quantity.POWER)} "
                f"{word}<extra></extra>"
            ),
        )
        inside = int(np.flatnonzero(power > 0.45 * power.max())[-1 if word.startswith("heat") else 0])
        side = "right" if word.startswith("heat") else "left"
        place = (float(at[inside]), 0.0)
        write(
            drawn,
            word.replace(" ", "<br>"),
            place,
            colour,
            xanchor=side,
            yanchor="bottom",
            yshift=4,
            align=side,
            font={"size": SMALL_SIZE},
        )


def _add_highest(drawn: go.Figure, word: str, line: tuple[FloatArray, FloatArray], colour: str, look: Look) -> None:
    """Draw what the hour of each temperature that wants most needs, where a unit falls short first."""
    at, power = line
    drawn.add_scatter(
        x=at,
        y=np.where(power > 0.0, power, np.nan),
        name=f"The rooms: {word} in the highest hour",
        mode="lines",
        line={"color": colour, "width": 1.4, "dash": "dot"},
        hovertemplate=(
            f"%{{x:.0f}} {look.symbol(Quantity.TEMPERATURE)}: %{{y:,.3~s}} {look.symbol(Quantity.POWER)} "
            f"{word} in the hour that wants most<extra></extra>"
        ),
    )


def _wanted(result: Result) -> tuple[float, float]:
    """Return above which outdoor temperature there is cooling need to speak of, and below which heating need."""
    climate = result.climate
    cool = climate.bin_c[climate.bin_cool_w > LEAST_NEED * climate.bin_cool_w.max(initial=0.0)]
    heat = climate.bin_c[climate.bin_heat_w > LEAST_NEED * climate.bin_heat_w.max(initial=0.0)]
    return float(cool.min(initial=np.inf)), float(heat.max(initial=-np.inf))


def _add_capacity(drawn: go.Figure, way: AlternativeResult, wanted_c: tuple[float, float], look: Look) -> None:
    at, at_c = _temperatures(way.capability.at_c, look), way.capability.at_c
    cool_w = np.where(at_c >= wanted_c[0], way.capability.cool_w, np.nan)
    heat_w = np.where(at_c <= wanted_c[1], way.capability.heat_w, np.nan)
    for word, power_w in (("cooling", cool_w), ("heating", heat_w)):
        if not np.isfinite(power_w).any() or np.nanmax(power_w) <= 0.0:
            continue
        drawn.add_scatter(
            x=at,
            y=_powers(power_w, look),
            name=f"{NAMES[way.name]}: {word} capacity",
            mode="lines",
            line=line_look(way.name, look),
            hovertemplate=(
                f"{NAMES[way.name]}, {way.capability.label}<br>%{{x:.0f}} {look.symbol(Quantity.TEMPERATURE)}: "
                f"%{{y:,.3~s}} {look.symbol(Quantity.POWER)} of {word}<extra></extra>"
            ),
        )


def _add_hours(drawn: go.Figure, at: FloatArray, hour: FloatArray, look: Look) -> None:
    drawn.add_bar(
        x=at,
        y=hour,
        yaxis="y2",
        name="Hours a year at this outdoor temperature",
        marker={"color": faint(look.ground.plain, 0.75)},
        hovertemplate=f"%{{x:.0f}} {look.symbol(Quantity.TEMPERATURE)}: %{{y:.0f}} hours a year<extra></extra>",
    )


def _ends(result: Result, last: float, look: Look) -> dict[Alternative, tuple[float, float]]:
    """Return where each cooling line leaves the drawing on its hot side, in units on display."""
    ends: dict[Alternative, tuple[float, float]] = {}
    for way in result.alternatives:
        at, power = _temperatures(way.capability.at_c, look), _powers(way.capability.cool_w, look)
        running = np.isfinite(power) & (power > 0.0)
        if running.any():
            end = min(last, float(at[running][-1]))
            ends[way.name] = (end, float(np.interp(end, at[running], power[running])))
    return ends


def heating_limit_c(result: Result, way: AlternativeResult) -> float:
    """Return the outdoor temperature below which a way's heating falls short of the mean need; NaN where it never does.

    Read off the two lines of the drawing at the middle of each temperature bin that comes up at least an hour a year.
    """
    return _highest_short_c(result, way, result.climate.bin_heat_w)


def heating_short_from_c(result: Result, way: AlternativeResult) -> float:
    """Return the highest outdoor temperature at which single hours want more heat than a way gives; NaN where none."""
    return _highest_short_c(result, way, result.climate.bin_heat_high_w)


def cooling_short_from_c(result: Result, way: AlternativeResult) -> float:
    """Return the lowest outdoor temperature at which single hours want more than a way cools; NaN where none."""
    climate = result.climate
    able = np.interp(climate.bin_c, way.capability.at_c, way.capability.cool_w)
    short = (climate.bin_cool_high_w > able) & (climate.bin_h >= SEEN_H)
    return float(climate.bin_c[short].min()) if short.any() else float("nan")


def _highest_short_c(result: Result, way: AlternativeResult, need_w: FloatArray) -> float:
    climate = result.climate
    able = np.nan_to_num(np.interp(climate.bin_c, way.capability.at_c, np.nan_to_num(way.capability.heat_w)))
    short = (need_w > able) & (climate.bin_h >= SEEN_H)
    return float(climate.bin_c[short].max()) if short.any() else float("nan")


def _heats(way: AlternativeResult) -> bool:
    return bool(np.nan_to_num(way.capability.heat_w).max(initial=0.0) > 0.0)


def _in_winter(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return down to where a way keeps up on average, from where single hours fall short, and how many they are."""
    named = f"“{NAMES[way.name]}” ({way.capability.label})"
    limit, first, short = heating_limit_c(result, way), heating_short_from_c(result, way), float(way.unmet_heating_h[0])
    if short < SEEN_H:
        return f"{named} keeps up in every hour of a typical winter here"
    degrees = [look.measure(at, Quantity.TEMPERATURE) if np.isfinite(at) else "" for at in (limit, first)]
    if degrees[0] and degrees[0] == degrees[1]:
        return f"{named} keeps up down to {degrees[0]}; below that, about {hours(short)} a year, other heat must help"
    low = f"keeps up on average down to {degrees[0]}" if degrees[0] else "keeps up on average at every temperature"
    from_ = f" from {degrees[1]} down" if degrees[1] else ""
    return f"{named} {low}, but falls short in about {hours(short)} a year{from_}, when other heat must help"


def _in_summer(result: Result, look: Look) -> str:
    """Return whether every new unit keeps up with hot weather, else which falls shortest, from where and how long."""
    cooling = [way for way in result.alternatives if way.in_service_exists]
    most = max(cooling, key=lambda way: float(way.unmet_cooling_h[0]))
    short, first = float(most.unmet_cooling_h[0]), cooling_short_from_c(result, most)
    if short < SEEN_H:
        return "every new unit keeps up with the hot weather of a typical year"
    above = f" from {look.measure(first, Quantity.TEMPERATURE)} up" if np.isfinite(first) else ""
    return f"“{NAMES[most.name]}” falls short in hot weather in about {hours(short)} a year, in single hours{above}"


def statement(result: Result, look: Look) -> str:
    """Return the sentence above the picture: how cold it may get where heat is asked for, and how hot."""
    heating = [way for way in result.alternatives if _heats(way) and way.in_service_exists]
    told = [_in_winter(result, heating[0], look)] if heating and result.need_heat_kwh[0].sum() > 0.0 else []
    if (result.need_cool_kwh[0] + result.need_latent_kwh[0]).sum() > 0.0:
        told.append(_in_summer(result, look))
    sentence = "; ".join(told) or "nothing is asked of any unit here"
    return f"{sentence[:1].upper()}{sentence[1:]}."


def table(result: Result, look: Look) -> Columns:
    """Return hours, need and each unit's capacity by outdoor temperature."""
    climate = result.climate
    seen = climate.bin_h >= SEEN_H
    at, power = climate.bin_c[seen], Quantity.POWER
    columns: Columns = {
        "Outdoors": [look.measure(float(t), Quantity.TEMPERATURE) for t in at],
        "Hours a year": [plain_number(float(hour)) for hour in climate.bin_h[seen]],
        **{
            title: [look.measure(float(need), power) for need in needs_w[seen]]
            for title, needs_w in (
                ("Cooling needed, mean", climate.bin_cool_w),
                ("Cooling needed, highest hour", climate.bin_cool_high_w),
                ("Heat needed, mean", climate.bin_heat_w),
                ("Heat needed, highest hour", climate.bin_heat_high_w),
            )
        },
    }
    for name, way in zip(ALTERNATIVES, result.alternatives, strict=True):
        for word, curve in (("cooling", way.capability.cool_w), ("heating", way.capability.heat_w)):
            able = np.interp(at, way.capability.at_c, curve, left=np.nan, right=np.nan)
            columns[f"{NAMES[name]}, {word}"] = [look.measure(float(value), power) for value in able]
    return columns
