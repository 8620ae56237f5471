"""What the plan says: what comes next, who must sign, what was signed."""

import pytest

from econ.case.sections.signed import SignOff
from econ.installation.plan import Lapse, Plan, Signature, Step, StepState, Stop
from econ.kernel.alternative import Alternative, Party
from econ.report.look import Look
from econ.report.words import plan as words
from tests.demo import TODAY

LOOK = Look(TODAY, TODAY.year)
HIRED = Alternative.CONTRACTED_INSTALL


def stop(party="whoever drills", asked=(("owner", "contractor"),), signatures=()):
    return Stop("a.b", "Found.", "Do.", party, "source", asked, "", signatures)


def step(task="survey", label="Mark out", **changed):
    told = {"hours_h": 1.5, "crew_count": 1.0, "cost_usd": 0.0, "begin_d": 1.0, "done_d": 1.5}
    return Step(task, label, changed.pop("party", Party.SELF), **{**told, **changed})


def plan(*steps, aside=()):
    return Plan(Alternative.SELF_INSTALL, steps, aside)


def signature(**changed):
    told = {"who": "Ada Name", "role": "electrician", "licence": "", "date": "2027-03-09", "note": "", "place": 0}
    return Signature(**{**told, **changed})


@pytest.mark.parametrize(
    ("made", "said"),
    [
        (plan(), "Keeping what you have takes no work, so there is no plan."),
        (plan(step()), "Next: mark out (1.5 h, you). No stops ahead."),
        (plan(step(), step("drill", stops=(stop(),))), "Next: mark out (1.5 h, you). One stop ahead."),
        (plan(step(stops=(stop(),))), "Stop: no step comes next until whoever drills has signed. One stop ahead."),
        (
            plan(step(stops=(stop(), stop("electrician and contractor")))),
            "Stop: no step comes next until whoever drills and the electrician and contractor have signed. "
            "Two stops ahead.",
        ),
        (
            plan(step(stops=(stop("you"),))),
            "Stop: no step comes next until you have signed. One stop ahead.",
        ),
        (
            plan(step("book_electrician", "Wait", hours_h=0.0, state=StepState.BEGUN)),
            "Under way: phone and book the electrician. No stops ahead.",
        ),
        (plan(step(state=StepState.DONE)), "All steps are done or skipped."),
        (plan(step(state=StepState.DONE), aside=(stop(),)), "All steps are done or skipped. One stop ahead."),
    ],
)
def test_the_first_line_says_what_comes_next(made, said):
    assert words.next_text(made) == said


@pytest.mark.parametrize(
    ("made", "said"),
    [
        (plan(), ""),
        (plan(step()), "No rule stops this way."),
        (plan(step(stops=(stop(signatures=(signature(role="owner"),)),))), "No stop is open."),
        (plan(step(stops=(stop("electrician"), stop("electrician")))), "Two stops, both with the electrician."),
        (plan(step(stops=(stop(), stop("you")))), "Two stops, with whoever drills and you."),
    ],
)
def test_the_second_line_says_with_whom_the_stops_are(made, said):
    assert words.stops_text(made) == said


@pytest.mark.parametrize(
    ("made", "said"),
    [
        (step(), "you · 1.5 h · Thu 11 March"),
        (step(crew_count=2.0, cost_usd=1234.0, done_d=3.0), "you with 2 people · 1.5 h · $1,230 · "),
        (step(hours_h=0.0, cost_usd=float("nan"), party=Party.CONTRACTOR), "the contractor · in the quote · "),
    ],
)
def test_a_step_says_who_how_long_for_how_much_and_when(made, said):
    assert words.step_facts(made, LOOK).startswith(said)


def test_a_step_done_or_skipped_says_when_and_why():
    assert words.said_text(step(), 2027) == ""
    done = step(state=StepState.DONE, said_on="2027-03-09")
    assert words.said_text(done, 2027) == "Done on Tue 9 March."
    skipped = step(state=StepState.SKIPPED, said_on="2027-03-09", reason="None here.")
    assert words.said_text(skipped, 2028) == "Skipped on Tue 9 March 2027: None here."


@pytest.mark.parametrize(
    ("lapse", "ends"),
    [
        (Lapse.NONE, "on Tue 9 March."),
        (Lapse.LATER, "It is dated later than today, so it does not count yet."),
        (Lapse.FIGURES, "The figures behind this stop have changed since, so it has to be signed again."),
        (Lapse.EARLY, "It was given before the steps it stands for were done, so it has to be signed again."),
        (Lapse.ROLE, "It does not count: this stop is signed by others."),
    ],
)
def test_a_signature_says_who_and_whether_it_counts(lapse, ends):
    text = words.signature_text(signature(lapse=lapse), 2027)
    assert text.startswith("Signed by Ada Name (an electrician) on Tue 9 March.")
    assert text.endswith(ends)


def test_a_number_and_a_note_are_told_with_a_signature():
    text = words.signature_text(signature(licence="E-1", note="Seen."), 2027)
    assert text == "Signed by Ada Name (an electrician, number E-1) on Tue 9 March. Note: Seen."


def test_who_signs_says_how_many_are_still_asked_for():
    both = stop("electrician and contractor", (("electrician",), ("contractor",)), (signature(),))
    told = "Who signs: the electrician and contractor. You cannot sign it in their place."
    assert words.signers_text(both) == f"{told} Signatures still asked for: 1."
    assert words.roles_left(both) == ("contractor",)
    assert words.signers_text(stop()) == "Who signs: whoever drills."


def test_open_stops_of_a_step_are_told_in_print():
    assert words.open_text(step()) == ""
    assert words.open_text(step(stops=(stop(),))) == "STOP, to be signed by whoever drills."
    assert words.open_text(step(stops=(stop(), stop("you")))) == "2 STOPS, to be signed by whoever drills and you."


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ({"code": "electrical.panel_unknown", "kind": "read"}, "Read."),
        (
            {"code": "electrical.stored_charge", "kind": "dealt", "note": "Waited.", "date": "2027-03-09"},
            "Dealt with: Waited, Tue 9 March.",
        ),
        (
            {
                "code": "permit.refused",
                "kind": "signed",
                "who": "B. Clerk",
                "role": "permit_office",
                "date": "2027-03-09",
                "licence": "P-2",
                "taken_back": "2027-03-10",
                "why_back": "Other house.",
            },
            "Signed by B. Clerk (the permit office), number P-2, Tue 9 March. Taken back on Wed 10 March: Other house.",
        ),
    ],
)
def test_a_mark_says_what_was_done_and_whether_it_was_taken_back(line, said):
    assert words.mark_text(SignOff.model_validate(line), 2027) == said


def test_what_was_recorded_is_counted():
    assert words.recorded_text(0, 0) == "Nothing so far."
    assert words.recorded_text(1, 2) == "Recorded: 1 mark and 2 steps. No figure of the comparison moves by it."


def test_the_plan_shown_first_is_that_of_the_way_named_else_of_what_may_be_done():
    assert words.leading_route(HIRED, is_self_shut=False) is HIRED
    assert words.leading_route(None, is_self_shut=False) is Alternative.SELF_INSTALL
    assert words.leading_route(Alternative.KEEP_AS_IS, is_self_shut=True) is HIRED


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (1, "It is signed when its turn comes: first “0”."),
        (3, "It is signed when its turn comes: first “0”, “1” and “2”."),
        (5, "It is signed when its turn comes: first “0”, “1” and 3 more steps."),
    ],
)
def test_what_comes_before_a_stop_is_named_or_counted(count, said):
    before = [step(str(at), str(at)) for at in range(count)]
    last = step("check", after=tuple(each.task for each in before), stops=(stop(),))
    assert words.turn_text(plan(*before, last), last) == said
