"""What of a result moves when inputs do: all inputs of a case in one batch, or one choice of a form at a time."""

from functools import cache

import numpy as np

from econ.case.choices import CHOICES, table_path
from econ.case.edit import with_value
from econ.case.schema import Case, case_from
from econ.evaluate.evaluate import evaluate
from econ.evaluate.figures import FIGURES
from econ.evaluate.known import known_names
from econ.evaluate.prepare import prepared
from econ.evaluate.result import Result
from econ.evaluate.sheet import Sheet, point
from econ.kernel.arrays import BoolArray, FloatArray
from econ.tables.loaders import load_tables
from tests.battery.figure_cases import EDITED
from tests.demo import TODAY, demo_case

TABLES = load_tables()
FAR = ("_buy_usd", "_rent_usd_per_d", "_resale_frac", "minimum_hire_d", "core_bit_life_m", "interim_least_d")
"""Endings of figures that count only where something is bought instead of hired, or wears out: they are moved far."""

LEAST = 1e-9
"""Share of a figure below which it has not moved: sums in another order."""


BARE = "a room and a town"


def edited(name: str) -> Case:
    """Return a case of the battery, or the barest one there is."""
    if name == BARE:
        return case_from({"place": {"station": "Tampa International AP, FL"}, "rooms": [{"kind": "sunroom"}]})
    demo, changes = EDITED[name]
    case = demo_case(demo)
    for section, fields in changes.items():
        for field, value in fields.items():
            case = with_value(case, f"{section}.{field}", value, known_names())
    return case


def moves(sheet: Sheet, at: int) -> list[float]:
    """Return other values of one input: every other option, the farther end of a range, or 3 % more."""
    path, likely = sheet.path[at], float(sheet.likely[at])
    if table_path(path) in CHOICES:
        tried = [float(option) for option in range(len(CHOICES[table_path(path)]))]
    elif sheet.low[at] < sheet.high[at]:
        low, high = float(sheet.low[at]), float(sheet.high[at])
        tried = [high if high - likely >= likely - low else low]
    else:
        tried = [1.03 * likely] if likely else [1.0]
    far = [0.05 * likely, 3.0 * likely] if path.endswith(FAR) else []
    return [value for value in (*tried, *far) if value != likely]


def is_moved(found: FloatArray) -> BoolArray:
    """Return in which rows a figure differs from the first, shape (A, B) to (B,)."""
    first = found[:, :1]
    is_same = (np.abs(found - first) <= LEAST * np.abs(first) + 1e-12) | (np.isnan(found) & np.isnan(first))
    moved: BoolArray = ~is_same.all(axis=0)
    return moved


def moved_by_input(case: Case) -> dict[str, set[str]]:
    """Return the keys of the figures that each input of a case moves, from one batch."""
    structure, sheet = prepared(case, TABLES, TODAY)
    tried = [(at, value) for at in range(len(sheet.path)) for value in moves(sheet, at)]
    values = point(sheet)
    for row, (at, value) in enumerate(tried, start=1):
        path = sheet.path[at]
        if np.ndim(values[path]) == 0:
            values[path] = np.full(len(tried) + 1, sheet.likely[at])
        values[path][row] = value
    result = evaluate(structure, values, TABLES)
    moved: dict[str, set[str]] = {path: set() for path in sheet.path}
    for figure in FIGURES:
        for row in np.flatnonzero(is_moved(figure.of(result))):
            moved[sheet.path[tried[row - 1][0]]].add(figure.key)
    return moved


@cache
def result_before(name: str) -> Result:
    """Return the result of a case of the battery as it stands."""
    return result_of(edited(name))


def result_of(case: Case) -> Result:
    """Return the result of a case at likely values."""
    structure, sheet = prepared(case, TABLES, TODAY)
    return evaluate(structure, point(sheet), TABLES)


def moved_by_choice(name: str, path: str, value: object) -> set[str]:
    """Return the keys of the figures that a choice moves which is taken before any number is worked out."""
    before, after = result_before(name), result_of(with_value(edited(name), path, value, known_names()))
    pairs = ((figure.key, np.concatenate([figure.of(each) for each in (before, after)], axis=1)) for figure in FIGURES)
    return {key for key, pair in pairs if is_moved(pair).any()}
