"""Plan: what could hurt someone or undo the work, who signs for it, and what comes next."""

import streamlit as st

from econ.ui import closing, look, now, plan_page

st.title("What could hurt someone or undo the work, and what do I do next?")
present = now.present()
if present.answer is None:
    look.said("A plan follows from a first look: room kind, size, town, and what cools it now.")
    closing.ask_first()
else:
    plan_page.draw(present.answer)
    closing.onward("report", "Print it or hand it over")
