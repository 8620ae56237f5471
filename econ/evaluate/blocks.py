"""Blocks of decision rows, so that hourly temporaries stay in the processor's cache."""

from collections.abc import Iterator, Mapping
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import ShapeError

ROWS_PER_BLOCK: Final = 256
"""Rows evaluated at a time; a trial in plain numpy found temporaries of this size to stay in cache."""


def row_count(values: Mapping[str, FloatArray]) -> int:
    """Return how many decision rows the values hold.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.

    Returns
    -------
    n_row : int
        1 where every value is a scalar.

    Raises
    ------
    ShapeError
        If two values hold different numbers of rows.
    """
    lengths = {np.shape(value) for value in values.values()} - {()}
    if len(lengths) > 1:
        raise ShapeError(f"values hold different numbers of rows: {sorted(lengths)}; give each path () or (B,)")
    return int(next(iter(lengths))[0]) if lengths else 1


def row_blocks(values: Mapping[str, FloatArray], n_row: int) -> Iterator[tuple[int, dict[str, FloatArray]]]:
    """Yield each block's number of rows and its values, in order.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.

    Yields
    ------
    n_block : int
        Rows in the block.
    block : dict of str to ndarray, shape () or (n_block,)
        The same paths; scalars are passed as they are.
    """
    for start in range(0, n_row, ROWS_PER_BLOCK):
        rows = slice(start, min(start + ROWS_PER_BLOCK, n_row))
        yield rows.stop - start, {path: value[rows] if np.ndim(value) else value for path, value in values.items()}
