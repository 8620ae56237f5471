"""The branch circuit: label against breaker and wire, ground fault, service outlet, voltage, room on the service."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, SELF, Rule
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

DROP_FRAC: Final = 0.03
"""Share of the supply that a branch circuit should lose at most: advice of NEC 210.19, informational note."""

_LABEL: Final = "NEC 440.4, 440.22 and 440.32: the label rules; text not quoted"


def breaker_above_maximum(facts: Facts) -> BoolArray:
    """Return where the breaker is larger than the label allows."""
    above: BoolArray = facts.label_read & (facts.breaker_a > facts.mop_a)
    return above


def conductor_below_minimum(facts: Facts) -> BoolArray:
    """Return where the wire carries less than the label asks for."""
    below: BoolArray = facts.label_read & (facts.conductor_a < facts.mca_a)
    return below


def breaker_below_minimum(facts: Facts) -> BoolArray:
    """Return where the breaker lies below the label's minimum and would trip."""
    below: BoolArray = facts.label_read & (facts.breaker_a < facts.mca_a)
    return below


def label_is_odd(facts: Facts) -> BoolArray:
    """Return where the label's maximum lies below its minimum: one was misread."""
    odd: BoolArray = facts.label_read & (facts.mop_a < facts.mca_a)
    return odd


def label_not_read(facts: Facts) -> BoolArray:
    """Return where minimum and maximum are those of the class."""
    return ~facts.label_read


def too_much_voltage_lost(facts: Facts) -> BoolArray:
    """Return where the run loses more of the supply than is advised."""
    lost: BoolArray = facts.voltage_drop_frac > DROP_FRAC
    return lost


def service_is_full(facts: Facts) -> BoolArray:
    """Return where the calculated load lies above the rating of the service."""
    full: BoolArray = facts.service_load_a > facts.service_a
    return full


CIRCUIT_RULES: Final = (
    Rule(
        "electrical.breaker_above_maximum",
        Topic.EQUIPMENT,
        Severity.HOLD_POINT,
        breaker_above_maximum,
        "The breaker is larger than the largest that the unit's label allows.",
        "Have an electrician fit one that lies between the label's minimum and maximum.",
        "electrician",
        _LABEL,
        ("breaker_a", "mop_a"),
        DUCTLESS,
    ),
    Rule(
        "electrical.conductor_below_minimum",
        Topic.EQUIPMENT,
        Severity.HOLD_POINT,
        conductor_below_minimum,
        "The wire carries less than the minimum circuit ampacity on the unit's label.",
        "Have an electrician run a thicker wire before anything is connected.",
        "electrician",
        _LABEL,
        ("conductor_a", "mca_a"),
        DUCTLESS,
    ),
    Rule(
        "electrical.breaker_below_minimum",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        breaker_below_minimum,
        "The breaker lies below the label's minimum and would trip on hot or cold days.",
        "Ask the electrician for one between minimum and maximum, with wire to match.",
        "electrician",
        _LABEL,
        ("breaker_a", "mca_a"),
        DUCTLESS,
    ),
    Rule(
        "electrical.label_is_odd",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        label_is_odd,
        "The label's maximum breaker is smaller than its minimum ampacity, so one of them was misread.",
        "Read both off the label of the outdoor unit again.",
        "you",
        _LABEL,
        ("mca_a", "mop_a"),
        DUCTLESS,
    ),
    Rule(
        "electrical.label_not_read",
        Topic.EQUIPMENT,
        Severity.NOTE,
        label_not_read,
        "Minimum ampacity and largest breaker are those of the class, not of your unit's label.",
        "Buy no wire or breaker before you have read both off the label or the maker's manual.",
        "you",
        _LABEL,
        ("mca_a", "mop_a"),
        SELF,
    ),
    Rule(
        "electrical.ground_fault",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        lambda facts: facts.ground_fault_asked,
        "This code edition asks for ground-fault protection of an outdoor unit; it is priced in.",
        "Ask the permit office what it enforces, and the maker which protection does not trip for nothing.",
        "electrician",
        "NEC 210.8(F), editions 2020 to 2026; in 2023 an exception for such units ended on 1 September 2026",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.ground_fault_unknown",
        Topic.EQUIPMENT,
        Severity.NOTE,
        lambda facts: facts.ground_fault_unknown,
        "Newer codes ask for ground-fault protection, which can trip for nothing with inverters; it is priced in.",
        "Ask the permit office which electrical code it has adopted.",
        "you",
        "NEC 210.8(F), editions 2020 to 2026",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.service_receptacle",
        Topic.EQUIPMENT,
        Severity.NOTE,
        lambda facts: facts.receptacle_lacks,
        "No outdoor outlet is known within 25 ft of the unit for those who service it; one is priced in.",
        "Look for one, and ask the electrician whether it counts.",
        "you",
        "NEC 210.63; text not quoted",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.voltage_drop",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        too_much_voltage_lost,
        "At the label's minimum current the run would lose more than 3 % of the voltage, which is advised as the most.",
        "Ask the electrician for the next thicker wire or a shorter way.",
        "electrician",
        "NEC 210.19, informational note: advice, no rule",
        ("voltage_drop_frac",),
        DUCTLESS,
    ),
    Rule(
        "electrical.service_full",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        service_is_full,
        "By the load method for existing homes, the unit would take the service above its rating.",
        "Have an electrician calculate or measure the load before you order; a load manager may do.",
        "electrician",
        "NEC 220.83 (B); guidance, the electrician's own calculation counts",
        ("service_load_a", "service_a"),
        DUCTLESS,
    ),
)
