"""Laws of moving one task from the user to a contractor: only figures of the work and the money move."""

import numpy as np
import pytest

from econ.evaluate.result import AlternativeResult, Result, RoomLoads
from econ.kernel.alternative import ALTERNATIVES, SELF
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_case

TASKS = ("wall_hole", "hang_indoor")
LOADS = tuple(name for name in RoomLoads.__dataclass_fields__ if name not in {"name", "block", "is_served"})
ENERGY = tuple(
    name
    for name in AlternativeResult.__dataclass_fields__
    if (name.endswith(("_kwh", "_kwh_per_yr", "_kh")) and not name.startswith("waiting"))
    or name in {"energy_cost_usd_per_yr", "hours_above_humidity_limit_h"}
)


def moved(name: str, task: str) -> tuple[Result, Result]:
    """Return the results with a task done by the user and by a contractor."""
    case = demo_case(name)
    found = []
    for party in ("self", "contractor"):
        parties = tuple({**dict(case.work.parties or ()), task: party}.items())
        work = case.work.model_copy(update={"parties": parties})
        found.append(answer(case.model_copy(update={"work": work}), load_tables(), TODAY, 0).result)
    return found[0], found[1]


def doer(result: Result, task: str) -> int:
    """Return who really does a task of the self-installation, after the rules of the place."""
    plan = result.alternatives[SELF].schedule
    return int(plan.party[0, plan.task.index(task)])


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("task", TASKS)
def test_moving_a_task_moves_no_load_rating_or_energy(name, task):
    mine, theirs = moved(name, task)
    for field in LOADS:
        assert np.array_equal(np.asarray(getattr(mine.rooms, field)), np.asarray(getattr(theirs.rooms, field))), field
    for before, after in zip(mine.alternatives, theirs.alternatives, strict=True):
        for field in ENERGY:
            assert np.array_equal(getattr(before, field), getattr(after, field), equal_nan=True), field
        assert np.array_equal(before.capability.cool_w, after.capability.cool_w, equal_nan=True)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("task", TASKS)
def test_moving_a_task_moves_the_work_of_its_own_way_only(name, task):
    mine, theirs = moved(name, task)
    for place in range(len(ALTERNATIVES)):
        before, after = mine.alternatives[place], theirs.alternatives[place]
        if place == SELF and doer(mine, task) != doer(theirs, task):
            assert after.own_hours_h[0] < before.own_hours_h[0]
            assert after.cash_first_cost_usd[0] != before.cash_first_cost_usd[0]
        else:
            assert np.array_equal(before.line_items.amount_usd, after.line_items.amount_usd)
            assert np.array_equal(before.in_service_d, after.in_service_d, equal_nan=True)


@pytest.mark.parametrize("task", TASKS)
def test_a_task_is_the_users_to_move_except_where_a_rule_gives_it_away(task):
    free = {name for name in NAMES if len({doer(result, task) for result in moved(name, task)}) == 2}
    assert free == set(NAMES) - {"top_floor_flat"}
