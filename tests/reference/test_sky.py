"""Sun and sky against pvlib, whose formulas these are: same positions, same light, to rounding."""

import numpy as np
import pandas as pd
import pytest
from pvlib import atmosphere, clearsky, irradiance, solarposition

from econ.climate import sky
from econ.climate.station import Station
from econ.tables import sun
from econ.tables.loaders import load_tables

PLACES = ("Chicago Ohare Intl AP, IL", "Tampa International AP, FL", "Yuma Intl Arpt, AZ")
ROUNDING = 1e-11


def stations() -> list[Station]:
    """Return three places and the northernmost one, whose sun stays down in December."""
    table = load_tables().stations
    return [table.station(name) for name in (*PLACES, table.names[int(np.argmax(table.latitude_deg))])]


def library_sun(station: Station, month: int) -> tuple[pd.DataFrame, np.ndarray]:
    """Return the library's own positions and beam outside the air at the middle of ten-minute steps."""
    start = pd.Timestamp(2023, month + 1, sun.MEAN_DAY[month], tz="UTC") - pd.Timedelta(hours=station.utc_offset_h)
    times = start + pd.to_timedelta((np.arange(144) + 0.5) / 6.0, unit="h")
    place = (station.latitude_deg, station.longitude_deg, station.elevation_m)
    return solarposition.get_solarposition(times, *place), irradiance.get_extra_radiation(times.day_of_year.to_numpy())


@pytest.mark.parametrize("station", stations(), ids=lambda station: station.name)
@pytest.mark.parametrize("month", [0, 5, 11])
def test_the_sun_stands_where_the_library_has_it(station: Station, month: int) -> None:
    theirs, outside = library_sun(station, month)
    ours = sun._sun(sun._place(station), month)
    # Their clock rounds to the nanosecond: the sun turns 4e-12 degrees in one.
    assert ours.zenith_deg == pytest.approx(theirs["apparent_zenith"].to_numpy(), abs=1e-7)
    assert np.cos(np.radians(ours.azimuth_deg - theirs["azimuth"].to_numpy())) == pytest.approx(1.0, abs=ROUNDING)
    assert ours.outside_w_per_m2 == pytest.approx(outside, rel=ROUNDING)


@pytest.mark.parametrize("water_cm", [0.1, 1.0, 4.0, 8.0])
@pytest.mark.parametrize("elevation_m", [0.0, 1800.0])
def test_a_clear_sky_is_the_library_s(water_cm: float, elevation_m: float) -> None:
    zenith_deg = np.linspace(0.0, 89.9, 40)
    pressure_pa = atmosphere.alt2pres(elevation_m)
    theirs = clearsky.simplified_solis(90.0 - zenith_deg, sun.AEROSOL, water_cm, pressure_pa)
    beam, diffuse = sky.clear_sky_w_per_m2(zenith_deg, sky.pressure_at_pa(elevation_m), water_cm, sun.AEROSOL)
    assert beam == pytest.approx(theirs["dni"], rel=1e-9, abs=1e-9)
    assert diffuse == pytest.approx(theirs["dhi"], rel=1e-9, abs=1e-9)


def test_no_light_comes_while_the_sun_is_down() -> None:
    light = sky.clear_sky_w_per_m2(np.array([90.0, 120.0, 180.0]), 101325.0, 1.0, sun.AEROSOL)
    assert np.array_equal(np.stack(light), np.zeros((2, 3)))


@pytest.mark.parametrize(("dry_c", "dew_c"), [(35.0, 24.0), (22.0, 22.0), (-15.0, -20.0), (45.0, -40.0)])
def test_water_above_is_the_library_s(dry_c: float, dew_c: float) -> None:
    humidity = np.clip(atmosphere.rh_from_tdew(dry_c, dew_c), 1.0, 100.0)
    assert sky.precipitable_water_cm(dry_c, dew_c) == pytest.approx(atmosphere.gueymard94_pw(dry_c, humidity))


@pytest.mark.parametrize("azimuth_deg", sun.FACE_AZIMUTH_DEG)
def test_a_wall_receives_what_the_library_gives_it(azimuth_deg: float) -> None:
    rng = np.random.default_rng(1)
    at = sky.Sun(rng.uniform(0.0, 100.0, 500), rng.uniform(0.0, 360.0, 500), np.full(500, 1360.0))
    beam = np.where(at.zenith_deg < 90.0, rng.uniform(0.0, 900.0, 500), 0.0)
    diffuse = rng.uniform(0.0, 300.0, 500)
    theirs = irradiance.get_total_irradiance(
        surface_tilt=90.0,
        surface_azimuth=azimuth_deg,
        solar_zenith=at.zenith_deg,
        solar_azimuth=at.azimuth_deg,
        dni=beam,
        ghi=beam * np.cos(np.radians(at.zenith_deg)) + diffuse,
        dhi=diffuse,
        dni_extra=at.outside_w_per_m2,
        albedo=sun.ALBEDO,
        model="haydavies",
    )
    ours = sky.wall_light_w_per_m2(at, beam, diffuse, azimuth_deg, sun.ALBEDO)
    assert ours == pytest.approx(theirs["poa_global"], rel=1e-9)
