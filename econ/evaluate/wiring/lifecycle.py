"""From a case's values and each alternative's costs to yearly streams and life-cycle measures."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.funding import financing, financing_terms, is_let, letting, option
from econ.evaluate.wiring.later import disposal_usd, has_old_units, kept_frac, repairs
from econ.installation.warranty import Warranty
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.lifecycle.borrowing import Terms
from econ.lifecycle.discount import present_value
from econ.lifecycle.measures import Measures, component_present_value, measures
from econ.lifecycle.replacement import (
    Component,
    disposal_stream,
    remaining_life_yr,
    replacement_stream,
    residual_value,
)
from econ.lifecycle.service import yearly_cost, yearly_upkeep
from econ.lifecycle.streams import Streams, escalated_stream

Values = Mapping[str, FloatArray]


def nothing_usd() -> FloatArray:
    """Return no money, for every way and row, shape (1, 1)."""
    return np.zeros((1, 1))


@dataclass(frozen=True, slots=True, eq=False)
class AlternativeCosts:
    """What each alternative costs at today's prices, in the order of ALTERNATIVES.

    Attributes
    ----------
    first_usd : ndarray, shape (A, B)
        Everything paid at the start, own time included, incentives taken off, resale of the old units left out. [USD]
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
    measures_at_zero_hour : tuple of Component
        The same with own hours at nothing.
    own_first_usd, own_fitting_usd : ndarray, shape (A, B)
        Own hours, priced, within `first_usd` and `fitting_usd`. [USD]
    own_upkeep_usd_per_yr : ndarray, shape (A, B)
        Own hours, priced, within `added_upkeep_usd_per_yr`. [USD/year]
    tool_resale_usd : ndarray, shape (A, B)
        What tools bought for the work fetch afterwards: `first_usd` holds their whole price. [USD]
    incentive_usd : ndarray, shape (A, B)
        What incentives take off `first_usd`. [USD]
    warranties : tuple of Warranty
        What each way's warranty pays.
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
    measures_at_zero_hour: tuple[Component, ...] = ()
    own_first_usd: FloatArray = field(default_factory=nothing_usd)
    own_fitting_usd: FloatArray = field(default_factory=nothing_usd)
    own_upkeep_usd_per_yr: FloatArray = field(default_factory=nothing_usd)
    tool_resale_usd: FloatArray = field(default_factory=nothing_usd)
    incentive_usd: FloatArray = field(default_factory=nothing_usd)
    warranties: tuple[Warranty, ...] = ()

    @property
    def cash_usd(self) -> FloatArray:
        """Money paid at the start, incentives taken off, own hours left out, shape (A, B)."""
        cash: FloatArray = self.first_usd - self.own_first_usd
        return cash

    @property
    def price_usd(self) -> FloatArray:
        """Money to be found at the start, which may be borrowed: an incentive comes later, shape (A, B)."""
        price: FloatArray = self.cash_usd + self.incentive_usd
        return price

    def at_zero_hour(self) -> "AlternativeCosts":
        """Return the same costs with own hours at nothing."""
        return replace(
            self,
            first_usd=self.cash_usd,
            fitting_usd=self.fitting_usd - self.own_fitting_usd,
            added_upkeep_usd_per_yr=self.added_upkeep_usd_per_yr - self.own_upkeep_usd_per_yr,
            measures=self.measures_at_zero_hour,
        )


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
        Present value by piece, as `econ.lifecycle.measures.component_present_value`. [USD]
    lcc_at_zero_hour_usd : ndarray, shape (A, B)
        Life-cycle cost with own hours at nothing. [USD]
    by_warranty_usd : ndarray, shape (A, B)
        Expected repairs of all years that a warranty pays, not discounted. [USD]
    terms : tuple of Terms or None
        What borrowed money comes to for each way, likely row.
    """

    streams: Streams
    measures: Measures
    component_usd: dict[str, FloatArray]
    lcc_at_zero_hour_usd: FloatArray
    by_warranty_usd: FloatArray
    terms: tuple[Terms | None, ...]


def _by_alternative(n_row: int, keep: FloatArray, window: FloatArray, own: FloatArray, hired: FloatArray) -> FloatArray:
    """Return four columns of rows as one array, in the order of ALTERNATIVES."""
    by_alternative = np.empty((len(ALTERNATIVES), n_row))
    by_alternative[KEEP], by_alternative[WINDOW], by_alternative[SELF], by_alternative[HIRED] = keep, window, own, hired
    return by_alternative


def _old_worth_usd(values: Values) -> FloatArray:
    """Return what the units there now would fetch."""
    worth: FloatArray = values["now.unit_worth_usd"] * values["now.units_count"] * has_old_units(values)
    return worth


def _in_service_d(costs: AlternativeCosts) -> FloatArray:
    """Return days to service, none for what is there already."""
    days = np.array(costs.in_service_d, dtype=np.float64)
    days[KEEP] = 0.0
    return days


def upkeep_usd_per_yr(values: Values, costs: AlternativeCosts) -> FloatArray:
    """Return yearly upkeep, shape (A, B); units there now need what new window units need. [USD/year]"""
    window = values["window.upkeep_usd_per_yr"]
    kept = window * has_old_units(values)
    own = values["kit.upkeep_usd_per_yr"]
    hired = values.get("hired.upkeep_usd_per_yr", own)
    return _by_alternative(costs.first_usd.shape[1], kept, window, own, hired) + costs.added_upkeep_usd_per_yr


def _units(values: Values, costs: AlternativeCosts) -> Component:
    """Return what wears out: the new units of each alternative, and those there now, replaced by new window units."""
    n_row = costs.first_usd.shape[1]
    again = values["costs.replacement_installation_frac"]
    fitting_share = _by_alternative(n_row, np.array(0.0), np.array(1.0), again, again)
    price = costs.equipment_usd + fitting_share * costs.fitting_usd
    worth = price.copy()
    price[SELF], price[HIRED] = _replaced_by(values, price)
    price[KEEP] = price[WINDOW] * has_old_units(values)
    kit_life, window_life = values["kit.life_yr"], values["window.life_yr"]
    life = _by_alternative(n_row, window_life, window_life, kit_life, values.get("hired.life_yr", kit_life))
    remaining = life.copy()
    worth[KEEP] = _old_worth_usd(values)
    own_life = values.get("now.unit_life_yr", window_life)
    remaining[KEEP] = remaining_life_yr(own_life, values["now.unit_age_yr"])
    return Component(worth, price, life, remaining, _in_service_d(costs) / DAYS_PER_YEAR)


def _replaced_by(values: Values, price: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return what later sets of the self-installed and of the hired way cost, by who puts them in then."""
    by = option(values, "later.replaced_by")
    own, hired = price[SELF].copy(), price[HIRED].copy()
    return (hired if by == "contractor" else own), (own if by == "yourself" else hired)


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


@dataclass(frozen=True, slots=True, eq=False)
class _Flows:
    """What does not hang on energy, each of shape (A, B, n_year + 1) but the first cost."""

    first_usd: FloatArray
    om_usd: FloatArray
    replacement_usd: FloatArray
    residual_usd: FloatArray
    repair_usd: FloatArray
    disposal_usd: FloatArray
    by_warranty_usd: FloatArray


def _flows(structure: Structure, values: Values, costs: AlternativeCosts) -> _Flows:
    """Return the yearly costs but energy, financing and letting."""
    n_year, (n_way, n_row) = structure.study_period_yr, costs.first_usd.shape
    units, lasting = _units(values, costs), _lasting(values, costs)
    parts = (units, lasting, *costs.measures)
    upkeep = upkeep_usd_per_yr(values, costs)
    first = costs.first_usd - _old_worth_usd(values)
    first[KEEP] = costs.first_usd[KEEP]
    residual = np.zeros((n_way, n_row, n_year + 1))
    kept = kept_frac(structure, values, n_row)
    residual[..., 1] = costs.tool_resale_usd
    residual[..., -1] += kept * (residual_value(units, n_year) + residual_value(lasting, n_year))
    residual[..., -1] += sum((residual_value(part, n_year) for part in costs.measures), np.zeros(()))
    mended = repairs(structure, values, units, costs.warranties)
    repair = np.zeros((n_way, n_row, n_year + 1))
    repair[..., 1:] = np.stack([each.cost_usd for each in mended])
    return _Flows(
        first_usd=first,
        om_usd=escalated_stream(yearly_upkeep(upkeep, upkeep[KEEP], _in_service_d(costs), n_year), np.array(0.0)),
        replacement_usd=sum(
            (replacement_stream(part, n_year) for part in parts[1:]), replacement_stream(parts[0], n_year)
        ),
        residual_usd=residual,
        repair_usd=repair,
        disposal_usd=disposal_stream(units, disposal_usd(values, n_row), n_year),
        by_warranty_usd=np.stack([each.by_warranty_usd.sum(axis=-1) for each in mended]),
    )


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
    return _streams(structure, values, costs, _flows(structure, values, costs))


def _streams(structure: Structure, values: Values, costs: AlternativeCosts, flows: _Flows) -> Streams:
    plain = Streams(
        first_usd=flows.first_usd,
        energy_usd=_energy_usd(structure, values, costs),
        om_usd=flows.om_usd,
        replacement_usd=flows.replacement_usd,
        residual_usd=flows.residual_usd,
        repair_usd=flows.repair_usd,
        disposal_usd=flows.disposal_usd,
        financing_usd=financing(structure, values, costs.price_usd),
    )
    if not is_let(values):
        return replace(plain, letting_usd=np.broadcast_to(np.zeros(()), plain.energy_usd.shape))
    cash = _flows(structure, values, costs.at_zero_hour())
    paid = replace(plain, om_usd=cash.om_usd, repair_usd=cash.repair_usd, replacement_usd=cash.replacement_usd)
    return replace(plain, letting_usd=letting(structure, values, costs.cash_usd, paid, _in_service_d(costs)))


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
    flows = _flows(structure, values, costs)
    yearly = _streams(structure, values, costs, flows)
    rate = values["money.discount_rate_real_frac"]
    found = measures(yearly, rate, ALTERNATIVES.index(structure.base_case))
    own_usd = _worth_usd(flows, rate) - _worth_usd(_flows(structure, values, costs.at_zero_hour()), rate)
    return Lifecycle(
        yearly,
        found,
        component_present_value(yearly, rate),
        found.lcc_usd - own_usd,
        flows.by_warranty_usd,
        financing_terms(values, costs.price_usd),
    )


def _worth_usd(flows: _Flows, rate_frac: FloatArray) -> FloatArray:
    """Return the present value of all flows told here, shape (A, B)."""
    later = flows.om_usd + flows.replacement_usd + flows.repair_usd + flows.disposal_usd - flows.residual_usd
    worth: FloatArray = flows.first_usd + present_value(later, rate_frac)
    return worth
