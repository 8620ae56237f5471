"""A headline figure opened, in words: how it is worked out, what stands behind it, how far it may be off."""

from collections.abc import Mapping
from math import isfinite
from typing import Final

import numpy as np

from econ.evaluate.figures import CHANCE, Figure, formula_of, strands_behind
from econ.evaluate.figures import figure as figure_of
from econ.evaluate.result import Result
from econ.evaluate.strands import Strand
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT, first_cost_money, hours, listed, percent, plain_number, years
from econ.uncertainty.answer import Answer

ENDS: Final = (0.05, 0.95)
"""Shares of the tries that lie below the low and the high of a range."""

MOST_STRANDS: Final = 4
"""Groups of inputs named within a sentence; the others are counted."""

FORMULAS: Final[Mapping[str, str]] = {
    "cash_first_cost_usd": "Every line of first cost that is paid in money, added up: units, parts, tools, trades, "
    "permits, tax, and chance times cost of what can go wrong. An incentive comes later and is not taken off.",
    "first_cost_usd": "Cash now, and your hours times what an hour of yours is worth.",
    "own_hours_h": "The hours of every task that you do. Added are the chance of each mishap times the hours it takes, "
    "and your hours for measures on the room.",
    "upkeep_own_h_per_yr": "Hours a year to take units out, put them away, put them in again and cover sleeves.",
    "in_service_d": "Each task starts when what comes before it is done, its wait is over and its people are free. "
    "The last task that must be done before the unit may run sets the day.",
    "need_cool_kwh": "Hour by hour through a year of weather: heat from sun, air, walls, people and things that would "
    "take the room above the temperature you want, in the hours you want it.",
    "need_latent_kwh": "Hour by hour: moisture set free indoors and brought in by air, less what may stay at the "
    "humidity you allow.",
    "need_heat_kwh": "Hour by hour through a year of weather: heat lost by walls, windows, air and ground, less sun, "
    "people and things, wherever the room would fall below the temperature you want.",
    "electricity_kwh_per_yr": "What the units draw hour by hour at the weather and the load they meet, standby in it. "
    "Electric heat and drying that make up for them are added.",
    "fuel_kwh_per_yr": "Heat that the units leave to what is there now, over its efficiency.",
    "energy_cost_usd_per_yr": "Electricity of each month at its price, and fuel at its price.",
    "emitted_kg_co2e_per_yr": "Each kWh of electricity and of fuel times what it emits.",
    "unmet_cooling_kwh_per_yr": "Cooling needed, less what the units can give, in every hour in which they fall short.",
    "unmet_heating_kwh_per_yr": "Heat needed, less what the units can give, in every hour in which they fall short.",
    "lcc_usd": "First cost, and what every later year costs: energy, upkeep, repairs and new units, less what is left "
    "at the end. The amount of year t is divided by (1 + rate)^t.",
    "annualised_cost_usd_per_yr": "Lifetime cost as an even amount a year: times rate / (1 - 1 / (1 + rate)^years).",
    "lcc_at_zero_hour_usd": "Lifetime cost with your hours counted as nothing.",
    "net_savings_usd": "Lifetime cost of what the others are compared with, less that of this way.",
    "sir": "What it saves to run over the years, over what more it takes to buy, both in today's money.",
    "airr": "(1 + rate) times the savings per extra dollar to the power 1/years, less 1.",
    "irr": "The yearly rate at which the extra money earns exactly nothing over its cost.",
    "simple_payback_yr": "When the savings added up first reach the extra money at the start.",
    "discounted_payback_yr": "The same with the savings of year t divided by (1 + rate)^t.",
    CHANCE: "All inputs are drawn together from their ranges, many times. Counted are the tries in which this way "
    "costs least of those that pass what comes before cost.",
}
"""How each figure is worked out, by its key."""

BY_DEFINITION: Final = "by definition"
"""What stands for a source where a figure is a sum or a count."""


def formula_text(key: str) -> str:
    """Return how a figure is worked out, in plain words."""
    return FORMULAS[key]


def source_text(key: str) -> str:
    """Return the documents that a figure's method follows."""
    if key == CHANCE:
        return BY_DEFINITION
    return "; ".join(each.rstrip(".") for each in formula_of(key).references) or BY_DEFINITION


def strands_of(key: str) -> tuple[Strand, ...]:
    """Return the groups of inputs behind a figure, or behind the chance of being the cheapest."""
    return strands_behind("lcc_usd" if key == CHANCE else key)


def behind_text(key: str, most: int = MOST_STRANDS) -> str:
    """Return the groups of inputs behind a figure, the first of them by name."""
    names = [strand.label for strand in strands_of(key)]
    more = len(names) - most
    return listed([*names[:most], f"{more} groups more"] if more > 1 else names)


def value_text(figure: Figure, value: float, look: Look) -> str:
    """Return a value of a figure as people say it.

    Parameters
    ----------
    figure : Figure
        Which.
    value : float
        In its unit. [any]
    look : Look
        Calendar of the reader.
    """
    if not isfinite(value):
        return NONE_TEXT
    if figure.key == "in_service_d":
        return look.day(value)
    if figure.unit == "dimensionless":
        return plain_number(value, 2) if figure.key == "sir" else percent(value, 1)
    worded = {
        "USD": first_cost_money(value),
        "USD/year": f"{first_cost_money(value)} a year",
        "hour": hours(value),
        "hour/year": f"{hours(value)} a year",
        "kWh": f"{plain_number(value)} kWh",
        "kWh/year": f"{plain_number(value)} kWh",
        "kg/year": f"{plain_number(value)} kg",
        "year": years(value),
    }
    return worded[figure.unit]


def ends_of(rows: FloatArray) -> tuple[float, float, float]:
    """Return low and high ends of the rows in which a figure exists, and the share of them.

    Parameters
    ----------
    rows : ndarray, shape (B,)
        The figure at draws; NaN where it does not exist. [any]

    Returns
    -------
    low, high, share : float
        NaN ends where it exists in none. [any] [any] [dimensionless]
    """
    there = rows[np.isfinite(rows)]
    if not len(there):
        return float("nan"), float("nan"), 0.0
    low, high = np.quantile(there, ENDS)
    return float(low), float(high), len(there) / len(rows)


def range_text(figure: Figure, rows: FloatArray, look: Look) -> str:
    """Return between which values nine tries of ten lie, and in how many it exists at all; empty without doubt.

    Parameters
    ----------
    figure : Figure
        Which.
    rows : ndarray, shape (B,)
        Its values at draws. [any]
    look : Look
        Calendar of the reader.
    """
    low, high, share = ends_of(np.asarray(rows, dtype=np.float64))
    if share == 0.0:
        return "in no try"
    ends = [value_text(figure, end, look) for end in (low, high)]
    exists = "" if share == 1.0 else f", where it exists: {percent(share)} of tries"
    return f"{ends[0]} to {ends[1]}{exists}" if ends[0] != ends[1] else exists.removeprefix(", ")


def opening_text(answer: Answer, key: str, way: int, look: Look) -> str:
    """Return what a figure of a way opens to where it stands: how it is worked out, and how far it may be off.

    Parameters
    ----------
    answer : Answer
        With draws where a range is to be told.
    key : str
        Of a figure, or the chance of being the cheapest.
    way : int
        Position in ALTERNATIVES. [dimensionless]
    look : Look
        Calendar of the reader.
    """
    told, drawn = formula_text(key), answer.drawn
    if drawn is None or key == CHANCE:
        return told
    rows = {
        "cash_first_cost_usd": drawn.cash_first_cost_usd,
        "annualised_cost_usd_per_yr": drawn.measures.annualised_cost_usd_per_yr,
    }
    span = range_text(figure_of(key), rows[key][way], look) if key in rows else ""
    return f"{told} Nine tries of ten: {span}." if span else told


def way_rows(figure: Figure, doubt: Result, way: int) -> FloatArray:
    """Return a figure of one way at draws, shape (B,). [any]

    Parameters
    ----------
    figure : Figure
        Which.
    doubt : Result
        At draws.
    way : int
        Position in ALTERNATIVES. [dimensionless]
    """
    return np.asarray(figure.of(doubt)[way if figure.is_of_a_way else 0])
