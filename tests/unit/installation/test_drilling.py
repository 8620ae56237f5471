"""Bites of a core bit."""

import numpy as np
import pytest

from econ.installation.drilling import core_bites
from econ.kernel.errors import OutOfRangeError


@pytest.mark.parametrize(("wall_m", "bites"), [(0.05, 1.0), (0.0999, 1.0), (0.1, 1.0), (0.1001, 2.0), (0.3, 3.0)])
def test_bites_below_at_and_above_the_depth_of_the_bit(wall_m, bites):
    assert core_bites(np.array(wall_m), np.array(0.1)) == bites


@pytest.mark.parametrize(("wall_m", "bite_m"), [(0.0, 0.1), (0.2, 0.0), (-0.1, 0.1)])
def test_nothing_to_drill_or_no_bit_is_refused(wall_m, bite_m):
    with pytest.raises(OutOfRangeError, match="must be above 0"):
        core_bites(np.array(wall_m), np.array(bite_m))
