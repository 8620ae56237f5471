"""Values of a case as the installation domain asks for them: numbers, site facts and quantities by row."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN, code, option_at
from econ.evaluate.structure import Structure
from econ.installation.gate import GateFacts
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import FOOT_M

COVER_KIT_M: Final = 15.0 * FOOT_M
"""m of line that one cover kit hides: the kit's row in the cost table."""


BREAKER_EDITIONS: Final = ("2020", "2023")
"""Editions whose ground-fault protection of an outdoor unit is a breaker that protects people."""

SWITCH_EDITIONS: Final = ("2026", NOT_KNOWN)
"""Editions that know protection made for such units, as a switch by the unit; taken where nobody has asked."""

_CORE_WALLS: Final = ("poured_concrete", "solid_brick", "stone")
_HAMMER_WALLS: Final = ("brick_on_frame", "block", NOT_KNOWN)


@dataclass(frozen=True, slots=True, eq=False)
class Inputs:
    """Numbers by path, each spread over the decision rows.

    Attributes
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        Decision rows.
    """

    values: Mapping[str, FloatArray]
    n_row: int

    def number(self, path: str) -> FloatArray:
        """Return one number a row, shape (B,)."""
        return np.broadcast_to(np.asarray(self.values[path], dtype=np.float64), (self.n_row,))

    def cost(self, key: str) -> FloatArray:
        """Return one figure of the cost table a row, shape (B,)."""
        return self.number(f"costs.{key}")

    def is_option(self, path: str, *options: str) -> BoolArray:
        """Return whether a choice is one of some options, shape (B,)."""
        return np.isin(self.number(path), [code(path, option) for option in options])

    def option(self, path: str) -> str:
        """Return the option chosen in the likely row, which is the first."""
        return option_at(path, float(self.number(path)[0]))


def site_facts(structure: Structure, inputs: Inputs) -> dict[str, BoolArray]:
    """Return every named fact that tasks and tools depend on.

    Parameters
    ----------
    structure : Structure
        Whether there is a quote.
    inputs : Inputs
        The case.

    Returns
    -------
    facts : dict of str to ndarray, shape (B,)
        What is not known counts as the careful side: a permit is needed, the circuit is new, the drain needs a pump.
    """
    everywhere = np.ones(inputs.n_row, dtype=np.bool_)
    new_circuit = ~inputs.is_option("site.circuit", "own_circuit")
    is_bracket, is_roof = (inputs.is_option("site.outdoor_place", place) for place in ("wall_bracket", "roof"))
    by_gravity = inputs.is_option("site.drain", "gravity")
    return {
        "always": everywhere,
        "no_quote": everywhere & (not structure.has_quote),
        "consent_needed": _association_consent(inputs) | inputs.is_option("site.occupancy", "tenant"),
        "association_asked": _association_consent(inputs),
        "permit_needed": ~inputs.is_option("site.permit", "not_needed"),
        "on_pad": ~is_bracket & ~is_roof,
        "on_bracket": is_bracket,
        "on_roof": is_roof,
        "new_circuit": new_circuit,
        "ground_fault": ~inputs.is_option("site.code_edition", "2017_or_older"),
        "receptacle_lacks": ~inputs.is_option("site.receptacle", "within_25_ft"),
        "hard_wired": new_circuit | ~inputs.is_option("kit.volts", "120"),
        "drain_gravity": by_gravity,
        "drain_pump": ~by_gravity,
        "has_old_units": inputs.is_option("now.cooling", "window_units") & (inputs.number("now.units_count") > 0.0),
        **_wall_facts(inputs),
    }


def _wall_facts(inputs: Inputs) -> dict[str, BoolArray]:
    is_hammer, is_core = inputs.is_option("site.wall", *_HAMMER_WALLS), inputs.is_option("site.wall", *_CORE_WALLS)
    return {
        "frame_wall": inputs.is_option("site.wall", "wood_frame"),
        "hammer_wall": is_hammer,
        "core_wall": is_core,
        "masonry_wall": is_hammer | is_core,
        "deep_wall": (is_hammer | is_core)
        & (inputs.number("site.wall_thickness_m") > inputs.number("drilling.bit_reach_m")),
    }


def _association_consent(inputs: Inputs) -> BoolArray:
    return inputs.is_option("site.association", "consent_needed", NOT_KNOWN)


def line_reach_m(inputs: Inputs) -> FloatArray:
    """Return how far the lines in the box reach, with the maker's extension where it is allowed, shape (B,)."""
    extension = np.where(inputs.is_option("kit.extension_allowed", "yes"), inputs.number("kit.extension_m"), 0.0)
    reach: FloatArray = inputs.number("kit.line_set_m") + extension
    return reach


def quantities(inputs: Inputs) -> dict[str, FloatArray]:
    """Return every named quantity that hours and materials are multiplied by.

    Parameters
    ----------
    inputs : Inputs
        The case.

    Returns
    -------
    quantities : dict of str to ndarray, shape (B,)
        The empty name is one.
    """
    line_m = inputs.number("site.line_run_m")
    is_short = line_m > line_reach_m(inputs)
    is_extended = (line_m > inputs.number("kit.line_set_m")) & ~is_short
    is_breaker = inputs.is_option("site.code_edition", *BREAKER_EDITIONS).astype(np.float64)
    is_switch = inputs.is_option("site.code_edition", *SWITCH_EDITIONS).astype(np.float64)
    return {
        "": np.ones(inputs.n_row),
        "unit_count": inputs.number("window.count"),
        "old_count": inputs.number("now.units_count"),
        **{f"{name}_sets": inputs.number(f"{name}.count") for name in ("kit", "hired")},
        **{
            f"{name}_heads": inputs.number(f"{name}.count") * inputs.number(f"{name}.heads")
            for name in ("kit", "hired")
        },
        "line_m": line_m,
        "made_up_m": np.where(is_short, line_m, 0.0),
        "drain_m": line_m,
        "beyond_cover_m": np.maximum(line_m - COVER_KIT_M, 0.0),
        "extension_count": is_extended.astype(np.float64),
        "gfci_breaker_count": is_breaker,
        "plain_breaker_count": 1.0 - is_breaker,
        "ground_fault_switch_count": is_switch,
        "plain_switch_count": 1.0 - is_switch,
        "panel_m": inputs.number("site.panel_distance_m"),
    }


def waits(structure: Structure, inputs: Inputs) -> dict[str, FloatArray]:
    """Return the waits that are made of more than one value.

    Parameters
    ----------
    structure : Structure
        Whether there is a quote.
    inputs : Inputs
        The case.

    Returns
    -------
    wait_d : dict of str to ndarray, shape (B,)
        Consent of association and landlord together; the contractor's start as quoted, else the usual one. [day]
    """
    association = np.where(_association_consent(inputs), inputs.cost("association_d"), 0.0)
    landlord = np.where(inputs.is_option("site.occupancy", "tenant"), inputs.cost("landlord_consent_d"), 0.0)
    start = inputs.number("work.contractor_wait_d")
    if structure.has_quote and "quote.wait_d" in inputs.values:
        quoted = inputs.number("quote.wait_d")
        start = np.where(np.isnan(quoted), start, quoted)
    return {
        "": np.zeros(inputs.n_row),
        "site.consent_wait_d": np.maximum(association, landlord),
        "hired.start_wait_d": start,
    }


def gate_facts(inputs: Inputs) -> GateFacts:
    """Return what decides who may do a task.

    Parameters
    ----------
    inputs : Inputs
        The case.

    Returns
    -------
    facts : GateFacts
        Electrical work counts as barred where it is not known; mechanical work in a home that is let, too.
    """
    lives_here = inputs.is_option("site.occupancy", "owner_lives_here")
    mechanical_known = inputs.is_option("site.owner_may_mechanical", "yes")
    mechanical_unknown = inputs.is_option("site.owner_may_mechanical", NOT_KNOWN)
    return GateFacts(
        lives_here=lives_here,
        may_mechanical=mechanical_known | (mechanical_unknown & lives_here),
        may_electrical=inputs.is_option("site.owner_may_electrical", "yes"),
        is_quick=inputs.is_option("kit.connection", "single_use_quick", "reusable_quick"),
        has_helper=inputs.is_option("work.helper", "free", "paid", "handyman"),
        height_m=inputs.number("site.outdoor_height_m"),
        line_reaches=inputs.number("site.line_run_m") <= line_reach_m(inputs),
        has_space=inputs.is_option("site.circuit", "own_circuit") | inputs.is_option("site.panel_spaces", "yes"),
    )
