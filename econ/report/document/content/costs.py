"""Costs: the four ways in figures, first cost line by line with its ranges, the bridge, and when money comes back."""

from dataclasses import replace
from typing import Final

from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report import tables
from econ.report.document.block import Block, Grid, Heading, Picture, Points, Sentence, Setting, Tone
from econ.report.document.content.basis import Basis, ends
from econ.report.document.content.source import Sources
from econ.report.document.drawing.bridge import bridge, bridge_statement
from econ.report.document.drawing.running import running_total
from econ.report.document.drawing.stacked import first_cost_bars
from econ.report.numbers import money
from econ.report.pictures import first_cost
from econ.report.pictures import running_total as running_words
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.words import money as money_words
from econ.report.words import not_counted, scope

SHARES: Final = (0.4, 0.11, 0.11, 0.11, 0.11, 0.16)
_WHO: Final = {"self": "you"}
ON_PAGE_ONE: Final = frozenset({"Standing", "Cash now", "Your hours", "All-in cost a year", "Cheapest"})
"""Rows of the screen's table that page one holds already."""

RANGE_WORDS: Final = (
    "Low and high: of twenty tries, one lies below the low and one above the high. "
    "Doubts about cost lean upward, so that a likely value can lie below its low."
)
"""What the ends of `econ.report.document.content.basis.ENDS` mean."""


def grid_of(columns: Columns, shares: tuple[float, ...], setting: Setting = Setting.SMALL, caption: str = "") -> Grid:
    """Return a table of the screen as one of the print.

    Parameters
    ----------
    columns : dict of str to list
        Cells by title.
    shares : tuple of float
        Widths of the columns.
    setting : Setting
        How tightly it is set.
    caption : str
        A line above it.
    """
    rows = tuple(tuple(str(cell) for cell in row) for row in zip(*columns.values(), strict=True))
    return Grid(tuple(columns), rows, shares, setting=setting, caption=caption)


def compared(basis: Basis, left_out: frozenset[str] = frozenset()) -> list[Block]:
    """Return the four ways in figures, the running total, and when extra money comes back.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    left_out : frozenset of str
        Rows of the screen's table that stand elsewhere.
    """
    grid = grid_of(tables.comparison(basis.answer), (0.24, 0.19, 0.19, 0.19, 0.19))
    paybacks = tuple(
        f"{NAMES[name]}: {money_words.payback_text(basis.result, name)}"
        for name in ALTERNATIVES
        if name is not basis.result.base_case
    )
    statement = running_words.statement(basis.result, basis.look)
    return [
        Heading("The four ways in figures"),
        replace(grid, rows=tuple(row for row in grid.rows if row[0] not in left_out)),
        Heading("Running total over the years"),
        Picture(statement, running_total(basis.result, basis.doubt)),
        Points(paybacks),
    ]


def first_costs(basis: Basis) -> list[Block]:
    """Return the first cost of the four ways as bars."""
    return [
        Heading("First cost"),
        Picture(first_cost.statement(basis.result, basis.look), first_cost_bars(basis.result)),
    ]


def lines_blocks(basis: Basis, sources: Sources, names: tuple[Alternative, ...]) -> list[Block]:
    """Return first costs line by line.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    sources : Sources
        Numbers of the sources.
    names : tuple of Alternative
        The ways told.
    """
    grids = [lines_grid(basis, sources, basis.result.alternatives[ALTERNATIVES.index(name)]) for name in names]
    return [Heading("Costs line by line"), Sentence(RANGE_WORDS, Tone.SMALL), *grids] if grids else []


def lines_grid(basis: Basis, sources: Sources, way: AlternativeResult) -> Grid:
    """Return the first cost of a way line by line, with low, high and source; sums beneath."""
    items, at = way.line_items, ALTERNATIVES.index(way.name)
    drawn = basis.doubt.alternatives[at]
    rows: list[tuple[str, ...]] = []
    for line, label in enumerate(items.label):
        likely = float(items.amount_usd[0, line])
        low, high = ends(drawn.line_items.amount_usd[:, line])
        if likely != 0.0 or high != 0.0 or low != 0.0:
            who, source = items.party[line], sources.brief(items.source[line])
            rows.append((_capital(label), _usd(likely), _usd(low), _usd(high), _WHO.get(who, who), source))
    likely_sums, drawn_sums = (tables.first_sums(each.line_items) for each in (way, drawn))
    strong = frozenset(range(len(rows), len(rows) + len(likely_sums)))
    for label, likely_usd in likely_sums.items():
        low, high = ends(drawn_sums.get(label, likely_usd))
        rows.append((label, _usd(float(likely_usd[0])), _usd(low), _usd(high), "", ""))
    titles = ("Line", "Likely", "Low", "High", "Who", "Source")
    return Grid(titles, tuple(rows), SHARES, frozenset((1, 2, 3)), strong, Setting.TINY, NAMES[way.name])


def _capital(label: str) -> str:
    return f"{label[:1].upper()}{label[1:]}"


def _usd(amount: float) -> str:
    return money(amount)


def bridge_blocks(basis: Basis) -> list[Block]:
    """Return the bridge from the kit to hiring, and what a quote leaves out."""
    lacking = scope.scope_lines(basis.answer)
    quoted = basis.answer.structure.has_quote
    basis_words = "" if quoted else " There is no quote yet: hiring is counted from this program's own items."
    blocks: list[Block] = [
        Heading("From the price of the kit to hiring"),
        Picture(bridge_statement(basis.result) + basis_words, bridge(basis.result)),
    ]
    return [*blocks, Points(lacking)] if lacking else blocks


def not_counted_blocks(basis: Basis) -> list[Block]:
    """Return what no figure holds, and what it would have to be worth a year."""
    lines = not_counted.break_even_lines(basis.answer)
    return [Heading("Not counted"), Sentence(not_counted.NOT_COUNTED), *([Points(lines)] if lines else [])]
