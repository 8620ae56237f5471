"""Findings where an answer ends: the gravest of one way, what was done about them, and every rule that was checked."""

from datetime import date
from typing import Final

import streamlit as st

from econ.evaluate.route_plan import Ground, concerns, route_plan
from econ.evaluate.settled import mark_of
from econ.evaluate.sheet import point
from econ.installation.plan import Plan
from econ.kernel.alternative import SELF, Alternative, Standing
from econ.kernel.caution import Caution, Severity
from econ.report.style import NAMES
from econ.report.words import why_not
from econ.report.words.plan import leading_route, mark_text, signature_text
from econ.tables.tasks import installation_tables
from econ.ui import look, now, state
from econ.uncertainty.answer import Answer

MOST: Final = 5
"""Findings that an answer shows; the plan holds all."""

_RANK: Final = (Severity.HOLD_POINT, Severity.CAUTION, Severity.NOTE)


def leading(answer: Answer) -> Alternative:
    """Return the way whose findings and plan come first."""
    is_shut = answer.result.alternatives[SELF].standing is Standing.NOT_ALLOWED
    return leading_route(answer.verdict.winner, is_self_shut=is_shut)


def draw(answer: Answer) -> None:
    """Draw the gravest findings of the leading way, the way to all of them, and what was checked."""
    name = leading(answer)
    ground = Ground(answer.structure, point(answer.sheet), answer.result, installation_tables())
    plan = route_plan(ground, state.current_case(), name, date.today())
    found = [each for each in answer.result.cautions if concerns(each, name)]
    ordered = sorted(found, key=lambda each: (_RANK.index(each.severity), bool(settled(each, plan))))
    look.said(f"For “{NAMES[name]}”, stops first.", kind="small")
    for caution in ordered[:MOST]:
        look.finding(caution, settled(caution, plan))
    if ordered:
        st.page_link("econ/ui/pages/plan.py", label=f"All {len(ordered)} in the plan, step by step")
    rules(answer, name)


def settled(caution: Caution, plan: Plan) -> str:
    """Return what was done about a finding; empty while nothing was that counts."""
    year = date.today().year
    if (stop := next((each for each in plan.stops if each.code == caution.code), None)) is not None:
        return "" if stop.is_open else " ".join(signature_text(each, year) for each in stop.counted)
    held = mark_of(state.current_case(), caution, date.today())
    return mark_text(held[1], year) if held else ""


def rules(answer: Answer, name: Alternative) -> None:
    """Draw every rule, folded: those raised with the ways they are about, the others with why they are not."""
    with st.expander(why_not.raised_text(answer.result)):
        raised = answer.result.cautions
        st.markdown("**Raised**")
        look.table(
            {
                "What was found": [each.message for each in raised],
                "It is a": [look.SEVERITY[each.severity][0].lower() for each in raised],
                "For": [why_not.other_ways_text(each) or "every way" for each in raised],
            }
        )
        st.markdown("**Checked and not raised**")
        look.table(why_not.rest_table(answer.result, name, now.look()))
