"""A plan for many rooms as text for a terminal."""

from textwrap import fill
from typing import Final

from econ.case.rooms_file import RoomTable
from econ.report import rooms
from econ.report.pictures.frame import Columns
from econ.report.terminal import WIDTH, aligned
from econ.report.words import rooms as room_words

MOST_ROOMS: Final = 100
"""Rooms listed in a terminal."""


def rooms_text(told: rooms.Told) -> str:
    """Return a plan for many rooms as text: sentences, years, and room by room.

    Parameters
    ----------
    told : Told
        The plan.
    """
    columns = rooms.table(told)
    cells: Columns = {name: ["" if cell is None else cell for cell in column] for name, column in columns.items()}
    if told.options.n_room > MOST_ROOMS:
        cells = {name: column[:MOST_ROOMS] for name, column in cells.items()}
    left = told.options.n_room - MOST_ROOMS
    more = [f"... and {left:,} more rooms; --out writes them all."] if left > 0 else []
    parts = (fill(sentence, WIDTH) for sentence in rooms.sentences(told))
    return "\n".join([*parts, "", aligned(rooms.years_table(told)), "", aligned(cells), *more])


def refused_text(read: RoomTable) -> str:
    """Return how many rows were taken, and what is wrong with each of the others."""
    lines = [room_words.rows_sentence(read)]
    for row in read.refused[:MOST_ROOMS]:
        lines += room_words.refused_lines(row)
    return "\n".join(lines)
