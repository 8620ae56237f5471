"""What each row of a rooms file says in numbers: sizes, sides, glass, floors and what is there now, by path."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from econ.case.choices import CHOICES, code
from econ.case.rooms_cell import BLANK, GLASS_WORDS, SIDES
from econ.case.rooms_file import RoomTable
from econ.case.schema import Case
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.building import figure
from econ.portfolio.templates import Kind, Templates
from econ.tables.loaders import Tables

AREA: Final = "rooms[0].floor_area_m2"
LENGTH: Final = "rooms[0].length_m"
PAYS: Final = "prices.pays_bill"
_GROUND: Final = 1
"""The floor at the ground."""


def kinds_of(table: RoomTable) -> tuple[tuple[Kind, ...], IntArray]:
    """Return the kinds of rooms in a file, each once, and which one each row is of, shape (R,).

    Parameters
    ----------
    table : RoomTable
        Rows as read.
    """
    cooling, _ = cooling_now(table.text["cooling"])
    rows = zip(
        table.text["type"],
        (int(each) for each in table.option["wall"]),
        (int(each) for each in table.option["heat"]),
        (int(each) for each in cooling),
        strict=True,
    )
    kinds: dict[Kind, int] = {}
    at = [kinds.setdefault(Kind(*row), len(kinds)) for row in rows]
    return tuple(kinds), np.array(at, dtype=np.int64)


def cooling_now(said: Sequence[str]) -> tuple[IntArray, FloatArray]:
    """Return what cools each room now and how many there are, from such as "2 window_units"; BLANK and NaN for none.

    Parameters
    ----------
    said : sequence of str, length R
        As the file's reader writes them.
    """
    options = CHOICES["now.cooling"]
    known = {"": (BLANK, np.nan)}
    for text in set(said) - {""}:
        count, _, option = text.rpartition(" ")
        known[text] = (options.index(option), float(count) if count else np.nan)
    found = [known[text] for text in said]
    return np.array([each[0] for each in found], dtype=np.int64), np.array([each[1] for each in found])


def row_numbers(
    table: RoomTable, case: Case, tables: Tables, made: Templates, kind: IntArray
) -> tuple[dict[str, FloatArray], tuple[str, ...]]:
    """Return the numbers in which rows differ from their templates, by path, and what was taken for granted.

    Parameters
    ----------
    table : RoomTable
        Rows as read.
    case : Case
        Figures of the building.
    tables : Tables
        Usual figures.
    made : Templates
        Lines of each kind.
    kind : ndarray, shape (R,)
        Kind of each row.

    Returns
    -------
    numbers : dict of str to ndarray, shape (R,)
        NaN where the template's line holds. [any]
    notes : tuple of str
        In sentences.
    """
    _, count = cooling_now(table.text["cooling"])
    pays = table.option["pays"]
    numbers = {
        AREA: table.number["size"],
        LENGTH: _length_m(table, made, kind),
        "now.units_count": count,
        "now.unit_age_yr": table.number["age"],
        PAYS: np.where(pays == BLANK, np.nan, pays.astype(np.float64)),
    }
    outdoors = outdoor_sides(table, made, kind)
    glass, lost = glass_m2(table, case, tables, made, kind)
    notes = (f"{lost} rooms have windows and no outdoor side; their windows were left out.",) if lost else ()
    is_said = table.number["exposure"] != BLANK
    for at, side in enumerate(SIDES):
        path = f"rooms[0].{side}"
        inside, outside = code("rooms[].north", "heated_room"), code("rooms[].north", "outside")
        numbers[path] = np.where(is_said, np.where(outdoors[:, at], outside, inside), np.nan)
        numbers[f"rooms[0].window_{side}_m2"] = glass[:, at]
    return numbers | _height(table, case, tables, made, kind), notes


def outdoor_sides(table: RoomTable, made: Templates, kind: IntArray) -> BoolArray:
    """Return which sides of each room face outdoors, in the order of SIDES, shape (R, 4)."""
    said = table.number["exposure"].astype(np.int64)
    by_row = (np.maximum(said, 0)[:, None] >> np.arange(len(SIDES))) & 1 == 1
    outside = [code("rooms[].north", option) for option in ("outside", "not_known")]
    by_type = np.stack([np.isin(made.column(f"rooms[0].{side}"), outside) for side in SIDES], axis=1)[kind]
    found: BoolArray = np.where((said == BLANK)[:, None], by_type, by_row)
    return found


def glass_m2(table: RoomTable, case: Case, tables: Tables, made: Templates, kind: IntArray) -> tuple[FloatArray, int]:
    """Return the glass of each side, and in how many rooms glass was left out for want of an outdoor side.

    Parameters
    ----------
    table, case, tables, made, kind
        As in `row_numbers`.

    Returns
    -------
    glass_m2 : ndarray, shape (R, 4)
        A word counts on each outdoor side, an area is spread over them; NaN where the type's windows hold. [m^2]
    lost : int
        Rooms. [dimensionless]
    """
    outdoors = outdoor_sides(table, made, kind)
    n_side = outdoors.sum(axis=1)
    each_m2 = {"none": 0.0} | {word: figure(case, tables, f"glass_{word}_m2") for word in ("small", "medium", "large")}
    words, said = np.array(table.text["windows"], dtype=object), np.full(table.n_room, np.nan)
    for word in set(table.text["windows"]) - {""}:
        rows = words == word
        if word in each_m2:
            said[rows] = each_m2[word] * n_side[rows]
        elif word not in GLASS_WORDS:
            said[rows] = float(word)
    of_type = np.stack([made.column(f"rooms[0].window_{side}_m2") for side in SIDES], axis=1)[kind].sum(axis=1)
    moved = (table.number["exposure"] != BLANK) & np.isnan(said)
    whole = np.where(moved, of_type, said)
    lost = int(np.sum((n_side == 0) & (np.nan_to_num(whole) > 0.0)))
    spread: FloatArray = np.where(outdoors, (whole / np.maximum(n_side, 1))[:, None], 0.0)
    return np.where(np.isnan(whole)[:, None], np.nan, spread), lost


def _length_m(table: RoomTable, made: Templates, kind: IntArray) -> FloatArray:
    """Return the length of a room whose size the row gives: square, unless its type says a length."""
    is_said = np.array([draft.said(LENGTH) is not None for draft in made.drafts])
    length: FloatArray = np.where(is_said[kind], np.nan, np.sqrt(table.number["size"]))
    return length


def _height(table: RoomTable, case: Case, tables: Tables, made: Templates, kind: IntArray) -> dict[str, FloatArray]:
    """Return how high the outdoor unit hangs, and how far and high its lines go, by floor.

    On a bracket it hangs as high above the ground as its room; on a pad or roof the lines grow instead.
    """
    above_m = np.maximum(table.number["floor"] - _GROUND, 0.0) * figure(case, tables, "storey_m")
    on_bracket = (made.column("site.outdoor_place") == code("site.outdoor_place", "wall_bracket"))[kind]
    on_pad = ~on_bracket & (made.column("site.outdoor_place") != code("site.outdoor_place", "roof"))[kind]
    return {
        "site.outdoor_height_m": made.column("site.outdoor_height_m")[kind] + above_m * on_bracket,
        "site.line_run_m": made.column("site.line_run_m")[kind] + above_m * on_pad,
        "site.line_rise_m": made.column("site.line_rise_m")[kind] + above_m * on_pad,
    }
