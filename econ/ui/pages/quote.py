"""Quote: what the extra money buys, and whether anything is missing."""

import streamlit as st

from econ.report.words.quote import cut_of
from econ.ui import closing, fields, look, now, quote_client, quote_form, quote_show


def explained() -> None:
    """Draw the quote explained, or ask for its total."""
    answer = now.present().answer
    if answer is None:
        look.said("A first look comes first: room kind, size, town, and what cools it now.")
        closing.ask_first()
        return
    study = quote_show.study_of(answer)
    if study.said is None:
        fields.draw("quote.total_usd")
        quote_form.samples()
        look.said(quote_show.unquoted(study), kind="statement")
    else:
        quote_show.bridge(answer, study, cut_of(answer.case))
        if study.is_for_kit:
            fields.draw("trade.labour_at")
        st.subheader("What does the quote say?")
        quote_form.ask_first()
        st.subheader("Is each line usual?")
        quote_show.ranges(study)
        st.subheader("Have you other quotes?")
        quote_form.others()
        quote_show.side_by_side(answer, study)
        if study.is_for_kit:
            st.subheader("What does the price of the kit leave out?")
            quote_show.mirror(answer, study)
        with st.expander("What we assume of any contractor's costs"):
            quote_show.assumed(answer)
    quote_client.ask(answer, study)
    closing.draw("quote", answer, next_page="report", next_words="Print it")


if quote_client.is_on() and (shown := now.present().answer) is not None:
    quote_client.draw(shown)
else:
    st.title("What does the extra money buy, and is anything missing?")
    explained()
