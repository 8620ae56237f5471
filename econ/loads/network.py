"""The five conductances and one capacity of a room, solved for one hour as straight lines."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import AIR_DENSITY_KG_PER_M3, AIR_HEAT_J_PER_KGK, HOUR_S, STANDARD_PRESSURE_PA
from econ.kernel.errors import OutOfRangeError
from econ.loads.rooms import RoomRows

SURFACE_TO_AIR_W_PER_M2K: Final = 3.45
"""W/(m2 K) between surfaces and air. ISO 13790:2008, 7.2.2.2."""

MASS_TO_SURFACE_W_PER_M2K: Final = 9.1
"""W/(m2 K) between mass and surfaces. ISO 13790:2008, 12.2.2."""

SURFACE_PER_FLOOR_FRAC: Final = 4.5
"""Area of all surfaces facing the room over its floor area. ISO 13790:2008, 7.2.2.2."""

GAIN_TO_AIR_FRAC: Final = 0.5
"""Share of internal gains that goes to the air at once. ISO 13790:2008, annex C, eq. C.1."""


@dataclass(frozen=True, slots=True, eq=False)
class HourLines:
    """One hour of every room and day as straight lines in mass temperature m [degC] and plant heat q [W].

    ``air = air_per_mass * m + air_base + air_per_w * q`` and, at the hour's end,
    ``m' = mass_per_mass * m + mass_base + mass_per_w * q``.

    Attributes
    ----------
    air_per_mass, air_per_w, mass_per_mass, mass_per_w : ndarray, shape (R, 1)
        Slopes, the same for all hours and days. [dimensionless] [K/W] [dimensionless] [K/W]
    air_base_c, mass_base_c : ndarray, shape (24, R, n_day)
        What weather, sun, ground and gains make of a mass at 0 degC without plant. [degC]
    """

    air_per_mass: FloatArray
    air_per_w: FloatArray
    mass_per_mass: FloatArray
    mass_per_w: FloatArray
    air_base_c: FloatArray
    mass_base_c: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class _Conductances:
    """Conductances of the network, each shape (R, 1), in W/K, and the floor shares of ISO 13790 annex C."""

    air: FloatArray
    window: FloatArray
    surface_air: FloatArray
    mass_surface: FloatArray
    outer_mass: FloatArray
    capacity: FloatArray
    mass_share: FloatArray
    surface_share: FloatArray


def air_conductance_w_per_k(air_flow_m3_per_s: FloatArray, pressure_pa: FloatArray) -> FloatArray:
    """Return the heat that entering outdoor air takes up per kelvin, thinner with height.

    Parameters
    ----------
    air_flow_m3_per_s : array_like, shape (...)
        Outdoor air entering. [m^3/s]
    pressure_pa : array_like, shape () or (...)
        Barometric pressure. [Pa]

    Returns
    -------
    air_w_per_k : ndarray, shape (...)
        Conductance of air exchange. [W/K]

    References
    ----------
    .. [1] ISO 13790:2008, 9.3.1, with the density at 20 degC scaled by pressure.
    """
    density = AIR_DENSITY_KG_PER_M3 * np.asarray(pressure_pa, dtype=np.float64) / STANDARD_PRESSURE_PA
    conductance: FloatArray = AIR_HEAT_J_PER_KGK * density * np.asarray(air_flow_m3_per_s, dtype=np.float64)
    return conductance


def hour_lines(rooms: RoomRows, weather: Weather) -> HourLines:
    """Return the hour's straight lines of every room, hour and day.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.

    Returns
    -------
    lines : HourLines
        Slopes (R, 1) and bases (24, R, n_day).

    Raises
    ------
    OutOfRangeError
        If a room has no mass, conducts more through opaque parts than its mass can pass on, or has more mass area and
        windows than surface.

    Notes
    -----
    ISO 13790:2008 annex C (C.1 to C.11) with the plant at the air node, written so that a room without air exchange or
    windows needs no division by 0. Departs from the source: heat from the ground joins the opaque path at its own
    temperature, and sun and sky act on the opaque path's outer end (sol-air), where they are absorbed, not inside.

    References
    ----------
    .. [1] ISO 13790:2008, 12.2 and annex C.
    """
    h = _conductances(rooms, weather.pressure_pa)
    past_air = h.surface_air / (h.air + h.surface_air)
    h1 = h.air * past_air
    h2 = h1 + h.window
    past_surface = h.mass_surface / (h2 + h.mass_surface)
    h3 = h2 * past_surface
    inertia, outflow = h.capacity / HOUR_S, (h3 + h.outer_mass) / 2.0
    to_surface = 1.0 / (h.mass_surface + h.window + h1)
    to_air = 1.0 / (h.surface_air + h.air)
    mass_per_mass = (inertia - outflow) / (inertia + outflow)
    air_per_surface_w = h.surface_air * to_air * to_surface
    air_per_mean_mass = air_per_surface_w * h.mass_surface
    mass_per_w = past_surface * past_air / (inertia + outflow)
    surface_w, mass_w, air_w = _node_heat_w(rooms, weather, h)
    surface_w += past_air * air_w
    mass_base_c = (mass_w + past_surface * surface_w) / (inertia + outflow)
    air_base_c = air_per_mean_mass / 2.0 * mass_base_c + air_per_surface_w * surface_w + to_air * air_w
    air_per_w = air_per_mean_mass * mass_per_w / 2.0 + air_per_surface_w * past_air + to_air
    return HourLines(
        air_per_mass=air_per_mean_mass * (1.0 + mass_per_mass) / 2.0,
        air_per_w=air_per_w,
        mass_per_mass=mass_per_mass,
        mass_per_w=mass_per_w,
        air_base_c=air_base_c,
        mass_base_c=mass_base_c,
    )


def sun_w(aperture_m2: FloatArray, weather: Weather) -> FloatArray:
    """Return the sun that an aperture on nine faces lets in.

    Parameters
    ----------
    aperture_m2 : array_like, shape (R, 9)
        Area of full sun, per face. [m^2]
    weather : Weather
        Days, n_day of them.

    Returns
    -------
    sun_w : ndarray, shape (24, R, n_day)
        Heat. [W]

    Notes
    -----
    Summed by `numpy.einsum`, not by a matrix product: a row then gives the same last digit alone and among others.
    """
    heat_w: FloatArray = np.einsum("rf,hdf->hrd", aperture_m2, weather.irradiance)
    return heat_w


def outer_w(rooms: RoomRows, weather: Weather) -> FloatArray:
    """Return the heat that outdoor air, sun and ground drive into the opaque path's outer end, room at 0 degC.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.

    Returns
    -------
    outer_w : ndarray, shape (24, R, n_day)
        Conductance times temperature, sun and sky included. [W]
    """
    dry_bulb_c = weather.dry_bulb_c[:, None, :] + rooms.warming_k[:, None]
    ground_w = rooms.ua_ground_w_per_k[:, None] * rooms.ground_c[:, weather.month]
    heat_w: FloatArray = rooms.ua_opaque_w_per_k[:, None] * dry_bulb_c
    heat_w += sun_w(rooms.opaque_aperture_m2, weather)
    heat_w += ground_w - rooms.sky_loss_w[:, None]
    return heat_w


def _conductances(rooms: RoomRows, pressure_pa: float) -> _Conductances:
    mass_surface = MASS_TO_SURFACE_W_PER_M2K * rooms.mass_area_m2
    outer = rooms.ua_opaque_w_per_k + rooms.ua_ground_w_per_k
    total_area_m2 = SURFACE_PER_FLOOR_FRAC * rooms.floor_area_m2
    window = rooms.ua_window_w_per_k
    mass_share = rooms.mass_area_m2 / total_area_m2
    window_share = window / (MASS_TO_SURFACE_W_PER_M2K * total_area_m2)
    _check_smallest("heat capacity of a room", rooms.mass_j_per_k, "J/K")
    _check_smallest("mass conductance less opaque conductance of a room", mass_surface - outer, "W/K")
    _check_smallest("surface of a room left beside mass and windows", 1.0 - mass_share - window_share, "")
    columns = (
        air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.asarray(pressure_pa)),
        window,
        SURFACE_TO_AIR_W_PER_M2K * total_area_m2,
        mass_surface,
        outer / (1.0 - outer / mass_surface),
        rooms.mass_j_per_k,
        mass_share,
        1.0 - mass_share - window_share,
    )
    return _Conductances(*(column[:, None] for column in columns))


def _node_heat_w(rooms: RoomRows, weather: Weather, h: _Conductances) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return heat into the surface, mass and air nodes, shape (24, R, n_day), outdoor temperatures included."""
    dry_bulb_c = weather.dry_bulb_c[:, None, :] + rooms.warming_k[:, None]
    gain_w = rooms.gain_w.T[:, :, None]
    inside_w = sun_w(rooms.window_aperture_m2, weather)
    inside_w += (1.0 - GAIN_TO_AIR_FRAC) * gain_w
    inner_slope = 1.0 + h.outer_mass / h.mass_surface
    mass_w = outer_w(rooms, weather)
    mass_w *= inner_slope
    mass_w += h.mass_share * inside_w
    inside_w *= h.surface_share
    inside_w += h.window * dry_bulb_c
    air_w = h.air * dry_bulb_c
    air_w += GAIN_TO_AIR_FRAC * gain_w
    return inside_w, mass_w, air_w


def _check_smallest(name: str, values: FloatArray, unit: str) -> None:
    if not np.all(values > 0.0):
        raise OutOfRangeError(name, float(np.min(values)), unit, "above 0", "Check areas, U-values and mass.")
