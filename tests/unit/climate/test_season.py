"""The hot season by hand, on both halves of the globe."""

import numpy as np
import pytest

from econ.climate.season import hot_season_d
from econ.kernel.constants import DAYS_PER_YEAR

NORTH = np.array([0.0, 0.0, 0.0, 0.0, 0.0, 100.0, 200.0, 100.0, 0.0, 0.0, 0.0, 0.0])
"""400 K*day: 40 of them pass 12 days into June, 360 when 18.6 of August's 31 days have passed."""

FROM_DOY, TO_DOY = 151.0 + 12.0, 212.0 + 18.6


def test_the_hot_season_lies_between_a_tenth_and_nine_tenths_of_the_degree_days():
    assert hot_season_d(NORTH, 0.0) == pytest.approx((FROM_DOY, TO_DOY))


@pytest.mark.parametrize("doy", [0.0, 100.0, 162.0, 163.0, 200.0, 230.0])
def test_a_season_that_has_begun_began_before_the_decision(doy):
    from_d, to_d = hot_season_d(NORTH, doy)
    assert (from_d, to_d) == pytest.approx((FROM_DOY - doy, TO_DOY - doy))


@pytest.mark.parametrize("doy", [231.0, 300.0, 364.0])
def test_after_its_end_the_season_is_that_of_next_year(doy):
    assert hot_season_d(NORTH, doy) == pytest.approx((FROM_DOY + DAYS_PER_YEAR - doy, TO_DOY + DAYS_PER_YEAR - doy))


def test_a_southern_summer_is_one_piece_across_the_new_year():
    # Dec 100, Jan 200, Feb 100: from 1 December 0:00 (day 334) 12.4 days; nine tenths 16.8 days into February.
    south = np.array([200.0, 100.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 100.0])
    from_d, to_d = hot_season_d(south, 300.0)
    assert (from_d, to_d) == pytest.approx((334.0 + 12.4 - 300.0, 365.0 + 31.0 + 16.8 - 300.0))


def test_without_degree_days_there_is_no_hot_season():
    assert all(np.isnan(hot_season_d(np.zeros(12), 10.0)))
