"""One page a way for a failure in July of year 5, to be kept with the papers of the unit."""

from typing import Final

from econ.evaluate.failure import failures
from econ.report.document.block import Blanks, Block, Grid, Heading, PageEnd, Sentence, Tone
from econ.report.document.content.basis import Basis
from econ.report.style import NAMES
from econ.report.words.failure import LEAD, TITLE, rows

_TO_FILL_IN: Final = (
    "Firm to call, telephone",
    "A second firm",
    "Bought on, from",
    "Model and serial numbers",
    "Registered on, number",
    "Where the papers are",
)


def failure_blocks(basis: Basis) -> list[Block]:
    """Return a page for each way in which something runs.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    answer = basis.answer
    blocks: list[Block] = []
    for failure in failures(answer.result, answer.sheet, answer.decision_date):
        cells = tuple(rows(failure, basis.look).items())
        blocks += [
            PageEnd(),
            Heading(f"Appendix: {TITLE[:1].lower()}{TITLE[1:]}: {NAMES[failure.way]}"),
            Sentence(LEAD),
            Grid(("Question", "Answer"), cells, (0.24, 0.76)),
            Heading("To fill in now", 3),
            Blanks(tuple((label, "") for label in _TO_FILL_IN)),
            Sentence("All figures are usual ones or yours; the paper that comes with the unit decides.", Tone.SMALL),
        ]
    return blocks
