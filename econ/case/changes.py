"""What differs between two cases, path by path, as written."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from econ.case.schema import Case, plain

_ABSENT = ""


@dataclass(frozen=True, slots=True)
class Change:
    """One answer that differs.

    Attributes
    ----------
    path : str
        Which, such as "rooms[0].floor_area_m2".
    before, after : str
        As written; empty where it is not answered.
    """

    path: str
    before: str
    after: str


def changes(before: Case, after: Case) -> tuple[Change, ...]:
    """Return what differs between two cases, in the order of the second; what only the first answers comes last.

    Parameters
    ----------
    before, after : Case
        The two; the record of who filled a case in counts too.
    """
    old, new = (dict(_leaves(plain(case), "")) for case in (before, after))
    paths = [*new, *(path for path in old if path not in new)]
    pairs = [(path, old.get(path, _ABSENT), new.get(path, _ABSENT)) for path in paths]
    return tuple(Change(*pair) for pair in pairs if pair[1] != pair[2])


def _leaves(value: Any, path: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, Mapping) and path.count(".") == 0:  # a section, not an amount with low and high
        for name, part in value.items():
            yield from _leaves(part, f"{path}.{name}" if path else name)
    elif isinstance(value, list) and value and all(isinstance(part, Mapping) for part in value) and "." not in path:
        for place, part in enumerate(value):
            yield from _leaves(part, f"{path}[{place}]")
    else:
        yield path, _written(value)


def _written(value: Any) -> str:
    if isinstance(value, Mapping):
        return ", ".join(f"{name} {_written(part)}" for name, part in value.items())
    if isinstance(value, list):
        return ", ".join(_written(part) for part in value)
    return str(value)
