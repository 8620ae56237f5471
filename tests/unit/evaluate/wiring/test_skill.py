"""What the user has done before sets the range of their own hours, and opens no lock."""

import numpy as np
import pytest

from econ.evaluate.wiring.installation import installation
from econ.kernel.alternative import PARTIES, SELF
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()
BLOCK = {"site__wall": "block", "site__wall_thickness_m": 0.2032}


def made(shape=None, **changed):
    return installation(shape or structure(), site_values(**{**BLOCK, **changed}), TABLES, 1)[SELF]


def hours(found, task):
    return float(found.tasks.hours_h[0, found.tasks.table.position(task)])


# Block, 8 in: 2 h for somebody handy; 0.8 and 1.3 of it are 1.6 and 2.6 h.
@pytest.mark.parametrize(("said", "hole_h"), [("yes", 1.6), ("a_little", 2.0), ("no", 2.6)])
def test_hours_of_the_hole_follow_what_was_drilled_before(said, hole_h):
    found = made(work__skill_masonry=said)
    assert hours(found, "wall_hole") == pytest.approx(hole_h)
    assert hours(found, "line_set") == hours(made(), "line_set")


def test_a_frame_wall_asks_for_no_masonry():
    frame = {"site__wall": "wood_frame", "site__wall_thickness_m": 0.15}
    assert hours(made(work__skill_masonry="no", **frame), "wall_hole") == hours(made(**frame), "wall_hole")


@pytest.mark.parametrize(("skill", "task"), [("torque", "connect_lines"), ("bracket", "set_on_bracket")])
def test_couplings_and_bracket_follow_their_own_question(skill, task):
    place = {"site__outdoor_place": "wall_bracket", f"work__skill_{skill}": "no"}
    before, after = made(site__outdoor_place="wall_bracket"), made(**place)
    assert hours(after, task) == pytest.approx(1.3 * hours(before, task))
    assert hours(after, "wall_hole") == hours(before, "wall_hole")


def test_a_trade_takes_as_long_whatever_the_user_has_done():
    hired = structure(parties=(("wall_hole", "contractor"), ("hang_indoor", "helper")))
    before, after = made(hired), made(hired, work__skill_masonry="no")
    np.testing.assert_array_equal(before.tasks.hours_h, after.tasks.hours_h)


@pytest.mark.parametrize("skill", ["masonry", "bracket", "torque"])
def test_no_skill_opens_or_shuts_a_lock(skill):
    shut = {"kit__connection": "flare_with_charged_outdoor_unit", "site__outdoor_place": "wall_bracket"}
    unskilled, skilled = (made(**shut, **{f"work__skill_{skill}": said}) for said in ("no", "yes"))
    np.testing.assert_array_equal(unskilled.is_allowed, skilled.is_allowed)
    assert not skilled.is_allowed[0, skilled.tasks.table.position("connect_lines"), PARTIES.index("self")]
    assert (unskilled.standing, unskilled.task_locks) == (skilled.standing, skilled.task_locks)
