"""The room air conditioner rating, 10 CFR 430 subpart B appendix F (recalled, not seen)."""

import numpy as np
import pytest

from econ.equipment.points import Point
from econ.equipment.rating import COOLING_BIN_C, COOLING_BIN_FRAC
from econ.equipment.room_air_conditioner import (
    CONDITION_C,
    CONDITION_FRAC,
    COOLING_HOURS_H,
    IDLE_HOURS_H,
    single_speed_ceer,
    single_speed_power_w,
    variable_speed_ceer,
)
from econ.kernel.constants import BTU_PER_WH
from tests.printed import printed


# Appendix F: 750 h/yr cooling: 1000 W -> 750 kWh; 5115 h/yr idle: 1 W -> 5.115 kWh.
def test_hours_of_the_rating_are_printed() -> None:
    assert printed("750") == COOLING_HOURS_H * 1000.0 / 1000.0
    assert printed("5.115") == IDLE_HOURS_H * 1.0 / 1000.0


# Worked: 8000 Btu/h, 660 W, 1 W standby -> 11.997.
def test_single_speed_ceer_is_printed() -> None:
    unit = Point(np.array(8000.0 / BTU_PER_WH), np.array(660.0))
    assert single_speed_ceer(unit, np.array(1.0)) == printed("11.997")


def test_power_from_ceer_is_its_inverse() -> None:
    capacity_w = np.array([8000.0 / BTU_PER_WH])
    assert single_speed_power_w(capacity_w, np.array([11.9969]), np.array([1.0]))[0] == pytest.approx(660.0, abs=0.1)


# Weights .05 .16 .31 .48; the split bins 97, 92, 87, 82 degF normalised give .054 .155 .310 .481.
def test_weights_agree_with_the_cooling_bins() -> None:
    bins_f = np.round(COOLING_BIN_C * 1.8 + 32.0).astype(int).tolist()
    shares = COOLING_BIN_FRAC[[bins_f.index(at) for at in (97, 92, 87, 82)]]
    for ours, text in zip(shares / shares.sum(), (".054", ".155", ".310", ".481"), strict=True):
        assert ours == printed(text)
    assert pytest.approx(shares / shares.sum(), abs=0.006) == CONDITION_FRAC


# Section 5.3: capacity +.99 % and power -.76 % per degF below 95; cycling loss 1, .971, .923, .875.
def test_a_unit_that_is_its_own_comparison_unit_earns_only_the_cycling_it_avoids() -> None:
    below_f = (CONDITION_C[0] - CONDITION_C) * 1.8
    unit = Point(2000.0 * (1.0 + 0.0099 * below_f)[None], 600.0 * (1.0 - 0.0076 * below_f)[None])
    per_test = unit.capacity_w[0] / unit.power_w[0]
    losses = np.array([1.0, 0.971, 0.923, 0.875])
    expected = per_test[0] * BTU_PER_WH * (per_test @ CONDITION_FRAC) / ((per_test * losses) @ CONDITION_FRAC)
    assert variable_speed_ceer(unit, np.array([0.0]))[0] == pytest.approx(expected, rel=1e-12)
