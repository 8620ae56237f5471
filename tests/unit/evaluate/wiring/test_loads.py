"""Rooms of a case: geometry, choices, hours and rows."""

from types import SimpleNamespace

import numpy as np
import pytest

from econ.case.choices import CHOICES, code, table_path
from econ.evaluate.wiring import earth, loads, room_shell
from econ.kernel.errors import OutOfRangeError
from econ.loads import gains, schedule
from econ.loads.heat_balance import need
from tests.unit.loads.rooms import days

WEATHER = days(11.0 - 13.0 * np.cos(np.arange(12) / 6.0 * np.pi), 5.0, 300.0)
AREA_M2, LENGTH_M, HEIGHT_M = 24.0, 6.0, 2.5

ROOM = {
    "floor_area_m2": AREA_M2,
    "length_m": LENGTH_M,
    "ceiling_height_m": HEIGHT_M,
    "north_faces": "north",
    "north": "outside",
    "east": "heated_room",
    "south": "outside",
    "west": "heated_room",
    "earth_depth_m": 0.0,
    "earth_wall_u_w_per_m2k": 3.0,
    "ground_absorptance_frac": 0.77,
    "ground_wet_frac": 0.4,
    "ground_open_frac": 0.9,
    "above": "heated_room",
    "below": "heated_room",
    "window_north_m2": 0.0,
    "window_east_m2": 0.0,
    "window_south_m2": 2.0,
    "window_west_m2": 0.0,
    "kitchen": "no",
    "people_count": 2.0,
    "screens_count": 1.0,
    "wall_u_w_per_m2k": 0.5,
    "roof_u_w_per_m2k": 0.3,
    "floor_u_w_per_m2k": 0.4,
    "window_u_w_per_m2k": 3.0,
    "window_shgc_frac": 0.6,
    "infiltration_per_h": 0.5,
    "mass_j_per_m2k": 110e3,
    "absorptance_frac": 0.7,
    "unheated_frac": 0.5,
    "shade_frac": 0.95,
}
USE = {
    "use.cool": "yes",
    "use.heat": "yes",
    "now.heat": "gas",
    "use.dry": "no",
    "use.when": "day_and_night",
    "use.cooling_setpoint_c": 24.0,
    "use.heating_setpoint_c": 20.0,
    "use.humidity_limit_frac": 0.6,
    "place.warming_offset_k": 0.4,
    "place.wind_m_per_s": 3.7,
    "place.soil_conductivity_w_per_mk": 1.385,
    "place.soil_heat_j_per_m3k": 2.0e6,
    "earth.wall_thickness_m": 0.25,
}


def in_use(u, film=0.04):
    """Return a printed U-value with the film of a house in use, 0.06 m2 K/W."""
    return 1.0 / (1.0 / u + 0.06 - film)


def values(*rooms, **use):
    """Return values by path: plain rooms with these changes, and plain use with dots written as underscores."""
    said = USE | {name.replace("_", ".", 1): value for name, value in use.items()}
    for index, changes in enumerate(rooms or ({},)):
        said |= {f"rooms[{index}].{name}": value for name, value in (ROOM | changes).items()}
    return {path: np.asarray(code(path, value) if isinstance(value, str) else value) for path, value in said.items()}


def rows(*rooms, n_row=1, **use):
    structure = SimpleNamespace(n_rooms=max(len(rooms), 1), station="")
    return loads.room_rows(structure, values(*rooms, **use), n_row, WEATHER)


def test_walls_and_windows_conduct_by_their_areas():
    room = rows()
    assert room.ua_opaque_w_per_k[0] == pytest.approx(in_use(0.5) * (2.0 * LENGTH_M * HEIGHT_M - 2.0))
    assert room.ua_window_w_per_k[0] == pytest.approx(in_use(3.0, 0.033) * 2.0)
    assert room.ua_ground_w_per_k[0] == 0.0


def test_east_and_west_are_as_wide_as_area_over_length():
    room = rows({"north": "heated_room", "south": "heated_room", "east": "outside", "window_south_m2": 0.0})
    assert room.ua_opaque_w_per_k[0] == pytest.approx(in_use(0.5) * AREA_M2 / LENGTH_M * HEIGHT_M)


@pytest.mark.parametrize("length", [np.nan, None])
def test_a_room_without_a_length_is_square(length):
    said = values({"north": "heated_room", "window_south_m2": 0.0} | ({"length_m": length} if length else {}))
    if length is None:
        del said["rooms[0].length_m"]
    room = loads.room_rows(SimpleNamespace(n_rooms=1), said, 1, WEATHER)
    assert room.ua_opaque_w_per_k[0] == pytest.approx(in_use(0.5) * np.sqrt(AREA_M2) * HEIGHT_M)


def test_windows_let_sun_in_on_their_own_face():
    aperture = rows().window_aperture_m2[0]
    assert aperture.nonzero()[0].tolist() == [4]
    assert aperture[4] == pytest.approx(0.9 * 0.6 * 0.95 * 2.0)


def test_an_unheated_room_halves_the_loss_and_takes_the_sun():
    plain, beside = rows(), rows({"south": "unheated_room"})
    assert beside.ua_window_w_per_k == pytest.approx(0.5 * plain.ua_window_w_per_k)
    assert not beside.window_aperture_m2.any()
    assert beside.opaque_aperture_m2[0].nonzero()[0].tolist() == [0]


def test_a_side_to_a_heated_room_passes_nothing():
    room = rows({"north": "heated_room", "south": "heated_room"})
    assert room.ua_opaque_w_per_k[0] == room.ua_window_w_per_k[0] == 0.0
    assert not room.opaque_aperture_m2.any()


@pytest.mark.parametrize(("above", "share", "sun"), [("flat_roof", 1.0, 1.0), ("vented_attic", 0.9, 0.37)])
def test_what_is_above_decides_what_the_roof_feels(above, share, sun):
    more = rows({"above": above})
    assert (more.ua_opaque_w_per_k - rows().ua_opaque_w_per_k)[0] == pytest.approx(share * in_use(0.3) * AREA_M2)
    assert more.opaque_aperture_m2[0, 8] == pytest.approx(0.7 * 0.06 * in_use(0.3) * AREA_M2 * sun)


@pytest.mark.parametrize(("below", "share"), [("open_air", 1.0), ("vented_crawl", 0.8), ("unheated_room", 0.5)])
def test_what_is_below_decides_what_the_floor_feels(below, share):
    more = rows({"below": below})
    assert (more.ua_opaque_w_per_k - rows().ua_opaque_w_per_k)[0] == pytest.approx(share * in_use(0.4) * AREA_M2)


def test_a_slab_feels_the_ground_and_not_the_air():
    slab = rows({"below": "slab_on_grade"})
    assert slab.ua_opaque_w_per_k == pytest.approx(rows().ua_opaque_w_per_k)
    assert slab.ua_ground_w_per_k[0] > 0.0


def test_a_slab_loses_along_its_edges_outdoors_only():
    """A floor of the same reach has twice the edge: 12 m of two long sides, then 20 m of all."""
    two = rows({"below": "slab_on_grade", "floor_u_w_per_m2k": 3.6})
    none = rows({"below": "slab_on_grade", "north": "heated_room", "south": "heated_room"})
    all_sides = rows({"below": "slab_on_grade", "floor_u_w_per_m2k": 3.6, "east": "outside", "west": "outside"})
    assert none.ua_ground_w_per_k[0] == 0.0
    assert two.ua_ground_w_per_k < all_sides.ua_ground_w_per_k < 20.0 / 12.0 * two.ua_ground_w_per_k


def test_insulation_below_a_slab_keeps_heat_in():
    bare, insulated = (rows({"below": "slab_on_grade", "floor_u_w_per_m2k": u}) for u in (3.6, 0.5))
    assert insulated.ua_ground_w_per_k < 0.7 * bare.ua_ground_w_per_k


def test_a_walk_out_floor_loses_on_grade_at_its_open_side():
    closed = rows({"below": "basement_floor", "north": "earth", "south": "heated_room", "earth_depth_m": 2.0})
    walk_out = rows({"below": "basement_floor", "north": "earth", "earth_depth_m": 2.0})
    assert walk_out.ua_ground_w_per_k > closed.ua_ground_w_per_k
    assert np.ptp(walk_out.ground_c * walk_out.ua_ground_w_per_k) > np.ptp(closed.ground_c * closed.ua_ground_w_per_k)


def test_ground_swings_less_than_the_air_and_about_a_mean_near_it():
    ground = rows({"below": "basement_floor", "north": "earth", "earth_depth_m": 2.0}).ground_c[0]
    assert np.ptp(ground) < 30.0
    assert ground.mean() == pytest.approx(WEATHER.monthly_mean_c().mean() + 1.5 + 0.4, abs=2.5)


def test_a_room_beside_earth_without_a_floor_on_it_has_its_wall_alone():
    wall = rows({"north": "earth", "earth_depth_m": 2.0})
    with_floor = rows({"north": "earth", "earth_depth_m": 2.0, "below": "basement_floor"})
    assert 0.0 < wall.ua_ground_w_per_k < with_floor.ua_ground_w_per_k


def test_asphalt_is_warmer_than_a_lawn_and_than_shade():
    lawn, shade, asphalt = (
        rows(
            {"below": "slab_on_grade", "ground_absorptance_frac": sun, "ground_wet_frac": wet, "ground_open_frac": sky}
        ).ground_c.mean()
        for sun, wet, sky in ((0.77, 0.4, 0.9), (0.8, 0.15, 0.1), (0.8, 0.0, 0.95))
    )
    assert asphalt > max(lawn, shade) + 1.0


def test_an_earth_side_is_buried_as_deep_as_it_is_said_to_be():
    half = rows({"north": "earth", "earth_depth_m": 1.25})
    whole = rows({"north": "earth", "earth_depth_m": 2.5})
    south = in_use(0.5) * (LENGTH_M * HEIGHT_M - 2.0)
    assert half.ua_opaque_w_per_k[0] - south == pytest.approx(in_use(0.5) * LENGTH_M * 1.25)
    assert whole.ua_opaque_w_per_k[0] == pytest.approx(south)
    assert whole.ua_ground_w_per_k > half.ua_ground_w_per_k


def test_a_wall_deeper_than_the_room_is_high_starts_below_grade():
    deep = rows({"north": "earth", "earth_depth_m": 4.0})
    assert deep.ua_ground_w_per_k < rows({"north": "earth", "earth_depth_m": 2.5}).ua_ground_w_per_k


def test_windows_that_outgrow_their_side_within_doubt_fill_it():
    side_m2 = LENGTH_M * HEIGHT_M
    room = rows({"window_south_m2": 1.2 * side_m2})
    assert room.ua_window_w_per_k[0] == pytest.approx(in_use(3.0, 0.033) * side_m2)


def test_windows_far_larger_than_their_side_are_refused():
    with pytest.raises(OutOfRangeError, match="window area less its side's area is 25 m"):
        rows({"window_south_m2": 40.0})


def test_evenings_are_cooled_in_the_evening_and_eased_in():
    room = rows(use_when="evenings_and_nights")
    assert room.is_cooled[0].nonzero()[0].tolist() == [*range(7), *range(17, 24)]
    assert room.cool_setpoint_c[0, 17:20].tolist() == [26.0, 25.0, 24.0]
    assert room.is_heated.all()
    assert room.heat_setpoint_c[0, 12] == 20.0 - schedule.SETBACK_K


def test_sometimes_heats_in_waking_hours_of_use_only():
    room = rows(use_when="evenings_and_nights", use_heat="sometimes")
    assert room.is_heated[0].nonzero()[0].tolist() == list(range(17, 23))


def test_cooling_not_asked_for_is_off():
    assert not rows(use_cool="no").is_cooled.any()


def test_heat_not_asked_for_keeps_the_room_warm_uncounted():
    assert rows(use_heat="no").is_heated.all()
    assert not loads.counts_heat(values({}, use_heat="no"), 1)[0]
    assert loads.counts_heat(values({}, use_heat="sometimes"), 1)[0]


def test_a_room_without_a_heater_is_left_to_itself():
    assert not rows(use_heat="no", now_heat="none").is_heated.any()


def test_drying_goes_on_without_cooling_where_it_is_asked_for():
    room = rows(use_cool="no", use_dry="yes")
    assert room.is_dried.all()
    assert not rows().is_dried.any()


def test_hot_days_only_leaves_mild_days_alone():
    assert rows(use_when="hot_days_only").cool_day_above_c[0] == schedule.HOT_DAY_ABOVE_C
    assert rows().cool_day_above_c[0] < -50.0


def test_people_and_screens_count_in_hours_of_use():
    room = rows(use_when="working_hours")
    base_w = float(gains.room_sensible_w(np.array(AREA_M2), np.array(0.0)))
    assert room.gain_w[0, 3] == pytest.approx(base_w)
    assert room.gain_w[0, 12] == pytest.approx(base_w + 2.0 * gains.PERSON_SENSIBLE_W + gains.SCREEN_W)
    assert room.moisture_gain_kg_per_s[0, 12] > room.moisture_gain_kg_per_s[0, 3]


def test_the_kitchen_brings_the_house_s_fixed_gain():
    assert (rows({"kitchen": "yes"}).gain_w - rows().gain_w)[0, 0] == pytest.approx(464.0 / 3.412, rel=1e-3)


def test_rooms_stand_one_after_the_other_and_rows_know_their_owner():
    two = rows({}, {"floor_area_m2": 30.0}, n_row=3)
    assert two.floor_area_m2.tolist() == [24.0] * 3 + [30.0] * 3
    assert two.owner.tolist() == [0, 1, 2, 0, 1, 2]


def test_values_may_differ_row_by_row():
    said = values() | {"rooms[0].wall_u_w_per_m2k": np.array([0.5, 1.0]), "use.cool": np.array([0.0, 1.0])}
    room = loads.room_rows(SimpleNamespace(n_rooms=1), said, 2, WEATHER)
    assert room.ua_opaque_w_per_k[1] == pytest.approx(in_use(1.0) / in_use(0.5) * room.ua_opaque_w_per_k[0])
    assert room.is_cooled.any(axis=1).tolist() == [True, False]


def test_humidity_limit_is_that_of_the_case_for_every_room():
    structure = SimpleNamespace(n_rooms=2)
    limit = loads.humidity_limit_frac(structure, values({}, {}) | {"use.humidity_limit_frac": np.array([0.5, 0.6])}, 2)
    assert limit.tolist() == [0.5, 0.6, 0.5, 0.6]


def choices_of_a_room():
    for table, path in (
        (room_shell.SIDE_FRAC, "rooms[].north"),
        (room_shell.SIDE_SUN_FRAC, "rooms[].north"),
        (room_shell.ABOVE_FRAC, "rooms[].above"),
        (room_shell.ABOVE_SUN_FRAC, "rooms[].above"),
        (room_shell.ABOVE_SKY_FRAC, "rooms[].above"),
        (room_shell.BELOW_FRAC, "rooms[].below"),
        (earth.ON_EARTH_FRAC, "rooms[].below"),
        (earth.EDGE_FRAC, "rooms[].north"),
        (schedule.HOURS_OF_USE, "use.when"),
    ):
        yield pytest.param(table, path, id=path)


@pytest.mark.parametrize(("table", "path"), list(choices_of_a_room()))
def test_every_option_has_its_number(table, path):
    assert set(table) == set(CHOICES[table_path(path)])


@pytest.mark.parametrize("name", ["north", "above", "below", "kitchen"])
def test_a_room_with_something_not_known_can_be_computed(name):
    found = need(rows({name: "not_known"}), WEATHER, np.array([0.6]))
    assert np.all(np.isfinite(found.heat_w))
