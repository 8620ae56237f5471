"""Build window.csv from the generic cost and class figures: ``python build_window.py COSTS.csv OUT.csv``.

Window units by nominal size, vintage and cycle; units for narrow windows, for sleeves in a wall, and portable ones. The
same costs file gives the same bytes. Nothing is larger than 28 kBtu/h: no window unit of that kind is sold.
"""

import csv
import io
import sys
from pathlib import Path

Three = tuple[float, float, float]
Ceer = dict[int, Three]

WATT_PER_KBTU = 1000.0 * 1055.05585262 / 3600.0
POUND_KG = 0.45359237

CEER_OLD: Ceer = {
    5: (11.0, 11.2, 12.1), 6: (11.0, 11.2, 12.1), 8: (10.9, 11.2, 12.1), 10: (10.9, 11.2, 12.1),
    12: (10.9, 11.2, 12.1), 14: (10.7, 11.0, 12.0), 18: (10.7, 11.0, 12.0), 24: (9.4, 9.8, 10.8), 28: (9.0, 9.4, 10.3),
}  # fmt: skip
"""Low: federal minimum of 2014 to May 2026, louvered, from memory; likely and high: generic stock, assumption."""
MINIMUM_2026 = {5: 13.1, 6: 13.7, 8: 16.0, 10: 16.0, 12: 16.0, 14: 16.0, 18: 16.0, 24: 13.8, 28: 13.2}
MINIMUM_2026_REVERSE = {8: 14.4, 10: 14.4, 12: 14.4, 14: 14.4, 18: 14.4, 24: 13.7}
"""Federal minimum from 26 May 2026, louvered (88 FR 34298; the rule and its date read, the values from memory)."""
MINIMUM_THROUGH_WALL = {8: 14.1, 10: 14.1, 12: 13.9, 14: 13.7}
MINIMUM_THROUGH_WALL_REVERSE = {8: 13.7, 10: 13.7, 12: 13.7, 14: 12.8}
"""The same rule's classes without side vents (non-louvered), as units in a sleeve are; values from memory."""
MINIMUM_NARROW = {8: 15.3, 10: 15.3, 12: 15.3}
"""The same rule's class for sliding and casement windows (casement-slider); value from memory."""
OTHER_KINDS = {
    ("narrow", "cooling_only"): MINIMUM_NARROW,
    ("through_wall", "cooling_only"): MINIMUM_THROUGH_WALL,
    ("through_wall", "reverse_cycle"): MINIMUM_THROUGH_WALL_REVERSE,
}
OTHER_PRICE = {"narrow": 1.4, "through_wall": 1.3}
"""Price over that of a window unit of the same size and cycle. Assumption: common practice, no source."""
VARIABLE_KINDS = ("narrow",)
"""Kinds whose minimum only a variable speed meets. Assumption; sleeve units are taken as single-speed."""
BETTER_THAN_MINIMUM = 17.5 / 16.0
"""High over minimum, from the generic range of variable-speed units. Assumption."""
CEER_PORTABLE: Ceer = {8: (6.0, 6.6, 8.0), 12: (6.5, 7.2, 9.0)}
"""Assumption: federal portable minimum of 2025 from memory, two hoses; high is a variable-speed one."""
PORTABLE_SIZES = (5, 6, 8, 10)
"""New portable units by seasonally adjusted cooling capacity, as their label says since 2017."""
PORTABLE_PRICE = {5: 0.55, 6: 0.7, 8: 0.9, 10: 1.1}
"""Price over that of the generic two-hose unit. Assumption: one sold as 12 kBtu/h is adjusted to about 8 or 9."""

VARIABLE_SIZES = (8, 10, 12, 14, 18)
MIN_RATIO: dict[bool, Three] = {True: (0.3, 0.4, 0.6), False: (1.0, 1.0, 1.0)}
"""Lowest over rated output of variable-speed units. Assumption."""
HEAT_RATIO = (0.8, 0.9, 1.0)
"""Heating over cooling output of reverse-cycle units. Assumption."""
CD = (0.15, 0.25, 0.25)
"""Degradation coefficient; 0.25 is the usual default of test procedures. Assumption for window units."""
POWER_FACTOR = 0.95
FULL_LOAD_SHARE = 0.72
"""Efficiency at full output over the weighted rating of variable-speed units. Assumption."""
VOLTS_240_FROM = {"window": 18, "narrow": 18, "through_wall": 14}
PORTABLE_LB: Three = (55.0, 68.0, 85.0)
"""Assumption."""

Costs = dict[str, Three]


def figures(costs: str) -> Costs:
    """Return low, likely and high by key."""
    rows = csv.DictReader(io.StringIO(costs))
    return {row["key"]: (float(row["low"]), float(row["likely"]), float(row["high"])) for row in rows}


def scaled(values: Three, factor: float) -> Three:
    """Return a price range times a factor, to ten dollars."""
    return round(values[0] * factor, -1), round(values[1] * factor, -1), round(values[2] * factor, -1)


def price(cost: Costs, size: int, vintage: str, cycle: str) -> tuple[Three, str]:
    """Return a price range and how it was come by."""
    stem = "reverse_cycle" if cycle == "reverse_cycle" else vintage
    key = f"window_{size}_{stem}_usd"
    if key in cost:
        return cost[key], "common practice, no source"
    if size == 5 and vintage == "old_stock":
        return cost["window_5_usd"], "common practice, no source"
    if cycle == "reverse_cycle":
        below, above = (cost[f"window_{other}_reverse_cycle_usd"] for other in ((8, 12) if size == 10 else (12, 18)))
        share = 0.5 if size == 10 else 1.0 / 3.0
        middle = tuple(round(a + share * (b - a), -1) for a, b in zip(below, above, strict=True))
        return (middle[0], middle[1], middle[2]), "interpolated between the next sizes"
    old, new = (cost[f"window_{6 if size == 5 else 18}_{name}_usd"][1] for name in ("old_stock", "minimum_2026"))
    if size == 5:
        return scaled(cost["window_5_usd"], new / old), "scaled by the next size's vintages"
    return scaled(cost[f"window_{size}_minimum_2026_usd"], old / new), "scaled by the next size's vintages"


def weight(cost: Costs, size: int) -> Three:
    """Return a weight range; 28 kBtu/h is scaled from the largest known class."""
    bands = ((6, "5_6"), (10, "8_10"), (14, "12_15"), (24, "18_24"))
    for top, band in bands:
        if size <= top:
            return cost[f"window_{band}_kg"]
    low, likely, high = cost["window_18_24_kg"]
    return low * size / 24, likely * size / 24, high * size / 24


def ceer(size: int, vintage: str, cycle: str) -> Three:
    """Return an efficiency range."""
    if vintage == "old_stock":
        return CEER_OLD[size]
    minimum = (MINIMUM_2026_REVERSE if cycle == "reverse_cycle" else MINIMUM_2026)[size]
    return minimum, minimum, minimum * BETTER_THAN_MINIMUM


def three(name: str, values: Three) -> dict[str, object]:
    """Return three cells: low, likely and high of one figure."""
    return {f"{name}.{step}": value for step, value in zip(("low", "likely", "high"), values, strict=True)}


def window_line(cost: Costs, size: int, vintage: str, cycle: str) -> dict[str, object]:
    """Return the row of a window unit."""
    is_reverse = cycle == "reverse_cycle"
    is_variable = is_reverse or (vintage == "minimum_2026" and size in VARIABLE_SIZES)
    usd, how = price(cost, size, vintage, cycle)
    sound = cost["window_variable_sound_db" if is_variable else "window_single_speed_sound_db"]
    row = head("window", size, vintage, cycle, is_variable)
    row |= rating(
        ceer(size, vintage, cycle), 240 if size >= VOLTS_240_FROM["window"] else 120, size, is_variable=is_variable
    )
    row |= three("shr", cost["window_variable_shr" if is_variable else "window_single_speed_shr"])
    row |= three("weight_kg", weight(cost, size)) | three("price_usd", usd) | three("sound_db", sound)
    row |= three("standby_w", cost["window_standby_w"]) | three("min_ratio_frac", MIN_RATIO[is_variable])
    row |= three("cd_frac", CD)
    row |= three("heat_cop", cost["reverse_cycle_cop"]) if is_reverse else three("heat_cop", (0.0, 0.0, 0.0))
    row |= three("heat_ratio_frac", HEAT_RATIO if is_reverse else (0.0, 0.0, 0.0))
    row |= three("cutout_c", cost["reverse_cycle_cutout_c"] if is_reverse else (99.0, 99.0, 99.0))
    return row | {"source": f"assumption: price {how}; efficiency minimums from memory; generic class figures"}


def other_line(cost: Costs, kind: str, size: int, cycle: str) -> dict[str, object]:
    """Return the row of a new unit for a narrow window or for a wall: a window unit's but for what differs."""
    usd, _ = price(cost, size, "minimum_2026", cycle)
    is_variable = kind in VARIABLE_KINDS
    low = OTHER_KINDS[kind, cycle][size]
    row = window_line(cost, size, "minimum_2026", cycle) | head(kind, size, "minimum_2026", cycle, is_variable)
    volts = 240 if size >= VOLTS_240_FROM[kind] else 120
    row |= rating((low, low, low * BETTER_THAN_MINIMUM), volts, size, is_variable=is_variable)
    row |= three("shr", cost["window_variable_shr" if is_variable else "window_single_speed_shr"])
    row |= three("sound_db", cost["window_variable_sound_db" if is_variable else "window_single_speed_sound_db"])
    row |= three("min_ratio_frac", MIN_RATIO[is_variable]) | three("price_usd", scaled(usd, OTHER_PRICE[kind]))
    how = f"price {OTHER_PRICE[kind]:g} times that of a window unit"
    return row | {"source": f"assumption: {how}, common practice, no source; efficiency minimums from memory"}


def portable_minimum(size: int) -> float:
    """Return the least efficiency of a portable unit: 10 CFR 430.32(cc), from 10 January 2025, from memory."""
    sacc = 1000.0 * size
    return 1.04 * sacc / (3.7117 * sacc**0.6384)


def new_portable_line(cost: Costs, size: int) -> dict[str, object]:
    """Return the row of a new portable unit, by what its label says it gives the room."""
    low = portable_minimum(size)
    row = portable_line(cost, 12) | head("portable", size, "minimum_2026", "cooling_only", is_variable=False)
    row |= rating((low, low, low * BETTER_THAN_MINIMUM), 120, size, is_variable=False)
    row |= three("price_usd", scaled(cost["portable_two_hose_usd"], PORTABLE_PRICE[size]))
    return row | {"source": "assumption: price scaled by size, no source; efficiency minimum from memory"}


def portable_line(cost: Costs, size: int) -> dict[str, object]:
    """Return the row of a portable unit that is there now."""
    row = head("portable", size, "any", "cooling_only", is_variable=False)
    row |= rating(CEER_PORTABLE[size], 120, size, is_variable=False) | three("shr", cost["window_single_speed_shr"])
    low, likely, high = PORTABLE_LB
    row |= three("weight_kg", (low * POUND_KG, likely * POUND_KG, high * POUND_KG))
    row |= three("price_usd", scaled(cost["portable_two_hose_usd"], 1.0 if size == 12 else 0.8))
    row |= three("sound_db", cost["window_single_speed_sound_db"]) | three("standby_w", cost["window_standby_w"])
    row |= three("min_ratio_frac", MIN_RATIO[False]) | three("cd_frac", CD)
    row |= three("heat_cop", (0.0, 0.0, 0.0)) | three("heat_ratio_frac", (0.0, 0.0, 0.0))
    row |= three("cutout_c", (99.0, 99.0, 99.0))
    return row | {"source": "assumption: price common practice, no source; efficiency from memory"}


def head(kind: str, size: int, vintage: str, cycle: str, is_variable: bool) -> dict[str, object]:
    """Return the first cells of a row."""
    row: dict[str, object] = {"key": f"{kind}_{size}_{vintage}_{cycle}", "kind": kind, "size_kbtu_per_h": size}
    row |= {"vintage": vintage, "cycle": cycle, "speed": "variable" if is_variable else "single"}
    return row | {"capacity_w": size * WATT_PER_KBTU}


def rating(values: Three, volts: int, size: int, *, is_variable: bool) -> dict[str, object]:
    """Return efficiency, voltage and the running current at full output."""
    full_load_eer = values[1] * (FULL_LOAD_SHARE if is_variable else 1.0)
    current = 1000.0 * size / full_load_eer / volts / POWER_FACTOR
    return {"volts": volts, "current_a": current} | three("ceer", values)


def built(costs: str) -> str:
    """Return the text of window.csv."""
    cost = figures(costs)
    rows = [window_line(cost, size, vintage, "cooling_only") for vintage in VINTAGES for size in MINIMUM_2026]
    rows += [window_line(cost, size, "minimum_2026", "reverse_cycle") for size in MINIMUM_2026_REVERSE]
    rows += [portable_line(cost, size) for size in CEER_PORTABLE]
    rows += [other_line(cost, kind, size, cycle) for (kind, cycle), sizes in OTHER_KINDS.items() for size in sizes]
    rows += [new_portable_line(cost, size) for size in PORTABLE_SIZES]
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(rows[0])
    writer.writerows([f"{cell:.5g}" if isinstance(cell, float) else cell for cell in row.values()] for row in rows)
    return out.getvalue()


VINTAGES = ("old_stock", "minimum_2026")


def main() -> None:
    """Read the costs table, write the window table."""
    costs_path, out_path = map(Path, sys.argv[1:3])
    out_path.write_text(built(costs_path.read_text("utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
