"""The room: closed doors, escape windows, water, soil gas, damp."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, PRACTICE, WINDOW, Rule, always
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

MOISTURE_SHARE: Final = 0.5
"""Share of the cooling need above which drying is the larger job. By definition of larger."""


ICE_C: Final = 0.0
"""degC at which water freezes. By definition of the scale."""


def room_is_not_served(facts: Facts) -> BoolArray:
    """Return where some room is behind a closed door."""
    closed: BoolArray = facts.closed_rooms_count > 0.0
    return closed


def moisture_dominates(facts: Facts) -> BoolArray:
    """Return where more than half of the cooling need is moisture."""
    damp: BoolArray = facts.moisture_share_frac > MOISTURE_SHARE
    return damp


def pipes_may_freeze(facts: Facts) -> BoolArray:
    """Return where the heat that kept pipes from freezing goes, and design nights freeze."""
    freeze: BoolArray = facts.pipes_exposed & (facts.heat_design_c < ICE_C)
    return freeze


def is_in_contact_with_soil(facts: Facts) -> BoolArray:
    """Return where a room is a lower level or has earth against it."""
    low: BoolArray = facts.is_lower_level | (facts.earth_depth_m > 0.0)
    return low


ROOM_RULES: Final = (
    Rule(
        "room.closed_door",
        Topic.ROOM,
        Severity.CAUTION,
        room_is_not_served,
        "A room behind a closed door would stay warm: one indoor unit cannot be counted on for it.",
        "Keep the door open, plan a second unit, or leave that room out.",
        "you",
        PRACTICE,
        ("closed_rooms_count",),
        DUCTLESS,
    ),
    Rule(
        "room.escape_window",
        Topic.EQUIPMENT,
        Severity.HOLD_POINT,
        lambda facts: facts.is_escape,
        "The unit or its panel would block the escape window.",
        "Use another opening or another way of cooling, and free an escape window that is blocked now.",
        "you",
        "International Residential Code, section R310, from memory",
        alternatives=WINDOW,
    ),
    Rule(
        "room.escape_window_unknown",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        lambda facts: facts.escape_unknown,
        "It is not known whether the opening is the room's escape window.",
        "A bedroom or lower level needs one window to get out through: find out which before you buy.",
        "you",
        "International Residential Code, section R310, from memory",
        alternatives=WINDOW,
    ),
    Rule(
        "room.old_unit_blocks_window",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.has_old_units,
        "A window unit that is there now may block a bedroom's escape window.",
        "Look at each bedroom and lower level: one window must open fully from inside.",
        "you",
        "International Residential Code, section R310, from memory",
    ),
    Rule(
        "room.casement",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        lambda facts: facts.is_casement,
        "An ordinary window unit does not fit a window that swings.",
        "Choose the tall narrow kind, a portable one, or one through the wall.",
        "you",
        alternatives=WINDOW,
    ),
    Rule(
        "room.radon",
        Topic.ROOM,
        Severity.NOTE,
        is_in_contact_with_soil,
        "Rooms in contact with the soil can hold radon; holes and house pressure change it.",
        "Test before and after the work; act at 4 pCi/L or more.",
        "you",
        "US EPA, A Citizen's Guide to Radon (from memory)",
        ("earth_depth_m",),
    ),
    Rule(
        "room.earth_in_doubt",
        Topic.ROOM,
        Severity.NOTE,
        is_in_contact_with_soil,
        "What this room in the earth needs is less sure than elsewhere: its cooling can be off by a third, its heating "
        "by a quarter, most of it for want of knowing the soil and what lies on it.",
        "Say what lies on the ground outside; do not choose a larger unit for safety.",
        "you",
        "this program's own check against an hourly simulation; see its notes for developers",
        ("earth_depth_m",),
    ),
    Rule(
        "room.damp_and_mould",
        Topic.ROOM,
        Severity.NOTE,
        is_in_contact_with_soil,
        "Walls and floors in the earth stay cool, so damp air wets them and mould grows behind what stands there.",
        "Keep humidity below the damp limit, furniture off the walls, and mend leaks and gutters first.",
        "you",
        PRACTICE,
        ("earth_depth_m",),
    ),
    Rule(
        "room.pipes_freeze",
        Topic.ROOM,
        Severity.CAUTION,
        pipes_may_freeze,
        "When the present heat goes, water pipes that it kept warm may freeze and burst.",
        "Find every pipe in outside walls, floor and ceiling; keep some heat there, or have a plumber move it.",
        "plumber",
        PRACTICE,
        ("heat_design_c",),
    ),
    Rule(
        "room.moisture_dominates",
        Topic.ROOM,
        Severity.CAUTION,
        moisture_dominates,
        "This room needs drying more than cooling.",
        "Compare a dehumidifier; a large cooling unit would run too briefly to dry the air.",
        "you",
        PRACTICE,
        ("moisture_share_frac",),
    ),
    Rule(
        "water.condensate_pump",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.drain_pump,
        "Condensate does not surely run off by itself; a pump is priced in.",
        "Look for a fall all the way out; with a pump, wire its float so that the unit stops when it fails.",
        "whoever fits the drain",
        alternatives=DUCTLESS,
    ),
    Rule(
        "water.condensate_slope",
        Topic.WORK,
        Severity.NOTE,
        always,
        "A drain without a steady fall floods the wall.",
        "Slope hole and hose outward, no dips, and pour a quart of water through before closing up.",
        "whoever fits the drain",
        alternatives=DUCTLESS,
    ),
)
