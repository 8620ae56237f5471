"""The degree-day hand check and the reasons why it differs."""

import numpy as np
import pytest

from econ.loads.design_load import (
    HOURLY,
    LOAD_FACTORS,
    OWN,
    DesignLoads,
    FactorLoads,
    governed,
    with_own,
)
from econ.report.look import Look
from econ.report.words import load
from tests import builders
from tests.demo import TODAY, demo_answer
from tests.unit.loads.rooms import rows

LOOK = Look(TODAY, TODAY.year)


@pytest.mark.parametrize("name", ["lower_level_cold", "sunroom_with_quote", "garage_studio_hot"])
def test_the_reasons_add_up_to_the_difference(name):
    rooms = demo_answer(name).result.rooms
    total = rooms.degree_day_heating_kwh + rooms.hand_part_kwh.sum(axis=1)
    assert total == pytest.approx(rooms.annual_heating_kwh, abs=1e-6)


@pytest.mark.parametrize("name", ["lower_level_cold", "top_floor_flat"])
def test_months_add_up_to_the_year(name):
    rooms = demo_answer(name).result.rooms
    assert rooms.monthly_heating_kwh.sum(axis=1) == pytest.approx(rooms.annual_heating_kwh)
    assert rooms.monthly_cooling_sensible_kwh.sum(axis=1) == pytest.approx(rooms.annual_cooling_sensible_kwh)


def loads(sensible=(2000.0, 2000.0, 2000.0)):
    pieces = np.zeros((3, 8))
    pieces[:, 0] = sensible
    pieces[:, 6] = 300.0
    return DesignLoads(
        heat_w=np.array([1000.0, 1000.0, 1000.0]),
        cool_sensible_w=np.array(sensible),
        cool_latent_w=np.full(3, 300.0),
        piece_w=pieces,
        peak_hour=np.array([15, 15, 15]),
        loss_w=np.zeros((3, 4)),
        hourly_sensible_w=np.array(sensible),
        factor_sensible_w=np.full(3, np.nan),
        method=np.full(3, HOURLY),
        course_sensible_w=np.tile(sensible, (24, 1)).T,
        course_latent_w=np.full((3, 24), 300.0),
    )


def factors():
    pieces = np.zeros((3, 8))
    pieces[:, 0] = (1999.0, 2001.0, 2600.0)
    areas = np.array([1.0, 1.0, 5.0]), np.full(3, 20.0)
    return FactorLoads(pieces.sum(axis=1), pieces, np.array([False, False, True]), *areas)


def test_the_larger_method_rules_unless_glass_does():
    found = governed(loads(), factors())
    assert found.method.tolist() == [HOURLY, LOAD_FACTORS, HOURLY]
    assert found.cool_sensible_w.tolist() == [2000.0, 2001.0, 2000.0]
    assert found.piece_w.sum(axis=1) == pytest.approx(found.cool_sensible_w + found.cool_latent_w)


def test_a_room_that_is_not_cooled_gets_no_load_factors():
    found = governed(loads(sensible=(0.0, 0.0, 0.0)), factors())
    assert found.cool_sensible_w.tolist() == [0.0, 0.0, 0.0]
    assert found.method.tolist() == [HOURLY] * 3


def test_the_users_own_calculation_stands_and_is_split_as_ours():
    found = with_own(loads(), rows(3), np.array([4600.0, np.nan, np.nan]), np.array([np.nan, 500.0, np.nan]))
    assert found.method.tolist() == [OWN, HOURLY, HOURLY]
    assert (found.cool_sensible_w + found.cool_latent_w).tolist() == [4600.0, 2300.0, 2300.0]
    assert found.cool_sensible_w[0] == pytest.approx(4000.0)
    assert found.heat_w.tolist() == [1000.0, 500.0, 1000.0]
    assert found.piece_w.sum(axis=1) == pytest.approx([4600.0, 2300.0, 2300.0])


def test_sentences_say_which_method_counts_and_why_the_hand_check_differs():
    rooms = builders.rooms()
    assert "the larger one counts" in load.design_sentence(rooms, 0, LOOK)
    assert "the hot day run hour by hour gives more" in load.design_sentence(rooms, 1, LOOK)
    assert "the set-back take 400 kWh" in load.hand_sentence(rooms, 0, LOOK)
    assert load.hand_sentence(rooms, 1, LOOK) == "Bedroom: it loses no heat, so degree-days say nothing."


def test_a_glassy_room_says_that_glass_decides():
    answer = demo_answer("sunroom_with_quote")
    assert "glass is more than a fifth of the floor" in load.design_sentence(answer.result.rooms, 0, LOOK)
