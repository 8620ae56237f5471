"""What is asked by phone, looked after through the year, photographed and measured, as the tables list it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any, Final, TypeVar

from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.errors import TableError
from econ.tables.record import read_table

WHOM: Final = ("permit_office", "electrician", "utility", "insurer", "association", "landlord", "contractor")
"""Who is phoned, in the order of phoning."""

SEASONS: Final = ("every_month", "spring", "summer", "autumn", "winter", "every_few_years")
"""When something is looked after, in the order of a sheet."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a list.

    Attributes
    ----------
    key : str
        Stable name.
    group : str
        Who is phoned, or the season; empty where there are no groups.
    text, more : str
        The question and why it is asked; what is done and how; what a photo shows.
    who : str
        Who does it; empty where that goes without saying.
    minutes_min : float
        About how long it takes, 0 where that is not told. [minute]
    routes : tuple of str
        Alternatives it belongs to.
    conditions : tuple of str
        Facts that must all hold.
    source : str
        Citation, or common practice.
    settles : str
        Path of the field that an answer goes into; empty for none.
    """

    key: str
    group: str
    text: str
    more: str
    who: str
    minutes_min: float
    routes: tuple[str, ...]
    conditions: tuple[str, ...]
    source: str
    settles: str = ""


@dataclass(frozen=True, slots=True)
class Split:
    """How far the air blown out usually lies from the air drawn in.

    Attributes
    ----------
    low_k, high_k : float
        Least and greatest usual difference. [K]
    source : str
        Citation, or the word assumption.
    """

    low_k: float
    high_k: float
    source: str


Made = TypeVar("Made")


@dataclass(frozen=True, slots=True)
class Keeping:
    """All lists of the record.

    Attributes
    ----------
    questions, care, photos : tuple of Row
        In the order of their files.
    splits : dict of str to Split
        By what the unit does.
    """

    questions: tuple[Row, ...]
    care: tuple[Row, ...]
    photos: tuple[Row, ...]
    splits: dict[str, Split]


@lru_cache(maxsize=4)
def keeping_tables(root: Path | None = None) -> Keeping:
    """Return the lists of the record.

    Parameters
    ----------
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    keeping : Keeping
        Checked against their records.

    Raises
    ------
    TableError
        If a row names an alternative, a group or a key that cannot be.
    """
    splits = read_table("installation/splits", root).rows()
    return Keeping(
        questions=_rows("installation/questions", root, WHOM, _question),
        care=_rows("installation/care", root, SEASONS, _care),
        photos=_rows("installation/photos", root, ("",), _photo),
        splits={row["running"]: Split(row["low_k"], row["high_k"], row["source"]) for row in splits},
    )


def _rows(
    name: str, root: Path | None, groups: tuple[str, ...], made: Callable[[dict[str, Any]], Row]
) -> tuple[Row, ...]:
    rows = tuple(made(row) for row in read_table(name, root).rows())
    for row in rows:
        if row.group not in groups or not row.routes or not set(row.routes) <= set(ALTERNATIVES):
            raise TableError(f"{name}.csv: {row.key} names a group or an alternative that is not there.")
    if len({row.key for row in rows}) != len(rows):
        raise TableError(f"{name}.csv: a key stands there twice.")
    return rows


def _question(row: dict[str, Any]) -> Row:
    return _row(row, row["whom"], row["ask"], row["why"], minutes_min=row["minutes_min"])


def _care(row: dict[str, Any]) -> Row:
    return _row(row, row["season"], row["what"], row["how"], who=row["who"])


def _photo(row: dict[str, Any]) -> Row:
    return _row(row, "", row["label"], "")


def _row(row: dict[str, Any], group: str, text: str, more: str, *, who: str = "", minutes_min: float = 0.0) -> Row:
    routes, conditions = (tuple(row[name].split(";")) for name in ("routes", "condition"))
    settles = row.get("settles", "")
    return Row(row["key"], group, text, more, who, minutes_min, routes, conditions, row["source"], settles)
