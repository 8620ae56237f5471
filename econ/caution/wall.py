"""The hole: what is behind, dust, paint, earth, bites of the bit."""

from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, PRACTICE, SELF, Rule, always
from econ.installation.drilling import core_bites
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

LEAD_PAINT_YR: Final = 1978.0
"""Homes built before it may hold lead paint: the year of the ban. US EPA, Renovation, Repair and Painting rule."""

ASBESTOS_YR: Final = 1990.0
"""Suspect materials were used through the 1980s. Common practice, no source."""

ABOVE_GRADE_M: Final = 0.15
"""m; a floor this far below grade or more puts a hole low in the wall into the earth. Assumption, a curb's height."""


def paint_may_hold_lead(facts: Facts) -> BoolArray:
    """Return where the house is older than the ban on lead paint."""
    old: BoolArray = facts.built_yr < LEAD_PAINT_YR
    return old


def may_hold_asbestos(facts: Facts) -> BoolArray:
    """Return where the house is from the years of suspect materials."""
    old: BoolArray = facts.built_yr < ASBESTOS_YR
    return old


def drilling_makes_silica_dust(facts: Facts) -> BoolArray:
    """Return where masonry or veneer is drilled."""
    dusty: BoolArray = facts.is_masonry | facts.is_veneer
    return dusty


def needs_several_bites(facts: Facts) -> BoolArray:
    """Return where a core bit does not get through masonry in one go."""
    with_depth = facts.is_masonry & (facts.wall_thickness_m > 0.0) & (facts.bite_m > 0.0)
    bites = core_bites(np.where(with_depth, facts.wall_thickness_m, 1.0), np.where(with_depth, facts.bite_m, 1.0))
    several: BoolArray = with_depth & (bites > 1.0)
    return several


def hole_may_be_below_grade(facts: Facts) -> BoolArray:
    """Return where earth stands against the rooms."""
    below: BoolArray = facts.earth_depth_m >= ABOVE_GRADE_M
    return below


WALL_RULES: Final = (
    Rule(
        "drilling.behind_the_wall",
        Topic.WORK,
        Severity.HOLD_POINT,
        always,
        "Cables, pipes, gas lines or a post may be in or behind the place you drill.",
        "Look from both sides, scan the spot, drill a small pilot hole first, and stop when unsure.",
        "whoever drills",
        alternatives=DUCTLESS,
    ),
    Rule(
        "drilling.silica_dust",
        Topic.WORK,
        Severity.CAUTION,
        drilling_makes_silica_dust,
        "Drilling masonry makes silica dust that harms the lungs.",
        "Drill wet or with a fine-dust extractor, wear a respirator, eye and ear protection, close the room off.",
        "whoever drills",
        alternatives=DUCTLESS,
    ),
    Rule(
        "drilling.lead_paint",
        Topic.WORK,
        Severity.CAUTION,
        paint_may_hold_lead,
        "The house is from before 1978: its paint may hold lead.",
        "Test the paint before drilling or sanding; in a let home the work rules bind the landlord.",
        "you",
        "US EPA, Renovation, Repair and Painting rule (from memory)",
        ("built_yr",),
        DUCTLESS,
    ),
    Rule(
        "drilling.asbestos",
        Topic.WORK,
        Severity.CAUTION,
        may_hold_asbestos,
        "Siding, plaster, floor or pipe covering of that time may hold asbestos.",
        "Have a suspect layer tested before you cut it; do not drill it dry.",
        "you",
        PRACTICE,
        ("built_yr",),
        DUCTLESS,
    ),
    Rule(
        "drilling.several_bites",
        Topic.WORK,
        Severity.NOTE,
        needs_several_bites,
        "The wall is thicker than the core bit is deep: it takes several bites.",
        "Break out the core after each bite, go on from the same centre, and have a bit extension at hand.",
        "whoever drills",
        PRACTICE,
        ("wall_thickness_m", "bite_m"),
        DUCTLESS,
    ),
    Rule(
        "drilling.below_grade",
        Topic.WORK,
        Severity.HOLD_POINT,
        hole_may_be_below_grade,
        "Earth stands against this room: a hole below grade lets in water and soil gas and is refused.",
        "Go out above grade or through the rim above the foundation wall.",
        "whoever drills",
        PRACTICE,
        ("earth_depth_m",),
        DUCTLESS,
    ),
    Rule(
        "drilling.veneer_anchor",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.on_bracket & facts.is_veneer,
        "A brick veneer does not carry an outdoor unit.",
        "Reach the frame behind it, or set the unit on a pad.",
        "contractor",
        alternatives=DUCTLESS,
    ),
    Rule(
        "drilling.own_power_tools",
        Topic.WORK,
        Severity.NOTE,
        lambda facts: facts.is_masonry,
        "A large core bit can catch and wrench the arms.",
        "Use a drill with a clutch, both handles and firm footing; never from a ladder alone.",
        "whoever drills",
        alternatives=SELF,
    ),
)
