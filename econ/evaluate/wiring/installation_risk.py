"""What can go wrong in the work of one route: expected money and hours, kind by kind, for who does what."""

import numpy as np

from econ.evaluate.wiring.installation_price import Route
from econ.installation.first_cost import Line, tasks_of
from econ.installation.mishap import BY_USER, Doubt, exposed_tasks, exposure_frac, total_chance_frac
from econ.kernel.arrays import FloatArray


def helper_chance_frac(route: Route) -> FloatArray:
    """Return the chance of a mishap in the helper's hands over that in the user's, shape (B,)."""
    is_handyman = route.site.inputs.is_option("work.helper", "handyman")
    frac: FloatArray = np.where(is_handyman, route.number("work.handyman_mishap_frac"), 1.0)
    return frac


def doubts(route: Route) -> tuple[Doubt, ...]:
    """Return every kind of mishap that tasks of a route can meet, in the order of the table.

    Parameters
    ----------
    route : Route
        Tasks and who does them.

    Returns
    -------
    doubts : tuple of Doubt
        Those in nobody's exposed hands have no chance.
    """
    helper_frac = helper_chance_frac(route)
    found = []
    for mishap in route.tables.mishaps:
        tasks = exposed_tasks(mishap, route.rows.table)
        if tasks:
            exposure = exposure_frac(mishap, route.rows, helper_frac)
            chance = total_chance_frac(route.number(mishap.chance), exposure)
            found.append(Doubt(mishap, tasks, chance, route.number(mishap.cost), route.number(mishap.own)))
    return tuple(found)


def mishap_lines(route: Route) -> list[Line]:
    """Return the allowance for each kind of mishap, chance times cost, and the own hours expected to go into them.

    Parameters
    ----------
    route : Route
        Tasks and who does them.

    Returns
    -------
    lines : list of Line
        Assumptions all.
    """
    found = doubts(route)
    lines = [_allowance(doubt) for doubt in found]
    hours, value = _expected_h(found, route), route.number("work.hour_value_usd_per_h")
    label, source = "Own hours for what goes wrong: chance times hours", "assumption: installation/mishaps"
    time = Line("mishap_time", label, "own_time", "self", "hour", source, hours, value, tasks_of(lines))
    return [*lines, time]


def mishap_own_h(route: Route) -> FloatArray:
    """Return the own hours that mishaps are expected to take, shape (B,)."""
    return _expected_h(doubts(route), route)


def mishap_by_task(route: Route) -> tuple[FloatArray, FloatArray]:
    """Return what mishaps are expected to cost and to take, by the task they hang on, each shape (B, T).

    The same figures as those of `mishap_lines`, apart from its bound of a chance at 1.
    """
    usd, own = np.zeros(route.rows.party.shape), np.zeros(route.rows.party.shape)
    helper_frac = helper_chance_frac(route)
    for mishap in route.tables.mishaps:
        chance = route.number(mishap.chance)[:, None] * exposure_frac(mishap, route.rows, helper_frac)
        usd += chance * route.number(mishap.cost)[:, None]
        own += chance * route.number(mishap.own)[:, None]
    return usd, own


def _allowance(doubt: Doubt) -> Line:
    mishap = doubt.mishap
    party, source = "self" if mishap.by == BY_USER else "contractor", f"assumption: {mishap.chance}, {mishap.cost}"
    label = f"{mishap.label}: chance times cost"
    key = f"mishap_{mishap.key}"
    return Line(key, label, "allowance", party, "chance", source, doubt.chance_frac, doubt.cost_usd, doubt.tasks)


def _expected_h(found: tuple[Doubt, ...], route: Route) -> FloatArray:
    return sum((doubt.chance_frac * doubt.own_h for doubt in found), route.zeros())
