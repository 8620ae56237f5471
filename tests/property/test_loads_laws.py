"""Laws of loads: what must hold in any room."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.climate.ground import MID_MONTH_D
from econ.energy.served import monthly_kwh
from econ.loads import below_grade, buried
from econ.loads.block_load import block_loads
from econ.loads.day_balance import mass_residual_k
from econ.loads.design_load import PIECES, FactorLoads, design_loads
from econ.loads.heat_balance import need
from econ.loads.infiltration import leakage_flow_m3_per_s
from econ.tables.conduction import earth_grid
from tests.unit.loads.rooms import LIMIT, days, picked, random_rows, rows

YEAR = np.linspace(-20.0, 32.0, 12)
seeds = st.integers(0, 10_000)
ONE = np.ones(1)


def yearly(found):
    return found.heat_w.sum(axis=(0, 2)), found.cool_w.sum(axis=(0, 2))


@given(st.floats(0.002, 0.05), st.floats(1.1, 4.0))
def test_heating_is_linear_in_air_flow_when_nothing_else_acts(flow, times):
    only_air = {"ua_opaque_w_per_k": [0.0], "ua_window_w_per_k": [0.0]}
    once, more = (
        need(rows(air_flow_m3_per_s=[f], **only_air), days([-5.0, 3.0]), LIMIT).heat_w for f in (flow, flow * times)
    )
    assert more == pytest.approx(once * times, rel=1e-9)


@given(st.floats(1.0, 20.0), st.floats(0.0, 40.0), st.floats(0.0, 12.0))
def test_more_insulation_never_raises_heating_when_nothing_absorbs_sun(ua, mean_drop, swing):
    weather = days([15.0 - mean_drop, 10.0 - mean_drop], swing)
    loose, tight = (yearly(need(rows(ua_opaque_w_per_k=[u]), weather, LIMIT))[0] for u in (ua, 0.7 * ua))
    assert tight <= loose + 1e-9


@given(seeds)
def test_more_gain_never_raises_heating_or_lowers_cooling(seed):
    rooms = random_rows(5, seed)
    more = replace(rooms, gain_w=rooms.gain_w + 100.0)
    weather = days(YEAR, 8.0, 400.0)
    (heat, cool), (heat_more, cool_more) = (yearly(need(r, weather, np.full(5, 0.6))) for r in (rooms, more))
    assert np.all(heat_more <= heat + 1e-6)
    assert np.all(cool_more >= cool - 1e-6)


@given(seeds, st.floats(0.1, 3.0))
def test_warming_never_raises_heating_or_lowers_cooling(seed, warmer_k):
    rooms = replace(random_rows(5, seed), cool_day_above_c=np.full(5, -99.0))
    warmed = replace(rooms, warming_k=rooms.warming_k + warmer_k)
    weather = days(YEAR, 8.0, 400.0)
    (heat, cool), (heat_warm, cool_warm) = (yearly(need(r, weather, np.full(5, 0.6))) for r in (rooms, warmed))
    assert np.all(heat_warm <= heat + 1e-6)
    assert np.all(cool_warm >= cool - 1e-6)


@given(seeds, st.integers(0, 8), st.floats(0.01, 2.0))
def test_more_sun_through_windows_never_lowers_cooling_or_raises_heating(seed, face, more_m2):
    rooms = random_rows(5, seed)
    aperture = rooms.window_aperture_m2.copy()
    aperture[:, face] += more_m2
    brighter, weather = replace(rooms, window_aperture_m2=aperture), days(YEAR, 8.0, 400.0)
    (heat, cool), (heat_sun, cool_sun) = (yearly(need(r, weather, np.full(5, 0.6))) for r in (rooms, brighter))
    assert np.all(cool_sun >= cool - 1e-6)
    assert np.all(heat_sun <= heat + 1e-6)


@given(seeds, st.integers(2, 9))
def test_a_day_of_some_weight_is_as_many_copies_of_it(seed, copies):
    rooms, limit = random_rows(4, seed), np.full(4, 0.6)
    once = days(YEAR, 8.0, 400.0)
    heavy = replace(once, weight_d=once.weight_d * copies)
    many = once.of_days(np.repeat(np.arange(len(YEAR)), copies))
    for duty in ("heat_w", "cool_w", "latent_w"):
        weighed, copied = (
            monthly_kwh(getattr(need(rooms, weather, limit), duty), weather.month, weather.weight_d)
            for weather in (heavy, many)
        )
        assert copied == pytest.approx(weighed, rel=1e-9, abs=1e-9)


@given(seeds, st.floats(-15.0, 32.0))
def test_a_chained_year_of_identical_days_is_the_periodic_day(seed, mean_c):
    rooms, limit = random_rows(4, seed), np.full(4, 0.6)
    alike = replace(days(np.full(6, mean_c), 8.0, 400.0), month=np.zeros(6, dtype=np.int64))
    periodic, chained = need(rooms, alike, limit), need(rooms, replace(alike, is_chained=True), limit)
    assert chained.heat_w == pytest.approx(periodic.heat_w, rel=1e-9, abs=1e-6)
    assert chained.cool_w == pytest.approx(periodic.cool_w, rel=1e-9, abs=1e-6)


@given(st.floats(1e-4, 0.1), st.floats(1.1, 5.0), st.floats(0.0, 40.0), st.floats(0.0, 10.0))
def test_leaks_let_in_air_in_proportion_and_never_less_in_colder_or_windier_weather(area, times, apart_k, wind):
    once, larger, colder, windier = (
        leakage_flow_m3_per_s(np.array(a), np.array(k), np.array(w))
        for a, k, w in (
            (area, apart_k, wind),
            (area * times, apart_k, wind),
            (area, apart_k + 5.0, wind),
            (area, apart_k, wind + 2.0),
        )
    )
    assert larger == pytest.approx(times * once, rel=1e-9)
    assert colder >= once
    assert windier >= once


@given(seeds, st.floats(0.1, 3.0))
def test_a_block_never_needs_more_than_its_rooms(seed, warmer_k):
    rooms = random_rows(6, seed)
    hourly = design_loads(rooms, days([28.0 + warmer_k], 6.0, 700.0, 0.014), np.array(-10.0), np.full(6, 0.6))
    nothing = FactorLoads(np.zeros(6), np.zeros((6, 8)), np.zeros(6, bool), np.zeros(6), np.ones(6))
    block = block_loads(hourly, nothing, np.ones((3, 2), bool))
    by_room = (hourly.cool_sensible_w + hourly.course_latent_w.max(axis=1)).reshape(3, 2).sum(axis=0)
    assert np.all(block.cooling_w <= by_room + 1e-6)
    assert np.all(block.cooling_w - block.latent_w >= hourly.cool_sensible_w.reshape(3, 2).max(axis=0) - 1e-6)


@given(seeds)
def test_a_row_alone_is_the_row_among_others(seed):
    rooms, weather = random_rows(7, seed), days(YEAR, 8.0, 400.0)
    among = need(rooms, weather, np.full(7, 0.6))
    alone = need(picked(rooms, slice(3, 4)), weather, LIMIT)
    assert np.array_equal(alone.heat_w[:, 0], among.heat_w[:, 3])
    assert np.array_equal(alone.cool_w[:, 0], among.cool_w[:, 3])
    assert np.array_equal(alone.latent_w[:, 0], among.latent_w[:, 3])


@given(seeds)
def test_every_day_repeats_itself(seed):
    assert np.abs(mass_residual_k(random_rows(10, seed), days(YEAR, 10.0, 700.0))).max() < 1e-9


@given(seeds)
def test_pieces_of_the_hot_day_add_up(seed):
    loads = design_loads(random_rows(5, seed), days([28.0], 6.0, 700.0, 0.014), np.array(-10.0), np.full(5, 0.6))
    assert loads.piece_w.sum(axis=1) == pytest.approx(loads.cool_sensible_w + loads.cool_latent_w, rel=1e-9, abs=1e-9)
    assert len(PIECES) == loads.piece_w.shape[1]


SHAPE = (st.floats(0.0, 3.0), st.floats(0.4, 8.0), st.floats(0.13, 5.0), st.floats(0.2, 5.0))


def room_in_earth(depth_m, half_width_m, wall_r, floor_r, soil):
    """Return conductance and ground temperature of a metre of edge."""
    k = soil.conductivity_w_per_mk
    edge = buried.Edge(depth_m * ONE, half_width_m * ONE, 0.25 * ONE, k * wall_r, k * floor_r, k * soil.film_m2k_per_w)
    heat = buried.edge_heat(edge, buried.reach_m(soil), earth_grid())
    steady, wave = heat.wall_frac + heat.floor_frac, heat.wall_wave_frac + heat.floor_wave_frac
    return k * steady, buried.seen_ground_c(k * steady, k * wave, soil)


def earth_about(conductivity, stored):
    """Return soil whose surface swings 12 K about 10 degC."""
    swing = 10.0 - 12.0 * np.cos(2.0 * np.pi * (MID_MONTH_D - 20.0) / 365.0)
    return buried.Soil(conductivity * ONE, stored * ONE, swing[None, :], 0.06 * ONE)


@given(*SHAPE, st.floats(0.7, 2.5), st.floats(8e5, 3e6))
def test_ground_never_swings_more_than_its_surface(depth_m, half_m, wall_r, floor_r, conductivity, stored):
    _, ground = room_in_earth(depth_m, half_m, wall_r, floor_r, earth_about(conductivity, stored))
    assert np.abs(ground - 10.0).max() <= 12.0 * (1.0 + 1e-6) + 0.15
    assert ground.mean() == pytest.approx(10.0, abs=0.15)


@given(*SHAPE, st.floats(1.05, 3.0))
def test_more_insulation_never_lets_more_into_the_earth(depth_m, half_m, wall_r, floor_r, more):
    soil = earth_about(1.385, 2e6)
    bare = room_in_earth(depth_m, half_m, wall_r, floor_r, soil)[0]
    assert room_in_earth(depth_m, half_m, wall_r * more, floor_r * more, soil)[0] <= bare * (1.0 + 1e-9)


@given(st.floats(0.3, 2.5), st.floats(0.3, 2.0), st.floats(0.1, 3.0))
def test_a_deeper_wall_conducts_less_a_square_metre(depth_m, more_m, resistance):
    shallow, deep = (
        below_grade.wall_u_w_per_m2k(np.array(0.0), np.array(z), np.array(resistance), np.array(1.385))
        for z in (depth_m, depth_m + more_m)
    )
    assert deep < shallow
