"""How each page ends: its findings, what it changed in the answer, and one button to the next question."""

from math import isfinite
from typing import Final

import streamlit as st

from econ.report import numbers
from econ.report.style import NAMES
from econ.ui import fields, look, now, places, state
from econ.uncertainty.answer import Answer

_PAGES: Final = "econ/ui/pages"


def draw(page: str, answer: Answer | None, *, next_page: str, next_words: str) -> None:
    """Draw the end of a page."""
    if answer is not None:
        if found := answer.result.cautions_about(page) if page != "answer" else ():
            st.subheader("What to mind here")
            look.findings(found, most=4)
        before = now.on_entry(page, answer)
        st.html(f'<p class="changed"><b>What this page changed.</b> {" ".join(changes(before or answer, answer))}</p>')
    onward(next_page, next_words)


def to_answer() -> None:
    """Draw the button that ends the first look; without a town it says what is missing."""
    if not state.is_placed():
        st.info("Only the town is missing: choose it under 3.")
    onward("answer", "See the answer")


def ask_first() -> None:
    """Ask the four things that a first look needs."""
    fields.draw("rooms[0].kind", "rooms[0].floor_area_m2")
    places.ask()
    fields.draw("now.cooling")


def changes(before: Answer, after: Answer) -> list[str]:
    """Return sentences on what moved between two answers; one that says so where nothing did."""
    told = [sentence for place in range(len(after.result.alternatives)) if (sentence := _moved(before, after, place))]
    if before.verdict.winner is not after.verdict.winner and after.verdict.winner is not None:
        told.insert(0, f"The cheapest way that passes is now: {NAMES[after.verdict.winner]}.")
    return told or ["Nothing so far."]


def _moved(before: Answer, after: Answer, place: int) -> str:
    old, new = (float(one.result.measures.annualised_cost_usd_per_yr[place, 0]) for one in (before, after))
    if not (isfinite(old) and isfinite(new)) or abs(new - old) < 0.5:
        return ""
    name = NAMES[after.result.alternatives[place].name]
    return f"{name}: {numbers.money(old)} → {numbers.money(new)} a year."


def onward(page: str, words: str) -> None:
    """Draw the button to the next question."""
    if st.button(words, type="primary", key="onward"):
        st.switch_page(f"{_PAGES}/{page}.py")
