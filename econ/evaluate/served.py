"""Which rooms one indoor unit can be counted on for."""

from collections.abc import Mapping

import numpy as np

from econ.case.choices import NOT_KNOWN, code
from econ.evaluate.structure import Structure
from econ.kernel.arrays import BoolArray, FloatArray


def served_rooms(structure: Structure, values: Mapping[str, FloatArray], n_row: int) -> BoolArray:
    """Return whether each room shares the air of the room with the indoor unit.

    Parameters
    ----------
    structure : Structure
        Number of rooms; the indoor unit hangs in the first.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.

    Returns
    -------
    is_served : ndarray of bool, shape (n_rooms, B)
        True for the first room and for rooms whose door stands open or that have none.
    """
    closed = [code("rooms[].door", "usually_closed"), code("rooms[].door", NOT_KNOWN)]
    doors = [np.broadcast_to(values[f"rooms[{index}].door"], (n_row,)) for index in range(structure.n_rooms)]
    is_served = ~np.isin(np.stack(doors), closed)
    is_served[0] = True
    return is_served
