"""The refrigerant circuit: sealed, connected by whom, charge against the room, line set against the box."""

from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, PRACTICE, SELF, Rule, always
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.caution import Severity, Topic

WALL_MOUNT_M: Final = 1.8
"""m; height that the charge formula takes for a wall-mounted indoor unit. IEC 60335-2-40, from memory."""


def charge_limit_kg(lfl_kg_per_m3: FloatArray, mount_height_m: FloatArray, floor_area_m2: FloatArray) -> FloatArray:
    """Return the largest charge of a mildly flammable refrigerant for a room without ventilation.

    Parameters
    ----------
    lfl_kg_per_m3 : array_like, shape () or (B,)
        Lower flammability limit. [kg/m^3]
    mount_height_m : array_like, shape () or (B,)
        Height the standard takes: floor 0.6, window 1.0, wall 1.8, ceiling 2.2. [m]
    floor_area_m2 : array_like, shape () or (B,)
        Floor of the room. [m^2]

    Returns
    -------
    charge_limit_kg : ndarray, shape () or (B,)
        2.5 LFL^1.25 h0 sqrt(A). [kg]

    Notes
    -----
    A screen, not a certificate: the manual's own table decides.

    References
    ----------
    .. [1] IEC 60335-2-40, annex GG, from memory.

    Examples
    --------
    >>> round(float(charge_limit_kg(0.307, 1.8, 10.0)), 3)
    3.252
    """
    limit: FloatArray = 2.5 * np.power(lfl_kg_per_m3, 1.25) * mount_height_m * np.sqrt(floor_area_m2)
    return limit


def charge_exceeds_room(facts: Facts) -> BoolArray:
    """Return where the charge of a refrigerant that burns is above the limit for the room."""
    limit = charge_limit_kg(facts.lfl_kg_per_m3, np.array(WALL_MOUNT_M), facts.floor_area_m2)
    above: BoolArray = is_mildly_flammable(facts) & (facts.charge_kg > limit)
    return above


def is_mildly_flammable(facts: Facts) -> BoolArray:
    """Return where the refrigerant has a flammability limit."""
    flammable: BoolArray = facts.lfl_kg_per_m3 > 0.0
    return flammable


def line_is_short(facts: Facts) -> BoolArray:
    """Return where the line needed is longer than the line in the box, and than an extension where one is allowed."""
    short: BoolArray = facts.line_run_m > facts.line_reach_m
    return short


def line_is_extended(facts: Facts) -> BoolArray:
    """Return where one extension of the maker's makes the lines long enough."""
    extended: BoolArray = facts.extension_allowed & (facts.line_run_m > facts.line_box_m) & ~line_is_short(facts)
    return extended


def is_phased_down(facts: Facts) -> BoolArray:
    """Return where the kit holds a refrigerant that new sets no longer have."""
    return facts.is_old_stock


def rise_is_too_high(facts: Facts) -> BoolArray:
    """Return where the height difference is above the kit's limit."""
    high: BoolArray = np.abs(facts.line_rise_m) > facts.rise_limit_m
    return high


def needs_certified_person(facts: Facts) -> BoolArray:
    """Return where the lines are flared."""
    return facts.is_flare


REFRIGERANT_RULES: Final = (
    Rule(
        "refrigerant.stays_sealed",
        Topic.WORK,
        Severity.HOLD_POINT,
        always,
        "The refrigerant circuit is sealed and under pressure; opening it is for certified people.",
        "Join only couplings made for it, by hand first, then with two wrenches to the stated torque, valves in the "
        "maker's order.",
        "whoever connects the lines",
        "US EPA, Clean Air Act section 608 (from memory)",
        alternatives=SELF,
    ),
    Rule(
        "refrigerant.rules_on_charged_parts",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        always,
        "Federal rules say who may buy and join parts that already hold refrigerant; this program does not decide it.",
        "Before you order read the page of the US EPA, epa.gov/section608, and ask the maker in writing "
        "whether an owner may join this set.",
        "you",
        "US EPA, Clean Air Act section 608 (from memory)",
        alternatives=SELF,
    ),
    Rule(
        "refrigerant.flare_needs_certified",
        Topic.EQUIPMENT,
        Severity.HOLD_POINT,
        needs_certified_person,
        "This kit is flared: connecting it opens the circuit.",
        "Have a certified person flare, test, evacuate and release the charge.",
        "contractor",
        "US EPA, Clean Air Act section 608 (from memory)",
        alternatives=SELF,
    ),
    Rule(
        "refrigerant.leak_check",
        Topic.WORK,
        Severity.HOLD_POINT,
        always,
        "The compressor must not run before the valves are open and every joint has passed; soap finds gross leaks "
        "only.",
        "Check each joint with soap or a detector rated for this refrigerant, again after 24 hours and 30 days.",
        "whoever connects the lines",
        alternatives=SELF,
    ),
    Rule(
        "refrigerant.no_gauges",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: ~needs_certified_person(facts),
        "An owner does not test pre-charged lines with nitrogen and does not evacuate them: both open the circuit.",
        "Put no gauges on. If a joint leaks, close the valves, air the room and call a certified person.",
        "whoever connects the lines",
        "US EPA, Clean Air Act section 608 (from memory)",
        alternatives=SELF,
    ),
    Rule(
        "refrigerant.charge_above_room_limit",
        Topic.EQUIPMENT,
        Severity.HOLD_POINT,
        charge_exceeds_room,
        "The charge is more than the room's floor allows for a mildly flammable refrigerant.",
        "Choose a smaller unit or a larger room, or have the contractor show the manual's table.",
        "contractor",
        "IEC 60335-2-40, annex GG, from memory",
        ("charge_kg", "lfl_kg_per_m3", "floor_area_m2"),
        DUCTLESS,
    ),
    Rule(
        "refrigerant.mildly_flammable",
        Topic.WORK,
        Severity.NOTE,
        is_mildly_flammable,
        "The refrigerant burns if it collects near a flame.",
        "Keep flames and glowing heaters away while you work on the lines, and air the room.",
        "whoever connects the lines",
        PRACTICE,
        ("lfl_kg_per_m3",),
        DUCTLESS,
    ),
    Rule(
        "refrigerant.old_stock",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        is_phased_down,
        "This refrigerant is being phased down: sets that hold it are old stock.",
        "Ask when it was made and whether it may still be put in here, read what the US EPA says, and expect dear "
        "refrigerant for repairs.",
        "you",
        "US EPA, 40 CFR 84, technology transitions (from memory)",
        alternatives=SELF,
    ),
    Rule(
        "refrigerant.label_not_read",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        lambda facts: facts.refrigerant_unknown,
        "Nobody has read which refrigerant the kit holds; it may be old stock of one that is being phased down.",
        "Read it off the label or ask the seller before you order; counted here as the commonest of new kits.",
        "you",
        "US EPA, 40 CFR 84, technology transitions (from memory)",
        alternatives=SELF,
    ),
    Rule(
        "line_set.extension",
        Topic.WORK,
        Severity.NOTE,
        line_is_extended,
        "The line in the box is too short; one extension of the maker's own is priced in.",
        "Order it with the kit, and have the manual's page that allows it in hand.",
        "you",
        PRACTICE,
        ("line_run_m", "line_box_m", "extension_m"),
        SELF,
    ),
    Rule(
        "line_set.too_short",
        Topic.WORK,
        Severity.CAUTION,
        line_is_short,
        "The line needed is longer than the line in the box.",
        "Move the outdoor unit closer, order the maker's own extension if the manual allows one, or have a contractor "
        "make up the line; a coil of extra line is not a fix you may make.",
        "you",
        PRACTICE,
        ("line_run_m", "line_box_m", "line_reach_m", "line_short_m"),
        SELF,
    ),
    Rule(
        "line_set.rise_too_high",
        Topic.WORK,
        Severity.HOLD_POINT,
        rise_is_too_high,
        "The two units are further apart in height than this class allows.",
        "Check the manual's limit, or place the outdoor unit nearer in height.",
        "you",
        PRACTICE,
        ("line_rise_m", "rise_limit_m"),
        DUCTLESS,
    ),
    Rule(
        "line_set.no_kink",
        Topic.WORK,
        Severity.CAUTION,
        always,
        "A kinked line cannot be mended on the spot and loses the charge.",
        "Unroll it along its run, bend it over a form no tighter than the manual says, two people at a corner.",
        "whoever routes the lines",
        alternatives=SELF,
    ),
)
