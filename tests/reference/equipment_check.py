"""Our machines at part load beside efficiencies that went into none of their curves.

Closure on the ratings proves that a curve agrees with itself. Here the same ratings are given to our curves and the
efficiency at other speeds is compared with that of an open engine's defaults for ductless units (NREL/OCHRE, by
rating: share of rated output and COP at 95 degF and at 47 degF). Its ratings are SEER and HSPF of the older procedure,
taken as SEER2 = 1.00 SEER and HSPF2 = 0.90 HSPF for ductless units (ANSI/RESNET/ICC 301, from memory).
"""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from econ.equipment import points
from econ.equipment.curve import variable_speed_split
from econ.equipment.machine import MachineRows, RatingRows
from econ.equipment.part_load import cooling, heating
from econ.evaluate.machines import KIT_RATINGS
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH
from econ.tables.loaders import load_tables
from tests.unit.equipment.builders import split_ratings

RATED_W = 12000.0 / BTU_PER_WH
COOL_SPEEDS, HEAT_SPEEDS = np.array([0.489, 0.667, 0.844, 1.2]), np.array([0.4, 0.6, 0.8])
COOL_COP = {17.0: np.array([5.137, 4.445, 3.736, 2.761]), 33.0: np.array([10.268, 8.880, 7.452, 5.497])}
HEAT_COP = {9.5: np.array([5.143, 4.122, 3.774])}
GREATEST_5F_OVER_RATED_47F = 1.2 * 0.3942
"""The same defaults: greatest speed, capacity curve at 5 degF."""

STEPS = ("low", "likely", "high")
TESTS = {"heating.h1_full": 47.0, "heating.h1_low": 47.0, "heating.h3_full": 17.0, "heating.h4_full": 5.0}


class Line(NamedTuple):
    """One efficiency: ours against theirs."""

    what: str
    ours: float
    theirs: float

    @property
    def error_frac(self) -> float:
        """Ours over theirs, less 1."""
        return self.ours / self.theirs - 1.0

    def text(self) -> str:
        """Return the line as printed."""
        return f"{self.what:44s} {self.theirs:8.2f} {self.ours:8.2f} {100.0 * self.error_frac:+7.1f} %"


def part_load_lines() -> Iterator[Line]:
    """Yield COP at part load, cooling at 95 degF and heating at 47 degF."""
    for seer, theirs in COOL_COP.items():
        sizes = {"capacity_w": COOL_SPEEDS[-1] * RATED_W, "min_ratio_frac": 0.3, "heat_47f_w": RATED_W}
        machine = variable_speed_split(split_ratings(**sizes, seer2=seer, eer2=theirs[-1] * BTU_PER_WH))
        load_w = (COOL_SPEEDS * RATED_W)[None]
        power_w = cooling(machine, load_w, np.zeros_like(load_w), np.full((1, 1), points.A_C))[2]
        slower = zip(COOL_SPEEDS[:-1], (load_w / power_w)[0], theirs, strict=False)  # greatest speed went in as EER2
        for speed, ours, cop in slower:
            yield Line(f"SEER {seer:g}, cooling 95 F, {speed:.2f} of rated output", float(ours), float(cop))
    for hspf, theirs in HEAT_COP.items():
        cold = {"heat_47f_w": RATED_W, "heat_5f_ratio_frac": GREATEST_5F_OVER_RATED_47F, "cutout_c": -30.0}
        machine = variable_speed_split(split_ratings(**cold, hspf2=0.90 * hspf, seer2=18.0, eer2=11.0))
        load_w = (HEAT_SPEEDS * RATED_W)[None]
        power_w = heating(machine, load_w, np.full((1, 1), points.H1_C))[1]
        for speed, ours, cop in zip(HEAT_SPEEDS, (load_w / power_w)[0], theirs, strict=True):
            yield Line(f"HSPF {hspf:g}, heating 47 F, {speed:.2f} of rated output", float(ours), float(cop))


def class_ratings(step: str) -> RatingRows:
    """Return the ratings of every ductless class in the data at one end of its ranges."""
    sets = list(load_tables().ductless_sets.entries.values())

    def column(name: str) -> FloatArray:
        return np.array([getattr(row.spreads[name], step) if name in row.spreads else row.number(name) for row in sets])

    by_name = {name: column(name) for name in KIT_RATINGS if name != "heat_47f_w"}
    return RatingRows(**by_name, heat_47f_w=column("heat_47f_ratio_frac") * by_name["capacity_w"])


def carnot_shares(machine: MachineRows) -> dict[str, FloatArray]:
    """Return each full-speed test's efficiency over that of the ideal cycle between the two airs' temperatures."""
    room_k, hot_room_k = points.celsius(70.0) + 273.15, points.celsius(80.0) + 273.15
    shares = {
        "cooling.a_full": machine.cooling.a_full.cop / (hot_room_k / (points.celsius(95.0) + 273.15 - hot_room_k))
    }
    for name, outdoor_f in TESTS.items():
        ideal = room_k / (room_k - 273.15 - points.celsius(outdoor_f))
        shares[name] = getattr(machine.heating, name.partition(".")[2]).cop / ideal
    return shares


def text() -> str:
    """Return the table and the Carnot shares of every class in the data."""
    head = f"{'COP of ductless units':44s} {'theirs':>8s} {'ours':>8s} {'error':>9s}"
    shares = [carnot_shares(variable_speed_split(class_ratings(step))) for step in STEPS]
    ends = [
        f"{name}: {min(each[name].min() for each in shares):.2f} to {max(each[name].max() for each in shares):.2f}"
        for name in shares[0]
    ]
    return "\n".join(
        [head, *(line.text() for line in part_load_lines()), "share of the ideal cycle: " + "; ".join(ends)]
    )
