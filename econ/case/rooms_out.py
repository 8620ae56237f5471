"""A rooms file on its way out: the template, and rows that no spreadsheet takes for formulas."""

import csv
import io
from collections.abc import Sequence

from econ.case.rooms_cell import as_text
from econ.case.rooms_columns import COLUMNS


def template() -> str:
    """Return an empty file with every heading and one line that says what goes where."""
    return rows_text([[column.heading for column in COLUMNS]])


def rows_text(rows: Sequence[Sequence[str | float]]) -> str:
    """Return rows as comma-separated text; texts that a spreadsheet takes for formulas are marked, numbers are not."""
    written = io.StringIO()
    csv.writer(written, lineterminator="\n").writerows([_out(each) for each in row] for row in rows)
    return written.getvalue()


def _out(cell: str | float) -> str:
    return as_text(cell) if isinstance(cell, str) else f"{cell:.2f}".removesuffix(".00")


def help_rows() -> tuple[tuple[str, str], ...]:
    """Return heading and what goes in, column by column."""
    return tuple((column.heading, column.help) for column in COLUMNS)
