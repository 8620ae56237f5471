"""Permission: permits, owners' rules, let homes, associations, rooms that were never permitted."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, SELF, Rule, always
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic


def permit_is_needed(facts: Facts) -> BoolArray:
    """Return where a permit is known to be needed."""
    needed: BoolArray = facts.permit_needed & ~facts.permit_unknown & ~facts.permit_refused
    return needed


def room_may_be_unpermitted(facts: Facts) -> BoolArray:
    """Return where a converted garage's permit is not known."""
    unknown: BoolArray = facts.is_garage & facts.permit_unknown
    return unknown


PERMIT_RULES: Final = (
    Rule(
        "permit.needed",
        Topic.WORK,
        Severity.HOLD_POINT,
        permit_is_needed,
        "The work needs a permit and an inspection.",
        "Have the permit in hand before drilling, wiring or lifting; leave joints open to view until inspected.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.unknown",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.permit_unknown,
        "It is not known whether a permit is needed; one is priced and waited for.",
        "Phone the permit office: mechanical and electrical, what an owner may do, how long it takes.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.room_never_permitted",
        Topic.WORK,
        Severity.CAUTION,
        room_may_be_unpermitted,
        "A converted garage whose permit is not known may come up when you ask for a new one.",
        "Find out how the room stands on record, and ask for advice, before you apply.",
        "you",
    ),
    Rule(
        "permit.handyman",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.has_handyman,
        "A handyman does part of the work: the state sets what he may do without a licence, and up to what price.",
        "Ask the state's licensing board, and the handyman for proof of insurance; leave wiring and refrigerant to the "
        "licensed trades.",
        "you",
        alternatives=SELF,
    ),
    Rule(
        "permit.contractor_unasked",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.finish_unasked,
        "A contractor is to work on a kit bought elsewhere, and it is not known whether one will; most do not.",
        "Phone two or three before you buy the kit, and ask what their labour warranty then covers.",
        "you",
        alternatives=SELF,
    ),
    Rule(
        "permit.let_home",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.is_let,
        "In a home that is let the owner's exemption usually does not hold.",
        "Have licensed people do electrical and, where the place says so, mechanical work.",
        "electrician and contractor",
        alternatives=SELF,
    ),
    Rule(
        "permit.landlord_consent",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.is_tenant,
        "The wall and the outdoor place are the landlord's.",
        "Get consent in writing, with who owns and removes the unit, before you order.",
        "landlord",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.association",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.consent_needed,
        "An association may have to agree to an outdoor unit.",
        "Ask for the rule and the consent in writing.",
        "association",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.association_refused",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.association_refused,
        "The association has refused an outdoor unit.",
        "Ask which place, colour or sound level it would allow, or take what needs nothing outside.",
        "association",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.refused",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.permit_refused,
        "The permit office has refused the permit.",
        "Ask in writing what would make it pass; often a licensed contractor, a load calculation or another place.",
        "permit office",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.warranty_conditions",
        Topic.EQUIPMENT,
        Severity.NOTE,
        always,
        "A warranty can ask for registration in time and for proof of who installed and tested the unit.",
        "Read the conditions before buying, register, and keep receipts, photos and test values.",
        "you",
        alternatives=DUCTLESS,
    ),
)
