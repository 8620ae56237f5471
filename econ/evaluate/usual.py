"""Usual values: a line of the sheet for every field of the case, from what was said or from a table."""

import math
from collections.abc import Callable, Mapping
from typing import Final

from econ.case.choices import NOT_KNOWN, table_path
from econ.case.form import FieldInfo
from econ.case.quantity import Amount
from econ.evaluate.draft import Draft
from econ.evaluate.usual_price import (
    OTHER_USE,
    clock_change,
    fuel_spread,
    is_read,
    other_use_spread,
    price_spread,
    tariff_spread,
)
from econ.kernel.spread import Spread
from econ.tables.loaders import era
from econ.tables.lookup import Entry as TableRow

LATER: Final = frozenset(
    {"sizing", "window.price_usd", "window.ceer", "ductless.volts", "ductless.mca_a", "ductless.mop_a"}
) | {
    f"{table}.{column}"
    for table in ("ductless", "trade")
    for column in ("price_usd", "line_set_m", "seer2", "eer2", "hspf2")
}
"""Usual values that wait for the size chosen: written by `evaluate/machines.py`."""

NO_LINE: Final = frozenset({"optional", "as_kit", "structure"})
"""Fields that have no line of their own until the user gives a value: nothing holds, or the kit's line does.

Those of "structure" never have one: they pick the weather, and no draw moves them.
"""

DESIGN_DOUBT_K: Final = 1.5
"""K of doubt about a design dry bulb read from one typical year: 1 to 2, as the stations' record says."""

USUAL_WIND_M_PER_S: Final = 3.7
"""m/s; mean of the station table, for a station without wind."""

YOURS: Final = "what you said"
MEASURED: Final = "what you said, with the doubt of such a figure (assumption)"


def write_usual(draft: Draft) -> None:
    """Write the line of every choice, then of every amount, but for those that wait for a size.

    Parameters
    ----------
    draft : Draft
        Gains the lines.
    """
    for path, info in draft.fields.items():
        if info.kind == "choice":
            write_choice(draft, path)
    for path, info in sorted(draft.fields.items(), key=_is_looked_up):
        if info.kind == "amount":
            write_amount(draft, path, info)


def write_choice(draft: Draft, path: str) -> None:
    """Write the line of one choice."""
    row = draft.tables.inputs[table_path(path)]
    said = draft.said(path)
    if isinstance(said, str):
        draft.put_choice(path, said, YOURS, "not_known" if said == NOT_KNOWN else "yours")
    elif row.text("from") in LATER:
        return
    else:
        draft.put_choice(path, row.text("choice") or CHOSEN[row.text("from")](draft, path), row.text("source"), "usual")


def write_amount(draft: Draft, path: str, info: FieldInfo) -> None:
    """Write the line of one amount; an optional one that was not given has none."""
    row = draft.tables.inputs[table_path(path)]
    said = draft.said(path)
    if row.text("from") == "structure":
        return
    if isinstance(said, Amount) and not said.is_unknown:
        draft.put(path, said_spread(said, row, info), info.unit, "yours")
        return
    spread = usual_spread(draft, path, row)
    if spread is None:
        return
    if said is None:
        draft.put(path, spread, info.unit)
    else:
        draft.put(path, unknown_spread(spread, row, info), info.unit, "not_known")


def usual_spread(draft: Draft, path: str, row: TableRow) -> Spread | None:
    """Return the usual range of a field, or None where it waits for a size or has none."""
    source = row.text("from")
    if not is_read(draft, path):
        return None
    if not source:
        return (other_use_spread(draft) if path == OTHER_USE else None) or row.spread()
    if source in NO_LINE or source in LATER:
        return None
    found = LOOKED_UP[source.partition(".")[0]](draft, path, source)
    doubt = row.number("doubt_frac")
    if found.low == found.high and not math.isnan(doubt):
        return Spread(found.likely * (1.0 - doubt), found.likely, found.likely * (1.0 + doubt), found.source)
    return found


def said_spread(said: Amount, row: TableRow, info: FieldInfo) -> Spread:
    """Return the range of a value the user gave: as given, or with the measuring doubt of such a figure."""
    if said.is_range:
        return Spread(said.low, said.likely, said.high, YOURS)
    doubt = row.number("said_doubt_frac")
    doubt = 0.0 if math.isnan(doubt) else doubt
    low, high = sorted((said.likely * (1.0 - doubt), said.likely * (1.0 + doubt)))
    return Spread(max(low, min(info.low, said.likely)), said.likely, min(high, max(info.high, said.likely)), MEASURED)


def unknown_spread(usual: Spread, row: TableRow, info: FieldInfo) -> Spread:
    """Return the wider range of a value the user does not know."""
    low, high, doubt = (row.number(name) for name in ("unknown_low", "unknown_high", "unknown_doubt_frac"))
    wider = 1.0 - doubt, 1.0 + doubt
    low = usual.low if math.isnan(low) else low
    high = usual.high if math.isnan(high) else high
    if not math.isnan(doubt):
        low, high = usual.likely * wider[0], usual.likely * wider[1]
    low, high = max(min(low, usual.low), info.low), min(max(high, usual.high), info.high)
    return Spread(min(low, usual.likely), usual.likely, max(high, usual.likely), f"not known: {usual.source}")


def _is_looked_up(asked: tuple[str, FieldInfo]) -> tuple[bool, bool, bool]:
    """Sort plain values first, then what is looked up by them, prices and lengths after, the tariff last."""
    path, info = asked
    is_price = info.name in ("length_m", "electricity_usd_per_kwh")
    return path.startswith("tariff."), is_price, info.name.endswith(("_w_per_m2k", "_per_gal", "_per_therm"))


def _room(path: str) -> str:
    return path.rpartition(".")[0]


def _era(draft: Draft, path: str) -> str:
    built = draft.said(f"{_room(path)}.year_built")
    if isinstance(built, Amount) and not built.is_unknown:
        return era(built.likely)
    return era(draft.tables.inputs["rooms[].year_built"].spread().likely)


def _by_kind(draft: Draft, path: str) -> TableRow:
    kind, name = draft.options[f"{_room(path)}.kind"], path.rpartition(".")[2]
    return draft.tables.room_kinds[draft.taken(f"{_room(path)}.kind") if kind == NOT_KNOWN else kind, name]


def _assembly(draft: Draft, path: str, source: str) -> Spread:
    table, _, column = source.partition(".")
    options = {name: draft.options.get(f"{_room(path)}.{name}", "") for name in ("wall", "wall_insulated", "above")}
    options["below"] = draft.options.get(f"{_room(path)}.below", "")
    finders: Mapping[str, Callable[[], TableRow]] = {
        "walls": lambda: draft.tables.walls[options["wall"], options["wall_insulated"]],
        "roofs": lambda: draft.tables.roof(options["above"], _era(draft, path)),
        "floors": lambda: draft.tables.floor(options["below"], _era(draft, path)),
        "glazing": lambda: draft.tables.glazing[draft.options[f"{_room(path)}.glazing"]],
        "draughts": lambda: draft.tables.draughts[draft.options[f"{_room(path)}.draughts"]],
        "covers": lambda: draft.tables.covers[draft.options[f"{_room(path)}.ground_cover"]],
        "earth_walls": lambda: draft.tables.walls[earth_wall(options["wall"]), options["wall_insulated"]],
    }
    return finders[table]().spread(column)


def earth_wall(wall: str) -> str:
    """Return what stands in the earth below a wall: the same where it is masonry, else concrete. Assumption."""
    return wall if wall in ("block", "poured_concrete", "stone", "solid_brick") else "poured_concrete"


def _wall(draft: Draft, path: str, source: str) -> Spread:
    if not source.endswith("thickness_m"):
        return _assembly(draft, path, source)
    return draft.tables.walls[draft.options["site.wall"], draft.options["rooms[0].wall_insulated"]].spread(
        "thickness_m"
    )


def _mass(draft: Draft, path: str, _source: str) -> Spread:
    heaviness = draft.taken(f"{_room(path)}.mass_class")
    if heaviness != "as_built":
        row = draft.tables.mass_classes[heaviness]
        stored = row.number("mass_j_per_m2k")
        return Spread(stored, stored, stored, row.text("source"))
    names = ("wall", "wall_insulated", "below")
    wall, insulated, below = (draft.options[f"{_room(path)}.{name}"] for name in names)
    return draft.tables.room_mass(wall, insulated, below, _era(draft, path))


def _square(draft: Draft, path: str, _source: str) -> Spread:
    side = math.sqrt(draft.likely(f"{_room(path)}.floor_area_m2"))
    return Spread(side, side, side, "assumption: square room")


def _opening(draft: Draft, _path: str, source: str) -> Spread:
    opening = draft.options["window.opening"]
    return draft.tables.openings["sash" if opening == NOT_KNOWN else opening].spread(source.partition(".")[2])


def _unit_life(draft: Draft, _path: str, _source: str) -> Spread:
    is_portable = draft.taken("window.kind") == "portable"
    return draft.tables.lives["portable_unit" if is_portable else "window_unit"].spread("life_yr")


def _station_wind(draft: Draft, _path: str, _source: str) -> Spread:
    wind = float(draft.station.wind_m_per_s.mean())
    if math.isnan(wind):
        return Spread(USUAL_WIND_M_PER_S, USUAL_WIND_M_PER_S, USUAL_WIND_M_PER_S, "mean of all stations")
    return Spread(wind, wind, wind, "the station's yearly mean")


def _season_wait(draft: Draft, _path: str, source: str) -> Spread:
    season = draft.tables.season(draft.decision_date.month)
    return draft.tables.wait(source.partition(".")[2], season)


def _design(draft: Draft, _path: str, source: str) -> Spread:
    value = float(getattr(draft.station, source.partition(".")[2]))
    text = f"{draft.weather[0]}, {draft.station.period}; 1 to 2 K of doubt"
    return Spread(value - DESIGN_DOUBT_K, value, value + DESIGN_DOUBT_K, text)


LOOKED_UP: Final[Mapping[str, Callable[[Draft, str, str], Spread]]] = {
    "room_kinds": lambda draft, path, _source: _by_kind(draft, path).spread(),
    "square_root_of_area": _square,
    "walls": _wall,
    "roofs": _assembly,
    "floors": _assembly,
    "glazing": _assembly,
    "draughts": _assembly,
    "covers": _assembly,
    "earth_walls": _assembly,
    "openings": _opening,
    "wind": _station_wind,
    "mass": _mass,
    "heaters": lambda draft, _path, _source: draft.tables.heaters[draft.options["now.heat"]].spread("efficiency_frac"),
    "energy_by_state": lambda draft, path, _source: price_spread(draft, path),
    "fuels": lambda draft, path, _source: fuel_spread(draft, path.rpartition(".")[2].removeprefix("fuel_")),
    "tariff": lambda draft, path, _source: tariff_spread(draft, path),
    "costs": lambda draft, _path, source: draft.tables.costs[source.partition(".")[2]].spread(),
    "otherwise": lambda draft, _path, _source: draft.tables.otherwise[draft.taken("money.otherwise")].spread(
        "rate_real_frac"
    ),
    "unit_life": _unit_life,
    "lives": lambda draft, _path, source: draft.tables.lives[source.partition(".")[2]].spread("life_yr"),
    "season_waits": _season_wait,
    "station": _design,
    "warming": lambda draft, _path, _source: draft.tables.warming[draft.station.basis].spread("warming_k"),
}
"""How a usual amount is found, by the word before the point in its row's ``from``."""

CHOSEN: Final[Mapping[str, Callable[[Draft, str], str]]] = {
    "room_kinds": lambda draft, path: _by_kind(draft, path).text("choice"),
    "clock": lambda draft, _path: clock_change(draft),
    "era": lambda draft, path: "yes" if _era(draft, path) == "from_1980" else "no",
    "rooms[0].wall": lambda draft, _path: draft.options["rooms[0].wall"],
}
"""How a usual option is found, by its row's ``from``."""
