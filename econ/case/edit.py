"""Change one thing in a case: every function returns a new case, or refuses with the faults."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Any, Final, Literal

from econ.case.choices import NOT_KNOWN
from econ.case.form import FieldInfo, field_at, fields
from econ.case.quantity import UNKNOWN, Amount
from econ.case.schema import MOST, SECTIONS, Case, case_from, plain
from econ.case.section import Known
from econ.kernel.errors import CaseError, Fault, UnknownChoiceError

State = Literal["yours", "usual", "not_known"]
TABLES: Final = ("table", "amounts", "months", "notes", "marks", "days", "asides")
"""Kinds of fields that hold values by name."""

_PATH: Final = re.compile(
    r"(?P<section>[a-z_]+)(?:\[(?P<index>\d{1,3})\])?\.(?P<field>[a-z0-9_]+)(?:\.(?P<key>[a-z0-9_.\[\]]+))?"
)


def value_at(case: Case, path: str) -> Any:
    """Return what the user set at a path, or None where nothing was set.

    Parameters
    ----------
    case : Case
        The case.
    path : str
        ``"kit.price_usd"``, ``"rooms[0].wall"`` or ``"work.parties.<task>"``.

    Returns
    -------
    value : Amount, str, tuple or None
        An amount, an option or text; a tuple for lists and tables.
    """
    section, index, name, key = _place(case, path)
    part = getattr(case, section)[index] if section in MOST else getattr(case, section)
    value = getattr(part, name)
    return dict(value or ()).get(key) if key else value


def with_value(case: Case, path: str, value: object, known: Known | None = None) -> Case:
    """Return the case with one value set.

    Parameters
    ----------
    case : Case
        The case; it stays as it is.
    path : str
        As in `value_at`.
    value : object
        As a case file would hold it ("884 ft**2", 0.15, "block", {low, likely, high}, "not known"), or an Amount.
    known : Known, optional
        Table keys to check names against.

    Raises
    ------
    CaseError
        If the value is refused, with its faults.
    """
    section, index, name, key = _place(case, path)
    tables = plain(case)
    part = tables[section][index] if section in MOST else tables.setdefault(section, {})
    written = dict(value.written) if isinstance(value, Amount) and isinstance(value.written, tuple) else value
    part[name] = (part.get(name) or {}) | {key: written} if key else getattr(written, "written", written)
    return case_from(tables, known)


def with_fields(case: Case, section: str, values: Mapping[str, object], known: Known | None = None) -> Case:
    """Return the case with several fields of one section set at once; None leaves a field to its usual value.

    Parameters
    ----------
    case : Case
        The case; it stays as it is.
    section : str
        Any that does not repeat.
    values : mapping of str to object
        As a case file would hold them, by field.
    known : Known, optional
        Table keys to check names against.

    Raises
    ------
    CaseError
        If the values are refused, with their faults.
    """
    tables = plain(case)
    part = tables.get(section, {}) | values
    tables[section] = {name: value for name, value in part.items() if value is not None}
    return case_from(tables, known)


def without_value(case: Case, path: str) -> Case:
    """Return the case with one value untouched again: its usual value holds."""
    section, index, name, key = _place(case, path)
    tables = plain(case)
    part = tables[section][index] if section in MOST else tables.get(section, {})
    if key:
        part.get(name, {}).pop(key, None)
    if not key or not part.get(name):
        part.pop(name, None)
    return case_from(tables)


def state_of(case: Case, path: str) -> State:
    """Return whether a value is the user's, the usual one, or said to be not known."""
    return _state(value_at(case, path))


def states(case: Case) -> dict[str, State]:
    """Return the state of every amount and choice, rooms with their index."""
    return {path: state_of(case, path) for path, info in asked_paths(case) if info.kind in ("amount", "choice")}


def answer_counts(case: Case) -> dict[State, int]:
    """Return how many amounts and choices are the user's, usual, and not known; whose weather it is counts as one."""
    counted = Counter(states(case).values())
    chosen = any((case.place.station, case.place.hourly_file, case.place.monthly, case.place.town))
    return {
        "yours": counted["yours"] + int(chosen),
        "usual": counted["usual"],
        "not_known": counted["not_known"],
    }


def asked_paths(case: Case) -> Iterator[tuple[str, FieldInfo]]:
    """Yield every field's path in this case, ``rooms[i].x`` for each room, with what the schema says of it."""
    for section in SECTIONS:
        places = range(len(getattr(case, section))) if section in MOST else (0,)
        for index in places:
            for info in fields(section):
                yield info.path.replace("[]", f"[{index}]"), info


def is_asked(case: Case, info: FieldInfo, usual: Mapping[str, str]) -> bool:
    """Return whether an earlier answer makes a field matter.

    Parameters
    ----------
    case : Case
        The case.
    info : FieldInfo
        The field.
    usual : mapping of str to str
        Usual options by path, for choices left untouched; where one is not known the field is asked.
    """
    if not info.asks_after:
        return True
    path, _, options = info.asks_after.partition("=")
    chosen = value_at(case, path) or usual.get(path, NOT_KNOWN)
    if options.startswith("="):
        return chosen in options[1:].split("|")
    return chosen == NOT_KNOWN or chosen in options.split("|")


def add_room(case: Case, room: Mapping[str, object] | None = None) -> Case:
    """Return the case with one more room at the end.

    Parameters
    ----------
    case : Case
        The case.
    room : mapping, optional
        What is known of the room, as a file's ``[[rooms]]`` block.
    """
    tables = plain(case)
    tables["rooms"].append(dict(room or {}))
    return case_from(tables)


def with_quote(case: Case, quote: Mapping[str, object] | None = None) -> Case:
    """Return the case with one more quote beside the one that is counted.

    Parameters
    ----------
    case : Case
        The case.
    quote : mapping, optional
        What is known of it, as a file's ``[[quotes]]`` block.
    """
    tables = plain(case)
    tables["quotes"] = [*tables.get("quotes", []), dict(quote or {})]
    return case_from(tables)


def without_quote(case: Case, index: int) -> Case:
    """Return the case without one of the other quotes."""
    if not 0 <= index < len(case.quotes):
        raise _unknown(f"quotes[{index}]", f"has {len(case.quotes)} other quotes", "Name one of them, from 0.")
    tables = plain(case)
    del tables["quotes"][index]
    return case_from(tables)


def with_line(case: Case, section: str, line: Mapping[str, object], known: Known | None = None) -> Case:
    """Return the case with one more line of what was signed or said of a step; what stands there stays.

    Parameters
    ----------
    case : Case
        The case.
    section : str
        "signed" or "steps".
    line : mapping
        Its fields, as a file's block; empty ones are left out.
    known : Known, optional
        Table keys to check names against.

    Raises
    ------
    CaseError
        If the line is refused, with its faults.
    """
    tables = plain(case)
    tables[section] = [*tables.get(section, []), {name: value for name, value in line.items() if value}]
    return case_from(tables, known)


def with_sign_off_back(case: Case, index: int, on: str, why: str = "") -> Case:
    """Return the case with a sign-off taken back: it stays on record, and counts no more.

    Parameters
    ----------
    case : Case
        The case.
    index : int
        Which line of ``signed``, from 0.
    on : str
        The day, year-month-day.
    why : str
        Why, in the user's words.
    """
    if not 0 <= index < len(case.signed):
        raise _unknown(f"signed[{index}]", f"has {len(case.signed)} lines", "Name one of them, from 0.")
    tables = plain(case)
    tables["signed"][index] |= {"taken_back": on} | ({"why_back": why} if why else {})
    return case_from(tables)


def remove_room(case: Case, index: int) -> Case:
    """Return the case without one room; the last one cannot go."""
    if not 0 <= index < len(case.rooms):
        raise _unknown(f"rooms[{index}]", f"has rooms 0 to {len(case.rooms) - 1}", "Name one of them.")
    tables = plain(case)
    del tables["rooms"][index]
    return case_from(tables)


def _state(value: object) -> State:
    if value is None:
        return "usual"
    return "not_known" if value in (UNKNOWN, NOT_KNOWN) else "yours"


def _place(case: Case, path: str) -> tuple[str, int, str, str]:
    found = _PATH.fullmatch(path)
    has_index = found is not None and found["index"] is not None
    if found is None or has_index != (found["section"] in MOST):
        raise _unknown(path, "is not the path of a field", "Write it such as kit.price_usd or rooms[0].wall.")
    index = int(found["index"] or 0)
    if has_index and index >= (count := len(getattr(case, found["section"]))):
        word = {"rooms": "room", "quotes": "quote", "signed": "mark", "steps": "step"}[found["section"]]
        raise _unknown(path, f"names a {word} that is not there; there are {count}", f"Add the {word} first.")
    try:
        info = field_at(f"{found['section']}{'[]' if has_index else ''}.{found['field']}")
    except UnknownChoiceError as error:
        raise _unknown(path, "is not a field", f"Nearest: {', '.join(error.nearest)}.") from None
    if found["key"] and info.kind not in TABLES:
        raise _unknown(path, "is not the path of a field", f"{info.path} holds one value.")
    return found["section"], index, found["field"], found["key"] or ""


def _unknown(path: str, problem: str, remedy: str) -> CaseError:
    return CaseError([Fault(path, problem, repr(path), remedy)])
