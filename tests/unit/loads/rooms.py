"""Invented rooms and weather for tests of loads."""

from dataclasses import fields, replace

import numpy as np

from econ.climate.weather import Weather
from econ.loads.rooms import RoomRows

PRESSURE_PA = 101_325.0


def rows(n_row=1, **changes):
    """Return a plain room n_row times; changes give fields of one row."""
    on, off = np.ones((1, 24), bool), np.zeros((1, 24), bool)
    one = {
        "floor_area_m2": np.array([20.0]),
        "volume_m3": np.array([48.0]),
        "ua_opaque_w_per_k": np.array([15.0]),
        "ua_window_w_per_k": np.array([6.0]),
        "ua_ground_w_per_k": np.array([0.0]),
        "ground_c": np.full((1, 12), 10.0),
        "air_flow_m3_per_s": np.array([0.006]),
        "mass_j_per_k": np.array([20.0 * 110e3]),
        "mass_area_m2": np.array([50.0]),
        "window_aperture_m2": np.zeros((1, 9)),
        "window_sun_frac": np.ones((1, 12)),
        "opaque_aperture_m2": np.zeros((1, 9)),
        "sky_loss_w": np.array([0.0]),
        "gain_w": np.zeros((1, 24)),
        "moisture_gain_kg_per_s": np.zeros((1, 24)),
        "heat_setpoint_c": np.full((1, 24), 20.0),
        "cool_setpoint_c": np.full((1, 24), 24.0),
        "is_heated": on,
        "is_cooled": on,
        "is_dried": off,
        "cool_day_above_c": np.array([-99.0]),
        "warming_k": np.array([0.0]),
        "owner": np.array([0]),
    }
    given = {name: np.asarray(value) for name, value in changes.items()}
    return RoomRows(**{name: np.repeat(value, n_row, axis=0) for name, value in (one | given).items()})


def random_rows(n_row, seed):
    """Return unlike rooms, drawn from a seed."""
    rng = np.random.default_rng(seed)
    area = rng.uniform(12.0, 60.0, n_row)
    evening = (np.arange(24) >= 17) | (np.arange(24) < 7)
    plain = rows(n_row)
    return replace(
        plain,
        floor_area_m2=area,
        volume_m3=2.4 * area,
        ua_opaque_w_per_k=area * rng.uniform(0.3, 2.0, n_row),
        ua_window_w_per_k=rng.uniform(2.0, 20.0, n_row),
        ua_ground_w_per_k=rng.uniform(0.0, 30.0, n_row),
        ground_c=rng.uniform(2.0, 22.0, (n_row, 12)),
        air_flow_m3_per_s=rng.uniform(0.002, 0.03, n_row),
        mass_j_per_k=area * rng.uniform(60e3, 300e3, n_row),
        mass_area_m2=2.5 * area,
        window_aperture_m2=rng.uniform(0.0, 1.0, (n_row, 9)),
        window_sun_frac=np.ones((n_row, 12)),
        opaque_aperture_m2=rng.uniform(0.0, 0.4, (n_row, 9)),
        sky_loss_w=rng.uniform(0.0, 80.0, n_row),
        gain_w=rng.uniform(30.0, 400.0, (n_row, 24)),
        moisture_gain_kg_per_s=rng.uniform(0.0, 3e-5, (n_row, 24)),
        is_heated=np.tile(evening, (n_row, 1)) ^ (rng.uniform(size=(n_row, 1)) < 0.5),
        is_cooled=np.tile(evening, (n_row, 1)) ^ (rng.uniform(size=(n_row, 1)) < 0.5),
        cool_day_above_c=np.where(rng.uniform(size=n_row) < 0.3, 20.0, -99.0),
        warming_k=rng.uniform(0.0, 2.0, n_row),
        owner=np.arange(n_row),
    )


def picked(rooms, which):
    """Return some of the rows."""
    return RoomRows(**{field.name: getattr(rooms, field.name)[which] for field in fields(RoomRows)})


def days(mean_c, swing_k=0.0, sun_w_per_m2=0.0, humidity_ratio=0.006, is_chained=False):
    """Return weather days with these means, a sine over the day and a half sine of sun on all faces."""
    mean_c = np.atleast_1d(np.asarray(mean_c, dtype=np.float64))
    hour = np.arange(24) + 0.5
    course = np.maximum(np.sin((hour - 6.0) / 12.0 * np.pi), 0.0)
    n_day = len(mean_c)
    return Weather(
        dry_bulb_c=mean_c - swing_k * np.cos((hour - 3.0) / 12.0 * np.pi)[:, None],
        humidity_ratio=np.full((24, n_day), humidity_ratio),
        irradiance=np.tile((sun_w_per_m2 * course)[:, None, None], (1, n_day, 9)),
        month=np.arange(n_day) * 12 // max(n_day, 12),
        weight_d=np.full(n_day, 365.0 / n_day),
        pressure_pa=PRESSURE_PA,
        is_chained=is_chained,
        origin="invented",
    )


LIMIT = np.array([0.6])
