"""Rooms that cannot be are refused by name, and the others are worked out: the least and greatest of every cell."""

import itertools

import numpy as np
import pytest

from econ.kernel.errors import CaseError
from econ.portfolio.plan import evaluated
from econ.tables.loaders import load_tables
from tests.unit.portfolio.building import TODAY, case

TABLES = load_tables()
HEAD = "unit,room,floor,size,type,exposure,windows,wall,cooling now,age,heat source"
ENDS = (
    ("-3", "60"),
    ("10.8", "10763"),
    ("Top large",),
    ("none", "NESW", ""),
    ("none", "200 m2", "large", ""),
    ("stone", "?"),
    ("?", "10 portable"),
    ("60",),
    ("?", "wood"),
)


def test_the_ends_of_every_cell_are_worked_out_or_refused():
    rows = [f"{at},A,{','.join(cells)}" for at, cells in enumerate(itertools.product(*ENDS))]
    found = evaluated("\n".join([HEAD, *rows]), case(), TABLES, TODAY)
    assert found.table.n_row == len(rows)
    assert found.table.n_room > len(rows) // 2
    for name in ("cash_usd", "lcc_usd", "too_hot_h", "own_hours_h", "current_a", "cool_kwh"):
        assert np.isfinite(getattr(found.found, name)).all(), name
    for row in found.table.refused:
        assert row.faults[0].path.startswith(f"line {row.line}, ")
        assert row.faults[0].remedy


def test_more_glass_than_wall_is_refused_with_both_areas():
    text = f"{HEAD}\n1,A,1,100,Top large,S,300,,,,\n2,B,1,100,Top large,S,20,,,,\n"
    found = evaluated(text, case(), TABLES, TODAY)
    assert found.table.text["room"] == ("B",)
    told = str(found.table.refused[0].faults[0])
    assert told.startswith("line 2, windows | must leave room in the wall: 300 sq ft of glass on the south side of ")
    assert "got '300'" in told


def test_a_file_of_rooms_that_cannot_be_says_so():
    with pytest.raises(CaseError, match="must leave room in the wall"):
        evaluated(f"{HEAD}\n1,A,1,100,Top large,S,300,,,,\n", case(), TABLES, TODAY)
