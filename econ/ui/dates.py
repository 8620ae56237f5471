"""Dates and waiting: the calendar, and what waiting means for each way."""

from html import escape

import streamlit as st

from econ.report.words import waiting
from econ.ui import look, now
from econ.uncertainty.answer import Answer


def draw(answer: Answer | None) -> None:
    """Draw the calendar, what each wait means side by side, and by which calendar days are counted."""
    if answer is None:
        return
    look.picture("calendar", answer)
    st.subheader("What does waiting mean?")
    look.table(waiting.table(answer.result, now.look()))
    sentences = waiting.sentences(answer, now.look())
    st.html("".join(f'<p class="small">{escape(sentence)}</p>' for sentence in sentences))
