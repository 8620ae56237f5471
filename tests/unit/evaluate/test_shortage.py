"""Machines that cannot keep up."""

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import moved
from econ.kernel.alternative import SELF, WINDOW
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_answer, demo_case

TABLES = load_tables()


def window_of(size):
    case = with_value(with_value(demo_case("sunroom_with_quote"), "window.size", size), "window.count", 1)
    structure, sheet = prepared(case, TABLES, TODAY)
    return evaluate(structure, moved(sheet, "window.count", np.array([1.0])), TABLES).alternatives[WINDOW]


def test_a_large_unit_leaves_no_warm_hours_and_smaller_ones_ever_more():
    small, middle, large = (window_of(size) for size in ("5", "6", "12"))
    assert large.unmet_cooling_kh[0] == large.unmet_cooling_h[0] == 0.0
    assert small.unmet_cooling_kh[0] > middle.unmet_cooling_kh[0] > 0.0
    assert small.unmet_cooling_kwh_per_yr[0] > middle.unmet_cooling_kwh_per_yr[0] > 0.0


def test_pulling_down_a_warm_room_late_is_not_energy_left_out():
    # The unit that meets the design load runs longer instead: little is left out although many hours begin too warm.
    unit = demo_answer("sunroom_with_quote").result.alternatives[WINDOW]
    wanted = demo_answer("sunroom_with_quote").result.need_cool_kwh.sum()
    assert unit.unmet_cooling_h[0] > 50.0
    assert unit.unmet_cooling_kwh_per_yr[0] < 0.03 * wanted
    assert unit.meets_need[0]


def test_rows_that_fall_short_are_the_same_alone_and_among_others():
    structure, sheet = prepared(demo_case("sunroom_with_quote"), TABLES, TODAY)
    grid = np.linspace(0.5, 2.0, 40)
    many = evaluate(structure, moved(sheet, "window.count", grid), TABLES).alternatives[WINDOW]
    for row in (0, 13, 39):
        one = evaluate(structure, moved(sheet, "window.count", grid[row : row + 1]), TABLES).alternatives[WINDOW]
        assert many.unmet_cooling_kh[row] == pytest.approx(one.unmet_cooling_kh[0], rel=1e-9, abs=1e-9)
        assert many.electricity_kwh[row] == pytest.approx(one.electricity_kwh[0], rel=1e-9)


def test_a_shortage_of_one_machine_leaves_the_others_as_they_are():
    structure, sheet = prepared(demo_case("sunroom_with_quote"), TABLES, TODAY)
    few, many = (
        evaluate(structure, moved(sheet, "window.count", np.array([count])), TABLES).alternatives
        for count in (0.4, 3.0)
    )
    assert few[WINDOW].unmet_cooling_kh[0] > many[WINDOW].unmet_cooling_kh[0]
    assert few[SELF].electricity_kwh == pytest.approx(many[SELF].electricity_kwh)
