"""The steps of a plan, one beneath the other: stops with their form, what can be begun, what is shown for planning."""

from datetime import date
from html import escape
from typing import Final

import streamlit as st

from econ.case.sections.signed import SignOff
from econ.evaluate.settled import mark_of
from econ.installation.plan import Plan, Step, StepState, Stop
from econ.kernel.caution import Caution, Severity
from econ.report.words import plan as words
from econ.ui import look, marking, now, state

OCTAGON: Final = "\N{BLACK HEXAGON}"
_TICK: Final = {
    StepState.DONE: "\N{CHECK MARK}",
    StepState.SKIPPED: "\N{EN DASH}",
    StepState.BEGUN: "\N{HORIZONTAL ELLIPSIS}",
}


def line_html(plan: Plan) -> str:
    """Return all steps as one line of numbers, with a stop sign before each step that a stop holds back."""
    cells = []
    for place, step in enumerate(plan.steps, 1):
        if step.open_stops:
            told = f"Stop: {step.open_stops[0].message}"
            cells.append(f'<li class="stop" title="{escape(told)}"><span class="unseen">Stop. </span>{OCTAGON}</li>')
        kind = "is_next" if step is plan.next_step else step.state.value
        behind = " is_behind" if step.task in plan.behind else ""
        title = f"{place}. {words.step_name(step)}: {words.STATE_WORDS[step.state]}"
        cells.append(f'<li class="{kind}{behind}" title="{escape(title)}">{_TICK.get(step.state, str(place))}</li>')
    return f'<ol class="stepline" aria-label="Steps in order, with stops">{"".join(cells)}</ol>'


def draw(plan: Plan) -> None:
    """Draw the steps in order; those done or skipped are folded at the top."""
    numbered = list(enumerate(plan.steps, 1))
    _settled(plan, [(place, step) for place, step in numbered if step.is_settled])
    for place, step in numbered:
        for stop in step.stops:
            if stop.is_open:
                is_here = step is plan.held_at and not plan.ready
                stop_fold(stop, plan, (f"before step {place}", step), is_open=is_here)
        if step.task in plan.behind:
            st.html(_row(place, step, "behind"))
        elif not step.is_settled:
            _fold(place, step, plan)
    for stop in plan.aside:
        if stop.is_open:
            stop_fold(stop, plan, ("on work that is no step here", None), is_open=False)


def _settled(plan: Plan, steps: list[tuple[int, Step]]) -> None:
    if not steps:
        return
    with st.expander(f"Done or skipped: {len(steps)}"):
        for place, step in steps:
            st.html(_row(place, step, "settled"))
            again = ("Take back", marking.say_step, (plan.route, step.task, "open"))
            st.button(again[0], key=marking.key(step.task, "again"), type="tertiary", on_click=again[1], args=again[2])


def _row(place: int, step: Step, kind: str) -> str:
    said = words.said_text(step, date.today().year)
    under = f'<div class="small">{escape(said)}</div>' if said else ""
    return (
        f'<div class="step {kind}"><b>{place}. {escape(step.label)}</b>'
        f'<div class="small">{escape(words.step_facts(step, now.look()))}</div>{under}</div>'
    )


def stop_fold(stop: Stop, plan: Plan, at: tuple[str, Step | None], *, is_open: bool) -> None:
    """Draw one open stop: what was found, what to do, signatures so far, and the form to sign."""
    where, step = at
    with st.expander(
        f"{OCTAGON} Stop {where}: {stop.message}", expanded=is_open, key=f"x_{marking.key(stop.code, 'x')}"
    ):
        given = "".join(
            f'<p class="small">{escape(words.signature_text(each, date.today().year))}</p>' for each in stop.signatures
        )
        st.html(
            f'<div class="finding hold_point"><span class="glyph" aria-hidden="true">{OCTAGON}</span><div>'
            f"<p>{escape(stop.action)}</p><p>{escape(words.signers_text(stop))}</p>{given}"
            f'<p class="small">Source: {escape(stop.source)}</p></div></div>'
        )
        if plan.may_be_signed(stop, step):
            _form(stop, plan)
        elif step is not None:
            look.said(words.turn_text(plan, step), kind="fits")


def _form(stop: Stop, plan: Plan) -> None:
    st.session_state.setdefault(marking.key(stop.code, "date"), date.today())
    with st.form(marking.key(stop.code, "form"), border=False):
        left, right = st.columns(2, gap="medium")
        left.text_input("Name of who signs", key=marking.key(stop.code, "who"))
        roles = words.roles_left(stop)
        right.selectbox("Signs as", roles, format_func=words.ROLE_WORDS.__getitem__, key=marking.key(stop.code, "role"))
        left.text_input("Licence or permit number, if any", key=marking.key(stop.code, "licence"))
        right.date_input("Signed on", key=marking.key(stop.code, "date"), max_value="today")
        st.text_input("Note", key=marking.key(stop.code, "note"), placeholder="What was seen or agreed")
        st.form_submit_button(
            "Record the signature", key=marking.key(stop.code, "sign"), on_click=marking.sign, args=(stop, plan.route)
        )
    _refused(stop.code)


def _refused(code: str) -> None:
    if told := marking.refused(code):
        st.html(f'<div class="fault" role="alert">{escape(told)}</div>')


def _fold(place: int, step: Step, plan: Plan) -> None:
    """Draw a step that no stop holds back: what it takes, what to read, and how far it is."""
    is_next = step is plan.next_step
    mark = "Next: " if is_next else "Under way: " if step.state is StepState.BEGUN else ""
    facts = words.step_facts(step, now.look()).replace("$", "\\$")
    with st.expander(
        f"{mark}{place}. {words.step_name(step)} :small[· {facts}]", expanded=is_next, key=f"x_step_{step.task}"
    ):
        if takes := _takes(step):
            st.html(takes)
        for caution in step.findings:
            finding(caution)
        if plan.may_be_marked(step.task):
            _buttons(step, plan)
        else:
            look.said("Its turn comes when the steps before it are done.", kind="small")


def _takes(step: Step) -> str:
    parts = []
    if said := words.said_text(step, date.today().year):
        parts.append(f"<p>{escape(said)}</p>")
    told = (("Before you begin", (step.check,)), ("Tools", step.tools), ("Materials", step.materials))
    for title, each in told:
        if any(each):
            parts.append(f"<p><b>{title}:</b> {escape('; '.join(each))}</p>")
    return f'<div class="step">{"".join(parts)}</div>' if parts else ""


def _buttons(step: Step, plan: Plan) -> None:
    st.session_state.setdefault(marking.key(step.task, "date"), date.today())
    with st.container(horizontal=True, vertical_alignment="bottom", gap="small"):
        st.date_input("On", key=marking.key(step.task, "date"), max_value="today", width=150)
        if step.is_wait and step.state is StepState.OPEN:
            _state_button("Under way", "begun", step, plan)
        _state_button("Done", "done", step, plan)
    with st.popover("Skip this step"):
        st.text_input("Why is it skipped?", key=marking.key(step.task, "reason"))
        _state_button("Skip it", "skipped", step, plan)
    _refused(step.task)


def _state_button(label: str, to: str, step: Step, plan: Plan) -> None:
    st.button(
        label,
        key=marking.key(step.task, to),
        type="primary" if to == "done" else "secondary",
        on_click=marking.say_step,
        args=(plan.route, step.task, to),
    )


def finding(caution: Caution) -> None:
    """Draw a caution or note with its mark, or with what one taps to settle it."""
    held = mark_of(state.current_case(), caution, date.today())
    look.finding(caution)
    if held is not None:
        _held(*held)
        return
    with st.container(horizontal=True, vertical_alignment="bottom", gap="small"):
        is_note = caution.severity is Severity.NOTE
        if not is_note:
            st.text_input("How was it dealt with?", key=marking.key(caution.code, "note"), width=340)
        label = "Mark as read" if is_note else "Dealt with"
        at = marking.key(caution.code, "settle")
        st.button(label, key=at, on_click=marking.settle, args=(caution,))
    _refused(caution.code)


def _held(place: int, line: SignOff) -> None:
    with st.container(horizontal=True, vertical_alignment="center", gap="small"):
        st.html(f'<p class="small"><b>{escape(words.mark_text(line, date.today().year))}</b></p>')
        st.button(
            "Take back", key=marking.key(str(place), "back"), type="tertiary", on_click=marking.take_back, args=(place,)
        )
