"""Moisture that must be taken out of room air."""

import numpy as np

from econ.climate import moist_air
from econ.climate.weather import Weather
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import AIR_DENSITY_KG_PER_M3, STANDARD_PRESSURE_PA, VAPOUR_HEAT_J_PER_KG
from econ.loads.rooms import RoomRows


def latent_w(rooms: RoomRows, weather: Weather, air_c: FloatArray, humidity_limit_frac: FloatArray) -> FloatArray:
    """Return the latent heat to remove so that rooms stay at or below their humidity limit.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.
    air_c : array_like, shape (24, R, n_day)
        Indoor air, at which the limit is meant: a cool room holds less water. [degC]
    humidity_limit_frac : array_like, shape (R,)
        Highest relative humidity wanted. [dimensionless]

    Returns
    -------
    latent_w : ndarray, shape (24, R, n_day)
        Latent heat in hours that are cooled or dried, 0 in others; none is negative. [W]

    Notes
    -----
    Steady balance: vapour set free indoors and brought in by outdoor air, less what leaves at the limit. Assumption:
    walls and furnishings store no moisture from hour to hour; dry hours save nothing for damp ones.
    """
    dry_air_kg_per_s = rooms.air_flow_m3_per_s * AIR_DENSITY_KG_PER_M3 * weather.pressure_pa / STANDARD_PRESSURE_PA
    limit_frac, is_day = np.asarray(humidity_limit_frac)[:, None], is_cooling_day(rooms, weather)
    heat_w = np.zeros(np.shape(air_c))
    for hour in np.flatnonzero((rooms.is_cooled | rooms.is_dried).any(axis=0)):
        vapour = heat_w[hour]
        _limit_humidity_ratio(air_c[hour], limit_frac, weather.pressure_pa, vapour)
        np.subtract(weather.humidity_ratio[hour], vapour, out=vapour)
        vapour *= dry_air_kg_per_s[:, None]
        vapour += rooms.moisture_gain_kg_per_s[:, hour, None]
        np.maximum(vapour, 0.0, out=vapour)
        is_on = (rooms.is_cooled[:, hour, None] & is_day) | rooms.is_dried[:, hour, None]
        vapour *= VAPOUR_HEAT_J_PER_KG * is_on
    return heat_w


def _limit_humidity_ratio(air_c: FloatArray, limit_frac: FloatArray, pressure_pa: float, ratio: FloatArray) -> None:
    """Write the humidity ratio at the limit: the saturation pressure by Magnus' formula, enough for rooms.

    Alduchov and Eskridge (1996), Journal of Applied Meteorology 35, eq. 21: 610.94 exp(17.625 t/(243.04 + t)) Pa,
    within 0.4 % from -40 to 50 degC; the full equations of `moist_air` would take as long as the whole heat balance.
    """
    vapour_pa = air_c + 243.04
    np.divide(air_c, vapour_pa, out=vapour_pa)
    vapour_pa *= 17.625
    np.exp(vapour_pa, out=vapour_pa)
    vapour_pa *= 610.94 * limit_frac
    np.subtract(pressure_pa, vapour_pa, out=ratio)
    np.divide(vapour_pa, ratio, out=ratio)
    ratio *= moist_air.WATER_TO_AIR_FRAC


def is_cooling_day(rooms: RoomRows, weather: Weather) -> BoolArray:
    """Return on which days a room is cooled at all.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.

    Returns
    -------
    is_cooling_day : ndarray of bool, shape (R, n_day)
        True where the day's mean dry bulb, warming included, is above the room's threshold. [dimensionless]
    """
    day_mean_c = weather.dry_bulb_c.mean(axis=0) + rooms.warming_k[:, None]
    is_above: BoolArray = day_mean_c > rooms.cool_day_above_c[:, None]
    return is_above
