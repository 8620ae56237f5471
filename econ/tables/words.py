"""The glossary: trade terms, each in one plain sentence."""

import re
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from econ.tables.record import read_table


@dataclass(frozen=True, slots=True)
class Term:
    """One word of the trade.

    Attributes
    ----------
    name : str
        As it is listed.
    forms : tuple of str
        As it is written in sentences; one without a small letter is met in capitals only.
    meaning : str
        One plain sentence.
    source : str
        Where the meaning is from.
    """

    name: str
    forms: tuple[str, ...]
    meaning: str
    source: str


@lru_cache(maxsize=2)
def glossary(root: Path | None = None) -> tuple[Term, ...]:
    """Return every term by the alphabet.

    Parameters
    ----------
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    terms : tuple of Term
        In the order of their names, capitals and small letters alike.

    Raises
    ------
    TableError
        If the table does not agree with its record.
    """
    rows = read_table("words/glossary", root).rows()
    terms = [
        Term(str(row["term"]), tuple(str(row["forms"]).split(";")), str(row["meaning"]), str(row["source"]))
        for row in rows
    ]
    return tuple(sorted(terms, key=lambda term: term.name.lower()))


@lru_cache(maxsize=512)
def form_pattern(form: str) -> re.Pattern[str]:
    """Return how a form is met in a text: as a whole word, in capitals alone where it is written so."""
    return re.compile(rf"(?<![\w-]){re.escape(form)}(?!\w)", 0 if form == form.upper() else re.IGNORECASE)


def is_used(term: Term, text: str) -> bool:
    """Return whether a text uses a term.

    Examples
    --------
    >>> sir = Term("SIR", ("SIR", "savings per dollar"), "", "")
    >>> is_used(sir, "A SIR of 2."), is_used(sir, "Dear sir,"), is_used(sir, "Savings per dollar: 2")
    (True, False, True)
    """
    return any(form_pattern(form).search(text) for form in term.forms)


def terms_used(text: str) -> tuple[Term, ...]:
    """Return the terms that a text uses, by the alphabet."""
    return tuple(term for term in glossary() if is_used(term, text))
