"""Under a quote: what it leaves out and what is counted on top for that, and how it stands beside a built-up price."""

import streamlit as st

from econ.evaluate.own_items import hired_usd
from econ.evaluate.sheet import point
from econ.report.words.scope import bridge_sentence, scope_lines
from econ.tables.tasks import installation_tables
from econ.ui import look, now


def draw() -> None:
    """Draw what the quote lacks, part by part, and how it compares."""
    if (answer := now.present().answer) is None:
        return
    for sentence in scope_lines(answer):
        look.said(sentence, kind="statement")
    usual = hired_usd(answer.structure, point(answer.sheet), installation_tables())
    look.said(bridge_sentence(answer, usual), kind="fits")
    if st.button("See it step by step, with its lines", key="to_quote"):
        st.switch_page("econ/ui/pages/quote.py")
