"""Internal rate of return: against a library, and where there is none."""

import numpy as np
import numpy_financial as npf
import pytest

from econ.lifecycle.rate_of_return import internal_rate


def test_many_rows_agree_with_a_library_one_by_one():
    rng = np.random.default_rng(11)
    flow = rng.uniform(10.0, 400.0, (200, 21))
    flow[:, 0] = -rng.uniform(200.0, 6000.0, 200)
    found = internal_rate(flow)
    assert found.exists.all()
    assert found.rate_frac == pytest.approx([npf.irr(row) for row in flow], abs=1e-10)


def test_replacement_saved_midway_still_gives_one_rate():
    flow = np.array([-2370.0, *[400.0] * 8, 850.0, *[400.0] * 5, -250.0])
    found = internal_rate(flow)
    assert (bool(found.exists), bool(found.is_multiple)) == (True, False)
    assert npf.npv(float(found.rate_frac), flow) == pytest.approx(0.0, abs=1e-9)


def test_row_gives_the_same_rate_alone_and_among_others():
    rng = np.random.default_rng(3)
    flow = rng.normal(20.0, 100.0, (300, 12))
    flow[:, 0] = -300.0
    alone = np.array([internal_rate(row).rate_frac for row in flow])
    np.testing.assert_array_equal(internal_rate(flow).rate_frac, alone)


def test_shape_of_rows_is_kept():
    flow = np.broadcast_to(np.array([-100.0, 60.0, 60.0]), (4, 5, 3))
    assert internal_rate(flow).rate_frac.shape == (4, 5)


@pytest.mark.parametrize(
    "flow",
    [
        [0.0, 0.0, 0.0],  # nothing differs
        [100.0, -50.0, -60.0],  # money is got first
        [-100.0, -5.0, 0.0],  # nothing comes back
        [-100.0, 60.0, -10.0],  # less comes back than is put in, and the end takes more
        [-1e-3, 1e6, 1e6],  # beyond the rates looked at
    ],
)
def test_no_rate_exists(flow):
    found = internal_rate(np.array(flow))
    assert np.isnan(found.rate_frac)
    assert not found.exists


def test_start_without_a_flow_is_passed_over():
    assert float(internal_rate(np.array([0.0, -100.0, 110.0])).rate_frac) == pytest.approx(0.10, abs=1e-12)


def test_rate_of_exactly_nothing_is_found():
    assert float(internal_rate(np.array([-100.0, 50.0, 50.0])).rate_frac) == pytest.approx(0.0, abs=1e-12)


def test_nearly_all_lost_each_year_is_found():
    assert float(internal_rate(np.array([-100.0, 2.0])).rate_frac) == pytest.approx(-0.98, abs=1e-12)
