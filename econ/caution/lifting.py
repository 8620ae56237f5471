"""Weights, ladders, brackets, roofs."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, SELF, WINDOW, Rule, always
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

ONE_PERSON_KG: Final = 23.0
"""kg; the most that one person should lift in the best posture. NIOSH Publication 94-110 (1994), load constant."""

FALL_HEIGHT_M: Final = 1.8
"""m, 6 ft: from here falls need protection on building sites. 29 CFR 1926.501."""

NIOSH: Final = "NIOSH Publication 94-110 (1994), load constant (from memory)"


def outdoor_needs_two(facts: Facts) -> BoolArray:
    """Return where the outdoor unit is above what one person should lift and nobody helps."""
    heavy: BoolArray = (facts.outdoor_kg > ONE_PERSON_KG) & ~facts.has_helper
    return heavy


def window_needs_two(facts: Facts) -> BoolArray:
    """Return where a unit for window or wall is above what one person should lift and nobody helps."""
    heavy: BoolArray = (facts.window_kg > ONE_PERSON_KG) & ~facts.has_helper & ~facts.is_portable
    return heavy


def is_work_at_height(facts: Facts) -> BoolArray:
    """Return where the outdoor unit goes to a height that needs protection from falls."""
    high: BoolArray = facts.outdoor_height_m >= FALL_HEIGHT_M
    return high


LIFTING_RULES: Final = (
    Rule(
        "lifting.outdoor_needs_two",
        Topic.WORK,
        Severity.CAUTION,
        outdoor_needs_two,
        "The outdoor unit is too heavy for one person.",
        "Get a second person for delivery and setting, and a hand truck.",
        "you",
        NIOSH,
        ("outdoor_kg",),
        SELF,
    ),
    Rule(
        "lifting.window_needs_two",
        Topic.WORK,
        Severity.CAUTION,
        window_needs_two,
        "The window unit is too heavy for one person to hold in a window.",
        "Get a second person, and fix the outside bracket first.",
        "you",
        NIOSH,
        ("window_kg",),
        WINDOW,
    ),
    Rule(
        "lifting.work_at_height",
        Topic.WORK,
        Severity.HOLD_POINT,
        is_work_at_height,
        "The outdoor unit goes up where a fall would hurt badly.",
        "Use a lift, scaffold or hoist, never a ladder with the unit in hand; or choose a place on the ground.",
        "contractor",
        "29 CFR 1926.501 (from memory)",
        ("outdoor_height_m",),
        DUCTLESS,
    ),
    Rule(
        "lifting.ladder_inside",
        Topic.WORK,
        Severity.NOTE,
        always,
        "The indoor unit is drilled for and hung above the head, where most people fall.",
        "Stand on a platform or a firm stepladder, two people at the lift, and keep the floor below clear.",
        "whoever hangs it",
        alternatives=SELF,
    ),
    Rule(
        "lifting.roof",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.on_roof,
        "A roof must carry the unit and stay tight.",
        "Have a contractor confirm the load and flash every hole.",
        "contractor",
        alternatives=DUCTLESS,
    ),
    Rule(
        "lifting.window_bracing",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.in_window,
        "A window unit that is not braced can fall out.",
        "Fix the outside bracket to the wall and lock the sash; never over a walkway without both.",
        "you",
        alternatives=WINDOW,
    ),
)
