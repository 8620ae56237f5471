"""Units in windows, in walls and on wheels: outlet, hose, opening in the wall, season."""

from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.caution.rule import PRACTICE, WINDOW, Rule
from econ.caution.wall import LEAD_PAINT_YR
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

KEPT: Final = (Alternative.KEEP_AS_IS.value,)
"""The way on which what is there now stays."""


def is_over_limit(facts: Facts) -> BoolArray:
    """Return where one unit draws more than its outlet's circuit may give it."""
    over: BoolArray = np.isfinite(facts.window_limit_a) & (facts.window_a > facts.window_limit_a)
    return over


def hose_meets_burner(facts: Facts) -> BoolArray:
    """Return where a portable unit draws air into a home in which something burns fuel."""
    drawn: BoolArray = facts.is_portable & facts.burns_fuel
    return drawn


WINDOW_RULES: Final = (
    Rule(
        "electrical.window_over_limit",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        is_over_limit,
        "The unit draws more than its outlet's circuit may give it; an outlet of its own is priced in.",
        "Take a smaller unit, or have an electrician make a circuit for it before it is plugged in.",
        "electrician",
        "NEC 440.62, from memory",
        ("window_a", "window_limit_a"),
        WINDOW,
    ),
    Rule(
        "electrical.window_other_voltage",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        lambda facts: facts.outlet_other_volts,
        "The unit needs another voltage than the outlet has; an outlet for it is priced in.",
        "Compare plug and outlet before you buy, and use no adapter.",
        "electrician",
        alternatives=WINDOW,
    ),
    Rule(
        "lifting.window_over_walkway",
        Topic.EQUIPMENT,
        Severity.HOLD_POINT,
        lambda facts: facts.over_walkway,
        "People may walk below the window, and a unit that falls can kill.",
        "Nothing is set in the window before its bracket is fixed to the wall and the place below kept clear.",
        "you",
        alternatives=WINDOW,
    ),
    Rule(
        "wall.opening_structure",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.cut_structural,
        "The wall to be cut is masonry, or may carry a floor or roof.",
        "Nothing is cut until somebody who knows structures has named header or lintel, and how the load is held up.",
        "contractor",
        alternatives=WINDOW,
    ),
    Rule(
        "wall.opening_services",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.through_wall,
        "Cables, pipes or gas lines may run where the wall is to be opened.",
        "Scan it, open the inside first, and stop at anything that runs through.",
        "whoever cuts",
        alternatives=WINDOW,
    ),
    Rule(
        "wall.opening_water",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.through_wall,
        "Rain gets in around a sleeve that is level or not flashed.",
        "Tilt the sleeve outward, flash its top, seal all round, and cover it in winter.",
        "whoever fits the sleeve",
        alternatives=WINDOW,
    ),
    Rule(
        "wall.opening_paint",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.through_wall & (facts.built_yr < LEAD_PAINT_YR),
        "Paint in a home this old may hold lead, and cutting the wall makes dust of it.",
        "Have it tested, or work by the lead-safe rules.",
        "whoever cuts",
        "US EPA, Renovation, Repair and Painting rule (40 CFR 745), from memory",
        ("built_yr",),
        WINDOW,
    ),
    Rule(
        "room.portable_draws_air",
        Topic.ROOM,
        Severity.CAUTION,
        lambda facts: facts.is_portable,
        "A portable unit blows room air out of its hose, so warm damp air comes in elsewhere; that is counted.",
        "Take one with two hoses, keep the hose short, and seal its panel.",
        "you",
        alternatives=WINDOW,
    ),
    Rule(
        "room.present_portable_draws_air",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.now_portable,
        "The portable unit that is there blows room air out, so warm damp air comes in elsewhere; that is counted.",
        "Keep its hose short and seal its panel.",
        "you",
        alternatives=KEPT,
    ),
    Rule(
        "room.portable_backdraught",
        Topic.ROOM,
        Severity.CAUTION,
        hose_meets_burner,
        "The air that a portable unit draws in can come down a flue, with the fumes of what burns there.",
        "Have a carbon monoxide alarm, and have the draught of heater and water heater checked with the unit running.",
        "you",
        PRACTICE,
        alternatives=WINDOW,
    ),
    Rule(
        "equipment.kind_cools_only",
        Topic.EQUIPMENT,
        Severity.NOTE,
        lambda facts: facts.heat_not_made,
        "Units of this kind that heat too are not among these figures: it is counted as cooling only.",
        "Choose a unit for a window or the wall if it must heat.",
        "you",
        alternatives=WINDOW,
    ),
)
