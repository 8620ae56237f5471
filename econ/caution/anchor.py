"""What holds the outdoor bracket and the indoor plate."""

from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, PRACTICE, Rule
from econ.installation.anchoring import allowable_n
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

PLATE_KG: Final = 20.4
"""kg, 45 lb: the heaviest indoor unit of the usual range, 17 to 45 lb. Common practice, no source."""

STATICS: Final = "statics; a quarter of the breaking load is common practice, no source"


def anchor_is_too_weak(facts: Facts) -> BoolArray:
    """Return where the top pair is pulled harder than one anchor may be; the pair is not counted twice."""
    weak: BoolArray = facts.on_bracket & (facts.bracket_pull_n > allowable_n(facts.anchor_ultimate_n))
    return weak


def anchor_is_not_rated(facts: Facts) -> BoolArray:
    """Return where a bracket hangs on anchors whose breaking load nobody has read."""
    unread: BoolArray = facts.on_bracket & np.isnan(facts.anchor_ultimate_n)
    return unread


def plate_is_heavy(facts: Facts) -> BoolArray:
    """Return where the indoor unit is above what hollow-wall anchors usually hold."""
    heavy: BoolArray = facts.indoor_kg > PLATE_KG
    return heavy


ANCHOR_RULES: Final = (
    Rule(
        "anchor.base_unknown",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.on_bracket & facts.anchor_unknown,
        "Nobody knows yet what the bolts of the outdoor bracket would reach.",
        "Open or probe the wall until you know; without that, set the unit on a pad.",
        "whoever fixes the bracket",
        PRACTICE,
        ("bracket_pull_n",),
        DUCTLESS,
    ),
    Rule(
        "anchor.base_refused",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.on_bracket & facts.anchor_refused,
        "Hollow block, veneer, siding, foam or a toggle in any of them carries no outdoor unit.",
        "Reach studs, a ledger or solid masonry, fill or through-bolt the block, or set the unit on a pad.",
        "contractor",
        PRACTICE,
        ("bracket_pull_n",),
        DUCTLESS,
    ),
    Rule(
        "anchor.not_rated",
        Topic.WORK,
        Severity.HOLD_POINT,
        anchor_is_not_rated,
        "The breaking load of the bracket's anchors in this wall has not been read.",
        "Read it off the anchor maker's sheet for this wall; the top pair must not pull more than a quarter of it.",
        "whoever fixes the bracket",
        STATICS,
        ("bracket_pull_n",),
        DUCTLESS,
    ),
    Rule(
        "anchor.too_weak",
        Topic.WORK,
        Severity.HOLD_POINT,
        anchor_is_too_weak,
        "The bracket pulls its top anchors harder than a quarter of their breaking load.",
        "Take stronger anchors, a taller bracket, or a pad on the ground; do not add up ratings of several anchors.",
        "whoever fixes the bracket",
        STATICS,
        ("bracket_pull_n", "anchor_ultimate_n"),
        DUCTLESS,
    ),
    Rule(
        "anchor.indoor_plate_heavy",
        Topic.WORK,
        Severity.CAUTION,
        plate_is_heavy,
        "The indoor unit is heavier than the usual 17 to 45 lb for which hollow-wall anchors are taken.",
        "Screw the plate into studs or a board behind the wall.",
        "whoever hangs it",
        PRACTICE,
        ("indoor_kg",),
        DUCTLESS,
    ),
)
