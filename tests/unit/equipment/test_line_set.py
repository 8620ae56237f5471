"""Output lost in the lines."""

from dataclasses import fields

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.equipment.curve import variable_speed_split
from econ.equipment.line_set import RATED_LINE_M, LineSet, line_kept_frac, with_lines
from econ.equipment.part_load import cooling, heating
from econ.equipment.sizing import cooling_capacity_w, heating_capacity_w
from tests.unit.equipment.builders import split_ratings

USUAL = {
    "run_m": RATED_LINE_M,
    "rise_m": 0.0,
    "run_limit_m": 15.24,
    "rise_limit_m": 7.62,
    "run_loss_per_m": 0.002,
    "rise_loss_per_m": 0.001,
}


def kept(**changed: float) -> float:
    return float(line_kept_frac(LineSet(**{name: np.array([value]) for name, value in (USUAL | changed).items()}))[0])


@pytest.mark.parametrize("run_m", [0.3, 7.0, 7.62])
def test_a_level_line_of_the_rated_length_or_less_loses_nothing(run_m: float) -> None:
    assert kept(run_m=run_m) == 1.0


def test_each_metre_beyond_and_each_metre_of_height_is_lost_once() -> None:
    assert kept(run_m=RATED_LINE_M + 5.0) == pytest.approx(1.0 - 0.01)
    assert kept(rise_m=3.0) == kept(rise_m=-3.0) == pytest.approx(1.0 - 0.003)
    assert kept(run_m=RATED_LINE_M + 5.0, rise_m=3.0) == pytest.approx(0.99 * 0.997)


def test_the_loss_is_not_continued_beyond_what_the_maker_allows() -> None:
    assert kept(run_m=60.0, rise_m=30.0) == kept(run_m=15.24, rise_m=7.62)


@settings(max_examples=50, deadline=None, derandomize=True)
@given(st.floats(0.3, 40.0), st.floats(0.0, 20.0), st.floats(-10.0, 10.0), st.floats(0.0, 0.01))
def test_a_longer_line_never_gives_more(run_m: float, longer_m: float, rise_m: float, loss: float) -> None:
    short, long = (kept(run_m=at, rise_m=rise_m, run_loss_per_m=loss) for at in (run_m, run_m + longer_m))
    assert 0.0 < long <= short <= 1.0


def test_a_machine_behind_its_lines_gives_less_for_the_same_power() -> None:
    rated = variable_speed_split(split_ratings())
    behind = with_lines(rated, np.array([0.97]))
    at_c = np.array([-8.0, 8.0, 25.0, 35.0])
    assert cooling_capacity_w(behind, at_c) == pytest.approx(0.97 * cooling_capacity_w(rated, at_c), rel=1e-12)
    assert heating_capacity_w(behind, at_c) == pytest.approx(0.97 * heating_capacity_w(rated, at_c), rel=1e-12)
    for season in ("cooling", "heating"):
        for test in fields(getattr(rated, season)):
            pair = [getattr(getattr(machine, season), test.name).power_w for machine in (rated, behind)]
            assert pair[0].tolist() == pair[1].tolist()


@pytest.mark.parametrize("share", [0.1, 0.3, 0.6, 0.95])
def test_the_same_need_never_costs_less_behind_longer_lines(share: float) -> None:
    rated = variable_speed_split(split_ratings())
    behind = with_lines(rated, np.array([0.97]))
    need_w, none, at_c = np.array([[share * 3300.0]]), np.array([[0.0]]), np.array([[33.0]])
    assert cooling(behind, need_w, none, at_c)[2] > cooling(rated, need_w, none, at_c)[2]
    assert heating(behind, need_w, at_c - 33.0)[1] > heating(rated, need_w, at_c - 33.0)[1]
