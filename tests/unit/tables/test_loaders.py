"""Tables are found by key, and a name that is not there is answered with those nearest."""

import numpy as np
import pytest

from econ.kernel.constants import FOOT_M
from econ.kernel.errors import OutOfRangeError, UnknownChoiceError
from econ.tables.loaders import ERA_YEAR, era, load_tables
from econ.tables.lookup import nearest_names

TABLES = load_tables()


def test_tables_are_read_once() -> None:
    assert load_tables() is TABLES


def test_fingerprint_is_a_hash() -> None:
    assert len(TABLES.fingerprint) == 64
    int(TABLES.fingerprint, 16)


def test_a_station_carries_the_figures_of_its_row() -> None:
    station = TABLES.stations.station("Milwaukee Mitchell Intl AP, WI")
    assert station.state == "WI"
    assert station.heat_design_c == -18.9
    assert station.cool_design_c == 29.4
    assert round(station.hdd18_3_kd) == 4045
    assert station.mean_c.shape == station.global_kwh_per_m2.shape == (12,)
    assert np.all(station.min_c < station.mean_c)
    assert np.all(station.mean_c < station.max_c)


def test_station_figures_cannot_be_written() -> None:
    with pytest.raises(ValueError, match="read-only"):
        TABLES.stations.station("Milwaukee Mitchell Intl AP, WI").mean_c[0] = 0.0


def test_an_unknown_station_is_answered_with_three_nearest_spellings() -> None:
    with pytest.raises(UnknownChoiceError) as caught:
        TABLES.stations.station("chicago ohare")
    assert len(caught.value.nearest) == 3
    assert caught.value.nearest[0] == "Chicago Ohare Intl AP, IL"
    assert str(caught.value).startswith("station 'chicago ohare' is not known. Nearest: Chicago Ohare")


def test_nearest_stations_are_sorted_by_distance() -> None:
    nearest = TABLES.stations.nearest(41.98, -87.90)
    assert nearest[0].name == "Chicago Ohare Intl AP, IL"
    assert nearest[0].elevation_m == TABLES.stations.station("Chicago Ohare Intl AP, IL").elevation_m
    distances = [near.distance_km for near in nearest]
    assert len(distances) == 3
    assert distances == sorted(distances)


def test_a_degree_of_latitude_is_111_km() -> None:
    station = TABLES.stations.station("Chicago Ohare Intl AP, IL")
    found = TABLES.stations.nearest(station.latitude_deg + 1.0, station.longitude_deg, count=849)
    here = {near.name: near.distance_km for near in found}
    assert here["Chicago Ohare Intl AP, IL"] == pytest.approx(111.19, abs=0.05)


@pytest.mark.parametrize(("latitude", "longitude"), [(90.5, 0.0), (0.0, -180.5)])
def test_a_point_off_the_globe_is_refused(latitude: float, longitude: float) -> None:
    with pytest.raises(OutOfRangeError, match="west and south negative"):
        TABLES.stations.nearest(latitude, longitude)


def test_every_station_state_has_prices() -> None:
    states = {TABLES.stations.station(name).state for name in TABLES.stations.names}
    assert states - {""} <= set(TABLES.prices.keys)


def test_a_city_abroad_says_what_was_estimated_of_it() -> None:
    city = TABLES.stations.station("Mexico City, Mexico")
    assert (city.basis, city.state) == ("means", "")
    assert len(city.estimated) == 6
    assert np.all(city.diffuse_kwh_per_m2 < city.global_kwh_per_m2)
    assert 2000.0 < city.elevation_m < 2500.0


def test_kit_price_of_a_known_class() -> None:
    price = TABLES.ductless("kit", 24, "standard").spread("price_usd")
    assert (price.low, price.likely, price.high) == (1600.0, 2100.0, 2700.0)
    assert "assumption" in price.source


def test_a_price_between_known_sizes_says_interpolated() -> None:
    price = TABLES.ductless("kit", 30, "cold_climate").spread("price_usd")
    assert price.likely == (2700.0 + 3800.0) / 2.0
    assert "assumption: interpolated" in price.source


def test_small_kits_run_on_120_and_large_on_240_volts() -> None:
    volts = {size: TABLES.ductless("kit", size, "standard").number("volts") for size in (6, 9, 12, 18, 36)}
    assert volts == {6: 120.0, 9: 120.0, 12: 120.0, 18: 240.0, 36: 240.0}


def test_line_set_in_the_box_is_about_20_feet() -> None:
    line = TABLES.ductless("kit", 12, "standard").spread("line_set_m")
    assert line.likely == pytest.approx(20 * FOOT_M, rel=1e-4)
    assert line.low < line.likely < line.high


def test_cold_climate_class_keeps_more_heat_than_economy() -> None:
    cold, plain = (TABLES.ductless("kit", 12, grade) for grade in ("cold_climate", "economy"))
    assert cold.spread("heat_5f_ratio_frac").likely > plain.spread("heat_5f_ratio_frac").likely
    assert cold.spread("cutout_c").likely < plain.spread("cutout_c").likely


def test_no_window_unit_above_28() -> None:
    assert max(TABLES.window_sizes()) == 28
    with pytest.raises(UnknownChoiceError, match="window unit 'window_30_minimum_2026_cooling_only' is not known"):
        TABLES.window(30)


def test_new_window_units_are_more_efficient_than_old_stock() -> None:
    for size in TABLES.window_sizes():
        assert TABLES.window(size).spread("ceer").likely > TABLES.window(size, "old_stock").spread("ceer").likely


def test_only_reverse_cycle_units_heat() -> None:
    for size in TABLES.window_sizes(cycle="reverse_cycle"):
        assert TABLES.window(size, cycle="reverse_cycle").spread("heat_cop").likely > 1.0
        assert TABLES.window(size).spread("heat_cop").high == 0.0


def test_a_portable_unit_serves_the_wait() -> None:
    assert TABLES.portable(12).spread("price_usd").likely == 500.0


def test_era_turns_in_its_year() -> None:
    assert [era(ERA_YEAR - 1), era(ERA_YEAR), era(ERA_YEAR + 1)] == ["before_1980", "from_1980", "from_1980"]


@pytest.mark.parametrize("when", ["before_1980", "from_1980"])
def test_a_heated_neighbour_takes_no_heat(when: str) -> None:
    assert TABLES.roof("heated_room", when).spread("u_w_per_m2k").high == 0.0
    assert TABLES.floor("heated_room", when).spread("u_w_per_m2k").high == 0.0


def test_insulation_lowers_every_wall() -> None:
    for wall in ("wood_frame", "brick_on_frame", "block", "poured_concrete", "solid_brick", "stone", "not_known"):
        insulated, bare = (TABLES.walls[wall, said].spread("u_w_per_m2k") for said in ("yes", "no"))
        open_question = TABLES.walls[wall, "not_known"].spread("u_w_per_m2k")
        assert insulated.likely < open_question.likely < bare.likely
        assert open_question.low <= insulated.likely
        assert bare.likely <= open_question.high


def test_room_mass_is_the_heavier_of_wall_and_floor() -> None:
    light = TABLES.room_mass("wood_frame", "no", "vented_crawl", "before_1980")
    on_slab = TABLES.room_mass("wood_frame", "no", "slab_on_grade", "before_1980")
    concrete = TABLES.room_mass("poured_concrete", "no", "slab_on_grade", "before_1980")
    assert (light.likely, on_slab.likely, concrete.likely) == (110e3, 165e3, 260e3)
    assert (on_slab.low, on_slab.high) == (110e3, 260e3)


def test_contractor_wait_adds_visit_and_start() -> None:
    wait = TABLES.wait("contractor", "peak")
    assert (wait.low, wait.likely, wait.high) == (5.0 + 14.0, 12.0 + 35.0, 30.0 + 120.0)


def test_july_is_peak_and_january_is_not() -> None:
    assert [TABLES.season(month) for month in (1, 4, 7)] == ["off", "shoulder", "peak"]


def test_costs_carry_unit_and_source() -> None:
    cost = TABLES.costs["ground_pad_usd"]
    assert cost.text("unit") == "USD"
    assert cost.spread().likely == 60.0
    assert cost.spread().source.startswith("assumption")


def test_a_misspelled_cost_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownChoiceError, match="Nearest: ground_pad_usd"):
        TABLES.costs["ground_pad"]


def test_a_range_without_numbers_is_not_there() -> None:
    with pytest.raises(UnknownChoiceError, match="range 'price_usd' is not known"):
        TABLES.fuels["gas"].spread("price_usd")


def test_nearest_names_ignore_case() -> None:
    assert nearest_names("BLOCK", ("stone", "block", "brick"), count=1) == ("block",)


# economics checks F07: CO2 per therm, gallon of propane and gallon of heating oil
@pytest.mark.parametrize(("fuel", "kg"), [("gas", 5.3060), ("propane", 5.7496), ("oil", 10.2435)])
def test_fuel_emissions(fuel: str, kg: float) -> None:
    assert TABLES.fuels[fuel].number("kg_co2e_per_unit") == pytest.approx(kg, abs=5e-5)


# economics checks F01: kWh per therm
def test_heat_of_a_therm() -> None:
    assert TABLES.fuels["gas"].number("kwh_per_unit") == pytest.approx(29.3071, abs=5e-5)
