"""Moisture: what must be taken out, and when."""

import numpy as np
import pytest

from econ.climate import moist_air
from econ.kernel.constants import AIR_DENSITY_KG_PER_M3, VAPOUR_HEAT_J_PER_KG
from econ.loads.heat_balance import need
from tests.unit.loads.rooms import LIMIT, PRESSURE_PA, days, rows

FLOW_KG_PER_S = 0.006 * AIR_DENSITY_KG_PER_M3


def limit_at(air_c):
    return float(moist_air.humidity_ratio_at(np.array(air_c), LIMIT, np.array(PRESSURE_PA))[0])


def test_latent_heat_is_flow_times_what_is_above_the_limit():
    found = need(rows(), days([35.0], humidity_ratio=0.018), LIMIT)
    expected = FLOW_KG_PER_S * (0.018 - limit_at(24.0)) * VAPOUR_HEAT_J_PER_KG
    assert found.latent_w == pytest.approx(np.full((24, 1, 1), expected), rel=5e-3)


def test_moisture_set_free_indoors_is_added():
    people = np.full((1, 24), 2e-5)
    found = need(rows(moisture_gain_kg_per_s=people), days([35.0], humidity_ratio=limit_at(24.0)), LIMIT)
    assert found.latent_w == pytest.approx(2e-5 * VAPOUR_HEAT_J_PER_KG, rel=2e-2)


def test_dry_air_needs_no_drying():
    assert not need(rows(), days([35.0], humidity_ratio=0.004), LIMIT).latent_w.any()


def test_the_limit_is_meant_at_the_room_s_own_temperature():
    dried = np.ones((1, 24), bool)
    cool_room = rows(is_dried=dried, ua_ground_w_per_k=[200.0], ground_c=np.full((1, 12), 18.0))
    found = need(cool_room, days([20.0], humidity_ratio=0.012), LIMIT)
    assert not found.cool_w.any()
    expected = FLOW_KG_PER_S * (0.012 - limit_at(float(found.air_c[12, 0, 0]))) * VAPOUR_HEAT_J_PER_KG
    assert found.latent_w[12, 0, 0] == pytest.approx(expected, rel=1e-2)


def test_hours_neither_cooled_nor_dried_count_nothing():
    off = np.zeros((1, 24), bool)
    assert not need(rows(is_cooled=off), days([35.0], humidity_ratio=0.018), LIMIT).latent_w.any()


def test_days_that_are_not_hot_count_nothing_unless_dried():
    weather = days([20.0, 30.0], humidity_ratio=0.018)
    found = need(rows(cool_day_above_c=[25.0]), weather, LIMIT).latent_w
    assert not found[:, 0, 0].any()
    assert found[:, 0, 1].all()
    dried = need(rows(cool_day_above_c=[25.0], is_dried=np.ones((1, 24), bool)), weather, LIMIT).latent_w
    assert dried[:, 0, 0].all()
