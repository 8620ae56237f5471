"""Laws of bills: known parameters are found again, whatever they are and in whatever order the bills come."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.case.bill_text import read_bills
from econ.energy.change_point import MOST_BILLS, Bills, ChangePointKind, best_fit, change_point_fit

DAYS = np.tile(np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31], dtype=float), 2)
MEAN_C = np.concatenate([
    [-4.0, -1.5, 4.0, 10.0, 16.0, 21.5, 24.0, 23.0, 18.5, 12.0, 5.0, -1.0],
    [-6.0, -3.0, 2.5, 8.5, 14.5, 20.0, 26.0, 24.5, 17.0, 11.0, 6.5, 0.5],
])  # fmt: skip
BASE, SLOPE = st.floats(2.0, 40.0), st.floats(0.3, 4.0)
HEAT_C, COOL_C = st.floats(8.0, 15.0), st.floats(16.5, 20.0)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(BASE, SLOPE, SLOPE, HEAT_C, COOL_C)
def test_five_parameters_are_found_again(base: float, heat: float, cool: float, heat_c: float, cool_c: float) -> None:
    daily = base + heat * np.maximum(heat_c - MEAN_C, 0.0) + cool * np.maximum(MEAN_C - cool_c, 0.0)
    fit = change_point_fit(Bills(daily * DAYS, DAYS, MEAN_C), ChangePointKind.BOTH)
    assert (fit.heating_kwh_per_kd, fit.cooling_kwh_per_kd) == pytest.approx((heat, cool), rel=0.03)
    assert (fit.heating_point_c, fit.cooling_point_c) == pytest.approx((heat_c, cool_c), abs=0.3)
    assert fit.baseload_kwh_per_d == pytest.approx(base, rel=0.03)
    assert fit.is_good


@settings(max_examples=30, deadline=None, derandomize=True)
@given(BASE, SLOPE, HEAT_C, st.integers(0, 1000))
def test_noise_and_order_leave_the_slope_within_its_scatter(base: float, heat: float, heat_c: float, seed: int) -> None:
    rng = np.random.default_rng(seed)
    daily = base + heat * np.maximum(heat_c - MEAN_C, 0.0)
    energy, order = daily * DAYS * (1.0 + rng.normal(0.0, 0.02, len(DAYS))), rng.permutation(len(DAYS))
    fit, shuffled = (
        change_point_fit(Bills(energy[at], DAYS[at], MEAN_C[at]), ChangePointKind.HEATING)
        for at in (np.arange(len(DAYS)), order)
    )
    assert shuffled.heating_kwh_per_kd == pytest.approx(fit.heating_kwh_per_kd, rel=1e-6)
    scatter = 8.0 * 0.02 * daily.max() / (heat * 15.0)
    assert fit.heating_kwh_per_kd == pytest.approx(heat, rel=scatter)


@settings(max_examples=20, deadline=None, derandomize=True)
@given(st.floats(5.0, 50.0), st.integers(0, 1000))
def test_bills_that_ignore_the_weather_show_next_to_none(base: float, seed: int) -> None:
    energy = base * DAYS * (1.0 + np.random.default_rng(seed).normal(0.0, 0.02, len(DAYS)))
    fit = best_fit(Bills(energy, DAYS, MEAN_C))
    swing = fit.heating_kwh_per_kd * np.maximum(fit.heating_point_c - MEAN_C, 0.0) if fit.heating_kwh_per_kd else 0.0
    assert np.max(swing) < 0.15 * base


PIECES = st.sampled_from(
    ["2025-01-05", "1/5/25", "2/30/2026", "Jan 2026", "5 Mar 2025", "13/13/2025", "2025-00", "812", "1,024", "$148.20",
     "31 F", "-2 C", "kWh", "therms", "99999999999999", "999999 days", "-5 days",
     ",", ";", "\t", "'", '"', "°", "³", "total"]
)  # fmt: skip
ROWS = st.one_of(st.lists(PIECES, max_size=7).map(" ".join), st.text(max_size=40))


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.lists(ROWS, max_size=30).map("\n".join))
def test_any_text_is_read_or_refused_row_by_row(text: str) -> None:
    found = read_bills(text, "bills.electricity", "kwh")
    lines = [*(row.line for row in found.rows), *(int(fault.path.rpartition(" ")[2]) for fault in found.faults)]
    asked = [number for number, row in enumerate(text.splitlines(), 1) if any(letter.isdigit() for letter in row)]
    assert sorted(lines) == asked or len(found.rows) == MOST_BILLS
    assert all(0.0 <= row.energy_kwh < 1.0e9 and 15 <= row.days_d <= 101 for row in found.rows)
    assert all(fault.problem and fault.remedy for fault in found.faults)
