"""A dehumidifier's heat, against the balance worked out step by step."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.equipment.dehumidifier import cooling_with_dehumidifier_w, heat_per_drying, heating_with_dehumidifier_w
from econ.kernel.arrays import FloatArray


def cell(value: float) -> FloatArray:
    return np.array([[value]])


# Heat of vaporisation 2.501 MJ/kg (ASHRAE Fundamentals) = 0.6947 kWh/kg: at 1.7 kg/kWh, 1 + 1/(1.7 x 0.6947).
def test_heat_given_off_is_that_of_condensing_and_the_electricity() -> None:
    assert heat_per_drying(np.array(1.7)) == pytest.approx(1.0 + 1.0 / (1.7 * 2.501 / 3.6))


def by_steps(cool_w: float, latent_w: float, share: float, heat: float) -> float:
    """Run machine and dehumidifier after each other until nothing moves."""
    wanted_w = cool_w
    for _ in range(2000):
        left_w = max(latent_w - share * wanted_w, 0.0)
        wanted_w = 0.5 * wanted_w + 0.5 * (cool_w + heat * left_w)
    return wanted_w


@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.floats(1.0, 4000.0), st.floats(0.0, 3000.0), st.floats(0.0, 0.6), st.floats(1.2, 2.3))
def test_machine_and_dehumidifier_share_the_moisture_where_steps_would_settle(
    cool_w: float, latent_w: float, share: float, heat: float
) -> None:
    found = cooling_with_dehumidifier_w(cell(cool_w), cell(latent_w), np.array([share]), np.array([heat]))
    assert found[0, 0] == pytest.approx(by_steps(cool_w, latent_w, share, heat), rel=1e-9)


@pytest.mark.parametrize("latent_w", [0.0, 100.0, 316.0])
def test_moisture_that_comes_along_with_cooling_asks_for_nothing_more(latent_w: float) -> None:
    found = cooling_with_dehumidifier_w(cell(1000.0), cell(latent_w), np.array([0.24 / 0.76]), np.array([1.4]))
    assert found.item() == pytest.approx(1000.0 if latent_w < 315.0 else 1000.07, abs=0.2)


def test_an_hour_without_cooling_asks_for_none() -> None:
    assert cooling_with_dehumidifier_w(cell(0.0), cell(900.0), np.array([0.3]), np.array([1.4])).item() == 0.0


def test_where_no_drying_is_asked_for_nothing_changes() -> None:
    found = cooling_with_dehumidifier_w(cell(700.0), cell(900.0), np.array([0.3]), np.array([0.0]))
    assert found.item() == 700.0


def test_heat_helps_in_hours_of_heating_and_never_turns_them_round() -> None:
    heat = np.array([1.4])
    assert heating_with_dehumidifier_w(cell(1000.0), cell(300.0), heat).item() == pytest.approx(580.0)
    assert heating_with_dehumidifier_w(cell(100.0), cell(300.0), heat).item() == 0.0
    assert heating_with_dehumidifier_w(cell(100.0), cell(0.0), heat).item() == 100.0
