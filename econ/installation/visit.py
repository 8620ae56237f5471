"""Visits of the trades: which tasks share one, and what each comes to with its call-out minimum."""

from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray

VISITS: Final = ("rough", "final")
"""Before and after the first inspection: what a trade does on the same side of it, it does in one visit."""

ROUGH, FINAL = range(len(VISITS))


def visit_of(visit: tuple[str, ...], is_inspected: BoolArray) -> BoolArray:
    """Return in which visit each task falls.

    Parameters
    ----------
    visit : tuple of str, length T
        One of VISITS, or empty for tasks that may be done at the last.
    is_inspected : ndarray, shape (B,)
        Whether an inspector looks at the rough work before it goes on; only then are there two visits.

    Returns
    -------
    in_visit : ndarray, shape (B, T, V)
        True in exactly one visit.
    """
    is_rough = np.array([name == VISITS[ROUGH] for name in visit], dtype=np.bool_)
    rough = is_inspected[:, None] & is_rough
    return np.stack([rough, ~rough], axis=2)


def visit_total_usd(
    charge_usd: FloatArray, floor_usd: FloatArray, trip_usd: FloatArray, is_done: BoolArray
) -> FloatArray:
    """Return what each visit of one party comes to.

    Parameters
    ----------
    charge_usd : ndarray, shape (B, T)
        What each task is billed at. [USD]
    floor_usd : ndarray, shape (B, T)
        Least that a visit comes to in which the task is done: the call-out minimum, or the price of such a visit. [USD]
    trip_usd : ndarray, shape (B,)
        Charge for coming, once a visit. [USD]
    is_done : ndarray, shape (B, T, V)
        Whether the party does the task in the visit.

    Returns
    -------
    total_usd : ndarray, shape (B, V)
        Trip and tasks, at least the highest of the floors, which they share; nothing where no task is. [USD]

    Examples
    --------
    >>> one_visit = np.array([[[True], [True]]])
    >>> visit_total_usd(np.array([[60.0, 90.0]]), np.array([[175.0, 175.0]]), np.zeros(1), one_visit).tolist()
    [[175.0]]
    """
    billed = (charge_usd[:, :, None] * is_done).sum(axis=1) + trip_usd[:, None]
    floor = np.max(np.where(is_done, floor_usd[:, :, None], 0.0), axis=1, initial=0.0)
    total: FloatArray = np.where(is_done.any(axis=1), np.maximum(billed, floor), 0.0)
    return total
