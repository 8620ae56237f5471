"""Prices shared by all routes: lines of materials, labour, permits and own time."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.evaluate.wiring.installation_work import Site
from econ.installation.first_cost import Line
from econ.installation.labour import CIRCUIT_AT_M, circuit_price_usd, crew_rate_usd_per_h
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, SELF_PARTY, TaskRows
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import BoolArray, FloatArray
from econ.tables.tasks import InstallationTables

_CIRCUIT: Final = ("circuit",)


@dataclass(frozen=True, slots=True, eq=False)
class Route:
    """One route on one site, ready to be priced."""

    site: Site
    rows: TaskRows
    tables: InstallationTables

    def cost(self, key: str) -> FloatArray:
        """Return one figure of the cost table a row, shape (B,)."""
        return self.site.inputs.cost(key)

    def number(self, path: str) -> FloatArray:
        """Return one value of the case a row, shape (B,)."""
        return self.site.inputs.number(path)

    def is_done(self, task: str, party: int) -> BoolArray:
        """Return whether a task is needed and done by a party, shape (B,)."""
        at = self.rows.table.position(task)
        done: BoolArray = self.rows.is_active[:, at] & (self.rows.party[:, at] == party)
        return done

    def cost_line(self, key: str, category: str, party: str, quantity: FloatArray, tasks: tuple[str, ...] = ()) -> Line:
        """Return a line priced straight from the cost table, in its words; `tasks` are those that can move it."""
        unit, words, source = "m" if key.endswith("_per_m") else "each", self.tables.label[key], self.tables.source[key]
        return Line(key, words, category, party, unit, source, quantity, self.cost(key), tasks)

    def tasks_for(self, *parties: int) -> tuple[str, ...]:
        """Return the tasks of the list that any of some parties does at all."""
        may: BoolArray = np.any(self.rows.table.may[:, list(parties)], axis=1)
        return tuple(key for key, is_so in zip(self.rows.table.key, may, strict=True) if is_so)

    def zeros(self) -> FloatArray:
        """Return nothing for every row, shape (B,)."""
        return np.zeros(self.site.inputs.n_row)


def sets(route: Route) -> FloatArray:
    """Return how many outdoor units a ductless route sets up, each on a circuit of its own, shape (B,)."""
    is_hired = route.rows.table.alternative == Alternative.CONTRACTED_INSTALL
    return route.site.quantities["hired_sets" if is_hired else "kit_sets"]


def set_price_usd(route: Route, prefix: str, price_path: str) -> FloatArray:
    """Return the price of one outdoor unit with all its indoor units, shape (B,)."""
    more_heads = route.number(f"{prefix}.heads") - 1.0
    price: FloatArray = route.number(price_path) + more_heads * route.number(f"{prefix}.extra_head_usd")
    return price


def is_by_user(rows: TaskRows) -> BoolArray:
    """Return which needed tasks the user or the helper does, shape (B, T)."""
    own: BoolArray = rows.is_active & ((rows.party == SELF_PARTY) | (rows.party == HELPER_PARTY))
    return own


def material_lines(route: Route, markup_frac: FloatArray, only: int | None = None) -> list[Line]:
    """Return one line a material; what goes into a circuit that an electrician makes is in its price.

    Parameters
    ----------
    route : Route
        Tasks and prices.
    markup_frac : ndarray, shape (B,)
        Factor on what the contractor supplies. [dimensionless]
    only : int or None
        One task's materials; None for those of all.

    Returns
    -------
    lines : list of Line
        A material of several tasks is one line, at the mean price of its parts.
    """
    quantity: dict[str, FloatArray] = {}
    marked_up: dict[str, FloatArray] = {}
    tasks: dict[str, list[str]] = {}
    for task, materials in enumerate(route.rows.table.materials):
        if only not in (None, task):
            continue
        party = route.rows.party[:, task]
        is_supplied = party == CONTRACTOR_PARTY
        if route.rows.table.alternative == Alternative.CONTRACTED_INSTALL:
            is_supplied = np.ones_like(is_supplied)
        in_package = (party == ELECTRICIAN_PARTY) & (route.rows.table.key[task] == "circuit")
        is_used = (route.rows.is_active[:, task] & ~in_package) * route.site.quantities[route.rows.table.per[task]]
        factor = np.where(is_supplied, markup_frac, 1.0)
        for material in materials:
            amount = is_used * route.site.quantities[material.quantity]
            quantity[material.key] = quantity.get(material.key, route.zeros()) + amount
            marked_up[material.key] = marked_up.get(material.key, route.zeros()) + amount * factor
            tasks.setdefault(material.key, []).append(route.rows.table.key[task])
    return [
        replace(_marked_up_line(route, key, amount, marked_up[key]), tasks=tuple(tasks[key]))
        for key, amount in quantity.items()
    ]


def _marked_up_line(route: Route, key: str, quantity: FloatArray, marked_up: FloatArray) -> Line:
    """Return one material's line: how much of it, at its price with the markup of what the contractor supplies."""
    factor = np.divide(marked_up, quantity, out=np.ones_like(marked_up), where=quantity > 0.0)
    plain = route.cost_line(key, "materials", "self", quantity)
    return replace(plain, unit_price_usd=plain.unit_price_usd * factor)


def circuit_lines(route: Route, is_circuit: BoolArray) -> list[Line]:
    """Return the circuit as a package by distance, the spaces in the panel it needs, and what protects it.

    Parameters
    ----------
    route : Route
        Tasks and prices.
    is_circuit : ndarray, shape (B,)
        Whether an electrician makes a circuit.

    Returns
    -------
    lines : list of Line
        Panel spaces are priced where they are missing or not known.
    """
    inputs = route.site.inputs
    price = circuit_package_usd(route)
    lacks_space = is_circuit & inputs.is_option("site.panel_spaces", "no", NOT_KNOWN)
    source = route.tables.source["circuit_10m_exposed_usd"]
    label = "New circuit with disconnect, by distance from the panel"
    return [
        Line("circuit", label, "labour", "electrician", "circuit", source, is_circuit * sets(route), price, _CIRCUIT),
        route.cost_line("panel_spaces_usd", "labour", "electrician", lacks_space * sets(route), _CIRCUIT),
        *_protection_lines(route),
    ]


def circuit_package_usd(route: Route) -> FloatArray:
    """Return what an electrician takes for the circuit with its materials, by distance and voltage, shape (B,)."""
    inputs = route.site.inputs
    per_wiring = [
        np.stack([route.cost(f"circuit_{distance:.0f}m_{wiring}_usd") for distance in CIRCUIT_AT_M], axis=1)
        for wiring in ("exposed", "fished")
    ]
    is_fished = inputs.is_option("site.wiring", "fished", NOT_KNOWN)
    price_at = np.where(is_fished[:, None], per_wiring[1], per_wiring[0])
    price = circuit_price_usd(route.number("site.panel_distance_m"), price_at)
    return price * np.where(inputs.is_option("kit.volts", "120"), route.cost("circuit_120v_frac"), 1.0)


def _protection_lines(route: Route) -> list[Line]:
    """Return ground-fault protection and the outlet for service, where the code in force asks for them.

    A circuit that the user runs carries its own protection among its materials.
    """
    facts = route.site.facts
    is_adder = facts["ground_fault"] & ~route.is_done("circuit", SELF_PARTY)
    return [
        route.cost_line("ground_fault_adder_usd", "labour", "electrician", is_adder * sets(route), _CIRCUIT),
        route.cost_line("service_receptacle_usd", "labour", "electrician", facts["receptacle_lacks"].astype(float)),
    ]


def electrician_h(route: Route) -> FloatArray:
    """Return the electrician's hours apart from the circuit and outlet, which have their own prices, shape (B,)."""
    table, rows = route.rows.table, route.rows
    is_hourly = np.array([key not in ("circuit", "outlet") for key in table.key], dtype=np.bool_)
    hours: FloatArray = np.where(rows.party == ELECTRICIAN_PARTY, rows.hours_h * is_hourly, 0.0).sum(axis=1)
    return hours


def contractor_labour_usd(route: Route) -> FloatArray:
    """Return what the contractor bills for hours, shape (B,)."""
    labour: FloatArray = contractor_task_usd(route).sum(axis=1)
    return labour


def contractor_task_usd(route: Route) -> FloatArray:
    """Return what the contractor bills for each task, shape (B, T): shared ones half at the mate's rate."""
    rows = route.rows
    rate = crew_rate_usd_per_h(
        rows.table.crew_count > 1.0,
        route.cost("contractor_billed_usd_per_h"),
        route.cost("contractor_helper_billed_usd_per_h"),
    )
    charge: FloatArray = np.where(rows.party == CONTRACTOR_PARTY, rows.hours_h * rate, 0.0)
    return charge


def permit_lines(route: Route, has_circuit: BoolArray, has_mechanical: BoolArray) -> list[Line]:
    """Return the permits: mechanical for the set, electrical for a new circuit, where permits are needed."""
    is_needed = route.site.facts["permit_needed"]
    return [
        route.cost_line("mechanical_permit_usd", "permit", "self", (is_needed & has_mechanical).astype(float)),
        route.cost_line("electrical_permit_usd", "permit", "self", (is_needed & has_circuit).astype(float)),
    ]


def disposal_line(route: Route) -> Line:
    """Return what it costs to bring the old units where their refrigerant is recovered."""
    old = np.where(route.site.facts["has_old_units"], route.site.quantities["old_count"], 0.0)
    return route.cost_line("window_drop_off_usd", "disposal", "self", old)


def tax_line(route: Route, taxable_usd: FloatArray, tasks: tuple[str, ...]) -> Line:
    """Return the sales tax on an amount of goods, which some tasks use."""
    rate, source = route.number("money.sales_tax_frac"), "case: money.sales_tax_frac"
    return Line("sales_tax", "Sales tax on goods", "tax", "self", "USD", source, taxable_usd, rate, tasks)


def spread_price(amount_usd: FloatArray, quantity: FloatArray) -> FloatArray:
    """Return the unit price that makes a quantity cost an amount; 0 where there is no quantity, shape (B,)."""
    price: FloatArray = np.divide(amount_usd, quantity, out=np.zeros_like(amount_usd), where=quantity > 0.0)
    return price


def joined(*groups: Sequence[Line]) -> list[Line]:
    """Return several groups of lines as one list."""
    return [line for group in groups for line in group]
