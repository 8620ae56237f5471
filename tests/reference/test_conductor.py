"""Copper wire and the load of an existing home against printed figures."""

import numpy as np
import pytest

from econ.equipment.conductor import ampacity_a, conductor_resistance_ohm_per_m, voltage_drop_frac
from econ.equipment.panel import DwellingLoad, existing_dwelling_load_va, service_current_a
from econ.kernel.constants import FOOT_M
from tests.printed import printed


# NEC chapter 9, table 8: direct-current resistance at 75 degC of solid uncoated copper, ohm per 1,000 ft.
@pytest.mark.parametrize(("awg", "ohm_per_kft"), [(14, "3.07"), (12, "1.93"), (10, "1.21"), (8, "0.764")])
def test_resistance_is_printed(awg, ohm_per_kft):
    assert float(conductor_resistance_ohm_per_m(awg)) * 1000.0 * FOOT_M == printed(ohm_per_kft)


# NEC table 310.16, copper, 60 degC column (recalled).
def test_ampacity_is_printed():
    assert ampacity_a(np.array([14.0, 12.0, 10.0, 8.0, 6.0])).tolist() == [15.0, 20.0, 30.0, 40.0, 55.0]


# Worked by hand from table 8: 100 ft of 12 AWG at 16 A loses 2 x 0.1 kft x 16 A x 1.93 ohm/kft = 6.176 V;
# 1.93 is rounded to half a hundredth, so the drop is known to 0.016 V.
@pytest.mark.parametrize("supply_v", [120.0, 240.0])
def test_voltage_drop_by_hand(supply_v):
    lost_v = float(voltage_drop_frac(100.0 * FOOT_M, 16.0, 12.0, supply_v)) * supply_v
    assert lost_v == pytest.approx(6.176, abs=2 * 0.1 * 16.0 * 0.005)


# The method of NEC 220.83 (B) worked by hand: 1,500 ft2 x 3 = 4,500; three circuits 4,500; range 8,000; dryer 5,000;
# water heater 4,500 = 26,500 VA. First 8,000 in full, 18,500 x 0.40 = 7,400; heating and cooling 15 A x 240 V = 3,600
# in full: 19,000 VA, 79.2 A on 240 V.
def test_existing_dwelling_load_by_hand():
    load = DwellingLoad(np.array([1500.0 * FOOT_M**2]), np.array([17_500.0]), np.array([3_600.0]))
    found = existing_dwelling_load_va(load)
    assert float(found[0]) == pytest.approx(19_000.0, abs=1e-6)
    assert float(service_current_a(found)[0]) == printed("79.2")


# A small home stays under the first 8 kVA: 100 ft2 x 3 + 4,500 = 4,800 in full.
def test_a_load_below_the_first_step_counts_in_full():
    load = DwellingLoad(np.array([100.0 * FOOT_M**2]), np.array([0.0]), np.array([1_000.0]))
    assert float(existing_dwelling_load_va(load)[0]) == pytest.approx(5_800.0, abs=1e-6)
