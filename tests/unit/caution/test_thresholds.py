"""Each rule just below, at and just above what raises it."""

import numpy as np
import pytest

from econ.caution.refrigerant import charge_limit_kg
from econ.caution.registry import RULES, found, not_raised
from econ.kernel.caution import Severity
from econ.kernel.errors import ShapeError
from tests.unit.caution.quiet import codes, facts
from tests.unit.caution.test_claims import CLAIM_CASES

ALWAYS = {
    "electrical.prove_dead",
    "electrical.stored_charge",
    "drilling.behind_the_wall",
    "refrigerant.stays_sealed",
    "refrigerant.leak_check",
    "refrigerant.mildly_flammable",
    "line_set.no_kink",
    "permit.warranty_conditions",
    "lifting.window_bracing",
    "water.condensate_slope",
    "delivery.look_before_signing",
    "refrigerant.rules_on_charged_parts",
    "refrigerant.no_gauges",
    "electrical.disconnect_in_sight",
    "electrical.cable_between_units",
    "electrical.covers_closed",
    "electrical.extension_cord",
    "drilling.eyes_and_ears",
    "lifting.ladder_inside",
    "permit.insurance",
}


def test_a_quiet_site_raises_only_what_always_holds():
    assert codes() == ALWAYS


LIMIT_KG = float(charge_limit_kg(np.array(0.307), np.array(1.8), np.array(25.0)))

# code, fact, values that do not raise it, values that do; the rest of the site is quiet
NUMBER_CASES = [
    ("drilling.lead_paint", "built_yr", [1978.0, 1979.0], [1977.0]),
    ("drilling.asbestos", "built_yr", [1990.0, 1991.0], [1989.0]),
    ("drilling.beyond_the_bit", "wall_thickness_m", [0.534, 0.535], [0.536]),
    ("placement.head_above", "head_above_m", [0.151, 0.15, np.nan], [0.149]),
    ("placement.head_beside", "head_beside_m", [0.101, 0.1, np.nan], [0.099]),
    ("placement.drain_falls_too_little", "drain_drop_m", [0.091, 0.09, np.nan], [0.089]),
    ("placement.setback", "boundary_m", [1.51, 1.5, np.nan], [1.49]),
    ("placement.neighbour_noise", "boundary_db", [49.9, 50.0, np.nan], [50.1]),
    ("placement.neighbour_noise", "boundary_most_db", [47.1, 47.0], [46.9]),
    ("placement.gas_meter", "gas_meter_m", [0.91, 0.9, np.nan], [0.89]),
    ("placement.vents", "vents_m", [0.91, 0.9, np.nan], [0.89]),
    ("placement.bedroom_window", "bedroom_window_m", [3.01, 3.0, np.nan], [2.99]),
    ("placement.outdoor_front", "outdoor_front_m", [0.61, 0.6, np.nan], [0.59]),
    ("placement.outdoor_back", "outdoor_back_m", [0.11, 0.1, np.nan], [0.09]),
    ("placement.indoor_unseen", "head_above_m", [0.4], [np.nan]),
    ("placement.indoor_unseen", "head_beside_m", [0.5], [np.nan]),
    ("placement.indoor_unseen", "drain_drop_m", [1.5], [np.nan]),
    *(
        ("placement.outdoor_unseen", fact, [5.0], [np.nan])
        for fact in (
            "boundary_m",
            "gas_meter_m",
            "vents_m",
            "bedroom_window_m",
            "outdoor_front_m",
            "outdoor_back_m",
            "snow_m",
        )
    ),
    ("room.radon", "earth_depth_m", [0.0], [0.001]),
    ("room.earth_in_doubt", "earth_depth_m", [0.0], [0.001]),
    ("room.damp_and_mould", "earth_depth_m", [0.0], [0.001]),
    ("room.closed_door", "closed_rooms_count", [0.0], [1.0, 2.0]),
    ("line_set.too_short", "line_run_m", [5.99, 6.0], [6.01]),
    ("line_set.too_short", "line_reach_m", [4.51, 4.5, np.nan], [4.49]),
    ("line_set.rise_too_high", "line_rise_m", [7.59, 7.6, -7.6], [7.61, -7.61]),
    ("refrigerant.charge_above_room_limit", "charge_kg", [LIMIT_KG - 1e-6, LIMIT_KG], [LIMIT_KG + 1e-6]),
    ("lifting.work_at_height", "outdoor_height_m", [1.79], [1.8, 1.81]),
    ("electrical.breaker_above_maximum", "breaker_a", [24.9, 25.0, np.nan], [25.1]),
    ("electrical.conductor_below_minimum", "conductor_a", [15.1, 15.0], [14.9]),
    ("electrical.breaker_below_minimum", "breaker_a", [15.1, 15.0, np.nan], [14.9]),
    ("electrical.label_is_odd", "mop_a", [15.1, 15.0], [14.9]),
    ("electrical.voltage_drop", "voltage_drop_frac", [0.0299, 0.03], [0.0301]),
    ("electrical.service_full", "service_load_a", [99.9, 100.0], [100.1]),
    ("electrical.service_full", "service_a", [90.1, 90.0, np.nan], [89.9]),
    ("electrical.window_over_limit", "window_a", [11.9, 12.0], [12.1]),
    ("electrical.window_over_limit", "window_limit_a", [np.inf, 7.6, 7.5], [7.4]),
    ("anchor.indoor_plate_heavy", "indoor_kg", [20.3, 20.4], [20.5]),
    ("room.moisture_dominates", "moisture_share_frac", [0.49, 0.5], [0.51]),
    ("sizing.window_too_small", "window_cool_w", [3000.0, 3001.0], [2999.0]),
    ("sizing.kit_too_small", "kit_cool_w", [3000.0, 3001.0], [2999.0]),
    ("sizing.hired_too_small", "hired_cool_w", [3000.0, 3001.0], [2999.0]),
    ("sizing.window_oversized", "window_cool_w", [4499.0, 4500.0], [4501.0]),
    ("sizing.kit_oversized", "kit_cool_w", [4499.0, 4500.0], [4501.0]),
    ("sizing.hired_oversized", "hired_cool_w", [4499.0, 4500.0], [4501.0]),
    ("sizing.kit_short_of_heat", "kit_heat_w", [3000.0, 3001.0], [2999.0]),
    ("sizing.hired_short_of_heat", "hired_heat_w", [3000.0, 3001.0], [2999.0]),
    ("sizing.window_cycles", "window_least_w", [1199.0, 1200.0], [1201.0]),
    ("sizing.kit_cycles", "kit_least_w", [1199.0, 1200.0], [1201.0]),
    ("sizing.hired_cycles", "hired_least_w", [1199.0, 1200.0], [1201.0]),
    ("sizing.kit_stops_in_cold", "heat_design_c", [-19.0, -19.9], [-20.0, -20.1]),
    ("sizing.hired_stops_in_cold", "heat_design_c", [-19.0, -19.9], [-20.0, -20.1]),
    ("sizing.window_too_few", "own_rooms_count", [1.0], [2.0]),
    ("sizing.kit_too_few", "own_rooms_count", [1.0], [2.0]),
    ("sizing.hired_too_few", "own_rooms_count", [1.0], [2.0]),
    ("sizing.base_pan", "heat_design_c", [0.1, 0.0], [-0.1]),
    ("line_set.too_long", "line_run_m", [15.1, 15.2], [15.3]),
    ("delivery.return_window_over", "dry_fit_d", [41.9, 42.0, 42.9], [43.0, 43.5]),
    ("delivery.return_window_over", "return_by_d", [13.0, 14.0, np.nan], [12.0]),
    ("schedule.window_misses_summer", "window_late_d", [-0.1, 0.0], [0.1]),
    ("schedule.self_misses_summer", "self_late_d", [-0.1, 0.0], [0.1]),
    ("schedule.hired_misses_summer", "hired_late_d", [-0.1, 0.0], [0.1]),
]


@pytest.mark.parametrize(("code", "fact", "quiet", "raised"), NUMBER_CASES, ids=[case[0] for case in NUMBER_CASES])
def test_a_number_raises_its_rule_only_past_its_threshold(code, fact, quiet, raised):
    assert all(code not in codes(**{fact: value}) for value in quiet)
    assert all(code in codes(**{fact: value}) for value in raised)


@pytest.mark.parametrize(("weight", "code"), [("outdoor_kg", "outdoor"), ("window_kg", "window")])
def test_weights_need_a_second_person_above_23_kg_and_not_where_one_is_there(weight, code):
    code = f"lifting.{code}_needs_two"
    assert code not in codes(**{weight: 22.9}, has_helper=False)
    assert code not in codes(**{weight: 23.0}, has_helper=False)
    assert code in codes(**{weight: 23.1}, has_helper=False)
    assert code not in codes(**{weight: 60.0}, has_helper=True)


@pytest.mark.parametrize(("pull_n", "is_raised"), [(999.9, False), (1000.0, False), (1000.1, True)])
def test_a_bracket_may_pull_its_top_pair_with_a_quarter_of_one_anchors_breaking_load(pull_n, is_raised):
    found_codes = codes(on_bracket=True, bracket_pull_n=pull_n, anchor_ultimate_n=4000.0)
    assert ("anchor.too_weak" in found_codes) is is_raised


@pytest.mark.parametrize(("built_yr", "is_raised"), [(1989.0, True), (1990.0, False), (1991.0, False), (np.nan, True)])
def test_cement_shingles_stop_the_drill_in_the_years_of_asbestos_and_where_the_year_is_not_known(built_yr, is_raised):
    assert ("wall.asbestos_siding" in codes(built_yr=built_yr, has_cement_shingles=True)) is is_raised
    assert "wall.asbestos_siding" not in codes(built_yr=built_yr)


@pytest.mark.parametrize(("design_c", "is_raised"), [(0.1, False), (0.0, False), (-0.1, True)])
def test_pipes_freeze_below_freezing_where_the_heat_that_kept_them_goes(design_c, is_raised):
    assert ("room.pipes_freeze" in codes(heat_design_c=design_c, pipes_exposed=True)) is is_raised
    assert "room.pipes_freeze" not in codes(heat_design_c=design_c)


@pytest.mark.parametrize(("wall_m", "is_raised"), [(0.1, False), (0.1016, False), (0.102, True), (0.254, True)])
def test_bites_are_named_where_masonry_is_thicker_than_the_bit_is_deep(wall_m, is_raised):
    assert ("drilling.several_bites" in codes(wall_thickness_m=wall_m, is_masonry=True)) is is_raised
    assert "drilling.several_bites" not in codes(wall_thickness_m=wall_m)


@pytest.mark.parametrize(("depth_m", "is_raised"), [(0.0, False), (0.149, False), (0.15, True), (0.151, True)])
def test_earth_against_the_room_stops_the_drill_until_somebody_says_where_the_hole_comes_out(depth_m, is_raised):
    assert ("drilling.below_grade" in codes(earth_depth_m=depth_m, hole_unknown=True)) is is_raised
    assert "drilling.below_grade" not in codes(earth_depth_m=depth_m)


@pytest.mark.parametrize(
    ("wall_m", "code"),
    [
        (0.23, ""),
        (0.231, "drilling.bit_extension"),
        (0.535, "drilling.bit_extension"),
        (0.536, "drilling.beyond_the_bit"),
    ],
)
def test_a_bit_reaches_so_far_and_with_its_extension_further(wall_m, code):
    asked = {"drilling.bit_extension", "drilling.beyond_the_bit"}
    assert codes(wall_thickness_m=wall_m, is_masonry=True) & asked == {code} - {""}
    assert codes(wall_thickness_m=wall_m, is_veneer=True) & asked == {code} - {""}


@pytest.mark.parametrize(
    ("snow_m", "foot_m", "is_raised"), [(0.0, 0.0, False), (0.3, 0.41, False), (0.3, 0.4, False), (0.3, 0.39, True)]
)
def test_the_foot_stands_a_hand_above_the_snow_where_there_is_any(snow_m, foot_m, is_raised):
    found = codes(snow_m=snow_m, snow_foot_m=snow_m + 0.1, outdoor_height_m=foot_m)
    assert ("placement.snow" in found) is is_raised


def test_lengths_that_are_one_but_for_rounding_are_enough():
    assert "placement.gas_meter" not in codes(gas_meter_m=0.1 + 0.2, gas_meter_least_m=0.3 + 2e-16)
    assert "placement.gas_meter" not in codes(gas_meter_m=0.3, gas_meter_least_m=0.1 + 0.2)


@pytest.mark.parametrize(("route", "heat"), [("kit", "kit_heat_w"), ("hired", "hired_heat_w")])
def test_backup_is_needed_only_where_heat_is_asked_for_short_and_nothing_else_is_there(route, heat):
    rule = f"sizing.{route}_needs_backup"
    assert rule in codes(**{heat: 2999.0}, has_backup=False)
    assert rule not in codes(**{heat: 3000.0}, has_backup=False)
    assert rule not in codes(**{heat: 2999.0})
    assert rule not in codes(**{heat: 2999.0}, has_backup=False, heat_asked=False)


def test_a_window_unit_is_stopped_by_cold_only_if_it_heats():
    cold = {"heat_design_c": -5.0, "window_cutout_c": -5.0}
    assert "sizing.window_stops_in_cold" in codes(**cold, window_heats=True)
    assert "sizing.window_stops_in_cold" not in codes(**cold | {"window_cutout_c": -5.1}, window_heats=True)
    assert "sizing.window_stops_in_cold" not in codes(**cold)


def test_frost_matters_only_where_heat_is_asked_for_and_no_pan_heater_is_there():
    assert "sizing.base_pan" not in codes(heat_design_c=-10.0, heat_asked=False)
    assert "sizing.base_pan" not in codes(heat_design_c=-10.0, pan_heater_w=50.0)


def test_no_cooling_is_no_cycling():
    assert "sizing.kit_cycles" not in codes(mean_cool_w=0.0, kit_least_w=500.0)


@pytest.mark.parametrize(
    ("run_m", "code"),
    [(6.0, ""), (6.01, "line_set.extension"), (9.0, "line_set.extension"), (9.01, "line_set.too_short")],
)
def test_an_extension_that_the_maker_allows_reaches_as_far_as_it_is_long(run_m, code):
    lines = {"line_set.extension", "line_set.too_short"}
    assert codes(line_run_m=run_m, line_reach_m=9.0, extension_allowed=True) & lines == {code} - {""}
    assert "line_set.extension" not in codes(line_run_m=run_m)


def test_every_rule_has_a_case_here():
    tried = {case[0] for case in NUMBER_CASES} | {case[0] for case in CLAIM_CASES} | ALWAYS
    tried |= {
        "lifting.outdoor_needs_two",
        "lifting.window_needs_two",
        "drilling.several_bites",
        "anchor.too_weak",
        "line_set.extension",
        "drilling.below_grade",
        "drilling.bit_extension",
        "placement.snow",
        "wall.asbestos_siding",
        "room.pipes_freeze",
    }
    assert tried == {rule.code for rule in RULES}


def test_a_refrigerant_that_does_not_burn_raises_no_flame_note():
    assert "refrigerant.mildly_flammable" not in codes(lfl_kg_per_m3=0.0, charge_kg=0.0)
    assert "refrigerant.charge_above_room_limit" not in codes(lfl_kg_per_m3=0.0, charge_kg=9.0)


@pytest.mark.parametrize(
    "fact", ["charge_kg", "line_box_m", "rise_limit_m", "kit_cool_w", "self_late_d", "moisture_share_frac"]
)
def test_a_number_that_is_not_known_raises_nothing(fact):
    assert codes(**{fact: np.nan}) == ALWAYS


def test_hold_points_come_first():
    order = [Severity.HOLD_POINT, Severity.CAUTION, Severity.NOTE]
    places = [order.index(caution.severity) for caution in found(facts(built_yr=1950.0, is_masonry=True, on_roof=True))]
    assert places == sorted(places)


def test_a_finding_says_which_rows_it_holds_for_and_what_raised_it():
    raised = {caution.code: caution for caution in found(facts(line_run_m=[5.0, 7.0, 8.0]))}
    short = raised["line_set.too_short"]
    assert short.rows.tolist() == [False, True, True]
    assert short.evidence[:3] == (("line_run_m", 7.0, "m"), ("line_box_m", 6.0, "m"), ("line_reach_m", 6.0, "m"))


def test_rules_that_hold_nowhere_are_listed():
    listed = {rule.code for rule in not_raised(facts())}
    assert listed == {rule.code for rule in RULES} - ALWAYS


def test_facts_of_different_lengths_are_refused():
    whole = facts(line_run_m=[5.0, 7.0])
    with pytest.raises(ShapeError, match="one entry a row"):
        type(whole)(**{**{name: getattr(whole, name) for name in whole.__slots__}, "built_yr": np.array([1950.0])})


# Engineering checks 6.4 (computed): R-32 at 0.307 kg/m3; wall 1.8 m, floor 0.6 m
@pytest.mark.parametrize(
    ("mount_height_m", "floor_area_m2", "limit_kg"),
    [(1.8, 10.0, 3.252), (1.8, 30.0, 5.632), (1.8, 50.0, 7.271), (1.8, 120.8, 11.302), (0.6, 10.0, 1.084)],
)
def test_charge_limit_agrees_with_printed_values(mount_height_m, floor_area_m2, limit_kg):
    found_kg = charge_limit_kg(np.array(0.307), np.array(mount_height_m), np.array(floor_area_m2))
    assert float(found_kg) == pytest.approx(limit_kg, abs=0.0005)
