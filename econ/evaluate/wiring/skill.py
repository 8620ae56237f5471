"""What the user has done before: it changes the hours of their own work, and nothing else."""

from typing import Final

import numpy as np

from econ.evaluate.wiring.installation_site import Inputs
from econ.installation.task import TaskTable
from econ.kernel.arrays import BoolArray, FloatArray

DEEDS: Final[dict[str, tuple[str, tuple[str, ...]]]] = {
    "work.skill_masonry": ("masonry_wall", ("wall_hole", "hang_indoor")),
    "work.skill_bracket": ("on_bracket", ("set_on_bracket",)),
    "work.skill_torque": ("always", ("connect_lines",)),
}
"""By what was asked: the site fact without which it has no part, and the tasks whose own hours it changes."""


def own_hours_frac(table: TaskTable, inputs: Inputs, facts: dict[str, BoolArray]) -> FloatArray:
    """Return the user's hours over those of the task list, by what they have done before.

    Parameters
    ----------
    table : TaskTable
        The list.
    inputs : Inputs
        The case.
    facts : dict of str to ndarray, shape (B,)
        Named facts of the site.

    Returns
    -------
    own_hours_frac : ndarray, shape (B, T)
        1 for somebody who has done it a little: for them are the list's hours. [dimensionless]
    """
    frac = np.ones((inputs.n_row, len(table)))
    for path, (fact, tasks) in DEEDS.items():
        done, new = (facts[fact] & inputs.is_option(path, option) for option in ("yes", "no"))
        skilled, unskilled = (inputs.number(f"work.{name}_hours_frac") for name in ("skilled", "unskilled"))
        factor = np.where(done, skilled, np.where(new, unskilled, 1.0))
        for task in tasks:
            if task in table.key:
                frac[:, table.position(task)] *= factor
    return frac
