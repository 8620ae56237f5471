"""Rows that no room can be: each is refused with its reason before anything is worked out, so that the others go on."""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from econ.case.quantity import short
from econ.case.rooms_cell import SIDES
from econ.case.rooms_columns import named
from econ.case.rooms_file import RefusedRow, RoomTable
from econ.evaluate.wiring.room_shell import WINDOW_DOUBT_FRAC
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import SQUARE_FOOT_M2
from econ.kernel.errors import Fault, OutOfRangeError
from econ.portfolio.spoken import AREA, LENGTH
from econ.portfolio.values import BuildingRows, column_of, design_w
from econ.tables.loaders import Tables


def fitting(table: RoomTable, rows: BuildingRows, tables: Tables) -> RoomTable:
    """Return the table without rooms that cannot be; they are among the refused. The same table where all can.

    Parameters
    ----------
    table : RoomTable
        Rows as read.
    rows : BuildingRows
        The same as numbers, without sizes.
    tables : Tables
        Usual values.
    """
    wall, glass = _sides_m2(rows)
    is_over = (glass > WINDOW_DOUBT_FRAC * wall).any(axis=1)
    faults = {int(row): _fault(table, int(row), wall[row], glass[row]) for row in np.flatnonzero(is_over)}
    for row, error in _refused_by_design(rows, tables, np.flatnonzero(~is_over)).items():
        got = f"{error.name} of {error.value:.3g}"
        problem = "must be a room with walls, windows and contents that fit into it"
        faults[row] = Fault(f"line {table.line[row]}, size", problem, got, "Check size, windows and wall.")
    return without(table, faults) if faults else table


def _refused_by_design(rows: BuildingRows, tables: Tables, wanted: IntArray) -> dict[int, OutOfRangeError]:
    """Return the rows whose design load cannot be worked out, found by halving, each with why."""
    found: dict[int, OutOfRangeError] = {}
    left = [wanted]
    while left:
        part = left.pop()
        try:
            design_w(rows, tables, part)
        except OutOfRangeError as error:
            half = len(part) // 2
            if half:
                left += [part[:half], part[half:]]
            else:
                found[int(part[0])] = error
    return found


def _sides_m2(rows: BuildingRows) -> tuple[FloatArray, FloatArray]:
    """Return wall and glass of each side, in the order of SIDES, shape (R, 4). [m^2] [m^2]"""
    everyone = np.arange(rows.n_room)
    area, length, height = (column_of(rows, path, everyone) for path in (AREA, LENGTH, "rooms[0].ceiling_height_m"))
    side = np.stack([length, area / length, length, area / length], axis=1) * height[:, None]
    return side, np.stack([column_of(rows, f"rooms[0].window_{each}_m2", everyone) for each in SIDES], axis=1)


def _fault(table: RoomTable, row: int, wall_m2: FloatArray, glass_m2: FloatArray) -> Fault:
    at = int(np.argmax(glass_m2 - wall_m2))
    glass, wall = glass_m2[at] / SQUARE_FOOT_M2, wall_m2[at] / SQUARE_FOOT_M2
    problem = f"must leave room in the wall: {glass:,.0f} sq ft of glass on the {SIDES[at]} side of {wall:,.0f} sq ft"
    said = table.text["windows"][row]
    got = short(table.cells[row][_windows_column(table)]) if said else "the windows of its type"
    return Fault(f"line {table.line[row]}, windows", problem, got, "Check size, windows and outdoor sides.")


def _windows_column(table: RoomTable) -> int:
    keys = [found[0].key if (found := named(heading)) else "" for heading in table.heading]
    return keys.index("windows")


def without(table: RoomTable, faults: Mapping[int, Fault]) -> RoomTable:
    """Return the table without some rows; they join the refused, in the order of the file.

    Parameters
    ----------
    table : RoomTable
        Rows as read.
    faults : mapping of int to Fault
        What is wrong, by row.
    """
    kept = np.array([row for row in range(table.n_room) if row not in faults], dtype=np.int64)
    refused = [RefusedRow(table.line[row], table.cells[row], (fault,)) for row, fault in faults.items()]
    return replace(
        table,
        line=tuple(table.line[row] for row in kept),
        text={key: tuple(column[row] for row in kept) for key, column in table.text.items()},
        number={key: column[kept] for key, column in table.number.items()},
        option={key: column[kept] for key, column in table.option.items()},
        cells=tuple(table.cells[row] for row in kept),
        refused=tuple(sorted((*table.refused, *refused), key=lambda row: row.line)),
    )
