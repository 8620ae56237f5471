"""Work: who does each job, what that costs in cash, hours and days, and what may not be done."""

from typing import Final

import streamlit as st

from econ.report.words.scope import scope_lines
from econ.ui import board, closing, fields, look, now, sketches, tool_taps

SITE: Final = {
    "What is allowed here?": "occupancy permit owner_may_mechanical owner_may_electrical association",
    "What wall is drilled?": "wall wall_thickness_m hole",
    "Where does it go?": "outdoor_place outdoor_height_m anchor_base anchor_ultimate_n line_run_m line_rise_m drain",
    "Where does its power come from?": "circuit panel_distance_m panel_spaces wiring",
}
PLACES: Final = {
    "What is around the indoor unit?": "head_above_m head_beside_m head_blows head_studs head_access drain_run_m "
    "drain_drop_m",
    "What is around the outdoor unit?": "boundary_m gas_meter_m vents_m bedroom_window_m outdoor_front_m "
    "outdoor_back_m snow_m door_swing",
}
WORK: Final = {
    "Your time and help": "hour_value_usd_per_h days hours_per_day_h helper helper_usd_per_h handyman_usd_per_h",
    "Who would finish it for you?": "contractor_finishes",
    "How long must you wait for others?": "contractor_wait_d electrician_wait_d permit_wait_d delivery_wait_d",
}
QUOTE: Final = {
    "Have you a quote?": "total_usd wait_d date equipment electrical permit removal warranty labour_warranty_yr",
}

st.title("Who does each job, what does that cost in cash, hours and days, and what may you not do?")
present = now.present()
if present.answer is not None:
    board.draw(present.answer)
    sketches.draw_wall()
for section, groups, draw in (
    ("site", SITE, fields.group),
    ("site", PLACES, fields.folded),
    ("work", WORK, fields.group),
    ("quote", QUOTE, fields.group),
):
    for title, names in groups.items():
        draw(title, *(f"{section}.{name}" for name in names.split()))
for sentence in scope_lines(present.answer) if present.answer is not None else ():
    look.said(sentence, kind="statement")
tool_taps.draw()
fields.expert("work.mishap_frac", "work.mishap_usd")
look.pictures(present.answer, "calendar")
if present.answer is not None:
    board.totals(present.answer)
closing.draw("work", present.answer, next_page="answer", next_words="See the answer")
