"""Visits: what shares one, and its minimum."""

import numpy as np
import pytest

from econ.installation.visit import visit_of, visit_total_usd

NAMES = ("rough", "final", "")


def test_an_inspection_splits_the_work_in_two_visits_and_without_one_there_is_one():
    found = visit_of(NAMES, np.array([True, False]))
    assert found[0].tolist() == [[True, False], [False, True], [False, True]]
    assert found[1].tolist() == [[False, True], [False, True], [False, True]]


def total(charges, floors, trip=0.0, done=None):
    is_done = np.ones((1, len(charges), 1), dtype=bool) if done is None else np.array(done)[None, :, None]
    return float(visit_total_usd(np.array([charges]), np.array([floors]), np.array([trip]), is_done)[0, 0])


@pytest.mark.parametrize(
    ("charges", "usd"), [([60.0, 90.0], 175.0), ([85.0, 90.0], 175.0), ([85.0, 91.0], 176.0), ([500.0, 60.0], 560.0)]
)
def test_tasks_of_one_visit_share_one_minimum(charges, usd):
    assert total(charges, [175.0, 175.0]) == usd


def test_the_trip_counts_once_and_towards_the_minimum():
    assert total([50.0, 60.0], [0.0, 0.0], trip=85.0) == 195.0
    assert total([50.0, 60.0], [0.0, 350.0], trip=85.0) == 350.0


def test_the_floor_of_a_task_that_is_not_done_does_not_count():
    assert total([50.0, 60.0], [0.0, 350.0], trip=85.0, done=[True, False]) == 135.0


def test_nobody_comes_for_nothing():
    assert total([50.0], [175.0], trip=85.0, done=[False]) == 0.0
