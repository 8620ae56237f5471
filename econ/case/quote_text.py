"""A quote's lines as people paste them: words first, the amount last, in almost any form."""

import re
from dataclasses import dataclass
from typing import Final

from econ.case.quantity import short
from econ.kernel.constants import CENTS_PER_USD
from econ.kernel.errors import Fault

MOST_LINES: Final = 60
MOST_USD: Final = 1_000_000.0

_AMOUNT: Final = re.compile(
    r"(?P<minus>[-\u2212(]\s*)?(?:(?:\$|usd\b)\s*(?P<minus2>[-\u2212])?\s*)?"
    r"(?P<number>\d{1,3}(?:,\d{3})+(?:\.\d{1,2})?|\d+(?:\.\d{1,2})?|\.\d{1,2})(?P<more>[\d.,]*)\s*"
    r"(?P<after>\$|usd\b|dollars?\b)?\s*\)?\s*$",
    re.IGNORECASE,
)
_TOTAL: Final = re.compile(
    r"^\W*(?:grand\s+|sub\s*-?\s*|job\s+|quote\s+)?total\b|^\W*(?:amount|balance)\s+due\b", re.IGNORECASE
)
_JOINT: Final = re.compile(r"[\s\t|;:,.=\u2026\u2013-]+$")

_WORDS: Final[tuple[tuple[str, str], ...]] = (
    ("tax", r"\btax(es)?\b"),
    ("overhead_profit", r"\boverhead|\bprofit|\bmark-?up|\badministration|\boffice\b|\binsurance"),
    ("warranty", r"warrant|call-?back|guarantee|service plan"),
    ("permit", r"permit|inspection\b|\bfiling\b"),
    ("electrical", r"electric|circuit|breaker|disconnect|\bwir(e|ing)\b|\bpanel\b|\bwhip\b|surge"),
    ("labour", r"labou?r|install|crew|technician|\bhours?\b|\bhrs?\b|commission|start-?up|travel|mileage|remov|haul"),
    (
        "materials",
        r"material|bracket|\bpad\b|line\s*-?set|lineset|cover|sleeve|drain|pump|copper|hardware|parts\b|supplies|stand",
    ),
    ("equipment", r"equipment|heat pump|mini|ductless|condenser|air handler|\bunit\b|\bsystem\b|\bset\b|\bhead\b"),
)
"""Words by which the kind of a line is guessed, in the order tried; a person confirms it."""

_WHOLE: Final = re.compile(r"\bunit\b|\bequipment\b|heat pump|condenser|\bsystem\b", re.IGNORECASE)
"""What makes a line one of equipment even where materials stand in it too, as in “unit and line set”."""


@dataclass(frozen=True, slots=True)
class QuoteLine:
    """One line of a quote.

    Attributes
    ----------
    text : str
        Its words.
    cents : int or None
        Its amount in cents; None where it names none.
    row : int
        Row of the text, 1 for the first.
    guess : str
        The kind its words suggest; "not_said" where they suggest none.
    """

    text: str
    cents: int | None
    row: int
    guess: str


@dataclass(frozen=True, slots=True)
class QuoteText:
    """A quote's lines read from text.

    Attributes
    ----------
    lines : tuple of QuoteLine
        In the order of the text.
    totals : tuple of QuoteLine
        Rows that sum up others: no lines of their own.
    faults : tuple of Fault
        Rows that were not taken, each with what to do.
    """

    lines: tuple[QuoteLine, ...]
    totals: tuple[QuoteLine, ...]
    faults: tuple[Fault, ...]


def read_quote(text: str, path: str) -> QuoteText:
    """Return the lines of a pasted quote.

    Parameters
    ----------
    text : str
        One row a line. A row that begins with total or subtotal is no line; one without an amount is kept as words.
    path : str
        Of the field, for faults.

    Returns
    -------
    quote : QuoteText
        Rows that could be read, and what is wrong with the others: rows in are lines, totals and faults.
    """
    lines, totals, faults = list[QuoteLine](), list[QuoteLine](), list[Fault]()
    for row, written in enumerate(text.splitlines(), 1):
        if not written.strip():
            continue
        line = _line(written, row)
        if isinstance(line, str):
            faults.append(Fault(f"{path} row {row}", line, short(" ".join(written.split())), _REMEDY))
        elif _TOTAL.match(line.text):
            totals.append(line)
        elif len(lines) >= MOST_LINES:
            remedy = "Put small ones together on one row."
            faults.append(Fault(f"{path} row {row}", f"is beyond {MOST_LINES} lines", short(line.text), remedy))
        else:
            lines.append(line)
    return QuoteText(tuple(lines), tuple(totals), tuple(faults))


_REMEDY: Final = "Write the words first and the amount last, such as: New circuit 780."


def _line(written: str, row: int) -> QuoteLine | str:
    """Return a row as a line, or what is wrong with it."""
    plain = " ".join("".join(letter if letter.isprintable() else " " for letter in written).split())
    found = _AMOUNT.search(plain)
    if found is None:
        return QuoteLine(plain, None, row, guessed(plain))
    if found["more"]:
        return "has an amount that cannot be read"
    usd = float(found["number"].replace(",", ""))
    if usd > MOST_USD:
        return f"has an amount above ${MOST_USD:,.0f}"
    text = _JOINT.sub("", plain[: found.start()]).strip()
    if not text:
        return "has an amount and no words"
    cents = round(usd * CENTS_PER_USD)
    is_minus = bool(found["minus2"]) or _is_minus(plain, found)
    return QuoteLine(text, -cents if is_minus else cents, row, guessed(text))


def _is_minus(plain: str, found: re.Match[str]) -> bool:
    """Return whether the mark before an amount takes it off: it touches the amount, or a bracket closes after it."""
    mark = found["minus"] or ""
    return plain.endswith(")") if mark.startswith("(") else len(mark) == 1


def guessed(text: str) -> str:
    """Return the kind that a line's words suggest; "not_said" where they suggest none.

    Examples
    --------
    >>> guessed("New 240 V circuit"), guessed("Unit and line set"), guessed("Thank you")
    ('electrical', 'equipment', 'not_said')
    """
    lower = text.lower()
    kind = next((kind for kind, words in _WORDS if re.search(words, lower)), "not_said")
    return "equipment" if kind == "materials" and _WHOLE.search(lower) else kind
