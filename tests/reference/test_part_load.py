"""Part-load factors, curve ratios and bounds."""

import numpy as np
import pytest

from econ.equipment import shape
from econ.equipment.modulation import cycling_power_w
from econ.equipment.points import Point, celsius
from tests.printed import printed

# Biquadratics a + bx + cx2 + dy + ey2 + fxy in degC of NREL/OCHRE's defaults; y outdoor dry bulb.
SPLIT_COOL_CAPACITY = (1.008993522, 0.006512749, 0.0, 0.003917566, -0.000222647, 0.0)
SPLIT_COOL_EIR = (0.429214442, -0.003604842, 0.00004578, 0.026490876, -0.000159212, -0.000159063)
SPLIT_HEAT_CAPACITY = (1.002928121, -0.010386676, 0.0, 0.025961538, 0.0, 0.0)
SPLIT_HEAT_EIR = (0.966475473, 0.00591495, 0.000191202, -0.012965668, 0.00004225, -0.000524003)
ROOM_CAPACITY = (0.6405, 0.01568, 0.0004531, 0.001615, -0.0001825, 0.00006614)
ROOM_EIR = (2.287, -0.1732, 0.004745, 0.01662, 0.000484, -0.001306)


def biquadratic(coefficients: tuple[float, ...], indoor_f: float, outdoor_f: float) -> float:
    a, b, c, d, e, f = coefficients
    x, y = celsius(indoor_f), celsius(outdoor_f)
    return a + b * x + c * x * x + d * y + e * y * y + f * x * y


# PLF = 1 - CD (1 - PLR): CD .25 at .5 -> .875; CD .08 at .25 -> .94.
@pytest.mark.parametrize(("cd_frac", "load_frac", "expected"), [(0.25, 0.5, "0.875"), (0.08, 0.25, "0.94")])
def test_part_load_factor_is_printed(cd_frac: float, load_frac: float, expected: str) -> None:
    low = Point(np.array([[1000.0]]), np.array([[300.0]]))
    power = cycling_power_w(np.array([[1000.0 * load_frac]]), low, np.array([cd_frac]))
    assert 300.0 * load_frac / power[0, 0] == printed(expected)


# Room air conditioner curve: 95 degF .9947/.9990, 82 degF 1.0565/.8430.
def test_ratios_of_window_units_are_those_of_the_curve() -> None:
    capacity = biquadratic(ROOM_CAPACITY, 67, 82) / biquadratic(ROOM_CAPACITY, 67, 95)
    eir = biquadratic(ROOM_EIR, 67, 82) / biquadratic(ROOM_EIR, 67, 95)
    assert capacity == pytest.approx(shape.WINDOW_CAPACITY_82_OVER_95, abs=5e-4)
    assert eir == pytest.approx(shape.WINDOW_EIR_82_OVER_95, abs=5e-4)


# Ductless curve: cooling EIR 67 degF .7712, 82 degF .9035.
def test_low_speed_ratio_of_split_units_is_that_of_the_curve() -> None:
    eir = biquadratic(SPLIT_COOL_EIR, 67, 67) / biquadratic(SPLIT_COOL_EIR, 67, 82)
    assert eir == pytest.approx(shape.LOW_EIR_67_OVER_82, abs=5e-4)
    assert biquadratic(SPLIT_COOL_CAPACITY, 67, 82) == printed("1.0727")


# Ductless curve, heating at 70 degF: 62 1.2163/.7878, 47 1.000/.9793, 17 .5673/1.3797, 5 .3942/1.5465.
@pytest.mark.parametrize("outdoor_f", [62, 47, 17, 5])
def test_heating_ratios_of_reverse_cycle_units_are_those_of_the_curve(outdoor_f: int) -> None:
    capacity = biquadratic(SPLIT_HEAT_CAPACITY, 70, outdoor_f)
    eir = biquadratic(SPLIT_HEAT_EIR, 70, outdoor_f) / biquadratic(SPLIT_HEAT_EIR, 70, 47)
    assert capacity == pytest.approx(shape.WINDOW_HEAT_CAPACITY[outdoor_f], abs=5e-4)
    assert eir == pytest.approx(shape.WINDOW_HEAT_EIR[outdoor_f], abs=5e-4)


# Means of a public data set: rated over greatest .908, least over greatest .272 (EIR .730 of rated) at 47 degF.
def test_greatest_output_lies_on_the_line_through_least_and_rated() -> None:
    slope = (1.0 - 1.0 / 0.730) / (0.908 - 0.272)
    assert 1.0 / (1.0 + slope * (1.0 - 0.908)) == pytest.approx(shape.HEAT_EIR_FULL_47, abs=1e-3)
