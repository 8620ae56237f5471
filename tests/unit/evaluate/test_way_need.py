"""What window units and dehumidifiers do to the need of their way, and of no other."""

import numpy as np
import pytest

from econ.case.choices import code
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_case

TABLES = load_tables()


def ways(name, **changed):
    structure, sheet = prepared(demo_case(name), TABLES, TODAY)
    moved = {path.replace("__", "."): np.asarray(value, dtype=float) for path, value in changed.items()}
    assert set(moved) <= set(sheet.path)
    return evaluate(structure, point(sheet) | moved, TABLES).alternatives


def no_gap(**more):
    return {
        "costs__window_leakage_taped_m2": 0.0,
        "costs__window_leakage_loose_m2": 0.0,
        "window__blocked_m2": 0,
    } | more


def test_no_leak_and_no_shade_is_no_change_whatever_the_months():
    winter, summer = (ways("sunroom_with_quote", **no_gap(window__in_months=months)) for months in (1, 0))
    assert winter[WINDOW].fuel_kwh == pytest.approx(summer[WINDOW].fuel_kwh, rel=1e-12)
    assert winter[WINDOW].unmet_cooling_kwh_per_yr == pytest.approx(summer[WINDOW].unmet_cooling_kwh_per_yr)


def test_units_left_in_all_winter_cost_heat_and_save_the_hours_of_refitting():
    out, stays = (ways("sunroom_with_quote", window__in_months=months) for months in (0, 1))
    assert stays[WINDOW].make_up_heat_kwh.sum() > out[WINDOW].make_up_heat_kwh.sum()
    january = stays[WINDOW].make_up_heat_kwh[0, 0] - out[WINDOW].make_up_heat_kwh[0, 0]
    assert january > 0.0


def test_no_penalty_in_months_when_they_are_out():
    plain, usual = ways("sunroom_with_quote", **no_gap()), ways("sunroom_with_quote")
    assert usual[WINDOW].make_up_heat_kwh[0, [0, 11]] == pytest.approx(plain[WINDOW].make_up_heat_kwh[0, [0, 11]])


def test_standby_is_not_drawn_while_they_are_out():
    out, stays = (ways("sunroom_with_quote", window__in_months=months, **no_gap()) for months in (0, 1))
    more_kwh = (stays[WINDOW].electricity_kwh - out[WINDOW].electricity_kwh)[0]
    assert 0.6 < more_kwh[0] <= 0.744  # January, heated by gas: 1 W through at most 744 h
    assert more_kwh[6] == 0.0


def test_loose_panels_cost_more_heat_than_taped_ones():
    taped, loose = (ways("sunroom_with_quote", window__in_months=1, window__seal=seal) for seal in (0, 1))
    assert loose[WINDOW].make_up_heat_kwh.sum() > taped[WINDOW].make_up_heat_kwh.sum()


def test_ductless_ways_do_not_feel_window_units():
    loose, none = ways("lower_level_cold", window__seal=1, window__in_months=1), ways("lower_level_cold", **no_gap())
    for way in (SELF, HIRED):
        assert (loose[way].electricity_kwh == none[way].electricity_kwh).all()


def test_units_that_are_there_leak_as_well():
    some, none = ways("top_floor_flat"), ways("top_floor_flat", **no_gap())
    assert some[KEEP].electricity_kwh.sum() != none[KEEP].electricity_kwh.sum()


def test_a_weaker_dehumidifier_heats_the_room_more_and_draws_more():
    usual, weak = (ways("lower_level_cold", now__dehumidifier_kg_per_kwh=rating) for rating in (2.2, 1.2))
    for way in (KEEP, WINDOW, SELF, HIRED):
        assert weak[way].electricity_kwh[0, 6] > usual[way].electricity_kwh[0, 6]


def test_a_dehumidifier_runs_on_every_way_alike_where_drying_is_asked_for():
    dry, damp = (ways("sunroom_with_quote", use__dry=code("use.dry", word)) for word in ("yes", "no"))
    for way in (KEEP, WINDOW, SELF, HIRED):
        assert dry[way].electricity_kwh.sum() > damp[way].electricity_kwh.sum()
    assert dry[KEEP].unmet_cooling_kwh_per_yr > damp[KEEP].unmet_cooling_kwh_per_yr
