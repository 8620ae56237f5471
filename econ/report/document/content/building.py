"""The landlord's report of many rooms: what the money does, year by year and room by room, and what more would do."""

from dataclasses import replace
from datetime import date
from typing import Final

import numpy as np

from econ.case.schema import Case
from econ.evaluate.version import RESULTS_VERSION
from econ.portfolio.frontier import Frontier, More, Ranking
from econ.portfolio.picks import NEVER
from econ.report import rooms
from econ.report.document.block import (
    Block,
    Document,
    Footer,
    Grid,
    Heading,
    Paper,
    Points,
    Sentence,
    Setting,
    Size,
    Tone,
)
from econ.report.document.content.basis import short
from econ.report.pictures import frontier as frontier_picture
from econ.report.pictures.frame import Columns
from econ.report.words import budget as words
from econ.report.words.rooms import rows_sentence

MOST_ROOMS: Final = 600
"""Rooms printed one by one: those done first; the file for a spreadsheet holds them all."""

_MOST_NAME: Final = 60
_TITLE: Final = "Which rooms first"
_LEFT_OUT: Final = ("Need for cooling, kWh", "Closed")
"""Columns of the screen that are left out on paper, for want of width."""

_SHARES: Final = {
    "Building": 0.12, "Flat": 0.06, "Room": 0.15, "Floor": 0.06, "What to do": 0.17, "Year": 0.06, "Cash, $": 0.08,
    "Worth over keeping, $": 0.1, "Hours too hot now": 0.09, "Then": 0.07, "Who saves": 0.08, "Mark": 0.08,
}  # fmt: skip
_WORDS: Final = ("Building", "Flat", "Room", "What to do", "Who saves", "Mark")


def building_document(
    told: rooms.Told, case: Case, printed: date, other: tuple[Frontier, More | None, Ranking] | None
) -> Document:
    """Return the report.

    Parameters
    ----------
    told : Told
        The plan.
    case : Case
        Its name, who filled it in, and the paper.
    printed : date
        Day of printing.
    other : tuple, optional
        What other budgets give, where that was worked out.
    """
    first, *rest = rooms.sentences(told)
    name = short(case.record.name or _TITLE, _MOST_NAME)
    blocks: list[Block] = [
        Heading(f"{_TITLE}: {name}" if case.record.name else _TITLE, 1),
        Sentence(first, Tone.VERDICT),
        Points(tuple(rest)),
        Heading("Year by year"),
        _grid(rooms.years_table(told)),
        *(_other_budgets(told, other) if other is not None else []),
        Heading("Room by room"),
        *_rooms(told),
        Heading("Rows of the file"),
        Sentence(rows_sentence(told.table)),
        Sentence(
            "Figures are likely values: each room is worked out as one room is. Before anything is ordered, measure "
            "the rooms that are done first, ask the permit office, and give tenants the notice their leases ask for.",
            Tone.SMALL,
        ),
    ]
    paper = Paper(Size(case.paper.size or Size.LETTER), case.paper.large_print == "yes")
    by = "" if case.paper.leave_out == "yes" else short(case.record.filled_in_by or "", _MOST_NAME)
    return Document(name, tuple(blocks), Footer(name, RESULTS_VERSION, printed, None, by), paper)


def _other_budgets(told: rooms.Told, other: tuple[Frontier, More | None, Ranking]) -> list[Block]:
    """Return what other budgets give, what the next dollars buy, and what a list by payback would do."""
    found, bought, listed = other
    said = [words.next_sentence(bought, told.plan)] if bought is not None else []
    said += words.ranking_sentences(listed, told.totals.worth_usd, told.options)
    return [
        Heading("What another budget would give"),
        Sentence(frontier_picture.statement(found)),
        replace(_grid(frontier_picture.table(found)), setting=Setting.SMALL),
        Points(tuple(said)),
    ]


def _rooms(told: rooms.Told) -> list[Block]:
    """Return the rooms one by one, those done first in front, and how many are left out."""
    year = np.where(told.plan.picks.year == NEVER, np.iinfo(np.int64).max, told.plan.picks.year)
    order = np.argsort(year, kind="stable")[:MOST_ROOMS]
    whole = {title: cells for title, cells in rooms.table(told).items() if title not in _LEFT_OUT}
    columns: Columns = {title: [_cell(cells[row]) for row in order] for title, cells in whole.items()}
    left = told.options.n_room - len(order)
    more = [Sentence(f"{left:,} more rooms are in the file for a spreadsheet.")] if left else []
    shares = np.array([_SHARES[title] for title in columns])
    numbers = frozenset(at for at, title in enumerate(columns) if title not in _WORDS)
    return [_grid(columns, tuple((shares / shares.sum()).tolist()), numbers), *more]


def _cell(value: object) -> str:
    return "" if value is None else f"{value:,.0f}" if isinstance(value, float) else str(value)


def _grid(columns: Columns, shares: tuple[float, ...] | None = None, numbers: frozenset[int] | None = None) -> Grid:
    """Return columns as a table; its first column names the rows where nothing else is said."""
    count = len(columns)
    return Grid(
        titles=tuple(columns),
        rows=tuple(tuple(map(str, row)) for row in zip(*columns.values(), strict=True)),
        shares=shares or (1.0 / count,) * count,
        numbers=frozenset(range(1, count)) if numbers is None else numbers,
        setting=Setting.NORMAL if shares is None else Setting.SMALL,
    )
