"""From a case's values and results to facts and findings."""

import numpy as np
import pytest

from econ.evaluate.wiring.caution import facts, found
from tests.unit.caution.wired import at, codes, results, values
from tests.unit.installation.site_values import structure


def test_earth_counts_only_on_a_side_that_is_earth():
    at = facts(structure(), values([{"earth_depth_m": 1.2}]), results(), 1)
    assert at.earth_depth_m[0] == 0.0
    deep = [{"north": "earth", "earth_depth_m": 1.2}]
    assert "drilling.below_grade" in codes(rooms=deep, site__hole="not_known")
    assert "drilling.below_grade" not in codes(rooms=deep, site__hole="through_rim")


def test_the_oldest_room_counts_and_closed_doors_are_counted_beyond_the_first_room():
    shape = structure(n_rooms=2, room_names=("a", "b"))
    two = [{"year_built": 1999.0, "door": "usually_closed"}, {"year_built": 1950.0, "door": "usually_closed"}]
    at = facts(shape, values(two), results(), 1)
    assert at.built_yr[0] == 1950.0
    assert at.closed_rooms_count[0] == 1.0


@pytest.mark.parametrize(("word", "is_raised"), [("yes", False), ("no", True), ("not_said", True), ("not_known", True)])
def test_a_quote_without_the_circuit_is_found_only_where_there_is_a_quote(word, is_raised):
    assert ("electrical.hired_scope" in codes(structure(has_quote=True), quote__electrical=word)) is is_raised
    assert "electrical.hired_scope" not in codes(quote__electrical=word)


def test_what_is_not_known_takes_the_careful_side():
    unknown = {
        "site__permit": "not_known",
        "site__heritage": "not_known",
        "site__room_permitted": "not_known",
        "site__fire_wall": "not_known",
        "site__flood": "not_known",
        "site__salt_air": "not_known",
        "site__pipes": "not_known",
        "use__present_heat_stays": "no",
        "site__head_blows": "not_known",
        "site__door_swing": "not_known",
        "kit__refrigerant": "not_known",
        "site__circuit": "not_known",
        "site__panel_spaces": "not_known",
        "site__occupancy": "not_known",
        "site__association": "not_known",
        "site__drain": "not_known",
        "site__owner_may_electrical": "not_known",
        "site__code_edition": "not_known",
        "site__receptacle": "not_known",
        "kit__connection": "not_known",
        "window__escape": "not_known",
        "window__outlet": "not_known",
    }
    assert {
        "permit.unknown",
        "placement.indoor_unseen",
        "placement.outdoor_unseen",
        "refrigerant.label_not_read",
        "electrical.circuit_unknown",
        "electrical.panel_unknown",
        "electrical.ground_fault_unknown",
        "electrical.service_receptacle",
        "permit.let_home",
        "permit.association",
        "water.condensate_pump",
        "electrical.licensed_work",
        "refrigerant.flare_needs_certified",
        "room.escape_window_unknown",
        "electrical.window_outlet_shared",
        "permit.heritage",
        "permit.room_never_permitted",
        "permit.bought_elsewhere",
        "wall.fire_unknown",
        "room.pipes_freeze",
    } <= codes(rooms=[{"kind": "garage"}], **unknown)


def test_panel_space_matters_only_for_a_new_circuit():
    assert "electrical.no_panel_space" in codes(site__panel_spaces="no")
    assert "electrical.no_panel_space" not in codes(site__panel_spaces="no", site__circuit="own_circuit")


def test_service_after_the_season_is_late_and_no_season_is_not():
    late = np.full((4, 1), 30.0)
    late[3] = 100.5
    assert "schedule.hired_misses_summer" in codes(given=results(in_service_d=late))
    assert "schedule.self_misses_summer" not in codes(given=results(in_service_d=late))
    assert "schedule.hired_misses_summer" not in codes(
        given=results(in_service_d=late, season_end_d=np.asarray(np.nan))
    )


def test_rows_are_found_one_by_one():
    many = results(3, cool_given_w=np.tile([2000.0, 3500.0, 9000.0], (4, 1)))
    raised = {each.code: each.rows.tolist() for each in found(structure(), values(), many, 3)}
    assert raised["sizing.kit_too_small"] == [True, False, False]
    assert raised["sizing.kit_oversized"] == [False, False, True]


@pytest.mark.parametrize(
    ("edition", "is_asked"), [("2017_or_older", False), ("2020", True), ("2023", True), ("2026", True)]
)
def test_the_code_edition_in_force_decides_ground_fault_protection(edition, is_asked):
    assert ("electrical.ground_fault" in codes(site__code_edition=edition)) is is_asked
    assert "electrical.ground_fault_unknown" not in codes(site__code_edition=edition)


@pytest.mark.parametrize(
    ("word", "mca_a", "carries_a"), [("choose", 15.0, 15.0), ("not_known", 15.1, 20.0), ("14", 24.0, 15.0)]
)
def test_a_wire_that_was_not_named_is_the_thinnest_that_carries_the_minimum(word, mca_a, carries_a):
    assert at(site__conductor=word, kit__mca_a=mca_a).conductor_a[0] == carries_a


# 30 m of 14 AWG at 15 A: 2 x 30 x 15 x 0.010074 ohm/m = 9.07 V, 7.6 % of 120 V and 3.8 % of 240 V.
@pytest.mark.parametrize(("volts", "frac"), [("120", 0.0756), ("240", 0.0378)])
def test_voltage_lost_on_the_run(volts, frac):
    found = at(site__panel_distance_m=30.0, site__conductor="14", kit__volts=volts)
    assert found.voltage_drop_frac[0] == pytest.approx(frac, abs=5e-5)


# 100 m2 x 32.29 = 3,229; circuits 4,500; small 3,000; range 10,000; dryer 5,000; water heater 4,500 = 30,229 VA
# first 8,000 + 0.4 x 22,229 = 16,892; the unit 15 A x 240 V = 3,600; together 20,492 VA = 85.4 A; electric heat of
# 12,000 W more: 135.4 A.
def test_the_service_is_full_only_where_its_rating_is_known_and_lower():
    assert at(panel__home_area_m2=100.0).service_load_a[0] == pytest.approx(85.38, abs=0.01)
    assert at(panel__home_area_m2=100.0, now__heat="electric").service_load_a[0] == pytest.approx(135.38, abs=0.01)
    assert "electrical.service_full" not in codes(now__heat="electric")
    full = {"panel__home_area_m2": 100.0, "panel__service_a": 100.0}
    assert "electrical.service_full" in codes(now__heat="electric", **full)
    assert "electrical.service_full" not in codes(**full)


def test_a_label_that_was_not_read_stops_nothing_but_is_said():
    found = codes(kit__label_read_frac=0.0, site__breaker_a=90.0)
    assert "electrical.breaker_above_maximum" not in found
    assert "electrical.label_not_read" in found
    assert "electrical.breaker_above_maximum" in codes(site__breaker_a=90.0)


@pytest.mark.parametrize(
    ("refrigerant", "limit", "is_old"), [("r32", 0.307, False), ("r454b", 0.296, False), ("r410a", 0.0, True)]
)
def test_the_refrigerant_decides_what_burns_and_what_is_old_stock(refrigerant, limit, is_old):
    assert at(kit__refrigerant=refrigerant).lfl_kg_per_m3[0] == limit
    found = codes(kit__refrigerant=refrigerant)
    assert ("refrigerant.old_stock" in found) is is_old
    assert ("refrigerant.mildly_flammable" in found) is not is_old


@pytest.mark.parametrize(
    ("connection", "is_raised"),
    [
        ("single_use_quick", False),
        ("reusable_quick", False),
        ("flare_with_charged_outdoor_unit", True),
        ("not_known", True),
    ],
)
def test_only_quick_couplings_may_be_joined_by_oneself(connection, is_raised):
    assert ("refrigerant.flare_needs_certified" in codes(kit__connection=connection)) is is_raised
