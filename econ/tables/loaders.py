"""All tables, read once, checked and keyed."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any, Final

from econ.kernel.errors import TableError
from econ.kernel.spread import Spread
from econ.tables.hourly import HourlyYear
from econ.tables.lookup import Entry, Lookup, lookup
from econ.tables.record import Table, read_table
from econ.tables.stations import StationTable, station_table

TABLE_NAMES: Final = (
    "assemblies/draughts",
    "assemblies/floors",
    "assemblies/glazing",
    "assemblies/mass_classes",
    "assemblies/roofs",
    "assemblies/shading",
    "assemblies/walls",
    "climate/stations",
    "climate/warming",
    "climate/world_cities",
    "defaults/assumptions",
    "defaults/inputs",
    "defaults/room_kinds",
    "defaults/season_waits",
    "defaults/seasons",
    "equipment/ductless",
    "equipment/openings",
    "equipment/window",
    "equipment/window_fit",
    "ground/conduction",
    "ground/covers",
    "installation/costs",
    "installation/mishaps",
    "installation/trade_terms",
    "lives/service_lives",
    "measures/measures",
    "money/otherwise",
    "prices/energy_by_state",
    "prices/fuels",
    "prices/heaters",
    "rooms/building",
    "rooms/shared",
)
"""Every table but those of tasks and tools, which have their own loader."""

ERA_YEAR: Final = 1980
"""Insulation is usual from this year on. Assumption: first state energy codes and the years after the oil shocks."""


@dataclass(frozen=True, slots=True, eq=False)
class Tables:
    """Checked tables by topic.

    Attributes
    ----------
    stations : StationTable
        Weather places by key.
    prices : Lookup
        Energy prices and grid factor by two-letter state; "US" is the nation.
    fuels, heaters : Lookup
        Heat and CO2 per unit sold by fuel; seasonal efficiency by what heats now.
    costs : Lookup
        Prices, hours, waits and rates by key; ``costs[key].spread()`` in the unit of ``costs[key].text("unit")``.
    roofs, floors, walls : Lookup
        U-values by (above, era), (below, era) and (wall, insulated).
    glazing, shading, draughts, covers, mass_classes : Lookup
        By option, and by class.
    lives : Lookup
        Service lives by what lives.
    mishaps : Lookup
        What can go wrong in the work, by key.
    measures : Lookup
        Measures that lower what a room needs, by key.
    trade_terms : Lookup
        What else a contractor's price must carry, by key.
    otherwise : Lookup
        What money earns or saves elsewhere, by where it would be.
    inputs : Lookup
        The usual value of every case field, by path.
    room_kinds : Lookup
        Usual rooms by (kind, field).
    assumptions : Lookup
        Figures that no case asks for, by path among the values.
    seasons, season_waits : Lookup
        Season by month, and the cost keys that add up to a wait by (wait, season).
    ductless_sets, window_units : Lookup
        By key; see `ductless`, `window` and `portable`.
    window_fit, openings : Lookup
        What room a unit needs, by kind and size; usual clear openings by kind of window.
    warming : Lookup
        How much warmer it has become since a place's figures, by what they were made from.
    building, shared : Lookup
        Usual figures of a building of many rooms, by field; cost lines that rooms share, by key of the line.
    records : mapping of str to mapping
        The record of each table by its name.
    fingerprint : str
        Changes when any table or record changes: a cache key.
    hourly : mapping of str to HourlyYear
        Hourly files of the case at hand, by what it writes in ``place.hourly_file``.
    """

    stations: StationTable
    prices: Lookup
    fuels: Lookup
    heaters: Lookup
    costs: Lookup
    walls: Lookup
    roofs: Lookup
    floors: Lookup
    glazing: Lookup
    shading: Lookup
    draughts: Lookup
    covers: Lookup
    mass_classes: Lookup
    lives: Lookup
    mishaps: Lookup
    measures: Lookup
    trade_terms: Lookup
    otherwise: Lookup
    inputs: Lookup
    room_kinds: Lookup
    assumptions: Lookup
    seasons: Lookup
    season_waits: Lookup
    ductless_sets: Lookup
    window_units: Lookup
    window_fit: Lookup
    openings: Lookup
    warming: Lookup
    building: Lookup
    shared: Lookup
    records: Mapping[str, Mapping[str, Any]]
    fingerprint: str
    hourly: Mapping[str, HourlyYear]

    def with_hourly(self, key: str, year: HourlyYear) -> "Tables":
        """Return the same tables with one hourly year more, found by what a case writes of it."""
        return replace(self, hourly={**self.hourly, key: year})

    def ductless(self, kind: str, size: int | str, grade: str) -> Entry:
        """Return a ductless set: kind is "kit" or "trade", size its nominal kBtu/h."""
        return self.ductless_sets[f"{kind}_{size}_{grade}"]

    def ductless_sizes(self, kind: str, grade: str) -> tuple[int, ...]:
        """Return the nominal sizes of a kind and grade, ascending. [kBtu/hour]"""
        return _sizes(self.ductless_sets, {"kind": kind, "grade": grade})

    def window(
        self, size: int | str, vintage: str = "minimum_2026", cycle: str = "cooling_only", kind: str = "window"
    ) -> Entry:
        """Return a unit for a window, a wall or on wheels by nominal kBtu/h; there is none above 28."""
        return self.window_units[f"{kind}_{size}_{vintage}_{cycle}"]

    def window_sizes(
        self, vintage: str = "minimum_2026", cycle: str = "cooling_only", kind: str = "window"
    ) -> tuple[int, ...]:
        """Return the nominal sizes of a kind, vintage and cycle, ascending; none where it is not made. [kBtu/hour]"""
        return _sizes(self.window_units, {"kind": kind, "vintage": vintage, "cycle": cycle})

    def portable(self, size: int | str = 12) -> Entry:
        """Return a portable unit by nominal kBtu/h, for the wait."""
        return self.window_units[f"portable_{size}_any_cooling_only"]

    def roof(self, above: str, era: str) -> Entry:
        """Return what is above; a heated room has no era."""
        return self.roofs[above, "any" if above == "heated_room" else era]

    def floor(self, below: str, era: str) -> Entry:
        """Return what is below; a heated room has no era."""
        return self.floors[below, "any" if below == "heated_room" else era]

    def room_mass(self, wall: str, insulated: str, below: str, era: str) -> Spread:
        """Return the heat capacity of a room over its floor area: the heavier of wall and floor. [J/(m^2*K)]

        Low and high are the neighbouring classes of ISO 13790, table 12. Assumption.
        """
        parts = (self.walls[wall, insulated], self.floor(below, era))
        likely = max(part.number("mass_j_per_m2k") for part in parts)
        classes = sorted(entry.number("mass_j_per_m2k") for entry in self.mass_classes.entries.values())
        place = classes.index(likely)
        ends = classes[max(place - 1, 0)], classes[min(place + 1, len(classes) - 1)]
        return Spread(ends[0], likely, ends[1], "ISO 13790:2008, table 12; range assumption")

    def season(self, month: int) -> str:
        """Return "off", "shoulder" or "peak" for a month, 1 for January."""
        return self.seasons[str(month)].text("season")

    def wait(self, what: str, season: str) -> Spread:
        """Return a usual wait: "contractor", "electrician", "permit", "delivery" ... in a season. [day]"""
        keys = self.season_waits[what, season].text("cost_keys").split()
        parts = [self.costs[key].spread() for key in keys]
        low, likely, high = (sum(getattr(part, step) for part in parts) for step in ("low", "likely", "high"))
        return Spread(low, likely, high, parts[0].source)


def era(year_built: float) -> str:
    """Return "before_1980" or "from_1980"."""
    return "from_1980" if year_built >= ERA_YEAR else "before_1980"


@lru_cache(maxsize=1)
def load_tables() -> Tables:
    """Return all tables, read and checked on the first call.

    Returns
    -------
    tables : Tables
        The same object on every call.

    Raises
    ------
    TableError
        If a table does not agree with its record.
    """
    read = {name: read_table(name) for name in TABLE_NAMES}
    stamp = "".join(table.fingerprint for table in read.values())
    return Tables(
        stations=station_table(read["climate/stations"], read["climate/world_cities"]),
        **{field: keyed(read[name], subject, *keys) for field, (name, subject, *keys) in KEYED.items()},
        seasons=_seasons(read["defaults/seasons"]),
        records={name: table.record for name, table in read.items()},
        fingerprint=hashlib.sha256(stamp.encode()).hexdigest(),
        hourly={},
    )


KEYED: Final = {
    "prices": ("prices/energy_by_state", "state", "state"),
    "fuels": ("prices/fuels", "fuel", "fuel"),
    "heaters": ("prices/heaters", "heater", "heat"),
    "costs": ("installation/costs", "cost", "key"),
    "walls": ("assemblies/walls", "wall", "wall", "insulated"),
    "roofs": ("assemblies/roofs", "what is above", "above", "era"),
    "floors": ("assemblies/floors", "what is below", "below", "era"),
    "glazing": ("assemblies/glazing", "glazing", "glazing"),
    "shading": ("assemblies/shading", "shade", "shade"),
    "draughts": ("assemblies/draughts", "draughts", "draughts"),
    "covers": ("ground/covers", "cover of the ground", "cover"),
    "mass_classes": ("assemblies/mass_classes", "mass class", "class"),
    "lives": ("lives/service_lives", "service life", "key"),
    "mishaps": ("installation/mishaps", "mishap", "key"),
    "measures": ("measures/measures", "measure", "key"),
    "trade_terms": ("installation/trade_terms", "term of the trade", "key"),
    "otherwise": ("money/otherwise", "place of money", "where"),
    "inputs": ("defaults/inputs", "input", "path"),
    "room_kinds": ("defaults/room_kinds", "usual room", "kind", "field"),
    "assumptions": ("defaults/assumptions", "assumption", "path"),
    "season_waits": ("defaults/season_waits", "wait", "wait", "season"),
    "ductless_sets": ("equipment/ductless", "ductless set", "key"),
    "window_units": ("equipment/window", "window unit", "key"),
    "window_fit": ("equipment/window_fit", "room for a unit", "key"),
    "openings": ("equipment/openings", "kind of window", "opening"),
    "warming": ("climate/warming", "basis of weather", "basis"),
    "building": ("rooms/building", "figure of a building", "field"),
    "shared": ("rooms/shared", "shared cost line", "key"),
}
"""Field of Tables: table, what its key is of, key columns."""


def keyed(table: Table, subject: str, *keys: str) -> Lookup:
    """Return a table's rows by key, refusing a table whose key columns name two rows alike."""
    found = lookup(table, subject, *keys)
    if len(found.entries) != len(table):
        raise TableError(f"{table.name}.csv: two rows share the same {', '.join(keys)}. Each must be named once.")
    return found


def _seasons(table: Table) -> Lookup:
    months = (str(int(month)) for month in table.numbers("month"))
    texts = table.texts("season")
    entries = {month: Entry({"season": season}, {}, {}) for month, season in zip(months, texts, strict=True)}
    return Lookup("month", entries)


def _sizes(rows: Lookup, wanted: Mapping[str, str]) -> tuple[int, ...]:
    fitting = [row for row in rows.entries.values() if all(row.text(k) == v for k, v in wanted.items())]
    return tuple(sorted(int(row.number("size_kbtu_per_h")) for row in fitting))
