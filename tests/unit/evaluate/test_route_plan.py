"""The plan of a demo case's ways: its stops, its order, and what signatures open."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest

from econ.case.edit import with_line, with_sign_off_back, with_value
from econ.evaluate.route_plan import Ground, figures_of, route_plan
from econ.evaluate.sheet import point
from econ.evaluate.task_board import task_board
from econ.installation.plan import Lapse
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.caution import Caution, Severity, Topic
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, demo_answer

TODAY = date(2027, 6, 1)
SELF = Alternative.SELF_INSTALL
NAME = "lower_level_cold"


def ground(name=NAME, **changed):
    found = demo_answer(name)
    result = replace(found.result, **changed)
    return Ground(found.structure, point(found.sheet), result, installation_tables())


def plan(case=None, name=NAME, route=SELF, **changed):
    return route_plan(ground(name, **changed), case or demo_answer(name).case, route, TODAY)


def signed(case, stop, **changed):
    line = {"code": stop.code, "kind": "signed", "who": "A. Name", "role": stop.asked[0][0], "date": "2027-05-30"}
    return with_line(case, "signed", line | {"route": SELF.value, "figures": stop.figures} | changed)


def found(code, *alternatives):
    return Caution(
        code, Topic.WORK, Severity.HOLD_POINT, "Found.", "Do.", "contractor", "source", alternatives=alternatives
    )


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("route", ALTERNATIVES)
def test_every_way_has_a_plan_in_an_order_of_work(name, route):
    made = plan(name=name, route=route)
    order = [step.task for step in made.steps]
    assert bool(order) == (route is not Alternative.KEEP_AS_IS)
    assert all(order.index(before) < order.index(step.task) for step in made.steps for before in step.after)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("route", ALTERNATIVES)
def test_every_finding_of_a_way_stands_in_its_plan_once(name, route):
    made = plan(name=name, route=route)
    told = [stop.code for stop in made.stops if not stop.code.startswith("step.")]
    told += [each.code for step in made.steps for each in step.findings] + [each.code for each in made.general]
    raised = [each.code for each in ground(name).result.cautions if not each.alternatives or route in each.alternatives]
    assert sorted(told) == sorted(raised)


def test_steps_carry_the_hours_and_cash_of_the_task_board():
    base, steps = ground(), plan().steps
    board = {task.task: task for task in task_board(base.structure, base.values, base.tables).tasks}
    for step in steps:
        if step.task in board:
            assert (step.hours_h, step.cost_usd) == (board[step.task].hours_h, board[step.task].cash_usd)
            assert step.party == board[step.task].party
        else:
            assert step.is_wait
    assert any(step.tools for step in steps)
    assert any(step.materials for step in steps)


def test_steps_of_a_quoted_way_have_no_price_of_their_own():
    steps = plan(route=Alternative.CONTRACTED_INSTALL).steps
    assert all(np.isnan(step.cost_usd) for step in steps)
    assert sum(step.cost_usd for step in plan(name="garage_studio_hot", route=Alternative.CONTRACTED_INSTALL).steps) > 0


def test_a_stop_stands_before_the_first_step_it_names():
    made = plan()
    assert made.held_at.task == "hang_indoor"
    assert {stop.code for stop in made.held_at.stops} == {"drilling.behind_the_wall", "permit.needed"}


def test_a_signature_opens_its_stop_and_no_other():
    made = plan()
    case = demo_answer(NAME).case
    for stop in made.held_at.stops:
        case = signed(case, stop)
    after = plan(case)
    assert after.held_at.task == "wall_hole"
    assert len(after.open_stops) == len(made.open_stops) - 2
    assert len(after.stops) == len(made.stops)


def test_a_signature_taken_back_closes_the_stop_again():
    stop = plan().held_at.stops[0]
    case = with_sign_off_back(signed(demo_answer(NAME).case, stop), 0, "2027-05-31")
    assert plan(case).held_at.stops[0].is_open


@pytest.mark.parametrize(
    ("changed", "lapse"),
    [
        ({}, Lapse.NONE),
        ({"date": "2027-06-01"}, Lapse.NONE),
        ({"date": "2027-06-02"}, Lapse.LATER),
        ({"figures": "bracket_pull_n 1"}, Lapse.FIGURES),
        ({"role": "landlord"}, Lapse.ROLE),
    ],
)
def test_a_signature_counts_from_its_day_for_its_figures_and_in_its_role(changed, lapse):
    stop = plan().held_at.stops[0]
    read = plan(signed(demo_answer(NAME).case, stop, **changed)).held_at
    again = next(each for each in read.stops if each.code == stop.code)
    assert again.signatures[0].lapse is lapse
    assert again.is_open == (lapse is not Lapse.NONE)


def test_a_signature_for_another_way_does_not_count():
    stop = plan().held_at.stops[0]
    case = signed(demo_answer(NAME).case, stop, route="contracted_install")
    assert not plan(case).held_at.stops[0].signatures


def test_power_may_be_proved_dead_by_whoever_does_the_step():
    stop = next(each for each in plan().stops if each.code == "electrical.prove_dead")
    assert stop.asked == (("electrician",),)
    cautions = (found("electrical.prove_dead"),)
    step = plan(cautions=cautions, route=Alternative.WINDOW_UNITS).held_at
    assert step.stops[0].asked == (("contractor", "owner"),)


def test_a_stop_of_a_code_that_no_row_places_holds_back_everything():
    made = plan(cautions=(found("unheard.of"),))
    assert made.held_at is made.steps[0]
    assert made.next_step is None


def test_a_stop_on_measures_stands_aside():
    made = plan(cautions=(found("measures.old_attic"),))
    assert [stop.code for stop in made.aside] == ["measures.old_attic"]
    assert made.next_step is made.steps[0]


def test_an_outlet_waits_for_power_off():
    case = with_value(demo_answer(NAME).case, "window.outlet", "none")
    found = answer(case, load_tables(), TODAY, 0)
    base = Ground(found.structure, point(found.sheet), found.result, installation_tables())
    made = route_plan(base, case, Alternative.WINDOW_UNITS, TODAY)
    own = next(stop for stop in made.step("outlet").stops if stop.code == "step.outlet")
    assert own.message == "Power off at the panel and proved dead by a tested meter."
    assert own.asked == (("electrician",),)
    line = {"code": own.code, "kind": "signed", "who": "E. Name", "role": "electrician", "date": "2027-05-30"}
    early = with_line(case, "signed", line)
    assert any(
        stop.code == "step.outlet" for stop in route_plan(base, early, Alternative.WINDOW_UNITS, TODAY).open_stops
    )
    for task in made.step("outlet").after:
        done = {"route": "window_units", "task": task, "state": "done", "date": "2027-05-29"}
        early = with_line(early, "steps", done)
    again = route_plan(base, early, Alternative.WINDOW_UNITS, TODAY)
    assert not any(stop.code == "step.outlet" for stop in again.open_stops)


def test_figures_of_a_finding_are_told_in_four_digits():
    caution = replace(found("a.b"), evidence=(("bracket_pull_n", 1234.56, "N"), ("built_yr", 1960.0, "year")))
    assert figures_of(caution) == "bracket_pull_n 1235; built_yr 1960"


def test_what_was_said_last_of_a_step_holds():
    case = demo_answer(NAME).case
    for state in ("done", "open", "skipped"):
        line = {"route": SELF.value, "task": "survey", "state": state, "date": "2027-05-01", "reason": "seen before"}
        case = with_line(case, "steps", line)
    step = plan(case).steps[0]
    assert (step.state, step.reason, step.said_on) == ("skipped", "seen before", "2027-05-01")
    assert len(case.steps) == 3


def leak_check(**days):
    """Return the stop before the leak check, signed on 30 May, with all steps before it done on 20 May but for some."""
    case, made = demo_answer(NAME).case, plan()
    step = next(each for each in made.steps if any(stop.code == "refrigerant.leak_check" for stop in each.stops))
    for task in step.after:
        day = days.get(task, "2027-05-20")
        if day:
            line = {"route": SELF.value, "task": task, "state": "done", "date": day}
            case = with_line(case, "steps", line)
    stop = next(each for each in step.stops if each.code == "refrigerant.leak_check")
    again = plan(signed(case, stop))
    return next(each for each in again.stops if each.code == stop.code), again


def test_a_leak_check_is_signed_once_the_joints_are_made():
    stop, made = leak_check()
    assert not stop.is_open
    assert made.may_be_signed(stop, made.step("leak_check"))


@pytest.mark.parametrize("day", ["", "2027-05-31"])
def test_a_leak_check_signed_before_the_joints_were_made_has_to_be_signed_again(day):
    stop, made = leak_check(connect_lines=day)
    assert stop.signatures[0].lapse is Lapse.EARLY
    assert stop.is_open
    assert made.may_be_signed(stop, made.step("leak_check")) == bool(day)


def test_a_permit_may_be_signed_long_before_its_step():
    made = plan()
    stop = next(each for each in made.stops if each.code == "permit.needed")
    assert made.may_be_signed(stop, made.held_at)
