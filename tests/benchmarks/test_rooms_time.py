"""How long a file of rooms takes from its text to a plan: growth, groups, memory, against the barest hourly sweep."""

import time
import tracemalloc
from functools import lru_cache

import pytest

from econ.portfolio.plan import evaluated, planned
from econ.tables.loaders import load_tables
from tests.benchmarks.clock import hourly_floor_s
from tests.unit.portfolio.building import TODAY, case, file_of

N_DAY = 84
ROWS_PER_BLOCK = 256
BUDGETS = {"budget_usd": 2_000_000.0, "hot_hour_usd": 0.1}


@lru_cache(maxsize=4)
def timed(n_room):
    """Return processor time, the clock's, and groups of rows for a file of so many rooms, from text to plan."""
    text, began, worked = file_of(n_room), time.perf_counter(), time.process_time()
    found = evaluated(text, case(**BUDGETS), load_tables(), TODAY)
    plan = planned(found, case(**BUDGETS))
    took = time.process_time() - worked, time.perf_counter() - began
    assert found.table.n_row == n_room
    assert plan.picks.is_done.any()
    return *took, found.groups


def floor_s(n_room):
    """Return the processor time of the barest sweep hour by hour over as many rooms, in the same blocks."""
    return n_room / ROWS_PER_BLOCK * hourly_floor_s(ROWS_PER_BLOCK, N_DAY)


def told(n_room, worked_s, clock_s, groups):
    """Print the figures."""
    ratio = worked_s / floor_s(n_room)
    print(
        f"{n_room:,} rooms x 4 ways from text to plan: worked {worked_s:.1f} s, clock {clock_s:.1f} s, "
        f"{ratio:.1f} floors, {groups} structure groups"
    )
    return ratio


def test_ten_thousand_rooms_fall_into_few_groups_and_take_under_half_a_minute():
    ratio = told(10_000, *timed(10_000))
    assert timed(10_000)[0] < 30.0
    assert timed(10_000)[2] < 200
    assert ratio < 60.0


@pytest.mark.long
def test_a_room_among_ten_thousand_gives_what_it_gives_alone():
    lines = file_of(10_000).splitlines()
    several = evaluated("\n".join(lines), case(**BUDGETS), load_tables(), TODAY).found
    for row in (0, 4_321, 9_999):
        alone = evaluated(f"{lines[0]}\n{lines[1 + row]}", case(**BUDGETS), load_tables(), TODAY).found
        for name in ("cash_usd", "lcc_usd", "too_hot_h", "own_hours_h", "cool_kwh"):
            assert getattr(alone, name)[0] == pytest.approx(getattr(several, name)[row], rel=1e-12, abs=1e-9), name


@pytest.mark.long
def test_ten_thousand_rooms_stay_under_2_gb():
    tracemalloc.start()
    evaluated(file_of(10_000), case(**BUDGETS), load_tables(), TODAY)
    peak_gb = tracemalloc.get_traced_memory()[1] / 1e9
    tracemalloc.stop()
    print(f"peak {peak_gb:.2f} GB, budget 2 GB")
    assert peak_gb < 2.0


@pytest.mark.long
def test_time_grows_with_the_rooms_and_a_hundred_thousand_take_under_four_minutes():
    told(100_000, *timed(100_000))
    growth = timed(100_000)[0] / timed(10_000)[0]
    print(f"a hundred thousand take {growth:.1f} times ten thousand")
    assert timed(100_000)[0] < 240.0
    assert growth < 13.0
