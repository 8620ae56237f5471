"""Dates by hand: waits in calendar days, work on work days, one person one task at a time."""

from dataclasses import replace

import numpy as np
import pytest

from econ.installation.calendar import work_week
from econ.installation.schedule import schedule
from tests.unit.installation.nets import every_day, rows, table


def test_waits_and_work_add_up_along_a_chain():
    found = schedule(rows(table([[], [0], [1]]), [8.0, 0.0, 4.0], [0.0, 7.0, 0.0]), every_day())
    assert found.finish_d[0].tolist() == [1.0, 8.0, 8.5]
    assert found.in_service_d[0] == 8.5


def test_a_wait_begins_when_all_before_is_done():
    found = schedule(rows(table([[], [], [0, 1]]), [8.0, 8.0, 0.0], [0.0, 0.0, 5.0], party=[0, 2, 3]), every_day())
    assert found.wait_start_d[0, 2] == 1.0
    assert found.start_d[0, 2] == 6.0


def test_one_person_does_one_task_at_a_time():
    found = schedule(rows(table([[], [], [0, 1]]), [8.0, 8.0, 8.0], [0.0] * 3), every_day())
    assert found.finish_d[0].tolist() == [1.0, 2.0, 3.0]


def test_two_parties_work_side_by_side():
    found = schedule(rows(table([[], [], [0, 1]]), [8.0, 8.0, 8.0], [0.0] * 3, party=[0, 2, 0]), every_day())
    assert found.finish_d[0].tolist() == [1.0, 1.0, 2.0]


def test_own_work_waits_for_the_weekend_and_waits_do_not():
    weekend = work_week(np.array([0]), np.array([[False] * 5 + [True] * 2]), np.array([8.0]))
    # Monday: 3 h on Saturday (day 5), then 7 calendar days from 5.375 to 12.375, a Saturday, then 4 h more.
    found = schedule(rows(table([[], [0]]), [3.0, 4.0], [0.0, 7.0]), (weekend,) * 4)
    assert found.start_d[0].tolist() == [5.0, 12.375]
    assert found.in_service_d[0] == 12.875


def test_a_task_that_is_not_needed_holds_nothing_up_and_has_no_dates():
    net = rows(table([[], [0], [1]]), [8.0, 80.0, 8.0], [0.0, 30.0, 0.0], is_active=[True, False, True])
    found = schedule(net, every_day())
    assert np.isnan(found.start_d[0, 1])
    assert found.in_service_d[0] == 2.0


def test_the_deciding_chain_leaves_out_what_has_slack():
    found = schedule(rows(table([[], [], [0, 1]]), [8.0, 2.0, 8.0], [0.0] * 3, party=[0, 2, 0]), every_day())
    assert found.is_critical[0].tolist() == [True, False, True]


def test_the_deciding_chain_follows_the_person_who_was_busy():
    # The last task is ready at once, but its person is busy with the first until day 1.
    found = schedule(rows(table([[], [], []]), [8.0, 2.0, 8.0], [0.0] * 3, party=[0, 2, 0]), every_day())
    assert found.is_critical[0].tolist() == [True, False, True]


def test_no_gate_gives_no_service():
    found = schedule(rows(table([[], [0]], gates=[False, False]), [8.0, 8.0], [0.0, 0.0]), every_day())
    assert np.isnan(found.in_service_d[0])
    assert not found.is_critical.any()


def test_a_gate_that_is_not_needed_gives_no_service():
    found = schedule(rows(table([[], [0]]), [8.0, 8.0], [0.0, 0.0], is_active=[True, False]), every_day())
    assert np.isnan(found.in_service_d[0])


def test_service_needs_the_last_gate():
    net = rows(table([[], []], gates=[True, True]), [8.0, 24.0], [0.0, 0.0], party=[0, 2])
    assert schedule(net, every_day()).in_service_d[0] == 3.0


@pytest.mark.parametrize("row", [0, 1, 2])
def test_a_row_has_the_same_dates_alone_and_among_others(row):
    elapsed, wait = (
        [[8.0, 4.0, 1.0], [2.0, 9.0, 3.0], [0.0, 5.0, 0.0]],
        [[0.0, 3.0, 1.0], [5.0, 0.0, 0.0], [1.0, 1.0, 1.0]],
    )
    party = [[0, 2, 0], [0, 0, 0], [3, 2, 0]]
    net = table([[], [0], [0, 1]])
    together = schedule(rows(net, elapsed, wait, party), every_day(3))
    alone = schedule(rows(net, elapsed[row], wait[row], party[row]), every_day(1))
    assert together.finish_d[row].tolist() == alone.finish_d[0].tolist()
    assert together.in_service_d[row] == alone.in_service_d[0]


def test_a_helper_who_lends_a_hand_is_busy_for_as_long():
    net = rows(table([[], [], []]), [8.0, 8.0, 8.0], [0.0] * 3, party=[0, 1, 2])
    assert schedule(net, every_day()).finish_d[0].tolist() == [1.0, 1.0, 1.0]
    together = replace(net, helper_h=np.array([[8.0, 8.0, 0.0]]))
    found = schedule(together, every_day())
    assert found.finish_d[0].tolist() == [1.0, 2.0, 1.0]


def owners_case(electrician_wait_d):
    """Return the dates of a small job decided on Thursday 20 May 2027, day 0; the hand-worked case of the tests below.

    Who works when: the owner on Saturdays and Sundays, 6 h; the electrician Monday to Friday, 8 h.
    survey (owner, 1.5 h); then the kit on its way for 7 days and the electrician booked, side by side; receive (owner,
    1 h, after the kit); circuit (electrician, 4 h, after the booking); connect (owner, 3 h, after both).
    """
    thursday = np.array([3])
    owner = work_week(thursday, np.array([[False] * 5 + [True] * 2]), np.array([6.0]))
    trade = work_week(thursday, np.array([[True] * 5 + [False] * 2]), np.array([8.0]))
    net = table([[], [0], [0], [2], [1, 3]])
    waits = [0.0, 7.0, electrician_wait_d, 0.0, 0.0]
    return schedule(rows(net, [1.5, 1.0, 0.0, 4.0, 3.0], waits, party=[0, 0, 2, 2, 0]), (owner, owner, trade, trade))


def test_own_work_and_a_trade_s_work_fall_on_their_days_as_on_a_paper_calendar():
    # Survey Saturday 22 May (day 2), done at 2 + 1.5/6 = 2.25. Kit 7 days on: 9.25, a Saturday; received at 9.25 + 1/6.
    # Electrician booked 21 days on: 23.25, Saturday 12 June; comes Monday 14 June, day 25, done at 25.5.
    # Connected the next Saturday, 19 June, day 30: 30 + 3/6 = 30.5.
    found = owners_case(21.0)
    assert found.start_d[0] == pytest.approx([2.0, 9.25, 23.25, 25.0, 30.0])
    assert found.finish_d[0] == pytest.approx([2.25, 9.25 + 1.0 / 6.0, 23.25, 25.5, 30.5])
    assert found.is_critical[0].tolist() == [True, False, True, True, True]


def test_a_shorter_wait_saves_whole_weekends_or_nothing():
    # 18 days: 20.25, Wednesday 9 June, at once: done at 20.75, connected on Saturday 12 June, day 23.
    # 14 days: 16.25, Saturday 5 June, so Monday 7 June, day 18: done at 18.5, connected on the same Saturday.
    # 11 days: 13.25, Wednesday 2 June, done at 13.75, connected on Saturday 5 June, day 16.
    assert [owners_case(wait).in_service_d[0] for wait in (18.0, 14.0, 11.0)] == pytest.approx([23.5, 23.5, 16.5])


def test_a_wait_is_told_apart_from_the_days_its_people_do_not_work():
    found = owners_case(21.0)
    assert found.wait_d[0].tolist() == [0.0, 7.0, 21.0, 0.0, 0.0]
    assert found.start_d[0, 3] - found.wait_start_d[0, 3] == pytest.approx(25.0 - 23.25)
