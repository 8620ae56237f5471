"""Facts for the rules: the case's values with what the evaluation found."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.caution import registry
from econ.caution.facts import Facts
from econ.evaluate.served import own_units, served_rooms
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.circuit import circuit_claims, circuit_numbers
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.siting import siting_claims, siting_numbers
from econ.evaluate.wiring.window_unit import all_facts, outlet_limit_a, outlet_v
from econ.installation.anchoring import YIELDING_BASES, top_pull_n
from econ.installation.delivery import KitReturn
from econ.installation.gate import is_on_kit
from econ.kernel.alternative import HIRED, SELF, WINDOW, Alternative
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.caution import Caution
from econ.tables.tasks import installation_tables

_CONVERTED = ("lower_level", "garage", "sunroom", "attic")
_SIDES = ("north", "east", "south", "west")


@dataclass(frozen=True, slots=True, eq=False)
class CautionResults:
    """What rules need of an evaluation; A is the axis of ALTERNATIVES.

    Attributes
    ----------
    design_cool_w, design_heat_w : ndarray, shape (B,)
        Total cooling and heating of the served rooms on the design days. [W]
    cool_given_w, heat_given_w : ndarray, shape (A, B)
        What each alternative gives on those days; NaN raises nothing. [W]
    least_given_w : ndarray, shape (A, B)
        Least cooling each gives without switching off, at the mean outdoor temperature of cooled hours. [W]
    mean_cool_w : ndarray, shape (B,)
        Mean total cooling over the hours that want any; 0 where none does. [W]
    below_least_h : ndarray, shape (A,)
        Hours a year below the least output, likely row. [hour]
    heat_design_c : ndarray, shape (B,)
        Outdoor temperature of the cold design night. [degC]
    cool_short_h, heat_short_h : ndarray, shape (A, B)
        Hours a year in which cooling and heating fall short. [hour] [hour]
    in_service_d : ndarray, shape (A, B)
        Days from the decision to service; NaN where nothing new comes. [day]
    season_end_d : ndarray, shape () or (B,)
        Days from the decision to the end of this year's hot season; NaN where it has none. [day]
    kit_return : KitReturn
        Until when the kit may go back, and when its dry-fit is done.
    moisture_share_frac : ndarray, shape (B,)
        Latent part of the yearly cooling need; NaN where there is none. [dimensionless]
    """

    design_cool_w: FloatArray
    design_heat_w: FloatArray
    cool_given_w: FloatArray
    heat_given_w: FloatArray
    least_given_w: FloatArray
    mean_cool_w: FloatArray
    below_least_h: FloatArray
    heat_design_c: FloatArray
    cool_short_h: FloatArray
    heat_short_h: FloatArray
    in_service_d: FloatArray
    season_end_d: FloatArray
    kit_return: KitReturn
    moisture_share_frac: FloatArray


def found(
    structure: Structure, values: Mapping[str, FloatArray], results: CautionResults, n_row: int
) -> tuple[Caution, ...]:
    """Return what the rules find in a case and its results, hold points first.

    Parameters
    ----------
    structure : Structure
        Rooms; whether there is a quote.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    results : CautionResults
        What the evaluation found.
    n_row : int
        B.

    Returns
    -------
    cautions : tuple of Caution
        Each rule raised in at least one row, once.
    """
    return registry.found(facts(structure, values, results, n_row))


def facts(structure: Structure, values: Mapping[str, FloatArray], results: CautionResults, n_row: int) -> Facts:
    """Return the facts of a case and its results.

    Parameters
    ----------
    structure : Structure
        Rooms; whether there is a quote.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    results : CautionResults
        What the evaluation found.
    n_row : int
        B.

    Returns
    -------
    facts : Facts
        Numbers without a path are NaN.
    """
    inputs = Inputs(values, n_row)
    at = all_facts(structure, inputs)
    read: dict[str, Any] = {
        **_room_facts(structure, inputs),
        **_site_claims(structure, inputs, at),
        **_window_claims(structure, inputs, at),
        **_house_claims(structure, inputs),
        **_numbers(inputs),
        **siting_numbers(inputs),
        **siting_claims(inputs),
        **circuit_numbers(inputs),
        **_outlet_numbers(inputs),
        **circuit_claims(inputs),
        **_result_facts(results, n_row),
    }
    return Facts(**read)


def _number(inputs: Inputs, path: str) -> FloatArray:
    return inputs.number(path) if path in inputs.values else np.full(inputs.n_row, np.nan)


def _numbers(inputs: Inputs) -> dict[str, FloatArray]:
    paths = {
        "wall_thickness_m": "site.wall_thickness_m",
        "bite_m": "costs.core_bite_m",
        "line_run_m": "site.line_run_m",
        "line_box_m": "kit.line_set_m",
        "line_limit_m": "kit.line_max_m",
        "line_rise_m": "site.line_rise_m",
        "rise_limit_m": "kit.rise_max_m",
        "charge_kg": "kit.charge_kg",
        "floor_area_m2": "rooms[0].floor_area_m2",
        "outdoor_kg": "kit.outdoor_kg",
        "indoor_kg": "kit.indoor_kg",
        "window_kg": "window.weight_kg",
        "outdoor_height_m": "site.outdoor_height_m",
        "anchor_ultimate_n": "site.anchor_ultimate_n",
        "extension_m": "kit.extension_m",
        "kit_cutout_c": "kit.cutout_c",
        "hired_cutout_c": "hired.cutout_c" if "hired.cutout_c" in inputs.values else "kit.cutout_c",
        "window_cutout_c": "window.cutout_c",
        "pan_heater_w": "kit.pan_heater_w",
    }
    return {field: _number(inputs, path) for field, path in paths.items()} | {
        "bracket_pull_n": _pull_n(inputs),
        "lfl_kg_per_m3": _flammability_kg_per_m3(inputs),
    }


def _flammability_kg_per_m3(inputs: Inputs) -> FloatArray:
    """Return the lower flammability limit of the kit's refrigerant, shape (B,): 0 for one that does not burn."""
    by_class, mild = _number(inputs, "kit.lfl_kg_per_m3"), inputs.number("kit.r454b_lfl_kg_per_m3")
    burns: FloatArray = np.where(inputs.is_option("kit.refrigerant", "r454b"), mild, by_class)
    return np.where(inputs.is_option("kit.refrigerant", "r410a"), 0.0, burns)


def _outlet_numbers(inputs: Inputs) -> dict[str, FloatArray]:
    """Return the current of one window unit and the most its outlet may give; infinite where there is none."""
    has_none = inputs.is_option("window.outlet", "none")
    limit = np.where(has_none, np.inf, outlet_limit_a(inputs))
    return {"window_a": inputs.number("window.current_a"), "window_limit_a": limit}


def _pull_n(inputs: Inputs) -> FloatArray:
    """Return the pull on the top anchors of the outdoor bracket, shape (B,)."""
    reach_m, height_m = inputs.number("site.bracket_reach_m"), inputs.number("site.bracket_height_m")
    return top_pull_n(_number(inputs, "kit.outdoor_kg"), reach_m, height_m)


def _room_facts(structure: Structure, inputs: Inputs) -> dict[str, FloatArray | BoolArray]:
    rooms = [f"rooms[{index}]" for index in range(structure.n_rooms)]
    has_earth = [
        np.logical_or.reduce([inputs.is_option(f"{room}.{side}", "earth") for side in _SIDES]) for room in rooms
    ]
    depth = [
        np.where(earth, inputs.number(f"{room}.earth_depth_m"), 0.0)
        for room, earth in zip(rooms, has_earth, strict=True)
    ]
    is_served = served_rooms(structure, inputs.values, inputs.n_row)
    return {
        "built_yr": np.min([inputs.number(f"{room}.year_built") for room in rooms], axis=0),
        "earth_depth_m": np.max(depth, axis=0),
        "is_lower_level": np.logical_or.reduce([inputs.is_option(f"{room}.kind", "lower_level") for room in rooms]),
        "room_unpermitted": _unpermitted(rooms, inputs),
        "own_rooms_count": own_units(structure, inputs.values, inputs.n_row).sum(axis=0).astype(np.float64),
        "window_units_count": inputs.number("window.count"),
        "kit_heads_count": inputs.number("kit.count") * inputs.number("kit.heads"),
        "hired_heads_count": inputs.number("hired.count") * inputs.number("hired.heads"),
        "closed_rooms_count": np.sum(~is_served, axis=0).astype(np.float64),
    }


def _unpermitted(rooms: list[str], inputs: Inputs) -> BoolArray:
    """Return where some room is of a kind that is often converted, and its permit is not known to be there."""
    kinds = [inputs.is_option(f"{room}.kind", *_CONVERTED) for room in rooms]
    lacks: BoolArray = np.logical_or.reduce(kinds) & ~inputs.is_option("site.room_permitted", "yes")
    return lacks


def _site_claims(structure: Structure, inputs: Inputs, at: dict[str, BoolArray]) -> dict[str, BoolArray]:
    asks = inputs.is_option
    lacks_circuit = structure.has_quote and inputs.option("quote.electrical") != "yes"
    return {
        "is_masonry": at["masonry_wall"] & ~asks("site.wall", "brick_on_frame"),
        "is_veneer": asks("site.wall", "brick_on_frame"),
        "is_frame": at["frame_wall"],
        "permit_needed": at["permit_needed"],
        "permit_unknown": asks("site.permit", NOT_KNOWN),
        "electrical_licensed": ~asks("site.owner_may_electrical", "yes"),
        "is_let": ~asks("site.occupancy", "owner_lives_here", "tenant"),
        "is_tenant": asks("site.occupancy", "tenant"),
        "consent_needed": at["association_asked"],
        "extension_allowed": asks("kit.extension_allowed", "yes"),
        "is_old_stock": asks("kit.refrigerant", "r410a"),
        "is_flare": ~asks("kit.connection", "single_use_quick", "reusable_quick"),
        "circuit_shared": asks("site.circuit", "shared"),
        "circuit_unknown": asks("site.circuit", NOT_KNOWN),
        "panel_lacks": at["new_circuit"] & asks("site.panel_spaces", "no"),
        "panel_unknown": at["new_circuit"] & asks("site.panel_spaces", NOT_KNOWN),
        "has_helper": asks("work.helper", "free", "paid"),
        "has_handyman": asks("work.helper", "handyman") & ("helper" in dict(structure.parties).values()),
        "finish_unasked": asks("work.contractor_finishes", NOT_KNOWN) & _asks_contractor(structure, inputs),
        "contractor_on_kit": _asks_contractor(structure, inputs),
        "pipes_exposed": asks("use.present_heat_stays", "no") & ~asks("site.pipes", "no") & ~asks("now.heat", "none"),
        "on_pad": at["on_pad"],
        "on_bracket": at["on_bracket"],
        "on_roof": at["on_roof"],
        "drain_pump": at["drain_pump"],
        "anchor_unknown": asks("site.anchor_base", NOT_KNOWN),
        "anchor_refused": asks("site.anchor_base", *YIELDING_BASES),
        "has_old_units": at["has_old_units"],
        "heat_asked": ~asks("use.heat", "no"),
        "has_backup": ~asks("now.heat", "none") & ~asks("use.present_heat_stays", "no"),
        "dry_asked": asks("use.dry", "yes"),
        "quote_lacks_circuit": np.full(inputs.n_row, lacks_circuit),
    }


def _asks_contractor(structure: Structure, inputs: Inputs) -> BoolArray:
    """Return where a contractor is to work on the kit: by the split, or as nobody else may connect its lines."""
    table = installation_tables().tasks[Alternative.SELF_INSTALL]
    given_out = {task for task, party in structure.parties if party == "contractor"}
    is_given = any(key in given_out for key, is_so in zip(table.key, is_on_kit(table), strict=True) if is_so)
    return is_given | ~inputs.is_option("kit.connection", "single_use_quick", "reusable_quick")


def _window_claims(structure: Structure, inputs: Inputs, at: dict[str, BoolArray]) -> dict[str, BoolArray]:
    """Return what is claimed of units for window and wall; the way out has no part in one that sits in the wall."""
    asks = inputs.is_option
    heats = np.full(inputs.n_row, structure.technologies[WINDOW] == "reverse_cycle_window")
    unsure = asks("window.escape", NOT_KNOWN) | asks("window.opening", NOT_KNOWN)
    return {
        "outlet_shared": asks("window.outlet", "shared"),
        "outlet_unknown": asks("window.outlet", NOT_KNOWN),
        "outlet_other_volts": (inputs.number("window.supply_v") != outlet_v(inputs)) & ~asks("window.outlet", "none"),
        "is_escape": asks("window.escape", "yes") & ~at["through_wall"],
        "escape_unknown": unsure & ~asks("window.escape", "yes") & ~at["through_wall"],
        "is_casement": asks("window.opening", "casement") & asks("window.kind", "window"),
        "in_window": at["in_window"],
        "over_walkway": at["in_window"] & ~asks("window.over_walkway", "no"),
        "through_wall": at["through_wall"],
        "is_portable": at["portable"],
        "now_portable": asks("now.cooling", "portable"),
        "cut_structural": at["cut_structural"],
        "window_heats": heats,
        "heat_not_made": asks("window.cycle", "reverse_cycle") & ~heats,
    }


def _house_claims(structure: Structure, inputs: Inputs) -> dict[str, BoolArray]:
    """Return what the house's own system does for the room, and which measures are chosen."""
    asks, everywhere = inputs.is_option, np.ones(inputs.n_row, dtype=np.bool_)
    chosen = {
        "in_attic": "attic_insulation",
        "seals_leaks": "air_sealing",
        "shades_outside": "outside_shade",
        "films_glass": "window_film",
        "hangs_fan": "fan",
    }
    return {
        "house_poorly": asks("now.house_system", "poorly"),
        "house_well": asks("now.house_system", "well"),
        "house_unknown": asks("now.house_system", NOT_KNOWN),
        "is_kept_closed": asks("now.house_system", "poorly", "well") & asks("use.present_heat_stays", "no"),
        "burns_fuel": ~asks("now.heat", "none", "electric"),
    } | {fact: everywhere & (key in structure.measures) for fact, key in chosen.items()}


def _result_facts(results: CautionResults, n_row: int) -> dict[str, FloatArray]:
    late = results.in_service_d - results.season_end_d
    read = {
        "moisture_share_frac": results.moisture_share_frac,
        "design_cool_w": results.design_cool_w,
        "design_heat_w": results.design_heat_w,
        "heat_design_c": results.heat_design_c,
        "mean_cool_w": results.mean_cool_w,
        "window_least_w": results.least_given_w[WINDOW],
        "kit_least_w": results.least_given_w[SELF],
        "hired_least_w": results.least_given_w[HIRED],
        "window_cycling_h": results.below_least_h[WINDOW],
        "kit_cycling_h": results.below_least_h[SELF],
        "hired_cycling_h": results.below_least_h[HIRED],
        "window_heat_w": results.heat_given_w[WINDOW],
        "window_cold_h": results.heat_short_h[WINDOW],
        "kit_cold_h": results.heat_short_h[SELF],
        "hired_cold_h": results.heat_short_h[HIRED],
        "window_cool_w": results.cool_given_w[WINDOW],
        "kit_cool_w": results.cool_given_w[SELF],
        "hired_cool_w": results.cool_given_w[HIRED],
        "kit_heat_w": results.heat_given_w[SELF],
        "hired_heat_w": results.heat_given_w[HIRED],
        "window_short_h": results.cool_short_h[WINDOW],
        "kit_short_h": results.cool_short_h[SELF],
        "hired_short_h": results.cool_short_h[HIRED],
        "return_by_d": results.kit_return.return_by_d,
        "dry_fit_d": results.kit_return.dry_fit_d,
        "window_late_d": late[WINDOW],
        "self_late_d": late[SELF],
        "hired_late_d": late[HIRED],
    }
    return {field: np.broadcast_to(np.asarray(value, dtype=np.float64), (n_row,)) for field, value in read.items()}
