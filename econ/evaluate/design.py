"""Design loads of a case: what sizes are chosen by."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from econ.climate.weather import Weather
from econ.evaluate.served import served_rooms
from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate, load_factors, loads
from econ.evaluate.wiring.reading import given
from econ.kernel.arrays import BoolArray, FloatArray
from econ.loads.block_load import BlockLoads, block_loads
from econ.loads.design_load import (
    DesignLoads,
    coolest_c,
    design_loads,
    governed,
    heating_pieces_w,
    warmest_c,
    with_own,
)
from econ.loads.infiltration import cooling_driving_m_per_s, heating_driving_m_per_s
from econ.loads.rooms import RoomRows
from econ.tables.loaders import Tables

Values = Mapping[str, FloatArray]


@dataclass(frozen=True, slots=True, eq=False)
class DesignRows:
    """Design loads of all rooms and rows, and of the served rooms taken as one.

    Attributes
    ----------
    rooms : RoomRows
        Rooms, R of them, room by room.
    loads : DesignLoads
        By room row, shape (R,).
    is_served : ndarray of bool, shape (n_rooms, B)
        Whether the indoor unit can be counted on.
    block : BlockLoads
        The served rooms as one, shape (B,).
    heat_design_c, cool_design_c : ndarray, shape (B,)
        Outdoor design dry bulbs, warming included. [degC]
    """

    rooms: RoomRows
    loads: DesignLoads
    is_served: BoolArray
    block: BlockLoads
    heat_design_c: FloatArray
    cool_design_c: FloatArray

    @property
    def cooling_w(self) -> FloatArray:
        """Total cooling of the block, shape (B,). [W]"""
        return self.block.cooling_w

    @property
    def latent_w(self) -> FloatArray:
        """Latent part of it, shape (B,). [W]"""
        return self.block.latent_w

    @property
    def heating_w(self) -> FloatArray:
        """Heating of the block, shape (B,). [W]"""
        return self.block.heating_w


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
    hot_day = climate.hot_day(structure, tables)
    summer = _in_summer(structure, values, tables, rooms, hot_day)
    latitude_deg = climate.station(structure, tables).latitude_deg
    by_factors = load_factors.factor_loads(structure, values, summer, hot_day, latitude_deg)
    cold_c = np.resize(np.broadcast_to(climate.heat_design_c(values), (n_row,)), len(rooms.warming_k))
    loss_w = heating_pieces_w(_in_winter(structure, values, rooms, cold_c), cold_c, hot_day.pressure_pa)
    hourly = design_loads(summer, hot_day, cold_c, loads.humidity_limit_frac(structure, values, n_row))
    hourly = replace(hourly, heat_w=np.maximum(loss_w.sum(axis=1), 0.0), loss_w=loss_w)
    own_w = (_own_w(structure, values, f"own_{duty}_w", n_row) for duty in ("cooling", "heating"))
    found = with_own(governed(hourly, by_factors), rooms, *own_w)
    found = replace(found, heat_w=found.heat_w * np.tile(loads.counts_heat(values, n_row), structure.n_rooms))
    is_served = served_rooms(structure, values, n_row)
    warming = np.broadcast_to(values["place.warming_offset_k"], (n_row,))
    return DesignRows(
        rooms=rooms,
        loads=found,
        is_served=is_served,
        block=block_loads(found, by_factors, is_served),
        heat_design_c=climate.heat_design_c(values) + warming,
        cool_design_c=np.asarray(values["place.cool_design_c"]) + warming,
    )


def _in_summer(structure: Structure, values: Values, tables: Tables, rooms: RoomRows, hot_day: Weather) -> RoomRows:
    """Return the rooms as the hot day meets them: at the row's own design dry bulb, its air through measured leaks."""
    n_row = len(rooms.floor_area_m2) // structure.n_rooms
    met = climate.on_design_days(rooms, climate.hotter_k(structure, values, tables), n_row)
    warmer_k = hot_day.dry_bulb_c.max() + met.warming_k - coolest_c(met)
    return _with_air(structure, values, met, cooling_driving_m_per_s(_height_m(met), warmer_k))


def _in_winter(structure: Structure, values: Values, rooms: RoomRows, cold_c: FloatArray) -> RoomRows:
    """Return the rooms as the cold night meets them: its air through measured leaks."""
    warmer_k = warmest_c(rooms) - cold_c - rooms.warming_k
    return _with_air(structure, values, rooms, heating_driving_m_per_s(_height_m(rooms), warmer_k))


def _with_air(structure: Structure, values: Values, rooms: RoomRows, driving_m_per_s: FloatArray) -> RoomRows:
    """Return rooms with a design day's air where their leaks were measured; elsewhere the year's mean stays."""
    n_row = len(rooms.floor_area_m2) // structure.n_rooms
    leakage_m2 = np.concatenate([loads.leakage_area_m2(values, index, n_row) for index in range(structure.n_rooms)])
    flow = np.where(np.isnan(leakage_m2), rooms.air_flow_m3_per_s, leakage_m2 * driving_m_per_s)
    return replace(rooms, air_flow_m3_per_s=flow)


def _height_m(rooms: RoomRows) -> FloatArray:
    height: FloatArray = rooms.volume_m3 / rooms.floor_area_m2
    return height


def _own_w(structure: Structure, values: Values, name: str, n_row: int) -> FloatArray:
    """Return what the user calculated elsewhere for each room row; NaN where nothing."""
    return np.concatenate([given(values, f"rooms[{index}].{name}", n_row) for index in range(structure.n_rooms)])
