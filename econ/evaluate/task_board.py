"""The task board of a self-installation: who does each task, its hours and cash, who else may and why not."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_price import Route
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_split import SplitSite, split_site
from econ.evaluate.wiring.installation_tools import tool_resale_usd
from econ.evaluate.wiring.installation_work import Site, lock_reasons, route_rows, site
from econ.installation.split import NO_VISIT, SplitProblem, split_cost
from econ.installation.task import TaskRows
from econ.kernel.alternative import PARTIES, Alternative, Party
from econ.kernel.arrays import FloatArray, IntArray
from econ.tables.tasks import InstallationTables


@dataclass(frozen=True, slots=True)
class BoardTask:
    """One task as it stands.

    Attributes
    ----------
    task, label : str
        Stable name; what is done, in plain words.
    party, asked : Party
        Who does it; who was asked to, another where that party may not.
    hours_h, own_h : float
        Person-hours of all who do it; the user's part of them with what its mishaps are expected to take. [hour] [hour]
    cash_usd : float
        Goods with tax, wages, its share of mishaps, and what a trade bills for it; visits and tools apart. [USD]
    may : tuple of bool, length P
        Who may do it here.
    offered : tuple of bool, length P
        Who does such work at all.
    bars : tuple of str
        What keeps it from the user, in plain words.
    is_said : bool
        Whether the case says who shall do it; else it is in its usual hands.
    usual : Party or None
        Who does it here where the case does not say who shall.
    """

    task: str
    label: str
    party: Party
    asked: Party
    hours_h: float
    own_h: float
    cash_usd: float
    may: tuple[bool, ...]
    offered: tuple[bool, ...]
    bars: tuple[str, ...]
    is_said: bool = False
    usual: Party | None = None

    def given(self, party: Party) -> Party:
        """Return who does it when it is given to a party: that one, else the usual one, else who has it now."""
        asked = (party, self.usual or self.party)
        return next((each for each in asked if self.may[PARTIES.index(each)]), self.party)


@dataclass(frozen=True, slots=True)
class TaskBoard:
    """All tasks of a self-installation that this site needs, likely values.

    Attributes
    ----------
    tasks : tuple of BoardTask
        In the order of the work; bookings left out.
    visits_usd : float
        What coming and call-out minimums add to what the trades bill for tasks. [USD]
    tools_usd : float
        Tools, shared by the tasks done with them, as paid before any is sold again. [USD]
    resale_usd : float
        The part of that which comes back when tools are sold again. [USD]
    has_helper : bool
        Whether somebody helps.
    """

    tasks: tuple[BoardTask, ...]
    visits_usd: float
    tools_usd: float
    resale_usd: float
    has_helper: bool

    @property
    def shared_and_tasks_usd(self) -> float:
        """Cash that hangs on who does what. [USD]"""
        return sum(task.cash_usd for task in self.tasks) + self.visits_usd + self.tools_usd

    def given(self, party: Party) -> dict[str, str]:
        """Return all tasks given to a party where it may do them, else to their usual one, as a case says it."""
        return {task.task: task.given(party).value for task in self.tasks}


def task_board(structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables) -> TaskBoard:
    """Return the board of the present split.

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
    board : TaskBoard
        Its cash, and what no split changes, add up to the cash first cost.
    """
    at = site(structure, Inputs(values, 1))
    rows = route_rows(tables.tasks[Alternative.SELF_INSTALL], at)
    found = split_site(at, tables)
    party = rows.party[0, found.task]
    cost = split_cost(found.problem, party[None])
    resale = float(tool_resale_usd(Route(at, rows, tables))[0])
    billed = _billed_usd(found.problem, party)
    each = (found.problem.cash_usd, found.problem.own_h)
    apart, own_h = (np.take_along_axis(by_party, party[:, None], axis=1)[:, 0] for by_party in each)
    return TaskBoard(
        tasks=_tasks(found, rows, at, (apart + billed, own_h)),
        visits_usd=float(cost.visits_usd[0] - billed.sum()),
        tools_usd=float(cost.tools_usd[0]) + resale,
        resale_usd=resale,
        has_helper=bool(at.gates.has_helper[0]),
    )


def _billed_usd(problem: SplitProblem, party: IntArray) -> FloatArray:
    """Return what the trades bill for each task before minimums, shape (T,)."""
    place = party[:, None]
    charge = np.take_along_axis(problem.charge_usd, place, axis=1)[:, 0]
    slot = np.take_along_axis(problem.slot, place, axis=1)[:, 0]
    billed: FloatArray = np.where(slot == NO_VISIT, 0.0, charge)
    return billed


def _tasks(found: SplitSite, rows: TaskRows, at: Site, takes: tuple[FloatArray, FloatArray]) -> tuple[BoardTask, ...]:
    bars, asked = lock_reasons(rows.table, at), _asked(rows, at.structure)
    usual = route_rows(rows.table, replace(at, structure=replace(at.structure, parties=()))).party[0]
    cash_usd, own_h = takes
    return tuple(
        BoardTask(
            task=rows.table.key[task],
            label=rows.table.label[task],
            party=PARTIES[rows.party[0, task]],
            asked=asked[task],
            hours_h=float(rows.hours_h[0, task]),
            own_h=float(own_h[place]),
            cash_usd=float(cash_usd[place]),
            may=tuple(bool(may) for may in found.problem.is_allowed[place]),
            offered=tuple(bool(may) for may in rows.table.may[task]),
            bars=bars[task],
            is_said=rows.table.key[task] in dict(at.structure.parties),
            usual=PARTIES[usual[task]],
        )
        for place, task in enumerate(found.task)
    )


def _asked(rows: TaskRows, structure: Structure) -> tuple[Party, ...]:
    """Return who the case asks to do each task; who does it where the case says nothing."""
    asked = dict(structure.parties)
    return tuple(
        Party(asked[key]) if key in asked else PARTIES[rows.party[0, task]] for task, key in enumerate(rows.table.key)
    )
