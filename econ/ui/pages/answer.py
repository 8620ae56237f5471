"""Answer: which one, how sure, and what to find out before spending."""

import streamlit as st

from econ.ui import checked, closing, look, now, verdict

st.title("Which one, how sure, and what should I find out before I spend?")
present = now.sure()
if present.answer is None:
    look.said("Four things give a first look: room kind, size, town, and what cools it now.")
    closing.ask_first()
else:
    verdict.draw(present.answer)
    look.pictures(present.answer, "running_total", "first_cost", "calendar", "lifetime")
    with st.expander("Need and degree days"):
        look.pictures(present.answer, "need", "heat_source")
    verdict.failure(present.answer)
    verdict.not_counted(present.answer)
    st.subheader("What could hurt someone or undo the work")
    checked.draw(present.answer)
    closing.draw("answer", present.answer, next_page="report", next_words="Print it or hand it over")
    now.refine()
