"""Tables of a result: columns of words and numbers, ready for a screen, a page or a spreadsheet."""

from typing import Final

import numpy as np

from econ.evaluate.figures import value_at
from econ.evaluate.result import AlternativeResult, Result
from econ.installation.first_cost import LATER, LineItems, cash_first_cost_usd, first_cost_usd, incentive_usd
from econ.kernel.alternative import ALTERNATIVES, SELF, Standing
from econ.kernel.arrays import FloatArray
from econ.lifecycle.nominal import nominal_streams
from econ.report.first_cost_lines import LEVELS
from econ.report.look import Look
from econ.report.numbers import (
    DISPLAYS,
    NONE_TEXT,
    Quantity,
    UnitSystem,
    first_cost_money,
    hours,
    in_tries,
    money,
    percent,
    plain_number,
    years,
)
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.words.money import pay_per_own_hour_usd
from econ.report.words.origin import origin_text
from econ.report.words.standing import alone_text, standing_words
from econ.uncertainty.answer import Answer
from econ.uncertainty.drawn import Drawn
from econ.uncertainty.verdict import Verdict

_WHO: Final = {"self": "you"}
"""Parties that the reader knows by another word."""

RATE_DECIMALS: Final = 1

WHOSE: Final = {"yours": "you said", "usual": "usual value", "not_known": "not known", "computed": "worked out"}
"""The state of an input, in the words of the screen."""


def comparison(answer: Answer) -> Columns:
    """Return the four ways of an answer side by side, the base case marked."""
    return compared(answer.result, answer.verdict)


def compared(result: Result, verdict: Verdict) -> Columns:
    """Return the four ways side by side: one row a measure, one column a way; the base case carries the word."""
    rows = [_measures(result, verdict, position) for position in range(len(ALTERNATIVES))]
    columns: Columns = {"": list(rows[0])}
    for way, cells in zip(result.alternatives, rows, strict=True):
        base = " (base)" if way.name == result.base_case else ""
        columns[f"{NAMES[way.name]}{base}"] = list(cells.values())
    return columns


def _measures(result: Result, verdict: Verdict, position: int) -> dict[str, str]:
    way, base = result.alternatives[position], "against base"

    def at(key: str) -> float:
        return value_at(key, result, position)

    return {
        "Standing": standing_words(way),
        "Does all you asked for": _does_it(result, way),
        "Cash now": first_cost_money(at("cash_first_cost_usd")),
        "First cost, own time priced": first_cost_money(at("first_cost_usd")),
        "Your hours": hours(at("own_hours_h")),
        "Energy cost a year": money(at("energy_cost_usd_per_yr")),
        "Carbon dioxide a year": f"{plain_number(at('emitted_kg_co2e_per_yr'))} kg",
        "All-in cost a year": money(at("annualised_cost_usd_per_yr")),
        f"Lifetime cost, {result.study_period_yr} years": money(at("lcc_usd")),
        "Lifetime cost, own hours at nothing": money(at("lcc_at_zero_hour_usd")),
        f"Savings {base}": money(at("net_savings_usd")),
        f"Savings per extra dollar {base}": _ratio(at("sir")),
        f"Yearly return {base}": percent(at("airr"), RATE_DECIMALS),
        f"Internal return {base}": _internal(result, position),
        f"Payback {base}": _payback(result, "simple_payback", position),
        f"Payback in today's money {base}": _payback(result, "discounted_payback", position),
        "An own hour pays, against hiring": _own_hour(result, position),
        "Cheapest": alone_text(verdict, position) or in_tries(verdict.chance[position]),
    }


def _does_it(result: Result, way: AlternativeResult) -> str:
    """Return whether the job is done; rooms behind a closed door are said, as no one unit can be counted on there."""
    if not bool(way.meets_need[0]):
        return "no"
    closed = [name for name, served in zip(result.rooms.name, result.rooms.is_served, strict=True) if not served]
    return f"yes, but not counted on in: {', '.join(closed)}" if closed else "yes"


def _internal(result: Result, position: int) -> str:
    """Return the internal rate of return, or why there is none."""
    found = result.measures
    if bool(found.irr_is_multiple[position, 0]):
        return "several fit: none given"
    return percent(float(found.irr[position, 0]), RATE_DECIMALS)


def _payback(result: Result, name: str, position: int) -> str:
    """Return a payback, with a word where a later cost takes the money out again."""
    found = result.measures
    undone = ", undone later" if bool(getattr(found, f"{name}_is_undone")[position, 0]) else ""
    return f"{years(float(getattr(found, f'{name}_yr')[position, 0]))}{undone}"


def _own_hour(result: Result, position: int) -> str:
    """Return what an own hour pays; nothing where the work may not be done."""
    is_allowed = result.alternatives[position].standing is not Standing.NOT_ALLOWED
    return money(pay_per_own_hour_usd(result)) if position == SELF and is_allowed else NONE_TEXT


def _ratio(value: float) -> str:
    return NONE_TEXT if value != value else plain_number(value, 2)  # noqa: PLR0124 - NaN alone differs from itself


def first_cost(result: Result, place: int, drawn: Drawn | None = None, units: UnitSystem = UnitSystem.US) -> Columns:
    """Return a way's first cost line by line, sums beneath; own time stands apart from cash.

    Parameters
    ----------
    result : Result
        Likely row first.
    place : int
        Place of the way in ALTERNATIVES.
    drawn : Drawn or None
        The same at draws: gives each line its low and high, which one try in twenty passes.
    units : UnitSystem
        In which lengths are told, and prices of a length.
    """
    way = result.alternatives[place]
    items = way.line_items
    shown = [line for line in range(len(items.key)) if items.amount_usd[0, line] != 0.0]
    sums = first_sums(items)
    none = [""] * len(sums)
    return {
        "Line": [*(_sentence(items.label[line]) for line in shown), *sums],
        "Amount": [
            f"${amount:,.2f}" for amount in (*items.amount_usd[0, shown].tolist(), *(usd[0] for usd in sums.values()))
        ],
        **(_line_ranges(drawn, way, shown) if drawn is not None else {}),
        "Kind": [*(items.category[line].replace("_", " ") for line in shown), *none],
        "Who": [*(_WHO.get(items.party[line], items.party[line]) for line in shown), *none],
        "Quantity": [*(_quantity(items, line, units) for line in shown), *none],
        "Each": [*(f"${_each_usd(items, line, units):,.2f}" for line in shown), *none],
        "Source": [*(origin_text(items.source[line]) for line in shown), *none],
    }


def _scale(unit: str, units: UnitSystem) -> tuple[float, str]:
    """Return by what a quantity is multiplied to be shown, and in which unit."""
    lengths = {"m": Quantity.LENGTH, "m^2": Quantity.AREA, "m2": Quantity.AREA}
    display = DISPLAYS[units][lengths[unit]] if unit in lengths else None
    return (display.factor, display.symbol) if display is not None else (1.0, unit)


def _quantity(items: LineItems, line: int, units: UnitSystem) -> str:
    factor, unit = _scale(items.unit[line], units)
    return f"{items.quantity[0, line] * factor:.4g} {unit}"


def _each_usd(items: LineItems, line: int, units: UnitSystem) -> float:
    return float(items.unit_price_usd[0, line]) / _scale(items.unit[line], units)[0]


def first_sums(items: LineItems) -> dict[str, FloatArray]:
    """Return the sums beneath the lines of a first cost, each of shape (B,); what an incentive leaves where one counts.

    Parameters
    ----------
    items : LineItems
        The lines, of the likely row first or of draws.
    """
    first, back = first_cost_usd(items), incentive_usd(items)
    sums = {"Cash in all": cash_first_cost_usd(items), "With own time": first}
    return sums | ({"Once the incentive is paid": first - back} if back[0] > 0.0 else {})


def _line_ranges(drawn: Drawn, way: AlternativeResult, shown: list[int]) -> Columns:
    """Return low and high of the lines shown and of the sums, each over the draws by itself."""
    place, first = ALTERNATIVES.index(way.name), drawn.first_cost_usd[ALTERNATIVES.index(way.name)]
    is_later = [category == LATER for category in way.line_items.category]
    left = first + drawn.line_usd[place][:, : len(is_later)][:, is_later].sum(axis=1)
    sums = [drawn.cash_first_cost_usd[place], first, left][: len(first_sums(way.line_items))]
    by_line = np.quantile(drawn.line_usd[place][:, shown], LEVELS, axis=0)
    by_sum = np.quantile(np.stack(sums, axis=1), LEVELS, axis=0)
    titles = ("Low", "High")
    return {
        title: [f"${amount:,.2f}" for amount in (*by_line[end].tolist(), *by_sum[end].tolist())]
        for end, title in enumerate(titles)
    }


def _sentence(label: str) -> str:
    """Return a label with a capital first letter."""
    return f"{label[:1].upper()}{label[1:]}"


def yearly(result: Result, position: int, inflation_frac: float = 0.0) -> Columns:
    """Return an alternative's costs year by year, not discounted; what is left is taken off.

    In today's dollars, or in those of each year where prices rise.
    """
    flows = nominal_streams(result.streams, np.asarray(inflation_frac))
    shape = flows.energy_usd.shape
    asked = {"Borrowed money": flows.financing_usd, "Rent and taxes": flows.letting_usd}
    streams = {
        "Energy": flows.energy_usd,
        "Upkeep": flows.om_usd,
        "Expected repairs": np.broadcast_to(flows.repair_usd, shape),
        "Replacement": flows.replacement_usd,
        "Recovery and disposal": np.broadcast_to(flows.disposal_usd, shape),
        "Worth left, tools sold": -flows.residual_usd,
        **{title: np.broadcast_to(flow, shape) for title, flow in asked.items() if np.any(flow)},
        "All together": flows.total_usd,
    }
    n_year = flows.energy_usd.shape[-1]
    first = [float(flows.first_usd[position, 0])] + [0.0] * (n_year - 1)
    columns: Columns = {"Year": list(range(n_year)), "First cost": [money(amount) for amount in first]}
    for title, stream in streams.items():
        columns[title] = [money(float(amount)) for amount in stream[position, 0]]
    return columns


def room_loads(answer: Answer, look: Look) -> Columns:
    """Return the loads of an answer room by room."""
    return loads(answer.result, look)


def loads(result: Result, look: Look) -> Columns:
    """Return loads room by room."""
    found = result.rooms
    power = {
        "Sensible, design": found.design_cooling_sensible_w,
        "Moisture, design": found.design_cooling_latent_w,
        "Heating, design": found.design_heating_w,
    }
    energy = {
        "Sensible, kWh/yr": found.annual_cooling_sensible_kwh,
        "Moisture, kWh/yr": found.annual_cooling_latent_kwh,
        "Heating, kWh/yr": found.annual_heating_kwh,
    }
    columns: Columns = {"Room": list(found.name)}
    columns |= {title: [look.measure(float(w), Quantity.POWER) for w in powers] for title, powers in power.items()}
    columns |= {title: [plain_number(float(kwh)) for kwh in energies] for title, energies in energy.items()}
    columns["Needs neither at"] = [look.measure(float(at), Quantity.TEMPERATURE) for at in found.balance_point_c]
    columns["Served"] = ["yes" if served else "no, closed door" for served in found.is_served]
    return columns
