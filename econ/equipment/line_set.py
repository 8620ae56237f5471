"""What longer and steeper refrigerant lines take from a split unit's output."""

from dataclasses import dataclass, fields, replace
from typing import Final

import numpy as np

from econ.equipment.machine import MachineRows
from econ.equipment.points import CoolingPoints, HeatingPoints, Point
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import FOOT_M

RATED_LINE_M: Final = 25.0 * FOOT_M
"""m of line, level, at which units are rated. AHRI 210/240-2023; 10 CFR 430 appendix M1, section 2.2 (recalled)."""


@dataclass(frozen=True, slots=True, eq=False)
class LineSet:
    """The lines between indoor and outdoor unit, one a row.

    Attributes
    ----------
    run_m, rise_m : ndarray, shape (B,)
        Length along the way; difference in height, up or down. [m] [m]
    run_limit_m, rise_limit_m : ndarray, shape (B,)
        What the maker allows. [m] [m]
    run_loss_per_m, rise_loss_per_m : ndarray, shape (B,)
        Output lost with each metre beyond the rated length, and with each metre of height. [1/m] [1/m]
    """

    run_m: FloatArray
    rise_m: FloatArray
    run_limit_m: FloatArray
    rise_limit_m: FloatArray
    run_loss_per_m: FloatArray
    rise_loss_per_m: FloatArray


def line_kept_frac(line: LineSet) -> FloatArray:
    """Return the part of the rated output that is left at the end of the lines.

    Parameters
    ----------
    line : LineSet
        B lines.

    Returns
    -------
    kept_frac : ndarray, shape (B,)
        1 for a level line of the rated length or less. [dimensionless]

    Notes
    -----
    Shorter lines earn nothing. Beyond what the maker allows the loss is not continued: such a line is refused by a
    finding, not priced.
    """
    beyond_m = np.maximum(np.minimum(line.run_m, line.run_limit_m) - RATED_LINE_M, 0.0)
    lifted_m = np.minimum(np.abs(line.rise_m), line.rise_limit_m)
    kept: FloatArray = (1.0 - line.run_loss_per_m * beyond_m) * (1.0 - line.rise_loss_per_m * lifted_m)
    return kept


def with_lines(machine: MachineRows, kept_frac: FloatArray) -> MachineRows:
    """Return machines behind their lines: less output at the same power.

    Parameters
    ----------
    machine : MachineRows
        B machines as rated.
    kept_frac : ndarray, shape (B,)
        Part of the output that is left. [dimensionless]

    Returns
    -------
    machine : MachineRows
        Every test with its output times the part, at every speed and in both seasons.

    Notes
    -----
    Assumption: pressure lost in the lines costs output, and the compressor draws at a speed what it drew before.
    """
    return replace(
        machine,
        cooling=CoolingPoints(*_shrunk(machine.cooling, kept_frac)),
        heating=HeatingPoints(*_shrunk(machine.heating, kept_frac)),
    )


def _shrunk(tests: CoolingPoints | HeatingPoints, kept_frac: FloatArray) -> list[Point]:
    points = (getattr(tests, test.name) for test in fields(tests))
    return [Point(point.capacity_w * kept_frac, point.power_w) for point in points]
