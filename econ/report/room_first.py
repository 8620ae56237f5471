"""Fix the room first: what each measure on the room would do, in sentences, as a table and as plain values."""

from math import isfinite
from typing import Any, Final

from econ.evaluate.load_measures import LoadMeasures, MeasureFacts, RoomNeed
from econ.report.look import Look
from econ.report.numbers import (
    Quantity,
    first_cost_money,
    hours,
    listed,
    money,
    percent,
    plain_number,
    years,
)
from econ.report.pictures.frame import Columns

LEAST_SHARE: Final = 0.01
"""Part of the hottest hour below which a measure is not said to take anything off it. Assumption."""

LONG_YR: Final = 50
"""Years past which the exact number means nothing. Common practice, no source."""

CHANGES: Final = {
    "design_cooling_w_change": "design_cooling_w",
    "design_heating_w_change": "design_heating_w",
    "annual_cooling_kwh_change": "cooling_kwh",
    "annual_latent_kwh_change": "latent_kwh",
    "annual_heating_kwh_change": "heating_kwh",
    "cooling_hours_h_change": "cooling_h",
    "running_cost_usd_per_yr_change": "running_usd_per_yr",
}
"""Keys of plain values, and the need they are a change of."""

CHOSEN: Final = -1
"""Row of `RoomNeed` with the measures chosen together."""


def sentences(found: LoadMeasures) -> tuple[str, ...]:
    """Return what is best done first, what takes most off, what the chosen do together, and what is not offered.

    Parameters
    ----------
    found : LoadMeasures
        Measures on the room.
    """
    told = (_best(found), _most(found), _together(found), _not_offered(found))
    return tuple(sentence for sentence in told if sentence)


def headline(found: LoadMeasures) -> str:
    """Return the one sentence that stands before a size; says so where nothing helps."""
    return _best(found) or "No measure on the room itself takes anything off its hottest hour."


def cut_frac(found: LoadMeasures, position: int) -> float:
    """Return the part of the hottest hour's cooling that a measure takes off; 0 where nothing is cooled."""
    before, after = (float(found.need.design_cooling_w[row]) for row in (0, 1 + position))
    return (before - after) / before if before > 0.0 else 0.0


def _helping(found: LoadMeasures) -> list[int]:
    return [
        place
        for place, each in enumerate(found.measures)
        if each.is_offered and cut_frac(found, place) >= LEAST_SHARE and each.cost_usd[1] > 0.0
    ]


def _best(found: LoadMeasures) -> str:
    """Return the measure that takes most off the hottest hour for each dollar."""
    helping = _helping(found)
    if not helping:
        return ""
    best = max(helping, key=lambda place: cut_frac(found, place) / found.measures[place].cost_usd[1])
    return f"{_takes(found, best)}: the most for each dollar."


def _most(found: LoadMeasures) -> str:
    helping = _helping(found)
    if len(helping) < 2:
        return ""
    most = max(helping, key=lambda place: cut_frac(found, place))
    best = max(helping, key=lambda place: cut_frac(found, place) / found.measures[place].cost_usd[1])
    return "" if most == best else f"{_takes(found, most)}: the most of all."


def _takes(found: LoadMeasures, place: int) -> str:
    each = found.measures[place]
    return (
        f"{each.label} takes {percent(cut_frac(found, place))} off the hottest hour "
        f"for about {first_cost_money(each.cost_usd[1])} and {_running(found, place)}"
    )


def _together(found: LoadMeasures) -> str:
    chosen = [each for each in found.measures if each.is_chosen]
    if not chosen:
        return ""
    need = found.need
    off = 1.0 - float(need.design_cooling_w[CHOSEN] / need.design_cooling_w[0]) if need.design_cooling_w[0] else 0.0
    cost, own = (sum(getattr(each, name)[1] for each in chosen) for name in ("cost_usd", "own_h"))
    names = listed([each.label.lower() for each in chosen])
    return (
        f"What you took ({names}) is in every way, keeping what you have too: "
        f"{percent(off)} off the hottest hour, {first_cost_money(cost)} and {hours(own)} of yours; the room then wants "
        f"cooling for {plain_number(float(need.cooling_h[CHOSEN]))} instead of "
        f"{plain_number(float(need.cooling_h[0]))} hours a year."
    )


def _not_offered(found: LoadMeasures) -> str:
    left = [f"{each.label.lower()} ({each.why_not})" for each in found.measures if not each.is_offered]
    return f"Not offered here: {'; '.join(left)}." if left else ""


def table(found: LoadMeasures, look: Look) -> Columns:
    """Return need before and after, cost, hours and payback of each measure offered, the chosen together last."""
    shown = [place for place, each in enumerate(found.measures) if each.is_offered or each.is_chosen]
    rows = [_row(found, look, 1 + place, found.measures[place]) for place in shown]
    if sum(each.is_chosen for each in found.measures) > 1:
        rows.append(_row(found, look, CHOSEN, None))
    titles = rows[0] if rows else {"Measure": ""}
    return {title: [row[title] for row in rows] for title in titles}


def _row(found: LoadMeasures, look: Look, row: int, each: MeasureFacts | None) -> dict[str, Any]:
    need = found.need
    cost, own = (
        tuple(sum(getattr(one, name)[step] for one in ([each] if each else _chosen(found))) for step in range(3))
        for name in ("cost_usd", "own_h")
    )
    return {
        "Measure": each.label if each else "All you took, together",
        "Hottest hour": _moved(need, "design_cooling_w", row, lambda w: look.measure(w, Quantity.POWER)),
        "Coldest hour": _moved(need, "design_heating_w", row, lambda w: look.measure(w, Quantity.POWER)),
        "Cooling and drying, kWh/yr": _moved(need, "cooling_kwh", row, plain_number, "latent_kwh"),
        "Heat, kWh/yr": _moved(need, "heating_kwh", row, plain_number),
        "Cost": f"{first_cost_money(cost[1])} ({first_cost_money(cost[0])} to {first_cost_money(cost[2])})",
        "Your hours": hours(own[1]),
        "Running cost saved a year": money(float(need.running_usd_per_yr[0] - need.running_usd_per_yr[row])),
        "Pays back by it in": payback_text(_payback_yr(need, row, cost[1])),
    }


def _chosen(found: LoadMeasures) -> list[MeasureFacts]:
    return [each for each in found.measures if each.is_chosen]


def _payback_yr(need: RoomNeed, row: int, cost_usd: float) -> float:
    saving = float(need.running_usd_per_yr[0] - need.running_usd_per_yr[row])
    return cost_usd / saving if saving > 0.0 else float("nan")


def payback_text(payback_yr: float) -> str:
    """Return a payback against the room as it is; one beyond a life is only said to be long."""
    if not isfinite(payback_yr):
        return "never"
    return years(payback_yr) if payback_yr < LONG_YR else f"more than {LONG_YR} years"


def _moved(need: RoomNeed, name: str, row: int, said: Any, other: str = "") -> str:
    """Return a need before and after, one number where nothing moves."""
    column = getattr(need, name) + (getattr(need, other) if other else 0.0)
    before, after = said(float(column[0])), said(float(column[row]))
    return before if before == after else f"{before} → {after}"


def effect_text(found: LoadMeasures, place: int, look: Look) -> str:
    """Return what one measure does, costs and asks, in one line for beside its tick."""
    each, row = found.measures[place], 1 + place
    running = _running(found, place)
    low, likely, high = (first_cost_money(cost) for cost in each.cost_usd)
    return (
        f"Hottest hour {_moved(found.need, 'design_cooling_w', row, lambda w: look.measure(w, Quantity.POWER))} "
        f"({percent(cut_frac(found, place))} off); {likely} "
        f"({low} to {high}), {hours(each.own_h[1])} of yours; {running}: {_pays(found.payback_yr(place))}."
    )


def _running(found: LoadMeasures, place: int) -> str:
    """Return what a measure saves or adds to a year's running cost."""
    saved = float(found.need.running_usd_per_yr[0] - found.need.running_usd_per_yr[1 + place])
    return f"{money(abs(saved))} {'less' if saved >= 0.0 else 'more'} to run a year"


def _pays(payback_yr: float) -> str:
    text = payback_text(payback_yr)
    return "only a smaller unit or comfort can pay for it" if text == "never" else f"pays back in {text}"


def document(found: LoadMeasures) -> dict[str, Any]:
    """Return the measures as plain values: changes against the room as it is, costs and hours."""
    return {
        "load_measures": [_plain(found, place, each) for place, each in enumerate(found.measures)],
        "load_measures_chosen": _changes(found.need, CHOSEN),
    }


def _plain(found: LoadMeasures, place: int, each: MeasureFacts) -> dict[str, Any]:
    payback = found.payback_yr(place)
    steps = ("low", "likely", "high")
    return {
        "key": each.key,
        "label": each.label,
        "is_offered": each.is_offered,
        "is_chosen": each.is_chosen,
        "why_not": each.why_not,
        "party": each.party,
        **_changes(found.need, 1 + place),
        "payback_yr": payback if isfinite(payback) and each.is_offered else None,
        "cost_usd": dict(zip(steps, each.cost_usd, strict=True)),
        "hours": dict(zip(steps, each.own_h, strict=True)),
    }


def _changes(need: RoomNeed, row: int) -> dict[str, float]:
    return {key: float(getattr(need, name)[row] - getattr(need, name)[0]) for key, name in CHANGES.items()}


def basis() -> str:
    """Return what the running costs and paybacks are against."""
    return (
        "Against the room as it is: cooling by the kit at its rating, heat from what heats the room now, asked for or "
        "not. A smaller unit may save more: the comparison of the ways counts that once you take one."
    )
