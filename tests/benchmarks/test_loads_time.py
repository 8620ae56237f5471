"""How long rooms take: from monthly days and from an hourly year, one and a thousand of them."""

from dataclasses import fields, replace

import numpy as np
import pytest

from econ.climate.weather import Weather
from econ.loads.heat_balance import need
from econ.loads.rooms import RoomRows
from tests.benchmarks.clock import Timed, hourly_floor_s, shortest
from tests.reference.simulation.rooms import room
from tests.reference.simulation.weather import monthly

CELLS_PER_BLOCK = 256 * 84
"""Rows times days evaluated at a time, so that temporaries stay near the cache."""

MOST_RATIO = 12.0
"""Whole method over the bare sweep: straight lines of all hours, moisture and the last pass stand beside the passes."""


def chained_year():
    """Return 365 chained days, the months' own in turn with a swing from day to day."""
    days = monthly("chicago")
    per_month = len(days.weight_d) // 12
    month = np.repeat(np.arange(12), [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
    kind = (np.arange(365) * 3) % per_month
    column = month * per_month + kind
    return Weather(
        dry_bulb_c=np.ascontiguousarray(days.dry_bulb_c[:, column]),
        humidity_ratio=np.ascontiguousarray(days.humidity_ratio[:, column]),
        irradiance=np.ascontiguousarray(days.irradiance[:, column]),
        month=month,
        weight_d=np.ones(365),
        pressure_pa=days.pressure_pa,
        is_chained=True,
        origin="months in turn",
    )


def many(n_row):
    """Return rooms that differ a little in conductance."""
    one = room()
    rows = RoomRows(**{field.name: np.repeat(getattr(one, field.name), n_row, axis=0) for field in fields(RoomRows)})
    return replace(rows, ua_opaque_w_per_k=rows.ua_opaque_w_per_k * np.linspace(0.8, 1.2, n_row))


def part(rooms, rows):
    return RoomRows(**{field.name: getattr(rooms, field.name)[rows] for field in fields(RoomRows)})


def annual_kwh(rooms, weather):
    """Return annual heating of all rooms, block by block."""
    n_row, n_block = len(rooms.owner), max(1, CELLS_PER_BLOCK // len(weather.weight_d))
    total = 0.0
    for first in range(0, n_row, n_block):
        block = part(rooms, slice(first, first + n_block))
        found = need(block, weather, np.full(len(block.owner), 0.6))
        total += float((found.heat_w * weather.weight_d).sum()) / 1000.0
    return total


WAYS = {"monthly days": (lambda: monthly("chicago"), 84), "hourly year": (chained_year, 365)}


@pytest.mark.parametrize(
    ("way", "n_row", "budget_s", "repeats"),
    [
        ("monthly days", 1, 0.010, 7),
        ("hourly year", 1, 0.040, 5),
        pytest.param("monthly days", 1000, 0.5, 2, marks=pytest.mark.long),
        pytest.param("hourly year", 1000, 2.0, 2, marks=pytest.mark.long),
    ],
)
def test_rooms_take_a_few_times_the_bare_sweep(way, n_row, budget_s, repeats):
    weather, n_day = WAYS[way][0](), WAYS[way][1]
    rooms = many(n_row)
    blocks = n_row / max(1, min(n_row, CELLS_PER_BLOCK // n_day))
    floor_s = blocks * hourly_floor_s(max(1, min(n_row, CELLS_PER_BLOCK // n_day)), n_day)
    found = Timed(f"{n_row} room(s), {way}", shortest(lambda: annual_kwh(rooms, weather), repeats), floor_s, budget_s)
    found.report()
    assert found.ratio < MOST_RATIO
