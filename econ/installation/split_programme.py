"""The integer programme behind the best split: one binary a task and party, visits and tools as shared costs."""

from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from econ.installation.split import NO_VISIT, SplitProblem, split_cost
from econ.installation.tools import charged_d
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import NotSolvedError

_ROUNDING: Final = 1e-9
"""Days; as hires are rounded in `econ.installation.tools`."""


@dataclass(slots=True)
class _Programme:
    """Columns with costs and bounds; rows ``sum of coefficient x column >= lower``, lower NaN for ``== 1``."""

    cost: list[float] = field(default_factory=list)
    high: list[float] = field(default_factory=list)
    is_whole: list[bool] = field(default_factory=list)
    rows: list[tuple[dict[int, float], float, float]] = field(default_factory=list)

    def column(self, cost: float, high: float, *, is_whole: bool) -> int:
        """Add a column from 0 to `high`; return its position."""
        self.cost.append(cost)
        self.high.append(high)
        self.is_whole.append(is_whole)
        return len(self.cost) - 1

    def at_least(self, row: dict[int, float], lower: float) -> None:
        """Add a row that must reach `lower`."""
        self.rows.append((row, lower, np.inf))

    def solution(self) -> FloatArray:
        """Return the value of every column at the optimum."""
        from scipy.optimize import Bounds, LinearConstraint, milp

        matrix = np.zeros((len(self.rows), len(self.cost)))
        for position, (row, _, _) in enumerate(self.rows):
            matrix[position, list(row)] = list(row.values())
        lower, upper = (np.array([row[side] for row in self.rows]) for side in (1, 2))
        found = milp(
            np.array(self.cost),
            integrality=np.array(self.is_whole, dtype=np.int64),
            bounds=Bounds(np.zeros(len(self.cost)), np.array(self.high)),
            constraints=LinearConstraint(matrix, lower, upper),
            options={"mip_rel_gap": 0.0},
        )
        if found.x is None:
            raise NotSolvedError("the best split of the work", str(found.message))
        values: FloatArray = found.x
        return values


def best_split(problem: SplitProblem, hour_value_usd_per_h: float) -> IntArray:
    """Return the allowed split of least cost, own hours priced.

    Parameters
    ----------
    problem : SplitProblem
        The site.
    hour_value_usd_per_h : float
        What an hour of the user is worth to them. [USD/hour]

    Returns
    -------
    party : ndarray, shape (T,)
        Who does each task. [dimensionless]

    Raises
    ------
    NotSolvedError
        If the solver gives up.

    Notes
    -----
    Exact: the integer programme is solved to a gap of zero. A bonus is all or nothing, so the programme is solved once
    without it and once among the splits that earn it, and the better of both is taken.
    """
    plain = _cheapest(problem, hour_value_usd_per_h)
    if problem.bonus is None or problem.bonus.amount_usd <= 0.0:
        return plain
    earning = problem.is_allowed & problem.bonus.is_met
    if not earning.any(axis=1).all():
        return plain
    found = np.stack([plain, _cheapest(replace(problem, is_allowed=earning), hour_value_usd_per_h)])
    cost = split_cost(problem, found)
    best: IntArray = found[int(np.argmin(cost.cash_usd + hour_value_usd_per_h * cost.own_h))]
    return best


def _cheapest(problem: SplitProblem, hour_value_usd_per_h: float) -> IntArray:
    """Return the allowed split of least cost, no bonus counted."""
    programme = _Programme()
    does = _assignment(programme, problem, hour_value_usd_per_h)
    _add_visits(programme, problem, does)
    for tool in range(len(problem.tools.is_used)):
        _add_tool(programme, problem, does, tool)
    value = programme.solution()
    share = np.where(does >= 0, value[np.maximum(does, 0)], -1.0)
    party: IntArray = np.argmax(share, axis=1)
    return party


def _assignment(programme: _Programme, problem: SplitProblem, hour_value_usd_per_h: float) -> IntArray:
    """Add who does what, each task once; return the column of each task and party, -1 where it may not."""
    does = np.full(problem.is_allowed.shape, -1, dtype=np.int64)
    cost = problem.cash_usd + hour_value_usd_per_h * problem.own_h
    for task, party in zip(*np.nonzero(problem.is_allowed), strict=True):
        does[task, party] = programme.column(float(cost[task, party]), 1.0, is_whole=True)
    for columns in does:
        programme.rows.append(({int(at): 1.0 for at in columns if at >= 0}, 1.0, 1.0))
    return does


def _add_visits(programme: _Programme, problem: SplitProblem, does: IntArray) -> None:
    """Add each visit's total: at least trip and charges, at least the floor of each of its tasks."""
    total: dict[int, int] = {}
    for slot, trip in enumerate(problem.trip_usd):
        inside = np.argwhere((problem.slot == slot) & (does >= 0))
        if not len(inside):
            continue
        total[slot] = programme.column(1.0, np.inf, is_whole=False)
        charges = {int(does[task, party]): -float(problem.charge_usd[task, party]) for task, party in inside}
        for task, party in inside:
            at = int(does[task, party])
            programme.at_least({total[slot]: 1.0, at: -float(problem.floor_usd[task, party])}, 0.0)
            row = {total[slot]: 1.0, **charges}
            row[at] -= float(trip)
            programme.at_least(row, 0.0)
    _add_joint_floors(programme, problem, does, total)


def _add_joint_floors(programme: _Programme, problem: SplitProblem, does: IntArray, total: dict[int, int]) -> None:
    for joint in problem.joint_floors:
        at, slot = int(does[joint.task, joint.party]), int(problem.slot[joint.task, joint.party])
        others = [int(does[joint.other_task, party]) for party in joint.other_parties]
        if at < 0 or slot == NO_VISIT or max(others) < 0:
            continue
        row = {total[slot]: 1.0, at: -joint.floor_usd} | {other: -joint.floor_usd for other in others if other >= 0}
        programme.at_least(row, -joint.floor_usd)


def _add_tool(programme: _Programme, problem: SplitProblem, does: IntArray, tool: int) -> None:
    """Add a tool: bought once, or hired for whole days that all its tasks share."""
    tools = problem.tools
    is_used: BoolArray = tools.is_used[tool] & (does >= 0)
    users = [(int(does[at]), float(tools.use_d[tool][at])) for at in map(tuple, np.argwhere(is_used))]
    if not users:
        return
    price = tools.price
    tax, rent = 1.0 + float(price.sales_tax_frac[tool]), float(price.rent_usd_per_d[tool])
    bought = float(price.buy_usd[tool]) * (tax - float(price.resale_frac[tool]))
    is_bought = programme.column(bought if np.isfinite(bought) else 0.0, float(np.isfinite(bought)), is_whole=True)
    if not np.isfinite(rent):
        for at, _ in users:
            programme.at_least({is_bought: 1.0, at: -1.0}, 0.0)
        return
    least = float(price.minimum_hire_d[tool])
    most = float(charged_d(np.array(sum(days for _, days in users)), np.array(least)))
    whole = programme.column(0.0, np.ceil(most), is_whole=True)
    charged = programme.column(0.0, max(most, 1.0), is_whole=False)
    hired = programme.column(1.0, np.inf, is_whole=False)
    programme.at_least({whole: 1.0, **{at: -days for at, days in users}}, -_ROUNDING)
    programme.at_least({charged: 1.0, whole: -1.0}, 0.0)
    for at, _ in users:
        programme.at_least({charged: 1.0, at: -least}, 0.0)
    programme.at_least({hired: 1.0, charged: -rent * tax, is_bought: rent * tax * max(most, 1.0)}, 0.0)
