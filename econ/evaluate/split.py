"""Who should do what with which tools: the cheapest allowed split, each task's margin, and how tools are come by."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_price import Route
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_split import split_site
from econ.evaluate.wiring.installation_tools import ToolPlan, tool_plans
from econ.evaluate.wiring.installation_work import route_rows, site
from econ.installation.split import Margins, margins, split_cost
from econ.installation.split_programme import best_split
from econ.kernel.alternative import PARTIES, Alternative, Party
from econ.kernel.arrays import FloatArray
from econ.tables.tasks import InstallationTables


@dataclass(frozen=True, slots=True)
class TaskMargin:
    """One task's make-or-buy margin, all other tasks held as they are now.

    Attributes
    ----------
    task, label : str
        Stable name; what is done, in plain words.
    now, best : Party
        Who does it now, and in the cheapest split.
    hired_by : Party or None
        The cheaper trade that may do it.
    extra_cash_usd : float
        Cash more if that trade did it than if the user did; NaN where one of both may not. [USD]
    saved_h : float
        Hours of the user that this saves; NaN where one of both may not. [hour]
    flip_usd_per_h : float
        Value of the user's hour at which both cost the same; NaN where there is nothing to choose. [USD/hour]
    """

    task: str
    label: str
    now: Party
    best: Party
    hired_by: Party | None
    extra_cash_usd: float
    saved_h: float
    flip_usd_per_h: float


@dataclass(frozen=True, slots=True)
class SplitAdvice:
    """The cheapest split beside the present one, likely values.

    Attributes
    ----------
    tasks : tuple of TaskMargin
        In the order of the work.
    hour_value_usd_per_h : float
        Value of the user's hour that the best split goes by. [USD/hour]
    saved_cash_usd, saved_h : float
        Cash and own hours that the best split saves against the present one; below 0 where it takes more. [USD] [hour]
    """

    tasks: tuple[TaskMargin, ...]
    hour_value_usd_per_h: float
    saved_cash_usd: float
    saved_h: float

    @property
    def parties(self) -> dict[str, str]:
        """Who does each task in the best split, as a case says it."""
        return {margin.task: margin.best.value for margin in self.tasks}

    @property
    def saved_usd(self) -> float:
        """What the best split saves, own hours priced. [USD]"""
        return self.saved_cash_usd + self.hour_value_usd_per_h * self.saved_h


def split_advice(structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables) -> SplitAdvice:
    """Return the cheapest allowed split and each task's margin in the present one.

    Parameters
    ----------
    structure : Structure
        Who does what now; tools that are there.
    values : mapping of str to ndarray, shape ()
        Likely numbers by path, as `econ.evaluate.sheet.point` gives them.
    tables : InstallationTables
        Task lists and tools.

    Returns
    -------
    advice : SplitAdvice
        Tasks that this site does not need are left out.
    """
    inputs = Inputs(values, 1)
    at = site(structure, inputs)
    table = tables.tasks[Alternative.SELF_INSTALL]
    found = split_site(at, tables)
    hour_value = float(inputs.number("work.hour_value_usd_per_h")[0])
    now = route_rows(table, at).party[0, found.task]
    best = best_split(found.problem, hour_value)
    cost = split_cost(found.problem, np.stack([now, best]))
    each = margins(found.problem, now, hour_value)
    listed = tuple(
        _margin(place, (table.key[task], table.label[task]), (PARTIES[now[place]], PARTIES[best[place]]), each)
        for place, task in enumerate(found.task)
    )
    saved_cash, saved_h = (float(pair[0] - pair[1]) for pair in (cost.cash_usd, cost.own_h))
    return SplitAdvice(listed, hour_value, saved_cash, saved_h)


def tool_plan(
    structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables
) -> tuple[ToolPlan, ...]:
    """Return how each tool that the user's side needs is come by, likely values.

    Parameters
    ----------
    structure : Structure
        Who does what; tools that are there or lent.
    values : mapping of str to ndarray, shape ()
        Likely numbers by path.
    tables : InstallationTables
        Task lists and tools.

    Returns
    -------
    plans : tuple of ToolPlan
        Needed tools only.
    """
    at = site(structure, Inputs(values, 1))
    return tool_plans(Route(at, route_rows(tables.tasks[Alternative.SELF_INSTALL], at), tables))


def _margin(place: int, words: tuple[str, str], parties: tuple[Party, Party], each: Margins) -> TaskMargin:
    by, own = int(each.hired_by[place]), PARTIES.index(Party.SELF)
    extra_cash, saved_h = float("nan"), float("nan")
    if by >= 0:
        extra_cash = float(each.extra_cash_usd[place, by] - each.extra_cash_usd[place, own])
        saved_h = float(each.extra_own_h[place, own] - each.extra_own_h[place, by])
    hired = PARTIES[by] if by >= 0 else None
    return TaskMargin(*words, *parties, hired, extra_cash, saved_h, float(each.flip_usd_per_h[place]))
