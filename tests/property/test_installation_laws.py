"""Laws of calendar, schedule and first cost."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from econ.evaluate.wiring.installation import installation
from econ.installation.calendar import work_finish_d, work_start_d, work_week, worked_h
from econ.installation.drilling import core_bites
from econ.installation.first_cost import cash_first_cost_usd
from econ.installation.schedule import schedule
from econ.installation.tools import ToolPrice, tool_choice
from econ.kernel.alternative import SELF
from econ.tables.tasks import installation_tables
from tests.unit.installation.nets import every_day, rows, table
from tests.unit.installation.site_values import site_values, structure

WEEKS = st.tuples(
    st.integers(0, 6),
    st.lists(st.booleans(), min_size=7, max_size=7).filter(any),
    st.floats(0.5, 12.0),
).map(lambda made: work_week(np.array([made[0]]), np.array([made[1]]), np.array([made[2]])))
DATES = st.floats(0.0, 400.0)
HOURS = st.floats(0.01, 100.0)


STEPS = 16
"""Parts of a day in the walk below; a power of two, so that dates are exact."""


def walked_finish_d(start_d, n_step, week):
    """Walk the calendar part by part until so many parts of work days are worked."""
    at = round(start_d * STEPS)
    while n_step > 0:
        n_step -= int(week.is_work[0, at // STEPS % 7])
        at += 1
    return at / STEPS


@given(WEEKS, DATES)
def test_work_never_starts_early_and_starts_on_a_work_day(week, ready_d):
    start = work_start_d(np.array([ready_d]), week)[0]
    assert start >= ready_d
    assert week.is_work[0, int(start + 1e-7) % 7]


@given(WEEKS, DATES, HOURS)
def test_hours_worked_between_start_and_finish_are_the_hours_of_the_task(week, ready_d, hours_h):
    start = work_start_d(np.array([ready_d]), week)
    finish = work_finish_d(start, np.array([hours_h]), week)
    assert np.isclose(worked_h(finish, week)[0] - worked_h(start, week)[0], hours_h, atol=1e-6)


@given(WEEKS, st.integers(0, 40 * STEPS), st.integers(1, 20 * STEPS))
def test_finish_agrees_with_walking_the_calendar(week, ready, n_step):
    start = work_start_d(np.array([ready / STEPS]), week)
    finish = work_finish_d(start, n_step / STEPS * week.hours_per_day_h, week)[0]
    assert np.isclose(finish, walked_finish_d(start[0], n_step, week))


@st.composite
def nets(draw):
    n_task = draw(st.integers(1, 8))
    after = [draw(st.lists(st.integers(0, at - 1), max_size=3, unique=True)) if at else [] for at in range(n_task)]
    party = draw(st.lists(st.integers(0, 3), min_size=n_task, max_size=n_task))
    hours = draw(st.lists(st.integers(0, 20), min_size=n_task, max_size=n_task))
    waits = draw(st.lists(st.integers(0, 20), min_size=n_task, max_size=n_task))
    return after, party, hours, waits


def longest_path_d(after, hours, waits):
    """Longest chain of waits and work, by recursion over the net: nobody is ever busy elsewhere."""
    done = []
    for at, before in enumerate(after):
        done.append(max((done[each] for each in before), default=0.0) + waits[at] + hours[at] / 8.0)
    return done[-1]


@given(nets())
def test_with_a_party_for_each_task_service_is_the_longest_path(net):
    after, _, hours, waits = net
    after, hours, waits = after[:4], hours[:4], waits[:4]
    found = schedule(rows(table(after), hours, waits, party=list(range(len(after)))), every_day())
    assert np.isclose(found.in_service_d[0], longest_path_d(after, hours, waits))


@given(nets())
def test_nobody_does_two_tasks_at_once_and_nothing_starts_before_what_it_needs(net):
    after, party, hours, waits = net
    found = schedule(rows(table(after), hours, waits, party=party), every_day())
    for at, before in enumerate(after):
        for each in before:
            assert found.start_d[0, at] >= found.finish_d[0, each] + waits[at] - 1e-9
        for other in range(at):
            if party[other] == party[at] and hours[other] and hours[at]:
                assert found.start_d[0, at] >= found.finish_d[0, other] - 1e-9


@given(nets(), st.integers(1, 30))
def test_a_longer_wait_never_brings_service_forward(net, more):
    after, party, hours, waits = net
    sooner = schedule(rows(table(after), hours, waits, party=party), every_day()).in_service_d[0]
    later_waits = [wait + more for wait in waits]
    later = schedule(rows(table(after), hours, later_waits, party=party), every_day()).in_service_d[0]
    assert later >= sooner - 1e-9


@given(nets())
def test_lengthening_a_deciding_wait_puts_service_off(net):
    after, party, hours, waits = net
    found = schedule(rows(table(after), hours, waits, party=party), every_day())
    decisive = int(np.argmax(found.is_critical[0]))
    longer = [wait + 40.0 * (at == decisive) for at, wait in enumerate(waits)]
    later = schedule(rows(table(after), hours, longer, party=party), every_day()).in_service_d[0]
    assert later > found.in_service_d[0]


@given(st.floats(10, 900), st.floats(5, 200), st.floats(0, 1), st.floats(0.1, 20))
def test_the_chosen_way_to_a_tool_is_never_dearer_than_either(buy_usd, rent_usd, resale_frac, days):
    given_price = ToolPrice(*(np.array([value]) for value in (buy_usd, rent_usd, resale_frac, 1.0, 0.07)))
    found = tool_choice(given_price, np.array([days])).cost_usd[0]
    assert found <= rent_usd * max(np.ceil(days), 1.0) * 1.07 + 1e-6
    assert found <= buy_usd * (1.07 - resale_frac) + 1e-6


@given(st.floats(0.01, 1.0), st.floats(0.03, 0.3))
def test_bites_get_through_and_one_fewer_does_not(wall_m, bite_m):
    bites = float(core_bites(np.array(wall_m), np.array(bite_m)))
    assert bites * bite_m >= wall_m - 1e-9
    assert (bites - 1.0) * bite_m < wall_m


@given(st.lists(st.floats(500, 5000), min_size=2, max_size=5), st.floats(0.0, 0.1))
def test_cash_rises_by_the_price_of_the_kit_and_its_tax(prices, tax_frac):
    values = site_values(kit__price_usd=np.array(prices), money__sales_tax_frac=tax_frac)
    cash = cash_first_cost_usd(installation(structure(), values, installation_tables(), len(prices))[SELF].line_items)
    assert np.allclose(np.diff(cash), np.diff(prices) * (1.0 + tax_frac), atol=1e-6)
