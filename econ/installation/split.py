"""Who does what at least cost, where tasks share visits with a minimum and tools with a hire, and do not separate.

One decision row. The cost of any split is worked out by `split_cost`; `econ.installation.split_programme` finds the
cheapest; `margins` moves one task with all others held.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.installation.tools import ToolPrice, tool_choice
from econ.installation.visit import visit_total_usd
from econ.kernel.alternative import PARTIES
from econ.kernel.arrays import BoolArray, FloatArray, IntArray

NO_VISIT: Final = -1
"""Slot of a task and party that need no visit."""


@dataclass(frozen=True, slots=True, eq=False)
class JointFloor:
    """A higher floor of a visit, where one party does a task and others have done another.

    Attributes
    ----------
    task, party : int
        The task that the visit is for, and who comes.
    other_task : int
        The task that was done by others.
    other_parties : tuple of int
        Who these are.
    floor_usd : float
        Least that the visit then comes to. [USD]
    """

    task: int
    party: int
    other_task: int
    other_parties: tuple[int, ...]
    floor_usd: float


@dataclass(frozen=True, slots=True, eq=False)
class SharedTools:
    """Tools that cost something, each shared by the tasks that the user's side does with it.

    Attributes
    ----------
    is_used : ndarray, shape (K, T, P)
        Whether a tool is needed for a task done by a party.
    use_d : ndarray, shape (K, T, P)
        Parts of a working day it is needed for. [day]
    price : ToolPrice
        Prices, shape (K,) each.
    """

    is_used: BoolArray
    use_d: FloatArray
    price: ToolPrice


@dataclass(frozen=True, slots=True, eq=False)
class Bonus:
    """Money that comes only if every task is in hands that its giver accepts.

    Attributes
    ----------
    is_met : ndarray, shape (T, P)
        Whether a party is accepted for a task; true for all where the task does not matter.
    amount_usd : float
        What it is worth. [USD]
    """

    is_met: BoolArray
    amount_usd: float


@dataclass(frozen=True, slots=True, eq=False)
class SplitProblem:
    """What each party would cost for each task of one site, and what tasks share.

    Attributes
    ----------
    is_allowed : ndarray, shape (T, P)
        Whether a party may do a task; at least one may.
    cash_usd, own_h : ndarray, shape (T, P)
        Cash and hours of the user that only this task and party need. [USD] [hour]
    slot : ndarray, shape (T, P)
        Visit it falls in, or `NO_VISIT`. [dimensionless]
    charge_usd, floor_usd : ndarray, shape (T, P)
        What the visit bills for it; least that the visit comes to with it. [USD] [USD]
    trip_usd : ndarray, shape (S,)
        Charge for coming, by visit. [USD]
    joint_floors : tuple of JointFloor
        Floors that hang on two tasks.
    tools : SharedTools
        Shared tools.
    bonus : Bonus or None
        An incentive that hangs on who does what.
    """

    is_allowed: BoolArray
    cash_usd: FloatArray
    own_h: FloatArray
    slot: IntArray
    charge_usd: FloatArray
    floor_usd: FloatArray
    trip_usd: FloatArray
    joint_floors: tuple[JointFloor, ...]
    tools: SharedTools
    bonus: Bonus | None = None


@dataclass(frozen=True, slots=True, eq=False)
class SplitCost:
    """What splits come to, apart from what no split changes.

    Attributes
    ----------
    cash_usd : ndarray, shape (N,)
        Money. [USD]
    own_h : ndarray, shape (N,)
        The user's hours. [hour]
    visits_usd, tools_usd : ndarray, shape (N,)
        The part of the cash that tasks share: visits of the trades, and tools. [USD] [USD]
    """

    cash_usd: FloatArray
    own_h: FloatArray
    visits_usd: FloatArray
    tools_usd: FloatArray


def split_cost(problem: SplitProblem, party: IntArray) -> SplitCost:
    """Return cash and own hours of each of several splits.

    Parameters
    ----------
    problem : SplitProblem
        The site.
    party : ndarray, shape (N, T)
        Who does each task, position in PARTIES. [dimensionless]

    Returns
    -------
    cost : SplitCost
        Shared visits and tools in it.
    """
    chosen = party[:, :, None] == np.arange(problem.is_allowed.shape[1])
    visits, tools = _visits_usd(problem, chosen), _tools_usd(problem, chosen)
    cash = (problem.cash_usd * chosen).sum(axis=(1, 2)) + visits + tools
    if problem.bonus is not None:
        cash = cash - problem.bonus.amount_usd * (problem.bonus.is_met | ~chosen).all(axis=(1, 2))
    return SplitCost(cash, (problem.own_h * chosen).sum(axis=(1, 2)), visits, tools)


def _visits_usd(problem: SplitProblem, chosen: BoolArray) -> FloatArray:
    n_split = len(chosen)
    slots = np.arange(len(problem.trip_usd))
    in_slot = (problem.slot.ravel()[:, None] == slots) & chosen.reshape(n_split, -1)[:, :, None]
    floor = np.broadcast_to(problem.floor_usd, chosen.shape).copy()
    for joint in problem.joint_floors:
        holds = chosen[:, joint.other_task][:, list(joint.other_parties)].any(axis=1)
        raised = np.where(holds, joint.floor_usd, 0.0)
        floor[:, joint.task, joint.party] = np.maximum(floor[:, joint.task, joint.party], raised)
    charge = np.broadcast_to(problem.charge_usd.ravel(), (n_split, problem.charge_usd.size))
    total = np.zeros(n_split)
    for slot in slots:
        trip = np.full(n_split, problem.trip_usd[slot])
        total += visit_total_usd(charge, floor.reshape(n_split, -1), trip, in_slot[:, :, slot : slot + 1])[:, 0]
    return total


def _tools_usd(problem: SplitProblem, chosen: BoolArray) -> FloatArray:
    tools = problem.tools
    total = np.zeros(len(chosen))
    for tool in range(len(tools.is_used)):
        is_used = chosen & tools.is_used[tool]
        days = (tools.use_d[tool] * is_used).sum(axis=(1, 2))
        total += np.where(is_used.any(axis=(1, 2)), tool_choice(_price_of(tools.price, tool), days).cost_usd, 0.0)
    return total


def _price_of(price: ToolPrice, tool: int) -> ToolPrice:
    one = slice(tool, tool + 1)
    return ToolPrice(
        price.buy_usd[one],
        price.rent_usd_per_d[one],
        price.resale_frac[one],
        price.minimum_hire_d[one],
        price.sales_tax_frac[one],
    )


@dataclass(frozen=True, slots=True, eq=False)
class Margins:
    """What moving one task changes, all others held where they are.

    Attributes
    ----------
    extra_cash_usd : ndarray, shape (T, P)
        Cash more than now if the party did it; NaN where it may not. [USD]
    extra_own_h : ndarray, shape (T, P)
        Own hours more than now. [hour]
    hired_by : ndarray, shape (T,)
        The cheaper trade to do it, own hours priced; -1 where neither may. [dimensionless]
    flip_usd_per_h : ndarray, shape (T,)
        Value of an own hour at which doing it and giving it to that trade cost the same; NaN where one of both is
        barred or no own hour is saved. Below it do it yourself, above it give it away. [USD/hour]
    """

    extra_cash_usd: FloatArray
    extra_own_h: FloatArray
    hired_by: IntArray
    flip_usd_per_h: FloatArray


def margins(problem: SplitProblem, party: IntArray, hour_value_usd_per_h: float) -> Margins:
    """Return each task's make-or-buy margin in a split.

    Parameters
    ----------
    problem : SplitProblem
        The site.
    party : ndarray, shape (T,)
        Who does each task now. [dimensionless]
    hour_value_usd_per_h : float
        What an hour of the user is worth to them. [USD/hour]

    Returns
    -------
    margins : Margins
        By moving one task at a time: shared visits and tools that others still need are not saved.
    """
    n_task, n_party = problem.is_allowed.shape
    moved = np.repeat(party[None], n_task * n_party, axis=0).reshape(n_task, n_party, n_task)
    task, to = np.indices((n_task, n_party))
    moved[task, to, task] = to
    cost = split_cost(problem, moved.reshape(-1, n_task))
    now = split_cost(problem, party[None])
    extra_cash = np.where(problem.is_allowed, cost.cash_usd.reshape(n_task, n_party) - now.cash_usd, np.nan)
    extra_own = np.where(problem.is_allowed, cost.own_h.reshape(n_task, n_party) - now.own_h, np.nan)
    own, helper = PARTIES.index("self"), PARTIES.index("helper")
    priced = np.where(np.isnan(extra_cash), np.inf, extra_cash + hour_value_usd_per_h * extra_own)
    priced[:, [own, helper]] = np.inf
    by = np.where(np.isfinite(priced).any(axis=1), np.argmin(priced, axis=1), -1)
    row = np.arange(n_task)
    saved_h = extra_own[:, own] - extra_own[row, by]
    paid = extra_cash[row, by] - extra_cash[:, own]
    flips = (by >= 0) & (saved_h > 0.0)
    flip = np.divide(paid, saved_h, out=np.full(n_task, np.nan), where=flips)
    return Margins(extra_cash, extra_own, by, flip)
