"""A season of a heat pump against hourly loads of two basements in Chicago.

Loads: a general building simulation engine (EnergyPlus 25.2), our own models. Machine: 14 000, 10 500, 9 500 Btu/h and
COP 3.57, 2.37, 2.06 at 47, 17, 5 degF, straight and continued; part-load factor 1 - .25 (1 - min(1, PLR / .25)); the
rest is resistance heat. Expected sums: an independent script over the same hours, tolerance 0.5 %.
"""

import gzip
from pathlib import Path

import numpy as np
import pytest

from econ.equipment.modulation import modulated_power_w
from econ.equipment.points import Point, celsius
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH
from econ.kernel.interpolation import along_points

DATA = Path(__file__).parent / "data"
POINT_C = np.array([celsius(5.0), celsius(17.0), celsius(47.0)])
HOURLY = [("bsmt_bare_chicago", 9770.2, 3343.2, 483.7, 2.553), ("bsmt_ins_chicago", 6817.3, 2468.6, 44.2, 2.713)]
BINNED = [("bsmt_bare_chicago", 3380.2, 422.9), ("bsmt_ins_chicago", 2482.5, 40.5)]


def hourly(name: str) -> tuple[FloatArray, FloatArray]:
    """Outdoor temperature and heating load of each hour."""
    with gzip.open(DATA / f"{name}.csv.gz", "rt") as lines:
        table = np.loadtxt(lines, delimiter=",", skiprows=1, usecols=(1, 3))
    return table[:, 0], table[:, 1]


def season(at_c: FloatArray, load_w: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Power of the machine and of the resistance heat."""
    capacity_w = along_points(at_c, POINT_C, np.array([[9500.0, 10500.0, 14000.0]]) / BTU_PER_WH)
    full = Point(capacity_w, capacity_w / along_points(at_c, POINT_C, np.array([[2.06, 2.37, 3.57]])))
    low = Point(0.25 * full.capacity_w, 0.25 * full.power_w)
    served_w = np.minimum(load_w[None], full.capacity_w)
    return modulated_power_w(served_w, (low, full, full), np.array([0.25]))[0], load_w - served_w[0]


@pytest.mark.parametrize(("name", "load_kwh", "compressor_kwh", "backup_kwh", "scop"), HOURLY)
def test_season_from_hours_agrees(
    name: str, load_kwh: float, compressor_kwh: float, backup_kwh: float, scop: float
) -> None:
    at_c, load_w = hourly(name)
    power_w, backup_w = season(at_c, load_w)
    assert load_w.sum() / 1000.0 == pytest.approx(load_kwh, rel=1e-4)
    assert power_w.sum() / 1000.0 == pytest.approx(compressor_kwh, rel=0.005)
    assert backup_w.sum() / 1000.0 == pytest.approx(backup_kwh, rel=0.005)
    assert load_w.sum() / (power_w + backup_w).sum() == pytest.approx(scop, rel=0.005)


@pytest.mark.parametrize(("name", "compressor_kwh", "backup_kwh"), BINNED)
def test_season_from_five_degree_bins_understates_backup(name: str, compressor_kwh: float, backup_kwh: float) -> None:
    at_c, load_w = hourly(name)
    centre_f = np.round((at_c * 1.8 + 32.0) / 5.0) * 5.0
    bins, place, hours = np.unique(centre_f, return_inverse=True, return_counts=True)
    mean_w = np.bincount(place, load_w) / hours
    power_w, backup_w = season((bins - 32.0) / 1.8, mean_w)
    assert power_w @ hours / 1000.0 == pytest.approx(compressor_kwh, rel=0.005)
    assert backup_w @ hours / 1000.0 == pytest.approx(backup_kwh, rel=0.005)
    assert backup_w @ hours < season(at_c, load_w)[1].sum()
