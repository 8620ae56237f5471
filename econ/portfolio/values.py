"""Rows of a building as the one evaluation takes them: values by path, grouped by what picks formulas."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

import numpy as np

from econ.case.rooms_file import RoomTable
from econ.case.schema import Case
from econ.evaluate.design import design_rows
from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate
from econ.evaluate.wiring.measures import room_work
from econ.kernel.arrays import FloatArray, IntArray
from econ.portfolio.sizes import SizeLines, changed, has_none, kit_index, size_lines, window_index
from econ.portfolio.spoken import AREA, kinds_of, row_numbers
from econ.portfolio.templates import Templates, templates
from econ.tables.loaders import Tables

QUOTE_NOTE = "The total of the case's quote counts as the price of one hired set, in each room."

ROWS_AT_ONCE = 2048
"""Rows evaluated in one call: yearly streams of so many stay small, and progress is told between calls."""


@dataclass(frozen=True, slots=True, eq=False)
class BuildingRows:
    """Every room as numbers.

    Attributes
    ----------
    made : Templates
        Lines by kind.
    kind : ndarray, shape (R,)
        Kind of each row. [dimensionless]
    numbers : dict of str to ndarray, shape (R,)
        Where a row differs from its kind; NaN where it does not. [any]
    lines : SizeLines
        What waits for a size.
    fixed : dict of str to float
        Figures changed by hand. [any]
    cooling_w, heating_w : ndarray, shape (R,)
        Design loads. [W]
    kit, window : ndarray, shape (R,)
        Positions of the sizes. [dimensionless]
    count : ndarray, shape (R,)
        Window units. [dimensionless]
    notes : tuple of str
        What was taken for granted.
    """

    made: Templates
    kind: IntArray
    numbers: Mapping[str, FloatArray]
    lines: SizeLines
    fixed: Mapping[str, float]
    cooling_w: FloatArray
    heating_w: FloatArray
    kit: IntArray
    window: IntArray
    count: FloatArray
    notes: tuple[str, ...]

    @property
    def n_room(self) -> int:
        """Rows, R."""
        return len(self.kind)


def building_rows(table: RoomTable, case: Case, tables: Tables, today: date) -> BuildingRows:
    """Return every room of a file as numbers, its sizes chosen by its own design load.

    Parameters
    ----------
    table : RoomTable
        Rows as read.
    case : Case
        Room types, place, prices and all that holds for the whole building.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.
    """
    return sized_rows(unsized_rows(table, case, tables, today), tables)


def unsized_rows(table: RoomTable, case: Case, tables: Tables, today: date) -> BuildingRows:
    """Return every room of a file as numbers, before any size is chosen.

    Parameters
    ----------
    table, case, tables, today
        As in `building_rows`.
    """
    kinds, kind = kinds_of(table)
    made = templates(case, tables, today, kinds)
    numbers, notes = row_numbers(table, case, tables, made, kind)
    draft = made.drafts[0]
    lines = size_lines(draft)
    notes = (*notes, *([QUOTE_NOTE] if lines.structure.has_quote else []))
    zeros, first, ones = np.zeros(len(kind)), np.zeros(len(kind), dtype=np.int64), np.ones(len(kind))
    return BuildingRows(
        made=made, kind=kind, numbers=numbers, lines=lines, fixed=changed(draft), cooling_w=zeros, heating_w=zeros,
        kit=first, window=first, count=ones, notes=notes,
    )  # fmt: skip


def sized_rows(bare: BuildingRows, tables: Tables) -> BuildingRows:
    """Return rooms with the sizes that their own design loads ask for.

    Parameters
    ----------
    bare : BuildingRows
        Rooms without sizes.
    tables : Tables
        Usual values.
    """
    everyone, draft = np.arange(bare.n_room), bare.made.drafts[0]
    cooling_w, heating_w = design_w(bare, tables, everyone)
    run_rise = np.stack([column_of(bare, f"site.line_{name}_m", everyone) for name in ("run", "rise")], axis=1)
    window, count = window_index(draft, bare.lines, cooling_w)
    return replace(
        bare, cooling_w=cooling_w, heating_w=heating_w, window=window, count=count,
        kit=kit_index(draft, bare.lines, cooling_w, heating_w, run_rise),
    )  # fmt: skip


def design_w(rows: BuildingRows, tables: Tables, wanted: IntArray) -> tuple[FloatArray, FloatArray]:
    """Return design cooling and heating of some rows, 0 for the others, shape (R,). [W] [W]

    Raises
    ------
    OutOfRangeError
        If a room cannot be: more glass than wall, or nothing left of its surface.
    """
    structure = replace(rows.lines.structure, technologies=("none",) * 4)
    weather = climate.weather(structure, tables)
    cooling, heating = np.zeros(rows.n_room), np.zeros(rows.n_room)
    for part in _parts(rows, wanted):
        values = room_work(structure, row_values(rows, part, with_sizes=False), tables, len(part)).values
        found = design_rows(structure, values, tables, weather, len(part))
        cooling[part], heating[part] = found.cooling_w, found.heating_w
    return cooling, heating


def groups(rows: BuildingRows, wanted: IntArray) -> Iterator[tuple[Structure, IntArray]]:
    """Yield each structure and the rows it holds for, a few thousand at a time.

    Parameters
    ----------
    rows : BuildingRows
        Every row.
    wanted : ndarray
        Rows that are asked for. [dimensionless]

    Yields
    ------
    structure : Structure
        Picks formulas.
    part : ndarray
        Rows. [dimensionless]
    """
    nothing = has_none(column_of(rows, "now.cooling", wanted))
    kinds = [rows.lines.kept_none, rows.lines.kept_some]
    names = sorted({each for kind in kinds for each in kind})
    by_size = np.array([[names.index(each) for each in kind] for kind in kinds])
    of_row = by_size[(~nothing).astype(np.int64), rows.window[wanted]]
    for at, name in enumerate(names):
        structure = replace(rows.lines.structure, technologies=name)
        for part in _parts(rows, wanted[of_row == at]):
            yield structure, part


def _parts(rows: BuildingRows, wanted: IntArray) -> Iterator[IntArray]:
    """Yield rows whose lines have the same paths, so many at a time."""
    group = _path_set(rows, wanted)
    for each in np.unique(group):
        found = wanted[group == each]
        for start in range(0, len(found), ROWS_AT_ONCE):
            yield found[start : start + ROWS_AT_ONCE]


def _path_set(rows: BuildingRows, wanted: IntArray) -> IntArray:
    """Return a number for each row that is the same for rows whose lines have the same paths. [dimensionless]"""
    of_kind = np.unique(rows.made.is_there, axis=0, return_inverse=True)[1].ravel()
    group: IntArray = of_kind[rows.kind[wanted]]
    for lines, index in ((rows.lines.kit_line, rows.kit), (rows.lines.window_line, rows.window)):
        sets = [frozenset(line) for line in lines]
        group = group * len(sets) + np.array([sets.index(each) for each in sets])[index[wanted]]
    return group


def group_count(rows: BuildingRows) -> int:
    """Return how many groups of rows share formulas and paths: what the evaluation is called for at least once."""
    everyone = np.arange(rows.n_room)
    nothing = has_none(column_of(rows, "now.cooling", everyone))
    speed = np.array([rows.lines.kept_some.index(kinds) for kinds in rows.lines.kept_some])[rows.window]
    return len(set(zip(_path_set(rows, everyone).tolist(), nothing.tolist(), speed.tolist(), strict=True)))


def row_values(rows: BuildingRows, part: IntArray, *, with_sizes: bool = True) -> dict[str, FloatArray]:
    """Return the values of some rows: one number where all agree, an array where they do not; areas always are one.

    Parameters
    ----------
    rows : BuildingRows
        Every row.
    part : ndarray, shape (B,)
        Rows that share paths. [dimensionless]
    with_sizes : bool
        Whether the lines that wait for a size are wanted.
    """
    of_kind = rows.made.likely[rows.kind[part]]
    is_there = rows.made.is_there[rows.kind[part[0]]]
    values = {path: of_kind[:, at] for at, path in enumerate(rows.made.path) if is_there[at]}
    for path, said in rows.numbers.items():
        if path in values:
            values[path] = np.where(np.isnan(said[part]), values[path], said[part])
    if with_sizes:
        values |= _size_values(rows, part)
    values |= {path: np.full(len(part), number) for path, number in rows.fixed.items() if path in values}
    return {path: column if path == AREA else _folded(column) for path, column in values.items()}


def _size_values(rows: BuildingRows, part: IntArray) -> dict[str, FloatArray]:
    by_size = ((rows.lines.kit_line, rows.kit), (rows.lines.window_line, rows.window))
    values = {
        path: np.array([line.get(path, np.nan) for line in lines])[index[part]]
        for lines, index in by_size
        for path in lines[int(index[part[0]])]
    }
    if "window.count" not in rows.made.path:
        values["window.count"] = rows.count[part]
    return values


def column_of(rows: BuildingRows, path: str, part: IntArray) -> FloatArray:
    """Return one line of some rows that waits for no size, shape (B,). [any]"""
    column = rows.made.column(path)[rows.kind[part]]
    said = rows.numbers.get(path)
    found: FloatArray = column if said is None else np.where(np.isnan(said[part]), column, said[part])
    return found


def _folded(column: FloatArray) -> FloatArray:
    """Return a column as one number where all rows agree."""
    first = column[0]
    return np.asarray(first) if (column == first).all() else column
