"""Report: what to hand to the person who was not here."""

import streamlit as st

from econ.ui import closing, look, now, printing

st.title("What do I hand to the person who wasn't here?")
present = now.sure()
if present.answer is None:
    look.said("A first look comes first: room kind, size, town, and what cools it now.")
    closing.ask_first()
else:
    printing.draw(present.answer)
    closing.draw("report", present.answer, next_page="cases", next_words="Keep, copy or export this case")
    now.refine()
