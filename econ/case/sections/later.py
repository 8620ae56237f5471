"""What comes later: repairs, the next set, the sale of the house, borrowed money, and taxes of letting."""

from typing import ClassVar, Final

from econ.case.field import FRACTION, amount, choice
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section

RENT: Final = Measure("USD/month", "", -1_000.0, 5_000.0)
_LOAN = "finance.kind=loan"
_LET = "letting.counted=yes"


class Later(Section):
    """Who mends and replaces it, and what a buyer of the house pays for."""

    path: ClassVar[str] = "later"

    replaced_by: Choice = choice(
        "The next set is put in by",
        "When the first one is worn out: the same hands as now, a contractor whichever way you start, or yourself.",
    )
    no_service_frac: Amt = amount(
        "Chance that nobody services your kit",
        "Then a failure means a new set. Ask three contractors whether they mend what they did not sell.",
        FRACTION, expert=True,
    )  # fmt: skip
    sale_after_yr: Amt = amount(
        "You sell the house after",
        "Leave it out if you don't expect to. The count of years then ends there, and what is owed is paid off.",
        Measure("year", "", 1.0, 60.0, True),
    )  # fmt: skip
    kept_self_frac: Amt = amount(
        "A buyer pays for it, put in yourself", "Share of what it is still worth that the price of the house holds.",
        Measure("", "", -0.5, 1.0), expert=True,
    )  # fmt: skip
    kept_hired_frac: Amt = amount(
        "A buyer pays for it, hired out", "The same for one that a contractor put in.",
        Measure("", "", -0.5, 1.0), expert=True,
    )  # fmt: skip


class Finance(Section):
    """Buying on borrowed money."""

    path: ClassVar[str] = "finance"

    pays_for: Choice = choice("What is bought on borrowed money", "Nothing, one of the ways, or each of them.")
    kind: Choice = choice(
        "How", "A loan, a card paid off in equal payments, or instalments “without interest”.",
        after="finance.pays_for=window_units|self_install|contracted_install|every_way",
    )  # fmt: skip
    share_frac: Amt = amount("Share that is borrowed", "Of the cash price; 1 is all of it.", FRACTION, expert=True)
    loan_rate_frac: Amt = amount(
        "Rate of the loan", "A year, as the contract prints it, price rises not taken off.",
        Measure("", "", 0.0, 1.0), after=_LOAN,
    )  # fmt: skip
    card_rate_frac: Amt = amount(
        "Rate of the card", "A year, from the statement.", Measure("", "", 0.0, 1.0), after="finance.kind=card"
    )
    month_count: Amt = amount("Monthly payments", "How many.", Measure("", "", 1.0, 360.0, True))
    deposit_frac: Amt = amount(
        "Deposit to a contractor", "Share of the price paid at signing; the rest when it works.", FRACTION, expert=True
    )
    fee_frac: Amt = amount(
        "Fee at the start", "As a share of what is borrowed; 0.03 is three in a hundred.", Measure("", "", 0.0, 0.3),
        expert=True,
    )  # fmt: skip
    dearer_frac: Amt = amount(
        "Dearer than for cash",
        "How much more it costs with the instalments than a seller takes for cash: 0.1 is one in ten. Ask for both.",
        Measure("", "", 0.0, 1.0), after="finance.kind=instalments",
    )  # fmt: skip


class Letting(Section):
    """Rent and taxes of a home that is let: an option, and no tax advice."""

    path: ClassVar[str] = "letting"

    counted: Choice = choice(
        "Count rent and taxes of letting", "Off unless you turn it on. This is not tax advice: ask a tax adviser."
    )
    marginal_rate_frac: Amt = amount(
        "Tax on one more dollar of rent", "Federal and state together; 0.24 is 24 in a hundred.",
        Measure("", "", 0.0, 0.6), after=_LET,
    )  # fmt: skip
    split_class: Choice = choice(
        "A ductless set is written off as",
        "The rules do not name it; it depends on the facts. A tax adviser says which class holds for you.", after=_LET,
    )  # fmt: skip
    window_class: Choice = choice("A window unit is written off as", "Appliances have five years.", after=_LET)
    bonus_frac: Amt = amount(
        "Written off at once",
        "Share in the first year. It holds for appliances alone: parts of a building are left to their own years.",
        FRACTION, expert=True, after=_LET,
    )  # fmt: skip
    rent_window_usd_per_month: Amt = amount(
        "More rent a month, window units", "Than with what is there now. Only what you are sure of.", RENT, after=_LET
    )
    rent_split_usd_per_month: Amt = amount(
        "More rent a month, ductless set", "Than with what is there now. Only what you are sure of.", RENT, after=_LET
    )
