"""Degree-days: gaps, limits and refusals."""

import numpy as np
import pytest

from econ.climate import degree_days
from econ.kernel.constants import MONTH_DAYS
from econ.kernel.errors import OutOfRangeError, ShapeError

MEAN_C = np.array([-4.6, -2.5, 3.8, 10.0, 15.3, 21.1, 24.1, 21.8, 18.1, 11.0, 4.7, -3.7])
SD_K = np.full(12, 4.0)


def test_a_known_spread_is_kept_and_a_gap_filled():
    with_gap = np.where(np.arange(12) == 3, np.nan, SD_K)
    filled = degree_days.known_sd_k(MEAN_C, with_gap)
    assert np.delete(filled, 3).tolist() == np.delete(SD_K, 3).tolist()
    assert 1.0 < filled[3] < 8.0


def test_far_below_the_base_the_spread_does_not_matter():
    heating = degree_days.heating_kd(np.full(12, -30.0), SD_K, np.array(18.0))
    assert heating == pytest.approx(48.0 * np.array(MONTH_DAYS), rel=1e-9)


def test_several_bases_at_once_give_the_rows_of_each():
    both = degree_days.heating_kd(MEAN_C, SD_K, np.array([15.0, 18.0]))
    alone = degree_days.heating_kd(MEAN_C, SD_K, np.array(18.0))
    assert both.shape == (2, 12)
    assert both[1].tolist() == alone.tolist()


def test_no_spread_is_refused():
    with pytest.raises(OutOfRangeError, match="sd_k is 0 K; it must be above 0 K"):
        degree_days.heating_kd(MEAN_C, np.zeros(12), np.array(18.0))


def test_a_gap_left_in_is_refused():
    with pytest.raises(OutOfRangeError, match="sd_k"):
        degree_days.cooling_kd(MEAN_C, np.where(np.arange(12) == 3, np.nan, SD_K), np.array(18.0))


def test_eleven_months_are_refused():
    with pytest.raises(ShapeError, match="mean_c has shape \\(11,\\); its last axis must hold 12 months"):
        degree_days.heating_kd(MEAN_C[:11], SD_K, np.array(18.0))
