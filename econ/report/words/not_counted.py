"""What no dollar of the answer holds: noise, looks, light, resale; and what it would have to be worth a year."""

from typing import Final

from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.numbers import listed, money, two_digits
from econ.report.style import NAMES
from econ.report.words.standing import ASIDE_WORDS, DOING
from econ.uncertainty.answer import Answer

NOT_COUNTED: Final = (
    "Not counted in any figure: noise indoors and out, how it looks, a window that is free to open and gives light, "
    "and, unless you gave a figure, what a buyer or tenant would pay for it."
)
_FOR: Final[dict[Alternative, str]] = {
    Alternative.KEEP_AS_IS: "no work, no hole and nothing to settle",
    Alternative.WINDOW_UNITS: "no hole, no permit, and units that move with you and are replaced the same day",
    Alternative.SELF_INSTALL: "a quiet room, a free window and even heat",
    Alternative.CONTRACTED_INSTALL: "a quiet room, a free window, and someone else who answers for the work",
}
"""What speaks for each way that has no price here."""

_DUCTLESS: Final = (Alternative.SELF_INSTALL, Alternative.CONTRACTED_INSTALL)
_BESIDE_DUCTLESS: Final[dict[Alternative, str]] = {
    Alternative.SELF_INSTALL: "your own hand on the work and its days",
    Alternative.CONTRACTED_INSTALL: "someone else who does the work and answers for it",
}
"""The same where a split system is set beside a split system: both are quiet and leave the window free."""

OTHER_WAY: Final = (
    "The other way round: window units need no hole and no permit, move with you and are replaced the "
    "same day; two small ones would back each other up. Would you give that up for quiet, a free window and even heat?"
)
"""Said where window units are cheapest: what a dearer way would cost beside its price."""


def break_even_lines(answer: Answer) -> tuple[str, ...]:
    """Return what the uncounted sides of each other way that does the job must be worth a year to tip the choice.

    Parameters
    ----------
    answer : Answer
        The answer to a case.

    Returns
    -------
    lines : tuple of str
        Dearest last, then what speaks the other way where window units are cheapest; empty where no way is named.
    """
    winner = answer.verdict.winner
    if winner is None:
        return ()
    yearly = answer.result.measures.annualised_cost_usd_per_yr[:, 0]
    extra = {
        name: float(yearly[at] - yearly[ALTERNATIVES.index(winner)])
        for at, name in enumerate(ALTERNATIVES)
        if name is not winner and set(answer.verdict.reasons[at]) <= set(ASIDE_WORDS)
    }
    told = tuple(
        f"“{NAMES[name]}” costs {money(two_digits(amount))} a year more than {DOING[winner]}"
        f"{_aside(answer, name)}: the better buy for you if you would pay that for {_speaks_for(name, winner)}."
        for name, amount in sorted(extra.items(), key=lambda pair: pair[1])
        if amount > 0.0
    )
    return (*told, OTHER_WAY) if told and winner is Alternative.WINDOW_UNITS else told


def _speaks_for(name: Alternative, winner: Alternative) -> str:
    """Return what a way has that the cheapest has not."""
    return (_BESIDE_DUCTLESS if name in _DUCTLESS and winner in _DUCTLESS else _FOR)[name]


def _aside(answer: Answer, name: Alternative) -> str:
    """Return what else speaks against a way, in a parenthesis."""
    against = [ASIDE_WORDS[code] for code in answer.verdict.reasons[ALTERNATIVES.index(name)]]
    return f" ({listed(against)})" if against else ""
