"""The columns of a rooms file: what each is headed, what else it may be called, and how its cells are read."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from econ.case import rooms_cell as cell
from econ.case.rooms_cell import Reader
from econ.kernel.constants import SQUARE_FOOT_M2

Kind = Literal["text", "number", "option", "day"]

SQUARE_FEET: Final = "sq ft"
SQUARE_METRES: Final = "m2"

_UNITS: Final = {
    **dict.fromkeys(("sq ft", "sqft", "ft2", "ft²", "ft^2", "ft**2", "sf", "square feet", "sq. ft."), SQUARE_FEET),
    **dict.fromkeys(("m2", "m²", "m^2", "m**2", "sqm", "sq m", "square metres", "square meters"), SQUARE_METRES),
}
_FACTORS: Final = {SQUARE_FEET: SQUARE_FOOT_M2, SQUARE_METRES: 1.0}
_IN_BRACKETS: Final = re.compile(r"[(\[]([^)\]]*)[)\]]")

_WALLS: Final = {
    "brick": "solid_brick", "frame": "wood_frame", "wood": "wood_frame", "timber frame": "wood_frame",
    "brick veneer": "brick_on_frame", "concrete": "poured_concrete", "concrete block": "block",
}  # fmt: skip
_COOLING: Final = {
    "nothing": "none", "window": "window_units", "window unit": "window_units", "window ac": "window_units",
    "portable unit": "portable", "through the wall": "through_wall", "wall unit": "through_wall", "no": "none",
}  # fmt: skip
_HEAT: Final = {
    "natural gas": "gas", "electricity": "electric", "baseboard": "electric", "lpg": "propane", "fuel oil": "oil",
    "nothing": "none", "gas boiler": "gas", "gas furnace": "gas",
}  # fmt: skip
_PAYS: Final = {
    "landlord": "me", "owner": "me", "included": "included_in_rent", "in rent": "included_in_rent",
    "in the rent": "included_in_rent", "rent": "included_in_rent", "renter": "tenant", "tenant pays": "tenant",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Column:
    """One column.

    Attributes
    ----------
    key : str
        Its name in the program.
    heading : str
        What the template calls it.
    kind : str
        "text", "number", "option" or "day".
    reader : function of str
        Makes the reader of its cells from the unit in its heading.
    names : tuple of str
        What else it may be called.
    help : str
        What goes in, for the template.
    """

    key: str
    heading: str
    kind: Kind
    reader: Callable[[str], Reader]
    names: tuple[str, ...] = ()
    help: str = ""


def _always(reader: Reader) -> Callable[[str], Reader]:
    return lambda _unit: reader


def _area(unit: str) -> Reader:
    known = _UNITS.get(unit, SQUARE_FEET)
    return cell.area(1.0, 1000.0, _FACTORS[known], known)


def _glass(unit: str) -> Reader:
    known = _UNITS.get(unit, SQUARE_FEET)
    return cell.glass(_FACTORS[known], known)


def _option(path: str, spoken: Mapping[str, str]) -> Callable[[str], Reader]:
    return _always(cell.option(path, spoken))


COLUMNS: Final = (
    Column("building", "building", "text", _always(cell.text_of(80)), ("house", "property"), "a name, or nothing"),
    Column(
        "unit", "unit", "text", _always(cell.text_of(80, is_required=True)), ("flat", "apartment", "apt"), "the flat"
    ),
    Column("room", "room", "text", _always(cell.text_of(80, is_required=True)), ("room name", "name"), "its name"),
    Column("floor", "floor", "number", _always(cell.floor), ("storey", "story", "level"), "1 or G at the ground"),
    Column("size", "size (sq ft)", "number", _area, ("area", "floor area"), "240, or 12 x 20; or leave it to the type"),
    Column("type", "type", "text", _always(cell.text_of(80)), ("room type", "kind"), "a room type of the case"),
    Column(
        "exposure", "exposure", "number", _always(cell.exposure), ("outdoor sides", "faces", "facing"),
        "outdoor sides: S, SW, none",
    ),
    Column("windows", "windows (sq ft)", "text", _glass, ("window", "glass", "window area"), "small, large or area"),
    Column("wall", "wall", "option", _option("rooms[].wall", _WALLS), ("walls", "outside walls"), "brick, frame, ..."),
    Column(
        "cooling", "cooling now", "text", _always(cell.counted_option("now.cooling", _COOLING)),
        ("what is there now", "there now", "now", "cooling", "present cooling"), "none, 2 window units, portable",
    ),
    Column("age", "age (years)", "number", _always(cell.number(0, 60, "years")), ("its age", "unit age"), "of that"),
    Column("heat", "heat source", "option", _option("now.heat", _HEAT), ("heat", "heating"), "gas, electric, ..."),
    Column(
        "pays", "who pays", "option", _option("prices.pays_bill", _PAYS), ("pays", "pays bill", "energy bill"),
        "me, tenant, included in rent",
    ),
    Column(
        "rent", "rent (USD/month)", "number", _always(cell.number(0, 50_000, "USD a month")), ("monthly rent",),
        "for the flat or room",
    ),
    Column("access", "access date", "day", _always(cell.day), ("free from", "access", "available"), "2027-06-01"),
    Column("let_until", "let until", "day", _always(cell.day), ("lease ends", "lease end", "let to"), "2027-08-31"),
    Column(
        "notice", "notice (days)", "number", _always(cell.number(0, 400, "days", is_whole=True)), ("notice days",),
        "before anybody enters",
    ),
    Column("mark", "mark", "text", _always(cell.mark), ("must", "must not", "must or must not"), "must, must not"),
    Column("not_before", "not before", "day", _always(cell.day), ("earliest",), "2028-01-01"),
    Column(
        "panel", "panel to spare (A)", "number", _always(cell.number(0, 400, "amperes")),
        ("panel", "spare amps", "panel spare"), "of the flat; blank is not known",
    ),
    Column("notes", "notes", "text", _always(cell.text_of(1000)), ("note", "remarks"), "anything"),
)  # fmt: skip
"""Every column, in the order of the template."""

REQUIRED: Final = ("unit", "room", "floor")
"""Columns without which no row can be read; and one of "size" and "type"."""

_BY_NAME: Final = {name: column for column in COLUMNS for name in (column.key.replace("_", " "), *column.names)} | {
    _IN_BRACKETS.sub("", column.heading).strip(): column for column in COLUMNS
}
_BY_KEY: Final = {column.key: column for column in COLUMNS}


def column_of(key: str) -> Column:
    """Return a column by its name in the program."""
    return _BY_KEY[key]


def named(heading: str) -> tuple[Column, str] | None:
    """Return the column a heading means, and the unit that stands in it; None where it is none of ours.

    Examples
    --------
    >>> found = named("Floor Area [m²]")
    >>> found[0].key, found[1]
    ('size', 'm²')
    """
    bare = heading.lower().replace("\u00a0", " ").replace("_", " ").strip().rstrip("*").strip()
    unit = _IN_BRACKETS.search(bare)
    name = " ".join(_IN_BRACKETS.sub(" ", bare).replace("?", " ").split())
    column = _BY_NAME.get(name)
    return None if column is None else (column, unit[1].strip() if unit else "")


def has_readable_unit(column: Column, unit: str) -> bool:
    """Return whether a unit in a heading is one in which the column can be read."""
    if column.key in ("size", "windows"):
        return not unit or unit in _UNITS
    return True
