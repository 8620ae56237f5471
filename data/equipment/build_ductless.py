"""Build ductless.csv from the generic cost and class figures: ``python build_ductless.py COSTS.csv OUT.csv``.

One row for each kind (kit, trade), nominal size and grade. Prices that the source lacks are interpolated over size
and say so. The same costs file gives the same bytes.
"""

import csv
import io
import sys
from pathlib import Path

SIZES = (6, 9, 12, 18, 24, 30, 36)
GRADES = ("economy", "standard", "cold_climate")
Three = tuple[float, float, float]

WATT_PER_KBTU = 1000.0 * 1055.05585262 / 3600.0
FOOT_M = 0.3048

HEAT_47F = (1.022, 0.607)
"""Rated heating at 47 F = 1.022 q95 + 607 Btu/h: mean of a public data set of variable-speed units, as read."""
HEAT_47F_SPREAD = 0.10
"""Assumption: unit to unit."""

BOOST, POWER_FACTOR, FANS_A = 1.3, 0.95, 0.8
"""Assumption: highest power over rated power, power factor, fan current [A], to estimate a label that is not there."""
MCA_FACTOR, MOP_FACTOR = 1.25, 2.25
"""Circuit ampacity and largest fuse over compressor current: electrical code practice, from memory."""
BREAKERS_A = (15, 20, 25, 30, 35, 40, 45, 50)

CD = (0.08, 0.25, 0.25)
"""Degradation coefficient: 0.25 is the default of the test procedure; low is one good unit's."""
BOX_LINE_FT = (16.0, 20.0, 25.0)
"""Line set in a kit's box. Common practice, no source."""
LFL_KG_PER_M3 = 0.307
"""Lower flammability limit of R-32, from memory."""

REFRIGERANT = "R-32"
RUN_LOSS_PER_M: dict[str, Three] = {
    "R-32": (0.0008, 0.0018, 0.0035), "R-454B": (0.001, 0.0023, 0.0045), "R-410A": (0.001, 0.0026, 0.005),
}  # fmt: skip
"""Output lost with each metre of line beyond the rated 7.6 m. Common practice, no source: makers' correction tables
for older sets lie near 2 % for twice the rated length; refrigerants that need less mass flow lose less. Assumption."""
RISE_LOSS_PER_M: Three = (0.0, 0.0005, 0.0015)
"""Output lost with each metre of height, up or down. Assumption: the weight of the liquid column alone."""
PAN_HEATER_W: dict[str, Three] = {
    "economy": (0.0, 0.0, 0.0), "standard": (0.0, 0.0, 100.0), "cold_climate": (30.0, 80.0, 150.0),
}  # fmt: skip
"""Base-pan heater: sets for deep frost have one, others seldom. Common practice, no source."""
PAN_HEATER_BELOW_C: Three = (-2.0, 0.0, 2.0)
CRANKCASE_HEATER_W: Three = (0.0, 10.0, 40.0)
"""Warming of a standing compressor through its windings. Common practice, no source."""
CRANKCASE_HEATER_BELOW_C: Three = (5.0, 10.0, 18.0)

LARGE_FROM = 18
LINE_MAX_FT = {False: 50.0, True: 82.0}
RISE_MAX_FT = {False: 25.0, True: 49.0}
OUTDOOR_SOUND_DB = {False: (48.0, 54.0, 58.0), True: (52.0, 58.0, 64.0)}
"""By large or not. Assumption: low confidence, maker-specific; the manual's value rules."""


def figures(costs: str) -> dict[str, Three]:
    """Return low, likely and high by key."""
    rows = csv.DictReader(io.StringIO(costs))
    return {row["key"]: (float(row["low"]), float(row["likely"]), float(row["high"])) for row in rows}


def price(cost: dict[str, Three], kind: str, size: int, grade: str) -> tuple[Three, str]:
    """Return a price and how it was come by."""
    key = f"{kind}_{size}_{grade}_usd"
    if key in cost:
        return cost[key], "assumption: common practice, no source"
    if size == SIZES[0]:
        top, part, whole = (cost[f"{kind}_{name}_usd"] for name in (f"9_{grade}", "6_standard", "9_standard"))
        scaled = tuple(round(top[i] * part[1] / whole[1], -1) for i in range(3))
        return (scaled[0], scaled[1], scaled[2]), "assumption: interpolated by the standard grade's size step"
    below, above = (cost[f"{kind}_{other}_{grade}_usd"] for other in (size - 6, size + 6))
    return middle(below, above), "assumption: interpolated between the next sizes"


def middle(below: Three, above: Three) -> Three:
    """Return the mean of two ranges."""
    return (below[0] + above[0]) / 2, (below[1] + above[1]) / 2, (below[2] + above[2]) / 2


def by_size(cost: dict[str, Three], stem: str, size: int) -> Three:
    """Return a physical figure; 30 kBtu/h lies between its neighbours, 6 counts with 9 to 12."""
    if size == 30:
        return middle(cost[f"{stem}_24_kg"], cost[f"{stem}_36_kg"])
    return cost[f"{stem}_{'9_12' if size <= 12 else size}_kg"]


def label_a(size: int, eer2: float, volts: int) -> tuple[float, int]:
    """Return minimum circuit ampacity and largest fuse [A] that such a unit's label would show."""
    current = BOOST * 1000.0 * size / eer2 / volts / POWER_FACTOR
    largest = MOP_FACTOR * current + FANS_A
    mca = MCA_FACTOR * current + FANS_A
    return mca, max(a for a in BREAKERS_A if a <= max(largest, mca + 5.0, BREAKERS_A[0]))


def line(cost: dict[str, Three], kind: str, size: int, grade: str) -> dict[str, object]:
    """Return one row."""
    is_large, is_kit = size >= LARGE_FROM, kind == "kit"
    seer_band = "small" if size <= 12 else "medium" if size <= 24 else "large"
    eer2 = cost[f"{'small' if size <= 12 else 'large'}_{grade}_eer2"]
    volts = 120 if is_kit and not is_large else 240
    other = 0 if is_large else 360 - volts
    heat = HEAT_47F[0] + HEAT_47F[1] / size
    usd, how = price(cost, kind, size, grade)
    mca, mop = label_a(size, eer2[1], volts)
    other_mca, other_mop = label_a(size, eer2[1], other) if other else (0.0, 0)
    box = tuple(foot * FOOT_M if is_kit else 0.0 for foot in BOX_LINE_FT)
    row: dict[str, object] = {"key": f"{kind}_{size}_{grade}", "kind": kind, "size_kbtu_per_h": size, "grade": grade}
    row |= {"connection": "single_use_quick" if is_kit else "flare", "capacity_w": size * WATT_PER_KBTU}
    row |= {"volts": volts, "other_volts": other, "refrigerant": REFRIGERANT, "lfl_kg_per_m3": LFL_KG_PER_M3}
    row |= three("charge_kg", by_size(cost, "charge", size)) | three("outdoor_kg", by_size(cost, "outdoor", size))
    row |= three("indoor_kg", cost["indoor_18_36_kg" if is_large else "indoor_9_12_kg"])
    row |= three("seer2", cost[f"{seer_band}_{grade}_seer2"]) | three("eer2", eer2)
    row |= three("hspf2", cost[f"{grade}_hspf2"])
    row |= three("heat_47f_ratio_frac", (heat - HEAT_47F_SPREAD, heat, heat + HEAT_47F_SPREAD))
    row |= three("heat_5f_ratio_frac", cost[f"{grade}_heat_5f_ratio_frac"]) | three(
        "cutout_c", cost[f"{grade}_cutout_c"]
    )
    row |= three("min_ratio_frac", cost[f"{grade}_min_ratio_frac"]) | three("shr", cost["ductless_shr"])
    row |= three("standby_w", cost["ductless_standby_w"]) | three("cd_frac", CD) | three("price_usd", usd)
    row |= three("line_set_m", (box[0], box[1], box[2]))
    row |= {"line_max_m": LINE_MAX_FT[is_large] * FOOT_M, "rise_max_m": RISE_MAX_FT[is_large] * FOOT_M}
    row |= {"mca_a": mca, "mop_a": mop, "other_mca_a": other_mca, "other_mop_a": other_mop}
    row |= three("sound_db", cost["ductless_sound_db"]) | three("outdoor_sound_db", OUTDOOR_SOUND_DB[is_large])
    row |= three("run_loss_per_m", RUN_LOSS_PER_M[REFRIGERANT]) | three("rise_loss_per_m", RISE_LOSS_PER_M)
    row |= three("pan_heater_w", PAN_HEATER_W[grade]) | three("pan_heater_below_c", PAN_HEATER_BELOW_C)
    row |= three("crankcase_heater_w", CRANKCASE_HEATER_W)
    row |= three("crankcase_heater_below_c", CRANKCASE_HEATER_BELOW_C)
    return row | {"source": f"price: {how}; class figures: assumption, generic classes without a maker"}


def three(name: str, values: Three) -> dict[str, object]:
    """Return three cells: low, likely and high of one figure."""
    return {f"{name}.{step}": value for step, value in zip(("low", "likely", "high"), values, strict=True)}


def built(costs: str) -> str:
    """Return the text of ductless.csv."""
    cost = figures(costs)
    rows = [line(cost, kind, size, grade) for kind in ("kit", "trade") for size in SIZES for grade in GRADES]
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(rows[0])
    writer.writerows([f"{cell:.5g}" if isinstance(cell, float) else cell for cell in row.values()] for row in rows)
    return out.getvalue()


def main() -> None:
    """Read the costs table, write the ductless table."""
    costs_path, out_path = map(Path, sys.argv[1:3])
    out_path.write_text(built(costs_path.read_text("utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
