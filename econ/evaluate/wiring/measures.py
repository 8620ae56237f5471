"""Measures on the room itself: values after them, and what they cost whichever way is gone."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.energy.fuel import fuel_kwh
from econ.evaluate.served import served_rooms
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.energy import fuel_price_usd_per_kwh, is_made_up_by_resistance
from econ.evaluate.wiring.reading import amount, is_option, looked_up
from econ.evaluate.wiring.room_shell import SIDE_SUN_FRAC, SIDES
from econ.evaluate.wiring.tariff import even_price_usd_per_kwh
from econ.installation.first_cost import Line
from econ.kernel.arrays import BoolArray, FloatArray
from econ.lifecycle.replacement import Component
from econ.loads.measure import EFFECTS, shade_pieces_count
from econ.tables.loaders import Tables
from econ.tables.lookup import Entry

Values = Mapping[str, FloatArray]

LINE_KEY: Final = "measure_"
"""How the keys of cost lines of measures begin: they are no part of any way's own work."""

FROM_NOTHING: Final = "plus"
"""A sum may start from a value that the case does not hold; a product may not."""

UNIT_WORDS: Final = {
    "shade_pieces": "window",
    "glass_m2": "m^2",
    "attic_m2": "m^2",
    "rooms": "room",
    "ducts": "room",
}
"""What a cost is for one of, in words."""


@dataclass(frozen=True, slots=True, eq=False)
class RoomWork:
    """Measures taken whichever way is gone.

    Attributes
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path with the measures done.
    lines : tuple of Line
        What they cost, own time last; the same for every way.
    own_h : ndarray, shape () or (B,)
        Own hours. [hour]
    components : tuple of Component
        What each costs and how long it lasts, shape (B,).
    components_at_zero_hour : tuple of Component
        The same with own hours at nothing.
    """

    values: Values
    lines: tuple[Line, ...]
    own_h: FloatArray
    components: tuple[Component, ...]
    components_at_zero_hour: tuple[Component, ...] = ()


NO_WORK: Final = RoomWork({}, (), np.zeros(()), ())
"""Nothing is done to the room."""


def room_work(structure: Structure, values: Values, tables: Tables, n_row: int) -> RoomWork:
    """Return the measures chosen: values after them, lines, hours and lives.

    Parameters
    ----------
    structure : Structure
        Which are chosen.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path, before them.
    tables : Tables
        What each measure does, and words of the cost table.
    n_row : int
        B.

    Returns
    -------
    work : RoomWork
        Without a measure the values as they came, and nothing to pay.
    """
    if not structure.measures:
        return RoomWork(values, (), np.zeros(n_row), ())
    is_taken = np.ones(n_row, dtype=np.bool_)
    after = treated(structure, values, tables, dict.fromkeys(structure.measures, is_taken))
    own_by_h = [own_hours_h(structure, values, tables, key, n_row) for key in structure.measures]
    own_h: FloatArray = np.sum(own_by_h, axis=0)
    bought = [_line(structure, values, tables, key, n_row) for key in structure.measures]
    value = amount(values, "work.hour_value_usd_per_h", n_row)
    source = "case: work.hour_value_usd_per_h"
    time = Line(f"{LINE_KEY}time", "Own hours for the room itself", "own_time", "self", "hour", source, own_h, value)
    lasting = tuple(_component(values, line, hours * value) for line, hours in zip(bought, own_by_h, strict=True))
    in_cash = tuple(_component(values, line, np.zeros(n_row)) for line in bought)
    return RoomWork(after, (*bought, time), own_h, lasting, in_cash)


def treated(
    structure: Structure, values: Values, tables: Tables, is_taken: Mapping[str, BoolArray]
) -> dict[str, FloatArray]:
    """Return the values with measures done in the rows that take them.

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : Tables
        What each measure does.
    is_taken : mapping of str to ndarray, shape (B,)
        In which rows each measure is taken.

    Returns
    -------
    values : dict of str to ndarray, shape () or (B,)
        Only the paths a measure names are changed, and only where there is something to do: glass, an attic, a room
        that the unit serves.
    """
    after = dict(values)
    for key, rows in is_taken.items():
        measure = tables.measures[key]
        by_room = quantities(structure, values, len(rows))[measure.text("per")]
        effect, how = values[effect_path(key, measure)], measure.text("how")
        for path, is_done in _places(measure.text("paths"), rows & (by_room > 0.0)):
            if path in after or how == FROM_NOTHING:
                before = after.get(path, np.zeros(()))
                after[path] = np.where(is_done, EFFECTS[how](before, effect), before)
        for path, is_done in _places(measure.text("undone"), rows & (by_room > 0.0)):
            after[path] = np.where(is_done, 1.0 / effect, 1.0)
    return after


def _places(paths: str, is_done: BoolArray) -> Iterator[tuple[str, BoolArray]]:
    """Yield each path a measure changes with the rows to change it in; a path of no room once, where any has it."""
    for path in paths.split():
        if "[]" not in path:
            yield path, np.asarray(is_done.any(axis=0))
            continue
        for index, rows in enumerate(is_done):
            yield path.replace("[]", f"[{index}]"), rows


def effect_path(key: str, measure: Entry) -> str:
    """Return where the effect of a measure stands among the values."""
    return f"measures.{key}.{measure.text('figure')}"


def quantities(structure: Structure, values: Values, n_row: int) -> dict[str, FloatArray]:
    """Return how much of each thing there is to do in each room that the unit serves, shape (n_rooms, B).

    Parameters
    ----------
    structure : Structure
        Number of rooms.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.

    Returns
    -------
    quantities : dict of str to ndarray, shape (n_rooms, B)
        By the word of the measures' table: pieces of shade, glass that the sun can reach, floor of the attic above,
        rooms, and ducts of a house system that serves the room poorly. [any]
    """
    is_served = served_rooms(structure, values, n_row).astype(np.float64)
    rooms = range(structure.n_rooms)
    glass_m2 = np.stack([_sunny_glass_m2(values, index, n_row) for index in rooms]) * is_served
    attic_m2 = np.stack(
        [
            amount(values, f"rooms[{index}].floor_area_m2", n_row)
            * is_option(values, f"rooms[{index}].above", "vented_attic", n_row)
            for index in rooms
        ]
    )
    return {
        "shade_pieces": shade_pieces_count(glass_m2),
        "glass_m2": glass_m2,
        "attic_m2": attic_m2 * is_served,
        "rooms": is_served,
        "ducts": is_served * is_option(values, "now.house_system", "poorly", n_row),
    }


def _sunny_glass_m2(values: Values, index: int, n_row: int) -> FloatArray:
    """Return the glass of a room that the sun can reach, shape (B,); the side away from the sun sees the sky."""
    room = f"rooms[{index}]"
    seen = [
        amount(values, f"{room}.window_{side}_m2", n_row) * looked_up(values, f"{room}.{side}", SIDE_SUN_FRAC, n_row)
        for side in SIDES
    ]
    glass_m2: FloatArray = np.sum(seen, axis=0)
    return glass_m2


def own_hours_h(structure: Structure, values: Values, tables: Tables, key: str, n_row: int) -> FloatArray:
    """Return the user's own hours of one measure, shape (B,). [hour]"""
    return _quantity(structure, values, tables, key, n_row) * amount(values, f"measures.{key}.own_h", n_row)


def unit_price_usd(values: Values, tables: Tables, key: str, n_row: int) -> FloatArray:
    """Return what one of a measure costs, shape (B,); sales tax on top where the user buys the goods. [USD]"""
    measure = tables.measures[key]
    price = amount(values, f"costs.{measure.text('cost')}", n_row)
    is_bought = measure.text("party") == "self"
    return price * (1.0 + amount(values, "money.sales_tax_frac", n_row)) if is_bought else price


def _quantity(structure: Structure, values: Values, tables: Tables, key: str, n_row: int) -> FloatArray:
    total: FloatArray = quantities(structure, values, n_row)[tables.measures[key].text("per")].sum(axis=0)
    return total


def _line(structure: Structure, values: Values, tables: Tables, key: str, n_row: int) -> Line:
    measure = tables.measures[key]
    return Line(
        key=f"{LINE_KEY}{key}",
        label=f"{measure.text('label')}, tax in" if measure.text("party") == "self" else measure.text("label"),
        category="measures",
        party=measure.text("party"),
        unit=UNIT_WORDS[measure.text("per")],
        source=tables.costs[measure.text("cost")].text("source"),
        quantity=_quantity(structure, values, tables, key, n_row),
        unit_price_usd=unit_price_usd(values, tables, key, n_row),
    )


def _component(values: Values, line: Line, own_usd: FloatArray) -> Component:
    """Return a measure as something that lasts its life and is done again, own time priced, in service from year 0."""
    price = line.quantity * line.unit_price_usd + own_usd
    life = amount(values, f"measures.{line.key.removeprefix(LINE_KEY)}.life_yr", len(price))
    return Component(price, price, life, life, np.zeros(len(price)))


def fans_count(structure: Structure, values: Values, n_row: int) -> FloatArray:
    """Return how many fans are put in, one in each room that the unit serves, shape (B,)."""
    if "fan" not in structure.measures:
        return np.zeros(n_row)
    fans: FloatArray = quantities(structure, values, n_row)["rooms"].sum(axis=0)
    return fans


def running_usd_per_yr(values: Values, fan_count: FloatArray, cool_kwh: FloatArray, heat_kwh: FloatArray) -> FloatArray:
    """Return what the measures cost to run, the same whichever way is gone.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path with the measures done.
    fan_count : ndarray, shape (B,)
        Fans put in. [dimensionless]
    cool_kwh, heat_kwh : ndarray, shape (B,)
        A year's cooling, drying included, and heating left for a unit. [kWh]

    Returns
    -------
    running_usd_per_yr : ndarray, shape (B,)
        A fan's electricity, and the energy of the house system for the share it carries. [USD/year]
    """
    n_row = len(cool_kwh)
    price = np.broadcast_to(even_price_usd_per_kwh(values), (n_row,))
    running = fan_count * amount(values, "measures.fan.electric_kwh_per_yr", n_row) * price
    if "rooms[0].house_frac" in values:
        share = amount(values, "rooms[0].house_frac", n_row)
        carried = share / (1.0 - share)
        running += carried * cool_kwh / amount(values, "measures.balanced_duct.house_cop", n_row) * price
        running += heat_cost_usd(values, carried * heat_kwh)
    return running


def heat_cost_usd(values: Values, heat_kwh: FloatArray) -> FloatArray:
    """Return what heat costs from what heats the room now, resistance where nothing does, shape (B,). [USD]"""
    is_electric = is_made_up_by_resistance(values)
    efficiency = np.where(is_electric, 1.0, values["now.heat_efficiency_frac"])
    price = np.where(is_electric, even_price_usd_per_kwh(values), fuel_price_usd_per_kwh(values))
    cost: FloatArray = fuel_kwh(heat_kwh[..., None], efficiency)[..., 0] * price
    return cost
