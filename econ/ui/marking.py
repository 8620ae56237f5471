"""What is said of findings and steps, taken into the case: signatures, marks, steps done; nothing is struck out."""

from datetime import date
from typing import Final

import streamlit as st

from econ.case.edit import with_line, with_sign_off_back
from econ.caution.sign import KIND_OF, Kind
from econ.evaluate.known import known_names
from econ.evaluate.route_plan import figures_of
from econ.installation.plan import Stop
from econ.kernel.alternative import Alternative
from econ.kernel.caution import Caution
from econ.kernel.errors import CaseError
from econ.ui import fields, state

FIELDS: Final = ("who", "role", "licence", "date", "note")
"""What a signature is asked for."""


def key(code: str, name: str) -> str:
    """Return the key of an entry that belongs to a finding or step."""
    return f"w_mark_{fields.slug(code)}_{name}"


def _typed(code: str, name: str) -> str:
    typed = st.session_state.get(key(code, name))
    return typed.isoformat() if isinstance(typed, date) else str(typed or "").strip()


def sign(stop: Stop, route: Alternative) -> None:
    """Record the signature that stands in the form of a stop."""
    line = {name: _typed(stop.code, name) for name in FIELDS}
    line |= {"code": stop.code, "kind": Kind.SIGNED.value, "route": route.value, "figures": stop.figures}
    _say("signed", line, stop.code)


def settle(caution: Caution) -> None:
    """Mark a note read, or a caution dealt with in the way that was typed."""
    line = {
        "code": caution.code,
        "kind": KIND_OF[caution.severity].value,
        "note": _typed(caution.code, "note"),
        "date": date.today().isoformat(),
        "figures": figures_of(caution),
    }
    _say("signed", line, caution.code)


def say_step(route: Alternative, task: str, step_state: str) -> None:
    """Record how far a step is, on the day that stands beside it."""
    on = _typed(task, "date") or date.today().isoformat()
    reason = _typed(task, "reason") if step_state == "skipped" else ""
    line = {"route": route.value, "task": task, "state": step_state, "date": on, "reason": reason}
    _say("steps", line, task)


def take_back(place: int) -> None:
    """Take one mark back: it stays on record with the day and what was typed as the reason."""
    why = _typed(str(place), "why_back")
    state.replace(with_sign_off_back(state.current_case(), place, date.today().isoformat(), why))


def refused(code: str) -> str:
    """Return why what was said of a finding or step was not taken; empty where nothing was refused."""
    found = state.refused(f"mark.{code}")
    return "" if found is None else f"{found.fault.path.rpartition('.')[2]} {found.fault.problem}. {found.fault.remedy}"


def _say(section: str, line: dict[str, str], code: str) -> None:
    path = f"mark.{code}"
    try:
        case = with_line(state.current_case(), section, line, known_names())
    except CaseError as error:
        st.session_state[state.FAULTS][path] = state.Refused("", error.faults[0])
        return
    state.replace(case, path)
