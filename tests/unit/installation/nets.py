"""Small task nets for tests."""

import numpy as np

from econ.installation.calendar import work_week
from econ.installation.task import HoursSource, TaskRows, TaskTable
from econ.kernel.alternative import PARTIES

NONE = HoursSource("", ("",), ("",), (float("nan"),))


def table(after, gates=None, **changed):
    n_task = len(after)
    fields = {
        "alternative": "self_install",
        "key": tuple(f"t{index}" for index in range(n_task)),
        "label": tuple(f"task {index}" for index in range(n_task)),
        "condition": ("always",) * n_task,
        "default_party": np.zeros(n_task, dtype=np.int64),
        "may": np.ones((n_task, len(PARTIES)), dtype=bool),
        "hours": ((NONE,) * len(PARTIES),) * n_task,
        "crew_count": np.ones(n_task),
        "per": ("",) * n_task,
        "wait": ("",) * n_task,
        "after": tuple(tuple(each) for each in after),
        "licence": ("",) * n_task,
        "height_limit_m": np.full(n_task, np.nan),
        "is_attended": np.zeros(n_task, dtype=bool),
        "gates_service": np.array(gates if gates is not None else [False] * (n_task - 1) + [True], dtype=bool),
        "mishap_share_frac": np.zeros(n_task),
        "materials": ((),) * n_task,
        "visit": ("",) * n_task,
        "hold_point": ("",) * n_task,
        "source": ("assumption",) * n_task,
    }
    return TaskTable(**{**fields, **changed})


def rows(net, elapsed_h, wait_d, party=None, is_active=None):
    """Return task rows from lists, one row a list entry or one for a plain list."""
    elapsed = np.atleast_2d(np.asarray(elapsed_h, dtype=np.float64))
    party = np.zeros(elapsed.shape, dtype=np.int64) if party is None else np.atleast_2d(np.asarray(party))
    active = np.ones(elapsed.shape, dtype=bool) if is_active is None else np.atleast_2d(np.asarray(is_active))
    elapsed = np.where(active, elapsed, 0.0)
    wait = np.where(active, np.atleast_2d(np.asarray(wait_d, dtype=np.float64)), 0.0)
    none = np.zeros(elapsed.shape)
    return TaskRows(net, active, party, np.zeros(elapsed.shape, dtype=bool), elapsed, elapsed, none, elapsed, wait)


def every_day(n_row=1, hours_h=8.0):
    """Return a week of work every day for each party."""
    week = work_week(np.zeros(n_row, dtype=int), np.ones((n_row, 7), dtype=bool), np.full(n_row, hours_h))
    return (week,) * len(PARTIES)
