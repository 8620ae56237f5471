"""The whole evaluation: rows keep to themselves, and the rules of equal service hold."""

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.evaluate.blocks import ROWS_PER_BLOCK, row_blocks, row_count
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.served import served_rooms
from econ.evaluate.sheet import moved, point, with_columns
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.kernel.errors import ShapeError
from econ.tables.loaders import load_tables
from tests.demo import NAMES, TODAY, demo_answer, demo_case

TABLES = load_tables()


@pytest.mark.parametrize("name", NAMES)
def test_a_row_gives_the_same_numbers_alone_and_among_others(name):
    structure, sheet = prepared(demo_case(name), TABLES, TODAY)
    grid = np.linspace(0.10, 0.30, ROWS_PER_BLOCK + 3)
    many = evaluate(structure, moved(sheet, "prices.electricity_usd_per_kwh", grid), TABLES)
    for row in (0, ROWS_PER_BLOCK - 1, ROWS_PER_BLOCK, len(grid) - 1):
        one = evaluate(structure, moved(sheet, "prices.electricity_usd_per_kwh", grid[row : row + 1]), TABLES)
        np.testing.assert_allclose(many.measures.lcc_usd[:, row], one.measures.lcc_usd[:, 0], rtol=1e-9)
        np.testing.assert_allclose(many.need_heat_kwh[row], one.need_heat_kwh[0], rtol=1e-9, atol=1e-6)


@pytest.mark.parametrize("name", NAMES)
def test_life_cycle_cost_is_the_sum_of_its_pieces(name):
    result = demo_answer(name).result
    np.testing.assert_allclose(sum(result.component_usd.values()), result.measures.lcc_usd, rtol=1e-12)


@pytest.mark.parametrize("name", NAMES)
def test_only_keeping_what_is_there_has_no_service_date(name):
    ways = demo_answer(name).result.alternatives
    assert [way.in_service_exists for way in ways] == [False, True, True, True]
    assert [bool(np.isfinite(way.in_service_d[0])) for way in ways] == [False, True, True, True]


@pytest.mark.parametrize("name", NAMES)
def test_keeping_what_is_there_buys_nothing(name):
    keep = demo_answer(name).result.alternatives[KEEP]
    assert keep.first_cost_usd[0] == keep.cash_first_cost_usd[0] == keep.own_hours_h[0] == 0.0


@pytest.mark.parametrize("name", NAMES)
def test_every_way_gives_the_same_heat(name):
    result = demo_answer(name).result
    asked = result.need_heat_kwh.sum()
    for way in result.alternatives:
        by_unit = asked - way.unmet_heating_kwh_per_yr[0]
        assert by_unit + way.make_up_heat_kwh.sum() == pytest.approx(asked, abs=1e-6)


def test_cooling_only_units_leave_all_heat_to_what_is_there():
    structure, sheet = prepared(with_value(demo_case("lower_level_cold"), "use.dry", "no"), TABLES, TODAY)
    sealed = {"costs.window_leakage_taped_m2": np.asarray(0.0), "window.blocked_m2": np.asarray(0.0)}
    result = evaluate(structure, point(sheet) | sealed, TABLES)
    assert result.alternatives[WINDOW].make_up_heat_kwh.sum() == pytest.approx(result.need_heat_kwh.sum())


def test_nothing_there_does_not_meet_a_cooling_need():
    keep = demo_answer("sunroom_with_quote").result.alternatives[KEEP]
    assert not keep.meets_need[0]
    assert keep.unmet_cooling_h[0] > 100.0


def test_both_ductless_ways_of_one_class_use_the_same_energy():
    ways = demo_answer("lower_level_cold").result.alternatives
    np.testing.assert_array_equal(ways[SELF].electricity_kwh, ways[HIRED].electricity_kwh)


def test_no_cooling_asked_for_means_no_cooling_needed():
    case = with_value(demo_case("garage_studio_hot"), "use.cool", "no")
    structure, sheet = prepared(case, TABLES, TODAY)
    result = evaluate(structure, point(sheet), TABLES)
    assert result.need_cool_kwh.sum() == 0.0
    assert all(way.meets_need[0] for way in result.alternatives)


def test_a_room_behind_a_closed_door_is_not_counted_on():
    structure, sheet = prepared(demo_case("lower_level_cold"), TABLES, TODAY)
    assert served_rooms(structure, point(sheet), 1)[:, 0].tolist() == [True, False]
    assert "room.closed_door" in {caution.code for caution in demo_answer("lower_level_cold").result.cautions}


def test_a_single_room_is_served_whatever_its_door():
    case = with_value(demo_case("garage_studio_hot"), "rooms[0].door", "usually_closed")
    structure, sheet = prepared(case, TABLES, TODAY)
    assert served_rooms(structure, point(sheet), 1).all()


def test_a_late_way_is_not_in_time():
    ways = demo_answer("lower_level_cold").result.alternatives
    assert ways[SELF].is_in_time[0]
    assert not ways[HIRED].is_in_time[0]
    assert ways[HIRED].waiting_cdd_kd[0] > ways[SELF].waiting_cdd_kd[0] > 0.0
    assert ways[HIRED].spare_d[0] < 0.0 < ways[SELF].spare_d[0]


def test_a_longer_wait_never_lowers_the_hours_too_warm():
    case = with_value(demo_case("garage_studio_hot"), "now.cooling", "none")
    structure, sheet = prepared(case, TABLES, TODAY)
    ways = evaluate(structure, point(sheet), TABLES).alternatives
    by_wait = sorted(ways[1:], key=lambda way: float(way.in_service_d[0]))
    hours, degrees = ([float(getattr(way, name)[0]) for way in by_wait] for name in ("waiting_h", "waiting_kh"))
    assert hours == sorted(hours)
    assert degrees == sorted(degrees)
    assert hours[-1] > hours[0]
    assert ways[0].waiting_h[0] == ways[0].waiting_kh[0] == 0.0


def test_what_keeps_the_room_cool_leaves_no_hours_to_wait_through():
    case = with_value(demo_case("garage_studio_hot"), "now.cooling", "window_units")
    structure, sheet = prepared(case, TABLES, TODAY)
    kept = evaluate(structure, point(sheet), TABLES).alternatives
    assert kept[KEEP].unmet_cooling_h[0] == 0.0
    assert [float(way.waiting_h[0]) for way in kept] == [0.0] * len(kept)


def test_cash_above_the_limit_is_said():
    ways = demo_answer("lower_level_cold").result.alternatives
    assert [bool(way.is_within_cash[0]) for way in ways] == [True, True, True, False]


def test_a_flat_that_is_let_may_not_be_done_oneself():
    ways = demo_answer("top_floor_flat").result.alternatives
    assert ways[SELF].standing == "not_allowed"
    assert ways[SELF].reasons


def test_results_hold_no_hours():
    n_row, found = 64, demo_answer("garage_studio_hot")
    values = with_columns(found.sheet, np.repeat(found.sheet.likely[:, None], n_row, axis=1))
    result = evaluate(found.structure, values, load_tables())
    biggest = max(
        np.asarray(part).size for part in (result.streams.energy_usd, result.alternatives[SELF].electricity_kwh)
    )
    assert biggest <= len(ALTERNATIVES) * n_row * (result.study_period_yr + 1)


def test_values_of_different_lengths_are_refused():
    with pytest.raises(ShapeError, match="different numbers of rows"):
        row_count({"a": np.zeros(2), "b": np.zeros(3)})


def test_blocks_give_back_every_row_once_in_order():
    values = {"a": np.arange(600.0), "b": np.asarray(1.0)}
    parts = list(row_blocks(values, 600))
    assert [count for count, _ in parts] == [ROWS_PER_BLOCK, ROWS_PER_BLOCK, 600 - 2 * ROWS_PER_BLOCK]
    assert np.concatenate([part["a"] for _, part in parts]).tolist() == list(range(600))


@pytest.mark.parametrize("name", NAMES)
def test_need_by_outdoor_temperature_adds_up_to_the_year_and_its_highest_hour_is_no_less_than_the_mean(name):
    result = demo_answer(name).result
    climate = result.climate
    assert climate.bin_h.sum() == pytest.approx(8760.0)
    cooling = (result.need_cool_kwh[0] + result.need_latent_kwh[0]).sum()
    assert (climate.bin_h * climate.bin_cool_w).sum() / 1000.0 == pytest.approx(cooling, rel=1e-9)
    assert (climate.bin_h * climate.bin_heat_w).sum() / 1000.0 == pytest.approx(result.need_heat_kwh[0].sum(), rel=1e-9)
    for mean, high in ((climate.bin_cool_w, climate.bin_cool_high_w), (climate.bin_heat_w, climate.bin_heat_high_w)):
        assert (high >= mean * (1.0 - 1e-12)).all()
    assert climate.bin_cool_high_w.max() > climate.bin_cool_w.max() or cooling == 0.0


@pytest.mark.parametrize("name", NAMES)
def test_electricity_by_use_adds_up_to_the_months(name):
    for way in demo_answer(name).result.alternatives:
        assert way.electricity_by_use_kwh.shape == (len(way.use_label), 12)
        assert way.electricity_by_use_kwh.sum(axis=0) == pytest.approx(way.electricity_kwh[0], rel=1e-9, abs=1e-9)
        assert (way.electricity_by_use_kwh >= 0.0).all()
