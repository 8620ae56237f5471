"""Tasks and tools as read from their tables."""

import shutil

import numpy as np
import pytest

from econ.case.choices import CHOICES
from econ.evaluate.wiring.installation_site import Inputs, quantities
from econ.evaluate.wiring.window_unit import all_facts, wall_quantities
from econ.installation.task import Work, crew_elapsed_h, task_rows
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.errors import ShapeError, TableError, UnknownChoiceError
from econ.tables.place import data_root
from econ.tables.record import read_table
from econ.tables.seal import sealed_record
from econ.tables.tasks import installation_tables, task_table, tools
from tests.unit.installation.site_values import site_values, structure

TABLES = [task_table(alternative) for alternative in ALTERNATIVES]
COSTS = set(read_table("installation/costs").texts("key"))
FIGURES = COSTS | set(read_table("defaults/assumptions").texts("path"))
AT = all_facts(structure(), Inputs(site_values(), 1))
FACTS = set(AT)
QUANTITIES = set(quantities(Inputs(site_values(), 1))) | set(wall_quantities(AT))


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.alternative)
def test_every_name_in_the_task_table_is_known(table):
    assert set(table.condition) <= FACTS | {"electrician_used", "contractor_used"}
    assert set(table.per) <= QUANTITIES
    for materials in table.materials:
        assert {material.key for material in materials} <= COSTS
        assert {material.quantity for material in materials} <= QUANTITIES
    for source in {source for row in table.hours for source in row}:
        assert set(source.key) - {""} <= FIGURES
        assert not source.choice or set(source.option) == set(CHOICES[source.choice]) - {"not_known"}


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.alternative)
def test_whoever_may_do_a_task_has_hours_for_it_unless_it_is_a_wait(table):
    for position, sources in enumerate(table.hours):
        has_work = any(source.key != ("",) for source in sources)
        for party, source in enumerate(sources):
            if table.may[position, party] and has_work:
                assert source.key != ("",), (table.key[position], party)


def test_tool_names_are_known():
    keys = {(tool.buy, tool.rent, tool.resale, tool.life) for tool in tools()}
    assert {key for each in keys for key in each} - {""} <= COSTS
    assert {fact for tool in tools() for fact in tool.conditions} <= FACTS
    assert {task for tool in tools() for task in tool.tasks} <= set(task_table("self_install").key)
    assert all(len(tool.conditions) == len(tool.tasks) for tool in tools())
    assert all(tool.buy or tool.rent for tool in tools())


def test_mishap_shares_of_any_site_add_up_to_one():
    table = task_table("self_install")
    by_key = dict(zip(table.key, table.mishap_share_frac, strict=True))
    placed = [by_key[key] for key in ("set_on_pad", "set_on_bracket")]
    assert placed[0] == placed[1]
    assert sum(by_key.values()) - placed[0] == pytest.approx(1.0)


def test_keep_as_is_has_no_tasks():
    assert len(task_table("keep_as_is")) == 0
    assert task_table("keep_as_is").may.shape == (0, 4)


def test_an_unknown_task_is_refused():
    with pytest.raises(UnknownChoiceError, match="paint_the_house"):
        task_table("self_install").position("paint_the_house")


def test_words_of_every_cost_key_are_there():
    assert set(installation_tables().label) == COSTS


def test_a_crew_without_idle_time_shares_the_hours():
    assert crew_elapsed_h(np.array([[3.0, 5.0], [1.0, 1.0]]), np.array([2.0, 1.0])).tolist() == [4.0, 2.0]


def test_parties_that_do_not_fit_the_tasks_are_refused():
    table = task_table("self_install")
    n_task = len(table)
    hours, none = np.zeros((1, n_task, 4)), np.zeros((1, n_task))
    work = Work(np.ones((1, n_task), dtype=bool), hours, none, np.array([True]))
    party = np.zeros((2, n_task), dtype=np.int64)
    with pytest.raises(ShapeError, match="do not fit"):
        task_rows(table, work, party, party)


@pytest.fixture
def damaged(tmp_path):
    """Return a function that writes a task table with one text replaced and gives back its folder."""

    def write(old, new):
        folder = tmp_path / "installation"
        shutil.copytree(data_root() / "installation", folder)
        text = (folder / "tasks.csv").read_text("utf-8")
        assert old in text
        (folder / "tasks.csv").write_text(text.replace(old, new, 1), encoding="utf-8")
        record = (folder / "tasks.toml").read_text("utf-8")
        (folder / "tasks.toml").write_text(sealed_record(record, (folder / "tasks.csv").read_bytes()), encoding="utf-8")
        return tmp_path

    return write


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("survey;consent", "survey;wall_hole", "must stand above it"),
        ("permit_needed,self,self,", "permit_needed,nobody,self,", "'nobody' is not a party"),
        ("self_install,consent,", "self_install,survey,", "listed twice"),
    ],
)
def test_a_damaged_task_table_is_refused(damaged, old, new, words):
    with pytest.raises(TableError, match=words):
        task_table("self_install", damaged(old, new))
