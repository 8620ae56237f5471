"""Anchors of the outdoor bracket."""

import numpy as np
import pytest

from econ.installation.anchoring import allowable_n, top_pull_n
from econ.kernel.errors import OutOfRangeError

LBF_N = 4.4482216152605  # NIST SP 811 (2008), App. B.8: 1 lbf = 4.448 222 N


# Worked by hand: a unit of 88 lb, its middle 14 in from the wall, bolts 16 in apart:
# moment 88 x 14 = 1,232 lbf in; over 16 in: 77 lbf on the top pair.
def test_pull_on_the_top_pair_is_weight_times_reach_over_height():
    pull = top_pull_n(np.array([88.0 * 0.45359237]), np.array([14 * 0.0254]), np.array([16 * 0.0254]))
    assert pull == pytest.approx(77.0 * LBF_N, rel=1e-9)


def test_a_taller_bracket_pulls_less():
    short, tall = top_pull_n(np.array([40.0, 40.0]), np.array([0.35, 0.35]), np.array([0.3, 0.6]))
    assert short == pytest.approx(2.0 * tall)


def test_one_anchor_may_hold_a_quarter_of_its_breaking_load():
    assert allowable_n(np.array([4000.0])) == pytest.approx(1000.0)


def test_a_bracket_without_height_is_refused():
    with pytest.raises(OutOfRangeError, match="height of the bracket is 0 m; it must be above 0"):
        top_pull_n(np.array([40.0]), np.array([0.3]), np.array([0.0]))
