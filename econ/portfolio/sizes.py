"""Sizes of every row's units at once: what a case of one room would be given, by the same rules."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from econ.case.choices import code
from econ.case.quantity import Amount
from econ.equipment.curve import variable_speed_split
from econ.equipment.line_set import with_lines
from econ.equipment.sizing import chosen_index, cooling_capacity_w, heating_capacity_w
from econ.evaluate.draft import Draft
from econ.evaluate.machines import technologies, window_row, window_sizes
from econ.evaluate.prepare import CHOSEN, lines_kept_frac, ratings_of, sized, window_output_w
from econ.evaluate.structure import Structure
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.spread import Spread

_LINES = ("site.line_run_m", "site.line_rise_m")


@dataclass(frozen=True, slots=True, eq=False)
class SizeLines:
    """What waits for a size: lines of the sheet by size, and the machines they stand for.

    Attributes
    ----------
    kit, window : tuple of str
        Sizes that may be taken, ascending; one where the user chose.
    kit_line, window_line : tuple of dict of str to float
        Lines by path, one dict a size. [any]
    structure : Structure
        With the machines of the first sizes.
    kept_none, kept_some : tuple of tuple of str
        Kinds of machines by size of the window units, where nothing cools now and where something does.
    """

    kit: tuple[str, ...]
    window: tuple[str, ...]
    kit_line: tuple[Mapping[str, float], ...]
    window_line: tuple[Mapping[str, float], ...]
    structure: Structure
    kept_none: tuple[tuple[str, str, str, str], ...]
    kept_some: tuple[tuple[str, str, str, str], ...]


def size_lines(draft: Draft) -> SizeLines:
    """Return the lines of every size.

    Parameters
    ----------
    draft : Draft
        Any template's: none of these lines hangs on what differs between them.
    """
    kits, windows = _kit_sizes(draft), _window_sizes(draft)
    first = (windows[0], 1.0)
    made = [sized(draft, size, first) for size in kits]
    structure = made[0][0]
    others = [sized(draft, kits[0], (size, 1.0))[1] for size in windows]
    by_window = [technologies(draft, window_row(draft, size)) for size in windows]
    return SizeLines(
        kit=kits,
        window=windows,
        kit_line=tuple(_new_lines(draft, sheet.path, sheet.likely, ("kit.", "hired.")) for _, sheet in made),
        window_line=tuple(_new_lines(draft, sheet.path, sheet.likely, ("window.",)) for sheet in others),
        structure=structure,
        kept_none=tuple(("none", *kinds[1:]) for kinds in by_window),
        kept_some=tuple(("single_speed_window", *kinds[1:]) for kinds in by_window),
    )


def _kit_sizes(draft: Draft) -> tuple[str, ...]:
    asked = draft.taken("kit.size")
    return (
        (asked,) if asked != CHOSEN else tuple(map(str, draft.tables.ductless_sizes("kit", draft.taken("kit.grade"))))
    )


def _window_sizes(draft: Draft) -> tuple[str, ...]:
    asked = draft.taken("window.size")
    return (asked,) if asked != CHOSEN else tuple(str(size) for size in window_sizes(draft))


def _new_lines(draft: Draft, path: tuple[str, ...], likely: FloatArray, prefixes: tuple[str, ...]) -> dict[str, float]:
    """Return the lines a size adds; a count of window units is found row by row."""
    return {
        each: float(number)
        for each, number in zip(path, likely, strict=True)
        if each.startswith(prefixes) and each not in draft.entries and each != "window.count"
    }


def changed(draft: Draft) -> dict[str, float]:
    """Return the figures that the user changed by hand: they hold for every row. [any]"""
    return {path: amount.likely for path, amount in draft.case.figures.changed or () if not amount.is_unknown}


def kit_index(
    draft: Draft, lines: SizeLines, cooling_w: FloatArray, heating_w: FloatArray, line_m: FloatArray
) -> IntArray:
    """Return the position of each row's kit among the sizes: the smallest that meets the design load.

    Parameters
    ----------
    draft : Draft
        Any template's.
    lines : SizeLines
        The sizes.
    cooling_w, heating_w : ndarray, shape (B,)
        Design loads. [W]
    line_m : ndarray, shape (B, 2)
        Run and rise of the lines. [m]

    Returns
    -------
    index : ndarray, shape (B,)
        Positions. [dimensionless]
    """
    index = np.zeros(len(cooling_w), dtype=np.int64)
    if len(lines.kit) == 1:
        return index
    heats = draft.taken("use.heat") != "no"
    only = cooling_w == 0.0 if draft.taken("use.present_heat_stays") != "no" else np.ones(len(cooling_w), dtype=bool)
    run_rise, of_row = np.unique(line_m, axis=0, return_inverse=True)
    for at, pair in enumerate(run_rise):
        cool_w, heat_w = _given_w(draft, lines, pair)
        for counts in (False, True):
            rows = (of_row.ravel() == at) & ((heats & only) == counts)
            found = chosen_index(
                cooling_w[rows] / draft.likely("kit.count"), heating_w[rows] / draft.likely("kit.count"),
                cool_w, heat_w, heats=counts,
            )  # fmt: skip
            index[rows] = found
    return index


def _given_w(draft: Draft, lines: SizeLines, run_rise: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return what each size gives on the hot and the cold design day behind lines of one length. [W] [W]"""
    at = replace(draft, entries=dict(draft.entries))
    for path, number in zip(_LINES, run_rise, strict=True):
        at.put(path, Spread(number, number, number, "by floor"), "m")
    sizes, grade = tuple(int(size) for size in lines.kit), draft.taken("kit.grade")
    machine = with_lines(variable_speed_split(ratings_of(at, sizes, grade)), lines_kept_frac(at, sizes, grade))
    warming = draft.likely("place.warming_offset_k")
    hot, cold = (np.array([draft.likely(f"place.{side}_design_c") + warming]) for side in ("cool", "heat"))
    return cooling_capacity_w(machine, hot)[:, 0], heating_capacity_w(machine, cold)[:, 0]


def window_index(draft: Draft, lines: SizeLines, cooling_w: FloatArray) -> tuple[IntArray, FloatArray]:
    """Return the position of each row's window units among the sizes, and how many: the fewest of the smallest size.

    Parameters
    ----------
    draft : Draft
        Any template's.
    lines : SizeLines
        The sizes.
    cooling_w : ndarray, shape (B,)
        Design loads. [W]
    """
    output_w = np.array([window_output_w(draft, int(size)) for size in lines.window])
    said = draft.said("window.count")
    if isinstance(said, Amount) and not said.is_unknown:
        count = np.full(len(cooling_w), said.likely)
    else:
        count = np.maximum(1.0, np.ceil(cooling_w / output_w[-1]))
    meets = output_w[None, :] * count[:, None] >= cooling_w[:, None]
    index: IntArray = np.where(meets.any(axis=1), np.argmax(meets, axis=1), len(lines.window) - 1)
    return index, count


def has_none(cooling: FloatArray) -> np.ndarray:
    """Return where nothing cools now, shape (B,)."""
    found: np.ndarray = np.isin(cooling, [code("now.cooling", option) for option in ("none", "not_known")])
    return found
