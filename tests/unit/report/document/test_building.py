"""The landlord's report of many rooms: the sentences of the page, its tables, on paper and as a web page."""

from datetime import date

import numpy as np
import pytest

from econ.portfolio.frontier import frontier, more, ranking
from econ.portfolio.plan import planned
from econ.report import rooms as told_rooms
from econ.report.document.block import Grid, Sentence
from econ.report.document.content import building
from econ.report.document.content.building import building_document
from econ.report.document.file import Kind, written
from tests.unit.portfolio.test_plan import TABLES, demo, rooms
from tests.unit.report.document.printed import Pdf

DAY = date(2027, 2, 1)


@pytest.fixture(scope="module")
def told():
    """Return the demo building's plan for 4,000 dollars, told."""
    return told_rooms.Told(planned(rooms(), demo(), 4000.0), demo(), TABLES)


@pytest.fixture(scope="module")
def other(told):
    """Return what other budgets give."""
    parts = told.options, told.plan.limits, told.plan.picks
    return frontier(*parts), more(*parts), ranking(*parts)


def test_the_printed_report_holds_every_room_and_the_sentences_of_the_page(told, other):
    printed = Pdf(written(building_document(told, demo(), DAY, other), Kind.PDF))
    text = " ".join(printed.text.split())
    assert "Which rooms first" in text
    assert "11 of 24 rooms this year" in text
    assert "What another budget would give" in text
    assert "ranked by payback" in text
    assert "24 rows read" in text
    assert "seed" not in printed.footer(0)
    assert all(name in text for name in ("West bedroom", "Small room", "North bedroom"))


def test_the_web_page_holds_the_same(told, other):
    text = written(building_document(told, demo(), DAY, other), Kind.HTML).decode()
    assert "A further $1,000 this year is worth $206 more" in text
    assert "Year by year" in text


def test_rooms_done_first_stand_in_front_and_others_are_counted(told, monkeypatch):
    monkeypatch.setattr(building, "MOST_ROOMS", 5)
    content = building_document(told, demo(), DAY, None)
    grid = [block for block in content.blocks if isinstance(block, Grid)][-1]
    assert len(grid.rows) == 5
    assert {row[grid.titles.index("Year")] for row in grid.rows} == {"2027"}
    assert "19 more rooms" in " ".join(block.text for block in content.blocks if isinstance(block, Sentence))
    assert np.isclose(sum(grid.shares), 1.0)
