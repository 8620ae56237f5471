"""A rooms file with one thing changed: one more room, or another mark; all else stays as it was typed."""

import csv
import io
from collections.abc import Mapping

from econ.case.rooms_columns import column_of, named
from econ.case.rooms_file import separator_of
from econ.case.rooms_out import rows_text


def with_room(text: str, cells: Mapping[str, str]) -> str:
    """Return the file with one more room at its end.

    Parameters
    ----------
    text : str
        The file; empty for a new one.
    cells : mapping of str to str
        What is known of the room, by column.

    Examples
    --------
    >>> print(with_room("", {"unit": "3", "room": "Bath", "floor": "2", "size": "60"}), end="")
    unit,room,floor,size (sq ft)
    3,Bath,2,60
    """
    head, rows = _parted(text)
    place = _places(head, cells)
    row = [""] * len(head)
    for key, cell in cells.items():
        row[place[key]] = cell
    return rows_text([head, *rows, row])


def with_cell(text: str, line: int, key: str, cell: str) -> str:
    """Return the file with one cell of one row changed; a column that is missing is added.

    Parameters
    ----------
    text : str
        The file.
    line : int
        Line on which the row begins, the heading being line 1.
    key : str
        Of the column.
    cell : str
        What it says now.
    """
    head, rows = _parted(text)
    at = _places(head, {key: cell})[key]
    lines = _lines(text)
    row = rows[lines.index(line) - 1]
    row += [""] * (len(head) - len(row))
    row[at] = cell
    return rows_text([head, *rows])


def _parted(text: str) -> tuple[list[str], list[list[str]]]:
    """Return headings and rows that hold anything."""
    rows = [row for row in _reader(text) if any(cell.strip() for cell in row)]
    return (rows[0], rows[1:]) if rows else ([], [])


def _lines(text: str) -> list[int]:
    """Return the line on which each row that holds anything begins."""
    reader, found, begins = _reader(text), [], 1
    for row in reader:
        if any(cell.strip() for cell in row):
            found.append(begins)
        begins = reader.line_num + 1
    return found


def _reader(text: str) -> "csv._reader":  # type: ignore[name-defined]
    return csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=separator_of(text))


def _places(head: list[str], cells: Mapping[str, str]) -> dict[str, int]:
    """Return where each column stands, adding the headings of those that are missing."""
    place = {found[0].key: at for at, heading in enumerate(head) if (found := named(heading))}
    for key in cells:
        if key not in place:
            place[key] = len(head)
            head.append(column_of(key).heading)
    return place
