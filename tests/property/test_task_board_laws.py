"""Laws of the task board: whatever the split and the site, its cash moves as the first cost does, and hours add up."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.evaluate.task_board import task_board
from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd
from econ.kernel.alternative import ALTERNATIVES, PARTIES, SELF, Party
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()
TASKS = [key for key in TABLES.tasks[ALTERNATIVES[SELF]].key if not key.startswith("book_")]
SITES = st.fixed_dictionaries(
    {
        "site__wall": st.sampled_from(["wood_frame", "brick_on_frame", "block", "poured_concrete", "stone"]),
        "site__wall_thickness_m": st.sampled_from([0.1, 0.2032, 0.5]),
        "site__outdoor_place": st.sampled_from(["ground_pad", "wall_bracket", "roof"]),
        "site__permit": st.sampled_from(["needed", "not_needed"]),
        "site__owner_may_electrical": st.sampled_from(["yes", "no"]),
        "work__helper": st.sampled_from(["none", "free", "paid", "handyman"]),
        "work__contractor_finishes": st.sampled_from(["yes", "no"]),
        "work__skill_masonry": st.sampled_from(["yes", "a_little", "no"]),
        "kit__connection": st.sampled_from(["single_use_quick", "flare_with_charged_outdoor_unit"]),
        "now__units_count": st.sampled_from([0.0, 2.0]),
    }
)
SPLITS = st.dictionaries(st.sampled_from(TASKS), st.sampled_from([party.value for party in Party]), max_size=8)


def beside_usd(shape, values):
    """Return the cash first cost that hangs on no task, visit or tool, and the board."""
    found = installation(shape, values, TABLES, 1)[SELF]
    board = task_board(shape, values, TABLES)
    return float(cash_first_cost_usd(found.line_items)[0]) - board.shared_and_tasks_usd, found, board


@settings(max_examples=25, deadline=None)
@given(site=SITES, parties=SPLITS)
def test_cash_moves_as_the_first_cost_does_and_hours_add_up(site, parties):
    values = site_values(**site)
    usual, _, _ = beside_usd(structure(), values)
    moved, found, board = beside_usd(structure(parties=tuple(parties.items())), values)
    assert moved == pytest.approx(usual, abs=1e-6)
    assert sum(task.own_h for task in board.tasks) == pytest.approx(float(found.own_hours_h[0]), abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(site=SITES, parties=SPLITS)
def test_nobody_does_what_they_may_not_and_every_lock_is_told(site, parties):
    shape, values = structure(parties=tuple(parties.items())), site_values(**site)
    board = task_board(shape, values, TABLES)
    for task in board.tasks:
        assert task.may[PARTIES.index(task.party)]
        assert task.asked.value == parties.get(task.task, task.party.value)
        assert any(task.may)
