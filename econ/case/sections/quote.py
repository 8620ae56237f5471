"""What a quote says line by line, other quotes, and what a contractor types for a client; none moves the comparison."""

from typing import ClassVar, Final

from pydantic import field_validator

from econ.case.field import FRACTION, USD, USD_PER_H, WAIT, aside, pick, words
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section, Text, day

WARRANTY: Final = Measure("year", "", 0.0, 30.0)
SHARE: Final = Measure("", "", 0.0, 0.6)
"""Overhead and profit together leave something for the work itself."""

_TICKED: Final = "Yes, no, or not said: it is not in the text."


class Offer(Section):
    """What the quote that is counted says beyond its total."""

    path: ClassVar[str] = "offer"

    name: Text = words("Whose quote it is", "Your own word for it, such as “first quote”.")
    valid_until: Text = words("Valid until", "Year-month-day.")
    start: Text = words("Start date offered", "Year-month-day.")
    parts_warranty_yr: Amt = aside("Parts warranty", "Years, as the quote says.", WARRANTY)
    returns: Text = words("Who comes back if it fails", "And how soon, as the quote says.")
    lines: Text = words("Lines of the quote", "One row a line: words first, its amount last.")
    kinds: tuple[tuple[str, str], ...] | None = words(
        "What each line is for", "By the words of the line.", kind="kinds"
    )
    between_usd: Amt = aside(
        "Price if you buy and hang it, and they connect and start it", "Leave it out if they do not offer that.", USD
    )
    filled_in_by: Choice = pick("Who typed this in", "Shown on every print.")

    @field_validator("valid_until", "start", mode="after")
    @classmethod
    def is_a_day(cls, written: str | None) -> str | None:
        """Return the date; it must be year-month-day."""
        return None if written is None else day(written)


class OtherQuote(Offer):
    """Another quote, to set beside the one that is counted."""

    path: ClassVar[str] = "quotes[]"

    total_usd: Amt = aside("Total", "What you would pay in all.", USD)
    date: Text = words("Date of the quote", "Year-month-day.")
    wait_d: Amt = aside("Days until they start", "Counted from the decision.", WAIT)
    size: Choice = pick("Size", "In thousand Btu an hour.")
    grade: Choice = pick("Class", "Economy, standard, or cold-climate.")
    equipment: Choice = pick("Includes the equipment", _TICKED)
    electrical: Choice = pick("Includes the circuit", _TICKED)
    permit: Choice = pick("Includes the permit", _TICKED)
    removal: Choice = pick("Includes taking away the old", _TICKED)
    warranty: Choice = pick("Includes a labour warranty", _TICKED)
    labour_warranty_yr: Amt = aside("Labour warranty", "Years of it.", WARRANTY)

    @field_validator("date", mode="after")
    @classmethod
    def is_dated(cls, written: str | None) -> str | None:
        """Return the date; it must be year-month-day."""
        return None if written is None else day(written)


class Letterhead(Section):
    """What stands at the head of a client's two pages."""

    path: ClassVar[str] = "letterhead"

    business: Text = words("Your business", "As it should stand at the head of the client's pages.")
    licence: Text = words("Licence number", "As your state gives it.")
    prepared_for: Text = words("Prepared for", "The client's name; leave it out to write it by hand.")


class Trade(Section):
    """What is assumed of any contractor's costs; anyone may change it, and prints show it."""

    path: ClassVar[str] = "trade"

    labour_at: Choice = pick(
        "Hours are counted at", "Wage with overhead told apart, or the rate that is billed; never both."
    )
    labour_usd_per_h: Amt = aside("Cost of a technician's hour", "With all that comes on top of the wage.", USD_PER_H)
    selling_usd: Amt = aside("Selling and quoting", "For each job that is won.", USD)
    insurance_frac: Amt = aside("Insurance and licence", "As a share of what is billed.", SHARE)
    overhead_frac: Amt = aside("Overhead", "As a share of what is billed.", SHARE)
    profit_frac: Amt = aside("Profit", "As a share of what is billed.", SHARE)


class Private(Section):
    """A contractor's own figures: on this machine alone, and left out of everything that is handed over."""

    path: ClassVar[str] = "private"

    labour_usd_per_h: Amt = aside("Your cost of an hour", "Wage with all that comes on top of it.", USD_PER_H)
    unit_usd: Amt = aside("What the unit costs you", "Before your markup.", USD)
    overhead_frac: Amt = aside("Your overhead", "As a share of the price; 0.2 is a fifth.", FRACTION)
    profit_frac: Amt = aside("Your profit", "As a share of the price.", FRACTION)
    notes: Text = words("Your notes", "For yourself alone.")
