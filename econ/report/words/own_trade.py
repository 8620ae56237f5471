"""A contractor's own figures against the quote: for the contractor's eyes, never printed or handed over."""

from typing import Final

from econ.case.quantity import Amount
from econ.case.sections.quote import Private
from econ.evaluate.quote_price import cents
from econ.evaluate.wiring.installation_quote import WAGE
from econ.report.words.quote import exact, round_money
from econ.uncertainty.quote import QuoteStudy

STAYS_HERE: Final = (
    "These stay on this machine. They are taken out before the client's view, any print, chart or export is made, and "
    "no figure there is worked out from them."
)
_PASSED_ON: Final = ("materials", "electrical", "permit", "removal", "travel", "tax", "warranty")
"""Steps at this program's own items: the contractor passes them on."""


def own_cents(private: Private, study: QuoteStudy) -> list[tuple[str, int]]:
    """Return what the job costs the contractor, piece by piece in cents; own figures where they were given.

    Parameters
    ----------
    private : Private
        The contractor's own figures.
    study : QuoteStudy
        The quote explained; it must have a total.
    """
    own, total = study.own, study.said.total_cents if study.said else 0
    unit, hour = _likely(private.unit_usd), _likely(private.labour_usd_per_h)
    hours = sum(own.step_cents(WAGE, step) for step in ("labour", "commissioning"))
    bare = own.parts(WAGE)["equipment"][0].cents
    lacks = {step.key for step in study.bridges[WAGE].missing}
    passed = sum(own.step_cents(WAGE, step) for step in _PASSED_ON if step not in lacks)
    return [
        ("The set", bare if unit is None else cents(unit)),
        ("Hours, ours in count", hours if hour is None else cents(hour * own.hours_h)),
        ("Materials, electrician, permits, travel, tax, reserve: our own items", passed),
        ("Overhead", round(total * (_likely(private.overhead_frac) or 0.0))),
        ("Profit you plan for", round(total * (_likely(private.profit_frac) or 0.0))),
    ]


def table(private: Private, study: QuoteStudy) -> dict[str, list[str]]:
    """Return the contractor's own sum; empty where no own figure or no quote was given."""
    given = (private.unit_usd, private.labour_usd_per_h, private.overhead_frac, private.profit_frac)
    if study.said is None or all(_likely(each) is None for each in given):
        return {}
    pieces = own_cents(private, study)
    left = study.said.total_cents - sum(usd for _, usd in pieces)
    labels = [label for label, _ in pieces]
    amounts = [exact(usd) for _, usd in pieces]
    return {
        "Of the quote": [*labels, "Left over", "The quote"],
        "Amount": [*amounts, exact(left), exact(study.said.total_cents)],
    }


def sentence(private: Private, study: QuoteStudy) -> str:
    """Return what the quote leaves the contractor."""
    total = study.said.total_cents if study.said else 0
    left = total - sum(usd for _, usd in own_cents(private, study))
    if left < 0:
        return f"At your own figures the quote falls {round_money(-left)} short of what the job costs you."
    return f"At your own figures the quote leaves {round_money(left)} beyond cost, overhead and planned profit."


def _likely(amount: Amount | None) -> float | None:
    return None if amount is None or amount.is_unknown else amount.likely
