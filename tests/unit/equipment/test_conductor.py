"""Wire sizes and the room left on a service."""

import numpy as np
import pytest

from econ.equipment.conductor import AMPACITY_A, SIZES_AWG, ampacity_a, least_size_awg, voltage_drop_frac
from econ.equipment.panel import FIRST_VA, DwellingLoad, existing_dwelling_load_va
from econ.kernel.errors import OutOfRangeError


@pytest.mark.parametrize(
    ("current_a", "awg"), [(1.0, 14), (15.0, 14), (15.1, 12), (20.0, 12), (20.1, 10), (30.0, 10), (30.1, 8), (41.0, 6)]
)
def test_the_thinnest_wire_that_carries_the_current_is_taken(current_a, awg):
    assert least_size_awg(np.array([current_a])).tolist() == [awg]


def test_a_current_no_listed_wire_carries_takes_the_thickest_and_shows_that_it_is_short():
    assert ampacity_a(least_size_awg(np.array([70.0])))[0] < 70.0


def test_an_unlisted_wire_size_is_refused():
    with pytest.raises(OutOfRangeError, match=r"wire size is 11 AWG; it must be 14, 12, 10, 8 or 6"):
        ampacity_a(np.array([12.0, 11.0]))


def test_ampacity_grows_as_the_gauge_number_falls():
    assert np.all(np.diff(SIZES_AWG) < 0.0)
    assert np.all(np.diff(AMPACITY_A) > 0.0)


def test_the_lost_share_is_four_times_smaller_at_twice_the_voltage_for_the_same_power():
    at_120 = voltage_drop_frac(20.0, 12.0, 12.0, 120.0)
    at_240 = voltage_drop_frac(20.0, 6.0, 12.0, 240.0)
    assert float(at_120) == pytest.approx(4.0 * float(at_240), rel=1e-12)


def load(appliance_va, conditioning_va=0.0):
    return DwellingLoad(np.array([0.0]), np.array([appliance_va]), np.array([conditioning_va]))


def test_only_what_lies_above_the_first_step_counts_for_40_percent():
    base = FIRST_VA - 4500.0
    at, above = (float(existing_dwelling_load_va(load(va))[0]) for va in (base, base + 100.0))
    assert at == FIRST_VA
    assert above == pytest.approx(FIRST_VA + 40.0)


def test_heating_and_cooling_count_in_full_whatever_the_rest():
    with_unit = existing_dwelling_load_va(load(30_000.0, 3_600.0)) - existing_dwelling_load_va(load(30_000.0))
    assert float(with_unit[0]) == pytest.approx(3_600.0)


@pytest.mark.parametrize("field", ["floor_area_m2", "appliance_va", "conditioning_va"])
def test_a_load_below_zero_is_refused(field):
    given = {"floor_area_m2": np.array([1.0]), "appliance_va": np.array([1.0]), "conditioning_va": np.array([1.0])}
    with pytest.raises(OutOfRangeError, match=f"{field} is -1"):
        existing_dwelling_load_va(DwellingLoad(**{**given, field: np.array([-1.0])}))
