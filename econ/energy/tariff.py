"""What electricity costs."""

from collections.abc import Callable, Mapping
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import UnknownChoiceError

Bill = Callable[[FloatArray, FloatArray], FloatArray]


def flat_bill_usd(energy_kwh: FloatArray, price_usd_per_kwh: FloatArray) -> FloatArray:
    """Return monthly bills at one price, without fixed charges, which all alternatives share.

    Parameters
    ----------
    energy_kwh : ndarray, shape (B, 12)
        Electricity by month. [kWh]
    price_usd_per_kwh : ndarray, shape () or (B,)
        Price. [USD/kWh]

    Returns
    -------
    bill_usd : ndarray, shape (B, 12)
        Energy times price. [USD]
    """
    bill: FloatArray = energy_kwh * np.asarray(price_usd_per_kwh)[..., None]
    return bill


BILLS: Final[Mapping[str, Bill]] = {"flat": flat_bill_usd}
"""Bill of each kind of tariff."""


def bill_of(tariff_kind: str) -> Bill:
    """Return the function that bills a kind of tariff.

    Parameters
    ----------
    tariff_kind : str
        Key of `BILLS`.

    Returns
    -------
    bill : callable
        Takes monthly energy and a price a row.

    Raises
    ------
    UnknownChoiceError
        If there is no such kind.
    """
    if tariff_kind not in BILLS:
        raise UnknownChoiceError("tariff kind", tariff_kind, tuple(BILLS))
    return BILLS[tariff_kind]
