"""Circuit rules (NEC articles 440 and 240, recalled; text not quoted)."""

import numpy as np
import pytest

from econ.equipment.circuit import cord_limit_a, greatest_protection_a, minimum_ampacity_a
from tests.printed import printed


# 8.0 A compressor with .5 and .3 A fans -> MCA 10.8 A.
def test_minimum_ampacity_is_printed() -> None:
    assert minimum_ampacity_a(np.array(8.0), np.array(0.8)) == printed("10.8")


# Ceiling 175 % of the compressor, 225 % if it will not start.
@pytest.mark.parametrize(("is_hard", "share"), [(False, 1.75), (True, 2.25)])
def test_greatest_protection_follows_the_compressor(is_hard: bool, share: float) -> None:
    mop = greatest_protection_a(np.array(8.0), np.array(0.8), is_hard_to_start=is_hard)
    assert mop == pytest.approx(8.0 * share + 0.8)


# A 15 A circuit: 12 A alone, 7.5 A where it shares.
def test_cord_connected_unit_takes_its_share_of_the_circuit() -> None:
    assert cord_limit_a(np.array([15.0, 15.0]), np.array([False, True])).tolist() == [12.0, 7.5]
