"""Residential load factors against the handbook's own worked house and tables.

ASHRAE Handbook Fundamentals (2021, SI), ch. 17, tables 10 and 20 to 22: 33 degC outside, 23.9 inside (9.1 K), daily
range 9.3 K.
"""

import numpy as np
import pytest

from econ.loads import load_factors
from econ.loads.load_factors import ATTIC, CRAWL_FLOOR, OPEN_FLOOR, ROOF, SHADED_WALL, SUNLIT_WALL, Envelope
from tests.printed import printed

WARMER_K, RANGE_K, DARK = np.array(9.1), np.array(9.3), np.array(0.85)


# U in W/(m2 K), cooling factor in W/m2
@pytest.mark.parametrize(
    ("kind", "u", "factor"),
    [
        (ATTIC, 0.18, "2.08"),
        (SUNLIT_WALL, 0.51, "7.12"),
        (SHADED_WALL, 0.51, "2.93"),
        (SUNLIT_WALL, 2.3, "32.09"),
    ],
)
def test_opaque_surfaces_of_the_worked_house(kind, u, factor):
    assert u * float(load_factors.opaque_difference_k(kind, WARMER_K, RANGE_K, DARK)) == printed(factor)


def test_slab_of_the_worked_house():
    assert float(load_factors.slab_factor_w_per_m2(np.array(0.21))) == printed("-2.34")


# PXI in W/m2, U, SHGC, interior shade 0.84, solar load factor of a detached house, cooling factor in W/m2;
# PXI itself is rounded to 1 W/m2
@pytest.mark.parametrize(
    ("peak", "u", "shgc", "part", "factor"),
    [
        (318.0, 2.01, 0.36, 0.56, 63.5),
        (203.0, 2.21, 0.31, 0.56, 40.3),
        (523.0, 2.01, 0.36, 0.56, 98.3),
        (335.0, 2.21, 0.31, 0.56, 59.5),
        (574.0, 2.01, 0.36, 0.56, 107.0),
        (391.0, 2.01, 0.36, 0.47, 65.3),
        (250.0, 2.21, 0.31, 0.47, 41.3),
        (318.0, 2.01, 0.36, 0.31, 39.5),
        (421.0, 2.01, 0.36, 0.31, 49.1),
    ],
)
def test_windows_of_the_worked_house(peak, u, shgc, part, factor):
    ours = u * float(load_factors.window_difference_k(WARMER_K, RANGE_K)) + peak * shgc * 0.84 * part
    assert ours == pytest.approx(factor, abs=0.05 + 0.5 * shgc * 0.84 * part)


# table 10, latitudes 25 to 60 by 5 degrees, from north round to south, then the horizontal, W/m2
PEAKS = {
    "N": (203, 183, 172, 169, 174, 187, 208, 237),
    "NE": (590, 582, 575, 571, 568, 568, 570, 574),
    "E": (702, 719, 734, 748, 761, 773, 783, 792),
    "SE": (492, 542, 589, 632, 673, 710, 744, 775),
    "S": (218, 306, 391, 471, 547, 619, 686, 749),
    "horizontal": (958, 960, 952, 935, 909, 875, 831, 778),
}


@pytest.mark.parametrize(("face", "figures"), PEAKS.items())
def test_peak_irradiance(face, figures):
    at = load_factors.FACES.index(face)
    for latitude, figure in zip(range(25, 65, 5), figures, strict=True):
        assert float(load_factors.peak_irradiance_w_per_m2(float(latitude))[at]) == printed(str(figure))


# table 22: ceiling 405, walls 772, garage wall 103, doors 122 W; walls, doors and ceiling together as rows of ours
def test_envelope_of_the_worked_house():
    one = np.ones(1)
    zero = 0.0 * one
    house = Envelope(
        floor_area_m2=195.3 * one,
        glass_area_m2=13.9 * one,
        attic_w_per_k=0.18 * 195.3 * one,
        roof_w_per_k=zero,
        sunlit_wall_w_per_k=(0.51 * 108.5 + 2.3 * 3.8) * one,
        open_floor_w_per_k=zero,
        crawl_floor_w_per_k=zero,
        partition_w_per_k=zero,
        slab_area_m2=195.3 * one,
        window_w_per_k=zero,
        sun_area_m2=np.zeros((1, 9)),
        roof_absorptance_frac=DARK * one,
    )
    parts = load_factors.sensible_parts(house, WARMER_K * one, RANGE_K, np.zeros(9))
    assert float(parts.opaque_w[0]) == pytest.approx(405.0 + 772.0 + 122.0, abs=1.5)
    assert float(parts.slab_w[0]) == pytest.approx(-457.0, abs=0.5)


# the same coefficients as the US-customary edition prints, from memory: 25.7 a - 8.1 and 68.9 a - 12.6 degF
@pytest.mark.parametrize(("kind", "constant_f", "slope_f"), [(ATTIC, -8.1, 25.7), (ROOF, -12.6, 68.9)])
def test_roof_coefficients_agree_between_the_editions(kind, constant_f, slope_f):
    assert kind.sun_k * 1.8 == pytest.approx(constant_f, abs=0.1)
    assert kind.sun_by_absorptance_k * 1.8 == pytest.approx(slope_f, abs=0.1)


def test_floors_feel_a_third_of_a_crawl_space_and_all_of_open_air():
    crawl, open_air = (
        float(load_factors.opaque_difference_k(kind, WARMER_K, RANGE_K, DARK)) for kind in (CRAWL_FLOOR, OPEN_FLOOR)
    )
    assert crawl == pytest.approx(0.33 * 9.1 - 0.28 * 9.3)
    assert open_air == pytest.approx(9.1 - 0.06 * 9.3)


def test_south_of_the_equator_north_takes_the_sun():
    north, south = (load_factors.peak_irradiance_w_per_m2(latitude) for latitude in (35.0, -35.0))
    assert north[0] == south[4]
    assert north[1] == south[3]
    assert north[8] == south[8]
