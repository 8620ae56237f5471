"""Machines of the four ways to go: from values by path to machine rows."""

from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from typing import Final

import numpy as np

from econ.case.choices import code
from econ.equipment.auxiliary import AuxiliaryRows
from econ.equipment.curve import variable_speed_split
from econ.equipment.line_set import LineSet, line_kept_frac, with_lines
from econ.equipment.machine import MachineRows, RatingRows, ReverseCycleRows, WindowRows
from econ.equipment.window_curve import no_machine, reverse_cycle_window, single_speed_window, variable_speed_window
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.reading import amount
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import UnknownChoiceError

Values = Mapping[str, FloatArray]

SETS: Final = {KEEP: "now", WINDOW: "window", SELF: "kit", HIRED: "hired"}
"""First part of the paths that describe each alternative's machine."""

VARIABLE_FROM: Final = 0.5
"""A speed code of at least this says that the speed varies (0 fixed, 1 varies)."""


def machines(structure: Structure, values: Values, n_row: int) -> tuple[MachineRows, ...]:
    """Return the machine of each alternative.

    Parameters
    ----------
    structure : Structure
        Names the technology of each alternative.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path; a hired set without its own ratings has those of the kit.
    n_row : int
        B.

    Returns
    -------
    machines : tuple of MachineRows
        In the order of ALTERNATIVES.

    Raises
    ------
    UnknownChoiceError
        If a technology is not among `BUILDERS`.
    """
    shared: MachineRows | None = None
    built = []
    for position, technology in enumerate(structure.technologies):
        if technology not in BUILDERS:
            raise UnknownChoiceError("technology", technology, tuple(BUILDERS))
        is_kit_again = position == HIRED and shared is not None and "hired.capacity_w" not in values
        machine = shared if is_kit_again and shared is not None else BUILDERS[technology](values, SETS[position], n_row)
        shared = machine if position == SELF else shared
        built.append(machine)
    return tuple(built)


def split_ratings(values: Values, prefix: str, n_row: int) -> RatingRows:
    """Return the ratings of a split heat pump.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    prefix : str
        ``kit`` or ``hired``.
    n_row : int
        B.

    Returns
    -------
    ratings : RatingRows
        Several sets alike are entered as one of their total size; they run alike, whichever room asks.
    """
    numbers = {field.name: amount(values, f"{prefix}.{field.name}", n_row) for field in fields(RatingRows)}
    count = amount(values, f"{prefix}.count", n_row)
    return RatingRows(**numbers | {name: numbers[name] * count for name in ("capacity_w", "heat_47f_w", "standby_w")})


def window_ratings(values: Values, prefix: str, n_row: int) -> WindowRows:
    """Return the ratings of window units, several alike as one of their total size.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    prefix : str
        ``now`` or ``window``.
    n_row : int
        B.

    Returns
    -------
    ratings : WindowRows
        Capacity and standby power times the number of units.
    """
    size, count = {"now": ("unit_capacity_w", "units_count")}.get(prefix, ("capacity_w", "count"))
    number = amount(values, f"{prefix}.{count}", n_row)
    least = f"{prefix}.min_ratio_frac"
    return WindowRows(
        capacity_w=amount(values, f"{prefix}.{size}", n_row) * number,
        ceer=amount(values, f"{prefix}.ceer", n_row),
        shr=amount(values, f"{prefix}.shr", n_row),
        standby_w=amount(values, f"{prefix}.standby_w", n_row) * number,
        cd_frac=amount(values, f"{prefix}.cd_frac", n_row),
        min_ratio_frac=amount(values, least, n_row) if least in values else np.ones(n_row),
    )


def is_all_year(structure: Structure, values: Values, position: int, n_row: int) -> BoolArray:
    """Return whether window units stay in all year: the user's choice, because they also heat, or sit in the wall.

    Parameters
    ----------
    structure : Structure
        Names the technology of each alternative.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    position : int
        The alternative.
    n_row : int
        B.

    Returns
    -------
    is_all_year : ndarray of bool, shape (B,)
        Not known counts as taken out for the winter.
    """
    heats = structure.technologies[position] == "reverse_cycle_window"
    stays: BoolArray = amount(values, "window.in_months", n_row) == code("window.in_months", "all_year")
    kind = {KEEP: "now.cooling"}.get(position, "window.kind")
    is_in: BoolArray = stays | heats | (amount(values, kind, n_row) == code(kind, "through_wall"))
    return is_in


def _none(_values: Values, _prefix: str, n_row: int) -> MachineRows:
    return no_machine(n_row)


def _single(values: Values, prefix: str, n_row: int) -> MachineRows:
    return single_speed_window(window_ratings(values, prefix, n_row))


def _variable(values: Values, prefix: str, n_row: int) -> MachineRows:
    return variable_speed_window(window_ratings(values, prefix, n_row))


def _reverse(values: Values, prefix: str, n_row: int) -> MachineRows:
    reverse = ReverseCycleRows(
        heat_cop=amount(values, f"{prefix}.heat_cop", n_row),
        heat_ratio_frac=amount(values, f"{prefix}.heat_ratio_frac", n_row),
        cutout_c=amount(values, f"{prefix}.cutout_c", n_row),
        is_variable=amount(values, f"{prefix}.is_variable_frac", n_row) >= VARIABLE_FROM,
    )
    return reverse_cycle_window(window_ratings(values, prefix, n_row), reverse)


def _split(values: Values, prefix: str, n_row: int) -> MachineRows:
    rated = variable_speed_split(split_ratings(values, prefix, n_row))
    behind = with_lines(rated, line_kept_frac(line_set(values, prefix, n_row)))
    return replace(behind, auxiliary=auxiliary(values, prefix, n_row))


def line_set(values: Values, prefix: str, n_row: int) -> LineSet:
    """Return the lines of a split heat pump: the site's way, the set's limits and losses.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    prefix : str
        ``kit`` or ``hired``.
    n_row : int
        B.

    Returns
    -------
    line : LineSet
        Both ductless ways share the site's way.
    """
    site = (amount(values, f"site.line_{name}_m", n_row) for name in ("run", "rise"))
    own = ("line_max_m", "rise_max_m", "run_loss_per_m", "rise_loss_per_m")
    return LineSet(*site, *(amount(values, f"{prefix}.{name}", n_row) for name in own))


def auxiliary(values: Values, prefix: str, n_row: int) -> AuxiliaryRows:
    """Return heaters and pump of a split heat pump.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    prefix : str
        ``kit`` or ``hired``.
    n_row : int
        B.

    Returns
    -------
    auxiliary : AuxiliaryRows
        The pump where the drain does not surely run downhill.
    """
    pan_w, pan_below_c, oil_w, oil_below_c = (
        amount(values, f"{prefix}.{name}", n_row)
        for name in ("pan_heater_w", "pan_heater_below_c", "crankcase_heater_w", "crankcase_heater_below_c")
    )
    is_pumped = amount(values, "site.drain", n_row) != code("site.drain", "gravity")
    count = amount(values, f"{prefix}.count", n_row)
    pump_w = amount(values, "site.drain_pump_w", n_row) * is_pumped * count * amount(values, f"{prefix}.heads", n_row)
    return AuxiliaryRows(pan_w * count, pan_below_c, oil_w * count, oil_below_c, pump_w)


BUILDERS: Final[Mapping[str, Callable[[Values, str, int], MachineRows]]] = {
    "none": _none,
    "single_speed_window": _single,
    "variable_speed_window": _variable,
    "reverse_cycle_window": _reverse,
    "variable_speed_split": _split,
}
"""How the machine of each technology is built."""
