"""Whether a unit can go in: its room in the window or wall, the way out, and the outlet; with what would fit."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from econ.installation.standing import OPEN, RouteStanding, SiteAnswers, consent_standing, gravest
from econ.kernel.alternative import Standing
from econ.kernel.constants import INCH_M

NAMES: Final = {
    "window": "window unit",
    "narrow": "tall narrow unit",
    "through_wall": "unit through the wall",
    "portable": "portable unit",
}
"""What each kind is called within a sentence."""

CM_PER_M: Final = 100.0
"""cm per m."""

SAME_M: Final = 1.0e-4
"""m within which two lengths are one: less than anybody measures, more than turning inches into metres costs."""


@dataclass(frozen=True, slots=True)
class Unit:
    """One size of one kind of unit, and the room it needs.

    Attributes
    ----------
    kind : str
        ``window``, ``narrow``, ``through_wall`` or ``portable``.
    size_kbtu : float
        Nominal cooling, thousand Btu/h. [dimensionless]
    supply_v, current_a : float
        Supply; running current at full output. [V] [A]
    width_least_m, width_sure_m : float
        Clear width below which none of this size goes in; from which all do. [m] [m]
    height_least_m, height_sure_m : float
        Clear height, likewise. [m] [m]
    width_most_m : float
        Clear width that the panels in the box close; NaN where there are none. [m]
    depth_sure_m, depth_most_m : float
        Thickness of wall to which every sleeve serves; beyond which none does; NaN where no wall is cut. [m] [m]
    """

    kind: str
    size_kbtu: float
    supply_v: float
    current_a: float
    width_least_m: float
    width_sure_m: float
    height_least_m: float
    height_sure_m: float
    width_most_m: float = float("nan")
    depth_sure_m: float = float("nan")
    depth_most_m: float = float("nan")


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the unit would go.

    Attributes
    ----------
    opening, escape : str
        Kind of window; whether it is the way out in a fire.
    width_m, height_m : float
        Clear opening of the window. [m] [m]
    is_width_measured, is_height_measured : bool
        Somebody measured it; where not, it is that of a usual window.
    unit_count : float
        Units to find a place for. [dimensionless]
    wall_thickness_m, wall_height_m : float
        Of the outside wall: thickness; height of it that stands free of earth, 0 where none is outside. [m] [m]
    is_structural : bool
        The wall is masonry, or is not known to carry nothing.
    outlet : str
        ``own_circuit``, ``shared``, ``none`` or ``not_known``.
    breaker_a, outlet_v : float
        Rating of the outlet's circuit; its voltage. [A] [V]
    limit_a, own_limit_a : float
        Most that one unit may draw there as things are, and were nothing else on the circuit. [A] [A]
    """

    opening: str
    escape: str
    width_m: float
    height_m: float
    is_width_measured: bool
    is_height_measured: bool
    unit_count: float
    wall_thickness_m: float
    wall_height_m: float
    is_structural: bool
    outlet: str
    breaker_a: float
    outlet_v: float
    limit_a: float
    own_limit_a: float


_STRUCTURE: Final = (
    "An opening in masonry, or in a wall that may carry something, is for somebody who knows structures: a contractor "
    "looks at it and cuts it."
)


def window_units_standing(site: SiteAnswers, unit: Unit, spot: Spot, sold: Sequence[Unit]) -> RouteStanding:
    """Return how window units stand: whether one goes in, lets people out, and has an outlet that can feed it.

    Parameters
    ----------
    site : SiteAnswers
        Who must agree to a hole in the wall.
    unit : Unit
        What would be bought.
    spot : Spot
        Where it would go.
    sold : sequence of Unit
        What else there is to buy: named where the unit does not fit.

    Returns
    -------
    standing : RouteStanding
        ``with_help`` where a trade must do part first; ``unknown`` where nobody has measured the window and a usual
        one is too small.
    """
    room = room_standing(unit, spot)
    if room.standing == Standing.NOT_ALLOWED:
        room = RouteStanding(room.standing, (*room.reasons, would_fit(spot, sold)))
    consent = consent_standing(site, "an opening in the wall") if unit.kind == "through_wall" else OPEN
    return gravest(room, consent, outlet_standing(unit, spot, sold))


def room_standing(unit: Unit, spot: Spot) -> RouteStanding:
    """Return whether a unit has room where it would go and leaves the way out free.

    Parameters
    ----------
    unit : Unit
        What would be bought.
    spot : Spot
        Where it would go.

    Returns
    -------
    standing : RouteStanding
        Not allowed, unknown where it must be measured first, or open with what to look at.
    """
    if unit.kind == "through_wall":
        return _in_wall(unit, spot)
    if spot.opening == "none":
        return _refused(f"There is no window for a {NAMES[unit.kind]}.")
    if spot.escape == "yes":
        return _refused(f"The window is the way out in a fire: a {NAMES[unit.kind]} would block it.")
    if unit.kind == "window" and spot.opening == "casement":
        return _refused("An ordinary window unit does not fit a window that swings.")
    is_small = spot.opening == "small_high"
    width = _length("window's clear width", spot.width_m, unit, (unit.width_least_m, unit.width_sure_m))
    height = _length("window's clear height", spot.height_m, unit, (unit.height_least_m, unit.height_sure_m))
    return gravest(
        width if spot.is_width_measured or is_small else _to_measure(width, "width"),
        height if spot.is_height_measured or is_small else _to_measure(height, "height"),
        RouteStanding(Standing.OPEN, tuple(_asks(unit, spot))),
    )


def _to_measure(found: RouteStanding, side: str) -> RouteStanding:
    """Return a length that nobody has measured: too short as usual windows are, it is not known."""
    if found.standing != Standing.NOT_ALLOWED:
        return found
    first = f"Measure the window's clear {side}: nobody has, and that of a usual one is too small."
    return RouteStanding(Standing.UNKNOWN, (first, *found.reasons))


def _in_wall(unit: Unit, spot: Spot) -> RouteStanding:
    """Return whether the outside wall has room for a sleeve and is thin enough."""
    if spot.wall_height_m <= 0.0:
        return _refused("The room has no outside wall above the ground for a sleeve.")
    room = (unit.height_least_m, unit.height_sure_m)
    height = _length("outside wall's height above the ground", spot.wall_height_m, unit, room)
    wall, most = _inches(spot.wall_thickness_m), _inches(unit.depth_most_m)
    if spot.wall_thickness_m > unit.depth_most_m + SAME_M:
        thick = _refused(f"The wall is {wall} thick; no sleeve serves a wall thicker than {most}.")
    elif spot.wall_thickness_m > unit.depth_sure_m + SAME_M:
        thick = _close(f"The wall is {wall} thick: only deep sleeves serve beyond {_inches(unit.depth_sure_m)}.")
    else:
        thick = OPEN
    return gravest(height, thick, RouteStanding(Standing.WITH_HELP, (_STRUCTURE,)) if spot.is_structural else OPEN)


def _length(what: str, clear_m: float, unit: Unit, room_m: tuple[float, float]) -> RouteStanding:
    """Return whether a clear length is enough: never below the first of the two, always from the second."""
    least_m, sure_m = room_m
    named = f"a {NAMES[unit.kind]} of {_size(unit)}"
    if clear_m < least_m - SAME_M:
        return _refused(f"The {what} is {_inches(clear_m)}; {named} needs at least {_inches(least_m)}.")
    if clear_m < sure_m - SAME_M:
        return _close(f"The {what} is {_inches(clear_m)}; {named} may need up to {_inches(sure_m)}, by model.")
    return OPEN


def _asks(unit: Unit, spot: Spot) -> Iterable[str]:
    """Yield what to look at before buying a unit that goes in."""
    if spot.opening == "not_known":
        yield "Nobody has said what window it is: it counts as one ordinary sash window. Measure it before you buy."
    if spot.escape != "no" or spot.opening == "not_known":
        yield "Find out whether this is the room's escape window before you buy."
    if spot.unit_count > 1.0:
        yield f"There must be as many such windows as units, {spot.unit_count:.0f}, each with its outlet."
    if spot.opening == "casement":
        yield "The swinging sash must come out or open all the way, and a rigid panel must close the rest."
    if spot.opening == "sliding" and unit.kind == "window":
        yield "A rigid panel must close the window above the unit."
    if spot.width_m > unit.width_most_m + SAME_M:
        yield f"The panels in the box reach {_inches(unit.width_most_m)}: a rigid board must close the rest."
    if spot.opening == "small_high":
        reach = "the hose, about 5 ft long, reaches it" if unit.kind == "portable" else "two people can set it safely"
        yield f"The window is high up: make sure that {reach}."


def outlet_standing(unit: Unit, spot: Spot, sold: Sequence[Unit]) -> RouteStanding:
    """Return whether the outlet can feed a unit, and if not, what an electrician would make or which unit it can feed.

    Parameters
    ----------
    unit : Unit
        What would be bought.
    spot : Spot
        The outlet.
    sold : sequence of Unit
        What else there is to buy.

    Returns
    -------
    standing : RouteStanding
        Open, or ``with_help``.
    """
    if spot.outlet == "none":
        return RouteStanding(
            Standing.WITH_HELP, ("An electrician must make an outlet within reach of the cord first.",)
        )
    why = _outlet_lack(unit, spot)
    if not why:
        return OPEN
    able = [each for each in sold if each.kind == unit.kind and not _outlet_lack(each, spot)]
    largest = max(able, key=lambda each: each.size_kbtu, default=None)
    other = f" On this outlet one of up to {_size(largest)} may hang." if largest else ""
    return RouteStanding(Standing.WITH_HELP, (f"{why} An electrician must make an outlet for it first.{other}",))


def _outlet_lack(unit: Unit, spot: Spot) -> str:
    """Return what an outlet lacks for a unit; empty where it can feed it."""
    if unit.supply_v != spot.outlet_v:
        return f"The unit needs {unit.supply_v:.0f} V; the outlet has {spot.outlet_v:.0f} V."
    draws = f"The unit draws {unit.current_a:.1f} A"
    if unit.current_a <= spot.limit_a:
        return ""
    if unit.current_a > spot.own_limit_a:
        return f"{draws}; even alone it may take only {spot.own_limit_a:.1f} A of a {spot.breaker_a:.0f} A circuit."
    shared = "shared" if spot.outlet == "shared" else "shared for all that is known"
    return f"{draws}; of a {spot.breaker_a:.0f} A circuit that is {shared} it may take only {spot.limit_a:.1f} A."


def would_fit(spot: Spot, sold: Sequence[Unit]) -> str:
    """Return what would go in, largest of each kind, as a sentence; of some sizes only some models do.

    Parameters
    ----------
    spot : Spot
        Window and wall.
    sold : sequence of Unit
        What there is to buy.
    """
    largest: dict[str, Unit] = {}
    for unit in sorted(sold, key=lambda each: each.size_kbtu):
        if room_standing(unit, spot).standing in (Standing.OPEN, Standing.WITH_HELP):
            largest[unit.kind] = unit
    listed = [f"a {NAMES[kind]} of up to {_size(unit)}" for kind, unit in largest.items()]
    return f"What would fit: {'; '.join(listed)}." if listed else "Nothing of this sort fits here."


def _refused(reason: str) -> RouteStanding:
    return RouteStanding(Standing.NOT_ALLOWED, (reason,))


def _close(reason: str) -> RouteStanding:
    return RouteStanding(Standing.OPEN, (f"{reason} Read the unit's own sheet before you buy.",))


def _size(unit: Unit) -> str:
    return f"{unit.size_kbtu:.0f},000 Btu/h"


def _inches(length_m: float) -> str:
    """Return a length in inches, to the quarter, and centimetres.

    Examples
    --------
    >>> _inches(0.381)
    '15 in (38 cm)'
    """
    return f"{round(4.0 * length_m / INCH_M) / 4.0:g} in ({length_m * CM_PER_M:.0f} cm)"
