"""A constructed three-way choice whose figures two independent computations agree on."""

import numpy as np
import pytest

from econ.lifecycle.discount import nominal_rate, present_value
from econ.lifecycle.measures import Measures, measures
from econ.lifecycle.replacement import Component, replacement_stream, residual_value
from econ.lifecycle.streams import Streams, escalated_stream
from tests.printed import printed

YEARS = 15
RATE = np.array([0.03])
KIT, HIRED, WINDOW = range(3)
PRICE = 0.20
FIRST = np.array([[2_820.0], [5_200.0], [450.0]])
UPKEEP = np.array([[40.0], [120.0], [15.0]])
COOLING_KWH = np.array([[900.0], [900.0], [1_550.0]])
HEAT_KWH = np.array([[6_000.0 / 2.8], [6_000.0 / 2.8], [6_000.0]])


def three_way(energy_usd_per_yr: np.ndarray, escalation_frac: float = 0.0) -> Streams:
    """15 years at $0.20/kWh; only the window unit (life 9) is replaced."""
    life = np.array([[15.0], [15.0], [9.0]])
    units = Component(FIRST, FIRST, life, life, np.zeros_like(life))
    residual = np.zeros((3, 1, YEARS + 1))
    residual[..., -1] = residual_value(units, YEARS)
    yearly = np.ones(YEARS)
    return Streams(
        first_usd=FIRST,
        energy_usd=escalated_stream(energy_usd_per_yr[..., None] * yearly, np.array([escalation_frac])),
        om_usd=escalated_stream(UPKEEP[..., None] * yearly, np.array([0.0])),
        replacement_usd=replacement_stream(units, YEARS),
        residual_usd=residual,
    )


def cooling_only() -> Measures:
    return measures(three_way(PRICE * COOLING_KWH), RATE, WINDOW)


def test_window_unit_is_replaced_in_year_nine_and_leaves_a_third():
    streams = three_way(PRICE * COOLING_KWH)
    assert np.flatnonzero(streams.replacement_usd[WINDOW, 0]).tolist() == [9]
    assert float(streams.residual_usd[WINDOW, 0, -1]) == pytest.approx(150.0, rel=1e-12)


# Constructed, two computations agree (E01)
def test_life_cycle_costs():
    assert cooling_only().lcc_usd[:, 0].tolist() == [printed("5446.3457"), printed("8781.3805"), printed("4578.4371")]


# E03: life-cycle cost times capital recovery
def test_annualised_costs():
    found = cooling_only().annualised_cost_usd_per_yr[:, 0].tolist()
    assert found == [printed("456.2218"), printed("735.5862"), printed("383.5200")]


# E04: kit against window unit
def test_kit_against_window_unit_for_cooling_only_does_not_pay():
    found = cooling_only()
    assert float(found.net_savings_usd[KIT, 0]) == printed("-867.9086")
    assert float(found.sir[KIT, 0]) == printed("0.590878")
    assert float(found.airr[KIT, 0]) == printed("-0.00550241")
    assert not found.simple_payback_exists[KIT, 0]
    assert not found.discounted_payback_exists[KIT, 0]
    assert np.isnan([found.simple_payback_yr[KIT, 0], found.discounted_payback_yr[KIT, 0]]).all()


# E06: Handbook 135, current-dollar and constant-dollar analyses agree
def test_nominal_dollars_give_the_same_life_cycle_cost():
    streams = three_way(PRICE * COOLING_KWH, escalation_frac=0.01)
    real = measures(streams, RATE, WINDOW).lcc_usd
    inflated = streams.total_usd * 1.025 ** np.arange(YEARS + 1)
    assert float(nominal_rate(0.03, 0.025)) == pytest.approx(0.05575, rel=1e-12)
    assert present_value(inflated, nominal_rate(RATE, 0.025)) == pytest.approx(real, abs=1e-6)


# E08: with equal heating service, the window unit made up by resistance heat
def test_equal_heating_service_turns_the_answer():
    found = measures(three_way(PRICE * (COOLING_KWH + HEAT_KWH)), RATE, WINDOW)
    assert float(found.lcc_usd[KIT, 0]) == printed("10562.6036")
    assert float(found.lcc_usd[WINDOW, 0]) == printed("18903.9592")
    assert float(found.net_savings_usd[KIT, 0]) == printed("8341.3556")
    assert float(found.simple_payback_yr[KIT, 0]) == printed("2.704156")
    assert float(found.discounted_payback_yr[KIT, 0]) == printed("2.864005")
    assert float(found.irr[KIT, 0]) == printed("0.37044487")
