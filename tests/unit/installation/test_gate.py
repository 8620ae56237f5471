"""Gates: who may do what, and who does it then."""

from dataclasses import replace

import numpy as np
import pytest

from econ.installation.gate import BARS, GateFacts, allowed, assigned_party, barred_by
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, SELF_PARTY
from econ.tables.tasks import task_table

SELF_TASKS = task_table("self_install")
YES, NO = np.array([True]), np.array([False])
FREE = GateFacts(YES, YES, YES, YES, YES, np.array([0.2]), YES, YES)


def may(task, party, **changed):
    return bool(allowed(SELF_TASKS, replace(FREE, **changed))[0, SELF_TASKS.position(task), party])


@pytest.mark.parametrize("task", ["wall_hole", "connect_lines", "cable", "set_on_bracket", "circuit"])
def test_nothing_is_barred_on_a_free_site(task):
    assert may(task, SELF_PARTY)


@pytest.mark.parametrize(
    ("fact", "barred", "free"),
    [
        ({"may_electrical": NO}, "cable", "wall_hole"),
        ({"lives_here": NO}, "circuit", "wall_hole"),
        ({"may_mechanical": NO}, "wall_hole", "cable"),
        ({"is_quick": NO}, "connect_lines", "line_set"),
        ({"line_reaches": NO}, "connect_lines", "wall_hole"),
        ({"line_reaches": NO}, "line_set", "set_on_pad"),
        ({"has_space": NO}, "circuit", "cable"),
    ],
)
def test_each_bar_keeps_its_tasks_from_the_user_and_no_others(fact, barred, free):
    assert not may(barred, SELF_PARTY, **fact)
    assert may(free, SELF_PARTY, **fact)


@pytest.mark.parametrize(("height_m", "is_allowed"), [(3.99, True), (4.0, True), (4.01, False)])
def test_a_bracket_above_the_limit_is_not_for_the_user(height_m, is_allowed):
    assert may("set_on_bracket", SELF_PARTY, height_m=np.array([height_m])) is is_allowed


def test_height_does_not_bar_work_indoors():
    assert may("wall_hole", SELF_PARTY, height_m=np.array([30.0]))


def test_a_helper_does_no_electrical_and_no_refrigerant_work():
    assert not may("connect_lines", HELPER_PARTY)
    assert not may("cable", HELPER_PARTY)
    assert may("wall_hole", HELPER_PARTY)


def test_there_is_no_helper_to_do_work_where_there_is_none():
    assert not may("wall_hole", HELPER_PARTY, has_helper=NO)


def test_a_barred_task_goes_to_the_electrician_before_the_contractor():
    gates = allowed(SELF_TASKS, replace(FREE, may_electrical=NO))
    wanted = np.zeros((1, len(SELF_TASKS)), dtype=np.int64)
    party = assigned_party(gates, wanted)[0]
    assert party[SELF_TASKS.position("cable")] == ELECTRICIAN_PARTY
    assert party[SELF_TASKS.position("wall_hole")] == SELF_PARTY


def test_a_flared_connection_goes_to_the_contractor():
    gates = allowed(SELF_TASKS, replace(FREE, is_quick=NO))
    party = assigned_party(gates, np.zeros((1, len(SELF_TASKS)), dtype=np.int64))[0]
    assert party[SELF_TASKS.position("connect_lines")] == CONTRACTOR_PARTY


def test_an_allowed_wish_is_kept():
    wanted = np.full((1, len(SELF_TASKS)), CONTRACTOR_PARTY)
    party = assigned_party(allowed(SELF_TASKS, FREE), wanted)[0]
    assert party[SELF_TASKS.position("wall_hole")] == CONTRACTOR_PARTY


def test_a_task_that_nobody_may_do_goes_to_the_contractor():
    assert assigned_party(np.zeros((1, 1, 4), dtype=bool), np.zeros((1, 1), dtype=np.int64))[0, 0] == CONTRACTOR_PARTY


def test_every_bar_has_words():
    assert set(barred_by(SELF_TASKS, FREE)) == set(BARS)
    assert all(text.endswith(".") for text, _ in BARS.values())


@pytest.mark.parametrize("alternative", ["window_units", "self_install", "contracted_install"])
def test_every_task_can_always_be_done_by_somebody_it_is_listed_for(alternative):
    table = task_table(alternative)
    worst = GateFacts(NO, NO, NO, NO, NO, np.array([30.0]), NO, NO)
    someone = allowed(table, worst)[0].any(axis=1)
    licensed = np.array([bool(entry) for entry in table.licence])
    assert someone[licensed].all()
