"""The weather and the rooms of a result: what a reader looks at first."""

from collections.abc import Mapping

import numpy as np

from econ.climate.weather import Weather
from econ.evaluate.design import DesignRows
from econ.evaluate.physics import Physics
from econ.evaluate.result import Block, ClimateSummary, RoomLoads
from econ.evaluate.shortage import taken
from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate, loads
from econ.evaluate.wiring.bills import FACTORS
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.loads.balance_point import balance_point_c
from econ.loads.block_load import BlockLoads
from econ.loads.design_load import LOSSES, METHODS, PIECES
from econ.loads.hand_check import HAND_PARTS, hand_check
from econ.loads.network import air_conductance_w_per_k, window_sun_w
from econ.loads.rooms import RoomRows
from econ.tables.loaders import Tables

Values = Mapping[str, FloatArray]


def cooling_by_month_kd(structure: Structure, values: Values, tables: Tables, n_row: int) -> FloatArray:
    """Return cooling degree-days at 65 degF of each month, warming included, shape (B, 12). [K*day]"""
    return climate.degree_days_kd(structure, values, tables, n_row)[1]


def climate_summary(structure: Structure, values: Values, tables: Tables, hours: Physics) -> ClimateSummary:
    """Return the weather behind a result, first row.

    Parameters
    ----------
    structure : Structure
        Station.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : Tables
        Stations.
    hours : Physics
        Its temperature bins.
    """
    station = climate.station(structure, tables)
    warming = float(np.ravel(values["place.warming_offset_k"])[0])
    first = {"place.warming_offset_k": np.asarray(warming)}
    heating_kd, cooling_kd = climate.degree_days_kd(structure, first, tables, 1)
    return ClimateSummary(
        station=structure.station,
        hdd18_3_kd=float(heating_kd.sum()),
        cdd18_3_kd=float(cooling_kd.sum()),
        heat_design_c=float(np.ravel(values["place.heat_design_c"])[0]) + warming,
        cool_design_c=float(np.ravel(values["place.cool_design_c"])[0]) + warming,
        mean_c=station.mean_c + warming,
        bin_c=hours.bin_c,
        bin_h=hours.bin_h,
        bin_cool_w=hours.bin_cool_w,
        bin_heat_w=hours.bin_heat_w,
        bin_cool_high_w=hours.bin_cool_high_w,
        bin_heat_high_w=hours.bin_heat_high_w,
        period=station.period,
        basis=station.basis,
        estimated=station.estimated,
        notes=station.notes if structure.weather is None else structure.weather.notes,
    )


def room_loads(structure: Structure, values: Values, design: DesignRows, hours: Physics, weather: Weather) -> RoomLoads:
    """Return each room's loads, first row.

    Parameters
    ----------
    structure : Structure
        Room names.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    design : DesignRows
        Design loads of all rows.
    hours : Physics
        Annual need by room.
    weather : Weather
        The year's days, for the mean sun.
    """
    n_row = design.is_served.shape[1]
    first = np.arange(structure.n_rooms) * n_row
    sensible, latent, heating = hours.room_month_kwh
    own = taken(design.rooms, first)
    balance_c = room_balance_point_c(values, own, weather)
    by_bills = float(np.ravel(values.get(FACTORS["heating"], 1.0))[0])
    check = hand_check(own, weather, balance_c, heating.sum(axis=1) / by_bills)
    return RoomLoads(
        name=structure.room_names,
        is_served=design.is_served[:, 0],
        design_cooling_sensible_w=design.loads.cool_sensible_w[first],
        design_cooling_latent_w=design.loads.cool_latent_w[first],
        design_heating_w=design.loads.heat_w[first],
        annual_cooling_sensible_kwh=sensible.sum(axis=1),
        annual_cooling_latent_kwh=latent.sum(axis=1),
        annual_heating_kwh=heating.sum(axis=1),
        design_cooling_method=tuple(METHODS[code] for code in design.loads.method[first]),
        hourly_cooling_w=design.loads.hourly_sensible_w[first],
        load_factor_cooling_w=design.loads.factor_sensible_w[first],
        monthly_cooling_sensible_kwh=sensible,
        monthly_cooling_latent_kwh=latent,
        monthly_heating_kwh=heating,
        degree_day_heating_kwh=check.degree_day_kwh * by_bills,
        hand_part_label=HAND_PARTS,
        hand_part_kwh=check.part_kwh * by_bills,
        moisture_share_frac=_share_frac(latent.sum(axis=1), (sensible + latent).sum(axis=1)),
        block=_block(design.block),
        balance_point_c=balance_c,
        piece_label=PIECES,
        piece_w=design.loads.piece_w[first],
        loss_label=LOSSES,
        loss_w=design.loads.loss_w[first] * (loads.counts_heat(values, n_row)[0] > 0.0),
    )


def _share_frac(part: FloatArray, whole: FloatArray) -> FloatArray:
    """Return a part of a whole; NaN where there is none."""
    share: FloatArray = np.divide(part, whole, out=np.full_like(whole, np.nan), where=whole > 0.0)
    return share


def _block(found: BlockLoads) -> Block:
    """Return the first row of the block."""
    return Block(
        cooling_w=float(found.cooling_w[0]),
        latent_w=float(found.latent_w[0]),
        heating_w=float(found.heating_w[0]),
        method=METHODS[int(found.method[0])],
        peak_hour=int(found.peak_hour[0]),
    )


def room_balance_point_c(values: Values, rooms: RoomRows, weather: Weather) -> FloatArray:
    """Return the outdoor temperature at which each room's mean gains meet its losses, at the first row's set-point.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    rooms : RoomRows
        Rooms, R of them.
    weather : Weather
        The year's days.

    Returns
    -------
    balance_point_c : ndarray, shape (R,)
        NaN for a room that loses nothing. [degC]

    Notes
    -----
    Gains are the yearly mean of people, things and sun through windows; losses count the ground as if it followed the
    outdoor air. A hand check, not the method.
    """
    air = air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.asarray(weather.pressure_pa))
    loss = rooms.ua_opaque_w_per_k + rooms.ua_window_w_per_k + rooms.ua_ground_w_per_k + air
    sun = (window_sun_w(rooms, weather).mean(axis=0) * weather.weight_d).sum(axis=-1) / DAYS_PER_YEAR
    gain = rooms.gain_w.mean(axis=1) + sun
    inside = np.ravel(values["use.heating_setpoint_c"])[0]
    does_lose = loss > 0.0
    found = balance_point_c(inside, gain, np.where(does_lose, loss, 1.0))
    return np.where(does_lose, found, np.nan)
