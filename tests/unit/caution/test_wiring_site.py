"""From what is said of the site and its tasks to facts and findings."""

import pytest

from tests.unit.caution.wired import at, codes
from tests.unit.installation.site_values import structure

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
