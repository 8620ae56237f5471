"""What an expert may say of a room: leaks, facing, heaviness, gains and unheated neighbours reach the room rows."""

import numpy as np
import pytest

from econ.case.toml import read_case
from econ.climate.weather import FACES
from econ.evaluate.known import known_names
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate, loads
from econ.tables.loaders import load_tables
from tests.demo import TODAY

CASE = """
schema_version = 1
[place]
station = "Chicago Ohare Intl AP, IL"
[use]
heat = "yes"
[[rooms]]
kind = "living"
floor_area_m2 = 25.0
"""


def room(case=CASE, **said):
    """Return the only room row of a case with more said of it."""
    lines = "".join(f"{name} = {value}\n" for name, value in said.items())
    text = case.replace("floor_area_m2 = 25.0", 'floor_area_m2 = "25 m**2"\n') + lines
    tables = load_tables()
    structure, sheet = prepared(read_case(text, known_names()), tables, TODAY)
    return loads.room_rows(structure, point(sheet), 1, climate.weather(structure, tables))


def test_a_turned_room_has_its_windows_on_the_turned_faces():
    plain = {"window_south_m2": '"3 m**2"', "window_north_m2": '"0 m**2"', "window_west_m2": '"0 m**2"'}
    ahead, turned = (room(**plain, window_east_m2='"1 m**2"', north_faces=f'"{f}"') for f in ("north", "northwest"))
    for was, now in (("S", "SE"), ("E", "NE")):
        assert turned.window_aperture_m2[0, FACES.index(now)] == ahead.window_aperture_m2[0, FACES.index(was)]
        assert turned.opaque_aperture_m2[0, FACES.index(now)] == ahead.opaque_aperture_m2[0, FACES.index(was)]
    assert turned.window_aperture_m2.sum() == pytest.approx(ahead.window_aperture_m2.sum())


def test_a_leakage_area_and_its_blower_door_reading_let_in_the_same_air():
    by_area, by_flow = room(leakage_area_m2='"25 in**2"'), room(air_50pa_m3_per_h='"455.7 ft**3/minute"')
    assert by_flow.air_flow_m3_per_s == pytest.approx(by_area.air_flow_m3_per_s, rel=1e-3)


# leakage model at the year's mean wind of 4.5 m/s: between 0.003 and 0.006 m3/s for 50 cm2 in an Illinois year
def test_leaks_take_the_place_of_air_changes():
    by_area = room(leakage_area_m2='"0.005 m**2"', infiltration_per_h=9.0)
    assert 0.003 < float(by_area.air_flow_m3_per_s[0]) < 0.006


def test_leaks_feel_the_wind_that_is_said():
    calm, windy = (
        room(CASE.replace("[use]", f'wind_m_per_s = "{wind} m/s"\n[use]'), leakage_area_m2='"50 cm**2"')
        for wind in (1, 8)
    )
    assert windy.air_flow_m3_per_s > 1.5 * calm.air_flow_m3_per_s


@pytest.mark.parametrize(("heaviness", "stored"), [("very_light", 80_000.0), ("very_heavy", 370_000.0)])
def test_heaviness_sets_the_heat_stored(heaviness, stored):
    assert float(room(mass_class=f'"{heaviness}"').mass_j_per_k[0]) == pytest.approx(25.0 * stored)


def test_a_number_of_heat_stored_counts_before_heaviness():
    said = room(mass_class='"very_heavy"', mass_j_per_m2k='"100000 J/(m**2*K)"')
    assert float(said.mass_j_per_k[0]) == pytest.approx(2.5e6)


def test_appliances_take_the_place_of_the_usual_share_and_lights_add_to_it():
    plain, asked = room(people_count=0, screens_count=0), room(people_count=0, screens_count=0, appliances_w='"200 W"')
    lit = room(people_count=0, screens_count=0, lighting_w='"60 W"')
    assert asked.gain_w[0] == pytest.approx(np.full(24, 200.0))
    assert set(np.round(lit.gain_w[0] - plain.gain_w[0], 6)) == {0.0, 60.0}
    assert (lit.gain_w[0] - plain.gain_w[0])[3] == 0.0


def test_an_unheated_neighbour_passes_as_much_as_is_said():
    sides = dict.fromkeys(("south", "east", "west"), '"heated_room"') | {"north": '"unheated_room"'}
    sides |= {f"window_{name}_m2": '"0 m**2"' for name in ("north", "east", "south", "west")}
    sides |= {"above": '"heated_room"', "below": '"heated_room"'}
    half, all_of_it = room(**sides), room(**sides, unheated_frac=1.0)
    assert all_of_it.ua_opaque_w_per_k == pytest.approx(2.0 * half.ua_opaque_w_per_k)
