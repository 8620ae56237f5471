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
        Low-speed power x load factor / part-load factor, the latter 1 - CD (1 - load factor). [W]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.67 to 11.69.
    """
    load_factor = load_w / low.capacity_w
    part_load_factor = 1.0 - load_factor
    part_load_factor *= -np.asarray(cd_frac)[..., None]
    part_load_factor += 1.0
    load_factor *= low.power_w
    load_factor /= part_load_factor
    return load_factor


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
    power_w = cycling_power_w(np.minimum(load_w, low.capacity_w), low, cd_frac)
    is_above = load_w > low.capacity_w
    if is_above.any():
        is_lower = load_w <= mid.capacity_w
        cop = modulated_cop(load_w, (chosen(is_lower, low, mid), chosen(is_lower, mid, full)))
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
        The lower and the higher speed.

    Returns
    -------
    cop : ndarray, shape (..., B, n)
        Efficiency, held at the ends so that it never leaves the two speeds' own. [dimensionless]
    """
    low, high = speeds
    span_w = high.capacity_w - low.capacity_w
    share = load_w - low.capacity_w
    share /= np.where(span_w > 0.0, span_w, 1.0)
    np.clip(share, 0.0, 1.0, out=share)
    cop, rise = low.cop, high.cop
    rise -= cop
    share *= rise
    cop += share
    return cop
