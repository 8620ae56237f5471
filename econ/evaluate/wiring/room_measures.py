"""What measures on the room make of its rows beyond the numbers they change: seasonal shade, and the house's share."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.reading import amount
from econ.kernel.arrays import FloatArray
from econ.loads.measure import left_to_serve, seasonal_sun_frac
from econ.loads.rooms import RoomRows

Values = Mapping[str, FloatArray]

HOUSE_SHARE: Final = "house_frac"
WINTER_SUN: Final = "winter_sun_frac"
SHADE_FROM: Final = "measures.outside_shade.from_c"
"""Numbers of a room that measures write, and the monthly mean from which shade is down; a case may lack them."""


def with_measures(structure: Structure, values: Values, weather: Weather, rooms: RoomRows) -> RoomRows:
    """Return room rows with seasonal shade, and with what is left of the need by the house's own system.

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path with the measures done.
    weather : Weather
        The year's days; a design day counts as the month it is in.
    rooms : RoomRows
        Rooms, room by room.

    Returns
    -------
    rooms : RoomRows
        The same where no such measure is done.
    """
    n_row = len(rooms.owner) // structure.n_rooms
    winter = _by_room(structure, values, WINTER_SUN, n_row, 1.0)
    if np.any(winter != 1.0):
        mean_c = weather.monthly_mean_c() + rooms.warming_k[:, None]
        from_c = np.tile(amount(values, SHADE_FROM, n_row), structure.n_rooms)
        rooms = replace(rooms, window_sun_frac=seasonal_sun_frac(winter, mean_c, from_c))
    return left_to_serve(rooms, _by_room(structure, values, HOUSE_SHARE, n_row, 0.0))


def _by_room(structure: Structure, values: Values, name: str, n_row: int, otherwise: float) -> FloatArray:
    """Return a number of every room row, and what stands for it where no measure wrote it, shape (R,)."""
    paths = [f"rooms[{index}].{name}" for index in range(structure.n_rooms)]
    return np.concatenate(
        [amount(values, path, n_row) if path in values else np.full(n_row, otherwise) for path in paths]
    )
