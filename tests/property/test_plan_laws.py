"""No order of signing, taking back, doing and skipping offers a step behind a stop that is not signed."""

from datetime import date

from hypothesis import given, settings
from hypothesis import strategies as st

from econ.case.edit import with_line, with_sign_off_back
from econ.case.sections.signed import STEP_STATES
from econ.evaluate.route_plan import Ground, route_plan
from econ.evaluate.sheet import point
from econ.installation.plan import StepState
from econ.kernel.alternative import ALTERNATIVES
from econ.tables.stops import stop_table
from econ.tables.tasks import installation_tables
from tests.demo import NAMES, demo_answer

TODAY = date(2027, 6, 1)
DAYS = ("2027-05-20", "2027-06-01", "2027-06-02")
ROLES = ("owner", "electrician", "contractor", "landlord", "association", "permit_office", "tester")
ACTIONS = st.lists(
    st.tuples(
        st.sampled_from(("sign", "back", "state")),
        st.integers(0, 60),
        st.sampled_from(STEP_STATES),
        st.sampled_from(ROLES),
        st.sampled_from(DAYS),
    ),
    max_size=12,
)


def done(case, plan, action):
    """Return the case after one action, whether or not the page would offer it."""
    what, at, state, role, day = action
    if what == "back" and case.signed:
        return with_sign_off_back(case, at % len(case.signed), day)
    if what == "sign" and plan.stops:
        stop = plan.stops[at % len(plan.stops)]
        signed = {"code": stop.code, "kind": "signed", "who": "A. Name", "role": role, "date": day}
        return with_line(case, "signed", signed | {"route": plan.route.value, "figures": stop.figures})
    if not plan.steps:
        return case
    said = {"route": plan.route.value, "task": plan.steps[at % len(plan.steps)].task, "state": state, "date": day}
    return with_line(case, "steps", said | {"reason": "not here"})


def holds(plan):
    order = [step.task for step in plan.steps]
    unsigned = [at for at, step in enumerate(plan.steps) for stop in step.stops if not may_begin(stop, step, plan)]
    first = min(unsigned, default=len(order))
    assert plan.behind == set(order[first:])
    for step in plan.ready:
        assert order.index(step.task) < first
        assert all(plan.step(task).is_settled for task in step.after)
    assert plan.next_step is None or (plan.next_step in plan.ready and plan.next_step.state is StepState.OPEN)


AT_TURN = {code for code, where in stop_table().rows.items() if where.when == "turn"}


def may_begin(stop, step, plan):
    """Return whether a stop is signed, read anew: in time, by each group it names, not before its turn."""
    given = [each for each in stop.signatures if date.fromisoformat(each.date) <= TODAY]
    if stop.code in AT_TURN:
        before = [plan.step(task) for task in step.after]
        given = [each for each in given if all(other.is_settled and other.said_on <= each.date for other in before)]
    return all(any(each.role in group for each in given) for group in stop.asked)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(NAMES), st.sampled_from(ALTERNATIVES), ACTIONS)
def test_nothing_behind_an_unsigned_stop_is_ever_next(name, route, actions):
    found = demo_answer(name)
    ground = Ground(found.structure, point(found.sheet), found.result, installation_tables())
    case, raised = found.case, [stop.code for stop in route_plan(ground, found.case, route, TODAY).stops]
    for action in actions:
        case = done(case, route_plan(ground, case, route, TODAY), action)
        plan = route_plan(ground, case, route, TODAY)
        holds(plan)
        assert [stop.code for stop in plan.stops] == raised
