"""Tools of a self-installation: one line a tool, shared by all tasks that the user's side does with it."""

from typing import Final

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_price import Route, is_by_user
from econ.installation.first_cost import Line
from econ.installation.tools import WAYS, Tool, ToolPrice, tool_choice, use_d, worn_count
from econ.kernel.arrays import BoolArray

WAY_WORDS: Final = {
    "own": "yours already",
    "borrow": "borrowed",
    "hire": "hired, tax in",
    "buy": "bought, less resale, tax in",
}


def tool_lines(route: Route) -> list[Line]:
    """Return one line a tool: owned or borrowed for nothing, else at the cheapest way.

    Parameters
    ----------
    route : Route
        Tasks and prices.

    Returns
    -------
    lines : list of Line
        A tool that no task of the user's side needs has quantity 0.
    """
    return [_tool_line(tool, route) for tool in route.tables.tools]


def free_way(tool: Tool, structure: Structure) -> str:
    """Return "own" or "borrow" for a tool that costs nothing, else nothing."""
    if tool.key in structure.tools_owned:
        return "own"
    return "borrow" if tool.key in structure.tools_borrowed else ""


def uses(tool: Tool, route: Route) -> BoolArray:
    """Return which tasks need a tool on this site, whoever does them, shape (B, T)."""
    table = route.rows.table
    needed = np.zeros((route.site.inputs.n_row, len(table)), dtype=np.bool_)
    for task, condition in zip(tool.tasks, tool.conditions, strict=True):
        needed[:, table.position(task)] |= route.site.facts[condition]
    return needed


def tool_price(tool: Tool, route: Route) -> ToolPrice:
    """Return the prices of a tool; one that wears is bought as often as the holes wear it out."""
    never = np.full(route.site.inputs.n_row, np.inf)
    drilled = route.number("site.wall_thickness_m") * route.site.quantities["kit_heads"]
    worn = worn_count(drilled, route.cost(tool.life)) if tool.life else 1.0
    return ToolPrice(
        buy_usd=route.cost(tool.buy) * worn if tool.buy else never,
        rent_usd_per_d=route.cost(tool.rent) if tool.rent else never,
        resale_frac=route.cost(tool.resale) if tool.resale else route.zeros(),
        minimum_hire_d=route.cost("minimum_hire_d"),
        sales_tax_frac=route.number("money.sales_tax_frac"),
    )


def _tool_line(tool: Tool, route: Route) -> Line:
    is_used = uses(tool, route) & is_by_user(route.rows)
    days = use_d(route.rows.elapsed_h, is_used, route.number("work.hours_per_day_h"))
    choice = tool_choice(tool_price(tool, route), days)
    free = free_way(tool, route.site.structure)
    cost = np.zeros_like(choice.cost_usd) if free else choice.cost_usd
    label = f"{tool.label} ({WAY_WORDS[free or WAYS[int(choice.way[0])]]})"
    needed = np.asarray(is_used.any(axis=1), dtype=np.float64)
    return Line(f"tool_{tool.key}", label, "tools", "self", "each", tool.source, needed, cost)
