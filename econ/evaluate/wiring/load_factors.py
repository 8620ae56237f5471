"""Design cooling of a case's rooms by residential load factors."""

from collections.abc import Mapping
from dataclasses import fields

import numpy as np

from econ.climate.weather import FACES, Weather
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.reading import amount, given, is_option, room_amount
from econ.evaluate.wiring.room_measures import HOUSE_SHARE
from econ.evaluate.wiring.room_shell import below_frac, shell_of, side_faces
from econ.kernel.arrays import BoolArray, FloatArray
from econ.loads.design_load import PIECES, FactorLoads, coolest_c
from econ.loads.load_factors import MOST_GLASS_FRAC, Envelope, sensible_parts, sun_factor_w_per_m2
from econ.loads.network import air_conductance_w_per_k
from econ.loads.rooms import RoomRows

Values = Mapping[str, FloatArray]


def factor_loads(
    structure: Structure, values: Values, rooms: RoomRows, hot_day: Weather, latitude_deg: float
) -> FactorLoads:
    """Return sensible design cooling by load factors, room by room.

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path. [any]
    rooms : RoomRows
        Rooms on the design day, its extra warmth in `warming_k`.
    hot_day : Weather
        The hot design day.
    latitude_deg : float
        North positive. [degree]

    Returns
    -------
    found : FactorLoads
        Air at the day's highest temperature, people and things at their daily mean.
    """
    n_row = len(rooms.floor_area_m2) // structure.n_rooms
    envelope = envelopes(structure, values, n_row)
    difference_k = hot_day.dry_bulb_c.max() + rooms.warming_k - coolest_c(rooms)
    sun_factor = sun_factor_w_per_m2(latitude_deg, hot_day.irradiance[:, 0])
    parts = sensible_parts(envelope, difference_k, np.asarray(np.ptp(hot_day.dry_bulb_c)), sun_factor)
    air = air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.asarray(hot_day.pressure_pa))
    left = _left_frac(structure, values, n_row)
    by_piece = {
        "walls, roof and floor": left * (parts.opaque_w + parts.slab_w),
        "windows, conduction": left * parts.window_w,
        "windows, sun": left * parts.sun_w,
        "outdoor air": air * difference_k,
        "people and things": rooms.gain_w.mean(axis=1),
    }
    piece_w = np.stack([by_piece.get(piece, np.zeros_like(difference_k)) for piece in PIECES], axis=1)
    is_glassy = envelope.glass_area_m2 > MOST_GLASS_FRAC * envelope.floor_area_m2
    return FactorLoads(
        sensible_w=np.maximum(piece_w.sum(axis=1), 0.0),
        piece_w=piece_w,
        is_glassy=is_glassy,
        glass_area_m2=envelope.glass_area_m2,
        floor_area_m2=envelope.floor_area_m2,
    )


def _left_frac(structure: Structure, values: Values, n_row: int) -> FloatArray:
    """Return what the house's own system leaves of each room's load, (R,); air and gains hold it already."""
    shares = [given(values, f"rooms[{index}].{HOUSE_SHARE}", n_row) for index in range(structure.n_rooms)]
    left: FloatArray = 1.0 - np.nan_to_num(np.concatenate(shares))
    return left


def envelopes(structure: Structure, values: Values, n_row: int) -> Envelope:
    """Return what load factors need of all rooms, room by room.

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path. [any]
    n_row : int
        B, the number of decision rows.

    Returns
    -------
    envelope : Envelope
        R rows, in the order of `econ.evaluate.wiring.loads.room_rows`.
    """
    each = [_envelope(values, index, n_row) for index in range(structure.n_rooms)]
    return Envelope(*(np.concatenate([getattr(one, field.name) for one in each]) for field in fields(Envelope)))


def _envelope(values: Values, index: int, n_row: int) -> Envelope:
    shell = shell_of(values, index, n_row)
    area_m2, wall_u, roof_u, floor_u, window_u, shgc, absorptance = (
        room_amount(values, index, name, n_row)
        for name in (
            "floor_area_m2",
            "wall_u_w_per_m2k",
            "roof_u_w_per_m2k",
            "floor_u_w_per_m2k",
            "window_u_w_per_m2k",
            "window_shgc_frac",
            "absorptance_frac",
        )
    )
    wall_ua = wall_u[:, None] * np.maximum(shell.gross_m2 - shell.buried_m2 - shell.window_m2, 0.0)
    is_sunlit = shell.side_sun_frac > 0.0
    above, below = f"rooms[{index}].above", f"rooms[{index}].below"
    is_unheated_below = _is_any(values, below, n_row, "unheated_room", "not_known")
    glass_m2 = shell.window_m2 * is_sunlit
    aperture = glass_m2 * (shgc * amount(values, f"rooms[{index}].shade_frac", n_row))[:, None]
    sun_area = np.zeros((n_row, len(FACES)))
    sun_area[np.arange(n_row)[:, None], side_faces(values, index, n_row)] = aperture
    return Envelope(
        floor_area_m2=area_m2,
        glass_area_m2=glass_m2.sum(axis=1),
        attic_w_per_k=roof_u * area_m2 * is_option(values, above, "vented_attic", n_row),
        roof_w_per_k=roof_u * area_m2 * _is_any(values, above, n_row, "flat_roof", "sloped_roof", "not_known"),
        sunlit_wall_w_per_k=(wall_ua * is_sunlit).sum(axis=1),
        open_floor_w_per_k=floor_u * area_m2 * is_option(values, below, "open_air", n_row),
        crawl_floor_w_per_k=floor_u * area_m2 * is_option(values, below, "vented_crawl", n_row),
        partition_w_per_k=(wall_ua * shell.side_frac * ~is_sunlit).sum(axis=1)
        + floor_u * area_m2 * below_frac(values, index, n_row) * is_unheated_below,
        slab_area_m2=area_m2 * is_option(values, below, "slab_on_grade", n_row),
        window_w_per_k=(window_u[:, None] * shell.window_m2 * shell.side_frac).sum(axis=1),
        sun_area_m2=sun_area,
        roof_absorptance_frac=absorptance,
    )


def _is_any(values: Values, path: str, n_row: int, *options: str) -> BoolArray:
    """Return in which rows a choice is one of some options."""
    found: BoolArray = np.logical_or.reduce([is_option(values, path, option, n_row) for option in options])
    return found
