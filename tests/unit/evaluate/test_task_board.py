"""The task board on the invented site: it adds up, and says who may not do what and why."""

import pytest

from econ.evaluate.task_board import task_board
from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd
from econ.installation.gate import BARS
from econ.kernel.alternative import PARTIES, SELF, Party
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()
SPLITS = (
    {},
    {"wall_hole": "contractor"},
    {"wall_hole": "contractor", "line_set": "contractor", "connect_lines": "contractor"},
    {"hang_indoor": "helper", "cable": "electrician"},
)


def board(shape=None, **changed):
    return task_board(shape or structure(), site_values(**changed), TABLES)


def of(found, task):
    return next(each for each in found.tasks if each.task == task)


def cash_usd(shape, values):
    return float(cash_first_cost_usd(installation(shape, values, TABLES, 1)[SELF].line_items)[0])


@pytest.mark.parametrize("site", [{}, {"site__wall": "stone", "site__wall_thickness_m": 0.5}, {"work__helper": "paid"}])
def test_tasks_visits_and_tools_move_as_the_cash_does(site):
    values = site_values(**site)
    rest = []
    for parties in SPLITS:
        shape = structure(parties=tuple(parties.items()))
        rest.append(cash_usd(shape, values) - task_board(shape, values, TABLES).shared_and_tasks_usd)
    assert rest == pytest.approx([rest[0]] * len(SPLITS), abs=1e-6)


def test_own_hours_add_up():
    values = site_values()
    shape = structure(parties=(("wall_hole", "contractor"),))
    found = task_board(shape, values, TABLES)
    assert sum(task.own_h for task in found.tasks) == pytest.approx(
        float(installation(shape, values, TABLES, 1)[SELF].own_hours_h[0])
    )


# Frame wall, free helper: 1 h shared by two; a share of the rescue is 0.1 x 800 x 0.3 = 24, a wrong hole 0.04 x 150 =
# 6, and both together take 0.1 x 0.3 x 3 + 0.04 x 2 = 0.17 h. Hired: the crew at 95 for half an hour, 47.50; coming,
# 85, stands with the visits.
def test_the_hole_by_hand():
    hole = of(board(), "wall_hole")
    assert (hole.party, hole.hours_h) == (Party.SELF, 1.0)
    assert hole.own_h == pytest.approx(0.67)
    assert hole.cash_usd == pytest.approx(30.0)
    hired = board(structure(parties=(("wall_hole", "contractor"),)))
    assert of(hired, "wall_hole").cash_usd == pytest.approx(47.5)
    assert hired.visits_usd - board().visits_usd == pytest.approx(85.0)


def test_a_licensed_circuit_is_locked_with_its_reason_and_says_who_was_asked():
    circuit = of(board(structure(parties=(("circuit", "self"),))), "circuit")
    assert (circuit.party, circuit.asked) == (Party.ELECTRICIAN, Party.SELF)
    assert not circuit.may[PARTIES.index(Party.SELF)]
    assert circuit.offered[PARTIES.index(Party.SELF)]
    assert circuit.bars == (BARS["licensed_electrical"][0],)


def test_all_given_to_me_leaves_what_is_locked_where_it_is():
    given = board(structure(parties=(("wall_hole", "contractor"),))).given(Party.SELF)
    assert given["wall_hole"] == "self"
    assert given["circuit"] == "electrician"


def test_all_given_to_me_is_the_same_whatever_stood_before():
    hired = board(structure(parties=tuple(board().given(Party.CONTRACTOR).items())))
    assert hired.given(Party.SELF) == board().given(Party.SELF)
    assert hired.given(Party.SELF)["cable"] == "electrician"


def test_all_hired_leaves_the_inspection_with_me():
    given = board().given(Party.CONTRACTOR)
    assert given["wall_hole"] == "contractor"
    assert given["inspection"] == "self"


def test_nobody_to_help_is_said():
    assert not board(work__helper="none").has_helper
    assert not of(board(work__helper="none"), "wall_hole").may[PARTIES.index(Party.HELPER)]
