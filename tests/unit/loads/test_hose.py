"""The air that a portable unit draws in: as much as running asks for, no more, and never below the floor."""

import numpy as np
import pytest

from econ.loads.hose import (
    LEAST_OUTPUT_FRAC,
    RATED_ABOVE_K,
    cooling_with_hose_w,
    drying_with_hose_w,
    duty,
    hose,
    net_output_w,
    unbalanced_m3_per_s,
)

PRESSURE_PA = 101_325.0
ALL = slice(None)


def one(flow=0.1, output_w=2000.0, *, stands=True):
    return hose(np.array([flow]), np.array([output_w]), np.array([[stands]]), PRESSURE_PA)


def cube(value):
    return np.full((1, 1, 1), value)


def test_the_rating_counts_the_mean_of_its_two_outdoor_conditions():
    mean_f = 0.8 * (83.0 - 80.0) + 0.2 * (95.0 - 80.0)
    assert pytest.approx(mean_f / 1.8) == RATED_ABOVE_K


# 0.1 m3/s x 1.204 kg/m3 = 0.1204 kg/s; x 1006 J/(kg K) = 121.12 W/K; x 2.501e6 J/kg = 301,120 W.
def test_heat_and_vapour_of_the_air_let_in_by_hand():
    assert one().air_w_per_k[0] == pytest.approx(121.12, abs=0.005)
    assert one().vapour_w[0] == pytest.approx(301_120.0, abs=0.5)


# At 8 K above: 121.12 x 5 = 605.6 W lost of 2,000; a need of 700 W takes 700 / 1,394.4 = 0.502 of the hour.
def test_need_and_the_air_let_in_are_taken_out_together():
    running = duty(cube(700.0), one(), cube(8.0), ALL)
    assert running[0, 0, 0] == pytest.approx(0.5020, abs=5e-5)
    wanted = cooling_with_hose_w(cube(700.0), one(), cube(8.0), running)[0, 0, 0]
    assert wanted == pytest.approx(running[0, 0, 0] * 2000.0)


def test_in_the_rated_air_nothing_is_added_and_cooler_air_helps():
    for above_k, sign in ((RATED_ABOVE_K, 0.0), (RATED_ABOVE_K + 1.0, 1.0), (RATED_ABOVE_K - 1.0, -1.0)):
        running = duty(cube(700.0), one(), cube(above_k), ALL)
        assert np.sign(cooling_with_hose_w(cube(700.0), one(), cube(above_k), running) - 700.0) == sign


def test_a_need_beyond_the_unit_runs_it_all_the_hour_and_no_longer():
    assert duty(cube(9000.0), one(), cube(8.0), ALL) == 1.0
    assert net_output_w(2000.0, 121.12, 60.0) == LEAST_OUTPUT_FRAC * 2000.0


def test_without_a_hose_or_without_the_unit_nothing_runs():
    assert duty(cube(700.0), one(0.0), cube(8.0), ALL) == 0.0
    assert duty(cube(700.0), one(stands=False), cube(8.0), ALL) == 0.0


def test_damp_air_is_more_to_dry_dry_air_less_and_no_need_stays_none():
    units, half = one(), cube(0.5)
    more = drying_with_hose_w(cube(100.0), units, cube(0.001), half)[0, 0, 0]
    assert more == pytest.approx(100.0 + 0.5 * 301.12)
    assert drying_with_hose_w(cube(100.0), units, cube(-0.01), half) == 0.0
    assert drying_with_hose_w(cube(0.0), units, cube(0.01), half) == 0.0


@pytest.mark.parametrize(("leaks", "added"), [(0.0, 0.08), (0.06, 0.04), (0.15, 0.02)])
def test_leaks_that_turn_round_are_not_counted_twice(leaks, added):
    assert unbalanced_m3_per_s(np.array(0.08), np.array(leaks)) == pytest.approx(added)
