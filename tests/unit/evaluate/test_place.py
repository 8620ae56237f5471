"""Whose weather a case has: hourly file, months typed in, listed place, town or point."""

from datetime import date

import numpy as np
import pytest

from econ.case.schema import case_from
from econ.climate import moist_air
from econ.evaluate.evaluate import evaluate
from econ.evaluate.place import weather_of, with_hourly_file
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate
from econ.kernel.errors import CaseError
from econ.tables.hourly import hourly_year
from econ.tables.loaders import load_tables
from tests.unit.tables.test_epw import file_of, rows

TABLES = load_tables()
CHICAGO = TABLES.stations.station("Chicago Ohare Intl AP, IL")
YEAR = file_of(rows(has_leap_day=True))
NAMES = ("mean_c", "max_c", "min_c", "sd_k", "dew_point_c", "global_kwh_per_m2", "diffuse_kwh_per_m2")
MONTHS = {name: getattr(CHICAGO, name).tolist() for name in NAMES}


def case(**place):
    return case_from({"place": place, "rooms": [{"kind": "bedroom"}]})


def result(tables=TABLES, **place):
    structure, sheet = prepared(case(**place), tables, date(2027, 1, 4))
    return evaluate(structure, point(sheet), tables)


def with_year(**place):
    written = case(hourly_file="year.epw", **place)
    return with_hourly_file(TABLES, written, {"year.epw": YEAR}.__getitem__)


def refusal(**place):
    with pytest.raises(CaseError) as caught:
        weather_of(case(**place), TABLES)
    return str(caught.value)


def test_listed_place_is_its_own_weather():
    assert weather_of(case(station=CHICAGO.name), TABLES)[0] == CHICAGO.name


def test_town_takes_the_nearest_place_and_says_how_far():
    name, chosen = weather_of(case(town="Mesa, AZ"), TABLES)
    assert name == "Phoenix Sky Harbor Intl AP, AZ"
    assert "the nearest weather place to Mesa, AZ: 15 km away, 25 m lower." in chosen.notes[0]


def test_point_takes_the_nearest_place():
    name, chosen = weather_of(case(latitude_deg=51.5, longitude_deg=-0.1), TABLES)
    assert name == "London, United Kingdom"
    assert "2 km away." in chosen.notes[0]


def test_town_that_is_not_listed_is_refused_with_names_that_come_closest():
    assert "place.town | is not a listed town | got 'Flagstaf, AZ' | Nearest names: Flagstaff, AZ" in refusal(
        town="Flagstaf, AZ"
    )


def test_hourly_file_that_was_not_read_is_refused_by_its_field():
    assert refusal(hourly_file="year.epw").startswith("place.hourly_file | must be a file that can be read")


def test_hourly_file_that_is_not_there_is_refused_by_its_field():
    def none(_written):
        raise FileNotFoundError

    with pytest.raises(CaseError, match=r"place\.hourly_file \| must be a file that can be read \| got 'year\.epw'"):
        with_hourly_file(TABLES, case(hourly_file="year.epw"), none)


def test_fault_in_an_hourly_file_names_field_file_and_line():
    body = rows()
    body[5] = body[5].replace("0,?,11.0", "0,?,99.9")
    with pytest.raises(CaseError, match=r"place\.hourly_file, year\.epw, line 14, dry bulb"):
        with_hourly_file(TABLES, case(hourly_file="year.epw"), lambda _written: file_of(body))


def test_case_without_an_hourly_file_leaves_the_tables_as_they_are():
    assert with_hourly_file(TABLES, case(station=CHICAGO.name), {}.__getitem__) is TABLES


def test_result_of_an_hourly_file_counts_its_own_hours():
    found = result(with_year(), hourly_file="year.epw", warming_offset_k="0 K")
    daily_c = hourly_year(YEAR, "year.epw").weather.dry_bulb_c.mean(axis=0)
    assert found.climate.station == "Anyplace, IL"
    assert found.climate.basis == "hourly"
    assert found.climate.notes == ("29 February is left out: the year has 365 days.",)
    assert found.climate.hdd18_3_kd == pytest.approx(np.maximum(65.0 / 1.8 - 32.0 / 1.8 - daily_c, 0.0).sum())
    assert found.climate.cool_design_c == pytest.approx(22.0)
    assert found.climate.bin_h.sum() == pytest.approx(8760.0)


def test_warming_moves_the_degree_days_of_an_hourly_file():
    tables = with_year()
    cool = result(tables, hourly_file="year.epw", warming_offset_k="0 K").climate
    warm = result(tables, hourly_file="year.epw", warming_offset_k="2 K").climate
    assert warm.hdd18_3_kd == pytest.approx(cool.hdd18_3_kd - 2.0 * 243.0, abs=130.0)
    assert warm.cool_design_c == pytest.approx(cool.cool_design_c + 2.0)


def test_rows_on_hourly_days_are_the_same_alone_and_among_others():
    tables = with_year()
    structure, sheet = prepared(case(hourly_file="year.epw"), tables, date(2027, 1, 4))
    area = np.linspace(15.0, 40.0, 130)
    many = evaluate(structure, point(sheet) | {"rooms[0].floor_area_m2": area}, tables)
    alone = evaluate(structure, point(sheet) | {"rooms[0].floor_area_m2": area[[129]]}, tables)
    assert many.need_cool_kwh[[129]] == pytest.approx(alone.need_cool_kwh, rel=1e-9, abs=1e-6)


def test_months_typed_in_give_what_the_station_gives():
    typed = result(monthly=MONTHS, station=CHICAGO.name, warming_offset_k="0 K")
    listed = result(station=CHICAGO.name, warming_offset_k="0 K")
    assert typed.climate.basis == "typed"
    assert typed.climate.estimated == ("wind",)
    assert typed.climate.hdd18_3_kd == pytest.approx(listed.climate.hdd18_3_kd)
    assert typed.need_cool_kwh.sum() == pytest.approx(listed.need_cool_kwh.sum(), rel=1e-3)


def test_means_alone_say_what_was_estimated():
    found = result(monthly={"mean_c": MONTHS["mean_c"]}, latitude_deg=42.0, longitude_deg=-87.9)
    assert len(found.climate.estimated) == 6
    assert found.climate.notes[0].startswith("Height above sea level taken from Chicago Ohare Intl AP, IL: ")
    assert found.climate.station == "42, -87.9"


def test_own_design_temperature_moves_the_load_and_nothing_of_the_year():
    usual = result(station=CHICAGO.name)
    hotter = result(station=CHICAGO.name, cool_design_c="95 degF")
    assert hotter.climate.cool_design_c == pytest.approx(35.0 + 0.4)
    assert hotter.rooms.design_cooling_sensible_w[0] > usual.rooms.design_cooling_sensible_w[0]
    assert hotter.rooms.annual_cooling_sensible_kwh == pytest.approx(usual.rooms.annual_cooling_sensible_kwh)
    assert hotter.rooms.design_heating_w == pytest.approx(usual.rooms.design_heating_w)


def test_own_cold_design_temperature_moves_heating_alone():
    place = {"station": CHICAGO.name}
    heated = {"use": {"heat": "yes"}, "rooms": [{"kind": "bedroom"}]}
    loads = []
    for cold in ({}, {"heat_design_c": "-20 degF"}):
        structure, sheet = prepared(case_from({"place": place | cold} | heated), TABLES, date(2027, 1, 4))
        loads.append(evaluate(structure, point(sheet), TABLES).rooms)
    assert loads[1].design_heating_w[0] > loads[0].design_heating_w[0]
    assert loads[1].design_cooling_sensible_w == pytest.approx(loads[0].design_cooling_sensible_w)


def test_usual_design_temperature_names_its_place_and_doubt():
    _, sheet = prepared(case(station=CHICAGO.name), TABLES, date(2027, 1, 4))
    line = sheet.entry("place.cool_design_c")
    assert (line.spread.low, line.likely, line.spread.high) == pytest.approx(
        [CHICAGO.cool_design_c + by for by in (-1.5, 0.0, 1.5)]
    )
    assert line.spread.source == "Chicago Ohare Intl AP, IL, 1976-2005; 1 to 2 K of doubt"


@pytest.mark.parametrize("place", [{"station": CHICAGO.name}, {"hourly_file": "year.epw"}])
def test_height_thins_the_air(place):
    tables = with_year()
    structure, _ = prepared(case(elevation_m="5280 ft", **place), tables, date(2027, 1, 4))
    days = climate.weather(structure, tables)
    assert days.pressure_pa == pytest.approx(float(moist_air.pressure_pa(np.array(1609.344))))
    assert climate.hot_day(structure, tables).pressure_pa == pytest.approx(days.pressure_pa)


def test_prices_are_those_of_the_place_s_state():
    def price(tables, **place):
        return prepared(case(**place), tables, date(2027, 1, 4))[1].entry("prices.electricity_usd_per_kwh")

    illinois = price(TABLES, station=CHICAGO.name)
    assert price(with_year(), hourly_file="year.epw").likely == illinois.likely
    assert price(TABLES, town="Mesa, AZ").likely != illinois.likely
    assert price(TABLES, town="Chicago, IL", state="AZ").likely == price(TABLES, town="Mesa, AZ").likely
    abroad = price(TABLES, station="Berlin, Germany").spread
    assert abroad.source.startswith("no price is known here, type yours; assumption: US EIA, US 2023")
    assert (abroad.low, abroad.high) == pytest.approx((abroad.likely / 3.0, abroad.likely * 3.0))


@pytest.mark.parametrize(
    ("place", "likely_k"),
    [
        ({"station": CHICAGO.name}, 0.4),
        ({"station": "Berlin, Germany"}, 0.3),
        ({"station": CHICAGO.name, "monthly": MONTHS}, 0.0),
        ({"hourly_file": "year.epw"}, 0.4),
    ],
)
def test_usual_warming_is_that_of_the_figures(place, likely_k):
    _, sheet = prepared(case(**place), with_year(), date(2027, 1, 4))
    assert sheet.entry("place.warming_offset_k").likely == likely_k
