"""Tools of a self-installation: one line a tool, shared by all tasks that the user's side does with it."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_price import Route, is_by_user
from econ.installation.first_cost import Line
from econ.installation.tools import (
    WAYS,
    Tool,
    ToolChoice,
    ToolPrice,
    buy_usd,
    charged_d,
    hire_usd,
    tool_choice,
    use_d,
    worn_count,
)
from econ.kernel.arrays import BoolArray, FloatArray

WAY_WORDS: Final = {
    "own": "yours already",
    "borrow": "borrowed",
    "hire": "hired, tax in",
    "buy": "bought, tax in",
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
        A tool that no task of the user's side needs has quantity 0. One that is bought stands at its whole price: what
        it fetches afterwards comes later, see `tool_resale_usd`.
    """
    return [_tool_line(tool, route) for tool in route.tables.tools]


def tool_resale_usd(route: Route) -> FloatArray:
    """Return what the tools bought for the work fetch when it is done, shape (B,)."""
    total = route.zeros()
    for tool in route.tables.tools:
        if tool.resale and not free_way(tool, route.site.structure):
            is_used, _, choice = _chosen(tool, route)
            total = total + choice.resale_usd * is_used.any(axis=1)
    return total


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


@dataclass(frozen=True, slots=True)
class ToolPlan:
    """How one needed tool is come by, likely row.

    Attributes
    ----------
    tool, label : str
        Stable name; the tool in plain words.
    way : str
        One of WAYS.
    hire_d : float
        Days of hire; 0 where it is not hired. [day]
    cost_usd : float
        Net of resale, tax in. [USD]
    is_resold : bool
        What is bought is sold again afterwards.
    hire_usd, buy_usd : float
        What hiring it and what buying it would come to, tax in, resale taken off; infinite where there is no such way.
        [USD]
    tasks : tuple of str
        What it is needed for, in plain words.
    """

    tool: str
    label: str
    way: str
    hire_d: float
    cost_usd: float
    is_resold: bool
    hire_usd: float
    buy_usd: float
    tasks: tuple[str, ...]


def tool_plans(route: Route) -> tuple[ToolPlan, ...]:
    """Return how each tool that the user's side needs is come by.

    Parameters
    ----------
    route : Route
        Tasks and prices.

    Returns
    -------
    plans : tuple of ToolPlan
        Needed tools only, in the order of the list.
    """
    plans = (_tool_plan(tool, route) for tool in route.tables.tools)
    return tuple(plan for plan in plans if plan.tasks)


def _tool_plan(tool: Tool, route: Route) -> ToolPlan:
    is_used, days, choice = _chosen(tool, route)
    free, price = free_way(tool, route.site.structure), tool_price(tool, route)
    way = free or WAYS[int(choice.way[0])]
    hire = float(charged_d(days, price.minimum_hire_d)[0]) if way == "hire" else 0.0
    served = tuple(label for label, is_so in zip(route.rows.table.label, is_used[0], strict=True) if is_so)
    return ToolPlan(
        tool=tool.key,
        label=tool.label,
        way=way,
        hire_d=hire,
        cost_usd=0.0 if free else float(choice.cost_usd[0]),
        is_resold=bool(price.resale_frac[0] > 0.0),
        hire_usd=float(hire_usd(price, days)[0]),
        buy_usd=float(buy_usd(price)[0]),
        tasks=served,
    )


def _chosen(tool: Tool, route: Route) -> tuple[BoolArray, FloatArray, ToolChoice]:
    """Return the tasks that a tool is used for, its days and the cheapest way to it."""
    is_used: BoolArray = uses(tool, route) & is_by_user(route.rows)
    days = use_d(route.rows.elapsed_h, is_used, route.number("work.hours_per_day_h"))
    return is_used, days, tool_choice(tool_price(tool, route), days)


def _tool_line(tool: Tool, route: Route) -> Line:
    is_used, _, choice = _chosen(tool, route)
    free = free_way(tool, route.site.structure)
    cost = np.zeros_like(choice.cost_usd) if free else choice.cost_usd + choice.resale_usd
    label = f"{tool.label} ({WAY_WORDS[free or WAYS[int(choice.way[0])]]})"
    needed = np.asarray(is_used.any(axis=1), dtype=np.float64)
    return Line(f"tool_{tool.key}", label, "tools", "self", "each", tool.source, needed, cost, tool.tasks)
