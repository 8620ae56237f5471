"""Hand checks of heat through earth: the standard's heated basement."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.loads import below_grade

ONE = np.ones(1)


def basement(**changed):
    """Return a square basement of 8 m by 8 m, 2 m deep, uninsulated."""
    parts = {
        "floor_area_m2": 64.0,
        "perimeter_m": 32.0,
        "depth_m": 2.0,
        "wall_m": 0.2,
        "wall_resistance_m2k_per_w": 0.3,
        "floor_resistance_m2k_per_w": 0.3,
    }
    return below_grade.Basement(**{name: value * ONE for name, value in (parts | changed).items()})


# by hand from ISO 13370 eq. 11 to 14: B 4, d_f 0.2 + 0.6 = 0.8, d_w 0.6, k 2:
# floor 4/(12.566 + 1.8) ln(12.566/1.8 + 1), walls 4/(2 pi) (1 + 0.6/5.2) ln(2/0.6 + 1)
def test_basement_is_the_standard_s_arithmetic():
    wall_u, floor_u = below_grade.basement_u_w_per_m2k(basement(), 2.0 * ONE)
    assert wall_u == pytest.approx(1.0412, abs=5e-5)
    assert floor_u == pytest.approx(0.5783, abs=5e-5)


def test_well_insulated_basement_floor_is_the_standard_s_second_formula():
    floor_u = below_grade.basement_u_w_per_m2k(basement(floor_resistance_m2k_per_w=3.0), 2.0 * ONE)[1]
    assert floor_u == pytest.approx(2.0 / (0.457 * 4.0 + 6.2 + 1.0), rel=1e-12)


@pytest.mark.parametrize("name", ["depth_m", "perimeter_m"])
def test_basement_without_depth_or_edge_is_refused(name):
    with pytest.raises(OutOfRangeError, match=r"it must be above 0 m\. Use a slab on grade instead\."):
        below_grade.basement_u_w_per_m2k(basement(**{name: 0.0}), 2.0 * ONE)
