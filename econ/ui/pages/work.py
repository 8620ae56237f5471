"""Work: who does each job, what that costs in cash, hours and days, and what may not be done."""

import functools
from collections.abc import Callable
from typing import Final

import streamlit as st

from econ.report.words.delivery import return_sentence
from econ.ui import board, closing, dates, fields, hour_value, look, now, quote_lines, risks, sketches, tool_taps

QUESTIONS: Final = {
    "What is allowed here?": "site: occupancy permit owner_may_mechanical owner_may_electrical association "
    "heritage room_permitted",
    "What wall is drilled?": "site: wall wall_thickness_m cladding fire_wall hole",
    "Where does it go?": "site: outdoor_place outdoor_height_m anchor_base anchor_ultimate_n line_run_m line_rise_m "
    "drain",
    "What is around the indoor unit?": "site: head_above_m head_beside_m head_blows head_studs head_access "
    "drain_run_m drain_drop_m",
    "Where does its power come from?": "site: circuit panel_distance_m panel_spaces wiring",
    "What is around the outdoor unit?": "site: boundary_m gas_meter_m vents_m bedroom_window_m outdoor_front_m "
    "outdoor_back_m snow_m flood salt_air door_swing",
    "Your time and help": "work: hour_value_usd_per_h days hours_per_day_h helper helper_usd_per_h handyman_usd_per_h",
    "What have you done before?": "work: skill_masonry skill_bracket skill_torque",
    "Who would finish it for you?": "work: contractor_finishes",
    "How long must you wait for others?": "work: contractor_wait_d electrician_wait_d permit_wait_d "
    "delivery_wait_d interim",
    "Which of these tools have you?": "",
    "Have you a quote?": "quote: total_usd wait_d date equipment electrical permit removal warranty labour_warranty_yr",
}
# What is folded, and what stands before and after the fields of a question.
FOLDED: Final = ("What is around the indoor unit?", "What is around the outdoor unit?")
BEFORE: Final[dict[str, Callable[[], None]]] = {"Your time and help": hour_value.draw}
AFTER: Final[dict[str, Callable[[], None]]] = {
    "What is around the indoor unit?": sketches.draw_wall,
    "What is around the outdoor unit?": sketches.draw_site,
    "Which of these tools have you?": tool_taps.draw,
    "Have you a quote?": quote_lines.draw,
}


def ask(title: str, fields_of: str) -> None:
    """Ask a question, with what belongs to it."""
    section, _, names = fields_of.partition(": ")
    if title not in FOLDED:
        st.subheader(title)
    BEFORE.get(title, list)()
    draw = functools.partial(fields.folded, title) if title in FOLDED else fields.draw
    draw(*(f"{section}.{name}" for name in names.split()))
    AFTER.get(title, list)()


st.title("Who does each job, what does that cost in cash, hours and days, and what may you not do?")
present = now.present()
if present.answer is not None:
    board.draw(present.answer)
    look.said(return_sentence(present.answer.result, now.look()), kind="statement")
for question, names in QUESTIONS.items():
    ask(question, names)
if present.answer is not None:
    risks.draw(present.answer)
fields.expert("work.mishap_frac", "work.mishap_usd")
dates.draw(present.answer)
if present.answer is not None:
    board.totals(present.answer)
closing.draw("work", present.answer, next_page="answer", next_words="See the answer")
