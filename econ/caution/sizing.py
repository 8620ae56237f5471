"""Size and time: too small, too large, short of heat, too late."""

from collections.abc import Callable
from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import HIRED, PRACTICE, SELF, WINDOW, Rule
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.caution import Severity, Topic

OVERSIZE_RATIO: Final = 1.5
"""Capacity over design load above which a unit mostly runs at its minimum or cycles. Assumption."""

Read = Callable[[Facts], FloatArray]


def is_too_small(given_w: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that cooling given on the design day is below the load.

    Parameters
    ----------
    given_w : callable
        Reads what the unit gives, cooling on the design day. [W]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        small: BoolArray = given_w(facts) < facts.design_cool_w
        return small

    return holds


def is_oversized(given_w: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that cooling given on the design day is far above the load.

    Parameters
    ----------
    given_w : callable
        Reads what the unit gives, cooling on the design day. [W]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        large: BoolArray = given_w(facts) > OVERSIZE_RATIO * facts.design_cool_w
        return large

    return holds


def is_short_of_heat(given_w: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that heat is asked for and heating given on the design day is below the load.

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
        short: BoolArray = facts.heat_asked & (given_w(facts) < facts.design_heat_w)
        return short

    return holds


def is_late(late_d: Read) -> Callable[[Facts], BoolArray]:
    """Return the rule that service comes after the hot season.

    Parameters
    ----------
    late_d : callable
        Reads by how many days service misses the end of the season. [day]

    Returns
    -------
    holds : callable
        Facts in, a bool a row out.
    """

    def holds(facts: Facts) -> BoolArray:
        late: BoolArray = late_d(facts) > 0.0
        return late

    return holds


UNIT_WORDS: Final = {"window": "the window unit", "kit": "the kit", "hired": "the contractor's unit"}
_LATE_WORDS: Final = UNIT_WORDS | {"self": UNIT_WORDS["kit"]}


def _too_small(route: str, given: str, short: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_too_small",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        is_too_small(read),
        f"On the hottest design day {UNIT_WORDS[route]} gives less than the rooms need.",
        "Take the next size, shade the sun side, or accept some warm hours.",
        "you",
        PRACTICE,
        (given, "design_cool_w", short),
        alternatives,
    )


def _oversized(route: str, given: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_oversized",
        Topic.EQUIPMENT,
        Severity.NOTE,
        is_oversized(read),
        f"{UNIT_WORDS[route].capitalize()} is much larger than the rooms need: it will start and stop often "
        "and dry the air less.",
        "Look at the next size down.",
        "you",
        f"{PRACTICE}; the limit is an assumption",
        (given, "design_cool_w"),
        alternatives,
    )


def _short_of_heat(route: str, given: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"sizing.{route}_short_of_heat",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        is_short_of_heat(read),
        f"On the coldest design day {UNIT_WORDS[route]} gives less heat than the rooms need.",
        "Keep the heat that is there now, or look at the cold-climate class.",
        "you",
        PRACTICE,
        (given, "design_heat_w"),
        alternatives,
    )


def _late(route: str, late: str, read: Read, alternatives: tuple[str, ...]) -> Rule:
    return Rule(
        f"schedule.{route}_misses_summer",
        Topic.WORK,
        Severity.CAUTION,
        is_late(read),
        f"Half of the coming hot season is over before {_LATE_WORDS[route]} cools.",
        "Ask for an earlier date, keep or borrow something for this summer, or plan it for the off season.",
        "you",
        PRACTICE,
        (late,),
        alternatives,
    )


SIZING_RULES: Final = (
    _too_small("window", "window_cool_w", "window_short_h", lambda facts: facts.window_cool_w, WINDOW),
    _too_small("kit", "kit_cool_w", "kit_short_h", lambda facts: facts.kit_cool_w, SELF),
    _too_small("hired", "hired_cool_w", "hired_short_h", lambda facts: facts.hired_cool_w, HIRED),
    _oversized("window", "window_cool_w", lambda facts: facts.window_cool_w, WINDOW),
    _oversized("kit", "kit_cool_w", lambda facts: facts.kit_cool_w, SELF),
    _oversized("hired", "hired_cool_w", lambda facts: facts.hired_cool_w, HIRED),
    _short_of_heat("kit", "kit_heat_w", lambda facts: facts.kit_heat_w, SELF),
    _short_of_heat("hired", "hired_heat_w", lambda facts: facts.hired_heat_w, HIRED),
    _late("window", "window_late_d", lambda facts: facts.window_late_d, WINDOW),
    _late("self", "self_late_d", lambda facts: facts.self_late_d, SELF),
    _late("hired", "hired_late_d", lambda facts: facts.hired_late_d, HIRED),
)
