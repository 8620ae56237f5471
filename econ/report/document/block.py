"""What a printed document is made of: blocks that every writer draws in the same words and figures."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Final

from econ.kernel.caution import Severity
from econ.report.document.drawing.shape import Drawing


class Tone(StrEnum):
    """How a sentence is set."""

    PLAIN = "plain"
    VERDICT = "verdict"
    SMALL = "small"
    OWN_WORDS = "own_words"


class Setting(StrEnum):
    """How tightly a table is set."""

    NORMAL = "normal"
    SMALL = "small"
    TINY = "tiny"


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the document's title."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence or a few; line ends are kept."""

    text: str
    tone: Tone = Tone.PLAIN


@dataclass(frozen=True, slots=True)
class Points:
    """Sentences as a list."""

    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Grid:
    """A table.

    Attributes
    ----------
    titles : tuple of str, length n_column
        Heads of the columns.
    rows : tuple of tuple of str
        Cells, row by row.
    shares : tuple of float, length n_column
        Width of each column as a share of the page's.
    numbers : frozenset of int
        Columns of numbers, set flush right.
    strong : frozenset of int
        Rows set in bold, such as sums and heads of groups.
    setting : Setting
        How tightly it is set.
    caption : str
        A line above it; empty for none.
    """

    titles: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    shares: tuple[float, ...]
    numbers: frozenset[int] = frozenset()
    strong: frozenset[int] = frozenset()
    setting: Setting = Setting.NORMAL
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing beneath the sentence that is true without it."""

    statement: str
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to mind: how hard it is, what was found, what to do, who must, and where the rule comes from.

    Attributes
    ----------
    severity : Severity
        A stop, a caution or a note.
    message, action, party, source : str
        As the rule words them.
    concerns : str
        The ways to go that it is about; empty for all.
    signed : str
        Who signed, read or dealt with it, and when; empty leaves a line to sign on at a stop.
    """

    severity: Severity
    message: str
    action: str
    party: str
    source: str
    concerns: str = ""
    signed: str = ""


@dataclass(frozen=True, slots=True)
class Findings:
    """Things to mind, stops first."""

    items: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Blanks:
    """Lines of a form: a label, and what is known of it or a line to write on.

    Attributes
    ----------
    lines : tuple of (str, str)
        Label, and what is known; empty is a line to fill in by hand.
    """

    lines: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """An empty frame for a sketch by hand, with what it should show."""

    label: str
    height: float


@dataclass(frozen=True, slots=True)
class PageEnd:
    """What follows begins on a new page."""


Block = Heading | Sentence | Points | Grid | Picture | Findings | Blanks | Frame | PageEnd


@dataclass(frozen=True, slots=True)
class Footer:
    """What stands at the foot of every page beside its number.

    Attributes
    ----------
    name : str
        Name of the case, shortened.
    results_version : int
        Version of the numbers.
    printed : date
        Day of printing.
    seed : int or None
        Seed of the tries; None where nothing was tried.
    filled_in_by : str
        Who filled in the case, shortened; empty leaves a line.
    """

    name: str
    results_version: int
    printed: date
    seed: int | None
    filled_in_by: str

    @property
    def text(self) -> str:
        """The line, without the page's number."""
        by = self.filled_in_by or "_" * 16
        seed = "" if self.seed is None else f"seed {self.seed} · "
        return (
            f"{self.name} · results version {self.results_version} · {self.printed.isoformat()} · {seed}"
            f"filled in by {by}"
        )


class Size(StrEnum):
    """Sheets that a document is printed on."""

    LETTER = "letter"
    A4 = "a4"


LARGE: Final = 1.25
"""How much larger large print is. Common practice, no source: 9 pt becomes more than 11 pt."""


@dataclass(frozen=True, slots=True)
class Paper:
    """What a document is printed on.

    Attributes
    ----------
    size : Size
        Of the sheet.
    is_large : bool
        Everything a quarter larger.
    """

    size: Size = Size.LETTER
    is_large: bool = False

    @property
    def scale(self) -> float:
        """How much larger than usual everything is."""
        return LARGE if self.is_large else 1.0


@dataclass(frozen=True, slots=True)
class Document:
    """A document for one reader.

    Attributes
    ----------
    title : str
        Shown by the window and the file, shortened.
    blocks : tuple of Block
        In the order of reading.
    footer : Footer
        Of every page.
    paper : Paper
        What it is printed on.
    """

    title: str
    blocks: tuple[Block, ...]
    footer: Footer
    paper: Paper = Paper()


SEVERITY_WORDS: Mapping[Severity, str] = {
    Severity.HOLD_POINT: "STOP",
    Severity.CAUTION: "Caution",
    Severity.NOTE: "Note",
}

SIGN_HERE = "Signed by ____________________ on ____________".replace(" ", "\N{NO-BREAK SPACE}")
"""A line to sign on that stays on one line."""


def signing(finding: Finding) -> str:
    """Return what was done about a finding; a stop that nobody signed has a line to sign on."""
    return finding.signed or (SIGN_HERE if finding.severity is Severity.HOLD_POINT else "")


def finding_cells(finding: Finding) -> tuple[str, ...]:
    """Return a finding as the sentences a writer sets: what, what to do, for whom, whose rule, and the signature."""
    concerns = f"For: {finding.concerns}. " if finding.concerns else ""
    return (
        finding.message,
        finding.action,
        f"{concerns}Who: {finding.party}. Rule: {finding.source.rstrip('.')}.",
        signing(finding),
    )
