"""What each measure on the room would do to its need and cost, each alone and those chosen together."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.case.choices import code
from econ.climate.weather import Weather
from econ.energy.served import monthly_kwh
from econ.evaluate.design import design_rows
from econ.evaluate.served import served_rooms
from econ.evaluate.sheet import Sheet, point
from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate, loads
from econ.evaluate.wiring.bills import by_bills
from econ.evaluate.wiring.measures import (
    UNIT_WORDS,
    effect_path,
    fans_count,
    heat_cost_usd,
    quantities,
    running_usd_per_yr,
    treated,
    unit_price_usd,
)
from econ.evaluate.wiring.reading import amount, is_option
from econ.evaluate.wiring.tariff import even_price_usd_per_kwh
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH
from econ.loads.heat_balance import need
from econ.tables.loaders import Tables

Values = Mapping[str, FloatArray]

TIGHT_PER_H: Final = 0.2
"""Air changes an hour at or below which sealing is not offered: fresh air comes first. Assumption."""

WARMEST_FAN_C: Final = 28.0
"""degC that a room with a fan may be kept at, at most. Assumption: ASHRAE 55's zone with local air speed ends there."""


@dataclass(frozen=True, slots=True)
class MeasureFacts:
    """One measure on this case's rooms.

    Attributes
    ----------
    key, label, does, words, party, unit : str
        As its table says; unit is what the price is for one of.
    is_offered, is_chosen : bool
        Whether it makes sense here, and whether the user took it.
    why_not : str
        Why it is not offered; empty where it is.
    quantity : float
        How much of it, likely values, in `unit`. [any]
    cost_usd, own_h : tuple of float
        Low, likely and high. [USD] [hour]
    """

    key: str
    label: str
    does: str
    words: str
    party: str
    unit: str
    is_offered: bool
    is_chosen: bool
    why_not: str
    quantity: float
    cost_usd: tuple[float, float, float]
    own_h: tuple[float, float, float]


@dataclass(frozen=True, slots=True, eq=False)
class RoomNeed:
    """Need of the served rooms, a row each: as they are, with each measure alone, and with those chosen together.

    Attributes
    ----------
    design_cooling_w, design_heating_w : ndarray, shape (M + 2,)
        On the design days, moisture included. Heat counts where anything keeps the room warm, whoever gives it. [W] [W]
    cooling_kwh, latent_kwh, heating_kwh : ndarray, shape (M + 2,)
        Sensible cooling, drying and heating of a year. [kWh]
    cooling_h : ndarray, shape (M + 2,)
        Hours a year that want cooling or drying. [hour]
    running_usd_per_yr : ndarray, shape (M + 2,)
        Cooling at the kit's rated efficiency, heat from what heats the room now, and what the measure itself costs to
        run. [USD/year]
    """

    design_cooling_w: FloatArray
    design_heating_w: FloatArray
    cooling_kwh: FloatArray
    latent_kwh: FloatArray
    heating_kwh: FloatArray
    cooling_h: FloatArray
    running_usd_per_yr: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class LoadMeasures:
    """Measures on the room, and what each would do.

    Attributes
    ----------
    measures : tuple of MeasureFacts, length M
        In the order of their table.
    need : RoomNeed
        Row 0 as it is without any, row 1 + m with measure m alone, the last with all that are chosen.
    """

    measures: tuple[MeasureFacts, ...]
    need: RoomNeed

    def payback_yr(self, position: int) -> float:
        """Return the years in which a measure's cash comes back in running cost, NaN where it never does. [year]"""
        running = self.need.running_usd_per_yr
        saving = float(running[0] - running[1 + position])
        return self.measures[position].cost_usd[1] / saving if saving > 0.0 else float("nan")


def load_measures(structure: Structure, sheet: Sheet, tables: Tables) -> LoadMeasures:
    """Return what every measure does at likely values: one batch of loads, a row a measure.

    Parameters
    ----------
    structure : Structure
        Rooms, and which measures are chosen.
    sheet : Sheet
        Likely values, and ranges of costs and hours.
    tables : Tables
        Stations and measures.

    Returns
    -------
    found : LoadMeasures
        Rows are whole balances, so that together is not the sum of each alone.
    """
    values, keys = point(sheet), tables.measures.keys
    alone = np.eye(len(keys) + 2, dtype=np.bool_)[1:-1]
    alone[:, -1] = [key in structure.measures for key in keys]
    rows = dict(zip(keys, alone, strict=True))
    after = treated(structure, _kept_warm(values), tables, rows)
    fans = rows["fan"] * fans_count(replace(structure, measures=("fan",)), values, 1)
    return LoadMeasures(
        measures=tuple(_facts(structure, sheet, values, tables, key) for key in keys),
        need=_need(structure, after, tables, fans),
    )


def _kept_warm(values: Values) -> Values:
    """Return the values with heat counted where what is there now keeps the room warm unasked."""
    is_unasked = float(values["use.heat"]) == code("use.heat", "no")
    has_heater = float(values["now.heat"]) != code("now.heat", "none")
    return {**values, "use.heat": np.asarray(code("use.heat", "yes"))} if is_unasked and has_heater else values


def _need(structure: Structure, values: Values, tables: Tables, fans: FloatArray) -> RoomNeed:
    n_row, weather = len(fans), climate.weather(structure, tables)
    design = design_rows(structure, values, tables, weather, n_row)
    cool_w, latent_w, heat_w = _hourly_w(structure, values, weather, n_row)
    cool, latent, heat = (
        monthly_kwh(power, weather.month, weather.weight_d).sum(axis=1) for power in (cool_w, latent_w, heat_w)
    )
    is_wanted = (cool_w + latent_w > 0.0) * weather.weight_d
    efficiency = amount(values, "kit.seer2", n_row) / BTU_PER_WH
    cooling_usd = (cool + latent) / efficiency * even_price_usd_per_kwh(values)
    return RoomNeed(
        design_cooling_w=design.cooling_w,
        design_heating_w=design.heating_w,
        cooling_kwh=cool,
        latent_kwh=latent,
        heating_kwh=heat,
        cooling_h=is_wanted.sum(axis=(0, 2)),
        running_usd_per_yr=cooling_usd
        + heat_cost_usd(values, heat)
        + running_usd_per_yr(values, fans, cool + latent, heat),
    )


def _hourly_w(
    structure: Structure, values: Values, weather: Weather, n_row: int
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return sensible cooling, drying and heating of the served rooms, each (24, rows, n_day). [W] [W] [W]"""
    rooms = loads.room_rows(structure, values, n_row, weather)
    found = need(rooms, weather, loads.humidity_limit_frac(structure, values, n_row))
    is_served = served_rooms(structure, values, n_row)

    def served_w(power_w: FloatArray) -> FloatArray:
        split = power_w.reshape(len(power_w), structure.n_rooms, n_row, -1)
        total: FloatArray = np.einsum("hrbd,rb->hbd", split, is_served)
        return total

    heat_w = by_bills(values, "heating", served_w(found.heat_w) * loads.counts_heat(values, n_row)[:, None])
    cool_w, latent_w = (by_bills(values, "cooling", served_w(part)) for part in (found.cool_w, found.latent_w))
    return cool_w, latent_w, heat_w


def _facts(structure: Structure, sheet: Sheet, values: Values, tables: Tables, key: str) -> MeasureFacts:
    measure = tables.measures[key]
    quantity = float(quantities(structure, values, 1)[measure.text("per")].sum())
    is_offered = quantity > 0.0 and bool(OFFERED[measure.text("if")](values, structure, effect_path(key, measure)))
    price = sheet.entry(f"costs.{measure.text('cost')}").spread
    tax = float(unit_price_usd(values, tables, key, 1)[0]) / price.likely if price.likely else 1.0
    hours = sheet.entry(f"measures.{key}.own_h").spread
    return MeasureFacts(
        key=key,
        **{name: measure.text(name) for name in ("label", "does", "words", "party")},
        unit=UNIT_WORDS[measure.text("per")],
        is_offered=is_offered,
        is_chosen=key in structure.measures,
        why_not="" if is_offered else measure.text("unless"),
        quantity=quantity,
        cost_usd=(quantity * price.low * tax, quantity * price.likely * tax, quantity * price.high * tax),
        own_h=(quantity * hours.low, quantity * hours.likely, quantity * hours.high),
    )


def _always(_values: Values, _structure: Structure, _effect: str) -> bool:
    """Return True: there is something to do, and no more is asked."""
    return True


def _is_draughty(values: Values, structure: Structure, _effect: str) -> bool:
    paths = [f"rooms[{index}].infiltration_per_h" for index in range(structure.n_rooms)]
    return max(float(values[path]) for path in paths) > TIGHT_PER_H


def _is_cooled(values: Values, _structure: Structure, effect: str) -> bool:
    is_asked = not bool(is_option(values, "use.cool", "no", 1)[0])
    return is_asked and float(values["use.cooling_setpoint_c"] + values[effect]) <= WARMEST_FAN_C


OFFERED: Final[dict[str, Callable[[Values, Structure, str], bool]]] = {
    "has_glass": _always,
    "under_attic": _always,
    "house_poorly": _always,
    "is_draughty": _is_draughty,
    "is_cooled": _is_cooled,
}
"""Whether a measure makes sense where there is something to do, by the word of its table."""
