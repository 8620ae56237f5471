"""Work days: dates by hand."""

import numpy as np
import pytest

from econ.installation.calendar import WorkWeek, work_finish_d, work_start_d, work_week, worked_h
from econ.kernel.errors import OutOfRangeError

WEEKEND = np.array([[False] * 5 + [True] * 2])
EVERY_DAY = np.ones((1, 7), dtype=bool)


def week(weekday=0, days=WEEKEND, hours_h=8.0):
    return work_week(np.array([weekday]), days, np.array([hours_h]))


@pytest.mark.parametrize(
    ("weekday", "ready_d", "start_d"),
    [(0, 0.0, 5.0), (0, 5.25, 5.25), (0, 7.0, 12.0), (0, 6.999, 6.999), (5, 0.0, 0.0), (6, 1.0, 6.0), (4, 0.0, 1.0)],
)
def test_weekend_work_starts_on_the_next_saturday_or_sunday(weekday, ready_d, start_d):
    assert work_start_d(np.array([ready_d]), week(weekday))[0] == pytest.approx(start_d, abs=1e-9)


# From Monday, Saturday is day 5: 8 h fill it, 12 h end at noon of Sunday, 20 h at noon of the Saturday after.
@pytest.mark.parametrize(("hours_h", "finish_d"), [(4.0, 5.5), (8.0, 6.0), (12.0, 6.5), (16.0, 7.0), (20.0, 12.5)])
def test_work_ends_on_the_day_that_its_hours_fill(hours_h, finish_d):
    assert work_finish_d(np.array([5.0]), np.array([hours_h]), week())[0] == pytest.approx(finish_d, abs=1e-9)


def test_no_work_ends_where_it_starts():
    assert work_finish_d(np.array([2.3]), np.array([0.0]), week())[0] == 2.3


def test_worked_hours_count_parts_of_work_days_only():
    found = (
        worked_h(np.array([5.5]), week())[0],
        worked_h(np.array([5.0]), week())[0],
        worked_h(np.array([14.0]), week())[0],
    )
    assert found == (4.0, 0.0, 32.0)


def test_every_day_of_work_is_a_plain_division():
    assert work_finish_d(np.array([0.0]), np.array([30.0]), week(days=EVERY_DAY))[0] == pytest.approx(3.75)


def test_evening_work_skips_the_weekend():
    weekdays = np.array([[True] * 5 + [False] * 2])
    finish = work_finish_d(np.array([0.0]), np.array([7.0]), week(weekday=3, days=weekdays, hours_h=2.0))
    assert finish[0] == pytest.approx(5.5)


def test_a_week_without_work_days_is_refused():
    with pytest.raises(OutOfRangeError, match="work days in a week"):
        WorkWeek(np.zeros(1, dtype=int), np.array([8.0]))


@pytest.mark.parametrize("hours_h", [0.0, -1.0])
def test_a_day_without_hours_is_refused(hours_h):
    with pytest.raises(OutOfRangeError, match="hours of a work day"):
        week(hours_h=hours_h)
