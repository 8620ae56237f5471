"""What every part of a document is written from: an answer whose names fit into tables, and its doubt."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from typing import Final

import numpy as np

from econ.case.choices import CHOICES, option_at, table_path
from econ.case.edit import answer_counts
from econ.case.private import handed_over
from econ.evaluate.evaluate import evaluate
from econ.evaluate.result import AlternativeResult, Result
from econ.evaluate.route_plan import Ground, route_plan
from econ.evaluate.sheet import point, with_columns
from econ.installation.plan import Plan
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF, Alternative, Standing
from econ.kernel.arrays import FloatArray
from econ.report.document.block import Footer, Paper, Size
from econ.report.document.content.private import without_names
from econ.report.look import Look
from econ.report.numbers import UnitSystem
from econ.report.style import Theme
from econ.report.words.counts import answers_text
from econ.tables.loaders import Tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.draws import drawn

BOTH_ROUTES: Final = (ALTERNATIVES[SELF], ALTERNATIVES[HIRED])
"""The two ductless ways, which a client weighs."""

SHORT: Final = 60
"""Letters of a user's text within tables, charts and footers; the whole of it stands at the end."""

DOUBT_DRAWS: Final = 256
"""Draws behind the ranges of cost lines: one block, so that a print is quick."""

ENDS: Final = (0.05, 0.95)
"""Shares of the draws that lie below the low and the high of a range."""


def short(text: str, most: int = SHORT) -> str:
    r"""Return a user's text in one line of so many letters at most.

    Examples
    --------
    >>> short("Den\nand more", 20), short("a" * 30, 8)
    ('Den and more', 'aaaaaaa…')
    """
    line = " ".join(text.split())
    return line if len(line) <= most else f"{line[: most - 1]}…"


@dataclass(frozen=True, eq=False)
class Basis:
    """What a document is written from.

    Attributes
    ----------
    answer : Answer
        The answer, room names shortened.
    doubt : Result
        At draws of every ranged input.
    tables : Tables
        Usual values and their records.
    printed : date
        Day of printing.
    look : Look
        Units and calendar of the reader.
    """

    answer: Answer
    doubt: Result
    tables: Tables
    printed: date
    look: Look

    @property
    def result(self) -> Result:
        """The result at likely values."""
        return self.answer.result

    @property
    def name(self) -> str:
        """Name of the case, shortened."""
        return short(self.answer.case.record.name or "") or "A case without a name"

    @property
    def filled_in_by(self) -> str:
        """Who filled in the case, shortened; empty where nobody is named."""
        return short(self.answer.case.record.filled_in_by or "", 40)

    @property
    def made_from(self) -> str:
        """How many inputs are the user's, usual and not known, and how many tries were made."""
        counts = answer_counts(self.answer.case)
        made = answers_text(counts["yours"], counts["usual"], counts["not_known"])
        return f"{made.capitalize()}; {self.answer.draws_used:,} tries, seed {self.answer.seed}."

    @property
    def footer(self) -> Footer:
        """The footer of every page."""
        return Footer(self.name, self.result.results_version, self.printed, self.answer.seed, self.filled_in_by)

    @property
    def paper(self) -> Paper:
        """What it is printed on."""
        said = self.answer.case.paper
        return Paper(Size(said.size or Size.LETTER), said.large_print == "yes")

    @property
    def work_way(self) -> AlternativeResult:
        """The ductless way whose work is told: the one named, else one's own work if allowed, else hiring."""
        named = self.answer.verdict.winner
        if named in BOTH_ROUTES:
            return self.result.alternatives[ALTERNATIVES.index(named)]
        own, hired = (self.result.alternatives[at] for at in (SELF, HIRED))
        return own if own.standing is not Standing.NOT_ALLOWED else hired

    @property
    def told_ways(self) -> tuple[Alternative, ...]:
        """The ways whose first cost is told line by line: the one named, if it costs anything, and the ductless one."""
        named = self.answer.verdict.winner
        first = [named] if named is not None and named is not Alternative.KEEP_AS_IS else []
        return tuple(dict.fromkeys([*first, self.work_way.name]))

    @cached_property
    def plan(self) -> Plan:
        """The plan of the way whose work is told, as it stands on the day of printing."""
        ground = Ground(self.answer.structure, point(self.answer.sheet), self.result, installation_tables())
        return route_plan(ground, self.answer.case, self.work_way.name, self.printed)

    @cached_property
    def number(self) -> Callable[[str], float]:
        """How to read an input's likely value by its path."""
        return lambda path: self.answer.sheet.entry(path).likely

    def option(self, path: str) -> str:
        """Return the option of a choice in plain words; empty where it is not known or not asked."""
        if path not in self.answer.sheet.place or table_path(path) not in CHOICES:
            return ""
        option = option_at(path, self.number(path))
        return "" if option == "not_known" else option.replace("_", " ")


def basis(answer: Answer, tables: Tables, printed: date, units: UnitSystem = UnitSystem.US) -> Basis:
    """Return what documents of an answer are written from.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    tables : Tables
        Usual values, with the case's hourly file if it has one.
    printed : date
        Day of printing.
    units : UnitSystem
        Units of the reader.
    """
    sheet = answer.sheet
    columns = drawn(sheet.low, sheet.likely, sheet.high, DOUBT_DRAWS, answer.seed)
    doubt = evaluate(answer.structure, with_columns(sheet, columns), tables)
    look = Look(answer.decision_date, answer.decision_date.year, Theme.LIGHT, units)
    told = _nameless(answer) if answer.case.paper.leave_out == "yes" else answer
    return Basis(_shortened(told), doubt, tables, printed, look)


def _nameless(answer: Answer) -> Answer:
    """Return the answer without what says who and where; rooms are numbered."""
    names = tuple(f"Room {at}" for at, _ in enumerate(answer.structure.room_names, start=1))
    result = replace(answer.result, rooms=replace(answer.result.rooms, name=names))
    structure = replace(answer.structure, room_names=names)
    return replace(answer, case=without_names(answer.case), structure=structure, result=result)


def _shortened(answer: Answer) -> Answer:
    """Return the answer with room names that fit into tables, and with nothing private; the case keeps both."""
    names = tuple(short(name, 40) for name in answer.result.rooms.name)
    structure = replace(answer.structure, room_names=tuple(short(name, 40) for name in answer.structure.room_names))
    result = replace(answer.result, rooms=replace(answer.result.rooms, name=names))
    return replace(answer, case=handed_over(answer.case), structure=structure, result=result)


def ends(amounts: FloatArray) -> tuple[float, float]:
    """Return the low and high ends of a range over draws.

    Parameters
    ----------
    amounts : ndarray, shape (B,)
        One amount a draw. [any]
    """
    low, high = np.quantile(amounts, ENDS)
    return float(low), float(high)
