"""The five conductances and one capacity of a room, solved for one hour as straight lines."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.weather import Weather
from econ.kernel.arrays import FloatArray, IntArray
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


@dataclass(frozen=True, slots=True, eq=False)
class _Solved:
    """The network solved for one hour, each shape (R, 1): what passes each node, and slopes as in `HourLines`."""

    past_air: FloatArray
    past_surface: FloatArray
    to_air: FloatArray
    air_per_surface_w: FloatArray
    air_per_mean_mass: FloatArray
    mass_per_mass: FloatArray
    mass_per_mass_w: FloatArray
    mass_per_w: FloatArray


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
    solved = _solved(h)
    alike = days_alike(weather)
    per_k = _bases(solved, h.window, _inner_slope(h) * rooms.ua_opaque_w_per_k[:, None], h.air)
    steady = _bases(solved, *_steady_heat_w(rooms, weather, h, alike.first))
    air_base_c, mass_base_c = (
        _with_outdoor_c(base_c, slope, rooms.warming_k, weather, alike)
        for base_c, slope in zip(steady, per_k, strict=True)
    )
    return HourLines(
        air_per_mass=solved.air_per_mean_mass * (1.0 + solved.mass_per_mass) / 2.0,
        air_per_w=solved.air_per_mean_mass * solved.mass_per_w / 2.0
        + solved.air_per_surface_w * solved.past_air
        + solved.to_air,
        mass_per_mass=solved.mass_per_mass,
        mass_per_w=solved.mass_per_w,
        air_base_c=air_base_c,
        mass_base_c=mass_base_c,
    )


@dataclass(frozen=True, slots=True, eq=False)
class DaysAlike:
    """Days that share sun and ground, so that what hangs on these alone is worked out once for all of them.

    Attributes
    ----------
    first : ndarray of int, shape (n,)
        One day of each kind. [dimensionless]
    which : ndarray of int, shape (n_day,)
        Kind of each day. [dimensionless]
    """

    first: IntArray
    which: IntArray

    @property
    def is_any(self) -> bool:
        """Return whether any two days are of a kind."""
        return len(self.first) < len(self.which)


def days_alike(weather: Weather) -> DaysAlike:
    """Return which days share sun and ground: those of a month, where all of them have its mean sun.

    Parameters
    ----------
    weather : Weather
        Days, n_day of them.

    Returns
    -------
    alike : DaysAlike
        Every day is its own kind where the days of any month differ.
    """
    _, first, which = np.unique(weather.month, return_index=True, return_inverse=True)
    if np.array_equal(weather.irradiance[:, first[which]], weather.irradiance):
        return DaysAlike(first, which)
    every = np.arange(len(weather.month))
    return DaysAlike(every, every)


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
    return _through_w(aperture_m2, weather.irradiance)


def window_sun_w(rooms: RoomRows, weather: Weather, days: IntArray | None = None) -> FloatArray:
    """Return the sun that comes in through windows, shade that changes with the seasons included.

    Parameters
    ----------
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        Days, n_day of them.
    days : ndarray of int, optional, shape (n,)
        The days wanted; all where left out. [dimensionless]

    Returns
    -------
    sun_w : ndarray, shape (24, R, n)
        Heat. [W]
    """
    which = slice(None) if days is None else days
    heat_w = _through_w(rooms.window_aperture_m2, weather.irradiance[:, which])
    if np.any(rooms.window_sun_frac != 1.0):
        heat_w *= rooms.window_sun_frac[:, weather.month[which]]
    return heat_w


def _through_w(aperture_m2: FloatArray, irradiance: FloatArray) -> FloatArray:
    heat_w: FloatArray = np.einsum("rf,hdf->hrd", aperture_m2, irradiance)
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


def _solved(h: _Conductances) -> _Solved:
    """Return what ISO 13790 annex C makes of the conductances; each shape (R, 1)."""
    past_air = h.surface_air / (h.air + h.surface_air)
    h1 = h.air * past_air
    h2 = h1 + h.window
    past_surface = h.mass_surface / (h2 + h.mass_surface)
    h3 = h2 * past_surface
    inertia, outflow = h.capacity / HOUR_S, (h3 + h.outer_mass) / 2.0
    to_surface = 1.0 / (h.mass_surface + h.window + h1)
    to_air = 1.0 / (h.surface_air + h.air)
    air_per_surface_w = h.surface_air * to_air * to_surface
    return _Solved(
        past_air=past_air,
        past_surface=past_surface,
        to_air=to_air,
        air_per_surface_w=air_per_surface_w,
        air_per_mean_mass=air_per_surface_w * h.mass_surface,
        mass_per_mass=(inertia - outflow) / (inertia + outflow),
        mass_per_mass_w=1.0 / (inertia + outflow),
        mass_per_w=past_surface * past_air / (inertia + outflow),
    )


def _bases(
    solved: _Solved, surface_w: FloatArray, mass_w: FloatArray, air_w: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Return what heat into surface, mass and air makes of the air and of the mass at the hour's end, mass at 0 degC.

    Straight in the heat, so that heat per kelvin outdoors goes through it alike.
    """
    reaching_w = surface_w + solved.past_air * air_w
    mass_base = (mass_w + solved.past_surface * reaching_w) * solved.mass_per_mass_w
    air_base = solved.air_per_mean_mass / 2.0 * mass_base
    air_base += solved.air_per_surface_w * reaching_w
    air_base += solved.to_air * air_w
    return air_base, mass_base


def _inner_slope(h: _Conductances) -> FloatArray:
    """Return what heat at the opaque path's outer end counts at the mass, shape (R, 1)."""
    return 1.0 + h.outer_mass / h.mass_surface


def _steady_heat_w(
    rooms: RoomRows, weather: Weather, h: _Conductances, days: IntArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return heat into surface, mass and air nodes on some days, outdoors at 0 degC, shape (24, R, n) or (24, R, 1)."""
    gain_w = rooms.gain_w.T[:, :, None]
    inside_w = window_sun_w(rooms, weather, days)
    inside_w += (1.0 - GAIN_TO_AIR_FRAC) * gain_w
    mass_w = _through_w(rooms.opaque_aperture_m2, weather.irradiance[:, days])
    mass_w += rooms.ua_ground_w_per_k[:, None] * rooms.ground_c[:, weather.month[days]] - rooms.sky_loss_w[:, None]
    mass_w *= _inner_slope(h)
    mass_w += h.mass_share * inside_w
    inside_w *= h.surface_share
    return inside_w, mass_w, GAIN_TO_AIR_FRAC * gain_w


def _with_outdoor_c(
    steady_c: FloatArray, per_k: FloatArray, warming_k: FloatArray, weather: Weather, alike: DaysAlike
) -> FloatArray:
    """Return a base with the outdoor temperature of every day in it, shape (24, R, n_day); uses the steady one up."""
    steady_c += per_k * warming_k[:, None]
    base_c = np.empty((*steady_c.shape[:2], len(alike.which))) if alike.is_any else steady_c
    outdoor = np.empty(base_c.shape[1:])
    for hour, dry_bulb_c in enumerate(weather.dry_bulb_c):
        if alike.is_any:
            np.take(steady_c[hour], alike.which, axis=1, out=base_c[hour], mode="clip")
        np.multiply(per_k, dry_bulb_c, out=outdoor)
        base_c[hour] += outdoor
    return base_c


def _check_smallest(name: str, values: FloatArray, unit: str) -> None:
    if not np.all(values > 0.0):
        raise OutOfRangeError(name, float(np.min(values)), unit, "above 0", "Check areas, U-values and mass.")
