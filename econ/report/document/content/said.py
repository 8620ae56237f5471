"""What a form may print as known: only what the user said; the rest is a line to fill in by hand."""

from typing import Final

from econ.report.document.content.basis import Basis
from econ.report.numbers import Quantity, plain_number, tenths

CAREFUL: Final = "not_known"


def is_said(basis: Basis, path: str) -> bool:
    """Return whether the user gave an input."""
    sheet = basis.answer.sheet
    return path in sheet.place and sheet.entry(path).state == "yours"


def option(basis: Basis, path: str) -> str:
    """Return a choice that the user made, in plain words; empty where it is left open."""
    return basis.option(path) if is_said(basis, path) else ""


def length(basis: Basis, path: str) -> str:
    """Return a length that the user gave; empty where it is left open."""
    return basis.look.measure(basis.number(path), Quantity.LENGTH) if is_said(basis, path) else ""


def thickness(basis: Basis, path: str) -> str:
    """Return a short length that the user gave; empty where it is left open."""
    return basis.look.measure(basis.number(path), Quantity.SHORT_LENGTH) if is_said(basis, path) else ""


def amperes(basis: Basis, path: str) -> str:
    """Return a current that the user read off a label; empty where it is left open."""
    return f"{tenths(basis.number(path))} A" if is_said(basis, path) else ""


def span(basis: Basis, path: str, unit: str, quantity: Quantity | None = None) -> str:
    """Return the range of an input, with whose it is; empty where there is none.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    path : str
        The input.
    unit : str
        Its unit as read aloud, where no quantity gives it.
    quantity : Quantity, optional
        What it measures, to be shown in the reader's units.
    """
    if path not in basis.answer.sheet.place:
        return ""
    entry = basis.answer.sheet.entry(path)
    low, high = (
        f"{plain_number(value)} {unit}" if quantity is None else basis.look.measure(value, quantity)
        for value in (entry.spread.low, entry.spread.high)
    )
    told = low if low == high else f"{low} to {high}"
    return told if entry.state == "yours" else f"{told}, usual for its class, not read off the label"
