"""What the validation found, as faults a person can act on."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from pydantic import ValidationError

from econ.case.nearest import nearest
from econ.case.quantity import short
from econ.kernel.errors import CaseError, Fault

_TABLE_TYPES: Final = ("model_type", "model_attributes_type", "dict_type")


def path_text(loc: tuple[int | str, ...]) -> str:
    """Return a path as the user reads it.

    Examples
    --------
    >>> path_text(("rooms", 2, "floor_area_m2"))
    'rooms[2].floor_area_m2'
    """
    text = ""
    for part in loc:
        text += f"[{part}]" if isinstance(part, int) else f".{part}" if text else part
    return text


def faults_of(error: ValidationError, fields: Mapping[str, tuple[str, ...]]) -> list[Fault]:
    """Return every fault of a validation, with paths, in the order of the sections.

    Parameters
    ----------
    error : ValidationError
        What the validation raised.
    fields : mapping of str to tuple of str
        Field names by section, to suggest the nearest for an unknown one.
    """
    return [fault for detail in error.errors(include_url=False) for fault in _faults(detail, fields)]


def _faults(detail: Any, fields: Mapping[str, tuple[str, ...]]) -> list[Fault]:
    loc, kind = detail["loc"], detail["type"]
    path = path_text(loc)
    cause = detail.get("ctx", {}).get("error")
    if isinstance(cause, CaseError):
        return [replace(fault, path=path_text((*loc, *([fault.path] if fault.path else [])))) for fault in cause.faults]
    if kind == "extra_forbidden":
        return [_unknown(loc, path, fields)]
    if kind == "missing":
        return [Fault(path, "is missing", "nothing", _remedy_missing(path))]
    if kind in _TABLE_TYPES:
        return [Fault(path, "must be a table of fields", short(detail["input"]), f"Begin it with [{path}] on a line.")]
    return [Fault(path, "has the wrong form", short(detail["input"]), f"See the form of {path} in the schema.")]


def _remedy_missing(path: str) -> str:
    remedies = {
        "rooms": "Add at least one room, beginning with [[rooms]] on a line.",
        "place": 'Add [place] on a line and beneath it station = "<place>, <ST>".',
        "place.station": 'Name the listed weather place, such as station = "St Cloud Regional Arpt, MN".',
    }
    return remedies.get(path, "Fill it in.")


def _unknown(loc: tuple[int | str, ...], path: str, fields: Mapping[str, tuple[str, ...]]) -> Fault:
    name, section = str(loc[-1]), str(loc[0])
    if len(loc) == 1:
        return Fault(path, "is not a section", repr(name), f"Nearest: {', '.join(nearest(name, fields))}.")
    elsewhere = [other for other, names in fields.items() if name in names]
    if elsewhere:
        return Fault(path, "is not a field here", repr(name), f"It belongs in {' or '.join(elsewhere)}.")
    close = nearest(name, fields.get(section, ()), 1)
    return Fault(path, "is not a field", repr(name), f"Nearest: {', '.join(close)}.")
