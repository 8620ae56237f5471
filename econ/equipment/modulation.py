"""Electric power between off, low, intermediate and full speed."""

import numpy as np

from econ.equipment.points import Point, chosen
from econ.kernel.arrays import FloatArray


def cycling_power_w(load_w: FloatArray, low: Point, cd_frac: FloatArray) -> FloatArray:
    """Return the mean power of a unit that switches on and off to give less than its low speed.

    Parameters
    ----------
    load_w : ndarray, shape (..., B, n)
        Load, at most the low-speed capacity. [W]
    low : Point, shape (..., B, n)
        Low speed.
    cd_frac : ndarray, shape () or (B,)
        Degradation coefficient. [dimensionless]

    Returns
    -------
    power_w : ndarray, shape (..., B, n)
        Low-speed power x load factor / part-load factor, the latter 1 - CD (1 - load factor); both are multiplied by
        the capacity. [W]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.67 to 11.69.
    """
    cd = np.asarray(cd_frac)[..., None]
    part_capacity_w = low.capacity_w * (1.0 - cd) + load_w * cd
    power_w: FloatArray = load_w * low.power_w / part_capacity_w
    return power_w


def modulated_power_w(load_w: FloatArray, speeds: tuple[Point, ...], cd_frac: FloatArray) -> FloatArray:
    """Return the mean power of a unit at a load: cycling below low speed, above it on its efficiency lines.

    Parameters
    ----------
    load_w : ndarray, shape (..., B, n)
        Load, at most the full-speed capacity. [W]
    speeds : tuple of Point, shape (..., B, n)
        Low, intermediate and full speed at the same outdoor temperatures, or the one there is.
    cd_frac : ndarray, shape () or (B,)
        Degradation coefficient. [dimensionless]

    Returns
    -------
    power_w : ndarray, shape (..., B, n)
        Mean electric power. [W]

    Notes
    -----
    From low to intermediate and from there to full speed the efficiency is straight in the load.

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.67, 11.101 (cooling), 11.153, 11.187, 11.188 (heating).
    """
    if len(speeds) == 1:
        return cycling_power_w(load_w, speeds[0], cd_frac)
    low, mid, full = speeds
    power_w = cycling_power_w(load_w, low, cd_frac)
    is_above = load_w > low.capacity_w
    if is_above.any():
        cop = modulated_cop(load_w, (chosen(load_w <= mid.capacity_w, low, full), mid))
        np.divide(load_w, cop, out=power_w, where=is_above)
    return power_w


def held_to(low: Point, full: Point) -> Point:
    """Return low speed, replaced by full speed where full speed gives less.

    Parameters
    ----------
    low, full : Point, shape (..., B, n)
        Two speeds at the same outdoor temperatures.

    Returns
    -------
    least : Point, shape (..., B, n)
        Never above full.
    """
    is_less = low.capacity_w < full.capacity_w
    return low if is_less.all() else chosen(is_less, low, full)


def modulated_cop(load_w: FloatArray, speeds: tuple[Point, Point]) -> FloatArray:
    """Return the efficiency between two speeds, straight in the load.

    Parameters
    ----------
    load_w : ndarray, shape (..., B, n)
        Load. [W]
    speeds : tuple of Point
        The two on either side of it, in either order.

    Returns
    -------
    cop : ndarray, shape (..., B, n)
        Efficiency, held at the ends so that it never leaves the two speeds' own. [dimensionless]
    """
    first, second = speeds
    span_w = second.capacity_w - first.capacity_w
    share = load_w - first.capacity_w
    share /= np.where(span_w == 0.0, 1.0, span_w)
    np.clip(share, 0.0, 1.0, out=share)
    cop = first.cop
    share *= second.cop - cop
    cop += share
    return cop
