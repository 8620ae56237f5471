"""Figures: every number opened, with its inputs and sources, and a way to change any of them."""

import streamlit as st

from econ.ui import closing, headline, look, now, opened

st.title("Where does each number come from, and what if it is different?")
present = now.present()
if present.answer is None:
    look.said("Choose a town first: then every figure stands here.")
    closing.ask_first()
else:
    st.subheader("Open a headline figure")
    headline.draw(present.answer)
    st.subheader("First cost, line by line")
    opened.first_cost(present.answer)
    st.subheader("Every input, with its range and source")
    opened.inputs(present.answer)
    st.subheader("Change a figure that no form asks for")
    opened.change(present.answer)
    closing.draw("figures", present.answer, next_page="answer", next_words="Back to the answer")
