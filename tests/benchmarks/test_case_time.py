"""How long a case takes: its point result, draws, the whole model, and loads with machines, with memory."""

import tracemalloc

import numpy as np
import pytest

from econ.evaluate.evaluate import evaluate
from econ.evaluate.physics import physics
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate
from econ.tables.loaders import load_tables
from econ.uncertainty.drawn import drawn_rows
from tests.benchmarks.clock import Timed, hourly_floor_s, shortest
from tests.demo import TODAY, demo_case

CASE = "garage_studio_hot"
N_DAY = 84
ROWS_PER_BLOCK = 256

MOST_SWEEPS = 16.0
"""Bare sweeps over all blocks that the whole model may take of the processors together. Where a block's sweep takes
10 ms, two processors do 16 in 2.6 s of the 3 s allowed; 12.6 were found there."""


def parts():
    """Return structure, sheet and tables of a one-room demo case."""
    structure, sheet = prepared(demo_case(CASE), load_tables(), TODAY)
    return structure, sheet, load_tables()


def test_one_case_takes_well_under_a_second():
    structure, sheet, tables = parts()
    values = point(sheet)
    spent = shortest(lambda: evaluate(structure, values, tables), 3)
    found = Timed(f"evaluate {CASE}", spent, hourly_floor_s(1, N_DAY), 0.2)
    found.report()
    assert found.ratio < 250.0


@pytest.mark.long
def test_the_whole_model_takes_a_few_sweeps_a_block():
    structure, sheet, tables = parts()
    n_draw = 8192
    floor_s = n_draw / ROWS_PER_BLOCK * hourly_floor_s(ROWS_PER_BLOCK, N_DAY)
    spent = shortest(lambda: drawn_rows(structure, sheet, tables, n_draw, 1), 2)
    found = Timed(f"whole model, {n_draw} draws x 4 ways of {CASE}", spent, floor_s, 3.0)
    found.report()
    assert found.ratio < MOST_SWEEPS


@pytest.mark.long
def test_time_grows_with_the_draws_and_memory_does_not():
    structure, sheet, tables = parts()
    few, many = 16_384, 131_072
    spent = {n_draw: shortest(lambda n=n_draw: drawn_rows(structure, sheet, tables, n, 1), 1) for n_draw in (few, many)}
    growth = spent[many].worked_s / spent[few].worked_s
    tracemalloc.start()
    drawn_rows(structure, sheet, tables, many, 1)
    peak_mb = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    took_s = spent[many].clock_s
    print(f"{many} draws in {took_s:.1f} s, {growth:.2f} times {few}; peak {peak_mb:.0f} MB, budget 300 MB")
    assert 6.5 <= growth <= 9.5
    assert peak_mb < 300.0


@pytest.mark.long
def test_ten_thousand_rows_of_loads_and_machines_stay_in_time_and_memory():
    structure, sheet, tables = parts()
    values, n_row = point(sheet), 10_000
    values["rooms[0].floor_area_m2"] = values["rooms[0].floor_area_m2"] * np.linspace(0.9, 1.1, n_row)
    weather = climate.weather(structure, tables)
    floor_s = n_row / ROWS_PER_BLOCK * hourly_floor_s(ROWS_PER_BLOCK, N_DAY)
    spent = shortest(lambda: physics(structure, values, weather, n_row), 1)
    found = Timed(f"{n_row} rows of loads with machines", spent, floor_s, 2.0)
    found.report()
    tracemalloc.start()
    physics(structure, values, weather, n_row)
    peak_mb = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    print(f"peak {peak_mb:.0f} MB, budget 150 MB")
    assert found.ratio < 15.0
    assert peak_mb < 150.0
