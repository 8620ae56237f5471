"""Where figures come from: each source once, by number, and the word assumption wherever it holds."""

from dataclasses import dataclass
from typing import Final

from econ.report.document.block import Grid, Setting
from econ.report.document.content.basis import Basis
from econ.report.words.origin import CASE, origin_text

ASSUMED: Final = "assumption"
SAID: Final = "what you said"


@dataclass(frozen=True, slots=True)
class Sources:
    """Sources by number, in the order in which they first come.

    Attributes
    ----------
    numbers : dict of str to int
        Number of each.
    said : frozenset of str
        Inputs that the user gave.
    """

    numbers: dict[str, int]
    said: frozenset[str] = frozenset()

    def is_said(self, source: str) -> bool:
        """Return whether a line of cost rests on an input that the user gave."""
        return source.startswith(CASE) and source.removeprefix(CASE) in self.said

    def brief(self, source: str) -> str:
        """Return a source in a table: its number, and the word assumption where it is one."""
        if source.startswith(SAID) or self.is_said(source):
            return "you said"
        word = "assumption " if ASSUMED in source else ""
        return f"{word}[{self.numbers[source]}]"


def sources_of(basis: Basis) -> Sources:
    """Return the sources of every input and every line of cost.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    lines = (source for way in basis.result.alternatives for source in way.line_items.source)
    rules = (caution.source for caution in basis.result.cautions)
    every = (*basis.answer.sheet.source, *lines, *rules)
    sheet = basis.answer.sheet
    said = (path for path, state in zip(sheet.path, sheet.state, strict=True) if state == "yours")
    return Sources({source: at for at, source in enumerate(dict.fromkeys(every), start=1)}, frozenset(said))


def source_grid(sources: Sources) -> Grid:
    """Return the list of sources."""
    rows = tuple((f"[{at}]", origin_text(source)) for source, at in sources.numbers.items())
    return Grid(("No.", "Source"), rows, (0.06, 0.94), setting=Setting.TINY)
