"""Outer parts of a room from a case's values: what they conduct and the sun they let in."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.climate.weather import FACES
from econ.evaluate.wiring.reading import amount, codes, is_option, looked_up, room_amount
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError
from econ.loads import surfaces

Values = Mapping[str, FloatArray]

SIDES: Final = ("north", "east", "south", "west")
SIDE_FACES: Final = np.array([FACES.index(face) for face in ("N", "E", "S", "W")])
ROOF_FACE: Final = FACES.index("horizontal")

SIDE_FRAC: Final = {
    "outside": 1.0,
    "heated_room": 0.0,
    "unheated_room": surfaces.UNHEATED_ROOM_FRAC,
    "earth": 1.0,
    "not_known": 1.0,
}
"""Part of the indoor-outdoor difference across a side; of an earth side, the part above grade."""

SIDE_SUN_FRAC: Final = {"outside": 1.0, "heated_room": 0.0, "unheated_room": 0.0, "earth": 1.0, "not_known": 1.0}

ABOVE_FRAC: Final = {
    "heated_room": 0.0,
    "vented_attic": surfaces.VENTED_ATTIC_FRAC,
    "flat_roof": 1.0,
    "sloped_roof": 1.0,
    "not_known": 1.0,
}
ABOVE_SUN_FRAC: Final = {
    "heated_room": 0.0,
    "vented_attic": surfaces.VENTED_ATTIC_SUN_FRAC,
    "flat_roof": 1.0,
    "sloped_roof": 1.0,
    "not_known": 1.0,
}
ABOVE_SKY_FRAC: Final = {
    "heated_room": 0.0,
    "vented_attic": 0.0,
    "flat_roof": 1.0,
    "sloped_roof": 1.0,
    "not_known": 1.0,
}
"""What a ceiling feels of outdoor air, of sun on the horizontal and of the sky.

Assumption: a sloped roof as a flat one.
"""

BELOW_FRAC: Final = {
    "heated_room": 0.0,
    "slab_on_grade": 0.0,
    "basement_floor": 0.0,
    "vented_crawl": surfaces.VENTED_CRAWL_FRAC,
    "unheated_room": surfaces.UNHEATED_ROOM_FRAC,
    "open_air": 1.0,
    "not_known": surfaces.UNHEATED_ROOM_FRAC,
}
"""What a floor feels of outdoor air; floors on earth feel the ground instead."""

WINDOW_DOUBT_FRAC: Final = 1.5
"""Windows may come out larger than their side by this much where both are in doubt: the side is then all glass.

Assumption: measuring doubt of length, height and windows together.
"""

SKIN_AMOUNTS: Final = (
    "floor_area_m2",
    "wall_u_w_per_m2k",
    "roof_u_w_per_m2k",
    "floor_u_w_per_m2k",
    "window_u_w_per_m2k",
    "window_shgc_frac",
    "absorptance_frac",
)


@dataclass(frozen=True, slots=True, eq=False)
class Shell:
    """Lengths and areas of one room's sides and what stands behind them, each (B, 4) in the order of `SIDES`."""

    side_m: FloatArray
    gross_m2: FloatArray
    window_m2: FloatArray
    buried_m2: FloatArray
    side_frac: FloatArray
    side_sun_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Skin:
    """What one room's outer parts conduct and let in; fields as those of `RoomRows`."""

    ua_opaque_w_per_k: FloatArray
    ua_window_w_per_k: FloatArray
    window_aperture_m2: FloatArray
    opaque_aperture_m2: FloatArray
    sky_loss_w: FloatArray


def skin_of(values: Values, index: int, shell: Shell) -> Skin:
    """Return what a room's outer parts conduct and let in, the earth apart."""
    n_row = len(shell.gross_m2)
    area_m2, wall_u, roof_u, floor_u, window_u, shgc, absorptance = (
        room_amount(values, index, name, n_row) for name in SKIN_AMOUNTS
    )
    wall_u, roof_u, floor_u = (
        surfaces.in_use_u_w_per_m2k(u, surfaces.OUTER_FILM_M2K_PER_W) for u in (wall_u, roof_u, floor_u)
    )
    window_u = surfaces.in_use_u_w_per_m2k(window_u, surfaces.RATED_WINDOW_FILM_M2K_PER_W)
    above_frac, above_sun_frac, above_sky_frac = (
        looked_up(values, f"rooms[{index}].above", table, n_row)
        for table in (ABOVE_FRAC, ABOVE_SUN_FRAC, ABOVE_SKY_FRAC)
    )
    floor_frac = below_frac(values, index, n_row)
    wall_ua = wall_u[:, None] * np.maximum(shell.gross_m2 - shell.buried_m2 - shell.window_m2, 0.0) * shell.side_frac
    window_ua = (window_u[:, None] * shell.window_m2 * shell.side_frac).sum(axis=1)
    sunlit, glass_m2 = np.zeros((n_row, len(FACES))), np.zeros((n_row, len(FACES)))
    seen_ua = wall_ua * shell.side_sun_frac
    row, faces = np.arange(n_row)[:, None], side_faces(values, index, n_row)
    sunlit[row, faces] = seen_ua
    sunlit[:, ROOF_FACE] = roof_u * area_m2 * above_sun_frac
    glass_m2[row, faces] = shell.window_m2 * shell.side_sun_frac
    shade_frac = amount(values, f"rooms[{index}].shade_frac", n_row)
    seen_walls = seen_ua.sum(axis=1) + window_ua
    return Skin(
        ua_opaque_w_per_k=wall_ua.sum(axis=1) + (roof_u * above_frac + floor_u * floor_frac) * area_m2,
        ua_window_w_per_k=window_ua,
        window_aperture_m2=surfaces.window_aperture_m2(glass_m2, shgc, shade_frac),
        opaque_aperture_m2=surfaces.opaque_aperture_m2(sunlit, absorptance),
        sky_loss_w=surfaces.sky_loss_w(seen_walls, roof_u * area_m2 * above_sky_frac),
    )


def side_faces(values: Values, index: int, n_row: int) -> IntArray:
    """Return the face of `FACES` that each of a room's `SIDES` looks at, shape (B, 4)."""
    turned = codes(values, f"rooms[{index}].north_faces", n_row)
    turned = np.where(turned < ROOF_FACE, turned, 0)
    faces: IntArray = (SIDE_FACES + turned[:, None]) % ROOF_FACE
    return faces


def below_frac(values: Values, index: int, n_row: int) -> FloatArray:
    """Return what a room's floor feels of outdoor air, shape (B,)."""
    path = f"rooms[{index}].below"
    unheated = room_amount(values, index, "unheated_frac", n_row)
    is_unheated = is_option(values, path, "unheated_room", n_row)
    return np.where(is_unheated, unheated, looked_up(values, path, BELOW_FRAC, n_row))


def shell_of(values: Values, index: int, n_row: int) -> Shell:
    """Return sides of one room: north and south as long as the room, east and west as wide."""
    area_m2 = amount(values, f"rooms[{index}].floor_area_m2", n_row)
    height_m = amount(values, f"rooms[{index}].ceiling_height_m", n_row)
    length_m = _length_m(values, index, area_m2)
    side_m = np.stack([length_m, area_m2 / length_m, length_m, area_m2 / length_m], axis=1)
    paths = [f"rooms[{index}].{side}" for side in SIDES]
    depth_m = amount(values, f"rooms[{index}].earth_depth_m", n_row)[:, None]
    is_earth = np.stack([is_option(values, path, "earth", n_row) for path in paths], axis=1)
    bottom_m = np.where(is_earth, depth_m, 0.0)
    top_m = np.maximum(bottom_m - height_m[:, None], 0.0)
    gross_m2 = side_m * height_m[:, None]
    window_m2 = np.stack([amount(values, f"rooms[{index}].window_{side}_m2", n_row) for side in SIDES], axis=1)
    if np.any(window_m2 > WINDOW_DOUBT_FRAC * gross_m2):
        excess = float(np.max(window_m2 - gross_m2))
        remedy = "Check window areas, room length and ceiling height."
        raise OutOfRangeError(f"rooms[{index}] window area less its side's area", excess, "m^2", "at most 0", remedy)
    side_frac, side_sun_frac = (
        np.stack([looked_up(values, path, table, n_row) for path in paths], axis=1)
        for table in (SIDE_FRAC, SIDE_SUN_FRAC)
    )
    is_unheated = np.stack([is_option(values, path, "unheated_room", n_row) for path in paths], axis=1)
    side_frac = np.where(is_unheated, room_amount(values, index, "unheated_frac", n_row)[:, None], side_frac)
    fitting_m2 = np.minimum(window_m2, gross_m2)
    return Shell(side_m, gross_m2, fitting_m2, side_m * (bottom_m - top_m), side_frac, side_sun_frac)


def _length_m(values: Values, index: int, area_m2: FloatArray) -> FloatArray:
    """Return the room's length; a square room where none was given."""
    path = f"rooms[{index}].length_m"
    given = amount(values, path, len(area_m2)) if path in values else np.full(len(area_m2), np.nan)
    return np.where(np.isnan(given), np.sqrt(area_m2), given)
