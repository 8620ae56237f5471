"""The room first: the house's own system, and what can hurt in an attic, on a ladder, or behind sealed leaks."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import PRACTICE, Rule
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

VERMICULITE_BEFORE_YR: Final = 1991
"""Loose pebbly fill in attics up to 1990 may hold asbestos. US EPA, guide on vermiculite insulation, from memory."""


def is_old_attic(facts: Facts) -> BoolArray:
    """Return where insulation goes onto an attic that may hold old fill and old wiring."""
    old: BoolArray = facts.in_attic & ~(facts.built_yr >= VERMICULITE_BEFORE_YR)
    return old


def seals_beside_a_flame(facts: Facts) -> BoolArray:
    """Return where leaks are sealed in a home that something burns in, or may."""
    beside: BoolArray = facts.seals_leaks & facts.burns_fuel
    return beside


MEASURE_RULES: Final = (
    Rule(
        "room.house_duct_first",
        Topic.ROOM,
        Severity.CAUTION,
        lambda facts: facts.house_poorly,
        "The house system serves this room already, but poorly: that may be all that is wrong.",
        "Before you buy, open the damper and register, change the filter, and see that air can get back to the return.",
        "you",
    ),
    Rule(
        "room.house_serves_well",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.house_well,
        "The house system serves this room well, by what you say.",
        "Write down when the room is too hot or damp all the same; a unit of its own may not be needed.",
        "you",
    ),
    Rule(
        "room.house_unknown",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.house_unknown,
        "It is not known whether the house system serves this room; the figures count on nothing from it.",
        "Look for a register or radiator and feel it while the system runs.",
        "you",
    ),
    Rule(
        "room.house_heat_goes",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.is_kept_closed,
        "The house system serves this room, and you say that its heat will not stay on: missing heat is priced as "
        "electric.",
        "Say that the present heat stays unless its register is closed for good; closing one unbalances the others.",
        "you",
    ),
    Rule(
        "measures.old_attic",
        Topic.ROOM,
        Severity.HOLD_POINT,
        is_old_attic,
        "An attic of this age may hold loose fill with asbestos, and old wiring that must not be covered.",
        "Look from the hatch, touch nothing. Grey pebbles: test them first. Wires on knobs: an electrician first.",
        "accredited tester or electrician",
        "US EPA, guide on vermiculite insulation (from memory)",
        ("built_yr",),
    ),
    Rule(
        "measures.attic_work",
        Topic.ROOM,
        Severity.CAUTION,
        lambda facts: facts.in_attic,
        "Attics are hot, and only the joists bear a person; insulation against lamps or flues can burn.",
        "Go up on a cool morning with a mask, step on joists only, keep vents, flues and recessed lamps clear.",
        "insulator",
    ),
    Rule(
        "measures.sealing_beside_flame",
        Topic.ROOM,
        Severity.CAUTION,
        seals_beside_a_flame,
        "A heater that burns fuel needs air: a sealed room can pull its fumes back in.",
        "Fit a carbon monoxide alarm first, and have the draught of each heater and flue tested after the sealing.",
        "heating technician",
        f"{PRACTICE}; local code asks for combustion air",
    ),
    Rule(
        "measures.sealing_fresh_air",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.seals_leaks,
        "A tighter room is slower to lose damp and stale air.",
        "Air it, or see that a fan brings fresh air; in rooms against the ground test for radon before and after.",
        "you",
    ),
    Rule(
        "measures.ladder",
        Topic.ROOM,
        Severity.CAUTION,
        lambda facts: facts.shades_outside,
        "Shade is fixed from outside, often from a ladder, and wind pulls at it.",
        "Stand the ladder on firm ground, held by somebody; above one storey hire it out. Keep escape windows free.",
        "you and a helper",
    ),
    Rule(
        "measures.film_on_glass",
        Topic.ROOM,
        Severity.NOTE,
        lambda facts: facts.films_glass,
        "Film makes glass hotter: some panes crack, and some makers then refuse their warranty.",
        "Ask the maker of the window whether film is allowed on this glass.",
        "you",
        "public guides on window film (read)",
    ),
    Rule(
        "measures.fan_fixing",
        Topic.ROOM,
        Severity.CAUTION,
        lambda facts: facts.hangs_fan,
        "A ceiling fan hangs from a box that must be made for fans, and is wired to the mains.",
        "Switch off at the panel and test dead; without a fan box or a switched supply there, an electrician does it.",
        "electrician where the local code says so",
    ),
)
