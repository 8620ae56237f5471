"""Lines of the sheet that wait for a size: ratings, prices, weights and label values of each way's machine."""

import math
from collections.abc import Iterable
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.case.quantity import Amount
from econ.evaluate.draft import Draft
from econ.evaluate.usual import said_spread, unknown_spread
from econ.kernel.constants import BTU_PER_WH
from econ.kernel.errors import CaseError, Fault
from econ.kernel.spread import Spread
from econ.tables.lookup import Entry as TableRow

KIT_RATINGS: Final = (
    "capacity_w",
    "seer2",
    "eer2",
    "hspf2",
    "heat_47f_w",
    "heat_5f_ratio_frac",
    "cutout_c",
    "min_ratio_frac",
    "shr",
    "standby_w",
    "cd_frac",
)
"""What makes a ductless machine's curve; where the hired set is of the kit's class and size, both share these."""

KIT_EXTRAS: Final = (
    "pan_heater_w",
    "pan_heater_below_c",
    "crankcase_heater_w",
    "crankcase_heater_below_c",
    "run_loss_per_m",
    "rise_loss_per_m",
    "line_max_m",
    "rise_max_m",
)
"""What beside the curve decides a ductless machine's energy on its site."""

FIT: Final = (
    "width_least_m",
    "width_sure_m",
    "width_most_m",
    "height_least_m",
    "height_sure_m",
    "depth_sure_m",
    "depth_most_m",
)
"""What room a new unit for a window or a wall needs."""

COOLING_ONLY: Final = "cooling_only"
KIND_WORDS: Final = {
    "window": "window units",
    "narrow": "tall narrow units",
    "through_wall": "units for the wall",
    "portable": "portable units",
}

LABEL: Final = ("mca_a", "mop_a")
"""What a label asks of the circuit."""

UNITS: Final = {
    "_per_m": "1/m", "_w": "W", "_kg": "kg", "_c": "degC", "_m": "m", "_a": "A", "_usd": "USD", "seer2": "Btu/(W*hour)",
    "eer2": "Btu/(W*hour)", "hspf2": "Btu/(W*hour)", "ceer": "Btu/(W*hour)", "_kg_per_m3": "kg/m^3",
}  # fmt: skip
PER_KBTU_W: Final = 1000.0 / BTU_PER_WH
"""W in a nominal thousand Btu/h."""


def write_kit(draft: Draft, size: str) -> None:
    """Write the lines of the kit for its size and grade."""
    grade = draft.taken("kit.grade")
    row = draft.tables.ductless("kit", size, grade)
    write_row(draft, "kit", row, skipped=("connection",))
    write_heat_47f(draft, "kit", row)
    if "kit.volts" not in draft.entries:
        draft.put_choice("kit.volts", f"{row.number('volts'):.0f}", row.text("source"), "usual")
    write_label(draft, row)


def write_label(draft: Draft, row: TableRow) -> None:
    """Write what the kit's label asks of its circuit: as read, else as its class and voltage usually ask."""
    is_other = float(draft.taken("kit.volts")) == row.number("other_volts")
    said = (draft.said(f"kit.{name}") for name in LABEL)
    is_read = float(all(isinstance(value, Amount) and not value.is_unknown for value in said))
    for name in LABEL:
        usual = row.number(f"other_{name}" if is_other else name)
        write_amount_later(draft, f"kit.{name}", Spread(usual, usual, usual, "of its class, not of your label"))
    draft.put("kit.label_read_frac", Spread(is_read, is_read, is_read, "whether both were given"), "", "computed")


def write_counts(draft: Draft) -> None:
    """Write how many sets each ductless way has and how many indoor units a set: enough for rooms with their own."""
    rooms = float(indoor_rooms(draft))
    heads = draft.likely("kit.heads")
    usual = {"kit.count": math.ceil(rooms / heads), "hired.heads": heads}
    for path, number in usual.items():
        write_amount_later(draft, path, Spread(number, number, number, "enough for rooms with a unit of their own"))
    in_all = draft.likely("kit.count") * heads
    sets = math.ceil(in_all / draft.likely("hired.heads"))
    draft.put("hired.count", Spread(sets, sets, sets, "as many indoor units as the kits"), "", "computed")


def indoor_rooms(draft: Draft) -> int:
    """Return how many rooms get an indoor unit of their own, the first among them."""
    others = range(1, len(draft.case.rooms))
    return 1 + sum(draft.taken(f"rooms[{index}].own_unit") == "yes" for index in others)


def hired_size(draft: Draft, kit_size: str) -> str:
    """Return the size of the contractor's sets: as asked, else all of them together at least as large as the kits."""
    asked, grade = draft.taken("hired.size"), draft.taken("hired.grade")
    if asked != "same_as_kit":
        return asked
    wanted = float(kit_size) * draft.likely("kit.count") / draft.likely("hired.count")
    sizes = draft.tables.ductless_sizes("trade", draft.taken("kit.grade") if grade == "same_as_kit" else grade)
    return str(min((size for size in sizes if size >= wanted), default=sizes[-1]))


def write_hired(draft: Draft, kit_size: str) -> None:
    """Write the lines of the contractor's set; of the kit's class and size it shares the kit's ratings."""
    size, grade = draft.taken("hired.size"), draft.taken("hired.grade")
    has_same_heads = draft.likely("hired.heads") == draft.likely("kit.heads")
    is_alike = (size, grade) == ("same_as_kit", "same_as_kit") and has_same_heads
    size = hired_size(draft, kit_size)
    grade = draft.taken("kit.grade") if grade == "same_as_kit" else grade
    row = draft.tables.ductless("trade", size, grade)
    if not is_alike:
        write_row(draft, "hired", row, only=KIT_RATINGS + KIT_EXTRAS)
        write_heat_47f(draft, "hired", row)
    write_amount_later(draft, "hired.equipment_usd", row.spread("price_usd"))


def window_cycle(draft: Draft) -> str:
    """Return what new units do: as asked, or cooling alone where units of that kind are not made to heat."""
    asked = draft.taken("window.cycle")
    return asked if draft.tables.window_sizes(cycle=asked, kind=draft.taken("window.kind")) else COOLING_ONLY


def window_sizes(draft: Draft) -> tuple[int, ...]:
    """Return the sizes that new units of the kind and cycle are sold in, ascending. [kBtu/hour]"""
    return draft.tables.window_sizes(cycle=window_cycle(draft), kind=draft.taken("window.kind"))


def window_row(draft: Draft, size: str) -> TableRow:
    """Return new units of one size, of the kind and cycle asked for.

    Raises
    ------
    CaseError
        If units of that kind are not sold in the size.
    """
    sizes, kind = window_sizes(draft), draft.taken("window.kind")
    if int(size) not in sizes:
        listed = ", ".join(str(each) for each in sizes)
        problem = f"is not a size that {KIND_WORDS[kind]} come in"
        raise CaseError([Fault("window.size", problem, repr(size), f"Write one of {listed}, or choose.")])
    return draft.tables.window(size, cycle=window_cycle(draft), kind=kind)


def write_window(draft: Draft, size: str, count: float) -> None:
    """Write the lines of new window units of one size."""
    row, kind = window_row(draft, size), draft.taken("window.kind")
    write_row(draft, "window", row)
    room = draft.tables.window_fit[f"{kind}_{size}"]
    for name in FIT:
        number = room.number(name)
        if not np.isnan(number):
            draft.put(f"window.{name}", Spread(number, number, number, room.text("source")), "m")
    for side in ("width", "height"):
        said = draft.said(f"window.clear_{side}_m")
        is_said = float(isinstance(said, Amount) and not said.is_unknown)
        draft.put(f"window.{side}_said_frac", Spread(is_said, is_said, is_said, "whether it was given"), "", "computed")
    volts = row.number("volts")
    draft.put("window.supply_v", Spread(volts, volts, volts, row.text("source")), "V")
    if "window.count" not in draft.entries:
        draft.put("window.count", Spread(count, count, count, "fewest units that meet the need"), "", "computed")
    is_variable = float(row.text("speed") == "variable")
    draft.put("window.is_variable_frac", Spread(is_variable, is_variable, is_variable, row.text("source")), "")


def write_now(draft: Draft) -> None:
    """Write the ratings of what cools the room now: old stock of the nearest size, or a portable unit.

    Its life has a line of its own where new units are of a kind that lives longer or shorter.
    """
    if draft.taken("now.cooling") == "portable":
        row = draft.tables.portable()
    else:
        wanted = draft.likely("now.unit_capacity_w") / PER_KBTU_W
        sizes = draft.tables.window_sizes(vintage="old_stock")
        row = draft.tables.window(min(sizes, key=lambda size: abs(size - wanted)), vintage="old_stock")
    write_row(draft, "now", row, only=("ceer", "shr", "standby_w", "cd_frac"))
    is_portable = draft.taken("now.cooling") == "portable"
    if is_portable != (draft.taken("window.kind") == "portable"):
        own = draft.tables.lives["portable_unit" if is_portable else "window_unit"].spread("life_yr")
        draft.put("now.unit_life_yr", own, "year")


def write_row(
    draft: Draft, prefix: str, row: TableRow, *, only: Iterable[str] = (), skipped: Iterable[str] = ()
) -> None:
    """Write every range and number of a table's row under a prefix; what the user set is kept."""
    wanted, left_out = set(only), {*skipped, "size_kbtu_per_h", "volts", "other_volts", "heat_47f_ratio_frac"}
    left_out |= {"mca_a", "mop_a", "other_mca_a", "other_mop_a"}
    spreads = dict(row.spreads)
    for name, number in row.numbers.items():
        if "." not in name and not np.isnan(number):
            spreads[name] = Spread(number, number, number, row.text("source"))
    for name, spread in spreads.items():
        if name not in left_out and (not wanted or name in wanted):
            write_amount_later(draft, f"{prefix}.{name}", spread)


def write_heat_47f(draft: Draft, prefix: str, row: TableRow) -> None:
    """Write the rated heating capacity at 47 degF from its ratio to the cooling capacity."""
    ratio, capacity = row.spread("heat_47f_ratio_frac"), draft.likely(f"{prefix}.capacity_w")
    spread = Spread(ratio.low * capacity, ratio.likely * capacity, ratio.high * capacity, ratio.source)
    draft.put(f"{prefix}.heat_47f_w", spread, "W")


def write_amount_later(draft: Draft, path: str, usual: Spread) -> None:
    """Write one line now that its usual value is known, unless the user gave a value."""
    if path in draft.entries:
        return
    info = draft.fields.get(path)
    said = draft.said(path) if info else None
    if info is None or said is None:
        draft.put(path, usual, info.unit if info else unit_of(path))
    elif said.is_unknown:  # type: ignore[union-attr]
        draft.put(path, unknown_spread(usual, draft.tables.inputs[path], info), info.unit, "not_known")
    else:
        draft.put(path, said_spread(said, draft.tables.inputs[path], info), info.unit, "yours")  # type: ignore[arg-type]


def unit_of(path: str) -> str:
    """Return the unit that a machine's line ends in, or nothing."""
    fitting = [ending for ending in UNITS if path.endswith(ending)]
    return UNITS[max(fitting, key=len)] if fitting else ""


def technologies(draft: Draft, window_row: TableRow) -> tuple[str, str, str, str]:
    """Return the kind of machine of each alternative, in the order of ALTERNATIVES."""
    kept = "none" if draft.taken("now.cooling") in ("none", NOT_KNOWN) else "single_speed_window"
    is_reverse = window_cycle(draft) == "reverse_cycle"
    speed = "variable_speed_window" if window_row.text("speed") == "variable" else "single_speed_window"
    return kept, "reverse_cycle_window" if is_reverse else speed, "variable_speed_split", "variable_speed_split"
