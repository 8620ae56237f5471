"""Design cooling by residential load factors: each surface its own factor, added up by hand or by rows.

The figures are those of ASHRAE Handbook Fundamentals (2021), ch. 17, SI edition, read in a reproduction of the chapter
and confirmed by its own worked house. The copy prints peak irradiance one column to the left: its equations give all 48
printed values to half a unit at latitudes 25 to 60, with the exposure counted from the pole side.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.weather import FACES
from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError


@dataclass(frozen=True, slots=True)
class Opaque:
    """Coefficients of one kind of opaque surface.

    Attributes
    ----------
    warmer_frac : float
        Part of the outdoor-indoor difference that it feels, OFt. [dimensionless]
    sun_k, sun_by_absorptance_k : float
        What sun adds, OFb: a constant, and a part that goes with the roof's absorptance. [K] [K]
    range_frac : float
        Part of the daily range that its mass takes off, OFr; not above 0. [dimensionless]
    """

    warmer_frac: float
    sun_k: float
    sun_by_absorptance_k: float
    range_frac: float


ATTIC: Final = Opaque(0.62, -4.5, 14.3, -0.19)
ROOF: Final = Opaque(1.0, -7.0, 38.3, -0.36)
SUNLIT_WALL: Final = Opaque(1.0, 8.2, 0.0, -0.36)
SHADED_WALL: Final = Opaque(1.0, 0.0, 0.0, -0.36)
OPEN_FLOOR: Final = Opaque(1.0, 0.0, 0.0, -0.06)
CRAWL_FLOOR: Final = Opaque(0.33, 0.0, 0.0, -0.28)
"""Ceiling under a vented attic, ceiling that is the roof, frame wall or door in and out of the sun, floor over outdoor
air and over a crawl space. ASHRAE Handbook Fundamentals (2021), ch. 17, table 7. Masonry walls count as frame: the
handbook calls that careful."""

WINDOW_RANGE_FRAC: Final = 0.46
"""Part of the daily range taken off a window's temperature difference. The same, eq. 25."""

SUN_FRAC: Final = np.array([0.27, 0.43, 0.56, 0.54, 0.53, 0.61, 0.65, 0.57, 0.73])
"""Part of the peak-hour sun that becomes load, by `FACES`: limited exposure. The same, table 13.

Assumption: a room with a unit of its own is like a flat with few exposures; the column for detached houses counts on
the house's other rooms.
"""

SLAB_W_PER_M2: Final = 1.9
SLAB_K: Final = 1.4
SLAB_FILM_M2K_PER_W: Final = 0.12
"""W/m2, K and m2 K/W of a slab on the ground, which takes a little load away. The same, eq. 23."""

CARPET_M2K_PER_W: Final = 0.21
"""m2 K/W of carpet on a rubber pad, the least a slab takes away. The same, table 17."""

LATITUDES_DEG: Final = (20.0, 60.0)
"""degree; where the irradiance equations hold, either side of the equator. The same, table 10."""

MOST_GLASS_FRAC: Final = 0.20
"""Glass over floor area above which load factors are left to the hourly run. Assumption: they were fitted to usual
houses, and one glazed side makes a room follow the sun instead."""


@dataclass(frozen=True, slots=True, eq=False)
class Envelope:
    """What load factors need of rooms, (R,) each unless said.

    Attributes
    ----------
    floor_area_m2, glass_area_m2 : ndarray
        Floor; all windows to outdoors. [m^2]
    attic_w_per_k, roof_w_per_k, sunlit_wall_w_per_k, open_floor_w_per_k, crawl_floor_w_per_k : ndarray
        Area times U-value of each kind of surface. [W/K]
    partition_w_per_k : ndarray
        The same to unheated rooms, their temperature factor folded in. [W/K]
    slab_area_m2 : ndarray
        Floor on the ground; floors and walls in the earth count nothing. [m^2]
    window_w_per_k : ndarray
        Windows, temperature factor folded in. [W/K]
    sun_area_m2 : ndarray, shape (R, 9)
        Window area times SHGC times shade, per face. [m^2]
    roof_absorptance_frac : ndarray
        Of roof or attic roof. [dimensionless]
    """

    floor_area_m2: FloatArray
    glass_area_m2: FloatArray
    attic_w_per_k: FloatArray
    roof_w_per_k: FloatArray
    sunlit_wall_w_per_k: FloatArray
    open_floor_w_per_k: FloatArray
    crawl_floor_w_per_k: FloatArray
    partition_w_per_k: FloatArray
    slab_area_m2: FloatArray
    window_w_per_k: FloatArray
    sun_area_m2: FloatArray
    roof_absorptance_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class SensibleParts:
    """Sensible cooling by where it comes from, (R,) each.

    Attributes
    ----------
    opaque_w, window_w, sun_w, slab_w : ndarray
        Walls, roof and floor; windows by temperature; windows by sun; slab on the ground, not above 0. [W]
    """

    opaque_w: FloatArray
    window_w: FloatArray
    sun_w: FloatArray
    slab_w: FloatArray


def opaque_difference_k(
    kind: Opaque, difference_k: FloatArray, range_k: FloatArray, absorptance_frac: FloatArray
) -> FloatArray:
    """Return the temperature difference that an opaque surface's load corresponds to.

    Parameters
    ----------
    kind : Opaque
        Coefficients.
    difference_k : array_like, shape (...)
        Outdoor design dry bulb less indoor temperature. [K]
    range_k : array_like, shape (...)
        Daily range of the outdoor dry bulb. [K]
    absorptance_frac : array_like, shape (...)
        Solar absorptance of the roof; walls do not ask for it. [dimensionless]

    Returns
    -------
    difference_k : ndarray, shape (...)
        OFt dt + OFb + OFr DR; times U-value and area it is the load. [K]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, eq. 21 and table 7.

    Examples
    --------
    >>> wall = opaque_difference_k(SUNLIT_WALL, np.array(9.1), np.array(9.3), np.array(0.6))
    >>> round(0.51 * float(wall), 2)
    7.12
    """
    sun_k = kind.sun_k + kind.sun_by_absorptance_k * np.asarray(absorptance_frac, dtype=np.float64)
    felt: FloatArray = kind.warmer_frac * np.asarray(difference_k) + sun_k + kind.range_frac * np.asarray(range_k)
    return felt


def window_difference_k(difference_k: FloatArray, range_k: FloatArray) -> FloatArray:
    """Return the temperature difference that a window's conducted load corresponds to.

    Parameters
    ----------
    difference_k : array_like, shape (...)
        Outdoor design dry bulb less indoor temperature. [K]
    range_k : array_like, shape (...)
        Daily range of the outdoor dry bulb. [K]

    Returns
    -------
    difference_k : ndarray, shape (...)
        dt - 0.46 DR. [K]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, eq. 25.
    """
    felt: FloatArray = np.asarray(difference_k, dtype=np.float64) - WINDOW_RANGE_FRAC * np.asarray(range_k)
    return felt


def slab_factor_w_per_m2(cover_m2k_per_w: FloatArray) -> FloatArray:
    """Return the cooling load of a slab on the ground: below 0, as it takes heat up.

    Parameters
    ----------
    cover_m2k_per_w : array_like, shape (...)
        Resistance of what lies on the slab. [m^2*K/W]

    Returns
    -------
    factor_w_per_m2 : ndarray, shape (...)
        Load of each square metre. [W/m^2]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, eq. 23.

    Examples
    --------
    >>> round(float(slab_factor_w_per_m2(np.array(0.21))), 2)
    -2.34
    """
    factor: FloatArray = SLAB_W_PER_M2 - SLAB_K / (np.asarray(cover_m2k_per_w, dtype=np.float64) + SLAB_FILM_M2K_PER_W)
    return factor


def peak_irradiance_w_per_m2(latitude_deg: float) -> FloatArray:
    """Return the peak-hour irradiance of a clear summer day on nine faces.

    Parameters
    ----------
    latitude_deg : float
        North positive; 20 to 60 either side of the equator. [degree]

    Returns
    -------
    peak_w_per_m2 : ndarray, shape (9,)
        By `FACES`. [W/m^2]

    Raises
    ------
    OutOfRangeError
        If the latitude lies outside.

    Notes
    -----
    South of the equator north and south change places.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, tables 9 and 10.
    """
    at = abs(latitude_deg)
    if not LATITUDES_DEG[0] <= at <= LATITUDES_DEG[1]:
        raise OutOfRangeError("latitude", latitude_deg, "degree", "20 to 60 from the equator", "Use the hot day's sun.")
    from_pole = np.array([0.0, 0.25, 0.5, 0.75, 1.0, 0.75, 0.5, 0.25])
    turned = from_pole if latitude_deg >= 0.0 else 1.0 - from_pole
    even = 423.5 - 12.89 * at - 0.6172 * at**2 + 0.7802 * at**2 / (turned + 1.0)
    uneven = 1240.0 * turned - 5143.0 * turned**3 + 3191.0 * turned**4 + (35.25 * at + 0.1427 * at**2) * turned
    return np.append(even + uneven, 816.2 + 10.20 * at - 0.1806 * at**2)


def sun_factor_w_per_m2(latitude_deg: float, hot_day_w_per_m2: FloatArray) -> FloatArray:
    """Return the load of each square metre of full window aperture.

    Parameters
    ----------
    latitude_deg : float
        North positive. [degree]
    hot_day_w_per_m2 : array_like, shape (24, 9)
        Sun of the hot design day. [W/m^2]

    Returns
    -------
    factor_w_per_m2 : ndarray, shape (9,)
        Peak-hour irradiance times its solar load factor, by `FACES`. [W/m^2]

    Notes
    -----
    Outside the latitudes of the printed equations the hot design day's own peak stands in their place.
    """
    is_printed = LATITUDES_DEG[0] <= abs(latitude_deg) <= LATITUDES_DEG[1]
    own_peak = np.asarray(hot_day_w_per_m2, dtype=np.float64).max(axis=0)
    peak = peak_irradiance_w_per_m2(latitude_deg) if is_printed else own_peak
    factor: FloatArray = peak * (SUN_FRAC if latitude_deg >= 0.0 else _mirrored(SUN_FRAC))
    return factor


def sensible_parts(
    envelope: Envelope, difference_k: FloatArray, range_k: FloatArray, sun_factor_w_per_m2: FloatArray
) -> SensibleParts:
    """Return the sensible cooling load of rooms' surfaces.

    Parameters
    ----------
    envelope : Envelope
        Rooms, R of them.
    difference_k : array_like, shape (R,)
        Outdoor design dry bulb less indoor temperature. [K]
    range_k : array_like, shape () or (R,)
        Daily range of the outdoor dry bulb. [K]
    sun_factor_w_per_m2 : array_like, shape (9,)
        From `sun_factor_w_per_m2`. [W/m^2]

    Returns
    -------
    parts : SensibleParts
        Air, people and things are not among them.

    Notes
    -----
    Walls and floors in the earth count nothing; a slab on the ground is taken as carpeted.

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2021), ch. 17, eq. 20 to 25.
    """
    kinds = (
        (ATTIC, envelope.attic_w_per_k),
        (ROOF, envelope.roof_w_per_k),
        (SUNLIT_WALL, envelope.sunlit_wall_w_per_k),
        (OPEN_FLOOR, envelope.open_floor_w_per_k),
        (CRAWL_FLOOR, envelope.crawl_floor_w_per_k),
    )
    absorptance = envelope.roof_absorptance_frac
    opaque_w = envelope.partition_w_per_k * np.asarray(difference_k)
    for kind, conductance in kinds:
        opaque_w = opaque_w + conductance * opaque_difference_k(kind, difference_k, range_k, absorptance)
    return SensibleParts(
        opaque_w=opaque_w,
        window_w=envelope.window_w_per_k * window_difference_k(difference_k, range_k),
        sun_w=np.einsum("rf,f->r", envelope.sun_area_m2, np.asarray(sun_factor_w_per_m2)),
        slab_w=envelope.slab_area_m2 * slab_factor_w_per_m2(np.asarray(CARPET_M2K_PER_W)),
    )


def _mirrored(by_face: FloatArray) -> FloatArray:
    """Return figures by face with north and south changed."""
    names = [name.translate(str.maketrans("NS", "SN")) if name != "horizontal" else name for name in FACES]
    return by_face[[FACES.index(name) for name in names]]
