"""Hours in which a room is used, and set-points through the day."""

from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray

HOURS_OF_USE: Final[dict[str, tuple[tuple[int, int], ...]]] = {
    "evenings_and_nights": ((0, 7), (17, 24)),
    "working_hours": ((8, 18),),
    "day_and_night": ((0, 24),),
    "hot_days_only": ((0, 24),),
    "not_known": ((0, 7), (17, 24)),
}
"""First and past-last hour of each stretch of use. Assumption: usual hours of an evening room and of an office."""

WAKING_HOURS: Final = (7, 23)
"""Hours in which screens run, and in which a room that is heated only sometimes is heated. Assumption."""

HOT_DAY_ABOVE_C: Final = 23.0
"""degC; mean dry bulb above which a day counts as hot. Assumption: about 29 degC in the afternoon."""

EVERY_DAY_ABOVE_C: Final = -99.0
"""degC; below every daily mean."""

SETBACK_K: Final = 3.0
"""K that heating may fall below its set-point out of the hours of use. Assumption; between 2 and 5."""

EASING_K: Final = (2.0, 1.0)
"""K left to the set-point in the first and second hour of a stretch of use. Assumption: no unit brings a room to
its set-point in an instant, and an unlimited plant asked to would show a peak that nobody sizes for."""


def is_used(when: str) -> BoolArray:
    """Return in which hours of the day a room is used.

    Parameters
    ----------
    when : str
        A key of `HOURS_OF_USE`.

    Returns
    -------
    is_used : ndarray of bool, shape (24,)
        True in the hours of use.
    """
    used = np.zeros(24, dtype=np.bool_)
    for first, past in HOURS_OF_USE[when]:
        used[first:past] = True
    return used


def is_waking() -> BoolArray:
    """Return in which hours people are awake.

    Returns
    -------
    is_waking : ndarray of bool, shape (24,)
        True from 7 to 23.
    """
    hour = np.arange(24)
    waking: BoolArray = (hour >= WAKING_HOURS[0]) & (hour < WAKING_HOURS[1])
    return waking


def easing_k(is_on: BoolArray) -> FloatArray:
    """Return how far the set-point is still eased in the first hours of each stretch.

    Parameters
    ----------
    is_on : ndarray of bool, shape (..., 24)
        Hours that are kept at the set-point; the day wraps round.

    Returns
    -------
    easing_k : ndarray, shape (..., 24)
        To add to a cooling set-point or take from a heating one; 0 where nothing is ever off. [K]
    """
    first = is_on & ~np.roll(is_on, 1, axis=-1)
    second = is_on & np.roll(first, 1, axis=-1)
    easing: FloatArray = first * EASING_K[0] + second * EASING_K[1]
    return easing
