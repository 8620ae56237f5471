"""Every headline figure opened in print: one line each with formula, range, inputs behind it and source."""

from typing import Final

from econ.evaluate.figures import CHANCE, FIGURES, Figure
from econ.evaluate.strands import STRANDS, Strand, strand_of
from econ.kernel.alternative import ALTERNATIVES
from econ.report.document.block import Block, Grid, Heading, Sentence, Setting, Tone
from econ.report.document.content.basis import Basis
from econ.report.numbers import NONE_TEXT, in_tries, listed
from econ.report.style import NAMES
from econ.report.words.figure import formula_text, range_text, source_text, strands_of, value_text, way_rows

_TITLES: Final = ("Figure", "Likely", "In nine tries of ten", "How it is worked out", "Inputs behind it", "Follows")
_PAIR: Final = 2
"""Numbers in a row that are still told one by one."""

_SHARES: Final = (0.12, 0.09, 0.13, 0.3, 0.24, 0.12)


def opened_blocks(basis: Basis) -> list[Block]:
    """Return the headline figures of the way whose work is told, one line each.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    way = basis.work_way.name
    there = {strand_of(path) for path in basis.answer.sheet.path}
    numbered = {strand: at for at, strand in enumerate((each for each in STRANDS if each in there), start=1)}
    rows = [_row(basis, found, ALTERNATIVES.index(way), numbered) for found in FIGURES]
    rows.append(_chance_row(basis, ALTERNATIVES.index(way), numbered))
    groups = listed([f"{at} {strand.label}" for strand, at in numbered.items()])
    return [
        Heading(f"Headline figures opened: {NAMES[way].lower()}"),
        Grid(_TITLES, tuple(rows), _SHARES, frozenset((1,)), setting=Setting.TINY),
        Sentence(f"Groups of inputs: {groups}. Each input stands in the table that follows.", Tone.SMALL),
    ]


def _row(basis: Basis, found: Figure, way: int, numbered: dict[Strand, int]) -> tuple[str, ...]:
    """Return the line of one figure."""
    return (
        found.label,
        value_text(found, found.at(basis.result, way), basis.look),
        range_text(found, way_rows(found, basis.doubt, way), basis.look) or "the same",
        formula_text(found.key),
        _groups(found.key, numbered),
        source_text(found.key),
    )


def _chance_row(basis: Basis, way: int, numbered: dict[Strand, int]) -> tuple[str, ...]:
    """Return the line of the chance of being the cheapest."""
    chance = float(basis.answer.verdict.chance[way])
    told = in_tries(chance) if basis.answer.draws_used else NONE_TEXT
    return ("Cheapest", told, NONE_TEXT, formula_text(CHANCE), _groups(CHANCE, numbered), source_text(CHANCE))


def _groups(key: str, numbered: dict[Strand, int]) -> str:
    """Return the numbers of the groups of inputs behind a figure."""
    return runs_text([numbered[strand] for strand in strands_of(key) if strand in numbered])


def runs_text(numbers: list[int]) -> str:
    """Return ascending numbers with those that follow each other drawn together.

    Examples
    --------
    >>> runs_text([1, 2, 3, 5, 8, 9])
    '1 to 3, 5, 8, 9'
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    told = (f"{run[0]} to {run[-1]}" if len(run) > _PAIR else ", ".join(map(str, run)) for run in runs)
    return ", ".join(told)
