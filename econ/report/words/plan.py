"""The plan in words: what comes next, what holds it back, whose signatures are asked for, and what was signed."""

from datetime import date
from math import isfinite
from typing import Final

from econ.case.sections.signed import SignOff
from econ.caution.sign import Kind, Role
from econ.installation.plan import Lapse, Plan, Signature, Step, StepState, Stop
from econ.kernel.alternative import Alternative, Party
from econ.report.look import Look
from econ.report.numbers import day_text, first_cost_money, listed, plural, tenths
from econ.report.words.refusal import COUNTS

WHO: Final = {
    Party.SELF: "you",
    Party.HELPER: "the helper",
    Party.ELECTRICIAN: "the electrician",
    Party.CONTRACTOR: "the contractor",
}

ROLE_WORDS: Final[dict[str, str]] = {
    Role.OWNER: "you, the owner",
    Role.HELPER: "a helper",
    Role.ELECTRICIAN: "an electrician",
    Role.CONTRACTOR: "a contractor",
    Role.PERMIT_OFFICE: "the permit office",
    Role.LANDLORD: "the landlord",
    Role.ASSOCIATION: "the association",
    Role.TESTER: "an accredited tester",
    Role.OTHER: "somebody else at the work",
}

ASK: Final[dict[str, str]] = {
    "book_electrician": "Phone and book the electrician",
    "book_contractor": "Phone and book the contractor",
    "contractor_start": "Settle the day with the contractor",
    "locate_lines": "Have buried lines marked",
    "consent": "Ask for consent in writing",
    "permit_granted": "Wait for the permit",
    "buy_carry": "Buy the units",
    "run_in": "Let the new unit run",
}
"""What one does about steps on which nobody spends hours; others are told by their label."""

STATE_WORDS: Final = {
    StepState.OPEN: "to do",
    StepState.BEGUN: "under way",
    StepState.DONE: "done",
    StepState.SKIPPED: "skipped",
}

LAPSE_WORDS: Final = {
    Lapse.LATER: "It is dated later than today, so it does not count yet.",
    Lapse.FIGURES: "The figures behind this stop have changed since, so it has to be signed again.",
    Lapse.EARLY: "It was given before the steps it stands for were done, so it has to be signed again.",
    Lapse.ROLE: "It does not count: this stop is signed by others.",
}

BEHIND: Final = "Behind an open stop: shown for planning alone."
NOTHING: Final = "Keeping what you have takes no work, so there is no plan."
MOST_NAMED: Final = 3
"""Steps that a sentence names; more are counted."""

_LEAST_H: Final = 0.05
_LEAST_USD: Final = 0.5


def step_name(step: Step) -> str:
    """Return what is done in a step, as one would say it."""
    return ASK.get(step.task, step.label)


def _inside(text: str) -> str:
    """Return a phrase to be read on after a colon."""
    return text[:1].lower() + text[1:]


def next_text(plan: Plan) -> str:
    """Return the first line of a plan: what comes next, and how many stops lie ahead."""
    if not plan.steps:
        return NOTHING
    if plan.is_done:
        return "All steps are done or skipped." + (f" {_ahead(plan)}" if plan.open_stops else "")
    if plan.next_step is not None:
        step = plan.next_step
        return f"Next: {_inside(step_name(step))} ({_brief(step)}). {_ahead(plan)}"
    if plan.waits:
        waited = listed([_inside(step_name(step)) for step in plan.waits])
        return f"Under way: {waited}. {_ahead(plan)}"
    held = plan.held_at
    if held is None:
        return f"Nothing can be begun yet. {_ahead(plan)}"
    return f"Stop: no step comes next until {_names(held.open_stops)}. {_ahead(plan)}"


def _names(stops: tuple[Stop, ...]) -> str:
    parties = list(dict.fromkeys(stop.party for stop in stops))
    is_one = len(parties) == 1 and not parties[0].startswith("you") and " and " not in parties[0]
    return f"{listed([_party(each) for each in parties])} {'has' if is_one else 'have'} signed"


def _brief(step: Step) -> str:
    hours = f"{tenths(step.hours_h)} h, " if step.hours_h >= _LEAST_H else ""
    return f"{hours}{WHO[step.party]}"


def _ahead(plan: Plan) -> str:
    count = len(plan.open_stops)
    number = COUNTS[count] if count < len(COUNTS) else str(count)
    return f"{number} {plural('stop', count)} ahead."


def open_text(step: Step) -> str:
    """Return how many stops hold a step back, and who must sign; empty for none."""
    held = step.open_stops
    if not held:
        return ""
    parties = dict.fromkeys(_party(stop.party) for stop in held)
    count = f"{len(held)} stops" if len(held) > 1 else "Stop"
    return f"{count.upper()}, to be signed by {listed(list(parties))}."


def signers_text(stop: Stop) -> str:
    """Return whose signature opens a stop, and how many are still asked for where it is more than one."""
    left = len(stop.lacking)
    more = f" Signatures still asked for: {left}." if len(stop.asked) > 1 and left else ""
    yours = "" if all(Role.OWNER in group for group in stop.asked) else " You cannot sign it in their place."
    return f"Who signs: {_party(stop.party)}.{yours}{more}"


def turn_text(plan: Plan, step: Step) -> str:
    """Return what has to be done before a stop of a step can be signed."""
    left = [f"“{each.label}”" for each in plan.unsettled_before(step)]
    if len(left) > MOST_NAMED:
        left = [*left[: MOST_NAMED - 1], f"{len(left) - MOST_NAMED + 1} more steps"]
    return f"It is signed when its turn comes: first {listed(left)}."


def roles_left(stop: Stop) -> tuple[str, ...]:
    """Return as what one may still sign a stop."""
    return tuple(dict.fromkeys(role for group in stop.lacking for role in group))


def stops_text(plan: Plan) -> str:
    """Return how many stops are open and with whom."""
    left = plan.open_stops
    if not plan.steps:
        return ""
    if not left:
        return "No stop is open." if plan.stops else "No rule stops this way."
    parties = list(dict.fromkeys(stop.party for stop in left))
    number = COUNTS[len(left)] if len(left) < len(COUNTS) else str(len(left))
    both = "both " if len(left) == 2 and len(parties) == 1 else ""
    return f"{number} {plural('stop', len(left))}, {both}with {listed([_party(each) for each in parties])}."


def _party(party: str) -> str:
    return party if party.startswith(("you", "whoever", "accredited")) else f"the {party}"


def step_facts(step: Step, look: Look) -> str:
    """Return who does a step, how long it takes, what it costs and when, in one line."""
    people = f" with {step.crew_count:.0f} people" if step.crew_count > 1.0 and not step.is_wait else ""
    parts = [f"{WHO[step.party]}{people}"]
    if step.hours_h >= _LEAST_H:
        parts.append(f"{tenths(step.hours_h)} h")
    if not isfinite(step.cost_usd):
        parts.append("in the quote")
    elif step.cost_usd >= _LEAST_USD:
        parts.append(first_cost_money(step.cost_usd))
    return " · ".join([*parts, dates_text(step, look)])


def dates_text(step: Step, look: Look) -> str:
    """Return from when to when a step lasts."""
    begin, done = look.day(step.begin_d), look.day(step.done_d)
    return begin if begin == done else f"{begin} to {done}"


def said_text(step: Step, this_year: int) -> str:
    """Return what was said of a step and when; empty while nothing was."""
    if step.state is StepState.OPEN:
        return ""
    words = STATE_WORDS[step.state].capitalize()
    why = f": {step.reason.rstrip('.')}" if step.reason else ""
    return f"{words} on {on_text(step.said_on, this_year)}{why}."


def on_text(written: str, this_year: int) -> str:
    """Return a day written year-month-day as said aloud."""
    return day_text(date.fromisoformat(written), this_year) if written else "a day not said"


def signature_text(signature: Signature, this_year: int) -> str:
    """Return who signed, as what, when, under which number, and whether it counts."""
    number = f", number {signature.licence}" if signature.licence else ""
    note = f" Note: {signature.note.rstrip('.')}." if signature.note else ""
    role = ROLE_WORDS.get(signature.role, signature.role)
    signed = f"Signed by {signature.who} ({role}{number}) on {on_text(signature.date, this_year)}.{note}"
    return " ".join(part for part in (signed, LAPSE_WORDS.get(signature.lapse, "")) if part)


def mark_text(line: SignOff, this_year: int) -> str:
    """Return what was done about a finding, by whom and when; and that it was taken back, where it was."""
    told = {
        Kind.SIGNED: f"Signed by {line.who} ({ROLE_WORDS.get(line.role or '', line.role)})",
        Kind.DEALT: f"Dealt with: {(line.note or '').rstrip('.')}",
        Kind.READ: "Read",
    }[Kind(line.kind or "")]
    on = f", {on_text(line.date, this_year)}" if line.date else ""
    number = f", number {line.licence}" if line.licence else ""
    note = f" Note: {line.note.rstrip('.')}." if line.note and line.kind == Kind.SIGNED else ""
    why = f": {line.why_back.rstrip('.')}" if line.why_back else ""
    back = f" Taken back on {on_text(line.taken_back, this_year)}{why}." if line.taken_back else ""
    return f"{told}{number}{on}.{note}{back}"


def recorded_text(marks: int, steps: int) -> str:
    """Return what was recorded since a page was opened."""
    told = [f"{count} {plural(what, count)}" for count, what in ((marks, "mark"), (steps, "step")) if count > 0]
    return f"Recorded: {listed(told)}. No figure of the comparison moves by it." if told else "Nothing so far."


def leading_route(winner: Alternative | None, *, is_self_shut: bool) -> Alternative:
    """Return whose plan is shown first: the way that is named, else one's own work if allowed, else hiring."""
    if winner not in (None, Alternative.KEEP_AS_IS):
        return winner
    return Alternative.CONTRACTED_INSTALL if is_self_shut else Alternative.SELF_INSTALL
