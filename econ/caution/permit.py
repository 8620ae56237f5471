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


def owner_exemption_is_weak(facts: Facts) -> BoolArray:
    """Return where the home is let, by its owner or to whoever asks."""
    let: BoolArray = facts.is_let | facts.is_tenant
    return let


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
        lambda facts: facts.room_unpermitted,
        "This looks like a converted room, and no permit for that is known; it may come up when you ask for one.",
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
        "permit.bought_elsewhere",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.contractor_on_kit,
        "A contractor who works on equipment bought elsewhere usually answers for his own hours and for no part.",
        "Get in writing who pays for labour when a part fails, and who proves to the maker how it was put in.",
        "you",
        alternatives=SELF,
    ),
    Rule(
        "permit.let_home",
        Topic.WORK,
        Severity.HOLD_POINT,
        owner_exemption_is_weak,
        "In a home that is let the owner's exemption usually does not hold, and a tenant has none.",
        "Ask the permit office who may legally work there; have licensed people do electrical and, where it says so, "
        "mechanical work.",
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
        "permit.heritage",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.heritage_asked,
        "A heritage or street rule may forbid or hide an outdoor unit, or nobody has asked.",
        "Ask the planning office before you order; sides that no street sees are often allowed.",
        "planning office",
        alternatives=DUCTLESS,
    ),
    Rule(
        "permit.insurance",
        Topic.WORK,
        Severity.NOTE,
        always,
        "An insurer may refuse damage by water, fire or a fall after work without a permit or a licence.",
        "Ask yours in writing before the work, and keep permit, inspection and test values.",
        "you",
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
