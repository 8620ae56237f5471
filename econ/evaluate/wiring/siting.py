"""Where the units go and what the hole goes through, as the rules look at it."""

from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.equipment.sound import WALL_GAIN_DB, level_db
from econ.evaluate.wiring.installation_site import Inputs, line_reach_m
from econ.evaluate.wiring.reading import given
from econ.installation.drain import drain_fall_m, drain_reach_m
from econ.kernel.arrays import BoolArray, FloatArray

MEASURED: Final = (
    "head_above_m",
    "head_beside_m",
    "boundary_m",
    "gas_meter_m",
    "vents_m",
    "bedroom_window_m",
    "outdoor_front_m",
    "outdoor_back_m",
)
"""Lengths on the site that are held against the figure of the same name among `placement.*`."""


STUD_WALLS: Final = ("wood_frame", "brick_on_frame", NOT_KNOWN)
"""Walls whose plate wants studs; masonry holds it anywhere."""


def siting_numbers(inputs: Inputs) -> dict[str, FloatArray]:
    """Return lengths on the site and what is asked of them, shape (B,) each; NaN where nobody has measured."""
    values, n_row = inputs.values, inputs.n_row
    have = {name: given(values, f"site.{name}", n_row) for name in MEASURED}
    least = {f"{name.removesuffix('_m')}_least_m": inputs.number(f"placement.{name}") for name in MEASURED}
    return (
        have
        | least
        | _noise(inputs, have["boundary_m"])
        | _drain(inputs)
        | _snow(inputs)
        | _line(inputs)
        | _bit(inputs)
    )


def _noise(inputs: Inputs, boundary_m: FloatArray) -> dict[str, FloatArray]:
    """Return how loud the outdoor unit is at the boundary, with a wall behind it, and what is asked there."""
    near = given(inputs.values, "kit.outdoor_sound_db", inputs.n_row)
    return {
        "boundary_db": level_db(near, boundary_m) + WALL_GAIN_DB,
        "boundary_most_db": inputs.number("placement.boundary_db"),
    }


def _drain(inputs: Inputs) -> dict[str, FloatArray]:
    said = given(inputs.values, "site.drain_run_m", inputs.n_row)
    run = np.where(np.isnan(said), inputs.number("site.line_run_m"), said)
    drop, slope = given(inputs.values, "site.drain_drop_m", inputs.n_row), inputs.number("placement.drain_slope_frac")
    return {
        "drain_run_m": run,
        "drain_fall_m": drain_fall_m(run, slope),
        "drain_drop_m": drop,
        "drain_reach_m": drain_reach_m(drop, slope),
    }


def _snow(inputs: Inputs) -> dict[str, FloatArray]:
    snow = given(inputs.values, "site.snow_m", inputs.n_row)
    return {"snow_m": snow, "snow_foot_m": snow + inputs.number("placement.snow_clear_m")}


def _line(inputs: Inputs) -> dict[str, FloatArray]:
    """Return how far the lines reach, with the maker's extension where it is allowed, and what they lack."""
    reach = line_reach_m(inputs)
    return {"line_reach_m": reach, "line_short_m": np.maximum(inputs.number("site.line_run_m") - reach, 0.0)}


def _bit(inputs: Inputs) -> dict[str, FloatArray]:
    bit: FloatArray = inputs.number("drilling.bit_reach_m")
    return {"bit_reach_m": bit, "longest_reach_m": bit + inputs.number("drilling.extension_m")}


def siting_claims(inputs: Inputs) -> dict[str, BoolArray]:
    """Return what is said of the places of the units and the hole, and what has been refused, shape (B,) each."""
    asks = inputs.is_option
    has_studs = asks("site.wall", *STUD_WALLS)
    return {
        "blows_at_bed": asks("site.head_blows", "at_bed"),
        "studs_missed": has_studs & asks("site.head_studs", "missed"),
        "access_lacks": asks("site.head_access", "no"),
        "head_unknown": asks("site.head_blows", NOT_KNOWN)
        | asks("site.head_access", NOT_KNOWN)
        | (has_studs & asks("site.head_studs", NOT_KNOWN)),
        "door_swings": asks("site.door_swing", "yes"),
        "door_unknown": asks("site.door_swing", NOT_KNOWN),
        "hole_below": asks("site.hole", "below_grade"),
        "hole_unknown": asks("site.hole", NOT_KNOWN),
        "has_foam_stucco": asks("site.cladding", "foam_stucco"),
        "has_cement_shingles": asks("site.cladding", "cement_shingles"),
        "is_fire_wall": asks("site.fire_wall", "yes"),
        "fire_wall_unknown": asks("site.fire_wall", NOT_KNOWN),
        "is_poured": asks("site.wall", "poured_concrete"),
        "is_flooded": asks("site.flood", "yes"),
        "in_salt_air": asks("site.salt_air", "yes"),
        "weathering_unknown": asks("site.flood", NOT_KNOWN) | asks("site.salt_air", NOT_KNOWN),
        "heritage_asked": ~asks("site.heritage", "no"),
        "permit_refused": asks("site.permit", "refused"),
        "association_refused": asks("site.association", "refused"),
        "refrigerant_unknown": asks("kit.refrigerant", NOT_KNOWN),
    }
