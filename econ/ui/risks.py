"""What may go wrong in the work and what to do then, for own work and for hiring."""

import streamlit as st

from econ.ui import cached, look
from econ.uncertainty.answer import Answer


def draw(answer: Answer) -> None:
    """Draw, for each of both ways, what is set aside, who would finish it, incentive, warranty and plan B."""
    st.subheader("What if it goes wrong?")
    for risk in cached.way_risks(answer):
        with st.expander(risk.title):
            for sentence in risk.sentences:
                look.said(sentence, kind="statement")
            look.table(risk.plan_b)
