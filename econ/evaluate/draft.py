"""A sheet in the making: what the user said, the tables, and the lines written so far."""

from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from typing import Final

from econ.case.choices import CHOICES, NOT_KNOWN, code, table_path
from econ.case.edit import asked_paths, value_at
from econ.case.form import FieldInfo
from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.climate.station import Station
from econ.evaluate.place import town_of, weather_of
from econ.evaluate.sheet import Entry, State
from econ.evaluate.structure import WeatherChoice
from econ.evaluate.wiring.climate import station_of
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables

CHOICE_UNIT: Final = ""
"""A choice has no unit; it travels as a position."""


KEPT_UNKNOWN: Final = (
    "site.",
    "window.escape",
    "window.opening",
    "window.outlet",
    "window.wall_bears",
    "now.house_system",
    "work.contractor_finishes",
)
"""Choices whose "not known" the rules must see: it takes the careful side there, with its reason."""


@dataclass(frozen=True)
class Draft:
    """Lines of a sheet by path, and where to look for the next one.

    Attributes
    ----------
    case : Case
        What the user said.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.
    entries : dict of str to Entry
        Lines so far.
    options : dict of str to str
        Chosen option of each choice, "not_known" kept where the user said so.
    """

    case: Case
    tables: Tables
    today: date
    entries: dict[str, Entry] = field(default_factory=dict)
    options: dict[str, str] = field(default_factory=dict)

    @cached_property
    def fields(self) -> dict[str, FieldInfo]:
        """Every field of the case by path."""
        return dict(asked_paths(self.case))

    @property
    def decision_date(self) -> date:
        """The day the user decides: year 0 of every alternative."""
        said = self.case.place.decision_date
        return date.fromisoformat(said) if said else self.today

    @cached_property
    def weather(self) -> tuple[str, WeatherChoice]:
        """Name of the weather place, and what picks its weather."""
        return weather_of(self.case, self.tables)

    @cached_property
    def station(self) -> Station:
        """What is known of the weather place."""
        name, chosen = self.weather
        return station_of(name, chosen, self.tables)

    @property
    def state(self) -> str:
        """State whose prices hold: the user's, that of the town, or that of the weather place; empty abroad."""
        place = self.case.place
        return place.state or (town_of(place.town).state if place.town else self.station.state)

    def said(self, path: str) -> Amount | str | None:
        """Return what the user set, or None."""
        value: Amount | str | None = value_at(self.case, path)
        return value

    def likely(self, path: str) -> float:
        """Return the likely value of a line already written."""
        return self.entries[path].likely

    def taken(self, path: str) -> str:
        """Return the option the numbers follow; "not known" takes the one the table of usual values names."""
        position = int(self.entries[path].likely)
        return CHOICES[table_path(path)][position]

    def put(self, path: str, spread: Spread, unit: str, state: State = "usual") -> None:
        """Write one line."""
        self.entries[path] = Entry(spread, unit, state)

    def put_choice(self, path: str, option: str, source: str, state: State) -> None:
        """Write the line of a choice: the position of its option, without doubt."""
        self.options[path] = option
        row = self.tables.inputs[table_path(path)]
        is_replaced = option == NOT_KNOWN and row.text("unknown_choice") and not path.startswith(KEPT_UNKNOWN)
        taken = row.text("unknown_choice") if is_replaced else option
        at = code(path, taken)
        self.put(path, Spread(at, at, at, source), CHOICE_UNIT, state)
