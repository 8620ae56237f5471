"""Rating procedures of split units against worked examples.

The examples were computed from the procedures' equations (AHRI 210/240-2023) in Btu/h with 3.413 Btu/Wh for resistance
heat, as the regulation prints it; this package uses 3600 J over the international Btu, 3.412142. `in_print` undoes it.
"""

import numpy as np
import pytest

from econ.equipment.heating_rating import (
    NEVER_C,
    HeatingTerms,
    heating_load_w,
    running_frac,
    single_speed_hspf2,
    variable_speed_hspf2,
)
from econ.equipment.points import CoolingPoints, HeatingPoints, Point, celsius
from econ.equipment.rating import (
    COOLING_BIN_C,
    COOLING_BIN_FRAC,
    HEATING_BIN_C,
    HEATING_REGIONS,
    demand_defrost_credit,
    single_speed_seer2,
    variable_speed_bin_power_w,
    variable_speed_seer2,
)
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH
from tests.printed import printed

PRINTED_BTU_PER_WH = 3.413


def rated(btu_per_h: float, power_w: float) -> Point:
    return Point(np.array([btu_per_h / PRINTED_BTU_PER_WH]), np.array([float(power_w)]))


def in_print(rating: FloatArray) -> float:
    return float(rating[0] * PRINTED_BTU_PER_WH / BTU_PER_WH)


def terms(rated_btu_per_h: float, credit: float = 1.0) -> HeatingTerms:
    never = np.array([NEVER_C])
    return HeatingTerms(
        np.array([rated_btu_per_h / PRINTED_BTU_PER_WH]), np.array([0.25]), never, never, np.array([credit])
    )


VARIABLE_COOLING = CoolingPoints(
    a_full=rated(12000, 1000),
    b_full=rated(12800, 860),
    e_mid=rated(7000, 430),
    b_low=rated(4500, 240),
    f_low=rated(5000, 190),
)
ANY = rated(1, 1)
SINGLE_HEATING = HeatingPoints(ANY, ANY, ANY, rated(24000, 2050), rated(20500, 1950), rated(15200, 1750), ANY)
VARIABLE_HEATING = HeatingPoints(
    h0_low=rated(5200, 300),
    h1_low=rated(4200, 290),
    h2_mid=rated(6500, 600),
    h1_full=rated(14000, 1150),
    h2_full=rated(12500, 1250),
    h3_full=rated(10500, 1300),
    h4_full=rated(9500, 1350),
)


# AHRI 210/240-2023, table 14 (read in two open implementations that agree): sum 1.000, mean 76.79 degF.
def test_cooling_bins_add_up_and_have_the_printed_mean() -> None:
    assert COOLING_BIN_FRAC.sum() == pytest.approx(1.0, abs=1e-12)
    assert printed("76.79") == COOLING_BIN_C @ COOLING_BIN_FRAC * 1.8 + 32.0


# AHRI 210/240-2023, table 15 (as above): each region sums to 1.000; 18 bins from 62 to -23 degF.
def test_heating_bins_of_every_region_add_up() -> None:
    assert HEATING_BIN_C[[0, -1]] * 1.8 + 32.0 == pytest.approx([62.0, -23.0])
    for region in HEATING_REGIONS.values():
        assert region.bin_frac.sum() == printed("1.000")


# Worked: 12 kBtu/h in region IV at 5 degF: 13 800 (single) and 12 840 (variable) Btu/h.
@pytest.mark.parametrize(("kind", "load_btu_per_h"), [("slope_single_frac", 13800.0), ("slope_variable_frac", 12840.0)])
def test_load_line_of_region_four_reaches_its_design_load(kind: str, load_btu_per_h: float) -> None:
    region = HEATING_REGIONS["IV"]
    load_w = heating_load_w(np.array([12000.0]), region, getattr(region, kind))
    at_5f = np.argmin(np.abs(HEATING_BIN_C - celsius(7.0)))
    expected = load_btu_per_h * (55.0 - 7.0) / (55.0 - 5.0)
    assert load_w[0, at_5f] == pytest.approx(expected, rel=1e-12)


# AHRI 210/240-2023, eq. 11.55: EER 12 at 82 degF, CD .25 -> 10.500; CD .20 -> 10.800.
@pytest.mark.parametrize(("cd_frac", "expected"), [(0.25, "10.500"), (0.20, "10.800")])
def test_single_speed_seer2_is_printed(cd_frac: float, expected: str) -> None:
    point = Point(np.array([12.0 / BTU_PER_WH]), np.array([1.0]))
    assert single_speed_seer2(point, np.array([cd_frac]))[0] == printed(expected)


# Worked example without factor V: 17.1915; with V = 0.93 the same unit gets 17.28.
@pytest.mark.parametrize(("load_frac", "expected"), [(1.0, "17.1915"), (0.93, "17.28")])
def test_variable_speed_seer2_is_printed(load_frac: float, expected: str) -> None:
    assert in_print(variable_speed_seer2(VARIABLE_COOLING, np.array([0.25]), load_frac)) == printed(expected)


# Same example: mean power of the bins 67 to 102 degF.
def test_variable_speed_bin_powers_are_printed() -> None:
    power = variable_speed_bin_power_w(VARIABLE_COOLING, np.array([0.25]), 1.0)[0]
    for ours, text in zip(power, ["35.1", "123.4", "212.3", "339.5", "506.2", "722.5", "993.1", "1075.4"], strict=True):
        assert ours == printed(text)


# Worked single-speed example; credit 1.03 -> 7.908.
@pytest.mark.parametrize(("region", "expected"), [("IV", "7.678"), ("I", "8.871"), ("II", "8.937"), ("VI", "9.363")])
def test_single_speed_hspf2_is_printed(region: str, expected: str) -> None:
    assert in_print(single_speed_hspf2(SINGLE_HEATING, terms(24000), region)) == printed(expected)


def test_demand_defrost_raises_hspf2_as_printed() -> None:
    assert in_print(single_speed_hspf2(SINGLE_HEATING, terms(24000, 1.03))) == printed("7.908")


# Worked variable-speed example, region IV: 9.2695 with the test at 5 degF, 9.1837 without.
@pytest.mark.parametrize(("has_h4_test", "expected"), [(True, "9.2695"), (False, "9.1837")])
def test_variable_speed_hspf2_is_printed(has_h4_test: bool, expected: str) -> None:
    rating = variable_speed_hspf2(VARIABLE_HEATING, terms(12000), has_h4_test=has_h4_test)
    assert in_print(rating) == printed(expected)


# AHRI 210/240-2023, eq. 11.129: (90, 720) minutes -> 1.03; slowest control -> 1.
@pytest.mark.parametrize(("test_h", "expected"), [(1.5, "1.03"), (12.0, "1.00"), (0.5, "1.03")])
def test_demand_defrost_credit_is_printed(test_h: float, expected: str) -> None:
    assert demand_defrost_credit(np.array(test_h), np.array(12.0)) == printed(expected)


# AHRI 210/240-2023, eq. 11.125 to 11.127: 0 at or below off or COP below 1, half up to on, 1 above.
def test_cut_out_runs_half_between_off_and_on() -> None:
    at_c = np.array([-20.0, -19.9, -15.0, -14.9, -14.9])
    cop = np.array([[2.0, 2.0, 2.0, 2.0, 0.99]])
    limits = HeatingTerms(np.array([1.0]), np.array([0.25]), np.array([-20.0]), np.array([-15.0]), np.array([1.0]))
    assert running_frac(at_c, cop, limits).tolist() == [[0.0, 0.5, 0.5, 1.0, 0.0]]
