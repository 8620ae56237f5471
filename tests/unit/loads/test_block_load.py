"""What several rooms need together, and what a figure of the user's own does to it."""

from dataclasses import replace

import numpy as np
import pytest

from econ.loads.block_load import block_loads
from econ.loads.design_load import HOURLY, LOAD_FACTORS, OWN, FactorLoads, design_loads, governed, with_own
from tests.unit.loads.rooms import days, rows

HOT = days([28.0], 5.0, 600.0, humidity_ratio=0.015)
COLD_C = np.array(-15.0)
ALL = np.ones((2, 1), bool)


def factors(sensible=(100.0, 100.0), glass_m2=(2.0, 2.0)):
    """Return load factors of two rooms of 20 m2."""
    piece_w = np.zeros((2, 8))
    piece_w[:, 0] = sensible
    glass, floor = np.array(glass_m2), np.full(2, 20.0)
    return FactorLoads(np.array(sensible), piece_w, glass > 0.2 * floor, glass, floor)


def in_two_halves():
    """Return two rooms of one row that want 1,000 W at 9 and at 17 o'clock and 700 W each at noon, 50 W of it damp."""
    hourly = design_loads(rows(2), HOT, COLD_C, np.full(2, 0.6))
    course = np.zeros((2, 24))
    course[0, 9], course[1, 17], course[:, 12] = 1000.0, 1000.0, 700.0
    return replace(
        hourly,
        cool_sensible_w=np.full(2, 1000.0),
        hourly_sensible_w=np.full(2, 1000.0),
        cool_latent_w=np.full(2, 50.0),
        course_sensible_w=course,
        course_latent_w=np.full((2, 24), 50.0),
    )


def test_rooms_that_peak_at_different_hours_need_less_together():
    block = block_loads(in_two_halves(), factors(), ALL)
    assert block.cooling_w[0] == pytest.approx(1400.0 + 100.0)
    assert block.latent_w[0] == pytest.approx(100.0)
    assert block.peak_hour[0] == 12
    assert block.method[0] == HOURLY


def test_rooms_that_are_not_served_do_not_count():
    block = block_loads(in_two_halves(), factors(), np.array([[True], [False]]))
    assert block.cooling_w[0] == pytest.approx(1050.0)
    assert block.peak_hour[0] == 9
    assert block.heating_w[0] == pytest.approx(in_two_halves().heat_w[0])


@pytest.mark.parametrize(("each_w", "method", "block_w"), [(699.0, HOURLY, 1500.0), (701.0, LOAD_FACTORS, 1502.0)])
def test_the_block_by_load_factors_is_their_sum(each_w, method, block_w):
    by_factors = factors((each_w, each_w))
    block = block_loads(governed(in_two_halves(), by_factors), by_factors, ALL)
    assert block.method[0] == method
    assert block.cooling_w[0] == pytest.approx(block_w)


def test_a_glassy_room_stands_in_the_sum_with_its_hot_day():
    by_factors = factors((900.0, 5000.0), (1.0, 4.1))
    block = block_loads(governed(in_two_halves(), by_factors), by_factors, ALL)
    assert block.cooling_w[0] == pytest.approx(900.0 + 1000.0 + 100.0)


def test_a_glassy_block_is_left_to_the_hot_day():
    by_factors = factors((900.0, 5000.0), (3.9, 4.2))
    assert block_loads(governed(in_two_halves(), by_factors), by_factors, ALL).method[0] == HOURLY


def test_one_own_figure_makes_the_block_the_sum_of_its_rooms():
    own = with_own(in_two_halves(), rows(2), np.array([2000.0, np.nan]), np.full(2, np.nan))
    block = block_loads(own, factors(), ALL)
    assert block.cooling_w[0] == pytest.approx(2000.0 + 1050.0)
    assert block.method[0] == OWN


def test_a_figure_is_kept_where_nothing_was_found():
    nothing = replace(in_two_halves(), cool_sensible_w=np.zeros(2), cool_latent_w=np.zeros(2), piece_w=np.zeros((2, 8)))
    own = with_own(nothing, rows(2), np.full(2, 800.0), np.full(2, np.nan))
    assert own.cool_sensible_w.tolist() == [800.0, 800.0]
    assert own.piece_w[:, 0].tolist() == [800.0, 800.0]


def test_a_room_that_is_not_to_be_cooled_or_heated_takes_no_figure():
    off = rows(2, is_cooled=np.zeros((1, 24), bool), is_heated=np.zeros((1, 24), bool))
    own = with_own(in_two_halves(), off, np.full(2, 800.0), np.full(2, 900.0))
    assert OWN not in own.method
    assert own.heat_w.tolist() == in_two_halves().heat_w.tolist()
