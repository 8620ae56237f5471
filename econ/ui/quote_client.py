"""The client's view of a quote, with no inputs and nothing private; and the contractor's own figures."""

from dataclasses import replace
from datetime import date
from html import escape
from typing import Final

import streamlit as st

from econ.case.private import handed_over
from econ.report.pictures import bridge as picture
from econ.report.words import own_trade, quote
from econ.report.words.otherwise import closed_sentence, otherwise_sentences
from econ.ui import fields, look, now, quote_show
from econ.uncertainty.answer import Answer
from econ.uncertainty.quote import QuoteStudy, option

PAGE: Final = "Quote"
VIEW: Final = "client_view"
_BARE: Final = "<style>[data-testid='stHeader'] { display: none !important; }</style>"
_HEAD: Final = ("letterhead.business", "letterhead.licence", "letterhead.prepared_for")
_PRIVATE: Final = ("labour_usd_per_h", "unit_usd", "overhead_frac", "profit_frac", "notes")


def is_on(page: str = PAGE) -> bool:
    """Return whether a page shows the client's view."""
    return page == PAGE and bool(st.session_state.get(VIEW))


def switch() -> None:
    """Offer the client's view."""
    st.button("Show what the client sees", key="client_on", on_click=_turn, args=(True,))


def _turn(shows: object) -> None:
    st.session_state[VIEW] = shows


def draw(answer: Answer) -> None:
    """Draw the client's view: head, bridge, what the quote holds, warranty, what they would take on, dates."""
    public = replace(answer, case=handed_over(answer.case))
    study = quote_show.study_of(public)
    st.html(_BARE)
    st.title("What does this quote buy?")
    st.html(head_html(public))
    if study.said is None:
        look.said("There is no quote yet.")
    else:
        _quote(public, study)
    st.subheader("What you would take on otherwise")
    look.points((*otherwise_sentences(public, now.look()), closed_sentence(public)))
    st.button("Back", key="client_off", on_click=_turn, args=(False,))


def _quote(answer: Answer, study: QuoteStudy) -> None:
    found = study.bridges[quote.cut_of(answer.case)]
    statement = quote.statement(answer, study, found)
    look.said(statement)
    if study.is_for_kit:
        quote_show.drawn(
            picture.figure(picture.bars(found, study.own.step_usd[quote.cut_of(answer.case)]), now.look()),
            "c_client_bridge",
            statement,
        )
        st.caption(quote.HOLLOW)
    look.points(quote.missing_sentences(study, found))
    st.subheader("What the quote holds")
    look.table(
        {label: [quote.SAID_WORDS[option(answer, f"quote.{part}")]] for part, label in quote.SCOPE_WORDS.items()}
    )
    st.subheader("Warranty, and if it fails")
    labour_yr = answer.sheet.entry("quote.labour_warranty_yr").likely
    look.points(quote.warranty_sentences(answer.case, labour_yr, option(answer, "quote.warranty")))
    st.subheader("Dates")
    dates = quote.date_sentences(answer.case, date.today(), now.look().this_year)
    look.points((*dates, quote.between_sentence(answer.case)))


def head_html(answer: Answer) -> str:
    """Return the head that the contractor typed; what was left out is a line to write on."""
    head = answer.case.letterhead
    blank = "____________________"
    by = f", licence {head.licence}" if head.licence else ""
    return (
        f'<p class="said">{escape(head.business or blank)}{escape(by)}</p>'
        f'<p class="fits">Prepared for {escape(head.prepared_for or blank)}. {quote.NO_CONTRACT}</p>'
    )


def ask(answer: Answer, study: QuoteStudy) -> None:
    """Ask a contractor for the head of the client's pages and for figures that stay here."""
    with st.expander("For the contractor: the client's pages, and your own figures"):
        fields.draw(*_HEAD)
        switch()
        look.said(own_trade.STAYS_HERE, kind="statement")
        fields.draw(*(f"private.{name}" for name in _PRIVATE))
        if table := own_trade.table(answer.case.private, study):
            look.said(own_trade.sentence(answer.case.private, study), kind="statement")
            look.table(table)
