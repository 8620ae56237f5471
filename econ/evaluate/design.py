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
from econ.loads.design_load import DesignLoads, design_loads, governed, with_own
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
    hot_day = climate.hot_day(structure, tables)
    by_factors = load_factors.factor_loads(
        structure, values, met, hot_day, climate.station(structure, tables).latitude_deg
    )
    found = governed(design_loads(met, hot_day, colder_c, limit), by_factors)
    found = with_own(found, *(_own_w(structure, values, f"own_{duty}_w", n_row) for duty in ("cooling", "heating")))
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


def _own_w(structure: Structure, values: Values, name: str, n_row: int) -> FloatArray:
    """Return what the user calculated elsewhere for each room row; NaN where nothing."""
    return np.concatenate([given(values, f"rooms[{index}].{name}", n_row) for index in range(structure.n_rooms)])
