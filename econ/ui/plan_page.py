"""The plan page: whose plan, what comes next, its steps, and all that was signed."""

from datetime import date
from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.route_plan import Ground, route_plan
from econ.evaluate.sheet import point
from econ.installation.plan import Plan
from econ.kernel.alternative import ALTERNATIVES, KEEP, Alternative, Standing
from econ.kernel.caution import Severity
from econ.report.style import NAMES
from econ.report.words import plan as words
from econ.tables.tasks import installation_tables
from econ.ui import checked, look, marking, plan_steps, record, state
from econ.uncertainty.answer import Answer

_WAY: Final = "w_plan_way"
_ENTRY: Final = "plan_on_entry"
WAYS: Final = tuple(name for at, name in enumerate(ALTERNATIVES) if at != KEEP)


def plan_of(answer: Answer, name: Alternative) -> Plan:
    """Return the plan of a way as it stands today."""
    ground = Ground(answer.structure, point(answer.sheet), answer.result, installation_tables())
    return route_plan(ground, state.current_case(), name, date.today())


def draw(answer: Answer) -> None:
    """Draw the page."""
    name = _way(answer)
    plan = plan_of(answer, name)
    look.said(words.next_text(plan), kind="verdict")
    look.said(words.stops_text(plan), kind="statement")
    look.said(_shut(answer, name), kind="fits")
    st.html(plan_steps.line_html(plan))
    _small_print(plan)
    plan_steps.draw(plan)
    _general(plan)
    _record()
    checked.rules(answer, name)
    record.draw(answer, name)
    _changed()


def _way(answer: Answer) -> Alternative:
    """Ask whose plan is shown; unasked it is that of the work under way, else of the way that is named."""
    if _WAY not in st.session_state:
        st.session_state[_WAY] = _first(answer)
    tapped = st.segmented_control("Whose plan?", WAYS, format_func=NAMES.__getitem__, key=_WAY, required=True)
    return Alternative(tapped or _first(answer))


def _first(answer: Answer) -> Alternative:
    begun = [line.route for line in state.current_case().steps]
    return Alternative(begun[-1]) if begun and begun[-1] in WAYS else checked.leading(answer)


def _shut(answer: Answer, name: Alternative) -> str:
    way = answer.result.alternatives[ALTERNATIVES.index(name)]
    if way.standing is not Standing.NOT_ALLOWED:
        return ""
    return f"This way is not allowed as things stand. {' '.join(way.reasons[:1])}"


def _small_print(plan: Plan) -> None:
    if plan.behind:
        st.caption(f"{plan_steps.OCTAGON} is a stop. {words.BEHIND}")


def _general(plan: Plan) -> None:
    if not plan.general:
        return
    stood = sum(each.severity is Severity.CAUTION for each in plan.general)
    with st.expander(f"For the whole job: {stood} to deal with, {len(plan.general) - stood} to read"):
        for caution in plan.general:
            plan_steps.finding(caution)


def _record() -> None:
    """Draw every signature and mark that was ever given, those taken back too."""
    lines = state.current_case().signed
    if not lines:
        return
    with st.expander(f"Signatures and marks on record: {len(lines)}", key="x_signed"):
        for place, line in enumerate(lines):
            st.html(f"<p><b>{escape(line.code or '')}</b> {escape(words.mark_text(line, date.today().year))}</p>")
            if line.taken_back is None:
                st.text_input("Why take it back?", key=marking.key(str(place), "why_back"))
                at = marking.key(str(place), "undo")
                st.button("Take this back", key=at, on_click=marking.take_back, args=(place,))


def _changed() -> None:
    """Say what was recorded since the page was opened."""
    case = state.current_case()
    saved = st.session_state[state.SAVED]
    number = saved.case_id if saved else None
    kept = st.session_state.get(_ENTRY)
    if kept is None or kept[0] != number or st.session_state[state.TURNED]:
        kept = (number, len(case.signed), len(case.steps))
        st.session_state[_ENTRY] = kept
    told = words.recorded_text(len(case.signed) - kept[1], len(case.steps) - kept[2])
    st.html(f'<p class="changed"><b>What this page changed.</b> {escape(told)}</p>')
