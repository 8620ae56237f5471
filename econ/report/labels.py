"""What every figure of the sheet is called on screen: the form's label, the cost table's words, or its own name."""

from collections.abc import Mapping
from typing import Final

from econ.case.choices import table_path
from econ.case.form import all_fields
from econ.evaluate.sheet import Sheet
from econ.kernel.units import SUFFIX_UNITS
from econ.tables.loaders import Tables

SECTION_WORDS: Final[Mapping[str, str]] = {
    "kit": "kit",
    "hired": "hired unit",
    "window": "window unit",
    "now": "what is there now",
    "rules": "rule of this program",
    "site": "site",
    "work": "work",
    "placement": "least distance asked",
    "drilling": "drilling",
    "place": "place",
    "costs": "cost",
    "bills": "from your bills",
}

PREFIXES: Final[Mapping[str, str]] = {
    "kit": "Kit",
    "hired": "Hired unit",
    "window": "Window units",
    "quote": "Quote",
    "now": "Now there",
}
"""What stands before a label that several sections share, such as the life of a unit."""


MEASURE_WORDS: Final[Mapping[str, str]] = {
    "left_frac": "share left",
    "added_m2k_per_w": "resistance added",
    "raise_k": "set-point raised by",
    "carried_frac": "share of the need the house system carries",
    "own_h": "own hours for one",
    "life_yr": "life",
    "from_c": "down from a monthly mean of",
    "electric_kwh_per_yr": "electricity of one",
    "house_cop": "cooling per electricity of the house system",
}
"""Figures of measures on the room."""

MISHAP_WORDS: Final[Mapping[str, str]] = {
    "chance_frac": "chance",
    "cost_usd": "cost to put it right",
    "own_h": "own hours to put it right",
    "days_d": "days later",
}
"""Figures of what can go wrong in the work."""


def labels(sheet: Sheet, tables: Tables, room_names: tuple[str, ...] = ()) -> dict[str, str]:
    """Return the words of every figure by path.

    Parameters
    ----------
    sheet : Sheet
        The figures.
    tables : Tables
        Words of the cost table.
    room_names : tuple of str
        Rooms of the case, in order; the label of a room's figure begins with its name where there is more than one.
    """
    asked = {info.path: info.label for info in all_fields()}
    return {path: _label(path, asked, tables, room_names) for path in sheet.path}


def _label(path: str, asked: Mapping[str, str], tables: Tables, room_names: tuple[str, ...]) -> str:
    section, _, name = path.partition(".")
    if section == "costs":
        text = tables.costs[name].text("item")
        return text[0].upper() + text[1:]
    if section == "measures" and "." in name:
        key, _, figure = name.partition(".")
        return f"{tables.measures[key].text('label')}: {MEASURE_WORDS[figure]}"
    if section == "mishaps":
        key, _, figure = name.partition(".")
        return f"{tables.mishaps[key].text('label')}: {MISHAP_WORDS[figure]}"
    if section in PREFIXES and path in asked:
        return f"{PREFIXES[section]}: {_lowered(asked[path])}"
    words = asked.get(table_path(path)) or _spelled(section.partition("[")[0], path.rpartition(".")[2])
    if section.startswith("rooms[") and len(room_names) > 1:
        return f"{room_names[int(section[len('rooms[') : -1])]}: {_lowered(words)}"
    return words


def _lowered(words: str) -> str:
    return words if words[1:2].isupper() else f"{words[:1].lower()}{words[1:]}"


def _spelled(section: str, name: str) -> str:
    ending = max((end for end in SUFFIX_UNITS if name.endswith(end)), key=len, default="")
    words = name.removesuffix(ending).replace("_", " ")
    return f"{words[:1].upper()}{words[1:]} ({SECTION_WORDS.get(section, section)})"
