"""Blocks of decision rows, so that hourly temporaries stay in the processor's cache."""

import threading
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from typing import Final, TypeVar

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import ShapeError

Found = TypeVar("Found")
Part = TypeVar("Part")

_here = threading.local()
"""Whether this thread is a worker already."""

ROWS_PER_BLOCK: Final = 256
"""Rows evaluated at a time: 512 are a tenth faster and hold twice the memory; fewer than 128 spend it on calls."""

WORKERS: Final = 2
"""Blocks worked at side by side: numpy lets go of the interpreter while it computes; each block has its own arrays."""


DAYS_PER_BLOCK: Final = 84
"""Weather days for which that was found; with more of them a block has fewer rows, so that it stays as large."""


def rows_for(n_day: int) -> int:
    """Return how many rows to evaluate at a time.

    Parameters
    ----------
    n_day : int
        Weather days of the year. [dimensionless]
    """
    return max(1, ROWS_PER_BLOCK * min(DAYS_PER_BLOCK, n_day) // n_day)


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


def row_blocks(
    values: Mapping[str, FloatArray], n_row: int, size: int = ROWS_PER_BLOCK
) -> Iterator[tuple[int, dict[str, FloatArray]]]:
    """Yield each block's number of rows and its values, in order.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.
    size : int
        Rows in a full block.

    Yields
    ------
    n_block : int
        Rows in the block.
    block : dict of str to ndarray, shape () or (n_block,)
        The same paths; scalars are passed as they are.
    """
    for start in range(0, n_row, size):
        rows = slice(start, min(start + size, n_row))
        yield rows.stop - start, {path: value[rows] if np.ndim(value) else value for path, value in values.items()}


def side_by_side(compute: Callable[[Part], Found], parts: Sequence[Part]) -> list[Found]:
    """Return what a function makes of each part, in order, `WORKERS` parts at a time.

    Parameters
    ----------
    compute : callable
        A part in, anything out; pure.
    parts : sequence
        The parts.

    Notes
    -----
    Within a worker parts are worked at one after the other, so that no more than `WORKERS` are ever in memory.
    """
    if len(parts) == 1 or getattr(_here, "is_worker", False):
        return [compute(part) for part in parts]
    with ThreadPoolExecutor(WORKERS, initializer=_become_worker) as pool:
        return list(pool.map(compute, parts))


def _become_worker() -> None:
    _here.is_worker = True
