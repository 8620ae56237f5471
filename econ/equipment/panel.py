"""Whether a home's electric service has room for one more unit: the load method for existing dwellings."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import FOOT_M
from econ.kernel.errors import OutOfRangeError

GENERAL_VA_PER_M2: Final = 3.0 / FOOT_M**2
"""VA per m2 of floor for lights and outlets: 3 VA a square foot. NEC 220.83 (B) with 220.83 (A)(1)."""

SMALL_CIRCUIT_VA: Final = 1500.0
"""VA for each small-appliance and laundry circuit. NEC 220.83 (A)(2)."""

SMALL_CIRCUIT_COUNT: Final = 3.0
"""Two in the kitchen and one for the laundry, the least a home must have. NEC 210.11 (C)."""

FIRST_VA: Final = 8000.0
"""VA counted in full. NEC 220.83."""

REST_FRAC: Final = 0.40
"""Share of what lies above. NEC 220.83."""

SERVICE_V: Final = 240.0
"""V between the two legs of a single-phase service."""


@dataclass(frozen=True, slots=True, eq=False)
class DwellingLoad:
    """What a home's service feeds.

    Attributes
    ----------
    floor_area_m2 : ndarray, shape (B,)
        Floor of the whole home. [m^2]
    appliance_va : ndarray, shape (B,)
        Nameplates of what is fastened in place or has its own circuit: range, dryer, water heater, car charger. [V*A]
    conditioning_va : ndarray, shape (B,)
        Heating and cooling that can run at the same time, the new unit with it. [V*A]
    """

    floor_area_m2: FloatArray
    appliance_va: FloatArray
    conditioning_va: FloatArray


def existing_dwelling_load_va(load: DwellingLoad) -> FloatArray:
    """Return the load of an existing home to which heating or cooling is added.

    Parameters
    ----------
    load : DwellingLoad
        What the service feeds.

    Returns
    -------
    load_va : ndarray, shape (B,)
        Heating and cooling in full, the first 8 kVA of the rest in full, 40 % of what lies above. [V*A]

    Raises
    ------
    OutOfRangeError
        If an area or a load is below 0.

    Notes
    -----
    Guidance: what counts is the calculation that an electrician signs, or a year's measured demand.

    References
    ----------
    .. [1] NEC 220.83 (B), existing dwelling units; text not quoted.
    """
    for name, unit in (("floor_area_m2", "m2"), ("appliance_va", "VA"), ("conditioning_va", "VA")):
        least = float(np.min(getattr(load, name)))
        if least < 0.0:
            raise OutOfRangeError(name, least, unit, "at least 0", "Read it off the label.")
    rest = load.floor_area_m2 * GENERAL_VA_PER_M2 + SMALL_CIRCUIT_COUNT * SMALL_CIRCUIT_VA + load.appliance_va
    total: FloatArray = load.conditioning_va + np.minimum(rest, FIRST_VA) + REST_FRAC * np.maximum(rest - FIRST_VA, 0.0)
    return total


def service_current_a(load_va: FloatArray) -> FloatArray:
    """Return the current of a load on a 240 V service.

    Parameters
    ----------
    load_va : ndarray, shape (B,)
        Calculated load. [V*A]

    Returns
    -------
    current_a : ndarray, shape (B,)
        To be compared with the rating of the service. [A]
    """
    current: FloatArray = np.asarray(load_va) / SERVICE_V
    return current
