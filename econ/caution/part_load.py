"""How a unit runs through the year: cycling, cold, ice, long lines, and the dehumidifier that is counted in."""

from collections.abc import Callable
from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, HIRED, PRACTICE, SELF, WINDOW, Rule
from econ.caution.sizing import UNIT_WORDS
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.caution import Severity, Topic

FROST_C: Final = 0.0
"""degC; below this on the design night meltwater freezes again."""

Read = Callable[[Facts], FloatArray]


def is_cycling(least_w: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that a unit's least output is above the mean need of the hours of cooling.

    Parameters
    ----------
    least_w : callable
        Reads the least output. [W]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        cycling: BoolArray = (facts.mean_cool_w > 0.0) & (least_w(facts) > facts.mean_cool_w)
        return cycling

    return holds


def is_stopped_by_cold(cutout_c: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that heat is asked for and the cold design night is at or below the unit's cut-out.

    Parameters
    ----------
    cutout_c : callable
        Reads the cut-out. [degC]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        stopped: BoolArray = facts.heat_asked & (facts.heat_design_c <= cutout_c(facts))
        return stopped

    return holds


def needs_backup(given_w: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that a unit is short of heat on the design night and no other heat is there or stays.

    Parameters
    ----------
    given_w : callable
        Reads what the unit gives, heating on the design day. [W]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        needs: BoolArray = facts.heat_asked & (given_w(facts) < facts.design_heat_w) & ~facts.has_backup
        return needs

    return holds


def has_too_few(units_count: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that a way has fewer indoor units than rooms that are to get one.

    Parameters
    ----------
    units_count : callable
        Reads how many it has. [dimensionless]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        few: BoolArray = units_count(facts) < facts.own_rooms_count
        return few

    return holds


def lacks_pan_heater(facts: Facts) -> BoolArray:
    """Return whether heat is asked for in frost from a class without a base-pan heater."""
    lacks: BoolArray = facts.heat_asked & (facts.heat_design_c < FROST_C) & (facts.pan_heater_w <= 0.0)
    return lacks


def line_is_too_long(facts: Facts) -> BoolArray:
    """Return whether the line needed is longer than the class allows."""
    long: BoolArray = facts.line_run_m > facts.line_limit_m
    return long


def reverse_cycle_is_stopped(facts: Facts) -> BoolArray:
    """Return whether a window unit that heats does not on the cold design night."""
    stopped: BoolArray = facts.window_heats & is_stopped_by_cold(lambda at: at.window_cutout_c)(facts)
    return stopped


def _cycles(route: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_cycles",
        Topic.EQUIPMENT,
        Severity.NOTE,
        is_cycling(read),
        f"Even at its least output {UNIT_WORDS[route]} gives more than the rooms need on average: it starts and "
        "stops, and leaves the air damp.",
        "Take the next size down, or a class that runs lower; in a damp room count on a dehumidifier.",
        "you",
        PRACTICE,
        (f"{route}_least_w", "mean_cool_w", f"{route}_cycling_h"),
        alternatives,
    )


def _stopped(route: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_stops_in_cold",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        is_stopped_by_cold(read),
        "On the cold design night this unit does not heat at all: it is colder than its cut-out.",
        "Keep other heat for those hours, or take the cold-climate class.",
        "you",
        PRACTICE,
        ("heat_design_c", f"{route}_cutout_c", f"{route}_cold_h"),
        alternatives,
    )


def _needs_backup(route: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_needs_backup",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        needs_backup(read),
        "In the coldest weather this unit gives too little heat, and no other heat is there or stays.",
        "Electric resistance heat is counted in for those hours: plan a heater and its circuit, or a larger unit.",
        "you",
        PRACTICE,
        (f"{route}_heat_w", "design_heat_w", f"{route}_cold_h"),
        alternatives,
    )


def _too_few(route: str, units: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_too_few",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        has_too_few(read),
        "This way has fewer indoor units than rooms that are to get one; the figures count those rooms as served.",
        "Add a unit, or do not count on one for the room behind the door.",
        "you",
        PRACTICE,
        (units, "own_rooms_count"),
        alternatives,
    )


PART_LOAD_RULES: Final = (
    _too_few("window", "window_units_count", lambda facts: facts.window_units_count, WINDOW),
    _too_few("kit", "kit_heads_count", lambda facts: facts.kit_heads_count, SELF),
    _too_few("hired", "hired_heads_count", lambda facts: facts.hired_heads_count, HIRED),
    _cycles("window", lambda facts: facts.window_least_w, WINDOW),
    _cycles("kit", lambda facts: facts.kit_least_w, SELF),
    _cycles("hired", lambda facts: facts.hired_least_w, HIRED),
    _stopped("kit", lambda facts: facts.kit_cutout_c, SELF),
    _stopped("hired", lambda facts: facts.hired_cutout_c, HIRED),
    _needs_backup("kit", lambda facts: facts.kit_heat_w, SELF),
    _needs_backup("hired", lambda facts: facts.hired_heat_w, HIRED),
    Rule(
        "sizing.window_stops_in_cold",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        reverse_cycle_is_stopped,
        "On the cold design night this window unit does not heat at all: it is colder than its cut-out.",
        "Count on it in mild weather only and keep other heat for the rest.",
        "you",
        PRACTICE,
        ("heat_design_c", "window_cutout_c", "window_cold_h"),
        WINDOW,
    ),
    Rule(
        "sizing.base_pan",
        Topic.EQUIPMENT,
        Severity.NOTE,
        lacks_pan_heater,
        "This class has no base-pan heater: water from defrosting can freeze in the outdoor unit.",
        "Ask for one, or see what the manual says of frost; stand the unit above the snow with a free drain.",
        "you",
        PRACTICE,
        ("heat_design_c", "pan_heater_w"),
        DUCTLESS,
    ),
    Rule(
        "line_set.too_long",
        Topic.WORK,
        Severity.HOLD_POINT,
        line_is_too_long,
        "The lines needed are longer than this class allows.",
        "Move the outdoor unit nearer, or choose a class whose manual allows this length.",
        "you",
        PRACTICE,
        ("line_run_m", "line_limit_m"),
        DUCTLESS,
    ),
    Rule(
        "sizing.dehumidifier_counted",
        Topic.EQUIPMENT,
        Severity.NOTE,
        lambda facts: facts.dry_asked,
        "Moisture that a unit leaves is counted as taken out by a dehumidifier, as large as it takes; it warms the "
        "room, and that is counted too.",
        "Check that one of that size is there or can be bought; its price is not in these figures.",
        "you",
        PRACTICE,
        ("moisture_share_frac",),
    ),
)
