"""Visits of electrician and contractor to a self-installation: what is billed in each, with what minimum."""

from dataclasses import dataclass

import numpy as np

from econ.evaluate.wiring.installation_price import Route, circuit_package_usd, contractor_task_usd, sets, spread_price
from econ.installation.first_cost import Line
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, PARTY_CODE, SELF_PARTY
from econ.installation.visit import visit_of, visit_total_usd
from econ.kernel.arrays import BoolArray, FloatArray

COMMISSIONING = ("connect_lines", "leak_check")
"""Tasks for which a contractor's visit to an owner's kit has a usual price."""


@dataclass(frozen=True, slots=True, eq=False)
class VisitPrice:
    """What a party bills.

    Attributes
    ----------
    charge_usd, floor_usd : ndarray, shape (B, T)
        Of each task; least of a visit in which it is done. [USD] [USD]
    trip_usd : ndarray, shape (B,)
        For coming. [USD]
    """

    charge_usd: FloatArray
    floor_usd: FloatArray
    trip_usd: FloatArray


def electrician_price(route: Route, is_own_circuit: BoolArray) -> VisitPrice:
    """Return what the electrician bills: the circuit as a package, the rest by the hour, at least the call-out minimum.

    Parameters
    ----------
    route : Route
        Tasks and prices.
    is_own_circuit : ndarray, shape (B,)
        The user's side ran the circuit: connecting it costs at least the price of taking it over.
    """
    table = route.rows.table
    charge = np.where(
        route.rows.party == ELECTRICIAN_PARTY,
        route.rows.hours_h * route.cost("electrician_hourly_usd_per_h")[:, None],
        0.0,
    )
    circuit = table.position("circuit")
    packages = sets(route) * circuit_package_usd(route)
    charge[:, circuit] = np.where(route.is_done("circuit", ELECTRICIAN_PARTY), packages, 0.0)
    call_out = route.cost("electrician_call_out_usd")
    floor = np.repeat(call_out[:, None], len(table), axis=1)
    takes_over = np.maximum(call_out, route.cost("final_connection_usd"))
    floor[:, table.position("final_connection")] = np.where(is_own_circuit, takes_over, call_out)
    return VisitPrice(charge, floor, route.zeros())


def contractor_price(route: Route) -> VisitPrice:
    """Return what the contractor bills: hours and a trip a visit, one that commissions at least its usual price."""
    table = route.rows.table
    commissions = np.array([key in COMMISSIONING for key in table.key], dtype=np.bool_)
    floor = np.where(commissions, route.cost("commission_owner_kit_usd")[:, None], 0.0)
    return VisitPrice(contractor_task_usd(route), floor, route.cost("travel_usd"))


def visits_usd(route: Route, party: int, price: VisitPrice) -> FloatArray:
    """Return what each visit of a party comes to, shape (B, V)."""
    rows = route.rows
    is_there = rows.is_active & (rows.party == party) & (rows.hours_h > 0.0)
    is_done = is_there[:, :, None] & visit_of(rows.table.visit, route.site.facts["permit_needed"])
    return visit_total_usd(price.charge_usd, price.floor_usd, price.trip_usd, is_done)


def is_circuit_of_user(route: Route) -> BoolArray:
    """Return whether the user's side runs the circuit, shape (B,)."""
    own: BoolArray = route.is_done("circuit", SELF_PARTY) | route.is_done("circuit", HELPER_PARTY)
    return own


def electrician_line(route: Route) -> Line:
    """Return the electrician's visits apart from the price of the circuit, which has a line of its own."""
    price = electrician_price(route, is_circuit_of_user(route))
    in_visit = visit_of(route.rows.table.visit, route.site.facts["permit_needed"])
    circuit = route.rows.table.position("circuit")
    package = price.charge_usd[:, circuit, None] * in_visit[:, circuit]
    label = "Electrician: terminals, final connection and voltage test"
    other = visits_usd(route, ELECTRICIAN_PARTY, price) - package
    return _visit_line(route, "electrician", label, "electrician_hourly_usd_per_h", other)


def contractor_line(route: Route) -> Line:
    """Return the contractor's visits."""
    visits = visits_usd(route, CONTRACTOR_PARTY, contractor_price(route))
    return _visit_line(route, "contractor", "Contractor's part of the work", "contractor_billed_usd_per_h", visits)


def _visit_line(route: Route, party: str, label: str, rate: str, visits: FloatArray) -> Line:
    count = (visits > 0.0).sum(axis=1).astype(np.float64)
    price = spread_price(visits.sum(axis=1), count)
    tasks = route.tasks_for(PARTY_CODE[party])
    return Line(f"{party}_visit", label, "labour", party, "visit", route.tables.source[rate], count, price, tasks)
