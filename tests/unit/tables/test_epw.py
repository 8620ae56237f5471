"""Hourly weather files: what is read, what is refused and in which words, and what a year of hours amounts to."""

import numpy as np
import pytest

from econ.climate.weather import dew_follows_frac
from econ.kernel.errors import CaseError
from econ.tables import epw
from econ.tables.epw import read_epw
from econ.tables.epw_year import file_station, hourly_weather
from tests.reference.simulation.weather import FILES, hourly, hourly_file, need_files, station

LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
LOCATION = "LOCATION,Anyplace,IL,USA,TMY3,725300,42.0,-90.0,-6.0,200.0"
DRY_BULB, DEW_POINT, GLOBAL, DIRECT, DIFFUSE, WIND = 6, 7, 13, 14, 15, 21


def row(month, day, hour, light):
    """Return a row at 10 degC plus the month, half the light direct."""
    fields = [
        "1999",
        str(month),
        str(day),
        str(hour),
        "0",
        "?",
        f"{10.0 + month}",
        "5.0",
        "70",
        "99000",
        "0",
        "0",
        "300",
    ]
    fields += [f"{light:.0f}", f"{light:.0f}", f"{0.4 * light:.0f}", "0", "0", "0", "0", "180", "4.0", "5", "5", "16.0"]
    return ",".join([*fields, "77777", "9", "999999999", "100", "0.1", "0", "88", "0.2", "0.0", "1.0"])


def rows(has_leap_day=False):
    """Return a year of rows: 500 W/m2 from 8 to 16 o'clock."""
    found = []
    for month, length in enumerate(LENGTHS, start=1):
        for day in range(1, length + 1 + (has_leap_day and month == 2)):
            found += [row(month, day, hour, 500.0 if 9 <= hour <= 16 else 0.0) for hour in range(1, 25)]
    return found


def file_of(body, location=LOCATION):
    """Return the bytes of a file."""
    head = [location, "DESIGN CONDITIONS,0", "TYPICAL/EXTREME PERIODS,0", "GROUND TEMPERATURES,0"]
    head += [
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
        "COMMENTS 1,none",
        "COMMENTS 2,none",
        "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
    ]
    return "\n".join([*head, *body, ""]).encode()


def changed(index, **fields):
    """Return the file with fields of one row changed; names are those of this module's positions, in small letters."""
    body = rows()
    parts = body[index].split(",")
    for name, text in fields.items():
        parts[globals()[name.upper()]] = text
    body[index] = ",".join(parts)
    return file_of(body)


def refusal(source):
    with pytest.raises(CaseError) as caught:
        read_epw(source, "year.epw")
    return str(caught.value)


def test_place_is_read_from_the_first_line():
    found = read_epw(file_of(rows()))
    assert (found.name, found.state, found.source) == ("Anyplace", "IL", "TMY3")
    assert (found.latitude_deg, found.longitude_deg) == (42.0, -90.0)
    assert (found.utc_offset_h, found.elevation_m) == (-6.0, 200.0)


def test_row_stamped_with_an_hour_is_the_hour_before_it():
    found = read_epw(file_of(rows()))
    assert np.flatnonzero(found.global_w_per_m2[:, 0]).tolist() == list(range(8, 16))


def test_days_keep_their_order():
    found = read_epw(file_of(rows()))
    assert found.dry_bulb_c.shape == (24, 365)
    assert found.dry_bulb_c[0, [0, 31, 364]].tolist() == [11.0, 12.0, 22.0]
    assert found.notes == ()


def test_leap_day_is_dropped_and_said():
    found = read_epw(file_of(rows(has_leap_day=True)))
    assert found.dry_bulb_c.shape == (24, 365)
    assert found.dry_bulb_c[0, 59] == 13.0
    assert found.notes == ("29 February is left out: the year has 365 days.",)


def test_path_brings_its_name(tmp_path):
    path = tmp_path / "mine.epw"
    path.write_bytes(file_of(rows()[:-1]))
    with pytest.raises(CaseError, match=r"mine\.epw"):
        read_epw(path)


def test_text_that_is_no_weather_file_is_told_what_one_is():
    assert refusal(b"hello") == (
        "year.epw, line 1 | must be an EPW file's LOCATION line | got 'hello' | Give an EPW file: 8 header lines, the "
        "first starting with LOCATION, then one row an hour."
    )


def test_empty_file_is_refused():
    assert "got an empty file" in refusal(b"")


def test_short_year_is_refused_with_its_count():
    text = refusal(file_of(rows()[:-1]))
    assert "year.epw | must have 8,760 or 8,784 rows | got 8,759" in text


def test_file_over_the_limit_is_refused_unread(tmp_path):
    path = tmp_path / "large.epw"
    path.write_bytes(b"x" * (epw.SIZE_LIMIT_BYTE + 1))
    with pytest.raises(CaseError, match=r"large.epw \| must be at most 8 MB \| got 8.0 MB"):
        read_epw(path)


def test_hours_out_of_order_are_refused_with_their_line():
    body = rows()
    body[3], body[4] = body[4], body[3]
    text = refusal(file_of(body))
    assert "year.epw, line 12 | must be month 1, day 1, hour 4 | got 1,1,5" in text
    assert "year.epw, line 13 | must be month 1, day 1, hour 5 | got 1,1,4" in text


def test_row_cut_short_is_refused_with_its_line():
    body = rows()
    body[10] = ",".join(body[10].split(",")[:12])
    assert "year.epw, line 19 | must have 22 fields | got 12" in refusal(file_of(body))


@pytest.mark.parametrize(
    ("change", "text"),
    [
        (
            {"dry_bulb": "99.9"},
            "line 109, dry bulb | must be between -70 and 70 degC | got 99.9 | That is the code for",
        ),
        (
            {"dry_bulb": "-70.1"},
            "line 109, dry bulb | must be between -70 and 70 degC | got -70.1 | Correct the figure",
        ),
        ({"dry_bulb": ""}, "line 109, dry bulb | must be between -70 and 70 degC | got nothing"),
        ({"dew_point": "99.9"}, "line 109, dew point | must be between -90 and 50 degC | got 99.9"),
        ({"global": "9999"}, "line 109, global irradiance | must be between 0 and 1500 W/m2 | got 9999"),
        ({"direct": "-1"}, "line 109, direct normal irradiance | must be between 0 and 1415 W/m2 | got -1"),
        ({"direct": "1416"}, "line 109, direct normal irradiance | must be between 0 and 1415 W/m2 | got 1416"),
        ({"diffuse": "x"}, "line 109, diffuse irradiance | must be between 0 and 1000 W/m2 | got x"),
        ({"wind": "999"}, "line 109, wind speed | must be between 0 and 60 m/s | got 999"),
        ({"dew_point": "11.6"}, "line 109, dew point less dry bulb | must be at most 0.5 K | got 0.6 K"),
        ({"diffuse": "51"}, "line 109, diffuse less global irradiance | must be at most 50 W/m2 | got 51 W/m2"),
    ],
)
def test_figure_that_is_missing_or_cannot_be_is_refused(change, text):
    assert f"year.epw, {text}" in refusal(changed(100, **change))


@pytest.mark.parametrize(
    "change", [{"dry_bulb": "70"}, {"dew_point": "11.5"}, {"direct": "1415"}, {"diffuse": "50"}, {"wind": "60"}]
)
def test_figure_at_its_bound_is_read(change):
    assert read_epw(changed(100, **change)).dry_bulb_c.shape == (24, 365)


@pytest.mark.parametrize(
    ("location", "text"),
    [
        (LOCATION.replace("42.0", "95"), "line 1, latitude | must be between -90 and 90 degree | got 95"),
        (LOCATION.replace("-90.0", ""), "line 1, longitude | must be between -180 and 180 degree | got nothing"),
        (LOCATION.replace("-6.0", "99"), "line 1, time zone | must be between -12 and 14 hours from UTC | got 99"),
        (LOCATION.replace(",200.0", ""), "line 1, elevation | must be between -500 and 6000 m | got nothing"),
    ],
)
def test_place_that_cannot_be_is_refused(location, text):
    assert text in refusal(file_of(rows(), location))


def test_many_faults_are_shown_up_to_twenty_and_counted():
    body = [line.replace(",5.0,", ",99.9,", 1) for line in rows()]
    lines = refusal(file_of(body)).splitlines()
    assert len(lines) == 21
    assert "got 8740 more" in lines[-1]


def test_weather_is_a_chain_of_365_days():
    found = hourly_weather(read_epw(file_of(rows())))
    assert found.is_chained
    assert found.weight_d.sum() == 365.0
    assert found.monthly_mean_c() == pytest.approx(10.0 + np.arange(1, 13))


def test_horizontal_light_is_diffuse_plus_what_is_left_of_the_beam_in_the_sun_s_height():
    found = hourly_weather(read_epw(file_of(rows())))
    noon = found.irradiance[11, :, 8]
    assert np.all((noon > 200.0) & (noon < 700.0))
    assert found.irradiance[0].max() == 0.0


def test_morning_sun_is_on_the_east_and_evening_sun_on_the_west():
    face_w = hourly_weather(read_epw(file_of(rows()))).irradiance[:, 172]
    assert face_w[8, 2] > 2.0 * face_w[8, 6]
    assert face_w[15, 6] > 2.0 * face_w[15, 2]


def test_clock_of_another_zone_is_refused():
    far = LOCATION.replace("-6.0", "6.0")
    with pytest.raises(CaseError, match="of the year's light while the sun is down"):
        hourly_weather(read_epw(file_of(rows(), far)))


def test_dew_point_above_the_dry_bulb_by_rounding_is_saturated_air():
    body = [line.replace(",5.0,", f",{10.3 + float(line.split(',')[1])},", 1) for line in rows()]
    found = hourly_weather(read_epw(file_of(body)))
    dry = hourly_weather(read_epw(file_of(rows())))
    assert np.all(found.humidity_ratio > dry.humidity_ratio)
    from econ.climate.moist_air import saturation_humidity_ratio

    assert found.humidity_ratio == pytest.approx(saturation_humidity_ratio(found.dry_bulb_c, found.pressure_pa))


def test_station_of_a_file_has_its_monthly_sums():
    found = file_station(read_epw(file_of(rows())))
    assert found.mean_c == pytest.approx(10.0 + np.arange(1, 13))
    assert found.global_kwh_per_m2 == pytest.approx(np.full(12, 4.0))
    assert found.diffuse_kwh_per_m2 == pytest.approx(np.full(12, 1.6))
    assert found.daily_range_k == 0.0


@pytest.mark.parametrize("city", FILES)
def test_station_of_a_real_file_is_the_table_s(city):
    need_files()
    ours, table = file_station(hourly_file(city)), station(city)
    for name, by in (
        ("mean_c", 0.0051),
        ("max_c", 0.0051),
        ("min_c", 0.0051),
        ("sd_k", 0.0051),
        ("dew_point_c", 0.0051),
    ):
        assert getattr(ours, name) == pytest.approx(getattr(table, name), abs=by), name
    assert ours.global_kwh_per_m2 == pytest.approx(table.global_kwh_per_m2, abs=0.00051)
    assert ours.diffuse_kwh_per_m2 == pytest.approx(table.diffuse_kwh_per_m2, abs=0.00051)
    for name in ("heat_design_c", "cool_design_c", "daily_range_k", "hdd18_3_kd", "cdd18_3_kd"):
        assert getattr(ours, name) == pytest.approx(getattr(table, name), abs=0.0501), name


@pytest.mark.parametrize("city", FILES)
def test_coincident_wet_bulb_of_a_real_file_is_near_the_table_s(city):
    need_files()
    assert file_station(hourly_file(city)).cool_wet_bulb_c == pytest.approx(station(city).cool_wet_bulb_c, abs=0.5)


@pytest.mark.parametrize("city", FILES)
def test_light_on_the_horizontal_of_a_real_file_is_its_global_light(city):
    need_files()
    total = hourly(city).irradiance[:, :, 8].sum()
    assert total == pytest.approx(hourly_file(city).global_w_per_m2.sum(), rel=0.005)


def test_dew_point_follows_the_day_as_the_five_files_say():
    """The straight line was fitted to these and three more years; here, how far it is from each whole year."""
    need_files()
    for city, own, bound in (
        ("chicago", 0.97, 0.1),
        ("tampa", 1.28, 0.2),
        ("sf", 0.53, 0.6),
        ("golden", 0.25, 0.2),
        ("sterling", 1.09, 0.2),
    ):
        year = hourly_file(city)
        found, expected, weight = [], [], []
        for month in range(12):
            days = hourly_weather_months() == month
            dry_c, dew_c = year.dry_bulb_c.mean(axis=0)[days], year.dew_point_c.mean(axis=0)[days]
            spread = np.cov(dry_c, dew_c)
            found.append(spread[0, 1])
            weight.append(spread[0, 0])
            expected.append(float(dew_follows_frac(dry_c.mean(), dew_c.mean())))
        assert sum(found) / sum(weight) == pytest.approx(own, abs=0.01), city
        assert np.average(expected, weights=weight) == pytest.approx(own, abs=bound), city


def hourly_weather_months():
    return np.repeat(np.arange(12), LENGTHS)
