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
    """Return where earth stands against the rooms and nobody has said where the hole comes out."""
    below: BoolArray = facts.hole_unknown & (facts.earth_depth_m >= ABOVE_GRADE_M)
    return below


def wants_extension(facts: Facts) -> BoolArray:
    """Return where masonry is thicker than the bit reaches, but not than its extension does."""
    is_thick = facts.is_masonry | facts.is_veneer
    wants: BoolArray = is_thick & (facts.wall_thickness_m > facts.bit_reach_m) & ~is_beyond_bit(facts)
    return wants


def is_beyond_bit(facts: Facts) -> BoolArray:
    """Return where any wall is thicker than the bit reaches with its extension."""
    beyond: BoolArray = facts.wall_thickness_m > facts.longest_reach_m
    return beyond


WALL_RULES: Final = (
    Rule(
        "drilling.behind_the_wall",
        Topic.WORK,
        Severity.HOLD_POINT,
        always,
        "Cables, pipes, gas lines, a stud or a post may be in or behind the place you drill.",
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
        "drilling.eyes_and_ears",
        Topic.WORK,
        Severity.NOTE,
        always,
        "Drills throw chips and are loud enough to harm hearing.",
        "Wear closed goggles and ear muffs, also on a wood wall, and keep others away.",
        "whoever drills",
        alternatives=SELF,
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
        "drilling.bit_extension",
        Topic.WORK,
        Severity.NOTE,
        wants_extension,
        "The wall is thicker than the bit reaches: it takes the bit's extension.",
        "Drill to the bit's depth first, then go on with the extension from the same centre.",
        "whoever drills",
        PRACTICE,
        ("wall_thickness_m", "bit_reach_m"),
        DUCTLESS,
    ),
    Rule(
        "drilling.beyond_the_bit",
        Topic.WORK,
        Severity.CAUTION,
        is_beyond_bit,
        "The wall is thicker than a bit with its extension reaches.",
        "Go through a thinner place, drill from both sides on one pilot hole, or have it cored by a contractor.",
        "whoever drills",
        PRACTICE,
        ("wall_thickness_m", "longest_reach_m"),
        DUCTLESS,
    ),
    Rule(
        "drilling.below_grade_refused",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.hole_below,
        "A hole below the ground is refused: water and radon come in by it.",
        "Go out above the ground, or through the rim above the foundation wall.",
        "whoever drills",
        alternatives=DUCTLESS,
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
