"""The hourly method: steady days by hand, the repeating day, chained days, masks and refusals."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.constants import AIR_DENSITY_KG_PER_M3, AIR_HEAT_J_PER_KGK
from econ.kernel.errors import OutOfRangeError
from econ.loads import day_balance
from econ.loads.day_balance import mass_residual_k
from econ.loads.heat_balance import need
from tests.unit.loads.rooms import LIMIT, days, picked, random_rows, rows

AIR_W_PER_K = 0.006 * AIR_DENSITY_KG_PER_M3 * AIR_HEAT_J_PER_KGK
YEAR = np.linspace(-20.0, 32.0, 84)


def resistance_between_mass_and_air():
    """Return what air temperature and a steady loss by the opaque path have between them: no air flow, no windows."""
    return 1.0 / (3.45 * 4.5 * 20.0)


def test_steady_day_without_opaque_loss_is_paper_arithmetic():
    room = rows(ua_opaque_w_per_k=[0.0], ua_window_w_per_k=[0.0])
    heat = need(room, days([0.0]), LIMIT).heat_w
    assert heat == pytest.approx(np.full((24, 1, 1), AIR_W_PER_K * 20.0), rel=1e-9)


def test_steady_window_loss_goes_through_the_surface_film():
    room = rows(ua_opaque_w_per_k=[0.0], air_flow_m3_per_s=[0.0])
    heat = need(room, days([0.0]), LIMIT).heat_w
    assert heat == pytest.approx(20.0 / (resistance_between_mass_and_air() + 1.0 / 6.0), rel=1e-9)


def test_steady_opaque_loss_goes_through_film_and_its_own_resistance():
    room = rows(ua_window_w_per_k=[0.0], air_flow_m3_per_s=[0.0])
    heat = need(room, days([0.0]), LIMIT).heat_w
    assert heat == pytest.approx(20.0 / (resistance_between_mass_and_air() + 1.0 / 15.0), rel=1e-9)


def test_ground_pulls_like_outdoor_air_of_its_temperature():
    by_air = need(rows(air_flow_m3_per_s=[0.0]), days([10.0]), LIMIT)
    by_ground = need(
        rows(ua_opaque_w_per_k=[0.0], ua_ground_w_per_k=[15.0], air_flow_m3_per_s=[0.0]), days([10.0]), LIMIT
    )
    assert by_ground.heat_w == pytest.approx(by_air.heat_w, rel=1e-9)


def test_gain_offsets_its_own_amount_of_heating_but_for_what_the_mass_passes_out():
    room = rows(ua_opaque_w_per_k=[0.0], ua_window_w_per_k=[0.0])
    with_gain = rows(ua_opaque_w_per_k=[0.0], ua_window_w_per_k=[0.0], gain_w=np.full((1, 24), 80.0))
    saved = need(room, days([0.0]), LIMIT).heat_w - need(with_gain, days([0.0]), LIMIT).heat_w
    assert saved == pytest.approx(np.full((24, 1, 1), 80.0), rel=1e-9)


def test_held_room_is_at_its_set_point():
    found = need(rows(), days([-10.0, 35.0]), LIMIT)
    assert found.air_c[:, 0, 0] == pytest.approx(20.0)
    assert found.air_c[:, 0, 1] == pytest.approx(24.0)


def test_nothing_is_needed_between_the_set_points():
    found = need(rows(), days([22.0]), LIMIT)
    assert not found.heat_w.any()
    assert not found.cool_w.any()
    assert found.air_c == pytest.approx(22.0)


def test_heating_and_cooling_never_run_in_the_same_hour():
    found = need(random_rows(40, 1), days(YEAR, 8.0, 500.0), np.full(40, 0.6))
    assert not np.any((found.heat_w > 0.0) & (found.cool_w > 0.0))
    assert min(found.heat_w.min(), found.cool_w.min(), found.latent_w.min()) >= 0.0


def test_each_repeating_day_ends_with_the_mass_temperature_it_began_with():
    residual = mass_residual_k(random_rows(200, 2), days(YEAR, 8.0, 500.0))
    assert np.abs(residual).max() < 1e-9


def test_newton_needs_no_more_passes_than_it_is_given(monkeypatch):
    monkeypatch.setattr(day_balance, "NEWTON_PASSES", day_balance.NEWTON_PASSES - 1)
    residual = mass_residual_k(random_rows(200, 3), days(YEAR, 8.0, 500.0))
    assert np.abs(residual).max() < 1e-9


def test_a_row_gives_the_same_numbers_alone_and_among_others():
    rooms, weather = random_rows(30, 4), days(YEAR, 8.0, 500.0)
    among = need(rooms, weather, np.full(30, 0.6))
    alone = need(picked(rooms, slice(17, 18)), weather, np.full(1, 0.6))
    for name in ("heat_w", "cool_w", "latent_w", "air_c"):
        assert np.array_equal(getattr(alone, name)[:, 0], getattr(among, name)[:, 17]), name


def test_chained_days_that_are_all_alike_are_the_repeating_day():
    repeating = need(rows(), days([3.0], 6.0, 200.0), LIMIT)
    chained = need(rows(), days([3.0] * 5, 6.0, 200.0, is_chained=True), LIMIT)
    for day in range(5):
        assert chained.heat_w[:, :, day] == pytest.approx(repeating.heat_w[:, :, 0], abs=1e-6)


def test_chained_days_feel_the_day_before():
    after_cold = need(rows(), days([-20.0, 5.0, 5.0], is_chained=True), LIMIT).heat_w
    assert after_cold[0, 0, 1] > after_cold[0, 0, 2]


def test_last_chained_day_hands_its_mass_temperature_to_the_first():
    order = [-20.0, 5.0, 5.0, 5.0]
    first = need(rows(), days(order, is_chained=True), LIMIT).heat_w
    turned = need(rows(), days(order[1:] + order[:1], is_chained=True), LIMIT).heat_w
    assert turned[:, :, 3] == pytest.approx(first[:, :, 0], rel=1e-3)


def test_warming_is_added_to_the_dry_bulb():
    warmed = need(rows(warming_k=[2.0]), days([0.0], 5.0), LIMIT)
    assert warmed.heat_w == pytest.approx(need(rows(), days([2.0], 5.0), LIMIT).heat_w, rel=1e-12)


def test_hours_that_are_off_get_nothing():
    evening = (np.arange(24) >= 17)[None, :]
    found = need(rows(is_heated=evening, is_cooled=evening), days([-10.0, 35.0], 5.0), LIMIT)
    assert not found.heat_w[:17].any()
    assert not found.cool_w[:17].any()
    assert found.heat_w[17:, 0, 0].all()
    assert found.cool_w[17:, 0, 1].all()


def test_days_that_are_not_hot_get_no_cooling():
    found = need(rows(cool_day_above_c=[28.0]), days([27.0, 29.0], 6.0), LIMIT)
    assert not found.cool_w[:, 0, 0].any()
    assert found.cool_w[:, 0, 1].any()


def test_air_is_thinner_on_a_mountain():
    low = need(rows(ua_opaque_w_per_k=[0.0], ua_window_w_per_k=[0.0]), days([0.0]), LIMIT).heat_w
    thin = replace(days([0.0]), pressure_pa=0.8 * 101_325.0)
    high = need(rows(ua_opaque_w_per_k=[0.0], ua_window_w_per_k=[0.0]), thin, LIMIT).heat_w
    assert high == pytest.approx(0.8 * low)


def test_heating_above_the_cooling_set_point_is_refused():
    crossed = rows(heat_setpoint_c=np.full((1, 24), 25.0))
    with pytest.raises(OutOfRangeError, match="heating set-point less cooling set-point is 1 K; it must be at most 0"):
        need(crossed, days([0.0]), LIMIT)


@pytest.mark.parametrize(
    ("changes", "text"),
    [
        ({"mass_j_per_k": [0.0]}, "heat capacity of a room is 0 J/K; it must be above 0"),
        ({"ua_opaque_w_per_k": [500.0]}, "mass conductance less opaque conductance of a room is -45 W/K"),
        ({"mass_area_m2": [95.0]}, "surface of a room left beside mass and windows is -0.06"),
    ],
)
def test_rooms_the_network_cannot_hold_are_refused(changes, text):
    with pytest.raises(OutOfRangeError, match=text):
        need(rows(**changes), days([0.0]), LIMIT)
