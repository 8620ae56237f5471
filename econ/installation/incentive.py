"""Incentives: which hands the work must be in for one to be paid."""

from typing import Final

import numpy as np

from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, TaskRows, TaskTable
from econ.kernel.arrays import BoolArray

TERMS: Final = ("none", "permit", "licensed_commissioning", "licensed_installation")
"""What a programme asks for: nothing; a permit and its inspection; that a licensed contractor connects and starts it;
that licensed parties do all of the work for which there is a licence."""

STARTING: Final = ("connect_lines", "leak_check", "commissioning")
"""Tasks that a licensed commissioning holds, in any list."""


def is_asked_of(table: TaskTable, term: str) -> BoolArray:
    """Return which tasks of a list must be in licensed hands for a term.

    Parameters
    ----------
    table : TaskTable
        The list.
    term : str
        One of `TERMS`.

    Returns
    -------
    is_asked : ndarray, shape (T,)
        False for all where the term asks for no licence.
    """
    if term == "licensed_commissioning":
        return np.array([key in STARTING for key in table.key], dtype=np.bool_)
    return np.array([bool(licence) and term == "licensed_installation" for licence in table.licence], dtype=np.bool_)


def in_licensed_hands(table: TaskTable) -> BoolArray:
    """Return which parties count as licensed for each task: electrician for electrical work, contractor for all.

    Parameters
    ----------
    table : TaskTable
        The list.

    Returns
    -------
    is_licensed : ndarray, shape (T, P)
        False for the user and a helper.
    """
    licensed = np.zeros(table.may.shape, dtype=np.bool_)
    licensed[:, CONTRACTOR_PARTY] = True
    licensed[:, ELECTRICIAN_PARTY] = [licence == "electrical" for licence in table.licence]
    return licensed


def is_met(rows: TaskRows, term: str, has_permit: BoolArray) -> BoolArray:
    """Return whether the work as it is given out meets a term.

    Parameters
    ----------
    rows : TaskRows
        Tasks needed and who does them.
    term : str
        One of `TERMS`.
    has_permit : ndarray, shape (B,)
        Whether a permit is taken out.

    Returns
    -------
    is_met : ndarray, shape (B,)
        Window units, which nobody connects or starts, never meet a term that asks for a licence.
    """
    if term in ("none", "permit"):
        return has_permit | (term == "none")
    asked = is_asked_of(rows.table, term)
    licensed = in_licensed_hands(rows.table)[np.arange(len(rows.table)), rows.party]
    met: BoolArray = np.all(licensed | ~asked | ~rows.is_active, axis=1)
    return met & any(key in STARTING for key in rows.table.key)
