"""From a case's values and results to facts and findings."""

import numpy as np
import pytest

from econ.case.choices import code
from econ.evaluate.wiring.caution import CautionResults, facts, found
from econ.installation.delivery import KitReturn
from tests.unit.installation.site_values import site_values, structure

ROOM = {
    "kind": "bedroom",
    "north": "outside",
    "east": "outside",
    "south": "outside",
    "west": "outside",
    "door": "none",
    "own_unit": "no",
}


def room(index, **changed):
    numbers = {"earth_depth_m": 0.0, "year_built": 2005.0, "floor_area_m2": 25.0}
    said = {**ROOM, **numbers, **changed}
    paths = {f"rooms[{index}].{name}": value for name, value in said.items()}
    return {
        path: np.asarray(code(path, value) if isinstance(value, str) else value, dtype=np.float64)
        for path, value in paths.items()
    }


def values(rooms=None, **changed):
    extra = {"use.heat": "yes", "use.dry": "no"}
    read = {**site_values(**changed), **{path: np.asarray(code(path, word)) for path, word in extra.items()}}
    for index, each in enumerate(rooms or [{}]):
        read |= room(index, **each)
    read |= {path: np.asarray(value) for path, value in {"kit.charge_kg": 0.68, "kit.lfl_kg_per_m3": 0.307}.items()}
    cold = {"kit.cutout_c": -20.0, "window.cutout_c": 99.0, "kit.pan_heater_w": 0.0, "kit.line_max_m": 15.2}
    read |= {path: np.asarray(value) for path, value in cold.items()}
    stays = {"now.heat": "gas", "use.present_heat_stays": "yes", "now.house_system": "no"}
    read = {path: np.asarray(code(path, word)) for path, word in stays.items()} | read
    return {"site.line_rise_m": np.asarray(1.0)} | read


def results(n_row=1, **changed):
    given = {
        "design_cool_w": np.full(n_row, 3000.0),
        "design_heat_w": np.full(n_row, 3000.0),
        "cool_given_w": np.full((4, n_row), 3500.0),
        "heat_given_w": np.full((4, n_row), 3500.0),
        "least_given_w": np.full((4, n_row), 800.0),
        "mean_cool_w": np.full(n_row, 1000.0),
        "below_least_h": np.full(4, 100.0),
        "heat_design_c": np.full(n_row, -10.0),
        "cool_short_h": np.zeros((4, n_row)),
        "heat_short_h": np.zeros((4, n_row)),
        "in_service_d": np.full((4, n_row), 30.0),
        "season_end_d": np.asarray(100.0),
        "kit_return": KitReturn(np.full(n_row, 42.0), np.full(n_row, 13.0), np.full(n_row, 400.0)),
        "moisture_share_frac": np.full(n_row, 0.2),
    }
    return CautionResults(**{**given, **changed})


def codes(shape=None, rooms=None, given=None, **changed):
    return {each.code for each in found(shape or structure(), values(rooms, **changed), given or results(), 1)}


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


def at(**changed):
    return facts(structure(), values(**changed), results(), 1)


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


SEEN = {
    "site__head_above_m": 0.4,
    "site__head_beside_m": 0.4,
    "site__drain_drop_m": 1.0,
    "site__boundary_m": 5.0,
    "site__gas_meter_m": 5.0,
    "site__vents_m": 5.0,
    "site__bedroom_window_m": 5.0,
    "site__outdoor_front_m": 2.0,
    "site__outdoor_back_m": 0.3,
    "site__snow_m": 0.0,
}


def placement(**changed):
    return {code for code in codes(**SEEN | changed) if code.startswith("placement.")}


def test_a_site_where_all_was_looked_at_and_fits_raises_nothing_of_placement():
    assert placement() == set()


@pytest.mark.parametrize("path", SEEN)
def test_what_nobody_has_measured_is_asked_for_and_raises_nothing_else(path):
    seen = {key: value for key, value in SEEN.items() if key != path}
    found = {code for code in codes(**seen) if code.startswith("placement.")}
    where = "indoor" if path.startswith(("site__head", "site__drain")) else "outdoor"
    assert found == {f"placement.{where}_unseen"}


# The least distances stand among the figures: likely 0.15, 0.1, 1.5, 0.9, 0.9, 3, 0.6 and 0.1 m.
@pytest.mark.parametrize(
    ("name", "code", "least_m"),
    [
        ("head_above_m", "head_above", 0.15),
        ("head_beside_m", "head_beside", 0.1),
        ("boundary_m", "setback", 1.5),
        ("gas_meter_m", "gas_meter", 0.9),
        ("vents_m", "vents", 0.9),
        ("bedroom_window_m", "bedroom_window", 3.0),
        ("outdoor_front_m", "outdoor_front", 0.6),
        ("outdoor_back_m", "outdoor_back", 0.1),
    ],
)
def test_each_distance_is_held_against_its_own_figure_which_the_user_may_set(name, code, least_m):
    assert placement(**{f"site__{name}": least_m}) == set()
    assert placement(**{f"site__{name}": least_m - 0.001}) == {f"placement.{code}"}
    assert placement(**{f"site__{name}": least_m - 0.001, f"placement__{name}": least_m - 0.002}) == set()
    assert placement(**{f"site__{name}": least_m, f"placement__{name}": least_m + 0.001}) == {f"placement.{code}"}


# 24 ft of drain at a quarter inch in a foot: 6 in of fall; a drop of 5 in lets it run 20 ft.
def test_the_drain_wants_length_times_slope_and_the_drop_says_how_long_it_may_be():
    drain = {"site__drain_run_m": 24 * 0.3048, "placement__drain_slope_frac": 0.25 / 12}
    found = at(**SEEN | drain | {"site__drain_drop_m": 5 * 0.0254})
    assert found.drain_fall_m[0] == pytest.approx(6 * 0.0254)
    assert found.drain_reach_m[0] == pytest.approx(20 * 0.3048)
    for drop_in, is_raised in ((5.99, True), (6.0, False), (6.01, False)):
        raised = placement(**drain | {"site__drain_drop_m": drop_in * 0.0254})
        assert ("placement.drain_falls_too_little" in raised) is is_raised
    assert placement(**drain | {"site__drain_drop_m": 0.0, "site__drain": "pump"}) == set()


def test_a_drain_of_unknown_length_is_as_long_as_the_lines():
    assert at(**SEEN).drain_run_m[0] == 4.5


# A foot of snow and a hand, 0.1 m, above it.
@pytest.mark.parametrize(("foot_m", "is_raised"), [(0.404, True), (0.4048, False), (0.405, False)])
def test_the_foot_is_held_against_snow_and_a_hand(foot_m, is_raised):
    found = placement(site__snow_m=0.3048, site__outdoor_height_m=foot_m)
    assert ("placement.snow" in found) is is_raised


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ({"site__head_blows": "at_bed"}, "blows_at_bed"),
        ({"site__head_studs": "missed"}, "studs_missed"),
        ({"site__head_access": "no"}, "no_access_inside"),
        ({"site__door_swing": "yes"}, "door"),
    ],
)
def test_what_is_said_of_the_places_is_found(said, code):
    assert placement(**said) == {f"placement.{code}"}


# 6.1 m in the box, and 3.66 m of an extension where the maker allows one.
@pytest.mark.parametrize(
    ("run_m", "allowed", "short_m"),
    [(6.1, "no", 0.0), (6.5, "no", 0.4), (6.5, "not_known", 0.4), (9.76, "yes", 0.0), (10.0, "yes", 0.24)],
)
def test_lines_fall_short_by_what_box_and_allowed_extension_do_not_reach(run_m, allowed, short_m):
    said = {"site__line_run_m": run_m, "kit__extension_allowed": allowed}
    assert at(**said).line_short_m[0] == pytest.approx(short_m)
    assert ("line_set.too_short" in codes(**said)) is (short_m > 0.0)


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ({"site__permit": "refused"}, "permit.refused"),
        ({"site__association": "refused"}, "permit.association_refused"),
        ({"site__hole": "below_grade"}, "drilling.below_grade_refused"),
        ({"site__occupancy": "owner_lets"}, "permit.let_home"),
        ({"site__occupancy": "tenant"}, "permit.landlord_consent"),
        ({"site__panel_spaces": "no"}, "electrical.no_panel_space"),
        ({"site__wall": "stone", "site__wall_thickness_m": 0.6}, "drilling.beyond_the_bit"),
        ({"site__wall": "block", "site__wall_thickness_m": 0.3}, "drilling.bit_extension"),
        ({"site__line_rise_m": 8.0, "kit__rise_max_m": 7.6}, "line_set.rise_too_high"),
    ],
)
def test_what_stands_in_the_way_of_a_site_is_found_and_stops_no_computation(said, code):
    assert code in codes(**said)
    assert code not in codes()


def test_a_refusal_takes_the_place_of_asking():
    assert "permit.association" not in codes(site__association="refused")
    assert "permit.needed" not in codes(site__permit="refused")


def test_a_contractor_who_is_to_take_on_the_kit_is_asked_first():
    given_out = structure(parties=(("leak_check", "contractor"),))
    drilled = structure(parties=(("wall_hole", "contractor"),))
    code = "permit.contractor_unasked"
    assert code in codes(given_out, work__contractor_finishes="not_known")
    assert code not in codes(given_out, work__contractor_finishes="yes")
    assert code not in codes(drilled, work__contractor_finishes="not_known")
    flared = {"kit__connection": "flare_with_charged_outdoor_unit"}
    assert code in codes(work__contractor_finishes="not_known", **flared)


def test_a_handyman_is_asked_about_where_he_does_a_task():
    given_out = structure(parties=(("wall_hole", "helper"),))
    assert "permit.handyman" in codes(given_out, work__helper="handyman")
    assert "permit.handyman" not in codes(given_out, work__helper="free")
    assert "permit.handyman" not in codes(work__helper="handyman")


@pytest.mark.parametrize(
    ("wall", "asks"),
    [("wood_frame", True), ("brick_on_frame", True), ("not_known", True), ("block", False), ("poured_concrete", False)],
)
def test_studs_matter_only_where_a_wall_may_have_some(wall, asks):
    missed = placement(site__wall=wall, site__head_studs="missed")
    unseen = placement(site__wall=wall, site__head_studs="not_known")
    assert ("placement.studs_missed" in missed) is asks
    assert ("placement.indoor_unseen" in unseen) is asks


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ({"site__cladding": "foam_stucco"}, "wall.foam_stucco"),
        ({"site__fire_wall": "yes"}, "wall.fire_rated"),
        ({"site__wall": "poured_concrete"}, "drilling.tensioned_concrete"),
        ({"site__flood": "yes"}, "placement.flood"),
        ({"site__salt_air": "yes"}, "placement.salt_air"),
        ({"site__heritage": "yes"}, "permit.heritage"),
    ],
)
def test_what_is_said_of_the_wall_and_the_place_outside_is_found(said, code):
    assert code in codes(**said)
    assert code not in codes()


def test_cement_shingles_count_by_the_year_of_the_oldest_room():
    said = {"site__cladding": "cement_shingles"}
    assert "wall.asbestos_siding" in codes(rooms=[{"year_built": 1989.0}], **said)
    assert "wall.asbestos_siding" not in codes(rooms=[{"year_built": 1990.0}], **said)


def test_the_ground_is_asked_about_only_where_the_unit_stands_on_it():
    assert "digging.buried_lines" in codes(site__outdoor_place="ground_pad")
    assert "digging.buried_lines" not in codes(site__outdoor_place="wall_bracket")


@pytest.mark.parametrize(("kind", "asks"), [("garage", True), ("lower_level", True), ("bedroom", False)])
def test_only_rooms_of_kinds_that_are_converted_are_asked_for_their_permit(kind, asks):
    code, rooms = "permit.room_never_permitted", [{"kind": kind}]
    assert (code in codes(rooms=rooms, site__room_permitted="not_known")) is asks
    assert code not in codes(rooms=rooms, site__room_permitted="yes")


@pytest.mark.parametrize(
    ("said", "is_raised"),
    [
        ({}, True),
        ({"site__pipes": "no"}, False),
        ({"now__heat": "none"}, False),
        ({"use__present_heat_stays": "yes"}, False),
    ],
)
def test_pipes_are_told_of_only_where_a_heat_that_may_keep_them_warm_goes(said, is_raised):
    cold = {"site__pipes": "not_known", "use__present_heat_stays": "no"}
    assert ("room.pipes_freeze" in codes(**cold | said)) is is_raised


def test_a_contractor_answers_for_his_hours_alone_on_a_kit_bought_elsewhere():
    given_out = structure(parties=(("leak_check", "contractor"),))
    assert "permit.bought_elsewhere" in codes(given_out)
    assert "permit.bought_elsewhere" not in codes()


# 58 dB a metre off, a wall behind adds 3: at 3.5 m 58 - 10.88 + 3 = 50.12 dB, at 3.6 m 49.87.
@pytest.mark.parametrize(("boundary_m", "is_raised"), [(3.5, True), (3.6, False)])
def test_sound_at_the_boundary_is_held_against_its_figure(boundary_m, is_raised):
    loud = {"kit__outdoor_sound_db": 58.0, "site__boundary_m": boundary_m}
    assert ("placement.neighbour_noise" in codes(**SEEN | loud)) is is_raised
    assert "placement.neighbour_noise" not in codes(**SEEN | loud | {"placement__boundary_db": 55.0})
    assert "placement.neighbour_noise" not in codes(kit__outdoor_sound_db=90.0)
