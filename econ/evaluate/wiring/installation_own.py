"""What the user's side brings and gets: the helper's wages, own hours, and the incentive with its conditions."""

from typing import Final

import numpy as np

from econ.evaluate.wiring.installation_price import Route
from econ.installation.first_cost import Line
from econ.installation.incentive import TERMS, is_asked_of, is_met
from econ.installation.task import HELPER_PARTY, SELF_PARTY
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import BoolArray, FloatArray

INCENTIVE_OF: Final = {
    Alternative.WINDOW_UNITS: "window",
    Alternative.SELF_INSTALL: "self",
    Alternative.CONTRACTED_INSTALL: "hired",
}
"""How the fields of each way's incentive are named."""


def helper_wage_usd_per_h(route: Route) -> FloatArray:
    """Return what an hour of the helper costs: nothing for a friend, shape (B,)."""
    is_option = route.site.inputs.is_option
    paid = np.where(is_option("work.helper", "paid"), route.number("work.helper_usd_per_h"), 0.0)
    wage: FloatArray = np.where(is_option("work.helper", "handyman"), route.number("work.handyman_usd_per_h"), paid)
    return wage


def own_lines(route: Route) -> list[Line]:
    """Return the helper's wages, the user's own hours and the incentive of the route.

    Parameters
    ----------
    route : Route
        Tasks and prices.

    Returns
    -------
    lines : list of Line
        Own hours apart from cash; the incentive is its amount times the chance of getting it, in every draw.
    """
    own_h, helper_h = route.rows.own_h.sum(axis=1), route.rows.helper_h.sum(axis=1)
    is_handyman = route.site.inputs.option("work.helper") == "handyman"
    path = "work.handyman_usd_per_h" if is_handyman else "work.helper_usd_per_h"
    label = "Handyman's hours" if is_handyman else "Helper's hours"
    wage, hour_value = helper_wage_usd_per_h(route), route.number("work.hour_value_usd_per_h")
    hands, value = route.tasks_for(SELF_PARTY, HELPER_PARTY), "case: work.hour_value_usd_per_h"
    return [
        Line("helper", label, "labour", "helper", "hour", f"case: {path}", helper_h, wage, hands),
        Line("own_time", "Own hours", "own_time", "self", "hour", value, own_h, hour_value, hands),
        incentive_line(route),
    ]


def incentive_line(route: Route) -> Line:
    """Return the incentive: its amount times its chance where its terms are met by who does what, else nothing."""
    path = f"money.incentive_{INCENTIVE_OF[Alternative(route.rows.table.alternative)]}"
    chance = np.where(incentive_is_met(route), route.number(f"{path}_frac"), 0.0)
    amount = 0.0 - route.number(f"{path}_usd")
    asked = np.logical_or.reduce([is_asked_of(route.rows.table, term) for term in TERMS])
    tasks = tuple(key for key, is_so in zip(route.rows.table.key, asked, strict=True) if is_so)
    label, source = "Incentive: amount times the chance of getting it", f"case: {path}_usd, {path}_frac, {path}_terms"
    return Line("incentive", label, "incentive", "self", "chance", source, chance, amount, tasks)


def incentive_is_met(route: Route) -> BoolArray:
    """Return whether the terms of the route's incentive are met by who does what, shape (B,)."""
    path = f"money.incentive_{INCENTIVE_OF[Alternative(route.rows.table.alternative)]}_terms"
    has_permit, is_option = route.site.facts["permit_needed"], route.site.inputs.is_option
    met: BoolArray = np.logical_or.reduce(
        [is_option(path, term) & is_met(route.rows, term, has_permit) for term in TERMS]
    )
    return met
