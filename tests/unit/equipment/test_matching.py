"""The factor at which a rating comes out."""

import numpy as np
import pytest

from econ.equipment.matching import matched_factor
from econ.equipment.rating import demand_defrost_credit
from econ.kernel.errors import OutOfRangeError


def test_factor_of_a_plain_inverse_is_found_at_once() -> None:
    target = np.array([2.0, 5.0, 9.99])
    factor = matched_factor(lambda trial: 1.0 / trial, target, (0.1, 1.0), "rating")
    assert factor == pytest.approx(1.0 / target, rel=1e-12)


def test_factor_of_a_bent_rating_is_found() -> None:
    target = np.array([1.5, 4.0, 11.0])
    factor = matched_factor(lambda trial: 1.0 + 1.0 / (trial + trial**3), target, (0.05, 2.0), "rating")
    assert 1.0 + 1.0 / (factor + factor**3) == pytest.approx(target, rel=1e-6)


@pytest.mark.parametrize("target", [0.9, 10.1])
def test_a_rating_outside_the_bracket_is_refused(target: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"rating is .* it must be between 1.00 and 10.00"):
        matched_factor(lambda trial: 1.0 / trial, np.array([5.0, target]), (0.1, 1.0), "rating")


def test_ends_of_the_bracket_are_reached() -> None:
    factor = matched_factor(lambda trial: 1.0 / trial, np.array([1.0, 10.0]), (0.1, 1.0), "rating")
    assert factor == pytest.approx([1.0, 0.1], rel=1e-9)


def test_a_defrost_control_without_a_longest_time_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"longest_h is 1.5 hour; it must be above 1.5"):
        demand_defrost_credit(np.array(1.5), np.array(1.5))
