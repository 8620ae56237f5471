"""Delivery and handover: when the kit can still go back, and when the old unit may go."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, PRACTICE, SELF, Rule, always
from econ.installation.delivery import ends_before
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic


def return_window_is_over(facts: Facts) -> BoolArray:
    """Return where the dry-fit comes after the last day on which the kit may go back."""
    return ends_before(facts.return_by_d, facts.dry_fit_d)


DELIVERY_RULES: Final = (
    Rule(
        "delivery.look_before_signing",
        Topic.WORK,
        Severity.CAUTION,
        always,
        "A damaged set that was signed for is hard to send back.",
        "Open the cartons before you sign; write dents, oil and missing parts on the slip, and take photos.",
        "you",
        alternatives=SELF,
    ),
    Rule(
        "delivery.return_window_over",
        Topic.WORK,
        Severity.CAUTION,
        return_window_is_over,
        "The kit can no longer go back on the day the dry-fit shows whether it fits.",
        "Order it later, take delivery when you can look at it, or move the dry-fit up; it needs no permit.",
        "you",
        PRACTICE,
        ("return_by_d", "dry_fit_d"),
        SELF,
    ),
    Rule(
        "delivery.old_unit_stays",
        Topic.WORK,
        Severity.NOTE,
        lambda facts: facts.has_old_units,
        "Until the new unit has run for 24 hours it may still fail.",
        "Leave the old unit where it is until then; ask a contractor who takes it away to come back for it.",
        "you",
        PRACTICE,
        alternatives=DUCTLESS,
    ),
)
