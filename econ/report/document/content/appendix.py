"""Appendix: every input with range, whose it is and where from; data records; versions; the user's own words."""

from math import isfinite
from typing import Final

import numpy as np

from econ.case.choices import CHOICES, option_at, table_path
from econ.case.schema import Case
from econ.case.sections.as_built import RECORDS
from econ.kernel.alternative import Alternative
from econ.report.document.block import Block, Grid, Heading, PageEnd, Sentence, Setting, Tone
from econ.report.document.content import keeping
from econ.report.document.content.basis import SHORT, Basis
from econ.report.document.content.costs import lines_blocks
from econ.report.document.content.first_page import risk_blocks
from econ.report.document.content.minding import note_blocks
from econ.report.document.content.need import method_blocks
from econ.report.document.content.opened import opened_blocks
from econ.report.document.content.signing import signed_texts
from econ.report.document.content.source import Sources, source_grid
from econ.report.labels import labels
from econ.report.numbers import DISPLAYS, MINUS, NONE_TEXT, Quantity, UnitSystem, shown, symbol
from econ.report.tables import WHOSE

_DIGITS: Final = 4
"""Significant digits of an input in print."""

_QUANTITIES: Final[dict[str, Quantity]] = {
    "degC": Quantity.TEMPERATURE,
    "K": Quantity.TEMPERATURE_DIFFERENCE,
    "m": Quantity.LENGTH,
    "m**2": Quantity.AREA,
    "kg": Quantity.WEIGHT,
}
"""Units of the core that a reader in US units reads otherwise; power stays in watts, as labels print it too."""

_UNIT_WORDS: Final = {
    "dimensionless": "",
    "USD": "$",
    "USD/hour": "$/h",
    "hour": "h",
    "day": "d",
    "year": "yr",
    "V*A": "VA",
    "Btu/(W*hour)": "Btu/Wh",
}

_HEADS: Final[dict[str, str]] = {
    "place": "Place and weather",
    "use": "What the room must do",
    "now": "What is there now",
    "prices": "Energy prices",
    "tariff": "Electricity tariff",
    "money": "Money",
    "window": "Window units",
    "kit": "Kit",
    "hired": "Hired unit",
    "quote": "Quote",
    "site": "Site",
    "panel": "Electrical panel",
    "work": "Who does what",
    "measures": "Measures on the room",
    "mishaps": "What can go wrong",
    "costs": "Prices, hours and waits",
    "rules": "Rules of this program",
}


def appendix(
    basis: Basis, sources: Sources, ways: tuple[Alternative, ...] = (), *, is_private: bool = True
) -> list[Block]:
    """Return the appendix.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    sources : Sources
        Numbers of the sources.
    ways : tuple of Alternative
        Ways whose first cost is told line by line here, not before.
    is_private : bool
        Whether the reader is the one who wrote the notes; they are left out for another.
    """
    return [
        PageEnd(),
        *note_blocks(basis, ways),
        *risk_blocks(basis),
        *(keeping.lists_blocks(basis) if is_private else []),
        *method_blocks(basis),
        *lines_blocks(basis, sources, ways),
        *opened_blocks(basis),
        Heading("Appendix: every input, its range, whose it is and where it comes from"),
        Sentence(_whose_words(basis), Tone.SMALL),
        inputs_grid(basis, sources),
        Heading("Sources by number"),
        source_grid(sources),
        Heading("Data tables"),
        records_grid(basis),
        Sentence(_versions(basis), Tone.SMALL),
        *own_words(basis, is_private=is_private),
    ]


def _whose_words(basis: Basis) -> str:
    states = basis.answer.sheet.state
    said, unknown = states.count("yours"), states.count("not_known")
    rest = len(states) - said - unknown
    return (
        f"{len(states)} figures stand behind the answer: {said} are yours, {unknown} you said are not known, "
        f"{rest} are usual or worked out. Each can be changed by its name."
    )


def inputs_grid(basis: Basis, sources: Sources) -> Grid:
    """Return every input under the head of its topic."""
    sheet = basis.answer.sheet
    words = labels(sheet, basis.tables, basis.answer.structure.room_names)
    by_head: dict[str, list[tuple[str, ...]]] = {}
    for at, path in enumerate(sheet.path):
        ends = [value_text(path, float(column[at]), sheet.unit[at], basis) for column in (sheet.low, sheet.high)]
        span = "" if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"
        likely, unit = (
            value_text(path, float(sheet.likely[at]), sheet.unit[at], basis),
            unit_text(path, sheet.unit[at], basis),
        )
        cells = (words[path], likely, span, unit, WHOSE[sheet.state[at]], sources.brief(sheet.source[at]))
        by_head.setdefault(head_of(path), []).append(cells)
    rows: list[tuple[str, ...]] = []
    strong: list[int] = []
    for head, found in by_head.items():
        strong.append(len(rows))
        rows += [(head, *[""] * 5), *found]
    titles = ("What", "Likely", "Low to high", "Unit", "Whose", "Source")
    shares = (0.43, 0.12, 0.16, 0.08, 0.08, 0.13)
    return Grid(titles, tuple(rows), shares, frozenset((1, 2)), frozenset(strong), Setting.TINY)


def head_of(path: str) -> str:
    """Return the head under which an input stands."""
    section = path.partition(".")[0]
    return "Rooms" if section.startswith("rooms[") else _HEADS.get(section, section.capitalize())


def value_text(path: str, value: float, unit: str, basis: Basis) -> str:
    """Return an input's value: a choice in words, a share as percent, a number in the reader's unit."""
    if table_path(path) in CHOICES:
        return option_at(path, value).replace("_", " ")
    if not isfinite(value):
        return NONE_TEXT
    if is_share(path, unit):
        return f"{_digits(100.0 * value)} %"
    quantity = _quantity(unit, basis)
    return _digits(value if quantity is None else shown(value, quantity, basis.look.units))


def unit_text(path: str, unit: str, basis: Basis) -> str:
    """Return the unit that stands beside an input's value."""
    if table_path(path) in CHOICES or is_share(path, unit):
        return ""
    quantity = _quantity(unit, basis)
    if quantity is not None:
        return symbol(quantity, basis.look.units)
    return _UNIT_WORDS.get(unit, _spelled(unit))


def _spelled(unit: str) -> str:
    """Return a unit as it is written by hand.

    Examples
    --------
    >>> _spelled("W/(m**2*K)"), _spelled("USD/m^2")
    ('W/(m² K)', '$/m²')
    """
    plain = unit.replace("**", "^").replace("^2", "\N{SUPERSCRIPT TWO}").replace("^3", "\N{SUPERSCRIPT THREE}")
    return plain.replace("USD", "$").replace("*", " ")


def is_share(path: str, unit: str) -> bool:
    """Return whether an input is a share of something, told as percent."""
    return path.endswith("_frac") and unit in ("", "dimensionless")


def _quantity(unit: str, basis: Basis) -> Quantity | None:
    found = _QUANTITIES.get(unit.replace("^", "**"))
    return found if found in DISPLAYS[basis.look.units] else None


def _digits(value: float) -> str:
    """Return a number to four significant digits, thousands marked from ten thousand on.

    Examples
    --------
    >>> _digits(0.000812345), _digits(1964.0), _digits(2000000.0)
    ('0.0008123', '1964', '2,000,000')
    """
    if value == 0.0:
        return "0"
    text = np.format_float_positional(value, precision=_DIGITS, unique=False, fractional=False, trim="-")
    whole, _, part = text.lstrip("-").partition(".")
    marked = f"{int(whole):,}" if len(whole) > _DIGITS else whole
    return f"{MINUS if value < 0 else ''}{marked}{'.' + part if part else ''}"


def records_grid(basis: Basis) -> Grid:
    """Return the record of every data table; what is past its review is told so."""
    rows = tuple(_record(name, dict(record), basis) for name, record in basis.tables.records.items())
    titles = ("Table", "Title", "Publisher, document, edition", "Retrieved", "Review by", "Licence")
    return Grid(titles, rows, (0.2, 0.22, 0.27, 0.1, 0.1, 0.11), setting=Setting.TINY)


def _record(name: str, record: dict[str, object], basis: Basis) -> tuple[str, ...]:
    review = str(record["review_by"])
    stale = " (past)" if review < basis.printed.isoformat() else ""
    about = ", ".join(str(record[key]) for key in ("publisher", "document", "edition"))
    return (name, str(record["title"]), about, str(record["retrieved"]), f"{review}{stale}", str(record["licence"]))


def _versions(basis: Basis) -> str:
    units = "US units" if basis.look.units is UnitSystem.US else "SI units"
    return (
        f"Results version {basis.result.results_version}; data tables {basis.tables.fingerprint[:16]}; "
        f"{basis.answer.draws_used:,} tries, seed {basis.answer.seed}; {units}; printed {basis.printed.isoformat()}."
    )


def own_words(basis: Basis, *, is_private: bool) -> list[Block]:
    """Return the user's own texts whole: the notes, and what was too long for a table or the foot of a page."""
    record = basis.answer.case.record
    found = [("Notes", record.notes or "")] if is_private else []
    found += [("Name of the case", record.name or ""), ("Filled in by", record.filled_in_by or "")]
    found += [(f"Name of room {at}", room.name or "") for at, room in enumerate(basis.answer.case.rooms, start=1)]
    found += [*recorded_texts(basis.answer.case), *signed_texts(basis.answer.case)] if is_private else []
    told = [(label, text) for label, text in found if text and (label == "Notes" or len(text) > SHORT or "\n" in text)]
    blocks: list[Block] = [Heading("In your own words")] if told else []
    for label, text in told:
        blocks += [Heading(label, 3), Sentence(text, Tone.OWN_WORDS)]
    return blocks


def recorded_texts(case: Case) -> list[tuple[str, str]]:
    """Return every text of the record, with what it is of: tables hold no more than its beginning."""
    found = []
    for section, model in RECORDS.items():
        part = getattr(case, section)
        for name, declared in model.model_fields.items():
            value = getattr(part, name)
            if isinstance(value, str) and section != "first_year":
                found.append((str(declared.title), value))
            elif isinstance(value, tuple):
                found += [(f"{declared.title}: {key}", text) for key, text in _texts(value)]
    return found


def _texts(table: tuple[object, ...]) -> list[tuple[str, str]]:
    pairs = [each for each in table if isinstance(each, tuple)]
    return [(str(key).replace("_", " "), text) for key, text in pairs if isinstance(text, str)]
