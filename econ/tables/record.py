"""A table and its record: nothing is read from a file whose source, hash, columns or bounds are not as recorded."""

import csv
import hashlib
import io
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import TableError
from econ.tables.place import data_root

RECORD_KEYS: Final = (
    *("title", "publisher", "document", "edition", "page", "url", "retrieved", "licence", "review_by"),
    *("sha256", "transformations", "columns"),
)
"""What every record says."""

TEXT_KEYS: Final = ("meaning", "kind")
NUMBER_KEYS: Final = ("meaning", "kind", "unit", "low", "high")
"""What a record says of each column; a number may add ``optional = true``: an empty cell is then NaN."""


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """A checked table.

    Attributes
    ----------
    name : str
        Topic and file name, such as ``installation/costs``.
    record : mapping
        The record as read.
    fingerprint : str
        Hash of the table and its record together.
    columns : mapping of str to tuple of str or ndarray, shape (n_row,)
        Cells by column, numbers as read-only arrays in the unit of the record.
    """

    name: str
    record: Mapping[str, Any]
    fingerprint: str
    columns: Mapping[str, tuple[str, ...] | FloatArray]

    def __len__(self) -> int:
        return len(next(iter(self.columns.values())))

    def texts(self, column: str) -> tuple[str, ...]:
        """Return a text column."""
        cells = self.columns[column]
        if isinstance(cells, tuple):
            return cells
        raise TableError(f"{self.name}: column {column} holds numbers, text was asked for. Use numbers().")

    def numbers(self, column: str) -> FloatArray:
        """Return a number column, shape (n_row,), in the unit of its record."""
        cells = self.columns[column]
        if isinstance(cells, tuple):
            raise TableError(f"{self.name}: column {column} holds text, numbers were asked for. Use texts().")
        return cells

    def rows(self) -> tuple[dict[str, Any], ...]:
        """Return the table row by row, each cell by its column's name."""
        names = tuple(self.columns)
        return tuple(dict(zip(names, cells, strict=True)) for cells in zip(*self.columns.values(), strict=True))


def read_table(name: str, root: Path | None = None) -> Table:
    """Return a table after checking it against its record.

    Parameters
    ----------
    name : str
        Topic and file name without ending, such as ``installation/costs``.
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    table : Table
        Every cell within the bounds of its record.

    Raises
    ------
    TableError
        If a file or key is missing, the hash changed, a column is unknown or a cell is out of bounds.
    """
    folder = data_root() if root is None else root
    record_bytes, csv_bytes = (_bytes(folder / f"{name}{ending}") for ending in (".toml", ".csv"))
    record = _record(f"{name}.toml", record_bytes)
    digest = hashlib.sha256(csv_bytes).hexdigest()
    if digest != record["sha256"]:
        raise TableError(
            f"{name}.csv has changed: its sha256 is {digest}, its record says {record['sha256']}. "
            "Restore the file, or review the change and seal the record again."
        )
    columns = _columns(f"{name}.csv", csv_bytes.decode("utf-8"), record["columns"])
    return Table(name, record, hashlib.sha256(record_bytes + csv_bytes).hexdigest(), columns)


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise TableError(f"{path.name} cannot be read ({error.strerror}). Install the package again.") from error


def _record(file: str, content: bytes) -> dict[str, Any]:
    try:
        record = tomllib.loads(content.decode("utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise TableError(f"{file} is not a readable record: {error}.") from error
    missing = [key for key in RECORD_KEYS if key not in record]
    for column, entry in record.get("columns", {}).items():
        wanted = NUMBER_KEYS if entry.get("kind") == "number" else TEXT_KEYS
        missing += [f"columns.{column}.{key}" for key in wanted if key not in entry]
    if missing:
        raise TableError(f"{file} lacks {', '.join(missing)}. Every table carries its whole record.")
    return record


def _columns(file: str, text: str, entries: Mapping[str, Any]) -> dict[str, tuple[str, ...] | FloatArray]:
    reader = csv.reader(io.StringIO(text))
    names = next(reader, [])
    if names != list(entries):
        odd = sorted(set(names) ^ set(entries)) or ["their order"]
        raise TableError(f"{file}, line 1: columns and record differ in {', '.join(odd)}.")
    cells: list[list[Any]] = [[] for _ in names]
    for row in reader:
        if len(row) != len(names):
            raise TableError(f"{file}, line {reader.line_num}: {len(row)} cells; it must have {len(names)}.")
        for column, name, cell in zip(cells, names, row, strict=True):
            is_text = entries[name]["kind"] == "text"
            column.append(cell if is_text else _number(f"{file}, line {reader.line_num}, {name}", cell, entries[name]))
    if not cells or not cells[0]:
        raise TableError(f"{file} has no rows.")
    return {
        name: tuple(column) if entries[name]["kind"] == "text" else _frozen(column)
        for name, column in zip(names, cells, strict=True)
    }


def _number(where: str, cell: str, entry: Mapping[str, Any]) -> float:
    if cell == "" and entry.get("optional", False):
        return float("nan")
    try:
        value = float(cell)
    except ValueError as error:
        raise TableError(f"{where}: {cell!r} is not a number [{entry['unit']}].") from error
    if not entry["low"] <= value <= entry["high"]:
        allowed = f"between {entry['low']:g} and {entry['high']:g}"
        raise TableError(f"{where}: {cell} is out of bounds; it must lie {allowed} [{entry['unit']}].")
    return value


def _frozen(column: list[float]) -> FloatArray:
    values = np.array(column, dtype=np.float64)
    values.flags.writeable = False
    return values
