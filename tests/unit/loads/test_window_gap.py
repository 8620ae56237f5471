"""Air past a window unit and the sun it keeps out."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.kernel.arrays import FloatArray
from econ.loads.window_gap import WindowGap, cooling_with_gap_w, drying_with_gap_w, heating_with_gap_w, months_in

INDOORS_C = np.array([24.0])


def hours(value: float) -> FloatArray:
    return np.full((24, 1, 1), value)


def gap(air: float = 4.0, vapour: float = 8000.0, shade: float = 30.0) -> WindowGap:
    return WindowGap(*(np.array([[value]]) for value in (air, vapour, shade)))


def test_hot_air_adds_to_cooling_and_shade_takes_from_it() -> None:
    assert cooling_with_gap_w(hours(1000.0), gap(), hours(34.0), INDOORS_C)[0].item() == pytest.approx(1000 + 40 - 30)


def test_cool_air_helps_but_never_turns_cooling_round() -> None:
    assert cooling_with_gap_w(hours(1000.0), gap(), hours(20.0), INDOORS_C)[0].item() == pytest.approx(1000 - 16 - 30)
    assert cooling_with_gap_w(hours(20.0), gap(), hours(14.0), INDOORS_C)[0].item() == 0.0


def test_cold_air_and_lost_sun_add_to_heating() -> None:
    assert heating_with_gap_w(hours(500.0), gap(), hours(-6.0), INDOORS_C)[0].item() == pytest.approx(500 + 120 + 30)


def test_damp_air_adds_to_drying() -> None:
    outdoors, limit = np.full((24, 1, 1), 0.016), np.array([0.011])
    assert drying_with_gap_w(hours(200.0), gap(), outdoors, limit)[0].item() == pytest.approx(200 + 40)


def test_hours_that_want_nothing_and_days_without_units_stay_as_they_are() -> None:
    out = gap(0.0, 0.0, 0.0)
    for change, at in ((cooling_with_gap_w, 34.0), (heating_with_gap_w, -6.0)):
        assert not change(hours(0.0), gap(), hours(at), INDOORS_C).any()
        assert (change(hours(700.0), out, hours(at), INDOORS_C) == 700.0).all()


@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.floats(1.0, 3000.0), st.floats(24.0, 45.0), st.floats(0.0, 20.0), st.floats(0.0, 20.0))
def test_a_wider_gap_never_lowers_cooling_in_hot_air(cool_w: float, at_c: float, air: float, more: float) -> None:
    tight, wide = (
        cooling_with_gap_w(hours(cool_w), gap(each, 0.0, 0.0), hours(at_c), INDOORS_C) for each in (air, air + more)
    )
    assert (wide >= tight - 1e-9).all()


def test_units_are_in_from_the_first_to_the_last_hot_month() -> None:
    by_month = np.array([[0.0, 0.0, 0.0, 0.5, 30.0, 100.0, 200.0, 0.0, 90.0, 3.0, 0.0, 0.0], [0.0] * 12])
    assert np.flatnonzero(months_in(by_month)[0]).tolist() == [4, 5, 6, 7, 8]
    assert not months_in(by_month)[1].any()


def test_a_summer_over_the_turn_of_the_year_is_one_season() -> None:
    by_month = np.array([[100.0, 80.0, 40.0, 0, 0, 0, 0, 0, 0, 0, 20.0, 60.0]])
    assert np.flatnonzero(~months_in(by_month)[0]).tolist() == list(range(3, 10))
