"""Design loads of several rooms taken as one: rooms do not all peak in the same hour."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.loads.design_load import HOURLY, LOAD_FACTORS, OWN, DesignLoads, FactorLoads
from econ.loads.load_factors import MOST_GLASS_FRAC


@dataclass(frozen=True, slots=True, eq=False)
class BlockLoads:
    """Design loads of the rooms served taken as one, by decision row.

    Attributes
    ----------
    cooling_w, latent_w, heating_w : ndarray, shape (B,)
        Total cooling, its latent part, and heating. [W]
    method : ndarray of int, shape (B,)
        Position in `econ.loads.design_load.METHODS` of what rules the cooling. [dimensionless]
    peak_hour : ndarray of int, shape (B,)
        Hour of the hot day in which the rooms together want most, 0 to 23. [hour]
    """

    cooling_w: FloatArray
    latent_w: FloatArray
    heating_w: FloatArray
    method: IntArray
    peak_hour: IntArray


def block_loads(loads: DesignLoads, factors: FactorLoads, is_served: BoolArray) -> BlockLoads:
    """Return the design loads of the rooms served taken as one.

    Parameters
    ----------
    loads : DesignLoads
        Rooms, R = n_rooms times B, room by room, each by the method that rules it.
    factors : FactorLoads
        The same rooms by load factors.
    is_served : ndarray of bool, shape (n_rooms, B)
        Rooms that count.

    Returns
    -------
    block : BlockLoads
        The larger of the hot day's hour in which the rooms together want most sensible cooling, and of the sum by load
        factors; the hot day alone where glass takes too much of the block's floor. One room with a figure of the
        user's own makes the block the sum of its rooms.

    Notes
    -----
    In the sum by load factors a room that is itself mostly glass stands with what the hot day gives it.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, peak load computation.
    """

    def total(by_room: FloatArray) -> FloatArray:
        summed: FloatArray = np.where(is_served, by_room.reshape(is_served.shape), 0.0).sum(axis=0)
        return summed

    sensible, latent = (
        (course.reshape(*is_served.shape, -1) * is_served[:, :, None]).sum(axis=0)
        for course in (loads.course_sensible_w, loads.course_latent_w)
    )
    peak_hour, row = np.argmax(sensible, axis=1), np.arange(is_served.shape[1])
    sum_latent_w = total(loads.cool_latent_w)
    hourly_w, hourly_latent_w = (sensible + latent)[row, peak_hour], latent[row, peak_hour]
    is_hourly = factors.is_glassy | (loads.hourly_sensible_w <= 0.0)
    factor_w = total(np.where(is_hourly, loads.hourly_sensible_w, factors.sensible_w)) + sum_latent_w
    is_glassy = total(factors.glass_area_m2) > MOST_GLASS_FRAC * total(factors.floor_area_m2)
    is_factor = ~is_glassy & (factor_w > hourly_w)
    is_own = total((loads.method == OWN).astype(np.float64)) > 0.0
    own_w = total(loads.cool_sensible_w) + sum_latent_w
    return BlockLoads(
        cooling_w=np.where(is_own, own_w, np.where(is_factor, factor_w, hourly_w)),
        latent_w=np.where(is_own | is_factor, sum_latent_w, hourly_latent_w),
        heating_w=total(loads.heat_w),
        method=np.where(is_own, OWN, np.where(is_factor, LOAD_FACTORS, HOURLY)),
        peak_hour=peak_hour,
    )
