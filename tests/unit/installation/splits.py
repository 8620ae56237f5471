"""Small split problems with shared visits and tools, and every split of one."""

from itertools import product

import numpy as np

from econ.installation.split import NO_VISIT, Bonus, JointFloor, SharedTools, SplitProblem, split_cost
from econ.installation.tools import ToolPrice
from econ.kernel.alternative import PARTIES

SELF, HELPER, ELECTRICIAN, CONTRACTOR = range(len(PARTIES))
N_PARTY = len(PARTIES)


def tools(n_task, uses=(), days=0.5, **price):
    """Return tools, each used by the user's side in some tasks."""
    is_used = np.zeros((len(uses), n_task, N_PARTY), dtype=bool)
    for tool, tasks in enumerate(uses):
        is_used[tool, list(tasks)] = [True, True, False, False]
    given = {"buy_usd": 100.0, "rent_usd_per_d": 30.0, "resale_frac": 0.0, "minimum_hire_d": 1.0, "sales_tax_frac": 0.0}
    columns = {
        name: np.broadcast_to(np.asarray(value, float), (len(uses),)) for name, value in {**given, **price}.items()
    }
    return SharedTools(is_used, is_used * days, ToolPrice(**columns))


def problem(n_task, **changed):
    """Return a problem in which the user takes an hour for each task and a trade bills 100 for it, no visit fee."""
    own_h = np.zeros((n_task, N_PARTY))
    own_h[:, SELF] = 1.0
    slot = np.full((n_task, N_PARTY), NO_VISIT)
    slot[:, ELECTRICIAN], slot[:, CONTRACTOR] = 0, 1
    charge = np.zeros((n_task, N_PARTY))
    charge[:, [ELECTRICIAN, CONTRACTOR]] = 100.0
    allowed = np.ones((n_task, N_PARTY), dtype=bool)
    allowed[:, HELPER] = False
    fields = {
        "is_allowed": allowed,
        "cash_usd": np.zeros((n_task, N_PARTY)),
        "own_h": own_h,
        "slot": slot,
        "charge_usd": charge,
        "floor_usd": np.zeros((n_task, N_PARTY)),
        "trip_usd": np.zeros(2),
        "joint_floors": (),
        "tools": tools(n_task),
    }
    return SplitProblem(**{**fields, **changed})


def random_problem(rng, n_task):
    """Return a problem of any shape: barred parties, visits with trips and floors, shared tools, a joint floor."""
    allowed = rng.random((n_task, N_PARTY)) < 0.7
    allowed[:, HELPER] = False
    allowed[~allowed.any(axis=1), CONTRACTOR] = True
    own_h = np.zeros((n_task, N_PARTY))
    own_h[:, SELF] = rng.uniform(0.2, 6.0, n_task)
    slot = np.full((n_task, N_PARTY), NO_VISIT)
    slot[:, ELECTRICIAN], slot[:, CONTRACTOR] = rng.integers(0, 2, n_task), 2 + rng.integers(0, 2, n_task)
    charge, floor = np.zeros((n_task, N_PARTY)), np.zeros((n_task, N_PARTY))
    trades = [ELECTRICIAN, CONTRACTOR]
    charge[:, trades] = rng.uniform(10.0, 300.0, (n_task, 2))
    floor[:, trades] = rng.choice([0.0, 175.0, 350.0], (n_task, 2))
    n_tool = int(rng.integers(0, 4))
    is_used = np.zeros((n_tool, n_task, N_PARTY), dtype=bool)
    is_used[:, :, SELF] = rng.random((n_tool, n_task)) < 0.5
    rent = np.where(rng.random(n_tool) < 0.2, np.inf, rng.uniform(10.0, 90.0, n_tool))
    price = ToolPrice(
        np.where((rng.random(n_tool) < 0.2) & np.isfinite(rent), np.inf, rng.uniform(30.0, 300.0, n_tool)),
        rent,
        rng.choice([0.0, 0.5], n_tool),
        rng.choice([0.17, 1.0, 3.0], n_tool),
        np.full(n_tool, 0.07),
    )
    joint = JointFloor(0, ELECTRICIAN, n_task - 1, (SELF, HELPER), 420.0)
    return problem(
        n_task,
        is_allowed=allowed,
        cash_usd=rng.uniform(0.0, 80.0, (n_task, N_PARTY)),
        own_h=own_h,
        slot=slot,
        charge_usd=charge,
        floor_usd=floor,
        trip_usd=np.array([0.0, 0.0, 85.0, 85.0]),
        joint_floors=(joint,) if n_task > 1 else (),
        tools=SharedTools(is_used, is_used * own_h / 6.0, price),
        bonus=random_bonus(rng, n_task),
    )


def random_bonus(rng, n_task):
    """Return nothing, or money for leaving some tasks to a trade."""
    if rng.random() < 0.3:
        return None
    is_met = np.ones((n_task, N_PARTY), dtype=bool)
    asked = rng.random(n_task) < 0.4
    is_met[np.ix_(asked, [SELF, HELPER])] = False
    return Bonus(is_met, float(rng.choice([50.0, 300.0, 2000.0])))


def every_split(problem):
    """Return every allowed split, shape (N, T)."""
    choices = [np.flatnonzero(row) for row in problem.is_allowed]
    return np.array(list(product(*choices)), dtype=np.int64)


def least_usd(problem, hour_value):
    """Return the least cost over every allowed split."""
    cost = split_cost(problem, every_split(problem))
    return float(np.min(cost.cash_usd + hour_value * cost.own_h))


def cost_usd(problem, party, hour_value):
    """Return what one split costs, own hours priced."""
    cost = split_cost(problem, np.asarray(party)[None])
    return float(cost.cash_usd[0] + hour_value * cost.own_h[0])
