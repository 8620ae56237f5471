"""The weather and the rooms of a result: what a reader looks at first."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from econ.climate.weather import Weather
from econ.evaluate.physics import Physics
from econ.evaluate.result import ClimateSummary, RoomLoads
from econ.evaluate.served import served_rooms
from econ.evaluate.shortage import taken
from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate, loads
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.loads.balance_point import balance_point_c
from econ.loads.design_load import LOSSES, PIECES, DesignLoads, design_loads
from econ.loads.network import air_conductance_w_per_k, window_sun_w
from econ.loads.rooms import RoomRows
from econ.tables.loaders import Tables

Values = Mapping[str, FloatArray]


@dataclass(frozen=True, slots=True, eq=False)
class DesignRows:
    """Design loads of all rooms and rows, and their sums over the served rooms.

    Attributes
    ----------
    rooms : RoomRows
        Rooms, R of them, room by room.
    loads : DesignLoads
        By room row, shape (R,).
    is_served : ndarray of bool, shape (n_rooms, B)
        Whether the indoor unit can be counted on.
    cooling_w, latent_w, heating_w : ndarray, shape (B,)
        Total cooling, its latent part and heating of the served rooms. [W]
    heat_design_c, cool_design_c : ndarray, shape (B,)
        Outdoor design dry bulbs, warming included. [degC]
    """

    rooms: RoomRows
    loads: DesignLoads
    is_served: BoolArray
    cooling_w: FloatArray
    latent_w: FloatArray
    heating_w: FloatArray
    heat_design_c: FloatArray
    cool_design_c: FloatArray


def design_rows(structure: Structure, values: Values, tables: Tables, weather: Weather, n_row: int) -> DesignRows:
    """Return the design loads of every row.

    Parameters
    ----------
    structure : Structure
        Station and rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : Tables
        Stations.
    weather : Weather
        The year's days, for the ground.
    n_row : int
        B.
    """
    rooms = loads.room_rows(structure, values, n_row, weather)
    limit = loads.humidity_limit_frac(structure, values, n_row)
    hotter_k, cold_c = climate.hotter_k(structure, values, tables), climate.heat_design_c(values)
    met = climate.on_design_days(rooms, hotter_k, n_row)
    colder_c = np.resize(np.broadcast_to(cold_c - hotter_k, (n_row,)), len(met.warming_k))
    found = design_loads(met, climate.hot_day(structure, tables), colder_c, limit)
    found = replace(found, heat_w=found.heat_w * np.tile(loads.counts_heat(values, n_row), structure.n_rooms))
    is_served = served_rooms(structure, values, n_row)

    def total(by_room: FloatArray) -> FloatArray:
        summed: FloatArray = (by_room.reshape(structure.n_rooms, n_row) * is_served).sum(axis=0)
        return summed

    warming = np.broadcast_to(values["place.warming_offset_k"], (n_row,))
    return DesignRows(
        rooms=rooms,
        loads=found,
        is_served=is_served,
        cooling_w=total(found.cool_sensible_w + found.cool_latent_w),
        latent_w=total(found.cool_latent_w),
        heating_w=total(found.heat_w),
        heat_design_c=cold_c + warming,
        cool_design_c=np.asarray(values["place.cool_design_c"]) + warming,
    )


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
    sensible, latent, heating = hours.room_kwh
    return RoomLoads(
        name=structure.room_names,
        is_served=design.is_served[:, 0],
        design_cooling_sensible_w=design.loads.cool_sensible_w[first],
        design_cooling_latent_w=design.loads.cool_latent_w[first],
        design_heating_w=design.loads.heat_w[first],
        annual_cooling_sensible_kwh=sensible,
        annual_cooling_latent_kwh=latent,
        annual_heating_kwh=heating,
        balance_point_c=room_balance_point_c(values, taken(design.rooms, first), weather),
        piece_label=PIECES,
        piece_w=design.loads.piece_w[first],
        loss_label=LOSSES,
        loss_w=design.loads.loss_w[first] * (loads.counts_heat(values, n_row)[0] > 0.0),
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
