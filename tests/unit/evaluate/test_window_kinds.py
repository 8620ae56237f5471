"""Each kind of unit through the whole evaluation: tasks, cost, need, hours of the year, standing, findings."""

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.case.schema import case_from
from econ.evaluate.costs import LASTING
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import moved, point
from econ.evaluate.wiring.installation import installation
from econ.kernel.alternative import KEEP, WINDOW
from econ.kernel.errors import CaseError
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from tests.demo import TODAY, demo_case

TABLES = load_tables()
KINDS = ("window", "narrow", "through_wall", "portable")
BLANK = case_from({"place": {"station": "St Cloud Regional Arpt, MN"}, "rooms": [{"name": "Room"}]})


def said(case=BLANK, **changed):
    for path, value in changed.items():
        case = with_value(case, path.replace("__", "."), value)
    return case


def found(case=BLANK, **changed):
    structure, sheet = prepared(said(case, **changed), TABLES, TODAY)
    return evaluate(structure, point(sheet), TABLES)


def way(case=BLANK, **changed):
    return found(case, **changed).alternatives[WINDOW]


def done(each):
    plan = each.schedule
    return {task for task, is_so in zip(plan.task, plan.is_active[0], strict=True) if is_so}


def amounts(each):
    return dict(zip(each.line_items.key, each.line_items.amount_usd[0], strict=True))


def codes(result):
    return {caution.code for caution in result.cautions if caution.rows[0]}


@pytest.mark.parametrize(
    ("kind", "fits"),
    [
        ("window", "fit_small"),
        ("narrow", "fit_small"),
        ("through_wall", "fit_through_wall"),
        ("portable", "fit_portable"),
    ],
)
def test_each_kind_is_put_in_by_its_own_task_and_serves(kind, fits):
    each = way(window__kind=kind)
    assert {task for task in done(each) if task.startswith("fit_")} == {fits}
    assert np.isfinite(each.in_service_d[0])
    assert each.first_cost_usd[0] > 0.0


def test_a_portable_unit_takes_most_electricity_for_the_same_room():
    used = {kind: float(way(window__kind=kind, window__size="8").electricity_kwh[0].sum()) for kind in KINDS}
    assert max(used, key=used.__getitem__) == "portable"


def test_the_air_a_portable_unit_draws_in_is_more_to_cool_in_a_hot_place():
    hot = said(place__station="Yuma Intl Arpt, AZ", window__kind="portable", window__size="10")
    structure, sheet = prepared(hot, TABLES, TODAY)
    flows = np.array([0.0, 0.02, 0.08])
    used = evaluate(structure, moved(sheet, "window.exhaust_m3_per_s", flows), TABLES).alternatives
    total = used[WINDOW].electricity_kwh.sum(axis=1)
    assert total[0] < total[1] < total[2]
    assert np.ptp(used[KEEP].electricity_kwh.sum(axis=1)) == 0.0


def test_a_portable_unit_that_is_there_now_draws_in_air_too():
    structure, sheet = prepared(demo_case("garage_studio_hot"), TABLES, TODAY)
    used = evaluate(structure, moved(sheet, "window.exhaust_m3_per_s", np.array([0.0, 0.02])), TABLES).alternatives
    total = used[KEEP].electricity_kwh.sum(axis=1)
    assert total[0] < total[1]
    assert np.ptp(used[WINDOW].electricity_kwh.sum(axis=1)) == 0.0


@pytest.mark.parametrize(
    ("wall", "bears", "cutter", "is_held"),
    [
        ("wood_frame", "no", "cut_light", False),
        ("wood_frame", "yes", "cut_structural", True),
        ("wood_frame", "not known", "cut_structural", True),
        ("block", "no", "cut_structural", True),
        ("brick_on_frame", "no", "cut_structural", True),
    ],
)
def test_masonry_and_walls_that_may_carry_are_cut_by_a_contractor_at_a_hold_point(wall, bears, cutter, is_held):
    result = found(window__kind="through_wall", site__wall=wall, window__wall_bears=bears)
    each = result.alternatives[WINDOW]
    assert {task for task in done(each) if task.startswith("cut_")} == {cutter}
    assert ("wall_review" in done(each)) is is_held
    assert ("wall.opening_structure" in codes(result)) is is_held
    assert bool(amounts(each)["opening_labour"] > 0.0) is is_held


def test_a_lintel_goes_into_masonry_and_a_framed_opening_into_wood():
    wood, block = (amounts(way(window__kind="through_wall", site__wall=wall)) for wall in ("wood_frame", "block"))
    assert (wood["opening_framing_usd"] > 0.0, wood["opening_lintel_usd"]) == (True, 0.0)
    assert (block["opening_framing_usd"], block["opening_lintel_usd"] > 0.0) == (0.0, True)


def test_a_hole_in_the_wall_waits_for_its_permit_and_a_window_does_not():
    permits = {kind: "permit_granted" in done(way(window__kind=kind, site__permit="needed")) for kind in KINDS}
    assert permits == {"window": False, "narrow": False, "through_wall": True, "portable": False}
    assert "permit_granted" not in done(way(window__kind="through_wall", site__permit="not_needed"))


# Likely hours of the cost table: out 0.5 and in 0.75 for a window, 0.6 for a portable unit, 0.3 for a cover.
@pytest.mark.parametrize(
    ("kind", "hours"), [("window", 1.25), ("narrow", 1.25), ("through_wall", 0.3), ("portable", 0.6)]
)
def test_seasons_take_own_hours_every_year_by_kind(kind, hours):
    assert season_h(WINDOW, window__kind=kind) == pytest.approx(hours)


@pytest.mark.parametrize(
    ("now", "hours"), [("window_units", 2.5), ("through_wall", 0.6), ("portable", 1.2), ("none", 0.0)]
)
def test_units_that_are_there_now_have_their_seasons_too(now, hours):
    assert season_h(KEEP, now__cooling=now, now__units_count=2) == pytest.approx(hours)


def test_units_that_stay_in_all_year_take_no_hours_but_a_sleeve_is_covered():
    assert season_h(WINDOW, window__in_months="all_year") == 0.0
    assert season_h(KEEP, window__in_months="all_year", now__cooling="window_units") == 0.0
    assert season_h(WINDOW, window__kind="through_wall", window__in_months="all_year") == pytest.approx(0.3)


def season_h(position, **changed):
    structure, sheet = prepared(said(window__count=1, **changed), TABLES, TODAY)
    return float(installation(structure, point(sheet), installation_tables(), 1)[position].upkeep_own_h_per_yr[0])


# 10,000 Btu/h draws 7.61 A, 12,000 draws 9.14 A; a 15 A circuit gives 12 A alone, 7.5 A shared; 20 A gives 10 A shared.
@pytest.mark.parametrize(
    ("size", "outlet", "breaker", "standing"),
    [
        ("8", "shared", 15, "open"),
        ("10", "shared", 15, "with_help"),
        ("12", "shared", 20, "open"),
        ("12", "own_circuit", 15, "open"),
        ("10", "not known", 15, "with_help"),
        ("18", "own_circuit", 20, "with_help"),
    ],
)
def test_what_shares_the_circuit_decides_on_an_outlet_and_prices_it(size, outlet, breaker, standing):
    each = way(window__size=size, window__outlet=outlet, window__outlet_breaker_a=breaker)
    assert each.standing == standing
    outlets = amounts(each)
    assert bool(outlets["outlet_120v_usd"] + outlets["outlet_240v_usd"] > 0.0) is (standing == "with_help")
    assert ("outlet" in done(each)) is (standing == "with_help")


def test_a_breaker_between_sizes_counts_as_the_smaller_one():
    assert way(window__size="12", window__outlet="shared", window__outlet_breaker_a=19.9).standing == "with_help"


def test_a_large_unit_on_an_outlet_of_its_voltage_needs_none():
    given = {"window__size": "18", "window__outlet_volts": "240", "window__outlet_breaker_a": 20}
    assert way(**given).standing == "open"


def test_clear_lengths_that_are_said_refuse_and_name_what_would_fit():
    each = way(window__size="12", window__clear_width_m="20 in", window__clear_height_m="22 in")
    assert each.standing == "not_allowed"
    assert each.reasons[0].startswith("The window's clear width is 20 in")
    assert each.reasons[1].startswith("What would fit: a window unit of up to 6,000 Btu/h")


def test_i_dont_know_is_one_sash_window_with_the_way_out_left_open():
    result = found(window__opening="not known", window__escape="not known")
    each = result.alternatives[WINDOW]
    assert each.standing == "open"
    assert any("one ordinary sash window" in reason for reason in each.reasons)
    assert "room.escape_window_unknown" in codes(result)
    assert "room.escape_window" not in codes(result)


def test_a_room_deep_in_the_earth_has_no_wall_for_a_sleeve():
    sides = {f"rooms[0].{side}": "earth" for side in ("north", "east", "south", "west")}
    case = said(BLANK, window__kind="through_wall")
    for path, option in sides.items():
        case = with_value(case, path, option)
    case = with_value(with_value(case, "rooms[0].ceiling_height_m", "8 ft"), "rooms[0].earth_depth_m", "7 ft")
    assert way(case).standing == "not_allowed"
    assert "above the ground is 12 in" in way(case).reasons[0]


def test_a_size_that_is_not_sold_in_the_kind_is_a_fault_that_names_those_that_are():
    with pytest.raises(CaseError, match=r"window.size \| is not a size that portable units come in .* 5, 6, 8, 10"):
        prepared(said(window__kind="portable", window__size="24"), TABLES, TODAY)


def test_a_kind_that_is_not_made_to_heat_cools_only_and_says_so():
    result = found(window__kind="portable", window__cycle="reverse_cycle")
    assert "equipment.kind_cools_only" in codes(result)
    assert np.isnan(result.alternatives[WINDOW].capability.heat_w).all()
    assert "equipment.kind_cools_only" not in codes(found(window__kind="through_wall", window__cycle="reverse_cycle"))


def test_nothing_braces_a_portable_unit_and_fuel_beside_it_is_warned_of():
    gas, electric = (found(window__kind="portable", now__heat=heat) for heat in ("gas", "electric"))
    assert "lifting.window_bracing" not in codes(gas)
    assert "room.portable_backdraught" in codes(gas)
    assert "room.portable_backdraught" not in codes(electric)


def test_outlet_and_opening_outlast_the_unit():
    lines = amounts(way(window__kind="through_wall", window__outlet="none"))
    assert {"outlet_120v_usd", "opening_labour", "through_wall_sleeve_usd", "own_opening_time"} <= LASTING & set(lines)


def test_own_hours_of_the_opening_are_counted_once():
    light = {"window__kind": "through_wall", "site__wall": "wood_frame", "window__wall_bears": "no"}
    each = way(**light, work__hour_value_usd_per_h=10)
    lines = amounts(each)
    assert lines["own_opening_time"] == pytest.approx(70.0)
    assert lines["own_time"] + lines["own_opening_time"] == pytest.approx(10.0 * float(each.own_hours_h[0]))


@pytest.mark.parametrize(("word", "is_held"), [("yes", True), ("no", False), ("not known", True)])
def test_people_below_a_window_hold_the_unit_until_it_is_braced(word, is_held):
    assert ("lifting.window_over_walkway" in codes(found(window__over_walkway=word))) is is_held
    assert "lifting.window_over_walkway" not in codes(found(window__kind="portable", window__over_walkway=word))


@pytest.mark.parametrize("kind", KINDS)
def test_a_row_gives_the_same_alone_and_among_others(kind):
    case = said(demo_case("garage_studio_hot"), window__kind=kind, window__outlet="shared")
    structure, sheet = prepared(case, TABLES, TODAY)
    grid = np.array([0.02, 0.12, 0.08])
    many = evaluate(structure, moved(sheet, "window.exhaust_m3_per_s", grid), TABLES).alternatives
    one = evaluate(structure, moved(sheet, "window.exhaust_m3_per_s", grid[1:2]), TABLES).alternatives
    for each, alone in zip(many, one, strict=True):
        np.testing.assert_allclose(each.electricity_kwh[1], alone.electricity_kwh[0], rtol=1e-12)
        np.testing.assert_allclose(each.unmet_cooling_kwh_per_yr[1], alone.unmet_cooling_kwh_per_yr[0], rtol=1e-12)
        assert each.first_cost_usd[1] == alone.first_cost_usd[0]


@pytest.mark.parametrize(
    ("now", "kind", "life_yr"),
    [
        ("portable", "window", 7.0),
        ("window_units", "portable", 10.0),
        ("portable", "portable", None),
        ("through_wall", "window", None),
    ],
)
def test_what_is_there_now_lives_as_its_own_kind_does(now, kind, life_yr):
    _, sheet = prepared(said(now__cooling=now, window__kind=kind), TABLES, TODAY)
    assert (sheet.entry("now.unit_life_yr").likely if "now.unit_life_yr" in sheet.place else None) == life_yr


def test_new_portable_units_live_as_portable_units_do():
    lives = {kind: prepared(said(window__kind=kind), TABLES, TODAY)[1].entry("window.life_yr").likely for kind in KINDS}
    assert lives == {"window": 10.0, "narrow": 10.0, "through_wall": 10.0, "portable": 7.0}
