"""Headline figures, each once: its key, name, unit, formula, what it is worked out from and the inputs behind it.

Reports, JSON and screens draw headline figures from here, so that any of them can be opened.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from inspect import getdoc
from typing import Final

import numpy as np

from econ.energy.emissions import emitted_kg_co2e
from econ.energy.fuel import fuel_kwh
from econ.energy.served import kwh_by_month, per_year
from econ.evaluate.result import Result
from econ.evaluate.sheet import Sheet
from econ.evaluate.strands import STRANDS, Strand, strand_of
from econ.evaluate.wiring.energy import energy_of
from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd, first_cost_usd
from econ.installation.schedule import schedule
from econ.kernel.arrays import FloatArray
from econ.kernel.errors import UnknownChoiceError
from econ.lifecycle.discount import capital_recovery_factor
from econ.lifecycle.measures import (
    adjusted_internal_rate,
    component_present_value,
    measures,
    savings_to_investment_ratio,
)
from econ.lifecycle.payback import discounted_payback, simple_payback
from econ.lifecycle.rate_of_return import internal_rate
from econ.loads.heat_balance import need
from econ.loads.moisture import latent_w

_SECTIONS: Final = ("Parameters", "Returns", "Raises", "Notes", "References", "Examples")


@dataclass(frozen=True, slots=True, eq=False)
class Figure:
    """One headline figure.

    Attributes
    ----------
    key : str
        Stable name: its key in JSON, where JSON holds it as it is.
    label : str
        What a screen calls it.
    unit : str
        Its unit, in pint's spelling.
    formula : callable
        The function whose docstring is its formula.
    of : callable
        The figure of a result, shape (A, B), or (1, B) where it is the same whichever way is gone; NaN where it does
        not exist.
    made_of : tuple of str
        Keys of the figures that it is worked out from, whose inputs are its own.
    also : tuple of str
        Inputs beyond these.
    """

    key: str
    label: str
    unit: str
    formula: Callable[..., object]
    of: Callable[[Result], FloatArray]
    made_of: tuple[str, ...] = ()
    also: tuple[str, ...] = ()

    @property
    def is_of_a_way(self) -> bool:
        """Whether each way has its own."""
        return not self.key.startswith("need_")

    def at(self, result: Result, way: int) -> float:
        """Return the figure of one way at likely values; the same for each where it is no way's own.

        Parameters
        ----------
        result : Result
            Likely row first.
        way : int
            Position in ALTERNATIVES. [dimensionless]
        """
        return float(self.of(result)[way if self.is_of_a_way else 0, 0])


def _of_way(name: str) -> Callable[[Result], FloatArray]:
    return lambda result: np.stack([getattr(way, name) for way in result.alternatives])


def _of_months(name: str) -> Callable[[Result], FloatArray]:
    return lambda result: np.stack([getattr(way, name).sum(axis=1) for way in result.alternatives])


def _of_measures(name: str) -> Callable[[Result], FloatArray]:
    return lambda result: np.asarray(getattr(result.measures, name))


def _of_need(name: str) -> Callable[[Result], FloatArray]:
    return lambda result: np.asarray(getattr(result, name).sum(axis=1))[None, :]


def _against_base(
    key: str, label: str, unit: str, formula: Callable[..., object], also: tuple[str, ...] = ()
) -> Figure:
    """Return a measure that compares lifetime costs with those of the base case."""
    return Figure(key, label, unit, formula, _of_measures(key), ("lcc_usd",), ("money.base_case", *also))


FIGURES: Final[tuple[Figure, ...]] = (
    Figure("cash_first_cost_usd", "Cash now", "USD", cash_first_cost_usd, _of_way("cash_first_cost_usd")),
    Figure("first_cost_usd", "First cost, own time priced", "USD", first_cost_usd, _of_way("first_cost_usd")),
    Figure("own_hours_h", "Your hours", "hour", installation, _of_way("own_hours_h")),
    Figure("upkeep_own_h_per_yr", "Your hours every year", "hour/year", installation, _of_way("upkeep_own_h_per_yr")),
    Figure("in_service_d", "First cool day", "day", schedule, _of_way("in_service_d")),
    Figure("need_cool_kwh", "Cooling the rooms need in a year", "kWh", need, _of_need("need_cool_kwh")),
    Figure("need_latent_kwh", "Moisture to take out in a year", "kWh", latent_w, _of_need("need_latent_kwh")),
    Figure("need_heat_kwh", "Heat the rooms need in a year", "kWh", need, _of_need("need_heat_kwh")),
    Figure(
        "electricity_kwh_per_yr", "Electricity a year", "kWh/year", kwh_by_month, _of_months("electricity_kwh")
    ),
    Figure("fuel_kwh_per_yr", "Fuel a year", "kWh/year", fuel_kwh, _of_months("fuel_kwh")),
    Figure("energy_cost_usd_per_yr", "Energy cost a year", "USD/year", energy_of, _of_way("energy_cost_usd_per_yr")),
    Figure(
        "emitted_kg_co2e_per_yr", "Carbon dioxide a year", "kg/year", emitted_kg_co2e, _of_way("emitted_kg_co2e_per_yr")
    ),
    Figure(
        "unmet_cooling_kwh_per_yr", "Cooling left undone", "kWh/year", per_year, _of_way("unmet_cooling_kwh_per_yr")
    ),
    Figure(
        "unmet_heating_kwh_per_yr", "Heat left to what is there", "kWh/year", per_year,
        _of_way("unmet_heating_kwh_per_yr"),
    ),
    Figure("lcc_usd", "Lifetime cost", "USD", component_present_value, _of_measures("lcc_usd")),
    Figure(
        "annualised_cost_usd_per_yr", "All-in, a year", "USD/year", capital_recovery_factor,
        _of_measures("annualised_cost_usd_per_yr"), ("lcc_usd",),
    ),
    Figure(
        "lcc_at_zero_hour_usd", "Lifetime cost, own hours at nothing", "USD", component_present_value,
        lambda result: result.lcc_at_zero_hour_usd, ("lcc_usd",),
    ),
    _against_base("net_savings_usd", "Savings against base", "USD", measures),
    _against_base("sir", "Savings per extra dollar against base", "dimensionless", savings_to_investment_ratio),
    _against_base("airr", "Yearly return against base", "dimensionless", adjusted_internal_rate),
    _against_base("irr", "Internal return against base", "dimensionless", internal_rate),
    _against_base("simple_payback_yr", "Payback against base", "year", simple_payback),
    _against_base("discounted_payback_yr", "Payback in today's money against base", "year", discounted_payback),
)  # fmt: skip
"""In the order of screens: what it takes, when it works, what is needed, what it draws, what it all comes to."""

CHANCE: Final = "probability_lowest_lcc_frac"
"""The chance of being the cheapest: counted over draws, from the lifetime costs of all ways."""


def value_at(key: str, result: Result, way: int) -> float:
    """Return a headline figure of one way at likely values. [any]"""
    return figure(key).at(result, way)


def figure(key: str) -> Figure:
    """Return one headline figure.

    Raises
    ------
    UnknownChoiceError
        If there is none of that key.
    """
    for found in FIGURES:
        if found.key == key:
            return found
    raise UnknownChoiceError("figure", key, [found.key for found in FIGURES[:3]])


def strands_behind(key: str) -> tuple[Strand, ...]:
    """Return the groups of inputs behind a figure, those of the figures it is worked out from among them.

    Parameters
    ----------
    key : str
        Of a figure.
    """
    found = figure(key)
    keys = {key, *found.made_of}
    further = {strand_of(path) for path in found.also}
    return tuple(strand for strand in STRANDS if keys & set(strand.reaches) or strand in further)


def inputs_behind(key: str, sheet: Sheet) -> tuple[str, ...]:
    """Return the paths of a sheet that may move a figure; which of them do hangs on the case.

    Parameters
    ----------
    key : str
        Of a figure.
    sheet : Sheet
        The inputs of a case.
    """
    behind = set(strands_behind(key))
    return tuple(path for path in sheet.path if strand_of(path) in behind)


@dataclass(frozen=True, slots=True)
class Formula:
    """What the docstring of a figure's function says.

    Attributes
    ----------
    name : str
        The function, with its module.
    summary, notes : str
        What comes back, and how.
    references : tuple of str
        Documents named.
    """

    name: str
    summary: str
    notes: str = ""
    references: tuple[str, ...] = field(default=())


def formula_of(key: str) -> Formula:
    """Return the formula of a figure as its function tells it.

    Parameters
    ----------
    key : str
        Of a figure.
    """
    function = figure(key).formula
    parts = _sections(getdoc(function) or "")
    named = [line.removeprefix("..").strip() for line in parts.get("References", "").split("\n..")]
    return Formula(
        name=f"{function.__module__}.{function.__name__}",
        summary=" ".join(parts[""].split()),
        notes=" ".join(parts.get("Notes", "").split()),
        references=tuple(" ".join(each.partition("]")[2].split()) for each in named if "]" in each),
    )


def _sections(text: str) -> dict[str, str]:
    """Return the parts of a docstring by their head; what comes before the first has none."""
    parts: dict[str, list[str]] = {"": []}
    head = ""
    for line in text.splitlines():
        if line in _SECTIONS:
            head = line
            parts[head] = []
        elif not set(line) <= {"-"} or not line:
            parts[head].append(line)
    return {name: "\n".join(lines).strip() for name, lines in parts.items()}
