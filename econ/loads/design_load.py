"""Design loads: the cold hour and the hot day that equipment is sized for, with where the heat comes from."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.loads import heat_balance
from econ.loads.network import air_conductance_w_per_k, sun_w, window_sun_w
from econ.loads.rooms import RoomRows

PIECES: Final = (
    "walls, roof and floor",
    "windows, conduction",
    "windows, sun",
    "ground",
    "outdoor air",
    "people and things",
    "moisture",
    "stored in walls and floor",
)
"""The pieces axis of `DesignLoads.piece_w`."""

LOSSES: Final = ("walls, roof and floor", "windows", "ground", "outdoor air")
"""The pieces axis of `heating_pieces_w`."""


METHODS: Final = ("hourly", "load_factors", "own")
"""How a room's design cooling was found: the hot day hour by hour, load factors, or a calculation of the user's."""

HOURLY, LOAD_FACTORS, OWN = range(len(METHODS))


@dataclass(frozen=True, slots=True, eq=False)
class FactorLoads:
    """Sensible design cooling by load factors.

    Attributes
    ----------
    sensible_w : ndarray, shape (R,)
        Not below 0. [W]
    piece_w : ndarray, shape (R, 8)
        The same by `PIECES`. [W]
    is_glassy : ndarray of bool, shape (R,)
        Whether glass takes so much of the floor area that the hourly run rules.
    glass_area_m2, floor_area_m2 : ndarray, shape (R,)
        Both areas. [m^2]
    """

    sensible_w: FloatArray
    piece_w: FloatArray
    is_glassy: BoolArray
    glass_area_m2: FloatArray
    floor_area_m2: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class DesignLoads:
    """What the plant must be able to do in each room.

    Attributes
    ----------
    heat_w : ndarray, shape (R,)
        Heating at the 99 % dry bulb, no sun and no gains; 0 in rooms never heated. [W]
    cool_sensible_w, cool_latent_w : ndarray, shape (R,)
        Cooling at the hour of the hot day in which the sensible need is highest; 0 in rooms never cooled. [W]
    piece_w : ndarray, shape (R, 8)
        Cooling at that hour by `PIECES`; adds up to sensible plus latent. [W]
    peak_hour : ndarray of int, shape (R,)
        That hour, 0 to 23. [hour]
    loss_w : ndarray, shape (R, 4)
        Heating at the 99 % dry bulb by `LOSSES`; adds up to `heat_w` unless that would be below zero. [W]
    hourly_sensible_w, factor_sensible_w : ndarray, shape (R,)
        Sensible cooling by the hourly run and by load factors, whichever rules; NaN where it was not worked out. [W]
    method : ndarray of int, shape (R,)
        Position in `METHODS` of what rules. [dimensionless]
    course_sensible_w, course_latent_w : ndarray, shape (R, 24)
        Cooling through the hot day, for rooms that peak at different hours; 0 in rooms never cooled. [W]
    """

    heat_w: FloatArray
    cool_sensible_w: FloatArray
    cool_latent_w: FloatArray
    piece_w: FloatArray
    peak_hour: IntArray
    loss_w: FloatArray
    hourly_sensible_w: FloatArray
    factor_sensible_w: FloatArray
    method: IntArray
    course_sensible_w: FloatArray
    course_latent_w: FloatArray


def design_loads(
    rooms: RoomRows, hot_day: Weather, heat_design_c: FloatArray, humidity_limit_frac: FloatArray
) -> DesignLoads:
    """Return the design loads of rooms.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    hot_day : Weather
        The hot design day, one day repeating itself.
    heat_design_c : array_like, shape () or (R,)
        99 % dry bulb; the rooms' warming is added. [degC]
    humidity_limit_frac : array_like, shape (R,)
        Highest relative humidity wanted while cooling. [dimensionless]

    Returns
    -------
    loads : DesignLoads
        By room.

    Notes
    -----
    Cooling comes from the hourly method with the room held at its coolest set-point all day, whatever the hours of use:
    a unit sized to pull down at once would be oversized. The ground works at its coldest month for heating and at the
    hot day's month for cooling.

    References
    ----------
    .. [1] ISO 13790:2008, 12.2 and annex C, on the design day of ASHRAE Handbook Fundamentals (2021), ch. 14.
    """
    held = _held_all_day(rooms)
    need = heat_balance.need(held, hot_day, humidity_limit_frac)
    peak_hour = np.argmax(need.cool_w[:, :, 0], axis=0)
    row = np.arange(len(rooms.floor_area_m2))
    sensible, latent = need.cool_w[peak_hour, row, 0], need.latent_w[peak_hour, row, 0]
    piece_w = _pieces_w(held, hot_day, peak_hour)
    piece_w[:, PIECES.index("moisture")] = latent
    piece_w[:, -1] = sensible + latent - piece_w[:, :-1].sum(axis=1)
    loss_w = heating_pieces_w(rooms, heat_design_c, hot_day.pressure_pa)
    is_cooled: BoolArray = np.asarray(rooms.is_cooled.any(axis=1))
    return DesignLoads(
        heat_w=np.maximum(loss_w.sum(axis=1), 0.0),
        cool_sensible_w=np.where(is_cooled, sensible, 0.0),
        cool_latent_w=np.where(is_cooled, latent, 0.0),
        piece_w=piece_w * is_cooled[:, None],
        peak_hour=peak_hour,
        loss_w=loss_w,
        hourly_sensible_w=np.where(is_cooled, sensible, 0.0),
        factor_sensible_w=np.full(len(row), np.nan),
        method=np.full(len(row), HOURLY),
        course_sensible_w=need.cool_w[:, :, 0].T * is_cooled[:, None],
        course_latent_w=need.latent_w[:, :, 0].T * is_cooled[:, None],
    )


def governed(loads: DesignLoads, factors: FactorLoads) -> DesignLoads:
    """Return the larger of the hourly run and the load factors, room by room; the run alone where glass rules.

    Parameters
    ----------
    loads : DesignLoads
        By the hourly run, R rooms.
    factors : FactorLoads
        By load factors.

    Returns
    -------
    loads : DesignLoads
        With pieces of the method that rules; drying is that of the run's peak hour either way.
    """
    is_cooled = loads.hourly_sensible_w > 0.0
    by_factors = is_cooled & ~factors.is_glassy & (factors.sensible_w > loads.hourly_sensible_w)
    piece_w = factors.piece_w.copy()
    piece_w[:, PIECES.index("moisture")] = loads.cool_latent_w
    piece_w[:, -1] = factors.sensible_w - factors.piece_w.sum(axis=1)
    return replace(
        loads,
        cool_sensible_w=np.where(by_factors, factors.sensible_w, loads.cool_sensible_w),
        piece_w=np.where(by_factors[:, None], piece_w, loads.piece_w),
        factor_sensible_w=np.where(is_cooled, factors.sensible_w, 0.0),
        method=np.where(by_factors, LOAD_FACTORS, loads.method),
    )


def with_own(loads: DesignLoads, rooms: RoomRows, own_cooling_w: FloatArray, own_heating_w: FloatArray) -> DesignLoads:
    """Return design loads in which the user's own calculation stands where there is one.

    Parameters
    ----------
    loads : DesignLoads
        R rooms.
    rooms : RoomRows
        The same rooms; those never cooled or never heated take no figure.
    own_cooling_w, own_heating_w : ndarray, shape (R,)
        Total cooling and heating as calculated elsewhere; NaN where nobody did. [W]

    Returns
    -------
    loads : DesignLoads
        Total cooling is split into sensible and latent, and into pieces, as ours is; where ours is 0 all of it comes
        sensibly through walls, roof and floor.
    """
    has_own = ~np.isnan(own_cooling_w) & rooms.is_cooled.any(axis=1)
    has_own_heat = ~np.isnan(own_heating_w) & rooms.is_heated.any(axis=1)
    ours_w = loads.cool_sensible_w + loads.cool_latent_w
    factor = np.divide(own_cooling_w, ours_w, out=np.ones_like(ours_w), where=has_own & (ours_w > 0.0))
    bare_w = np.where(has_own & (ours_w <= 0.0), own_cooling_w, 0.0)
    piece_w = loads.piece_w * factor[:, None]
    piece_w[:, 0] += bare_w
    return replace(
        loads,
        heat_w=np.where(has_own_heat, own_heating_w, loads.heat_w),
        cool_sensible_w=loads.cool_sensible_w * factor + bare_w,
        cool_latent_w=loads.cool_latent_w * factor,
        piece_w=piece_w,
        method=np.where(has_own, OWN, loads.method),
    )


def heating_w(rooms: RoomRows, heat_design_c: FloatArray, pressure_pa: float) -> FloatArray:
    """Return the steady heat loss at the 99 % dry bulb, without sun and gains.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    heat_design_c : array_like, shape () or (R,)
        99 % dry bulb; the rooms' warming is added. [degC]
    pressure_pa : float
        Barometric pressure. [Pa]

    Returns
    -------
    heat_w : ndarray, shape (R,)
        Heating load; 0 in rooms never heated. [W]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 17, heating load.
    """
    heat_w: FloatArray = np.maximum(heating_pieces_w(rooms, heat_design_c, pressure_pa).sum(axis=1), 0.0)
    return heat_w


def heating_pieces_w(rooms: RoomRows, heat_design_c: FloatArray, pressure_pa: float) -> FloatArray:
    """Return where the heat goes at the 99 % dry bulb, without sun and gains.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    heat_design_c : array_like, shape () or (R,)
        99 % dry bulb; the rooms' warming is added. [degC]
    pressure_pa : float
        Barometric pressure. [Pa]

    Returns
    -------
    loss_w : ndarray, shape (R, 4)
        By `LOSSES`; below zero where heat comes in; 0 in rooms never heated. [W]
    """
    inside_c = warmest_c(rooms)
    warmer_k = inside_c - (heat_design_c + rooms.warming_k)
    loss_w = np.stack(
        (
            rooms.ua_opaque_w_per_k * warmer_k,
            rooms.ua_window_w_per_k * warmer_k,
            rooms.ua_ground_w_per_k * (inside_c - rooms.ground_c.min(axis=1)),
            air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.asarray(pressure_pa)) * warmer_k,
        ),
        axis=1,
    )
    is_heated: BoolArray = np.asarray(rooms.is_heated.any(axis=1))
    kept_w: FloatArray = loss_w * is_heated[:, None]
    return kept_w


def warmest_c(rooms: RoomRows) -> FloatArray:
    """Return the highest heating set-point of the hours that are heated.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.

    Returns
    -------
    warmest_c : ndarray, shape (R,)
        Of all hours where none is heated. [degC]
    """
    return _highest(rooms.heat_setpoint_c, rooms.is_heated)


def coolest_c(rooms: RoomRows) -> FloatArray:
    """Return the lowest cooling set-point of the hours that are cooled.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.

    Returns
    -------
    coolest_c : ndarray, shape (R,)
        Of all hours where none is cooled. [degC]
    """
    return -_highest(-rooms.cool_setpoint_c, rooms.is_cooled)


def _held_all_day(rooms: RoomRows) -> RoomRows:
    """Return the same rooms, cooled all day to their coolest set-point and never heated."""
    shape = rooms.is_cooled.shape
    return replace(
        rooms,
        cool_setpoint_c=np.broadcast_to(coolest_c(rooms)[:, None], shape),
        is_cooled=np.ones(shape, dtype=np.bool_),
        is_heated=np.zeros(shape, dtype=np.bool_),
        cool_day_above_c=np.full(shape[0], -np.inf),
    )


def _highest(by_hour: FloatArray, is_on: BoolArray) -> FloatArray:
    """Return the highest figure of the hours that are on, of all hours where none is."""
    is_counted = is_on | ~is_on.any(axis=1, keepdims=True)
    highest: FloatArray = np.where(is_counted, by_hour, -np.inf).max(axis=1)
    return highest


def _pieces_w(rooms: RoomRows, day: Weather, peak_hour: IntArray) -> FloatArray:
    """Return heat flows at each room's peak hour, shape (R, 8), moisture and storage left at 0."""
    row = np.arange(len(rooms.floor_area_m2))
    inside_c = rooms.cool_setpoint_c[:, 0]
    warmer_k = day.dry_bulb_c[peak_hour, 0] + rooms.warming_k - inside_c
    opaque_sun_w = sun_w(rooms.opaque_aperture_m2, day)[peak_hour, row, 0] - rooms.sky_loss_w
    flows = (
        rooms.ua_opaque_w_per_k * warmer_k + opaque_sun_w,
        rooms.ua_window_w_per_k * warmer_k,
        window_sun_w(rooms, day)[peak_hour, row, 0],
        rooms.ua_ground_w_per_k * (rooms.ground_c[:, day.month[0]] - inside_c),
        air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.asarray(day.pressure_pa)) * warmer_k,
        rooms.gain_w[row, peak_hour],
    )
    piece_w = np.zeros((len(row), len(PIECES)))
    piece_w[:, : len(flows)] = np.stack(flows, axis=1)
    return piece_w
