"""What every section of a case has in common: frozen, no unknown field, each value checked as declared."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from typing import Annotated, Any, ClassVar, Final

from pydantic import BaseModel, ConfigDict, InstanceOf, ValidationInfo, field_validator

from econ.case import choices, marks, months, quantity
from econ.case.quantity import Measure
from econ.installation.quote import LINE_KINDS
from econ.kernel.errors import CaseError, Fault

Amt = Annotated[quantity.Amount, InstanceOf()] | None
Amounts = tuple[tuple[str, Annotated[quantity.Amount, InstanceOf()]], ...] | None
Monthly = tuple[tuple[str, Annotated[months.Months, InstanceOf()]], ...] | None
Table = tuple[tuple[str, str], ...] | None
Listed = tuple[str, ...] | None
Choice = str | None
Text = str | None

FIGURE: Final = Measure("", "", -1_000_000.0, 10_000_000.0)
"""Bounds of a figure changed by hand: its own table's unit, any sign."""

TEXT_LIMIT: Final = 10_000
TABLE_LIMIT: Final = 50_000
"""Letters of one text, and of all texts of a table together: a case stays small enough to be read back."""

SHEET_LIMIT: Final = 500_000
"""Letters of a text, and of one that holds many rows."""

_NAME: Final = re.compile(r"[a-z0-9_]{1,80}")
_KEY: Final = re.compile(r"[a-z0-9_]{1,80}(?:\.[a-z0-9_]{1,80})?")


@dataclass(frozen=True, slots=True)
class Known:
    """Keys of the tables that a case may name; an empty tuple leaves that kind unchecked.

    Attributes
    ----------
    stations : tuple of str
        Weather places, "<station>, <ST>".
    tasks : tuple of str
        Installation tasks.
    tools : tuple of str
        Tools.
    states : tuple of str
        Two-letter codes of the states whose prices are known.
    measures : tuple of str
        Measures that lower what a room needs.
    given_tasks : tuple of str
        Tasks that may be given to another party: those of a self-installation.
    """

    stations: tuple[str, ...] = ()
    tasks: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    states: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    given_tasks: tuple[str, ...] = ()


class Section(BaseModel):
    """A part of a case; every field may be left out."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    path: ClassVar[str] = ""

    @field_validator("*", mode="before")
    @classmethod
    def checked(cls, raw: Any, info: ValidationInfo) -> Any:
        """Return the value as its field's declaration reads it."""
        name = str(info.field_name)
        extra = cls.model_fields[name].json_schema_extra
        if raw is None or not isinstance(extra, dict):
            return raw
        path, kind = f"{cls.path}.{name}", str(extra["kind"])
        readers: dict[str, Callable[[Any], Any]] = {
            "text": text, "sheet": sheet, "table": pairs, "list": names, "amounts": amounts, "months": months.monthly,
            "kinds": line_kinds, "day": day, "mark": partial(marks.mark, path),
            **dict.fromkeys(("choice", "pick"), partial(option, path)),
            **dict.fromkeys(("amount", "aside"), lambda each: quantity.amount(each, measure_of(extra))),
        }  # fmt: skip
        one = {"notes": "text", "marks": "mark", "days": "day", "asides": "aside"}.get(kind)
        return readers[kind](raw) if one is None else keyed(raw, readers[one])


def measure_of(extra: Mapping[str, Any]) -> Measure:
    """Return unit and bounds from a field's declaration."""
    return Measure(extra["unit"], extra["us_unit"], extra["low"], extra["high"], extra["is_whole"])


def fault(problem: str, raw: object, remedy: str, part: str = "") -> CaseError:
    """Return the error for one fault of one field."""
    return CaseError([Fault(part, problem, quantity.short(raw), remedy)])


def option(path: str, raw: object) -> str:
    """Return the option that was chosen; "not known" in any spelling is the option not_known."""
    options = choices.CHOICES.get(path) or choices.PICKS[path]
    chosen = choices.NOT_KNOWN if quantity.is_not_known(raw) else str(raw).strip()
    chosen = choices.EARLIER_WORDS.get((path, chosen), chosen)
    if isinstance(raw, bool) or not isinstance(raw, str | int) or chosen not in options:
        listed = ", ".join(options[:-1])
        raise fault(f'must be one of: {listed}, or "not known"', raw, "Write one of these in quotes.")
    return chosen


def sheet(raw: object) -> str:
    """Return a text of many rows that can be saved and printed."""
    return text(raw, SHEET_LIMIT)


def text(raw: object, limit: int = TEXT_LIMIT) -> str:
    """Return a text that can be saved and printed."""
    if isinstance(raw, date):
        return raw.isoformat()
    if not isinstance(raw, str):
        raise fault("must be text", raw, "Put it in quotes.")
    if len(raw) > limit or any("\ud800" <= letter <= "\udfff" for letter in raw):
        raise fault(f"must be readable text of at most {limit} letters", raw, "Shorten it.")
    return raw


def day(raw: object) -> str:
    """Return a date as ISO text, year-month-day."""
    written = text(raw)
    try:
        given = date.fromisoformat(written)
    except ValueError:
        raise fault("must be a date", raw, 'Write it year-month-day, such as "2027-05-20".') from None
    if not 2000 <= given.year <= 2100 or len(written) != len("2027-05-20"):
        raise fault("must be a date from 2000 to 2100, year-month-day", raw, 'Write it such as "2027-05-20".')
    return written


def pairs(raw: object) -> tuple[tuple[str, str], ...] | None:
    """Return a table of texts as pairs; an empty one says nothing, as if it were left out."""
    if not isinstance(raw, Mapping) or not all(isinstance(value, str) for value in raw.values()):
        raise fault(
            "must be a table of task = party", raw, 'Write it such as parties = {hang_outdoor_unit = "helper"}.'
        )
    return tuple((str(key), str(value)) for key, value in raw.items()) or None


def line_kinds(raw: object) -> tuple[tuple[str, str], ...] | None:
    """Return the kind of each line of a quote, by the line's own words; an empty table says nothing."""
    if not isinstance(raw, Mapping):
        raise fault("must be a table of line = kind", raw, 'Write it such as kinds = {"Heat pump" = "equipment"}.')
    wrong = [kind for kind in raw.values() if kind not in LINE_KINDS]
    if wrong:
        raise fault(f"must be one of: {', '.join(LINE_KINDS)}", wrong[0], "Write one of these in quotes.")
    return tuple((text(line), str(kind)) for line, kind in raw.items()) or None


def amounts(raw: object) -> tuple[tuple[str, quantity.Amount], ...] | None:
    """Return a table of amounts by path, each in the unit of its own line; an empty one says nothing."""
    if not isinstance(raw, Mapping):
        remedy = 'Write it such as changed = {"costs.ground_pad_usd" = 45}.'
        raise fault("must be a table of path = number", raw, remedy)
    faults: list[Fault] = []
    read = []
    for key, value in raw.items():
        try:
            read.append((str(key), quantity.amount(value, FIGURE)))
        except CaseError as error:
            faults += [Fault(f"{key}", each.problem, each.got, each.remedy) for each in error.faults]
    if faults:
        raise CaseError(faults)
    return tuple(read) or None


def keyed(raw: object, read: Callable[[Any], Any]) -> tuple[tuple[str, Any], ...] | None:
    """Return a table of values by short names, each as `read` reads it; an empty one says nothing."""
    if not isinstance(raw, Mapping):
        raise fault("must be a table of name = value", raw, 'Write it such as done_by = {wall_hole = "me"}.')
    faults: list[Fault] = []
    found = []
    for key, value in raw.items():
        try:
            if not isinstance(key, str) or not _KEY.fullmatch(key):
                raise fault("must be named in small letters, digits and _", key, "Write a name such as wall_hole.")
            found.append((key, read(value)))
        except CaseError as error:
            faults += [Fault(str(key), each.problem, each.got, each.remedy, each.kind) for each in error.faults]
    letters = sum(len(value) for _, value in found if isinstance(value, str))
    if letters > TABLE_LIMIT:
        got = f"{letters:,} letters"
        faults.append(
            Fault("", f"must hold at most {TABLE_LIMIT:,} letters in all", got, "Shorten the longest entries.")
        )
    if faults:
        raise CaseError(faults)
    return tuple(found) or None


def names(raw: object) -> tuple[str, ...]:
    """Return a list of short names, each once."""
    if not isinstance(raw, Sequence) or isinstance(raw, str) or not all(isinstance(name, str) for name in raw):
        raise fault("must be a list of names", raw, 'Write it such as ["drill", "level"].')
    if any(not _NAME.fullmatch(name) for name in raw):
        raise fault("each name has small letters, digits and _", raw, 'Write it such as ["drill", "level"].')
    return tuple(dict.fromkeys(raw))
