"""Measures that lower what a room needs: what each makes of the one number it changes."""

from collections.abc import Callable
from dataclasses import fields, replace
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError
from econ.loads.rooms import RoomRows

INTENSIVE: Final = frozenset(
    {
        "ground_c",
        "window_sun_frac",
        "heat_setpoint_c",
        "cool_setpoint_c",
        "cool_day_above_c",
        "warming_k",
        "owner",
    }
)
"""Fields of `RoomRows` that do not grow with the room; claims do not either."""

LARGE_WINDOW_M2: Final = 2.0
"""m2 of glass that one awning or shade screen covers. Assumption: a large window, about 4 ft by 5.5 ft."""


def multiplied(number: FloatArray, factor: FloatArray) -> FloatArray:
    """Return a number times what a measure leaves of it.

    Parameters
    ----------
    number : array_like, shape (...)
        Before. [any]
    factor : array_like, shape (...)
        Share left. [any]

    Returns
    -------
    number : ndarray, shape (...)
        After. [any]
    """
    after: FloatArray = np.asarray(number, dtype=np.float64) * factor
    return after


def added(number: FloatArray, more: FloatArray) -> FloatArray:
    """Return a number with what a measure adds to it.

    Parameters
    ----------
    number : array_like, shape (...)
        Before. [any]
    more : array_like, shape (...)
        What is added, in the same unit. [any]

    Returns
    -------
    number : ndarray, shape (...)
        After. [any]
    """
    after: FloatArray = np.asarray(number, dtype=np.float64) + more
    return after


def insulated_w_per_m2k(u_w_per_m2k: FloatArray, added_m2k_per_w: FloatArray) -> FloatArray:
    """Return the U-value of a part with insulation laid over what is there.

    Parameters
    ----------
    u_w_per_m2k : array_like, shape (...)
        U-value before; 0 stays 0. [W/(m^2*K)]
    added_m2k_per_w : array_like, shape (...)
        Resistance of the layer. [m^2*K/W]

    Returns
    -------
    u_w_per_m2k : ndarray, shape (...)
        U-value after: U / (1 + U R). [W/(m^2*K)]

    References
    ----------
    .. [1] ISO 6946:2017, 6.7: resistances of layers add up.

    Examples
    --------
    >>> round(float(insulated_w_per_m2k(0.5, 4.0)), 4)
    0.1667
    """
    before = np.asarray(u_w_per_m2k, dtype=np.float64)
    after: FloatArray = before / (1.0 + before * added_m2k_per_w)
    return after


EFFECTS: Final[dict[str, Callable[[FloatArray, FloatArray], FloatArray]]] = {
    "times": multiplied,
    "plus": added,
    "resistance": insulated_w_per_m2k,
}
"""What a measure does to a number, by the word of its table."""


def left_to_serve(rooms: RoomRows, house_frac: FloatArray) -> RoomRows:
    """Return rooms of which another system carries a share of everything, as what is left for a unit.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    house_frac : array_like, shape (R,)
        Share of heat and moisture flows that the house's own system carries. [dimensionless]

    Returns
    -------
    rooms : RoomRows
        The balance is linear in all that grows with the room, so need and design loads come out as the share left.

    Raises
    ------
    OutOfRangeError
        If a share is below 0 or not below 1.
    """
    share = np.asarray(house_frac, dtype=np.float64)
    if not np.any(share):
        return rooms
    if np.any(share < 0.0) or np.any(share >= 1.0):
        remedy = "Give the part of its need that the duct brings, such as 0.3."
        raise OutOfRangeError(
            "share of a room that the house carries", float(share.max()), "", "from 0 to below 1", remedy
        )
    left = 1.0 - share
    grown = {
        field.name: (value.T * left).T
        for field in fields(RoomRows)
        if field.name not in INTENSIVE and (value := getattr(rooms, field.name)).dtype != np.bool_
    }
    return replace(rooms, **grown)


def seasonal_sun_frac(winter_sun_frac: FloatArray, mean_c: FloatArray, shade_from_c: FloatArray) -> FloatArray:
    """Return what of a window's shaded area of sun counts in each month.

    Parameters
    ----------
    winter_sun_frac : array_like, shape (B,)
        Sun without the shade over sun with it, 1 where no shade comes and goes. [dimensionless]
    mean_c : array_like, shape (B, 12)
        Mean outdoor temperature of each month. [degC]
    shade_from_c : array_like, shape (B,)
        Mean from which the shade is down. [degC]

    Returns
    -------
    sun_frac : ndarray, shape (B, 12)
        1 in months with the shade down. [dimensionless]
    """
    is_down = np.asarray(mean_c) >= np.asarray(shade_from_c)[:, None]
    frac: FloatArray = np.where(is_down, 1.0, np.asarray(winter_sun_frac, dtype=np.float64)[:, None])
    return frac


def shade_pieces_count(glass_m2: FloatArray) -> FloatArray:
    """Return how many awnings or shade screens cover an area of glass.

    Parameters
    ----------
    glass_m2 : array_like, shape (...)
        Glass that the sun can reach. [m^2]

    Returns
    -------
    pieces_count : ndarray, shape (...)
        One for each large window's worth, part of one counting as one. [dimensionless]
    """
    pieces: FloatArray = np.ceil(np.asarray(glass_m2, dtype=np.float64) / LARGE_WINDOW_M2 - 1e-9)
    return pieces
