"""What can go wrong in the work: whose hands it hangs on, and what it is expected to cost."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.installation.task import CONTRACTOR_PARTY, HELPER_PARTY, SELF_PARTY, TaskRows, TaskTable
from econ.kernel.arrays import FloatArray

BY_USER: Final = "user"
BY_CONTRACTOR: Final = "contractor"
HANDS: Final = {BY_USER: (SELF_PARTY, HELPER_PARTY), BY_CONTRACTOR: (CONTRACTOR_PARTY,)}
"""Parties whose work each kind happens in."""


@dataclass(frozen=True, slots=True)
class Mishap:
    """One kind of thing that can go wrong.

    Attributes
    ----------
    key, label : str
        Stable name; what goes wrong, in plain words.
    by : str
        Whose work it happens in: a key of `HANDS`.
    tasks : tuple of (str, float)
        Tasks of any list, each with its part of the chance; empty where the task list's own shares hold.
    chance, cost, own, later : str
        Paths of its chance, money to put it right, own hours for that, and days later.
    plan_b_party, plan_b : str
        Who puts it right; what to do then.
    source : str
        Where its figures come from.
    """

    key: str
    label: str
    by: str
    tasks: tuple[tuple[str, float], ...]
    chance: str
    cost: str
    own: str
    later: str
    plan_b_party: str
    plan_b: str
    source: str


@dataclass(frozen=True, slots=True, eq=False)
class Doubt:
    """One kind of mishap on one route.

    Attributes
    ----------
    mishap : Mishap
        The kind.
    tasks : tuple of str
        Tasks of the route it hangs on, whoever does them.
    chance_frac : ndarray, shape (B,)
        How likely it is with who does what. [dimensionless]
    cost_usd, own_h : ndarray, shape (B,)
        Money and own hours to put it right. [USD] [hour]
    """

    mishap: Mishap
    tasks: tuple[str, ...]
    chance_frac: FloatArray
    cost_usd: FloatArray
    own_h: FloatArray


def task_share_frac(mishap: Mishap, table: TaskTable) -> FloatArray:
    """Return which part of a kind's chance hangs on each task of a list.

    Parameters
    ----------
    mishap : Mishap
        The kind.
    table : TaskTable
        The list.

    Returns
    -------
    share_frac : ndarray, shape (T,)
        0 for tasks it has nothing to do with. [dimensionless]
    """
    if not mishap.tasks:
        return table.mishap_share_frac
    shares = dict(mishap.tasks)
    return np.array([shares.get(key, 0.0) for key in table.key], dtype=np.float64)


def exposed_tasks(mishap: Mishap, table: TaskTable) -> tuple[str, ...]:
    """Return the tasks of a list on which a kind hangs, whoever does them."""
    share = task_share_frac(mishap, table)
    return tuple(key for key, part in zip(table.key, share, strict=True) if part > 0.0)


def exposure_frac(mishap: Mishap, rows: TaskRows, helper_frac: FloatArray) -> FloatArray:
    """Return which part of a kind's chance is there, task by task, for who does what.

    Parameters
    ----------
    mishap : Mishap
        The kind.
    rows : TaskRows
        Tasks needed and who does them.
    helper_frac : ndarray, shape (B,)
        Chance in a helper's hands over that in the user's: below 1 for somebody with practice. [dimensionless]

    Returns
    -------
    exposure_frac : ndarray, shape (B, T)
        0 where the task is not needed or in other hands. [dimensionless]
    """
    share = task_share_frac(mishap, rows.table)
    exposure = np.zeros(rows.party.shape)
    for task in np.flatnonzero(share > 0.0):
        party = rows.party[:, task]
        in_hands = np.logical_or.reduce([party == hand for hand in HANDS[mishap.by]]) & rows.is_active[:, task]
        exposure[:, task] = share[task] * in_hands * np.where(party == HELPER_PARTY, helper_frac, 1.0)
    return exposure


def total_chance_frac(chance_frac: FloatArray, exposure_frac: FloatArray) -> FloatArray:
    """Return how likely a kind is with who does what.

    Parameters
    ----------
    chance_frac : ndarray, shape (B,)
        With all its tasks in one pair of hands. [dimensionless]
    exposure_frac : ndarray, shape (B, T)
        Part of it that is there, by task. [dimensionless]

    Returns
    -------
    total_frac : ndarray, shape (B,)
        Never above 1. [dimensionless]
    """
    total: FloatArray = np.minimum(chance_frac * exposure_frac.sum(axis=1), 1.0)
    return total
