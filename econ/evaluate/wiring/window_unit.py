"""Window units as the case has them: kind, the spot they go to, what its outlet can feed, and their yearly hours."""

from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.equipment.circuit import BREAKER_SIZES_A, cord_limit_a
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.equipment import is_all_year
from econ.evaluate.wiring.installation_site import Inputs, site_facts
from econ.installation.window_fit import Spot, Unit
from econ.kernel.alternative import KEEP, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import BTU_PER_WH

LARGE_UNIT_W: Final = 3810.0
"""W, 13,000 Btu/h: between the largest unit that one person fits and the smallest for two. Assumption."""

SUPPLY_V: Final = {"120": 120.0, "240": 240.0}
"""V of the options of an outlet; not known counts as the first."""

KINDS: Final = {KEEP: "now.cooling", WINDOW: "window.kind"}
COUNTS: Final = {KEEP: "now.units_count", WINDOW: "window.count"}
"""Which choice says what kind of unit a way has, and how many."""

SIDES: Final = ("north", "east", "south", "west")


def window_facts(inputs: Inputs, at: dict[str, BoolArray]) -> dict[str, BoolArray]:
    """Return the named facts that tasks of window units depend on.

    Parameters
    ----------
    inputs : Inputs
        The case.
    at : dict of str to ndarray, shape (B,)
        Facts of the site.

    Returns
    -------
    facts : dict of str to ndarray, shape (B,)
        A wall that is masonry, or not known to carry nothing, counts as one that carries.
    """
    in_wall = inputs.is_option("window.kind", "through_wall")
    is_portable = inputs.is_option("window.kind", "portable")
    in_window = ~in_wall & ~is_portable
    is_large = inputs.number("window.capacity_w") > LARGE_UNIT_W
    carries = at["masonry_wall"] | ~inputs.is_option("window.wall_bears", "no")
    return {
        "outlet_needed": lacks_outlet(inputs),
        "in_window": in_window,
        "window_small": in_window & ~is_large,
        "window_large": in_window & is_large,
        "through_wall": in_wall,
        "portable": is_portable,
        "wall_consent": in_wall & at["consent_needed"],
        "wall_permit": in_wall & at["permit_needed"],
        "cut_light": in_wall & ~carries,
        "cut_structural": in_wall & carries,
    }


def all_facts(structure: Structure, inputs: Inputs) -> dict[str, BoolArray]:
    """Return the facts of the site and of window units, shape (B,) each."""
    at = site_facts(structure, inputs)
    return at | window_facts(inputs, at)


def wall_quantities(at: dict[str, BoolArray]) -> dict[str, FloatArray]:
    """Return how many framed openings and lintels each opening in the wall takes, shape (B,)."""
    lintel = at["masonry_wall"].astype(np.float64)
    return {"framed_count": 1.0 - lintel, "lintel_count": lintel}


def outlet_limit_a(inputs: Inputs, *, alone: bool = False) -> FloatArray:
    """Return the most that one unit may draw from its outlet.

    Parameters
    ----------
    inputs : Inputs
        The case.
    alone : bool
        As if nothing else hung on the circuit.

    Returns
    -------
    limit_a : ndarray, shape (B,)
        Of the breaker, or the next smaller standard size; shared unless it is known to be their own. [A]
    """
    given_a = np.maximum(inputs.number("window.outlet_breaker_a"), BREAKER_SIZES_A[0])
    standard_a = BREAKER_SIZES_A[np.searchsorted(BREAKER_SIZES_A, given_a, side="right") - 1]
    is_shared = ~inputs.is_option("window.outlet", "own_circuit") & (not alone)
    return cord_limit_a(standard_a, is_shared)


def outlet_v(inputs: Inputs) -> FloatArray:
    """Return the voltage of the outlet, shape (B,). [V]"""
    return np.where(inputs.is_option("window.outlet_volts", "240"), SUPPLY_V["240"], SUPPLY_V["120"])


def lacks_outlet(inputs: Inputs) -> BoolArray:
    """Return where no outlet is in reach, or the one there has another voltage or too small a circuit, shape (B,)."""
    is_over = inputs.number("window.current_a") > outlet_limit_a(inputs)
    is_other = inputs.number("window.supply_v") != outlet_v(inputs)
    lacks: BoolArray = inputs.is_option("window.outlet", "none") | is_over | is_other
    return lacks


def unit(inputs: Inputs) -> Unit:
    """Return the unit that would be bought, likely row."""

    def first(name: str) -> float:
        path = f"window.{name}"
        return float(inputs.number(path)[0]) if path in inputs.values else float("nan")

    return Unit(
        kind=inputs.option("window.kind"),
        size_kbtu=float(np.round(first("capacity_w") * BTU_PER_WH / 1000.0)),
        **{name: first(name) for name in Unit.__dataclass_fields__ if name not in ("kind", "size_kbtu")},
    )


def spot(inputs: Inputs, at: dict[str, BoolArray]) -> Spot:
    """Return where it would go, likely row.

    Parameters
    ----------
    inputs : Inputs
        The case.
    at : dict of str to ndarray, shape (B,)
        Facts of the site.
    """
    first = {name: float(inputs.number(f"window.{name}")[0]) for name in ("clear_width_m", "clear_height_m")}
    return Spot(
        opening=inputs.option("window.opening"),
        escape=inputs.option("window.escape"),
        width_m=first["clear_width_m"],
        height_m=first["clear_height_m"],
        is_width_measured=bool(inputs.number("window.width_said_frac")[0]),
        is_height_measured=bool(inputs.number("window.height_said_frac")[0]),
        unit_count=float(inputs.number("window.count")[0]),
        wall_thickness_m=float(inputs.number("site.wall_thickness_m")[0]),
        wall_height_m=float(free_wall_m(inputs)[0]),
        is_structural=bool(at["cut_structural"][0]),
        outlet=inputs.option("window.outlet"),
        breaker_a=float(inputs.number("window.outlet_breaker_a")[0]),
        outlet_v=float(outlet_v(inputs)[0]),
        limit_a=float(outlet_limit_a(inputs)[0]),
        own_limit_a=float(outlet_limit_a(inputs, alone=True)[0]),
    )


def free_wall_m(inputs: Inputs) -> FloatArray:
    """Return how high the first room's best outside wall stands free of earth, 0 where it has none, shape (B,). [m]"""
    height_m = inputs.number("rooms[0].ceiling_height_m")
    above_m = np.maximum(height_m - inputs.number("rooms[0].earth_depth_m"), 0.0)
    sides = [f"rooms[0].{side}" for side in SIDES]
    is_open = np.logical_or.reduce([inputs.is_option(side, "outside", NOT_KNOWN) for side in sides])
    is_earth = np.logical_or.reduce([inputs.is_option(side, "earth") for side in sides])
    free: FloatArray = np.where(is_open, height_m, np.where(is_earth, above_m, 0.0))
    return free


def season_h_per_yr(structure: Structure, inputs: Inputs, position: int) -> FloatArray:
    """Return own hours a year of taking units out, storing, fitting and sealing them again, or of covering a sleeve.

    Parameters
    ----------
    structure : Structure
        Whether units heat too, and so stay in.
    inputs : Inputs
        The case.
    position : int
        The way: units that are there now have their seasons as new ones do.

    Returns
    -------
    season_h_per_yr : ndarray, shape (B,)
        0 for units that stand in a window all year. [hour/year]
    """
    stays = is_all_year(structure, inputs.values, position, inputs.n_row)
    kind = KINDS[position]
    has_units = inputs.is_option(kind, *_UNITS[position])
    in_wall, is_portable = inputs.is_option(kind, "through_wall"), inputs.is_option(kind, "portable")
    in_window = inputs.cost("window_take_out_self_h") + inputs.cost("window_refit_self_h")
    each = np.where(is_portable, inputs.cost("portable_store_self_h"), in_window) * ~stays
    each = np.where(in_wall, inputs.cost("wall_cover_self_h"), each)
    hours: FloatArray = inputs.number(COUNTS[position]) * each * has_units
    return hours


_UNITS: Final = {
    KEEP: ("window_units", "portable", "through_wall"),
    WINDOW: ("window", "narrow", "through_wall", "portable"),
}
"""Options that stand for units, by way."""
