"""Ours against the hourly simulation: annual heating, cooling and drying, and by how much they may differ."""

import csv
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import numpy as np

from econ.loads.heat_balance import need
from tests.reference.simulation import product
from tests.reference.simulation.rooms import CASES, DAMP, GRIDDED
from tests.reference.simulation.weather import hourly, monthly

FIGURES = Path(__file__).parent / "figures.csv"
"""Their annual figures, kWh: a general building simulation engine (EnergyPlus 25.2), our own models, first year.

The settled columns are the 20th year of the same models run 20 years on end.
"""

ROOM_FRAC, BASEMENT_FRAC = 0.15, 0.20
SMALL_KWH, SMALL_BY_KWH = 800.0, 120.0
BASEMENT_COOLING_FRAC = 0.05
"""Tolerances of the design; a basement's cooling may differ by 5 % of heating and cooling together if that is more."""


@lru_cache(maxsize=1)
def theirs():
    """Return their figures by case and column."""
    with FIGURES.open(newline="") as lines:
        return {
            row.pop("case"): {name: float(text) for name, text in row.items() if text} for row in csv.DictReader(lines)
        }


@lru_cache(maxsize=64)
def annual_kwh(name, weather="hourly", earth="table"):
    """Return our annual heating, cooling and drying of a case; earth "product" is the program from a case's fields."""
    if earth == "product":
        return product.annual_kwh(name, weather)
    city, build = (GRIDDED if earth == "grid" else CASES | DAMP)[name]
    days = (hourly if weather == "hourly" else monthly)(city)
    found = need(build(), days, np.array([0.5]))
    weight_kd = days.weight_d / 1000.0
    parts = zip(("heat", "cool", "latent"), (found.heat_w, found.cool_w, found.latent_w), strict=True)
    return {duty: float((power_w * weight_kd).sum()) for duty, power_w in parts}


def tolerance_kwh(name, duty):
    """Return by how much a figure may differ from theirs."""
    figures = theirs()[name]
    is_basement = name.startswith("bsmt")
    allowed = [(BASEMENT_FRAC if is_basement else ROOM_FRAC) * figures[f"{duty}_kwh"]]
    if figures[f"{duty}_kwh"] < SMALL_KWH:
        allowed.append(SMALL_BY_KWH)
    if is_basement and duty == "cool":
        allowed.append(BASEMENT_COOLING_FRAC * (figures["heat_kwh"] + figures["cool_kwh"]))
    return max(allowed)


@dataclass(frozen=True)
class Line:
    """One case and duty: theirs, ours, and our error in kWh, in parts of theirs and of what is allowed."""

    name: str
    duty: str
    weather: str
    theirs_kwh: float
    ours_kwh: float
    allowed_kwh: float

    def text(self):
        """Return the line as it is printed."""
        error = self.ours_kwh - self.theirs_kwh
        mark = "" if abs(error) <= self.allowed_kwh else "  outside"
        share = f"{100.0 * error / self.theirs_kwh:+7.1f} %" if self.theirs_kwh else "      -  "
        return (
            f"{self.name:32s} {self.duty:6s} {self.weather:13s} {self.theirs_kwh:8.0f} {self.ours_kwh:8.0f} "
            f"{error:+8.0f} {share} {self.allowed_kwh:8.0f}{mark}"
        )


def lines(weather="hourly", earth="table"):
    """Return every case's heating and cooling."""
    names = {"grid": GRIDDED, "product": product.CASES}.get(earth, CASES)
    label = weather if earth == "table" else f"{weather}, {earth}"
    return [
        Line(
            name, duty, label, theirs()[name][f"{duty}_kwh"], annual_kwh(name, weather, earth)[duty],
            tolerance_kwh(name, duty),
        )
        for name in names
        for duty in ("heat", "cool")
    ]  # fmt: skip


def summary(found):
    """Return the largest errors of both signs, in parts of theirs, among figures that are not small."""
    errors = [(line.ours_kwh / line.theirs_kwh - 1.0, line) for line in found if line.theirs_kwh >= SMALL_KWH]
    low, high = min(errors, key=lambda pair: pair[0]), max(errors, key=lambda pair: pair[0])
    return "\n".join(f"  {100.0 * error:+.1f} %  {line.name}, {line.duty}" for error, line in (low, high))
