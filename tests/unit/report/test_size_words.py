"""The size held against the need, in words."""

import numpy as np
import pytest

from econ.case.edit import with_value, without_value
from econ.case.schema import case_from
from econ.kernel.alternative import SELF
from econ.report.size_words import at_w, design_w, size_sentences
from econ.report.terminal import look_of
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_answer

BASEMENT = case_from(
    {
        "place": {"station": "Chicago Ohare Intl AP, IL"},
        "use": {"heat": "yes", "when": "day_and_night"},
        "rooms": [{"name": "Basement", "kind": "lower_level", "floor_area_m2": "1300 ft**2"}],
        "kit": {"size": "24"},
        "now": {"heat": "electric"},
    }
)


def told(case):
    found = answer(case, load_tables(), TODAY, 0)
    return found, " ".join(size_sentences(found, look_of(found)))


# Common practice, no source: people fit about 24,000 Btu/h in a 1,300 ft2 basement.
def test_the_usual_24_000_for_a_large_basement_is_explained_by_heat_least_output_and_need():
    found, text = told(BASEMENT)
    own, _ = told(without_value(BASEMENT, "kit.size"))
    ours_w = own.result.alternatives[SELF].capability.nominal_w
    assert found.result.alternatives[SELF].capability.nominal_w > 1.2 * ours_w
    assert "times as much" in text
    assert "of heat" in text
    assert "cannot run below" in text


def test_the_load_does_not_move_with_the_size_chosen():
    loads = [design_w(told(case)[0].result) for case in (BASEMENT, without_value(BASEMENT, "kit.size"))]
    assert loads[0] == loads[1]


def test_a_unit_chosen_by_the_load_is_not_too_small():
    _, text = told(without_value(BASEMENT, "kit.size"))
    assert "hot design day" in text
    assert "too little" not in text


def test_a_unit_too_small_is_said():
    _, text = told(with_value(with_value(BASEMENT, "kit.size", "6"), "rooms[0].window_south_m2", "8 m**2"))
    assert "too little" in text


def test_heat_as_the_reason_for_a_larger_size_is_said_where_it_is_one():
    found = demo_answer("lower_level_cold")
    assert "sized for cooling alone would not be" in " ".join(size_sentences(found, look_of(found)))


def test_nothing_is_said_of_cooling_that_nobody_asks_for():
    _, text = told(with_value(BASEMENT, "use.cool", "no"))
    assert "hot design day" not in text


def test_capacity_between_two_temperatures_is_on_the_line():
    way = demo_answer("lower_level_cold").result.alternatives[SELF]
    middle = at_w(way.capability.cool_w, way, 30.5)
    ends = [at_w(way.capability.cool_w, way, at) for at in (30.0, 31.0)]
    assert middle == pytest.approx(np.mean(ends))


def test_moisture_is_told_before_any_size():
    damp = BASEMENT
    for path, value in (
        ("use.dry", "yes"),
        ("use.humidity_limit_frac", 0.45),
        ("use.cooling_setpoint_c", "80 degF"),
        ("rooms[0].window_south_m2", "0 m**2"),
    ):
        damp = with_value(damp, path, value)
    found, _ = told(damp)
    spoken = size_sentences(found, look_of(found))
    assert "drying more than cooling" in spoken[0]
    assert any("hot design day" in sentence for sentence in spoken[1:])
