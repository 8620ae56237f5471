"""Laws of energy sums and bills."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.energy.served import monthly_kwh, per_year
from econ.energy.tariff import flat_bill_usd

DAYS = st.lists(st.tuples(st.integers(0, 11), st.floats(0.1, 31.0), st.floats(0.0, 9000.0)), min_size=1, max_size=30)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(DAYS)
def test_months_agree_with_a_plain_loop(days: list[tuple[int, float, float]]) -> None:
    month, weight_d, power_w = (np.array(part) for part in zip(*days, strict=True))
    hours = np.broadcast_to(power_w, (24, 1, len(days)))
    expected = np.zeros(12)
    for at, weight, power in days:
        expected[at] += 24.0 * weight * power / 1000.0
    assert monthly_kwh(hours, month, weight_d)[0] == pytest.approx(expected, rel=1e-9, abs=1e-9)
    assert per_year(hours.sum(axis=0), weight_d)[0] == pytest.approx(1000.0 * expected.sum(), rel=1e-9, abs=1e-9)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.floats(0.0, 5000.0), st.floats(0.0, 2.0), st.floats(0.0, 3.0))
def test_a_flat_bill_is_linear_in_energy(energy_kwh: float, price: float, factor: float) -> None:
    months = np.full((1, 12), energy_kwh)
    bill = flat_bill_usd(months, np.array([price]))
    assert flat_bill_usd(months * factor, np.array([price])) == pytest.approx(bill * factor, rel=1e-12, abs=1e-12)
