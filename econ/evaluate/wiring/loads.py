"""Rooms of a case: from values by path to room rows."""

from collections.abc import Mapping
from dataclasses import dataclass, fields

import numpy as np

from econ.case.choices import CHOICES
from econ.climate.weather import Weather
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.earth import Months, ground_of, months_of, soil_of
from econ.evaluate.wiring.reading import amount, codes, given, is_option, room_amount
from econ.evaluate.wiring.room_measures import with_measures
from econ.evaluate.wiring.room_shell import shell_of, skin_of
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import VAPOUR_HEAT_J_PER_KG
from econ.loads import gains, infiltration, schedule, surfaces
from econ.loads.rooms import RoomRows

Values = Mapping[str, FloatArray]


@dataclass(frozen=True, slots=True, eq=False)
class _Use:
    """Hours, set-points and gains of one room; fields as those of `RoomRows`."""

    gain_w: FloatArray
    moisture_gain_kg_per_s: FloatArray
    heat_setpoint_c: FloatArray
    cool_setpoint_c: FloatArray
    is_heated: BoolArray
    is_cooled: BoolArray
    is_dried: BoolArray
    cool_day_above_c: FloatArray


def room_rows(structure: Structure, values: Values, n_row: int, weather: Weather) -> RoomRows:
    """Return all rooms of all decision rows, room by room: room i has rows i n_row to (i + 1) n_row.

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path; choices as positions in `CHOICES`. [any]
    n_row : int
        B, the number of decision rows.
    weather : Weather
        The year's days; their monthly means stand at the ground surface.

    Returns
    -------
    rooms : RoomRows
        n_rooms times B rows; `owner` is the decision row.

    Raises
    ------
    OutOfRangeError
        If windows are larger than the side they are in, beyond what doubt about both explains.

    Notes
    -----
    North and south sides have the room's length, east and west its area over that length. Windows in an earth side are
    taken to see the sky (above grade or in a well). The ground's surface is drawn to monthly means of air, sun, sky and
    evaporation, and warms with the air.
    """
    months = months_of(weather)
    rooms = [_room(values, index, n_row, (weather, months)) for index in range(structure.n_rooms)]
    joined = {field.name: np.concatenate([getattr(room, field.name) for room in rooms]) for field in fields(RoomRows)}
    return with_measures(structure, values, weather, RoomRows(**joined))


def humidity_limit_frac(structure: Structure, values: Values, n_row: int) -> FloatArray:
    """Return the highest relative humidity wanted in each room row.

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
    humidity_limit_frac : ndarray, shape (R,)
        In the order of `room_rows`. [dimensionless]
    """
    return np.tile(amount(values, "use.humidity_limit_frac", n_row), structure.n_rooms)


def _room(values: Values, index: int, n_row: int, air: tuple[Weather, Months]) -> RoomRows:
    weather, months = air
    shell = shell_of(values, index, n_row)
    skin = skin_of(values, index, shell)
    ua_ground, ground_c = ground_of(values, index, shell.side_m, soil_of(values, index, months, n_row))
    area_m2, height_m, mass_j_per_m2k = (
        room_amount(values, index, name, n_row) for name in ("floor_area_m2", "ceiling_height_m", "mass_j_per_m2k")
    )
    use = _use(values, index, n_row)
    return RoomRows(
        floor_area_m2=area_m2,
        volume_m3=area_m2 * height_m,
        ua_opaque_w_per_k=skin.ua_opaque_w_per_k,
        ua_window_w_per_k=skin.ua_window_w_per_k,
        ua_ground_w_per_k=ua_ground,
        ground_c=ground_c,
        air_flow_m3_per_s=_air_flow_m3_per_s(values, index, area_m2 * height_m, weather),
        mass_j_per_k=mass_j_per_m2k * area_m2,
        mass_area_m2=surfaces.mass_area_m2(area_m2, mass_j_per_m2k),
        window_aperture_m2=skin.window_aperture_m2,
        window_sun_frac=np.ones((n_row, 12)),
        opaque_aperture_m2=skin.opaque_aperture_m2,
        sky_loss_w=skin.sky_loss_w,
        gain_w=use.gain_w,
        moisture_gain_kg_per_s=use.moisture_gain_kg_per_s,
        heat_setpoint_c=use.heat_setpoint_c,
        cool_setpoint_c=use.cool_setpoint_c,
        is_heated=use.is_heated,
        is_cooled=use.is_cooled,
        is_dried=use.is_dried,
        cool_day_above_c=use.cool_day_above_c,
        warming_k=amount(values, "place.warming_offset_k", n_row),
        owner=np.arange(n_row),
    )


def leakage_area_m2(values: Values, index: int, n_row: int) -> FloatArray:
    """Return a room's measured leakage area, shape (B,); NaN where nobody measured. [m^2]"""
    area_m2 = given(values, f"rooms[{index}].leakage_area_m2", n_row)
    by_flow_m2 = infiltration.leakage_area_m2(given(values, f"rooms[{index}].air_50pa_m3_per_h", n_row))
    return np.where(np.isnan(area_m2), by_flow_m2, area_m2)


def _air_flow_m3_per_s(values: Values, index: int, volume_m3: FloatArray, weather: Weather) -> FloatArray:
    """Return the outdoor air of a year: through measured leaks, or by air changes."""
    n_row = len(volume_m3)
    by_changes = infiltration.air_flow_m3_per_s(room_amount(values, index, "infiltration_per_h", n_row), volume_m3)
    leakage_m2 = leakage_area_m2(values, index, n_row)
    if np.isnan(leakage_m2).all():
        return by_changes
    outdoor_c = weather.dry_bulb_c.mean(axis=0) + amount(values, "place.warming_offset_k", n_row)[:, None]
    too_cold_k = amount(values, "use.heating_setpoint_c", n_row)[:, None] - outdoor_c
    too_hot_k = outdoor_c - amount(values, "use.cooling_setpoint_c", n_row)[:, None]
    apart_k = np.maximum(np.maximum(too_cold_k, too_hot_k), 0.0)
    wind = amount(values, "place.wind_m_per_s", n_row)
    by_leaks = infiltration.yearly_flow_m3_per_s(leakage_m2, apart_k, wind, weather.weight_d)
    return np.where(np.isnan(leakage_m2), by_changes, by_leaks)


def _use(values: Values, index: int, n_row: int) -> _Use:
    """Return hours, set-points and gains of one room."""
    used = np.stack([schedule.is_used(option) for option in CHOICES["use.when"]])[codes(values, "use.when", n_row)]
    is_cooled = used & ~is_option(values, "use.cool", "no", n_row)[:, None]
    is_hot_days = is_option(values, "use.when", "hot_days_only", n_row)
    heat_c = amount(values, "use.heating_setpoint_c", n_row)[:, None] - np.where(used, 0.0, schedule.SETBACK_K)
    cool_c = amount(values, "use.cooling_setpoint_c", n_row)[:, None]
    sensible_w, latent_w = _gains(values, index, used)
    return _Use(
        gain_w=sensible_w,
        moisture_gain_kg_per_s=latent_w / VAPOUR_HEAT_J_PER_KG,
        heat_setpoint_c=heat_c - schedule.easing_k(used),
        cool_setpoint_c=cool_c + schedule.easing_k(is_cooled),
        is_heated=_heated_hours(values, used, n_row),
        is_cooled=is_cooled,
        is_dried=used & is_option(values, "use.dry", "yes", n_row)[:, None],
        cool_day_above_c=np.where(is_hot_days, schedule.HOT_DAY_ABOVE_C, schedule.EVERY_DAY_ABOVE_C),
    )


def counts_heat(values: Values, n_row: int) -> BoolArray:
    """Return whether heat is one of the duties asked for, shape (B,); not known counts as asked."""
    return ~is_option(values, "use.heat", "no", n_row)


def _heated_hours(values: Values, used: BoolArray, n_row: int) -> BoolArray:
    """Return the hours of heating: all day with a set-back, or only in waking hours of use where "sometimes".

    Where heat is not asked for, what heats the room now keeps it at its set-point all the same, uncounted
    (`counts_heat`); without a heater the room is left to itself.
    """
    is_always = is_option(values, "use.heat", "yes", n_row)
    is_kept_warm = ~counts_heat(values, n_row) & ~is_option(values, "now.heat", "none", n_row)
    is_sometimes = counts_heat(values, n_row) & ~is_always
    waking = is_sometimes[:, None] & used & schedule.is_waking()
    heated: BoolArray = (is_always | is_kept_warm)[:, None] | waking
    return heated


def _gains(values: Values, index: int, used: BoolArray) -> tuple[FloatArray, FloatArray]:
    """Return sensible and latent gains, (B, 24): what runs all day, people in hours of use, screens while awake."""
    n_row = len(used)
    area_m2, people, screens = (
        amount(values, f"rooms[{index}].{name}", n_row) for name in ("floor_area_m2", "people_count", "screens_count")
    )
    kitchen = is_option(values, f"rooms[{index}].kitchen", "yes", n_row).astype(np.float64)
    people_there = people[:, None] * used
    screens_on = screens[:, None] * (used & schedule.is_waking())
    all_day_w, lights_w = (given(values, f"rooms[{index}].{name}_w", n_row) for name in ("appliances", "lighting"))
    all_day_w = np.where(np.isnan(all_day_w), gains.room_sensible_w(area_m2, kitchen), all_day_w)
    sensible_w = all_day_w[:, None] + people_there * gains.PERSON_SENSIBLE_W
    sensible_w += np.nan_to_num(lights_w)[:, None] * (used & schedule.is_waking())
    latent_w = gains.room_latent_w(area_m2, kitchen)[:, None] + people_there * gains.PERSON_LATENT_W
    return sensible_w + screens_on * gains.SCREEN_W, latent_w
