"""The answer on screen: that of the case as it is, or the last good one where the case cannot be computed."""

from dataclasses import dataclass
from datetime import date
from typing import Final

import streamlit as st

from econ.case.schema import Case
from econ.case.toml import inputs_text
from econ.kernel.constants import FOOT_M
from econ.kernel.errors import EconError
from econ.report.look import Look
from econ.report.style import NAMES
from econ.ui import cached, state
from econ.uncertainty.answer import Answer

_LAST: Final = "last_answer"
_KEPT: Final = "answers_of_case"
"""Session key of the answers to the open case by day and draws: a page asks for them at every field."""

_REFINED: Final = "refined_for"
_ENTRY: Final = "answer_on_entry"
KM_PER_MILE: Final = 1.609344
"""km in a statute mile: 5280 ft of 0.3048 m. NIST SP 811 (2008), App. B.8."""


@dataclass(frozen=True, slots=True)
class Now:
    """What there is to show.

    Attributes
    ----------
    answer : Answer or None
        The answer; None before a town is chosen, or where there was never one.
    trouble : str
        Why the case as it is cannot be computed; the answer is then that from before the change.
    """

    answer: Answer | None
    trouble: str = ""


def present(draws: int = cached.NO_DRAWS) -> Now:
    """Return what there is to show for the open case; likely values alone unless draws are asked for."""
    session, case = st.session_state, state.current_case()
    if not state.is_placed():
        return Now(None)
    asked = (date.today(), draws)
    kept_case, kept = session.get(_KEPT, (None, {}))
    if kept_case is not case:
        kept = {}
        session[_KEPT] = (case, kept)
    if asked not in kept:
        kept[asked] = _found(case, draws)
    found: Now = kept[asked]
    return found


def _found(case: Case, draws: int) -> Now:
    session = st.session_state
    number = session[state.SAVED].case_id if session[state.SAVED] else None
    try:
        found = cached.answer(case, date.today(), draws)
    except EconError as error:
        last_number, last = session.get(_LAST, (None, None))
        return Now(last if last_number == number else None, str(error))
    session[_LAST] = (number, found)
    return Now(found)


def sure() -> Now:
    """Return what there is to show with chances: the first draws, or all of them once they are done."""
    return present(cached.full_draws(state.current_case()) if is_refined() else cached.FIRST_DRAWS)


def is_refined() -> bool:
    """Return whether the full number of draws has been computed for the case as it is."""
    return bool(st.session_state.get(_REFINED) == inputs_text(state.current_case()))


@st.fragment
def refine() -> None:
    """Compute the full number of draws after the page is drawn, then draw it again; an unchanged case is done once."""
    if is_refined() or not state.is_placed():
        return
    st.caption(f"These are the first {cached.FIRST_DRAWS} tries; the rest follow …")
    try:
        cached.answer(state.current_case(), date.today(), cached.full_draws(state.current_case()))
    except EconError:
        return
    st.session_state[_REFINED] = inputs_text(state.current_case())
    st.rerun()


def turned() -> str:
    """Return what to say where all draws name another verdict than the first draws did; empty where they agree."""
    if not is_refined():
        return ""
    full_draws = cached.full_draws(state.current_case())
    first, full = (present(draws).answer for draws in (cached.FIRST_DRAWS, full_draws))
    if first is None or full is None:
        return ""
    if (first.verdict.kind, first.verdict.winner) == (full.verdict.kind, full.verdict.winner):
        return ""
    named = NAMES[first.verdict.winner] if first.verdict.winner else "none"
    return f"The first {cached.FIRST_DRAWS} tries had said otherwise ({named}); with all of them it reads as above."


def on_entry(page: str, answer: Answer | None) -> Answer | None:
    """Return the answer that stood when this page was opened."""
    entered, before = st.session_state.get(_ENTRY, ("", None))
    if entered != page or before is None:
        st.session_state[_ENTRY] = (page, answer)
        return answer
    found: Answer = before
    return found


def is_on(page: str) -> bool:
    """Return whether a page was drawn last, so that this is a change on it and not its opening."""
    return bool(st.session_state.get(_ENTRY, ("", None))[0] == page)


def look() -> Look:
    """Return for whom pictures and words are drawn: ground, units and calendar."""
    written = state.current_case().place.decision_date
    decided = date.fromisoformat(written) if written else date.today()
    return Look(decided, date.today().year, state.theme(), state.units())


def height(height_m: float) -> str:
    """Return a difference in height in feet or metres."""
    return f"{height_m:.0f} m" if state.is_si() else f"{height_m / FOOT_M:.0f} ft"


def distance(distance_km: float) -> str:
    """Return a distance over land in miles or kilometres."""
    return f"{distance_km:.0f} km" if state.is_si() else f"{distance_km / KM_PER_MILE:.0f} miles"
