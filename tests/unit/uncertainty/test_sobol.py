"""Sobol points: the library's, digit by digit, and what makes them even."""

import numpy as np
import pytest
from scipy.stats import qmc

from econ.kernel.errors import OutOfRangeError
from econ.uncertainty.sobol import scrambled_sequence


def sobol_points(n_input, n_draw, rng):
    return scrambled_sequence(n_input, rng).points(0, n_draw)


@pytest.mark.parametrize(("n_input", "n_draw"), [(1, 1), (2, 8), (40, 1024), (2048, 64)])
def test_points_are_those_of_scipy(n_input: int, n_draw: int) -> None:
    theirs = qmc.Sobol(n_input, scramble=True, rng=np.random.default_rng(7)).random(n_draw).T
    assert np.array_equal(sobol_points(n_input, n_draw, np.random.default_rng(7)), theirs)


def test_every_dimension_has_one_point_in_each_equal_part() -> None:
    points = sobol_points(300, 256, np.random.default_rng(1))
    assert np.array_equal(np.sort(np.floor(points * 256.0), axis=1), np.tile(np.arange(256.0), (300, 1)))


def test_scrambles_differ_and_a_seed_repeats_itself() -> None:
    first, again, other = (sobol_points(3, 16, np.random.default_rng(seed)) for seed in (1, 1, 2))
    assert np.array_equal(first, again)
    assert not np.any(first == other)


@pytest.mark.parametrize(("n_input", "n_draw", "said"), [(2049, 8, "uncertain inputs"), (3, 12, "power of two")])
def test_what_the_sequence_cannot_give_is_refused(n_input: int, n_draw: int, said: str) -> None:
    with pytest.raises(OutOfRangeError, match=said):
        sobol_points(n_input, n_draw, np.random.default_rng(1))


@pytest.mark.parametrize("count", [1, 8, 64, 512])
def test_runs_put_end_to_end_are_the_whole_sequence(count: int) -> None:
    sequence = scrambled_sequence(30, np.random.default_rng(3))
    runs = [sequence.points(first, count) for first in range(0, 512, count)]
    assert np.array_equal(np.concatenate(runs, axis=1), sequence.points(0, 512))


def test_some_dimensions_alone_are_those_of_the_whole() -> None:
    sequence, few = scrambled_sequence(30, np.random.default_rng(3)), np.array([2, 29])
    assert np.array_equal(sequence.only(few).points(64, 64), sequence.points(64, 64)[few])


def test_run_that_begins_within_another_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="a multiple of 8"):
        scrambled_sequence(2, np.random.default_rng(1)).points(4, 8)
