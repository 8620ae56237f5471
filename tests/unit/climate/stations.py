"""An invented station for tests."""

from dataclasses import replace

import numpy as np

from econ.climate.ground import MID_MONTH_D
from econ.climate.station import Station

SEASON = -np.cos(2.0 * np.pi * (MID_MONTH_D - 20.0) / 365.0)
MEAN_C = 11.0 + 13.0 * SEASON

PLAIN = Station(
    name="Plain",
    state="XX",
    latitude_deg=40.0,
    longitude_deg=-90.0,
    elevation_m=300.0,
    utc_offset_h=-6.0,
    heat_design_c=-15.0,
    cool_design_c=32.0,
    cool_wet_bulb_c=23.0,
    daily_range_k=11.0,
    mean_c=MEAN_C,
    max_c=MEAN_C + 6.0,
    min_c=MEAN_C - 5.0,
    sd_k=np.full(12, 4.0),
    dew_point_c=MEAN_C - 6.0,
    global_kwh_per_m2=4.0 + 2.0 * SEASON,
    diffuse_kwh_per_m2=1.8 + 0.8 * SEASON,
    wind_m_per_s=np.full(12, 4.0),
    hdd18_3_kd=3300.0,
    cdd18_3_kd=500.0,
    period="invented",
    source_id="test",
)


def station(**changes):
    """Return the invented station with some of its figures changed."""
    return replace(PLAIN, **changes)


def sun(height_w_per_m2=500.0):
    """Return invented irradiance, shape (24, 12, 9): half a sine from 6 to 18 on every face."""
    hour = np.arange(24) + 0.5
    course = np.maximum(np.sin((hour - 6.0) / 12.0 * np.pi), 0.0) * height_w_per_m2
    return np.broadcast_to(course[:, None, None], (24, 12, 9)).copy()
