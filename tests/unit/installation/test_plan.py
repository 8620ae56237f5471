"""What comes next, what is behind a stop, and what a signature opens."""

from dataclasses import replace

import pytest

from econ.installation.plan import Lapse, Plan, Signature, Step, StepState, Stop, held_before, needed_before
from econ.kernel.alternative import Alternative, Party

ANYONE = (("owner", "electrician"),)


def stop(code="electrical.prove_dead", asked=ANYONE, *signatures):
    return Stop(code, "Found.", "Do this.", "whoever", "source", asked, "", signatures)


def signature(role="owner", lapse=Lapse.NONE):
    return Signature("A. Name", role, "", "2027-03-01", "", 0, lapse)


def step(task, after=(), stops=(), state=StepState.OPEN, hours_h=1.0):
    return Step(task, task, Party.SELF, hours_h, 1.0, 0.0, 0.0, 0.0, after, stops=stops, state=state)


def plan(*steps, aside=()):
    return Plan(Alternative.SELF_INSTALL, steps, aside)


def test_the_first_step_is_next():
    assert plan(step("a"), step("b", ("a",))).next_step.task == "a"


def test_a_done_step_makes_room_for_those_after_it():
    made = plan(step("a", state=StepState.DONE), step("b", ("a",)))
    assert made.next_step.task == "b"
    assert not made.may_be_marked("a")


def test_a_skipped_step_counts_as_settled():
    assert plan(step("a", state=StepState.SKIPPED), step("b", ("a",))).next_step.task == "b"


def test_a_wait_that_runs_leaves_other_work_next():
    made = plan(step("ask", state=StepState.BEGUN, hours_h=0.0), step("work"), step("granted", ("ask",)))
    assert made.next_step.task == "work"
    assert [each.task for each in made.waits] == ["ask"]


def test_nothing_is_next_while_all_that_is_left_is_waited_for():
    made = plan(step("ask", state=StepState.BEGUN, hours_h=0.0), step("work", ("ask",)))
    assert made.next_step is None
    assert not made.is_done


def test_everything_from_an_open_stop_on_is_behind_it():
    made = plan(step("a"), step("b", stops=(stop(),)), step("c"))
    assert made.behind == {"b", "c"}
    assert made.next_step.task == "a"
    assert made.held_at.task == "b"
    assert not made.may_be_marked("c")


def test_a_stop_holds_although_steps_behind_it_were_said_to_be_done():
    made = plan(step("a", state=StepState.DONE), step("b", stops=(stop(),), state=StepState.DONE), step("c"))
    assert made.next_step is None
    assert made.behind == {"b", "c"}


def test_a_signature_of_one_who_may_opens_a_stop():
    opened = stop("x.y", ANYONE, signature())
    assert not opened.is_open
    assert plan(step("b", stops=(opened,))).next_step.task == "b"
    assert plan(step("b", stops=(opened,))).stops == (opened,)


@pytest.mark.parametrize("lapse", [Lapse.LATER, Lapse.FIGURES, Lapse.ROLE])
def test_a_signature_that_lapsed_opens_nothing(lapse):
    assert stop("x.y", ANYONE, signature(lapse=lapse)).is_open


def test_a_signature_in_another_role_opens_nothing():
    assert stop("x.y", (("landlord",),), signature("owner")).is_open


def test_a_stop_for_two_trades_wants_both():
    both = (("electrician",), ("contractor",))
    assert stop("x.y", both, signature("electrician")).lacking == (("contractor",),)
    assert not stop("x.y", both, signature("electrician"), signature("contractor")).is_open


def test_stops_aside_are_counted_and_hold_no_step():
    made = plan(step("a"), aside=(stop("measures.old_attic"),))
    assert len(made.open_stops) == 1
    assert made.next_step.task == "a"


def test_all_settled_is_done():
    made = plan(step("a", state=StepState.DONE))
    assert made.is_done
    assert made.step("a").is_settled
    assert made.held_at is None


def test_a_stop_without_a_step_of_its_own_holds_back_all():
    assert held_before(("nowhere",), ("a", "b")) == "a"
    assert held_before(("b", "a"), ("a", "b")) == "a"
    assert held_before(("a",), ()) == ""


def test_what_a_task_needs_reaches_through_tasks_that_the_site_does_not_need():
    after = {"a": (), "b": ("a",), "c": ("a", "b"), "d": ("c",)}
    assert needed_before(after, frozenset("ad"))["d"] == ("a",)
    assert needed_before(after, frozenset("abcd"))["d"] == ("c",)


def test_a_step_is_a_wait_when_nobody_spends_hours_on_it():
    assert step("a", hours_h=0.0).is_wait
    assert not replace(step("a"), hours_h=0.1).is_wait
