"""What if: what would have to be different for the answer to change."""

import streamlit as st

from econ.ui import closing, levers, look, now, paying

st.title("What would have to be different for the answer to change?")
present = now.present()
if present.answer is None:
    look.said("A first look comes first: room kind, size, town, and what cools it now.")
    closing.ask_first()
else:
    levers.draw(present.answer)
    paying.draw(present.answer)
    closing.draw("what_if", present.answer, next_page="cases", next_words="Keep, copy or export this case")
