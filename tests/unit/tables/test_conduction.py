"""The table of conduction is what its build script makes, and its film is the program's."""

import importlib.util

import numpy as np
import pytest

from econ.loads import buried
from econ.tables.conduction import HEAT, NODES, earth_grid
from econ.tables.place import data_root
from econ.tables.record import read_table


@pytest.fixture(scope="module")
def script():
    spec = importlib.util.spec_from_file_location("build_conduction", data_root() / "ground" / "build_conduction.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("place", [0, 777, 1749])
def test_a_row_is_what_the_script_computes(script, place):
    table = read_table("ground/conduction")
    depth, half_width, thickness, wall, floor = (float(table.numbers(name)[place]) for name in NODES)
    steady, wave = (script.strip(depth, half_width, thickness, turn).heat(wall, floor) for turn in (0.0, 2j))
    ours = [steady[0].real, steady[1].real, wave[0].real, wave[0].imag, wave[1].real, wave[1].imag]
    assert [float(table.numbers(name)[place]) for name in HEAT] == pytest.approx(ours, abs=6e-6)


def test_nodes_are_those_of_the_script(script):
    table = read_table("ground/conduction")
    nodes = script.DEPTHS, script.HALF_WIDTHS, script.THICKNESSES, script.WALLS, script.FLOORS
    assert [tuple(np.unique(table.numbers(name))) for name in NODES] == list(nodes)


def test_film_of_the_table_is_the_program_s(script):
    assert script.FILM == buried.GRID_FILM_FRAC


def test_grid_is_read_once():
    assert earth_grid() is earth_grid()
    assert np.all(np.isfinite(earth_grid().ratio))
