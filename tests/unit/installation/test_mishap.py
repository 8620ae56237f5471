"""What can go wrong in the work: whose hands it hangs on, and the table of kinds."""

import numpy as np
import pytest

from econ.evaluate.wiring.installation import installation
from econ.installation.mishap import BY_USER, exposed_tasks, task_share_frac, total_chance_frac
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()
KINDS = {mishap.key: mishap for mishap in TABLES.mishaps}


def routes(shape=None, **changed):
    return installation(shape or structure(), site_values(**changed), TABLES, 1)


def chances(way):
    """Return the chance of each kind on one way."""
    return {doubt.mishap.key: float(doubt.chance_frac[0]) for doubt in way.doubts}


def test_each_kind_hangs_on_tasks_that_are_listed_somewhere():
    listed = {task for way in ALTERNATIVES for task in TABLES.tasks[way].key}
    assert {task for mishap in TABLES.mishaps for task, _ in mishap.tasks} <= listed
    for mishap in TABLES.mishaps:
        assert any(exposed_tasks(mishap, TABLES.tasks[way]) for way in ALTERNATIVES), mishap.key


@pytest.mark.parametrize("key", KINDS)
def test_parts_of_a_kind_never_add_up_to_more_than_the_whole(key):
    for way in ALTERNATIVES:
        table = TABLES.tasks[way]
        shares = dict(zip(table.key, task_share_frac(KINDS[key], table), strict=True))
        shares.pop("set_on_bracket", None)  # a unit stands on a pad or on a bracket
        assert sum(shares.values()) <= 1.0 + 1e-12


def test_a_chance_never_passes_one():
    chance = total_chance_frac(np.array([0.5, 0.9]), np.array([[1.0, 0.4], [1.0, 0.4]]))
    assert chance.tolist() == [0.7, 1.0]


def test_own_work_and_hiring_each_carry_their_own_kinds():
    own, hired = (chances(routes()[way]) for way in (SELF, HIRED))
    own_kinds = {mishap.key for mishap in TABLES.mishaps if mishap.by == BY_USER}
    assert {key for key, chance in own.items() if chance > 0.0} == own_kinds
    assert {key for key, chance in hired.items() if chance > 0.0} == set(KINDS) - own_kinds
    assert not any(chances(routes()[way]) for way in (KEEP, WINDOW))


def test_a_contractor_who_connects_the_kit_brings_his_own_doubts_and_takes_mine():
    shape = structure(parties=(("connect_lines", "contractor"), ("leak_check", "contractor")))
    found = chances(routes(shape)[SELF])
    assert (found["lost_charge"], found["remade_flare"], found["call_back"]) == (0.0, 0.04, 0.1)
    assert found["rescue"] == pytest.approx(0.1 * (0.3 + 0.15))


def test_each_kind_says_who_does_what_then():
    for mishap in TABLES.mishaps:
        assert mishap.plan_b_party in {"self", "contractor", "electrician"}
        assert len(mishap.plan_b) > 20
        assert "assumption" in mishap.source
