"""What a way to go asks for beside its numbers: what to buy and hire, whom to ask, what to test and to look after."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult
from econ.evaluate.sheet import Sheet, point
from econ.evaluate.split import tool_plan
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_tools import ToolPlan
from econ.evaluate.wiring.window_unit import all_facts
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF, Alternative
from econ.kernel.arrays import BoolArray
from econ.tables.keeping import Row
from econ.tables.tasks import installation_tables

BOUGHT: Final = ("equipment", "materials")
"""Categories of first cost that are goods."""

CARRIAGE: Final = "freight_usd"
"""A line of the equipment that is no thing to carry home."""

MADE_OVER: Final = ("garage", "sunroom", "lower_level", "attic")
"""Kinds of rooms that may never have been permitted as living space."""

ENDS: Final = ("outdoor_wide", "outdoor_thin", "indoor_wide", "indoor_thin")
"""Joints of one line set: each pipe has one at each end."""

MOST_HEADS: Final = 8
"""Line sets whose joints are listed one by one; no set of the data has more."""


@dataclass(frozen=True, slots=True)
class Goods:
    """One thing to buy.

    Attributes
    ----------
    key, label : str
        Stable name; what it is, in plain words.
    quantity : float
        How many units of it. [any]
    unit : str
        Unit of the quantity.
    cost_usd : float
        What it comes to, before tax; tools with it. [USD]
    is_tool : bool
        A tool that is bought for the work.
    """

    key: str
    label: str
    quantity: float
    unit: str
    cost_usd: float
    is_tool: bool = False


@dataclass(frozen=True, slots=True)
class Hire:
    """One tool to hire: the days charged, the day on which it is first needed, and what for."""

    tool: str
    label: str
    days_d: float
    from_d: float
    cost_usd: float
    tasks: tuple[str, ...]


def named_facts(structure: Structure, sheet: Sheet) -> dict[str, bool]:
    """Return the facts of a case that lists depend on, likely values.

    Parameters
    ----------
    structure : Structure
        Of the case.
    sheet : Sheet
        Its numbers.

    Returns
    -------
    facts : dict of str to bool
        What is not known counts as the careful side.
    """
    inputs = Inputs(point(sheet), 1)
    kinds = [inputs.is_option(f"rooms[{at}].kind", *MADE_OVER) for at in range(len(structure.room_names))]
    more: dict[str, BoolArray] = {
        "lives_here": inputs.is_option("site.occupancy", "owner_lives_here", "not_known"),
        "lets": inputs.is_option("site.occupancy", "owner_lets"),
        "rents": inputs.is_option("site.occupancy", "tenant"),
        "association": ~inputs.is_option("site.association", "none"),
        "shared_circuit": inputs.is_option("site.circuit", "shared", "not_known"),
        "room_permit_unknown": np.logical_or.reduce(kinds),
        "has_helper": ~inputs.is_option("work.helper", "none"),
        "heats": ~inputs.is_option("use.heat", "no"),
    }
    return {name: bool(holds[0]) for name, holds in (all_facts(structure, inputs) | more).items()}


def asked_rows(rows: Sequence[Row], name: Alternative, facts: Mapping[str, bool]) -> tuple[Row, ...]:
    """Return the rows of a list that belong to a way on this site.

    Parameters
    ----------
    rows : sequence of Row
        The list.
    name : Alternative
        The way.
    facts : mapping of str to bool
        As `named_facts` gives them.

    Returns
    -------
    asked : tuple of Row
        In the order of the list.

    Raises
    ------
    KeyError
        If a row names a fact that is not there.
    """
    return tuple(row for row in rows if name in row.routes and all(facts[fact] for fact in row.conditions))


def shopping(way: AlternativeResult, plans: Sequence[ToolPlan] = ()) -> tuple[Goods, ...]:
    """Return what a way takes in goods, and the tools that are bought for it.

    Parameters
    ----------
    way : AlternativeResult
        The way.
    plans : sequence of ToolPlan
        How its tools are come by.

    Returns
    -------
    goods : tuple of Goods
        Lines of the first cost that hold something; tools last. A quote in one sum holds none.
    """
    items = way.line_items
    is_goods = [category in BOUGHT and key != CARRIAGE for key, category in zip(items.key, items.category, strict=True)]
    lines = [at for at, is_so in enumerate(is_goods) if is_so and items.quantity[0, at] > 0.0]
    goods = [
        Goods(
            items.key[at], items.label[at], float(items.quantity[0, at]), items.unit[at], float(items.amount_usd[0, at])
        )
        for at in lines
    ]
    tools = [Goods(plan.tool, plan.label, 1.0, "each", plan.cost_usd, True) for plan in plans if plan.way == "buy"]
    return (*goods, *tools)


def hires(way: AlternativeResult, plans: Sequence[ToolPlan]) -> tuple[Hire, ...]:
    """Return the tools to hire for a way.

    Parameters
    ----------
    way : AlternativeResult
        The way.
    plans : sequence of ToolPlan
        How its tools are come by.

    Returns
    -------
    hires : tuple of Hire
        In the order in which they are first needed.
    """
    starts = dict(zip(way.schedule.label, way.schedule.start_d[0].tolist(), strict=True))
    found = [
        Hire(plan.tool, plan.label, plan.hire_d, min(starts[task] for task in plan.tasks), plan.cost_usd, plan.tasks)
        for plan in plans
        if plan.way == "hire"
    ]
    return tuple(sorted(found, key=lambda hire: hire.from_d))


def plans_of(structure: Structure, sheet: Sheet, name: Alternative) -> tuple[ToolPlan, ...]:
    """Return how the tools of a way are come by; only own work takes tools of one's own.

    Parameters
    ----------
    structure : Structure
        Who does what; tools that are there or lent.
    sheet : Sheet
        Numbers of the case.
    name : Alternative
        The way.
    """
    if name is not ALTERNATIVES[SELF]:
        return ()
    return tool_plan(structure, point(sheet), installation_tables())


def joints(sheet: Sheet, name: Alternative) -> tuple[str, ...]:
    """Return the joints of a way's line sets, which are tested one by one; none where nothing is joined.

    Parameters
    ----------
    sheet : Sheet
        Numbers of the case.
    name : Alternative
        The way.
    """
    prefix = {ALTERNATIVES[SELF]: "kit", ALTERNATIVES[HIRED]: "hired"}.get(name)
    if prefix is None:
        return ()
    heads = round(sheet.entry(f"{prefix}.count").likely * sheet.entry(f"{prefix}.heads").likely)
    return tuple(f"{end}_{head}" for head in range(1, min(heads, MOST_HEADS) + 1) for end in ENDS)
