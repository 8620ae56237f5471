"""Draws: numbers used, repeatability, independence of scrambles."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.uncertainty.draws import SCRAMBLES, draw_count, drawn, drawn_option, draws_of

NONE = np.zeros(3)
LOW, LIKELY, HIGH = np.array([1.0, 5.0, 0.0]), np.array([2.0, 5.0, 0.1]), np.array([4.0, 5.0, 1.0])


@pytest.mark.parametrize(("asked", "used"), [(0, 0), (1, 16), (16, 16), (17, 32), (1024, 1024), (1025, 2048)])
def test_number_of_draws_is_rounded_up_to_a_power_of_two(asked, used):
    assert draw_count(asked) == used


def test_fewer_than_no_draws_is_refused():
    with pytest.raises(OutOfRangeError, match="draws is -1; it must be 0 or more"):
        draw_count(-1)


@pytest.mark.parametrize("count", [0, 100, 4])
def test_number_that_is_not_rounded_is_refused(count):
    with pytest.raises(OutOfRangeError, match="Round it up with draw_count first"):
        draws_of(LOW, LIKELY, HIGH, count, 1)


def test_same_seed_gives_the_same_draws():
    np.testing.assert_array_equal(drawn(LOW, LIKELY, HIGH, 64, 7), drawn(LOW, LIKELY, HIGH, 64, 7))


def test_another_seed_gives_other_draws():
    assert (drawn(LOW, LIKELY, HIGH, 64, 7) != drawn(LOW, LIKELY, HIGH, 64, 8))[0].all()


def test_input_without_spread_keeps_its_value():
    assert set(drawn(LOW, LIKELY, HIGH, 64, 7)[1]) == {5.0}


def test_input_keeps_its_draws_when_another_gains_a_spread():
    wider = drawn(LOW, LIKELY, HIGH + np.array([0.0, 3.0, 0.0]), 64, 7)
    np.testing.assert_array_equal(wider[[0, 2]], drawn(LOW, LIKELY, HIGH, 64, 7)[[0, 2]])


def test_each_scramble_is_evenly_spread():
    by_run = draws_of(NONE, NONE, NONE, 1024, 5).points(0, 1024).reshape(3, SCRAMBLES, 64)
    count = np.apply_along_axis(lambda points: np.histogram(points, bins=64, range=(0.0, 1.0))[0], -1, by_run)
    assert (count == 1).all()


def test_scrambles_differ_from_each_other():
    by_run = draws_of(NONE[:1], NONE[:1], NONE[:1], 128, 5).points(0, 128).reshape(SCRAMBLES, 8)
    assert len(np.unique(by_run)) == 128


@pytest.mark.parametrize("most", [8, 32, 128, 1024])
def test_runs_put_end_to_end_are_all_draws(most):
    draws = draws_of(LOW, LIKELY, HIGH, 256, 7)
    runs = [draws.values(first, count) for first, count in draws.runs(most)]
    np.testing.assert_array_equal(np.concatenate(runs, axis=1), drawn(LOW, LIKELY, HIGH, 256, 7))


def test_all_draws_of_some_inputs_are_those_rows():
    some = np.array([2, 0])
    np.testing.assert_array_equal(draws_of(LOW, LIKELY, HIGH, 64, 7).of(some), drawn(LOW, LIKELY, HIGH, 64, 7)[some])


def test_draws_lie_between_low_and_high():
    values = drawn(LOW, LIKELY, HIGH, 4096, 1)
    assert (values >= LOW[:, None]).all()
    assert (values <= HIGH[:, None]).all()


def test_option_is_drawn_in_its_share():
    option = drawn_option((np.arange(1000) + 0.5) / 1000, np.array([0.2, 0.5, 0.0, 0.3]))
    assert np.bincount(option).tolist() == [200, 500, 0, 300]


@pytest.mark.parametrize("share", [[0.5, 0.6], [1.5, -0.5]])
def test_shares_that_do_not_add_up_are_refused(share):
    with pytest.raises(OutOfRangeError, match="sum of shares"):
        drawn_option(np.array([0.5]), np.array(share))
