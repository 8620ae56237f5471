"""Sunshine on nine faces: sums as the table says, shape as the sky has it."""

import dataclasses

import numpy as np
import pytest

from econ.climate.station import Station
from econ.kernel.errors import OutOfRangeError, TableError
from econ.tables.loaders import load_tables
from econ.tables.sun import MEAN_DAY, clear_day_irradiance, irradiance_by_month

N, E, S, W, HORIZONTAL = 0, 2, 4, 6, 8
PLACES = ("Chicago Ohare Intl AP, IL", "Tampa International AP, FL")


def station(name: str = PLACES[0]) -> Station:
    return load_tables().stations.station(name)


def polar() -> Station:
    """Return the northernmost station, whose sun stays down in December."""
    stations = load_tables().stations
    return stations.station(stations.names[int(np.argmax(stations.latitude_deg))])


@pytest.mark.parametrize("place", [station(), station(PLACES[1]), polar()], ids=lambda place: place.name)
def test_horizontal_daily_sums_equal_the_table(place: Station) -> None:
    irradiance = irradiance_by_month(place)
    assert irradiance.shape == (24, 12, 9)
    sums_kwh = irradiance[:, :, HORIZONTAL].sum(axis=0) / 1000.0
    np.testing.assert_allclose(sums_kwh, place.global_kwh_per_m2, rtol=0.0, atol=1e-6)


@pytest.mark.parametrize("place", [station(), polar()], ids=lambda place: place.name)
def test_irradiance_is_finite_and_below_the_solar_constant(place: Station) -> None:
    irradiance = irradiance_by_month(place)
    assert np.all(np.isfinite(irradiance))
    assert irradiance.min() >= 0.0
    assert irradiance.max() < 1361.0


def test_a_month_whose_sun_stays_down_keeps_its_twilight() -> None:
    place = dataclasses.replace(polar(), global_kwh_per_m2=np.full(12, 0.1), diffuse_kwh_per_m2=np.full(12, 0.05))
    december = irradiance_by_month(place)[:, 11, :]
    assert december[:, HORIZONTAL].sum() == pytest.approx(100.0, abs=1e-6)
    assert december[:, S].sum() == pytest.approx(december[:, N].sum())


def test_morning_sun_is_east_and_evening_sun_is_west() -> None:
    june = irradiance_by_month(station())[:, 5, :]
    assert june[8, E] > 2.0 * june[8, W]
    assert june[17, W] > 2.0 * june[17, E]


def test_the_south_face_leads_in_winter_and_the_horizontal_in_summer() -> None:
    sums = irradiance_by_month(station()).sum(axis=0)
    assert sums[11, S] > sums[11, HORIZONTAL] > sums[11, N]
    assert sums[6, HORIZONTAL] > sums[6, S]


def test_noon_stands_where_the_clock_of_the_place_has_it() -> None:
    irradiance = irradiance_by_month(station())[:, 2, HORIZONTAL]
    centre_h = np.sum((np.arange(24) + 0.5) * irradiance) / irradiance.sum()
    # 87.9 degrees west, clock of 90 degrees west: 8 min early; equation of time in mid-March: 9 min late
    assert centre_h == pytest.approx(12.0 - 8.4 / 60.0 + 9.0 / 60.0, abs=0.05)


def test_faces_agree_with_a_transposition_hour_by_hour_from_the_library() -> None:
    """The library's own total on a south wall, from hourly means of beam and diffuse at mid-hour sun positions."""
    import pandas as pd
    from pvlib import irradiance, solarposition

    place, month = station(), 5
    ours = irradiance_by_month(place)[:, month, :]
    start = pd.Timestamp(2023, month + 1, MEAN_DAY[month], tz="UTC") - pd.Timedelta(hours=place.utc_offset_h)
    times = start + pd.to_timedelta(np.arange(24) + 0.5, unit="h")
    sun = solarposition.get_solarposition(times, place.latitude_deg, place.longitude_deg)
    ghi = ours[:, HORIZONTAL]
    dhi = ghi * place.diffuse_kwh_per_m2[month] / place.global_kwh_per_m2[month]
    height = np.maximum(np.cos(np.radians(sun["apparent_zenith"].to_numpy())), 0.05)
    total = irradiance.get_total_irradiance(
        90.0, 180.0, sun["apparent_zenith"].to_numpy(), sun["azimuth"].to_numpy(), (ghi - dhi) / height, ghi, dhi,
        dni_extra=1325.0, albedo=0.2, model="haydavies",
    )  # fmt: skip
    assert ours[:, S].sum() == pytest.approx(np.nansum(total["poa_global"]), rel=0.03)


def test_east_and_west_of_an_average_day_are_alike() -> None:
    sums = irradiance_by_month(station()).sum(axis=0)
    np.testing.assert_allclose(sums[:, E], sums[:, W], rtol=0.02)


def test_a_clear_day_is_brighter_than_the_average_one() -> None:
    clear = clear_day_irradiance(station(), 6)
    assert clear.shape == (24, 9)
    assert clear[:, HORIZONTAL].sum() > irradiance_by_month(station())[:, 6, HORIZONTAL].sum()
    assert 850.0 < clear[:, HORIZONTAL].max() < 1050.0


def test_results_are_shared_and_read_only() -> None:
    first = irradiance_by_month(station())
    assert irradiance_by_month(station()) is first
    with pytest.raises(ValueError, match="read-only"):
        first[0, 0, 0] = 1.0


def test_more_diffuse_than_global_is_refused() -> None:
    place = dataclasses.replace(station(), diffuse_kwh_per_m2=np.full(12, 9.0))
    with pytest.raises(TableError, match="diffuse irradiation exceeds global in month"):
        irradiance_by_month(place)


@pytest.mark.parametrize("month", [-1, 12])
def test_a_month_off_the_calendar_is_refused(month: int) -> None:
    with pytest.raises(OutOfRangeError, match="must be between 0 and 11"):
        clear_day_irradiance(station(), month)
