"""Heat into sunken rooms: the sealed table as a grid."""

from functools import lru_cache
from typing import Final

import numpy as np

from econ.loads.buried import Conduction, conduction
from econ.tables.record import read_table

NODES: Final = ("depth_frac", "half_width_frac", "thickness_frac", "wall_frac", "floor_frac")
HEAT: Final = (
    *("steady_wall_frac", "steady_floor_frac"),
    *("wave_wall_real_frac", "wave_wall_imaginary_frac", "wave_floor_real_frac", "wave_floor_imaginary_frac"),
)


@lru_cache(maxsize=1)
def earth_grid() -> Conduction:
    """Return the grid, read and checked on the first call.

    Returns
    -------
    grid : Conduction
        The same object on every call.

    Raises
    ------
    TableError
        If the table does not agree with its record.
    """
    table = read_table("ground/conduction")
    nodes = tuple(np.unique(table.numbers(name)) for name in NODES)
    heat = np.stack([table.numbers(name) for name in HEAT], axis=-1)
    return conduction(nodes, heat.reshape(*(len(part) for part in nodes), len(HEAT)))
