"""Facts of the site against the sheet of checks: charge and room, lead, asbestos, radon, holes below grade, condensate.

The sheet recalls them from IEC 60335-2-40, the National Electrical Code and the US EPA, and computes the figures; no
text is quoted. What is printed there is held to half a unit of its last digit.
"""

import numpy as np
import pytest

from econ.caution.anchor import PLATE_KG
from econ.caution.refrigerant import WALL_MOUNT_M, charge_limit_kg
from econ.caution.registry import RULES, found
from econ.equipment.dehumidifier import VAPOUR_HEAT_KWH_PER_KG
from econ.kernel.constants import FOOT_M
from tests.printed import printed
from tests.unit.caution.quiet import facts

R32, R454B = 0.307, (0.296, 0.297)
BY_CODE = {rule.code: rule for rule in RULES}


def codes(**changed):
    return {each.code for each in found(facts(**changed))}


# m_max = 2.5 LFL^1.25 h0 sqrt(A), R-32: wall 1.8 m.
@pytest.mark.parametrize(
    ("area_m2", "limit"), [(10.0, "3.252"), (23.2, "4.953"), (30.0, "5.632"), (50.0, "7.271"), (120.8, "11.302")]
)
def test_charge_for_a_unit_on_the_wall_is_printed(area_m2, limit):
    assert float(charge_limit_kg(np.array(R32), np.array(WALL_MOUNT_M), np.array(area_m2))) == printed(limit)


# Floor 0.6 m, window 1.0 m, wall 1.8 m, ceiling 2.2 m: the limit goes with the height.
@pytest.mark.parametrize(("height_m", "limit_kg"), [(0.6, 1.084), (1.0, 3.252 / 1.8), (2.2, 3.252 * 2.2 / 1.8)])
def test_charge_at_other_heights(height_m, limit_kg):
    found_kg = float(charge_limit_kg(np.array(R32), np.array(height_m), np.array(10.0)))
    assert found_kg == pytest.approx(limit_kg, abs=0.001)


# The least room for 1.1 kg on the wall is 1.14 m2.
@pytest.mark.parametrize(("area_m2", "is_stopped"), [(1.135, True), (1.145, False)])
def test_least_room_for_a_charge_is_printed(area_m2, is_stopped):
    raised = codes(charge_kg=1.1, lfl_kg_per_m3=R32, floor_area_m2=area_m2)
    assert ("refrigerant.charge_above_room_limit" in raised) is is_stopped


# R-454B burns from 0.296 to 0.297 kg/m3 on: its limit lies below that of R-32.
def test_the_limit_of_r454b_is_lower_than_that_of_r32():
    own = [float(charge_limit_kg(np.array(lfl), np.array(1.8), np.array(10.0))) for lfl in (*R454B, R32)]
    assert own == sorted(own)
    assert own[0] == pytest.approx(3.252 * (R454B[0] / R32) ** 1.25, abs=0.001)


# The sheet: paint before 1978, asbestos suspect through the 1980s, act on radon at 4 pCi/L.
@pytest.mark.parametrize(("built_yr", "lead", "asbestos"), [(1977, 1, 1), (1978, 0, 1), (1989, 0, 1), (1990, 0, 0)])
def test_years_of_lead_and_asbestos(built_yr, lead, asbestos):
    raised = codes(built_yr=float(built_yr))
    assert ("drilling.lead_paint" in raised, "drilling.asbestos" in raised) == (bool(lead), bool(asbestos))


def test_radon_is_acted_on_at_4_pci_per_l():
    assert "4 pCi/L" in BY_CODE["room.radon"].action


# A hole below grade is refused however deep, and not known is treated as below where earth stands against the room.
@pytest.mark.parametrize("depth_ft", [0.5, 4.0, 8.0])
def test_a_hole_below_grade_is_refused(depth_ft):
    earth_m = depth_ft * FOOT_M
    assert "drilling.below_grade_refused" in codes(hole_below=True, earth_depth_m=earth_m)
    assert "drilling.below_grade" in codes(hole_unknown=True, earth_depth_m=earth_m)


# The sheet: 12,000 (1 - SHR) / 1,061 / 8.34 gal/h a ton, .339 at SHR .75. It takes 1,061 Btu/lb for the heat of
# vaporisation; ours is that at 0 degC, 2.501 MJ/kg or 1,075 Btu/lb, so that 1.3 % less water leaves.
def test_condensate_of_a_ton_is_printed_but_for_the_heat_of_vaporisation():
    latent_kw = 12000.0 * (1.0 - 0.75) / 3412.142
    gallon_kg = 8.34 * 0.45359237
    ours = latent_kw / VAPOUR_HEAT_KWH_PER_KG / gallon_kg
    as_theirs = ours * (VAPOUR_HEAT_KWH_PER_KG * 3.6e6) / (1061.0 * 2326.0)
    assert as_theirs == printed(".339")
    assert ours / 0.339 == pytest.approx(1061.0 * 2326.0 / 2.501e6, abs=0.002)


# Soap finds gross leaks only; trades hold nitrogen and evacuate to 500 micron, an owner does neither.
def test_leak_check_says_what_soap_can_and_who_does_the_rest():
    assert "soap finds gross leaks only" in BY_CODE["refrigerant.leak_check"].message
    assert "nitrogen" in BY_CODE["refrigerant.no_gauges"].message
    assert "no gauges" in BY_CODE["refrigerant.no_gauges"].action.lower()


# Indoor units of 17 to 45 lb.
def test_the_heaviest_usual_indoor_unit_is_45_lb():
    assert abs(PLATE_KG - 45.0 * 0.45359237) < 0.05
