"""From a case's values and each alternative's costs to yearly streams and life-cycle measures."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from econ.case.choices import code
from econ.evaluate.structure import Structure
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.lifecycle.measures import Measures, component_present_value, measures
from econ.lifecycle.replacement import Component, remaining_life_yr, replacement_stream, residual_value
from econ.lifecycle.service import yearly_cost, yearly_upkeep
from econ.lifecycle.streams import Streams, escalated_stream

Values = Mapping[str, FloatArray]


@dataclass(frozen=True, slots=True, eq=False)
class AlternativeCosts:
    """What each alternative costs at today's prices, in the order of ALTERNATIVES.

    Attributes
    ----------
    first_usd : ndarray, shape (A, B)
        Everything paid at the start, own time included, resale of the old units left out. [USD]
    equipment_usd : ndarray, shape (A, B)
        The part of it that buys the units, tax included; of keep_as_is not read. [USD]
    fitting_usd : ndarray, shape (A, B)
        The part that puts them in and serves no longer than they do: labour and own time, the circuit's left out. [USD]
    lasting_usd : ndarray, shape (A, B)
        The part that outlasts them: circuit, pad or bracket, sleeve and cover. [USD]
    electricity_usd, fuel_usd : ndarray, shape (A, B, 12)
        Energy of each calendar month in full service, make-up included. [USD]
    added_upkeep_usd_per_yr : ndarray, shape (A, B)
        Yearly upkeep beside the case's own figures, such as hours for taking window units out and in. [USD/year]
    in_service_d : ndarray, shape (A, B)
        Days from the decision date to service; of keep_as_is not read. [day]
    measures : tuple of Component
        Measures on the room, shape (B,): paid with every way, within `first_usd`, and done again when they wear out.
    """

    first_usd: FloatArray
    equipment_usd: FloatArray
    fitting_usd: FloatArray
    lasting_usd: FloatArray
    electricity_usd: FloatArray
    fuel_usd: FloatArray
    added_upkeep_usd_per_yr: FloatArray
    in_service_d: FloatArray
    measures: tuple[Component, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Lifecycle:
    """Streams, measures and pieces of the life-cycle cost.

    Attributes
    ----------
    streams : Streams
        Yearly costs, shape (A, B, n_year + 1). [USD]
    measures : Measures
        Measures against the base case, shape (A, B).
    component_usd : dict of str to ndarray, shape (A, B)
        Present value of first_cost, energy, upkeep, replacement, residual (negative). [USD]
    """

    streams: Streams
    measures: Measures
    component_usd: dict[str, FloatArray]


def _has_old_units(values: Values) -> BoolArray:
    """Return the rows in which there are units now that can be kept or sold."""
    kinds = [code("now.cooling", "window_units"), code("now.cooling", "portable")]
    return np.isin(values["now.cooling"], kinds)


def _by_alternative(n_row: int, keep: FloatArray, window: FloatArray, own: FloatArray, hired: FloatArray) -> FloatArray:
    """Return four columns of rows as one array, in the order of ALTERNATIVES."""
    by_alternative = np.empty((len(ALTERNATIVES), n_row))
    by_alternative[KEEP], by_alternative[WINDOW], by_alternative[SELF], by_alternative[HIRED] = keep, window, own, hired
    return by_alternative


def _old_worth_usd(values: Values) -> FloatArray:
    """Return what the units there now would fetch."""
    worth: FloatArray = values["now.unit_worth_usd"] * values["now.units_count"] * _has_old_units(values)
    return worth


def _in_service_d(costs: AlternativeCosts) -> FloatArray:
    """Return days to service, none for what is there already."""
    days = np.array(costs.in_service_d, dtype=np.float64)
    days[KEEP] = 0.0
    return days


def _upkeep_usd_per_yr(values: Values, costs: AlternativeCosts) -> FloatArray:
    """Return yearly upkeep; units there now need what new window units need."""
    window = values["window.upkeep_usd_per_yr"]
    kept = window * _has_old_units(values)
    own = values["kit.upkeep_usd_per_yr"]
    hired = values.get("hired.upkeep_usd_per_yr", own)
    return _by_alternative(costs.first_usd.shape[1], kept, window, own, hired) + costs.added_upkeep_usd_per_yr


def _units(values: Values, costs: AlternativeCosts) -> Component:
    """Return what wears out: the new units of each alternative, and those there now, replaced by new window units."""
    n_row = costs.first_usd.shape[1]
    again = values["costs.replacement_installation_frac"]
    fitting_share = _by_alternative(n_row, np.array(0.0), np.array(1.0), again, again)
    price = costs.equipment_usd + fitting_share * costs.fitting_usd
    price[KEEP] = price[WINDOW] * _has_old_units(values)
    kit_life, window_life = values["kit.life_yr"], values["window.life_yr"]
    life = _by_alternative(n_row, window_life, window_life, kit_life, values.get("hired.life_yr", kit_life))
    worth, remaining = price.copy(), life.copy()
    worth[KEEP] = _old_worth_usd(values)
    remaining[KEEP] = remaining_life_yr(window_life, values["now.unit_age_yr"])
    return Component(worth, price, life, remaining, _in_service_d(costs) / DAYS_PER_YEAR)


def _lasting(values: Values, costs: AlternativeCosts) -> Component:
    """Return what outlasts the units: circuit, pad and cover."""
    life = np.broadcast_to(values["costs.circuit_pad_life_yr"], costs.first_usd.shape)
    in_service_yr = _in_service_d(costs) / DAYS_PER_YEAR
    return Component(costs.lasting_usd, costs.lasting_usd, life, life, in_service_yr)


def _energy_usd(structure: Structure, values: Values, costs: AlternativeCosts) -> FloatArray:
    """Return energy by year: electricity and fuel grow apart, months before service cost what is there now."""
    days, doy = _in_service_d(costs), float(np.ravel(values["place.decision_doy"])[0])
    total: FloatArray = np.zeros((*costs.first_usd.shape, structure.study_period_yr + 1))
    carriers = {
        "prices.electricity_escalation_frac": costs.electricity_usd,
        "prices.fuel_escalation_frac": costs.fuel_usd,
    }
    for path, month_usd in carriers.items():
        yearly = yearly_cost(month_usd, month_usd[KEEP], days, doy, structure.study_period_yr)
        total += escalated_stream(yearly, values[path])
    return total


def streams(structure: Structure, values: Values, costs: AlternativeCosts) -> Streams:
    """Return the yearly costs of each alternative, from the decision date to one end date for all.

    Parameters
    ----------
    structure : Structure
        Study period.
    values : mapping of str to ndarray, each () or (B,)
        Prices, lives, upkeep and what is there now.
    costs : AlternativeCosts
        What each alternative costs at today's prices.

    Returns
    -------
    streams : Streams
        Constant dollars, flows at year end. [USD]

    Notes
    -----
    Old units are sold at year 0 with every alternative but keep_as_is, where they run on until worn out and are
    then replaced by new window units.
    """
    n_year, days = structure.study_period_yr, _in_service_d(costs)
    parts = (_units(values, costs), _lasting(values, costs), *costs.measures)
    upkeep = _upkeep_usd_per_yr(values, costs)
    first = costs.first_usd - _old_worth_usd(values)
    first[KEEP] = costs.first_usd[KEEP]
    residual = np.zeros((*first.shape, n_year + 1))
    residual[..., -1] = sum(residual_value(part, n_year) for part in parts)
    return Streams(
        first_usd=first,
        energy_usd=_energy_usd(structure, values, costs),
        om_usd=escalated_stream(yearly_upkeep(upkeep, upkeep[KEEP], days, n_year), np.array(0.0)),
        replacement_usd=sum(
            (replacement_stream(part, n_year) for part in parts[1:]), replacement_stream(parts[0], n_year)
        ),
        residual_usd=residual,
    )


def lifecycle(structure: Structure, values: Values, costs: AlternativeCosts) -> Lifecycle:
    """Return streams, measures and pieces of the life-cycle cost of each alternative.

    Parameters
    ----------
    structure : Structure
        Study period and base case.
    values : mapping of str to ndarray, each () or (B,)
        Prices, rates, lives, upkeep and what is there now.
    costs : AlternativeCosts
        What each alternative costs at today's prices.

    Returns
    -------
    lifecycle : Lifecycle
        All of shape (A, B) or (A, B, n_year + 1).
    """
    yearly = streams(structure, values, costs)
    rate = values["money.discount_rate_real_frac"]
    found = measures(yearly, rate, ALTERNATIVES.index(structure.base_case))
    return Lifecycle(yearly, found, component_present_value(yearly, rate))
