"""Which rooms one indoor unit can be counted on for."""

from collections.abc import Mapping

import numpy as np

from econ.case.choices import NOT_KNOWN, code
from econ.evaluate.structure import Structure
from econ.kernel.arrays import BoolArray, FloatArray


def served_rooms(structure: Structure, values: Mapping[str, FloatArray], n_row: int) -> BoolArray:
    """Return whether each room has an indoor unit, or shares the air of a room that has one.

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
        True for rooms with a unit of their own, and for rooms whose door stands open or that have none.
    """
    closed = [code("rooms[].door", "usually_closed"), code("rooms[].door", NOT_KNOWN)]
    doors = [np.broadcast_to(values[f"rooms[{index}].door"], (n_row,)) for index in range(structure.n_rooms)]
    is_served = ~np.isin(np.stack(doors), closed)
    is_served[0] = True
    served: BoolArray = is_served | own_units(structure, values, n_row)
    return served


def own_units(structure: Structure, values: Mapping[str, FloatArray], n_row: int) -> BoolArray:
    """Return whether each room gets an indoor unit of its own, on every way alike.

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.

    Returns
    -------
    has_own : ndarray of bool, shape (n_rooms, B)
        True for the first room.
    """
    yes = code("rooms[].own_unit", "yes")
    asked = [np.broadcast_to(values[f"rooms[{index}].own_unit"], (n_row,)) for index in range(structure.n_rooms)]
    has_own: BoolArray = np.stack(asked) == yes
    has_own[0] = True
    return has_own
