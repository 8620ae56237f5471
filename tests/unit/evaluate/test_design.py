"""Design loads of whole cases: inputs reach them, rooms add up to a block, rows do not mix."""

import numpy as np
import pytest

from econ.case.toml import read_case
from econ.evaluate.design import design_rows
from econ.evaluate.evaluate import evaluate
from econ.evaluate.known import known_names
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import moved, point
from econ.evaluate.wiring import climate, load_factors
from econ.loads.design_load import METHODS
from econ.report.plain import loaded
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_case

HEAD = """
schema_version = 1
[place]
station = "Chicago Ohare Intl AP, IL"
[use]
heat = "yes"
[[rooms]]
floor_area_m2 = "25 m**2"
ceiling_height_m = "2.5 m"
length_m = "5 m"
"""
PLAIN = {
    "kind": '"living"',
    "north": '"outside"',
    "east": '"heated_room"',
    "south": '"outside"',
    "west": '"unheated_room"',
    "above": '"vented_attic"',
    "below": '"vented_crawl"',
    "window_north_m2": '"1 m**2"',
    "window_east_m2": '"0 m**2"',
    "window_south_m2": '"2 m**2"',
    "window_west_m2": '"0 m**2"',
    "wall_u_w_per_m2k": '"0.5 W/(m**2*K)"',
    "roof_u_w_per_m2k": '"0.2 W/(m**2*K)"',
    "floor_u_w_per_m2k": '"0.3 W/(m**2*K)"',
    "window_u_w_per_m2k": '"2.0 W/(m**2*K)"',
    "window_shgc_frac": "0.5",
}
TABLES = load_tables()


def made(**said):
    """Return structure and values of a plain room with more said of it."""
    text = HEAD + "".join(f"{name} = {value}\n" for name, value in (PLAIN | said).items())
    structure, sheet = prepared(read_case(text, known_names()), TABLES, TODAY)
    return structure, sheet


def designed(**said):
    structure, sheet = made(**said)
    return design_rows(structure, point(sheet), TABLES, climate.weather(structure, TABLES), 1)


def surfaces(**said):
    structure, sheet = made(**said)
    return load_factors.envelopes(structure, point(sheet), 1)


def test_surfaces_are_areas_times_u_values():
    found = surfaces()
    assert found.sunlit_wall_w_per_k[0] == pytest.approx(0.5 * (12.5 - 1.0 + 12.5 - 2.0))
    assert found.partition_w_per_k[0] == pytest.approx(0.5 * 12.5 * 0.5)
    assert found.attic_w_per_k[0] == pytest.approx(0.2 * 25.0)
    assert found.crawl_floor_w_per_k[0] == pytest.approx(0.3 * 25.0)
    assert found.window_w_per_k[0] == pytest.approx(6.0)
    assert found.glass_area_m2[0] == pytest.approx(3.0)
    assert found.roof_w_per_k[0] == found.open_floor_w_per_k[0] == found.slab_area_m2[0] == 0.0


def test_a_turned_room_turns_its_glass():
    turned = surfaces(north_faces='"east"')
    assert turned.sun_area_m2[0, [2, 6]] == pytest.approx(surfaces().sun_area_m2[0, [0, 4]])


def test_earth_counts_nothing_and_a_roof_as_one():
    found = surfaces(below='"basement_floor"', above='"flat_roof"', south='"earth"', earth_depth_m='"2.5 m"')
    assert found.slab_area_m2[0] == found.crawl_floor_w_per_k[0] == found.attic_w_per_k[0] == 0.0
    assert found.roof_w_per_k[0] == pytest.approx(5.0)
    assert found.sunlit_wall_w_per_k[0] == pytest.approx(0.5 * 11.5)


def test_a_figure_found_elsewhere_sizes_and_the_year_stays():
    plain, own = made(), made(own_cooling_w='"20000 Btu/hour"', own_heating_w='"30000 Btu/hour"')
    results = [evaluate(structure, point(sheet), TABLES) for structure, sheet in (plain, own)]
    assert results[1].rooms.design_cooling_method == ("own",)
    assert results[1].rooms.block.cooling_w == pytest.approx(5861.4, rel=1e-4)
    assert results[1].rooms.block.heating_w == pytest.approx(8792.1, rel=1e-4)
    assert results[1].rooms.annual_heating_kwh == pytest.approx(results[0].rooms.annual_heating_kwh)
    sizes = [sheet.entry("kit.capacity_w").likely for _, sheet in (plain, own)]
    assert sizes[1] > sizes[0]


def test_measured_leaks_bring_the_air_of_the_design_days():
    few, many = (designed(leakage_area_m2=f'"{area} m**2"') for area in (0.005, 0.02))
    assert many.heating_w > few.heating_w
    assert many.cooling_w > few.cooling_w
    # (51 + 0.35 2.5 dt)/1000 L/(s cm2) at the 99 % dry bulb, on 150 cm2, carries the difference
    warmer_k = 20.0 - float(few.heat_design_c[0])
    flow_m3_per_s = 150.0 * (51.0 + 0.35 * 2.5 * warmer_k) / 1e6
    expected_w = flow_m3_per_s * 1.204 * 1006.0 * warmer_k
    assert float(many.heating_w[0] - few.heating_w[0]) == pytest.approx(expected_w, rel=0.03)


def test_the_block_of_one_room_is_the_room():
    found = designed()
    loads = found.loads
    assert found.cooling_w[0] == pytest.approx(loads.cool_sensible_w[0] + loads.cool_latent_w[0])
    assert found.heating_w[0] == pytest.approx(loads.heat_w[0])


def test_rows_do_not_mix():
    structure, sheet = made()
    grid = np.linspace(0.2, 4.0, 7)
    weather = climate.weather(structure, TABLES)
    among = design_rows(structure, moved(sheet, "rooms[0].wall_u_w_per_m2k", grid), TABLES, weather, 7)
    for row, wall_u in enumerate(grid):
        values = point(sheet) | {"rooms[0].wall_u_w_per_m2k": np.asarray(wall_u)}
        alone = design_rows(structure, values, TABLES, weather, 1)
        assert among.cooling_w[row] == pytest.approx(alone.cooling_w[0], rel=1e-9)
        assert among.heating_w[row] == pytest.approx(alone.heating_w[0], rel=1e-9)
        assert among.block.method[row] == alone.block.method[0]


@pytest.mark.parametrize("name", ["lower_level_cold", "top_floor_flat"])
def test_loads_say_their_method_and_months(name):
    structure, sheet = prepared(demo_case(name), TABLES, TODAY)
    document = loaded(evaluate(structure, point(sheet), TABLES))
    for room in document["rooms"]:
        assert room["design_cooling_method"] in METHODS
        both = [room["hourly_cooling_w"], room["load_factor_cooling_w"]]
        assert room["design_cooling_sensible_w"] == pytest.approx(max(both))
        share = room["annual_cooling_latent_kwh"] / (
            room["annual_cooling_latent_kwh"] + room["annual_cooling_sensible_kwh"]
        )
        assert room["moisture_share_frac"] == pytest.approx(share)
    total_w = document["design_cooling_sensible_w"] + document["design_cooling_latent_w"]
    assert 0.0 < document["block"]["design_cooling_w"] <= total_w * (1.0 + 1e-9)
