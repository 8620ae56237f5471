"""Moist air against printed figures, all at sea level unless said."""

import numpy as np
import pytest

from econ.climate import moist_air
from econ.kernel.constants import BTU_J, POUND_KG, STANDARD_PRESSURE_PA

SEA = np.array(STANDARD_PRESSURE_PA)
BTU_PER_LB = BTU_J / POUND_KG
PSI_PA = 6894.757
TENTH_PERCENT = 1e-3


def celsius(fahrenheit):
    return (np.asarray(fahrenheit, dtype=float) - 32.0) / 1.8


def fahrenheit(celsius_):
    return np.asarray(celsius_) * 1.8 + 32.0


# psychrolib 2.5.0: dry bulb and wet bulb degF, humidity ratio, enthalpy Btu/lb, relative humidity, dew point degF
STATES = [
    (80.0, 67.0, 0.011169, 31.447, 0.511, 60.32),
    (70.0, 60.0, 0.008740, 26.344, 0.5606, 53.63),
    (47.0, 43.0, 0.004933, 16.617, 0.7266, 38.69),
    (17.0, 15.0, 0.001286, 5.454, 0.6943, 9.62),
]


@pytest.mark.parametrize(("dry_f", "wet_f", "ratio", "enthalpy", "relative", "dew_f"), STATES)
def test_state_from_dry_and_wet_bulb(dry_f, wet_f, ratio, enthalpy, relative, dew_f):
    dry_c = celsius(dry_f)
    ours = moist_air.humidity_ratio_from_wet_bulb(dry_c, celsius(wet_f), SEA)
    assert ours == pytest.approx(ratio, rel=TENTH_PERCENT)
    assert moist_air.relative_humidity_frac(dry_c, ours, SEA) == pytest.approx(relative, rel=TENTH_PERCENT)
    assert fahrenheit(moist_air.dew_point_c(ours, SEA)) == pytest.approx(dew_f, abs=0.02)
    assert fahrenheit(moist_air.wet_bulb_c(dry_c, ours, SEA)) == pytest.approx(wet_f, abs=0.01)
    # the inch-pound scale starts at dry air of 0 degF: 0.240 Btu/(lb degF) times 32 degF above the SI scale's start
    above_zero_f = moist_air.enthalpy_j_per_kg(dry_c, ours) / BTU_PER_LB + 0.240 * 32.0
    assert above_zero_f == pytest.approx(enthalpy, rel=2.0 * TENTH_PERCENT)


# psychrolib 2.5.0: 75 degF and 50 %
def test_state_from_relative_humidity():
    ratio = moist_air.humidity_ratio_at(celsius(75.0), np.array(0.5), SEA)
    assert ratio == pytest.approx(0.009236, rel=TENTH_PERCENT)
    assert fahrenheit(moist_air.dew_point_c(ratio, SEA)) == pytest.approx(55.12, abs=0.02)
    assert fahrenheit(moist_air.wet_bulb_c(celsius(75.0), ratio, SEA)) == pytest.approx(62.55, abs=0.02)


# psychrolib 2.5.0: 25 degC and 50 %
def test_si_state_at_room_temperature():
    ratio = moist_air.humidity_ratio_at(np.array(25.0), np.array(0.5), SEA)
    assert ratio == pytest.approx(0.009881, rel=TENTH_PERCENT)
    assert moist_air.enthalpy_j_per_kg(np.array(25.0), ratio) == pytest.approx(50.322e3, rel=TENTH_PERCENT)


# psychrolib 2.5.0: saturation pressures 32 degF .08864 psia, 70 degF .36328 psia, 20 degC 2338.8 Pa
@pytest.mark.parametrize(("at_c", "pa"), [(0.0, 0.08864 * PSI_PA), (21.1111, 0.36328 * PSI_PA), (20.0, 2338.8)])
def test_saturation_pressure(at_c, pa):
    assert moist_air.saturation_pressure_pa(np.array(at_c)) == pytest.approx(pa, rel=TENTH_PERCENT)


# psychrolib 2.5.0: 5000 ft, 12.228 psia
def test_pressure_at_five_thousand_feet():
    assert moist_air.pressure_pa(np.array(1524.0)) / PSI_PA == pytest.approx(12.228, rel=1e-4)
