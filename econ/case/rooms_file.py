"""A file of rooms, one row a room: every row is taken, or refused with its reasons; none is lost.

Forgiving about order and names of columns, separators, byte-order marks and decimal commas; strict about meaning.
"""

import csv
import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.case.quantity import short
from econ.case.rooms_cell import BLANK, CellError, Reader, Value, as_typed, is_unknown
from econ.case.rooms_columns import COLUMNS, REQUIRED, Column, has_readable_unit, named
from econ.kernel.arrays import FloatArray
from econ.kernel.errors import Fault

MOST_BYTES: Final = 64_000_000
MOST_ROWS: Final = 200_000
MOST_CELL: Final = 2_000
"""Letters in a cell."""

SEPARATORS: Final = (",", ";", "\t", "|")
_CONTROL: Final = frozenset(chr(code) for code in range(32) if chr(code) not in "\t\n\r") | {"\x7f"}


@dataclass(frozen=True, slots=True)
class RefusedRow:
    """A row that was not taken.

    Attributes
    ----------
    line : int
        Line of the file on which it begins, the heading being line 1.
    cells : tuple of str
        What stands in it.
    faults : tuple of Fault
        Everything wrong with it.
    """

    line: int
    cells: tuple[str, ...]
    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True, eq=False)
class RoomTable:
    """Rooms as read: R rows, in the order of the file.

    Attributes
    ----------
    line : tuple of int, shape (R,)
        Line of the file.
    text : dict of str to tuple of str, shape (R,)
        Building, unit, room, type, windows, cooling, mark and notes.
    number : dict of str to ndarray, shape (R,)
        Floor, size in square metres, sides as bits, age, rent, notice, amperes and days as ordinals; NaN where blank.
        [any]
    option : dict of str to ndarray of int, shape (R,)
        Position among the options of the case's choice; `BLANK` where nothing is said.
    unknown : int
        Cells that say "not known".
    refused : tuple of RefusedRow
        Rows that were not taken.
    notes : tuple of str
        What was taken for granted.
    faults : tuple of Fault
        What is wrong with the file or its headings, so that no row could be read.
    heading : tuple of str
        Headings as typed.
    cells : tuple of tuple of str, length R
        Cells as typed, each row as long as the heading.
    """

    line: tuple[int, ...]
    text: Mapping[str, tuple[str, ...]]
    number: Mapping[str, FloatArray]
    option: Mapping[str, np.ndarray]
    unknown: int
    refused: tuple[RefusedRow, ...]
    notes: tuple[str, ...]
    faults: tuple[Fault, ...] = ()
    heading: tuple[str, ...] = ()
    cells: tuple[tuple[str, ...], ...] = ()

    @property
    def n_room(self) -> int:
        """Rows taken, R."""
        return len(self.line)

    @property
    def n_row(self) -> int:
        """Rows of the file: those taken and those refused."""
        return self.n_room + len(self.refused)


@dataclass(frozen=True, slots=True)
class _Row:
    """One row before its cells are read."""

    line: int
    cells: list[str]


@dataclass(frozen=True, slots=True)
class _Heading:
    """Which column stands where, and what is wrong with the heading."""

    place: dict[str, int]
    reader: dict[str, Reader]
    width: int
    faults: tuple[Fault, ...]
    notes: tuple[str, ...]


def read_rooms(content: bytes | str, types: Sequence[str]) -> RoomTable:
    """Return the rooms of a file.

    Parameters
    ----------
    content : bytes or str
        The whole file.
    types : sequence of str
        Room types that rows may name.

    Returns
    -------
    rooms : RoomTable
        Rows that could be read, and every other row with its faults.
    """
    if len(content) > MOST_BYTES:
        fault = Fault("file", f"must be at most {MOST_BYTES:,} bytes", f"{len(content):,}", "Split it by building.")
        return _refuse_all([], (fault,))
    text, said = decoded(content)
    rows = _rows(text)
    if not rows:
        return _refuse_all([], (Fault("file", "is empty", "nothing", "Write the headings in line 1."),), said)
    heading = _heading(rows[0].cells)
    if heading.faults:
        return _refuse_all(rows[1:], heading.faults, (*said, *heading.notes))
    found = _read(rows[1:], heading, {name.casefold(): name for name in types}, (*said, *heading.notes))
    return replace(found, heading=tuple(rows[0].cells))


def decoded(content: bytes | str) -> tuple[str, tuple[str, ...]]:
    """Return the text of a file and what was taken for granted in reading it."""
    if isinstance(content, str):
        return content.removeprefix("\ufeff"), ()
    for mark, name in ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"), (b"\xef\xbb\xbf", "utf-8-sig")):
        if content.startswith(mark):
            return content.decode(name, errors="replace").removeprefix("\ufeff"), ()
    try:
        return content.decode("utf-8"), ()
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace"), (
            "The file is not UTF-8; it was read as Windows text: check names with accents.",
        )


def _rows(text: str) -> list[_Row]:
    """Return the rows that hold anything, with the line each begins on."""
    separator = separator_of(text)
    rows = _records(text, separator)
    if rows is None:
        rows = [_line(at, line, separator) for at, line in enumerate(text.splitlines(), start=1)]
    return [row for row in rows if any(row.cells)]


def separator_of(text: str) -> str:
    """Return what separates the cells of a file: the sign that stands most often in its first line."""
    first = next((line for line in text.splitlines() if line.strip()), "")
    return max(SEPARATORS, key=first.count)


def _records(text: str, separator: str) -> list[_Row] | None:
    """Return the records of a whole file, or None where a quote that is never closed swallows rows."""
    reader, rows, line = csv.reader(io.StringIO(text, newline=""), delimiter=separator), [], 0
    width = 0
    try:
        for cells in reader:
            begins, line = line + 1, reader.line_num
            width = width or len(cells)
            if line > begins and len(cells) != width:
                return None
            rows.append(_Row(begins, [as_typed(each) for each in cells]))
    except csv.Error:
        return None
    is_open = bool(rows) and line > rows[-1].line
    return None if is_open and not text.rstrip("\r\n").endswith('"') and text.count('"') % 2 else rows


def _line(at: int, line: str, separator: str) -> _Row:
    """Return one line as a row of its own; a line that is too long for the reader is cut at its separators."""
    try:
        cells = next(csv.reader([line], delimiter=separator), [])
    except csv.Error:
        cells = line.split(separator)
    return _Row(at, [as_typed(each) for each in cells])


def _heading(cells: list[str]) -> _Heading:
    place: dict[str, int] = {}
    reader: dict[str, Reader] = {}
    faults, notes = [], []
    for at, heading in enumerate(cells):
        found = named(heading) if heading else None
        if found is None:
            if heading:
                notes.append(f'The column "{short(heading)}" is not one of ours and was not read.')
            continue
        column, unit = found
        if column.key in place:
            remedy = f"Keep one of them; the other is {short(cells[place[column.key]])}."
            faults.append(
                Fault(
                    f"line 1, column {at + 1}", f"means the same as another: {column.heading}", short(heading), remedy
                )
            )
        elif not has_readable_unit(column, unit):
            faults.append(Fault(f"line 1, {column.heading}", "must be in sq ft or m2", short(heading), "Convert it."))
        else:
            place[column.key], reader[column.key] = at, column.reader(unit)
    return _Heading(place, reader, len(cells), (*faults, *_missing(place, cells)), tuple(notes))


def _missing(place: Mapping[str, int], cells: Sequence[str]) -> list[Fault]:
    read = short(", ".join(cells))
    wanted = [key for key in REQUIRED if key not in place]
    faults = [
        Fault("line 1", f'has no column "{key}"', read, "Write the headings of the template in line 1.")
        for key in wanted
    ]
    if not {"size", "type"} & place.keys():
        faults.append(Fault("line 1", 'has neither "size" nor "type"', read, "Add one of these columns."))
    return faults


def _read(rows: list[_Row], heading: _Heading, types: Mapping[str, str], notes: tuple[str, ...]) -> RoomTable:
    """Return the rows whose every cell can be taken, and the others with all that is wrong."""
    faults: dict[int, list[Fault]] = {}
    for at, row in enumerate(rows):
        if at >= MOST_ROWS:
            _add(faults, at, Fault(f"line {row.line}", f"is beyond {MOST_ROWS:,} rooms", "one more", "Split the file."))
        for fault in _shape_faults(row, heading.width):
            _add(faults, at, fault)
    values = {column.key: _column(column, rows, heading, faults) for column in COLUMNS}
    _check_types(values, rows, types, faults)
    _check_doubles(values, rows, faults)
    kept = [at for at in range(len(rows)) if at not in faults]
    refused = tuple(RefusedRow(rows[at].line, tuple(rows[at].cells), tuple(faults[at])) for at in sorted(faults))
    unknown = sum(is_unknown(each) for at in kept for each in rows[at].cells if "?" in each or "n" in each.lower())
    found = _table([rows[at].line for at in kept], values, kept, (unknown, refused, notes))
    return replace(found, cells=tuple(_as_typed(rows[at].cells, heading.width) for at in kept))


def _as_typed(cells: list[str], width: int) -> tuple[str, ...]:
    """Return a row's cells, as many as there are headings."""
    return tuple(cells[:width]) + ("",) * (width - len(cells))


def _add(faults: dict[int, list[Fault]], at: int, fault: Fault) -> None:
    faults.setdefault(at, []).append(fault)


def _shape_faults(row: _Row, width: int) -> list[Fault]:
    where = f"line {row.line}"
    found = []
    if any(row.cells[width:]):
        problem = f"has {len(row.cells)} cells under {width} headings"
        found.append(
            Fault(where, problem, short(", ".join(row.cells[width:])), 'Put text with a separator in "quotes".')
        )
    for at, each in enumerate(row.cells):
        if len(each) > MOST_CELL:
            found.append(
                Fault(f"{where}, column {at + 1}", f"is longer than {MOST_CELL} letters", short(each), "Shorten it.")
            )
        elif not _CONTROL.isdisjoint(each):
            found.append(
                Fault(
                    f"{where}, column {at + 1}", "holds a letter that cannot be printed", short(each), "Type it again."
                )
            )
    return found


def _column(
    column: Column, rows: list[_Row], heading: _Heading, faults: dict[int, list[Fault]]
) -> list[Value | CellError]:
    """Return a column's values, each different cell read once; a refused one adds a fault to its row."""
    if column.key not in heading.place:
        read = _blank(column)
        return [read] * len(rows)
    place, reader = heading.place[column.key], heading.reader[column.key]
    cells = [row.cells[place] if place < len(row.cells) else "" for row in rows]
    known = {each: _cell(each, reader) for each in set(cells)}
    found = [known[each] for each in cells]
    for at, value in enumerate(found):
        if isinstance(value, CellError):
            path = f"line {rows[at].line}, {column.heading}"
            _add(faults, at, Fault(path, value.problem, short(cells[at]) or "nothing", value.remedy))
    return found


def _cell(text: str, reader: Reader) -> Value | CellError:
    try:
        return reader(text[:MOST_CELL])
    except CellError as error:
        return error


def _blank(column: Column) -> Value:
    if column.kind == "text":
        return ""
    return BLANK if column.kind == "option" or column.key == "exposure" else float("nan")


def _check_types(
    values: Mapping[str, list[Value | CellError]],
    rows: list[_Row],
    types: Mapping[str, str],
    faults: dict[int, list[Fault]],
) -> None:
    """Refuse rows whose type nobody defined, and rows with neither size nor type; give types their own spelling."""
    listed = ", ".join(list(types.values())[:8]) or "none yet"
    for at, (kind, size) in enumerate(zip(values["type"], values["size"], strict=True)):
        if isinstance(kind, CellError) or isinstance(size, CellError):
            continue
        name = types.get(str(kind).casefold())
        where = f"line {rows[at].line}, type"
        if kind and not is_unknown(str(kind)) and name is None:
            _add(faults, at, Fault(where, "must be a room type of the case", short(str(kind)), f"Types: {listed}."))
        elif name is None and np.isnan(float(size)):
            _add(faults, at, Fault(where, "must be given where there is no size", "nothing", "Give a size or a type."))
        values["type"][at] = name or ""


def _check_doubles(
    values: Mapping[str, list[Value | CellError]], rows: list[_Row], faults: dict[int, list[Fault]]
) -> None:
    """Refuse a room that stands in the file a second time; the first one is kept."""
    first: dict[tuple[str, ...], int] = {}
    names = zip(*(values[key] for key in ("building", "unit", "room")), strict=True)
    for at, name in enumerate(names):
        if at in faults:
            continue
        key = tuple(str(part).casefold() for part in name)
        if key in first:
            got = " / ".join(str(part) for part in name if part)
            problem = f"is the room of line {rows[first[key]].line} again"
            _add(faults, at, Fault(f"line {rows[at].line}, room", problem, short(got), "Rename one, or take it out."))
        else:
            first[key] = at


def _table(
    line: list[int],
    values: Mapping[str, list[Value | CellError]],
    kept: list[int],
    rest: tuple[int, tuple[RefusedRow, ...], tuple[str, ...]],
) -> RoomTable:
    taken = {key: [column[at] for at in kept] for key, column in values.items()}
    kinds = {column.key: column.kind for column in COLUMNS}
    return RoomTable(
        tuple(line),
        {key: tuple(str(each) for each in taken[key]) for key, kind in kinds.items() if kind == "text"},
        {key: np.array(taken[key], dtype=np.float64) for key, kind in kinds.items() if kind in ("number", "day")},
        {key: np.array(taken[key], dtype=np.int64) for key, kind in kinds.items() if kind == "option"},
        *rest,
    )


def _refuse_all(rows: list[_Row], faults: tuple[Fault, ...], notes: tuple[str, ...] = ()) -> RoomTable:
    """Return a table without rows: the file or its headings cannot be read, so no row can."""
    refused = tuple(RefusedRow(row.line, tuple(row.cells), faults) for row in rows)
    empty = _table([], {column.key: [] for column in COLUMNS}, [], (0, refused, notes))
    return replace(empty, faults=faults)
