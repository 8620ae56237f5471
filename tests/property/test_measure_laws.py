"""Laws of measures on the room: what shade, film, insulation, sealing and a fan can never do."""

from functools import cache

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate, loads
from econ.evaluate.wiring.measures import effect_path, treated
from econ.loads.heat_balance import need
from econ.tables.loaders import load_tables
from tests.demo import NAMES, TODAY, demo_case

TABLES = load_tables()
names = st.sampled_from(NAMES)
shares = st.floats(0.05, 1.0)
SLACK = 1e-6


@cache
def prepared_once(name):
    """Return structure and likely values of a demo case with heat asked for and nothing absorbing sun outside."""
    structure, sheet = prepared(demo_case(name), TABLES, TODAY)
    values = point(sheet) | {"use.heat": np.asarray(0.0)}
    dull = {f"rooms[{index}].absorptance_frac": np.asarray(0.0) for index in range(structure.n_rooms)}
    return structure, values | dull


def yearly(name, rows, **effects):
    """Return a year's sensible cooling and heating of all rooms, a row for each set of measures taken."""
    structure, values = prepared_once(name)
    values = values | {effect_path(key, TABLES.measures[key]): np.asarray(effect) for key, effect in effects.items()}
    taken = {key: np.array([key in row for row in rows]) for key in effects}
    after = treated(structure, values, TABLES, taken)
    weather = climate.weather(structure, TABLES)
    rooms = loads.room_rows(structure, after, len(rows), weather)
    found = need(rooms, weather, loads.humidity_limit_frac(structure, after, len(rows)))
    by_room = (np.einsum("hrd,d->r", power, weather.weight_d) for power in (found.cool_w, found.heat_w))
    return tuple(each.reshape(structure.n_rooms, len(rows)).sum(axis=0) for each in by_room)


def never_more(after, before):
    return after <= before * (1.0 + 1e-9) + SLACK


@settings(max_examples=15, deadline=None)
@given(names, st.floats(0.0, 8.0), shares)
def test_insulation_and_sealing_never_raise_heating_when_nothing_absorbs_sun(name, added, left):
    _, heat = yearly(name, [(), ("attic_insulation",), ("air_sealing",)], attic_insulation=added, air_sealing=left)
    assert never_more(heat[1], heat[0])
    assert never_more(heat[2], heat[0])


@settings(max_examples=15, deadline=None)
@given(names, shares, shares)
def test_less_sun_never_raises_cooling_and_never_lowers_heating(name, shade, film):
    rows = [(), ("outside_shade",), ("window_film",), ("outside_shade", "window_film")]
    cool, heat = yearly(name, rows, outside_shade=shade, window_film=film)
    for row in (1, 2, 3):
        assert never_more(cool[row], cool[0])
        assert never_more(heat[0], heat[row])


@settings(max_examples=15, deadline=None)
@given(names, shares, st.floats(0.0, 4.0))
def test_two_measures_that_each_lower_cooling_lower_it_no_less_together(name, film, rise):
    rows = [("window_film",), ("fan",), ("window_film", "fan")]
    cool, _ = yearly(name, rows, window_film=film, fan=rise)
    assert never_more(cool[2], cool[0])
    assert never_more(cool[2], cool[1])


@settings(max_examples=10, deadline=None)
@given(names, st.floats(0.0, 0.95))
def test_the_houses_share_and_what_is_left_make_the_whole(name, share):
    structure, values = prepared_once(name)
    poorly = {"now.house_system": np.asarray(1.0)}
    weather = climate.weather(structure, TABLES)
    effect = {effect_path("balanced_duct", TABLES.measures["balanced_duct"]): np.asarray(share)}
    after = treated(structure, values | poorly | effect, TABLES, {"balanced_duct": np.array([False, True])})
    rooms = loads.room_rows(structure, after, 2, weather)
    found = need(rooms, weather, loads.humidity_limit_frac(structure, after, 2))
    for power in (found.cool_w, found.latent_w, found.heat_w):
        whole, left = power[:, 0], power[:, 1]
        assert np.allclose(left, (1.0 - share) * whole, rtol=1e-9, atol=1e-6)
