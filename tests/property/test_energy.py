"""Laws of energy sums and bills."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.energy.served import monthly_kwh, per_year
from econ.energy.tariff import Tiers, flat_bill_usd, share_of_hours_frac, tiered_bill_usd

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


PRICE, KWH = st.floats(0.0, 1.0), st.floats(0.0, 3000.0)


@settings(max_examples=80, deadline=None, derandomize=True)
@given(KWH, KWH, KWH, st.tuples(PRICE, PRICE, PRICE), st.tuples(st.floats(1.0, 1500.0), st.floats(1.0, 1500.0)))
def test_a_tiered_bill_may_be_run_up_in_parts(
    rest: float, first: float, then: float, prices: tuple[float, float, float], limits: tuple[float, float]
) -> None:
    def bill(used: float, energy: float) -> float:
        numbers = (*prices[1:], limits[0], limits[0] + limits[1], used)
        months = np.zeros((1, 12))
        months[0, 0] = energy
        return float(tiered_bill_usd(months, np.array(prices[0]), Tiers(*map(np.array, numbers))).sum())

    assert bill(rest, first + then) == pytest.approx(bill(rest, first) + bill(rest + first, then), abs=1e-8)
    assert min(prices) * first - 1e-8 <= bill(rest, first) <= max(prices) * first + 1e-8


@settings(max_examples=80, deadline=None, derandomize=True)
@given(st.floats(0.0, 24.0), st.floats(0.0, 24.0), st.sampled_from([0.0, 1.0]))
def test_hours_of_the_clock_add_up_to_their_span(first: float, past: float, ahead_h: float) -> None:
    share = share_of_hours_frac(np.array(first), np.array(past), ahead_h)
    assert share.sum() == pytest.approx(past - first if past > first else past - first + 24.0, abs=1e-9)
    assert np.all((share >= 0.0) & (share <= 1.0 + 1e-12))
    turned = np.roll(share_of_hours_frac(np.array(first), np.array(past), 0.0), -int(ahead_h))
    assert share == pytest.approx(turned, abs=1e-9)
