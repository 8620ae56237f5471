"""First cost of each route, line by line."""

from dataclasses import replace

import numpy as np

from econ.evaluate.wiring.installation_own import own_lines
from econ.evaluate.wiring.installation_price import (
    Route,
    circuit_lines,
    contractor_labour_usd,
    disposal_line,
    electrician_h,
    joined,
    material_lines,
    permit_lines,
    set_price_usd,
    sets,
    spread_price,
    tax_line,
)
from econ.evaluate.wiring.installation_risk import mishap_lines
from econ.evaluate.wiring.installation_tools import tool_lines
from econ.evaluate.wiring.installation_visits import contractor_line, electrician_line
from econ.installation.first_cost import Line, amount_of_usd, tasks_of
from econ.installation.quote import missing_scope
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY
from econ.kernel.arrays import FloatArray

_GOODS = ("equipment", "materials")

HIGHEST_LOW_V = 180.0
"""V; between the two voltages of outlets in homes."""


def self_install_lines(route: Route) -> list[Line]:
    """Return the lines of a self-installation, tasks of other parties at their prices.

    Parameters
    ----------
    route : Route
        Tasks and prices.

    Returns
    -------
    lines : list of Line
        The same lines for every case; what is not needed has quantity 0.
    """
    one = np.ones(route.site.inputs.n_row)
    price = set_price_usd(route, "kit", "kit.price_usd")
    goods = [
        Line("kit", "Ductless kit", "equipment", "self", "each", "case: kit.price_usd", sets(route), price),
        route.cost_line("freight_usd", "equipment", "self", one),
        *material_lines(route, route.cost("materials_markup_frac")),
    ]
    is_circuit = route.is_done("circuit", ELECTRICIAN_PARTY)
    return joined(
        goods,
        tool_lines(route),
        circuit_lines(route, is_circuit),
        [electrician_line(route), contractor_line(route)],
        permit_lines(route, route.site.facts["new_circuit"], one > 0.0),
        mishap_lines(route),
        [disposal_line(route), tax_line(route, amount_of_usd(goods, _GOODS, len(one)), tasks_of(goods))],
        own_lines(route),
    )


def window_units_lines(route: Route) -> list[Line]:
    """Return the lines of window units.

    Parameters
    ----------
    route : Route
        Tasks and prices.

    Returns
    -------
    lines : list of Line
        The same lines for every case.
    """
    count, price = route.number("window.count"), route.number("window.price_usd")
    unit = Line("window_unit", "Window unit", "equipment", "self", "each", "case: window.price_usd", count, price)
    facts = route.site.facts
    goods = [unit, *material_lines(route, route.cost("materials_markup_frac"))]
    is_high, is_outlet = route.number("window.supply_v") > HIGHEST_LOW_V, facts["outlet_needed"]
    permit = facts["permit_needed"] & is_outlet
    return joined(
        goods,
        [
            route.cost_line("outlet_120v_usd", "labour", "electrician", count * (is_outlet & ~is_high)),
            route.cost_line("outlet_240v_usd", "labour", "electrician", count * (is_outlet & is_high)),
            route.cost_line("outlet_permit_usd", "permit", "self", permit.astype(float)),
            _opening_labour(route),
            route.cost_line("travel_usd", "labour", "contractor", 2.0 * facts["cut_structural"].astype(float)),
            route.cost_line("opening_permit_usd", "permit", "self", facts["wall_permit"].astype(float)),
            disposal_line(route),
            tax_line(route, amount_of_usd(goods, _GOODS, len(count)), tasks_of(goods)),
        ],
        _own_lines_with_opening(route),
    )


def _own_lines_with_opening(route: Route) -> list[Line]:
    """Return helper, own hours and incentive, own hours of cutting the wall apart: they are not spent again."""
    lines = own_lines(route)
    at = next(index for index, line in enumerate(lines) if line.key == "own_time")
    cut_h = route.rows.own_h[:, route.rows.table.position("cut_light")]
    rest = replace(lines[at], quantity=lines[at].quantity - cut_h)
    opening = replace(lines[at], key="own_opening_time", label="Own hours, the opening in the wall", quantity=cut_h)
    return [*lines[:at], rest, opening, *lines[at + 1 :]]


def _opening_labour(route: Route) -> Line:
    """Return what a contractor bills for looking at a wall and cutting it; it comes once for each."""
    rows = route.rows
    hours: FloatArray = np.where(rows.party == CONTRACTOR_PARTY, rows.hours_h, 0.0).sum(axis=1)
    price = spread_price(contractor_labour_usd(route), hours)
    source = route.tables.source["contractor_billed_usd_per_h"]
    label = "Contractor: look at the wall, cut and frame the opening"
    tasks = route.tasks_for(CONTRACTOR_PARTY)
    return Line("opening_labour", label, "labour", "contractor", "hour", source, hours, price, tasks)


def contracted_install_lines(route: Route) -> list[Line]:
    """Return the lines of a hired installation: built up from its parts, or the quote with what it leaves out.

    Parameters
    ----------
    route : Route
        Tasks and prices.

    Returns
    -------
    lines : list of Line
        The same lines for every case of a structure.
    """
    lines = _quoted_lines(route) if route.site.structure.has_quote else built_up_lines(route)
    return joined(lines, mishap_lines(route), own_lines(route))


def built_up_lines(route: Route) -> list[Line]:
    """Return a contractor's price from its parts; billed labour holds overhead and profit, so none is added on top.

    Parameters
    ----------
    route : Route
        Tasks and prices of the hired way.

    Returns
    -------
    lines : list of Line
        Whatever a quote says.
    """
    n_row = route.site.inputs.n_row
    one, markup = np.ones(n_row), route.cost("materials_markup_frac")
    materials = material_lines(route, markup)
    goods_cost = amount_of_usd(materials, _GOODS, n_row) / markup + _trade_usd(route)
    lines = joined(
        [_hired_equipment(route)],
        materials,
        [_hired_labour(route), _hired_electrician(route)],
        circuit_lines(route, route.is_done("circuit", ELECTRICIAN_PARTY)),
        permit_lines(route, route.site.facts["new_circuit"], one > 0.0),
        [
            route.cost_line("travel_usd", "labour", "contractor", one),
            disposal_line(route),
            tax_line(route, goods_cost, tasks_of(materials)),
        ],
    )
    total = sum((line.quantity * line.unit_price_usd for line in lines), np.zeros(n_row))
    share = route.cost("callback_reserve_frac")
    source = route.tables.source["callback_reserve_frac"]
    label = "Contractor's reserve for call-backs, as a share of the price"
    reserve = Line("callback_reserve", label, "allowance", "contractor", "USD", source, total / (1.0 - share), share)
    return [*lines, replace(reserve, tasks=tasks_of(lines))]


def _trade_usd(route: Route) -> FloatArray:
    """Return what all sets cost the contractor, shape (B,)."""
    return sets(route) * set_price_usd(route, "hired", "hired.equipment_usd")


def _hired_equipment(route: Route) -> Line:
    price = set_price_usd(route, "hired", "hired.equipment_usd") * route.cost("equipment_markup_frac")
    source = f"case: hired.equipment_usd; markup {route.tables.source['equipment_markup_frac']}"
    label = "Ductless set with the contractor's markup"
    return Line("hired_set", label, "equipment", "contractor", "each", source, sets(route), price)


def _hired_labour(route: Route) -> Line:
    rows = route.rows
    hours: FloatArray = np.where(rows.party == CONTRACTOR_PARTY, rows.hours_h, 0.0).sum(axis=1)
    price = spread_price(contractor_labour_usd(route), hours)
    source = route.tables.source["contractor_billed_usd_per_h"]
    label = "Contractor's crew at billed rates"
    tasks = route.tasks_for(CONTRACTOR_PARTY)
    return Line("contractor_labour", label, "labour", "contractor", "hour", source, hours, price, tasks)


def _hired_electrician(route: Route) -> Line:
    source = route.tables.source["electrician_hourly_usd_per_h"]
    rate = route.cost("electrician_hourly_usd_per_h")
    label = "Electrician: terminals, final connection and voltage test"
    hours, tasks = electrician_h(route), route.tasks_for(ELECTRICIAN_PARTY)
    return Line("electrician_hours", label, "labour", "electrician", "hour", source, hours, rate, tasks)


def _quoted_lines(route: Route) -> list[Line]:
    """Return the quote as one line, and from our own items what it leaves out or does not mention.

    Equipment counts as left out only where the quote says so: a total for a job includes its main part.
    """
    inputs = route.site.inputs
    said = {
        part: inputs.option(f"quote.{part}") for part in ("equipment", "electrical", "permit", "removal", "warranty")
    }
    missing = missing_scope(said)
    total = route.number("quote.total_usd")
    one, none = np.ones(inputs.n_row), np.zeros(inputs.n_row)
    lines = [Line("quote", "Contractor's quote", "labour", "contractor", "each", "case: quote.total_usd", one, total)]
    if said["equipment"] == "no":
        lines.append(_hired_equipment(route))
    if "electrical" in missing:
        lines += [*circuit_lines(route, route.is_done("circuit", ELECTRICIAN_PARTY)), _hired_electrician(route)]
    if "permit" in missing:
        lines += permit_lines(route, route.site.facts["new_circuit"], one > none)
    if "removal" in missing:
        lines.append(disposal_line(route))
    return lines
