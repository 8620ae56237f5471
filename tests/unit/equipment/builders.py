"""Machines for tests."""

from typing import Any

import numpy as np

from econ.equipment.machine import RatingRows, ReverseCycleRows, WindowRows
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH

USUAL: dict[str, Any] = {
    "capacity_w": 12000.0 / BTU_PER_WH,
    "seer2": 21.0,
    "eer2": 12.0,
    "hspf2": 9.5,
    "heat_47f_w": 13000.0 / BTU_PER_WH,
    "heat_5f_ratio_frac": 0.7,
    "cutout_c": -20.0,
    "min_ratio_frac": 0.28,
    "shr": 0.76,
    "standby_w": 3.0,
    "cd_frac": 0.25,
}


def split_ratings(n_row: int = 1, **changed: Any) -> RatingRows:
    """Return a usual 12,000 Btu/h split heat pump with what is changed."""
    numbers = USUAL | changed
    return RatingRows(**{name: row(value, n_row) for name, value in numbers.items()})


def window_ratings(n_row: int = 1, **changed: Any) -> WindowRows:
    """Return a usual 8,000 Btu/h window unit with what is changed."""
    usual = {
        "capacity_w": 8000.0 / BTU_PER_WH,
        "ceer": 11.2,
        "shr": 0.69,
        "standby_w": 1.0,
        "cd_frac": 0.22,
        "min_ratio_frac": 0.4,
    }
    return WindowRows(**{name: row(value, n_row) for name, value in (usual | changed).items()})


def reverse_rows(n_row: int = 1, *, is_variable: bool = False, **changed: Any) -> ReverseCycleRows:
    """Return what an ordinary reverse-cycle unit says."""
    numbers = {"heat_cop": 2.4, "heat_ratio_frac": 0.9, "cutout_c": 3.3} | changed
    return ReverseCycleRows(
        **{name: row(value, n_row) for name, value in numbers.items()}, is_variable=np.full(n_row, is_variable)
    )


def row(value: Any, n_row: int) -> FloatArray:
    """Return one value a row."""
    return np.broadcast_to(np.asarray(value, dtype=np.float64), (n_row,)).copy()
