"""Load factors of a case's rooms."""

import numpy as np
import pytest

from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate, loads
from econ.evaluate.wiring.load_factors import envelopes, factor_loads
from econ.tables.loaders import load_tables
from tests.demo import demo_answer


def rows(name, **changed):
    answer, tables = demo_answer(name), load_tables()
    values = point(answer.sheet) | {path: np.asarray(value) for path, value in changed.items()}
    weather = climate.weather(answer.structure, tables)
    rooms = loads.room_rows(answer.structure, values, 1, weather)
    latitude = climate.station(answer.structure, tables).latitude_deg
    return factor_loads(answer.structure, values, rooms, climate.hot_day(answer.structure, tables), latitude)


def test_pieces_add_up_to_the_load():
    found = rows("garage_studio_hot")
    assert found.piece_w.sum(axis=1) == pytest.approx(found.sensible_w)


def test_more_shade_lowers_the_load_by_what_the_sun_brings():
    whole, shaded = (rows("garage_studio_hot", **{"rooms[0].shade_frac": frac}) for frac in (1.0, 0.5))
    sun = whole.piece_w[0, 2]
    assert sun > 0.0
    assert whole.sensible_w[0] - shaded.sensible_w[0] == pytest.approx(0.5 * sun)


def test_glass_above_a_fifth_of_the_floor_leaves_it_to_the_hot_day():
    assert rows("sunroom_with_quote").is_glassy.tolist() == [True]
    assert rows("garage_studio_hot").is_glassy.tolist() == [False]


def test_what_the_house_brings_comes_off_every_surface():
    whole, helped = rows("garage_studio_hot"), rows("garage_studio_hot", **{"rooms[0].house_frac": 0.25})
    assert helped.piece_w[0, :3] == pytest.approx(0.75 * whole.piece_w[0, :3])


def test_walls_in_the_earth_bring_no_heat():
    answer = demo_answer("lower_level_cold")
    envelope = envelopes(answer.structure, point(answer.sheet), 1)
    values = point(answer.sheet) | {"rooms[0].earth_depth_m": np.asarray(0.0)}
    assert envelope.sunlit_wall_w_per_k[0] < envelopes(answer.structure, values, 1).sunlit_wall_w_per_k[0]
