"""Numbers and choices of a case by path, one a decision row."""

from collections.abc import Mapping

import numpy as np

from econ.case.choices import CHOICES, table_path
from econ.kernel.arrays import BoolArray, FloatArray, IntArray

Values = Mapping[str, FloatArray]


def room_amount(values: Values, index: int, name: str, n_row: int) -> FloatArray:
    """Return a number of one room, row by row."""
    return amount(values, f"rooms[{index}].{name}", n_row)


def amount(values: Values, path: str, n_row: int) -> FloatArray:
    """Return a number, shape (n_row,)."""
    return np.broadcast_to(np.asarray(values[path], dtype=np.float64), (n_row,))


def given(values: Values, path: str, n_row: int) -> FloatArray:
    """Return a number that may be left out, shape (n_row,); NaN where it is."""
    return amount(values, path, n_row) if path in values else np.full(n_row, np.nan)


def codes(values: Values, path: str, n_row: int) -> IntArray:
    """Return a choice's position among its options, row by row."""
    return amount(values, path, n_row).astype(np.int64)


def is_option(values: Values, path: str, option: str, n_row: int) -> BoolArray:
    """Return in which rows a choice is the option."""
    is_it: BoolArray = codes(values, path, n_row) == CHOICES[table_path(path)].index(option)
    return is_it


def looked_up(values: Values, path: str, by_option: Mapping[str, float], n_row: int) -> FloatArray:
    """Return a choice's number, row by row."""
    numbers = np.array([by_option[option] for option in CHOICES[table_path(path)]])
    number: FloatArray = numbers[codes(values, path, n_row)]
    return number
