"""Design loads of rooms against an hourly building simulation, and degree-days beside the hourly method.

Annual needs stand in test_hourly_simulation.
"""

import json
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest

from econ.loads.design_load import design_loads
from econ.loads.heat_balance import need
from tests.reference.simulation.rooms import CASES, DESIGN
from tests.reference.simulation.weather import hot_day, monthly, station

TRUTH = json.loads((Path(__file__).parent / "data" / "hourly_rooms.json").read_text())["cases"]
LIMIT = np.array([0.6])


@lru_cache(maxsize=32)
def annual_kwh(name):
    city, build = CASES[name]
    days = monthly(city)
    found = need(build(), days, LIMIT)
    weight = days.weight_d / 1000.0
    return {"heat": float((found.heat_w * weight).sum()), "cool": float((found.cool_w * weight).sum())}


def design(name):
    city, build = DESIGN[name]
    rooms = build()
    return rooms, design_loads(rooms, hot_day(city), np.array(station(city).heat_design_c), LIMIT)


ROOMS = [name for name in DESIGN if name.startswith("room_chicago")]


@pytest.mark.parametrize("name", ROOMS)
def test_heating_of_the_cold_design_day_is_the_simulation_s_plus_the_gains_it_counts(name):
    rooms, loads = design(name)
    # the station table's 99 % dry bulb is 0.6 K below the one the simulation took
    colder = (21.11 + 16.6) / (21.11 - station("chicago").heat_design_c)
    assert loads.heat_w[0] * colder == pytest.approx(TRUTH[name]["design_heat_w"] + rooms.gain_w[0, 0], rel=0.04)


@pytest.mark.parametrize("name", [*ROOMS, "room_tampa", "room_sf"])
def test_cooling_of_the_hot_design_day_is_near_the_simulation_s(name):
    _, loads = design(name)
    assert loads.cool_sensible_w[0] == pytest.approx(TRUTH[name]["design_cool_w"], rel=0.20)


# rooms only: earth against a basement swings months behind the air, and no degree-day sum of the air knows it
@pytest.mark.parametrize("name", ["room_chicago", "room_chicago_leaky1ach"])
def test_degree_days_at_the_balance_point_come_near_the_hourly_method(name):
    from econ.climate import degree_days
    from econ.loads.balance_point import balance_point_c, degree_day_heating_kwh
    from econ.loads.network import air_conductance_w_per_k, sun_w

    city, build = CASES[name]
    rooms, days = build(), monthly(city)
    air = air_conductance_w_per_k(rooms.air_flow_m3_per_s, np.array(days.pressure_pa))
    total = rooms.ua_opaque_w_per_k + rooms.ua_window_w_per_k + air
    sun = (sun_w(rooms.window_aperture_m2 + rooms.opaque_aperture_m2, days) * days.weight_d).sum() / 365.0 / 24.0
    balance = balance_point_c(np.array(21.11), rooms.gain_w.mean() + sun - rooms.sky_loss_w, total)
    place = station(city)
    by_hand = degree_day_heating_kwh(total, degree_days.heating_kd(place.mean_c, place.sd_k, balance).sum(axis=-1))
    assert by_hand[0] == pytest.approx(annual_kwh(name)["heat"], rel=0.30)
