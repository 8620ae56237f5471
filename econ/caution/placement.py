"""Where the indoor and the outdoor unit go: free space, air, water, neighbours, gas, snow and doors.

What is measured is held against the least distance of `placement.*` among the figures, which the user can set to what
the manual or the local rule says. What nobody has measured raises no such rule, but a note that lists what to look at.
"""

from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, PRACTICE, Rule
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.caution import Severity, Topic

ROUNDING_M: Final = 1e-9
"""m within which two lengths are one: units typed in feet and inches do not come out even."""

MAKERS: Final = "common practice, no source; the maker's manual decides"
LOCAL: Final = "common practice, no source; the local rule decides"
DRAIN_CODE: Final = "International Residential Code M1411.3 (from memory) asks half of it; the rest is common practice"


def is_less(have_m: FloatArray, least_m: FloatArray) -> BoolArray:
    """Return where a length falls short of what is asked; one that is not known does not.

    Parameters
    ----------
    have_m, least_m : ndarray, shape (B,)
        What is there; what is asked. [m]

    Returns
    -------
    is_less : ndarray, shape (B,)
        False where equal.
    """
    less: BoolArray = have_m < least_m - ROUNDING_M
    return less


def drain_falls_too_little(facts: Facts) -> BoolArray:
    """Return where a drain by gravity wants more fall than there is."""
    little: BoolArray = ~facts.drain_pump & is_less(facts.drain_drop_m, facts.drain_fall_m)
    return little


def snow_reaches_it(facts: Facts) -> BoolArray:
    """Return where the foot of the outdoor unit stands lower than the deepest snow and a hand above it."""
    reaches: BoolArray = (facts.snow_m > 0.0) & is_less(facts.outdoor_height_m, facts.snow_foot_m)
    return reaches


def indoor_is_unseen(facts: Facts) -> BoolArray:
    """Return where something about the place of the indoor unit has not been looked at."""
    lacking = [np.isnan(facts.head_above_m), np.isnan(facts.head_beside_m), facts.head_unknown]
    lacking.append(np.isnan(facts.drain_drop_m) & ~facts.drain_pump)
    unseen: BoolArray = np.logical_or.reduce(lacking)
    return unseen


def outdoor_is_unseen(facts: Facts) -> BoolArray:
    """Return where something about the place of the outdoor unit has not been looked at."""
    distances = (facts.boundary_m, facts.gas_meter_m, facts.vents_m, facts.bedroom_window_m)
    free = (facts.outdoor_front_m, facts.outdoor_back_m, facts.snow_m)
    unseen: BoolArray = np.logical_or.reduce(
        [*map(np.isnan, (*distances, *free)), facts.door_unknown, facts.weathering_unknown]
    )
    return unseen


def _distance(
    code: str, have: str, words: tuple[str, str, str], source: str, severity: Severity = Severity.CAUTION
) -> Rule:
    """Return the rule that a length is not less than what is asked of it."""
    message, action, party = words
    least = f"{have.removesuffix('_m')}_least_m"

    def holds(facts: Facts) -> BoolArray:
        return is_less(getattr(facts, have), getattr(facts, least))

    return Rule(
        f"placement.{code}", Topic.WORK, severity, holds, message, action, party, source, (have, least), DUCTLESS
    )


_INDOOR: Final = (
    _distance(
        "head_above",
        "head_above_m",
        ("There is too little free above the indoor unit for its air.", "Hang it lower.", "whoever hangs it"),
        MAKERS,
    ),
    _distance(
        "head_beside",
        "head_beside_m",
        (
            "There is too little free beside the indoor unit for its air and its screws.",
            "Shift it along the wall, away from the corner or the closet.",
            "whoever hangs it",
        ),
        MAKERS,
    ),
    Rule(
        "placement.blows_at_bed",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.blows_at_bed,
        "The indoor unit blows at a bed or a seat where someone stays for hours.",
        "Turn it along the room: hang it on another wall, or move the bed.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "placement.studs_missed",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.studs_missed,
        "The plate of the indoor unit reaches no stud.",
        "Shift it until screws reach two studs, or screw a board across the studs and the plate to that.",
        "whoever hangs it",
        alternatives=DUCTLESS,
    ),
    Rule(
        "placement.no_access_inside",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.access_lacks,
        "Nobody can stand before the indoor unit to wash its filters.",
        "Hang it where a stepladder has room, or clear the place below it for good.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "placement.drain_falls_too_little",
        Topic.WORK,
        Severity.CAUTION,
        drain_falls_too_little,
        "The drain wants more fall than there is: water would stand in it and come back.",
        "Hang the indoor unit higher, lead the drain out nearer by, or take a pump.",
        "whoever fits the drain",
        DRAIN_CODE,
        ("drain_run_m", "drain_fall_m", "drain_drop_m", "drain_reach_m"),
        DUCTLESS,
    ),
    Rule(
        "placement.indoor_unseen",
        Topic.WORK,
        Severity.NOTE,
        indoor_is_unseen,
        "Not all is known yet of the place where the indoor unit would hang.",
        "Before you order look at: free space above and beside, where it blows, studs, room for a stepladder, "
        "fall of the drain.",
        "you",
        PRACTICE,
        alternatives=DUCTLESS,
    ),
)

_OUTDOOR: Final = (
    _distance(
        "setback",
        "boundary_m",
        (
            "The outdoor unit stands nearer to the boundary than is usually allowed.",
            "Ask the zoning office for the distance here; else choose another side of the house.",
            "you",
        ),
        LOCAL,
    ),
    _distance(
        "gas_meter",
        "gas_meter_m",
        (
            "The outdoor unit can make a spark, and a gas meter or regulator that may vent stands too near.",
            "Move the outdoor unit away from it; ask the gas company for the distance it wants.",
            "whoever sets the outdoor unit",
        ),
        "common practice, no source; the gas company decides",
        Severity.HOLD_POINT,
    ),
    _distance(
        "vents",
        "vents_m",
        (
            "A vent, flue or fresh air opening is near: the outdoor unit draws in lint or fumes, or upsets the flue.",
            "Move the outdoor unit along the wall, or have the vent led elsewhere by its trade.",
            "whoever sets the outdoor unit",
        ),
        LOCAL,
    ),
    _distance(
        "bedroom_window",
        "bedroom_window_m",
        (
            "A bedroom window is near enough that the outdoor unit may be heard at night.",
            "Move it round a corner, ask the neighbour first, and set it on isolators.",
            "you",
        ),
        LOCAL,
    ),
    _distance(
        "outdoor_front",
        "outdoor_front_m",
        (
            "There is too little free before the outdoor unit for its air and for whoever opens it.",
            "Turn it, move it out, or clear what stands there.",
            "whoever sets the outdoor unit",
        ),
        MAKERS,
    ),
    _distance(
        "outdoor_back",
        "outdoor_back_m",
        (
            "There is too little free behind the outdoor unit for its air.",
            "Set it further from the wall.",
            "whoever sets the outdoor unit",
        ),
        MAKERS,
    ),
    Rule(
        "placement.snow",
        Topic.WORK,
        Severity.CAUTION,
        snow_reaches_it,
        "Snow would reach the outdoor unit and stop its air, just when heat is wanted.",
        "Set it on a higher stand, or on a bracket under an eave where no snow slides down.",
        "whoever sets the outdoor unit",
        PRACTICE,
        ("snow_m", "snow_foot_m", "outdoor_height_m"),
        DUCTLESS,
    ),
    Rule(
        "placement.door",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.door_swings,
        "A door or gate swings against the outdoor unit, or it stands in a way out.",
        "Choose a place clear of doors, gates and walks; a way out must stay free.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "placement.outdoor_unseen",
        Topic.WORK,
        Severity.NOTE,
        outdoor_is_unseen,
        "Not all is known yet of the place where the outdoor unit would stand.",
        "Before you order look at: boundary, gas meter, vents, bedroom windows, free space before and behind, snow, "
        "doors, flood, salt.",
        "you",
        PRACTICE,
        alternatives=DUCTLESS,
    ),
)

PLACEMENT_RULES: Final = (*_INDOOR, *_OUTDOOR)
