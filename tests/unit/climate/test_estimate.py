"""What is estimated of a place known by its months, against the stations that know it."""

from dataclasses import replace

import numpy as np
import pytest

from econ.climate import degree_days, estimate
from econ.climate.monthly import Months, Site, station_of_months
from econ.kernel.errors import OutOfRangeError
from econ.tables.loaders import load_tables

TABLE = load_tables().stations
STATIONS = [TABLE.station(name) for name in TABLE.names if TABLE.station(name).basis == "record"]
CHICAGO = TABLE.station("Chicago Ohare Intl AP, IL")


def ranges(station):
    return station.max_c - station.min_c


# Duffie and Beckman (2013), example 1.10.1: 43 degrees north, 15 April: 33.8 MJ/m2
def test_light_at_the_top_of_the_air_is_the_textbook_s():
    assert estimate.extraterrestrial_kwh_per_m2(43.0)[3] * 3.6 == pytest.approx(33.8, abs=0.05)


def test_light_at_the_top_of_the_air_is_none_in_polar_night_and_mirrored_in_the_south():
    assert estimate.extraterrestrial_kwh_per_m2(80.0)[[0, 11]].tolist() == [0.0, 0.0]
    north, south = (estimate.extraterrestrial_kwh_per_m2(at) for at in (40.0, -40.0))
    assert south == pytest.approx(np.roll(north, 6), rel=0.08)


def test_point_off_the_globe_is_refused():
    with pytest.raises(OutOfRangeError, match="latitude is 91 degree; it must be between -90 and 90"):
        estimate.extraterrestrial_kwh_per_m2(91.0)


# Duffie and Beckman (2013), eq. 2.12.1 by hand: clearness 0.5, sunset after 81.4 degrees: share 0.429
def test_diffuse_share_by_hand():
    light = 0.5 * estimate.extraterrestrial_kwh_per_m2(30.0)
    assert (estimate.diffuse_kwh_per_m2(30.0, light) / light)[6] == pytest.approx(0.4292, abs=1e-4)


def test_diffuse_is_all_there_is_in_polar_night():
    assert estimate.diffuse_kwh_per_m2(80.0, np.full(12, 0.02))[0] == 0.02


def test_sun_is_as_far_off_as_is_said():
    shares = [
        estimate.global_kwh_per_m2(each.latitude_deg, ranges(each)) / each.global_kwh_per_m2
        for each in STATIONS
        if abs(each.latitude_deg) < 60.0
    ]
    assert np.mean(shares) == pytest.approx(1.03, abs=0.02)
    assert np.std(shares) == pytest.approx(0.15, abs=0.02)


def test_diffuse_share_is_as_far_off_as_is_said():
    errors = [
        (estimate.diffuse_kwh_per_m2(each.latitude_deg, each.global_kwh_per_m2) - each.diffuse_kwh_per_m2)
        / each.global_kwh_per_m2
        for each in STATIONS
        if abs(each.latitude_deg) < 60.0
    ]
    assert np.mean(errors) == pytest.approx(-0.025, abs=0.01)
    assert np.std(errors) == pytest.approx(0.054, abs=0.01)


def test_dew_point_is_as_far_off_as_is_said():
    errors = np.array([estimate.dew_point_c(each.min_c) - each.dew_point_c for each in STATIONS])
    assert errors.mean() == pytest.approx(1.4, abs=0.1)
    assert errors.std() == pytest.approx(3.0, abs=0.1)


@pytest.mark.parametrize(
    ("knows_spread", "bias_k", "spread_k"), [(True, (0.2, -0.1), (1.0, 0.7)), (False, (-0.4, 1.0), (2.4, 1.9))]
)
def test_design_dry_bulbs_are_as_far_off_as_is_said(knows_spread, bias_k, spread_k):
    errors = np.array([design_errors_k(each, knows_spread) for each in STATIONS])
    assert errors.mean(axis=0) == pytest.approx(bias_k, abs=0.1)
    assert errors.std(axis=0) == pytest.approx(spread_k, abs=0.1)


def design_errors_k(station, knows_spread):
    if knows_spread:
        found = estimate.design_dry_bulb_c(station.mean_c, station.sd_k, ranges(station))
    else:
        sd_k = degree_days.known_sd_k(station.mean_c, np.full(12, np.nan))
        found = estimate.design_dry_bulb_c(station.mean_c, sd_k, np.full(12, estimate.USUAL_RANGE_K))
    return found[0] - station.heat_design_c, found[1] - station.cool_design_c


def site(**changes):
    plain = Site("Here", "IL", CHICAGO.latitude_deg, CHICAGO.longitude_deg, CHICAGO.elevation_m)
    return replace(plain, **changes)


def test_station_of_means_alone_names_all_that_it_estimates():
    found = station_of_months(site(), Months(CHICAGO.mean_c), "means", "some years")
    assert len(found.estimated) == 6
    assert found.basis == "means"
    assert found.utc_offset_h == -6.0
    assert np.all(found.max_c - found.min_c == pytest.approx(estimate.USUAL_RANGE_K))


def test_station_of_full_months_keeps_them_and_estimates_wind_alone():
    names = ("mean_c", "max_c", "min_c", "sd_k", "dew_point_c", "global_kwh_per_m2", "diffuse_kwh_per_m2")
    found = station_of_months(site(), Months(**{n: getattr(CHICAGO, n) for n in names}), "typed", "typed in")
    assert found.estimated == ("wind",)
    for name in names:
        assert getattr(found, name).tolist() == getattr(CHICAGO, name).tolist()
    assert found.hdd18_3_kd == pytest.approx(CHICAGO.hdd18_3_kd, rel=0.02)
    assert found.heat_design_c == pytest.approx(CHICAGO.heat_design_c, abs=2.0)
    assert found.cool_wet_bulb_c == pytest.approx(CHICAGO.cool_wet_bulb_c, abs=2.0)
