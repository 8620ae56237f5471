"""What the trades charge: circuits by distance, visits with a minimum, crews by the person-hour."""

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import OutOfRangeError

CIRCUIT_AT_M = (5.0, 10.0, 20.0, 30.0)
"""m from panel to unit at which circuit prices are known; they are columns of `circuit_price_usd`."""


def circuit_price_usd(distance_m: FloatArray, price_at_usd: FloatArray) -> FloatArray:
    """Return the price of a circuit on straight lines between the distances of the price list.

    Parameters
    ----------
    distance_m : ndarray, shape (B,)
        Length of the run from panel to disconnect, at least 0. [m]
    price_at_usd : ndarray, shape (B, 4)
        Prices at `CIRCUIT_AT_M`. [USD]

    Returns
    -------
    price_usd : ndarray, shape (B,)
        The shortest listed price below the first distance; the last slope continued beyond the last. [USD]

    Raises
    ------
    OutOfRangeError
        If a distance is below 0.
    """
    distance = np.asarray(distance_m, dtype=np.float64)
    if not np.all(distance >= 0.0):
        raise OutOfRangeError("distance to the panel", float(np.min(distance)), "m", "at least 0", "Measure the run.")
    at = np.asarray(CIRCUIT_AT_M)
    run = np.maximum(distance, at[0])
    left = np.clip(np.searchsorted(at, run, side="right") - 1, 0, len(at) - 2)
    share = (run - at[left]) / (at[left + 1] - at[left])
    row = np.arange(len(run))
    price: FloatArray = price_at_usd[row, left] * (1.0 - share) + price_at_usd[row, left + 1] * share
    return price


def visit_charge_usd(hours_h: FloatArray, rate_usd_per_h: FloatArray, minimum_usd: FloatArray) -> FloatArray:
    """Return what one visit costs by the hour, at least the call-out minimum.

    Parameters
    ----------
    hours_h : ndarray, shape (B,)
        Person-hours of the visit. [hour]
    rate_usd_per_h : ndarray, shape (B,)
        Billed rate. [USD/hour]
    minimum_usd : ndarray, shape (B,)
        Call-out minimum. [USD]

    Returns
    -------
    charge_usd : ndarray, shape (B,)
        Nothing where there are no hours. [USD]

    Examples
    --------
    >>> visit_charge_usd(np.array([0.0, 1.0, 2.0]), np.array(120.0), np.array(175.0)).tolist()
    [0.0, 175.0, 240.0]
    """
    hours = np.asarray(hours_h, dtype=np.float64)
    charge: FloatArray = np.where(hours > 0.0, np.maximum(hours * rate_usd_per_h, minimum_usd), 0.0)
    return charge


def crew_rate_usd_per_h(
    is_crewed: BoolArray, technician_usd_per_h: FloatArray, mate_usd_per_h: FloatArray
) -> FloatArray:
    """Return the mean billed rate of a person-hour.

    Parameters
    ----------
    is_crewed : ndarray, shape (T,)
        Whether a technician and a mate share the task evenly; the technician works alone otherwise.
    technician_usd_per_h, mate_usd_per_h : ndarray, shape (B,)
        Billed rates, overhead and profit in them. [USD/hour]

    Returns
    -------
    rate_usd_per_h : ndarray, shape (B, T)
        Rate by task. [USD/hour]
    """
    shared = (technician_usd_per_h + mate_usd_per_h) / 2.0
    rate: FloatArray = np.where(is_crewed[None], shared[:, None], technician_usd_per_h[:, None])
    return rate
