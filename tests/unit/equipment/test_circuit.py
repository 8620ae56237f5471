"""Breakers and currents."""

import numpy as np
import pytest

from econ.equipment.circuit import breaker_a, breaker_fits, running_current_a
from econ.kernel.errors import OutOfRangeError


@pytest.mark.parametrize(("mop", "size"), [(9.0, 15.0), (15.0, 15.0), (19.9, 15.0), (20.0, 20.0), (34.0, 30.0)])
def test_breaker_is_the_largest_standard_size_not_above_the_ceiling(mop: float, size: float) -> None:
    assert breaker_a(np.array([8.0]), np.array([mop])).tolist() == [size]


def test_a_ceiling_above_the_table_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="mop_a is 75 A; it must be at most 60 A"):
        breaker_a(np.array([8.0]), np.array([75.0]))


def test_an_ampacity_above_the_ceiling_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="mca_a is 25 A"):
        breaker_a(np.array([25.0]), np.array([20.0]))


@pytest.mark.parametrize(("size", "fits"), [(14.9, False), (15.0, True), (20.0, True), (20.1, False)])
def test_a_breaker_fits_between_least_ampacity_and_greatest_protection(size: float, fits: bool) -> None:
    assert breaker_fits(np.array([size]), np.array([15.0]), np.array([20.0])).tolist() == [fits]


def test_current_is_power_over_voltage() -> None:
    assert running_current_a(np.array([1200.0]), np.array([120.0])).tolist() == [10.0]
