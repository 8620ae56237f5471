"""The kit at the door: until when it may go back, at what fee, and whether the dry-fit comes in time."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class KitReturn:
    """What sending the kit back hangs on; NaN for ways without a kit.

    Attributes
    ----------
    return_by_d, dry_fit_d : ndarray, shape (B,)
        Last day on which it may go back; when the dry-fit is done. Days from the decision. [day]
    restocking_usd : ndarray, shape (B,)
        What the seller keeps, without the freight back. [USD]
    """

    return_by_d: FloatArray
    dry_fit_d: FloatArray
    restocking_usd: FloatArray


def return_by_d(delivered_d: FloatArray, window_d: FloatArray) -> FloatArray:
    """Return the last day on which the kit may go back.

    Parameters
    ----------
    delivered_d : array_like, shape () or (B,)
        When it is at the door, days from the decision. [day]
    window_d : array_like, shape () or (B,)
        Days that the seller allows from the day of delivery. [day]

    Returns
    -------
    return_by_d : ndarray, shape () or (B,)
        Whole days from the decision; that day counts. [day]

    Examples
    --------
    >>> float(return_by_d(12.375, 30.0))
    42.0
    """
    last: FloatArray = np.floor(delivered_d) + np.floor(window_d)
    return last


def restocking_usd(price_usd: FloatArray, kits_count: FloatArray, restocking_frac: FloatArray) -> FloatArray:
    """Return what the seller keeps when the kits go back.

    Parameters
    ----------
    price_usd : array_like, shape () or (B,)
        Price of one kit. [USD]
    kits_count : array_like, shape () or (B,)
        Kits. [dimensionless]
    restocking_frac : array_like, shape () or (B,)
        Share of the price that is kept. [dimensionless]

    Returns
    -------
    restocking_usd : ndarray, shape () or (B,)
        Without the freight back. [USD]

    Examples
    --------
    >>> float(restocking_usd(2000.0, 1.0, 0.2))
    400.0
    """
    kept: FloatArray = np.asarray(price_usd) * kits_count * restocking_frac
    return kept


def ends_before(return_d: FloatArray, dry_fit_d: FloatArray) -> BoolArray:
    """Return where the kit can no longer go back on the day the dry-fit is done.

    Parameters
    ----------
    return_d : array_like, shape () or (B,)
        Last day of return, days from the decision; NaN is never too early. [day]
    dry_fit_d : array_like, shape () or (B,)
        When the dry-fit is done. [day]

    Returns
    -------
    is_before : ndarray, shape () or (B,)
        A dry-fit on the last day is in time.

    Examples
    --------
    >>> [bool(ends_before(42.0, day)) for day in (41.5, 42.9, 43.0)]
    [False, False, True]
    """
    is_before: BoolArray = np.asarray(np.floor(dry_fit_d) > return_d)
    return is_before
