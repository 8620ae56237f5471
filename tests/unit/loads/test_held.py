"""A plant of limited cooling: what it lacks stays in the room."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.kernel.errors import ShapeError
from econ.loads.heat_balance import held, need
from tests.unit.loads.rooms import LIMIT, days, random_rows, rows

HOT = days([30.0, 38.0], 8.0, 300.0)
NO_LIMIT = np.full((24, 1, 2), np.inf)


def test_without_a_limit_it_is_the_need():
    wanted, found = need(rows(), HOT, LIMIT), held(rows(), HOT, NO_LIMIT)
    assert found.cool_w == pytest.approx(wanted.cool_w)
    assert found.above_k == pytest.approx(0.0)


def test_a_limit_just_above_the_peak_changes_nothing_and_one_just_below_does():
    wanted = need(rows(), HOT, LIMIT).cool_w
    above, below = (held(rows(), HOT, np.full((24, 1, 2), wanted.max() * factor)) for factor in (1.001, 0.999))
    assert above.cool_w == pytest.approx(wanted)
    assert below.above_k.max() > 0.0


def test_steady_shortage_warms_the_room_until_losses_make_up_for_it():
    room = rows(ua_opaque_w_per_k=[0.0], ua_window_w_per_k=[0.0])
    weather = days([34.0])
    wanted_w = need(room, weather, LIMIT).cool_w[0, 0, 0]
    found = held(room, weather, np.full((24, 1, 1), 0.6 * wanted_w))
    # Air at 24 degC takes up 10 K times its flow; with 6 tenths of that removed the room is 4 K above.
    assert found.above_k == pytest.approx(4.0, rel=1e-6)
    assert found.cool_w == pytest.approx(0.6 * wanted_w)


def test_hours_that_are_not_cooled_are_never_too_warm():
    by_day = np.zeros((1, 24), bool)
    by_day[:, 9:17] = True
    found = held(rows(is_cooled=by_day), HOT, np.zeros((24, 1, 2)))
    assert found.above_k[:9].max() == 0.0
    assert found.above_k[12].max() > 0.0


@given(st.integers(0, 500), st.floats(0.0, 1.0))
def test_what_is_removed_never_passes_the_limit_nor_what_the_room_needs_in_a_day(seed, share):
    rooms = replace(random_rows(4, seed), cool_day_above_c=np.full(4, -99.0))
    weather = days(np.linspace(15.0, 36.0, 5), 6.0, 300.0)
    wanted = need(rooms, weather, np.full(4, 0.6)).cool_w
    most = share * wanted.max(axis=0, keepdims=True) + np.zeros_like(wanted)
    found = held(rooms, weather, most)
    assert np.all(found.cool_w <= most + 1e-9)
    assert np.all(found.cool_w.sum(axis=0) <= wanted.sum(axis=0) + 1e-6)


@given(st.integers(0, 500), st.floats(0.0, 0.9))
def test_a_larger_plant_never_leaves_more_heat(seed, share):
    rooms = replace(random_rows(4, seed), cool_day_above_c=np.full(4, -99.0))
    weather = days(np.linspace(15.0, 36.0, 5), 6.0, 300.0)
    peak = need(rooms, weather, np.full(4, 0.6)).cool_w.max(axis=0, keepdims=True) * np.ones((24, 1, 1))
    small, large = (held(rooms, weather, part * peak).above_k.sum(axis=0) for part in (share, share + 0.1))
    assert np.all(large <= small + 1e-6)


def test_chained_days_carry_the_shortage_on():
    weather = days([25.0, 38.0, 25.0, 25.0], 6.0, 300.0, is_chained=True)
    found = held(rows(), weather, np.full((24, 1, 4), 150.0))
    assert found.above_k[:, 0, 1].max() > found.above_k[:, 0, 2].max() > 0.0


def test_some_days_of_weather_keep_their_weights():
    part = HOT.of_days(np.array([1]))
    assert part.weight_d.tolist() == HOT.weight_d[1:].tolist()
    assert part.dry_bulb_c.shape == (24, 1)


def test_no_day_can_be_left_out_of_a_chain():
    with pytest.raises(ShapeError, match="none can be left out"):
        days([10.0, 20.0], is_chained=True).of_days(np.array([0]))
