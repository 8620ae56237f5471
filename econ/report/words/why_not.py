"""Why a rule that was checked is not raised: what it looked at, as it stands in this case."""

from math import isfinite, isinf
from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.caution.registry import RULES, looked_at
from econ.caution.rule import Rule
from econ.evaluate.result import Result
from econ.kernel.alternative import Alternative
from econ.kernel.caution import Caution
from econ.kernel.units import SUFFIX_UNITS, suffix_of
from econ.report.look import Look
from econ.report.numbers import Quantity, listed, plain_number
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.words.finding import length

WORDS: Final = {
    "electrical_licensed": "electrical work is for licensed people",
    "circuit_unknown": "what the circuit feeds is not known",
    "panel_lacks": "the panel lacks free spaces",
    "panel_unknown": "free spaces in the panel are not known",
    "outlet_shared": "the outlet shares its circuit",
    "outlet_unknown": "what shares the outlet's circuit is not known",
    "outlet_other_volts": "the outlet has another voltage",
    "quote_lacks_circuit": "a quote leaves out the circuit",
    "label_read": "the unit's label was read",
    "ground_fault_asked": "the code asks for ground-fault protection",
    "ground_fault_unknown": "which code holds is not known",
    "receptacle_lacks": "an outdoor outlet for service is missing",
    "is_flare": "the kit is flared",
    "is_old_stock": "the refrigerant is being phased down",
    "refrigerant_unknown": "the refrigerant is not known",
    "extension_allowed": "the maker allows an extension",
    "hole_below": "the hole comes out below the ground",
    "hole_unknown": "where the hole comes out is not known",
    "is_veneer": "brick veneer",
    "is_masonry": "masonry wall",
    "is_frame": "wood frame wall",
    "is_poured": "poured concrete wall",
    "has_cement_shingles": "cement shingles outside",
    "has_foam_stucco": "stucco on foam outside",
    "is_fire_wall": "the wall holds back fire",
    "fire_wall_unknown": "whether the wall holds back fire is not known",
    "room_unpermitted": "the room was converted without a permit that is known",
    "finish_unasked": "no contractor was asked to finish it",
    "contractor_on_kit": "a contractor works on a kit bought elsewhere",
    "consent_needed": "an association may have to agree",
    "heritage_asked": "a heritage rule may have a say",
    "is_let": "the home is let",
    "is_tenant": "a tenant asks",
    "on_bracket": "the outdoor unit hangs on a bracket",
    "on_pad": "the outdoor unit stands on the ground",
    "on_roof": "the outdoor unit stands on a roof",
    "anchor_unknown": "what the bolts reach is not known",
    "anchor_refused": "the bolts reach nothing that carries",
    "has_old_units": "old window units are there",
    "blows_at_bed": "it blows at a bed",
    "studs_missed": "the plate misses the studs",
    "access_lacks": "nobody can stand before the indoor unit",
    "drain_pump": "the drain needs a pump",
    "head_unknown": "something about the indoor unit's place is not known",
    "door_unknown": "whether a door swings there is not known",
    "door_swings": "a door swings against the outdoor unit",
    "weathering_unknown": "flood level and salt air are not known",
    "is_escape": "it is the escape window",
    "escape_unknown": "whether it is the escape window is not known",
    "is_casement": "the window swings",
    "in_window": "units stand in a window",
    "through_wall": "units sit in the wall",
    "is_portable": "units are portable",
    "now_portable": "a portable unit is there now",
    "over_walkway": "people may walk below",
    "cut_structural": "the wall to cut may carry something",
    "burns_fuel": "the heat there now burns fuel",
    "heat_not_made": "units of this kind that heat are not made",
    "house_poorly": "the house system serves the room poorly",
    "house_well": "the house system serves the room well",
    "house_unknown": "whether the house system serves the room is not known",
    "is_kept_closed": "the house system's heat is said to go",
    "in_attic": "attic insulation is chosen",
    "seals_leaks": "sealing is chosen",
    "shades_outside": "outside shade is chosen",
    "films_glass": "window film is chosen",
    "hangs_fan": "a ceiling fan is chosen",
    "heat_asked": "heat is asked for",
    "dry_asked": "drying is asked for",
    "has_backup": "other heat stays",
    "window_heats": "the window unit heats",
    "pipes_exposed": "water pipes need the heat there now",
    "mca_a": "least ampacity on the label",
    "mop_a": "largest breaker on the label",
    "lfl_kg_per_m3": "flammability limit of the refrigerant",
    "built_yr": "oldest room built",
    "snow_foot_m": "foot asked for above the snow",
    "window_cool_w": "cooling the window units give",
    "window_heat_w": "heating the window units give",
    "window_short_h": "hours a year too warm with the window units",
    "window_cold_h": "hours a year too cold with the window units",
    "window_least_w": "least cooling of the window units",
    "window_cycling_h": "hours a year below it, window units",
    "window_late_d": "days after summer's end, window units",
    "kit_cool_w": "cooling the kit gives",
    "kit_heat_w": "heating the kit gives",
    "kit_short_h": "hours a year too warm with the kit",
    "kit_cold_h": "hours a year too cold with the kit",
    "kit_least_w": "least cooling of the kit",
    "kit_cycling_h": "hours a year below it, kit",
    "self_late_d": "days after summer's end, kit",
    "hired_cool_w": "cooling the hired unit gives",
    "hired_heat_w": "heating the hired unit gives",
    "hired_short_h": "hours a year too warm with the hired unit",
    "hired_cold_h": "hours a year too cold with the hired unit",
    "hired_least_w": "least cooling of the hired unit",
    "hired_cycling_h": "hours a year below it, hired unit",
    "hired_late_d": "days after summer's end, hired unit",
    "design_cool_w": "cooling asked for on the design day",
    "design_heat_w": "heating asked for on the design night",
    "mean_cool_w": "usual cooling asked for",
    "dry_fit_d": "days to the end of the dry-fit",
    "return_by_d": "days in which it may go back",
    "line_box_m": "lines in the box",
    "line_run_m": "lines needed",
    "line_limit_m": "longest lines allowed",
    "line_reach_m": "lines reach",
    "line_short_m": "lines lack",
    "extension_m": "one extension adds",
    "outdoor_kg": "outdoor unit weighs",
    "indoor_kg": "indoor unit weighs",
    "window_kg": "window unit weighs",
    "has_helper": "a helper is there",
    "permit_needed": "a permit is needed",
    "permit_refused": "the permit was refused",
    "permit_unknown": "whether a permit is needed is not known",
    "association_refused": "the association has refused",
    "circuit_shared": "the circuit feeds other things",
    "in_salt_air": "salt in the air",
    "is_flooded": "it may be flooded",
}
"""What a fact is called, where its name alone does not say it."""

_QUANTITY: Final = {
    "degC": Quantity.TEMPERATURE,
    "W": Quantity.POWER,
    "m^2": Quantity.AREA,
    "kg": Quantity.WEIGHT,
}
_UNIT_WORDS: Final = {"hour": "h", "day": "days", "kg/m^3": "kg/m³"}
_PERCENT: Final = 100.0


def raised_text(result: Result) -> str:
    """Return how many rules were checked and how many are raised."""
    return f"All rules checked: {len(RULES)}, raised: {len(result.cautions)}"


def rest_table(result: Result, name: Alternative, look: Look) -> Columns:
    """Return the rules that are not raised for a way, each with why.

    Parameters
    ----------
    result : Result
        Of likely values, so that its facts are kept.
    name : Alternative
        The way; rules about others say so.
    look : Look
        Units.
    """
    raised = {caution.code for caution in result.cautions}
    rest = [rule for rule in RULES if rule.code not in raised]
    return {
        "It would say": [rule.message for rule in rest],
        "Why not": [why_not(rule, result.facts, name, look) for rule in rest],
    }


def other_ways_text(caution: Caution) -> str:
    """Return about which ways a finding is; empty where it is about all."""
    return listed([words for way, words in NAMES.items() if way.value in caution.alternatives])


def why_not(rule: Rule, facts: Facts | None, name: Alternative, look: Look) -> str:
    """Return why a rule is not raised: about which way it is, and what it looked at.

    Parameters
    ----------
    rule : Rule
        A rule that is not raised.
    facts : Facts or None
        The case and its results; None where they were not kept.
    name : Alternative
        The way on screen.
    look : Look
        Units.
    """
    about = ""
    if rule.alternatives and name.value not in rule.alternatives:
        ways = [words for way, words in NAMES.items() if way.value in rule.alternatives]
        about = f"About “{listed(ways, 'or')}”. "
    told = [fact_text(fact, facts, look) for fact in looked_at(rule, facts)] if facts is not None else []
    return f"{about}{'; '.join(told)}." if told else about.strip()


def fact_text(fact: str, facts: Facts, look: Look) -> str:
    """Return a fact as it stands: its words, and yes, no, its number or that it is not known."""
    value = getattr(facts, fact)[0]
    words = WORDS.get(fact) or _plain(fact)
    if isinstance(value, bool | np.bool_):
        return f"{words}: {'yes' if value else 'no'}"
    return f"{words}: {_number(fact, float(value), look)}"


def _plain(fact: str) -> str:
    """Return a fact's name as words, without the ending that is its unit."""
    ends = sorted((end for end in SUFFIX_UNITS if fact.endswith(end)), key=len)
    bare = fact.removesuffix(ends[-1]) if ends else fact
    named = bare.removeprefix("is_").removeprefix("has_").replace("_", " ")
    return f"{named.removesuffix(' least')}, asked for at least" if named.endswith(" least") else named


def _number(fact: str, value: float, look: Look) -> str:
    if not isfinite(value):
        return "none" if isinf(value) else "not known"
    unit = suffix_of(fact) or ""
    if unit == "m":
        return length(value, look)
    if unit in _QUANTITY:
        return look.measure(value, _QUANTITY[unit])
    return _other(fact, value, unit)


def _other(fact: str, value: float, unit: str) -> str:
    """Return a share as percent, a count or year as it is, anything else with its unit."""
    if fact.endswith("_frac"):
        return f"{plain_number(_PERCENT * value, 1)} %"
    if unit in ("dimensionless", "year") or not value:
        return f"{value:.0f}"
    return f"{plain_number(value, 3 if abs(value) < 1.0 else 0)} {_UNIT_WORDS.get(unit, unit)}"
