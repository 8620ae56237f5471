"""What a quote comes to, on screen: the bridge and its bars, ranges of lines, quotes side by side, the mirror."""

from html import escape
from typing import Any, Final

import plotly.graph_objects as go
import streamlit as st

from econ.case.form import FieldInfo, field_at
from econ.evaluate.quote_price import trade_spreads
from econ.installation.quote_bridge import Step
from econ.report.numbers import first_cost_money
from econ.report.pictures import bridge as picture
from econ.report.pictures import quote_ranges
from econ.report.style import PLOT_CONFIG
from econ.report.words import quote as words
from econ.report.words import quote_equipment, quote_lines, quotes
from econ.ui import cached, entry, fields, look, now
from econ.uncertainty.answer import Answer
from econ.uncertainty.quote import QuoteStudy, quote_study
from econ.uncertainty.quotes import compared

_FONT: Final = '"Source Sans", sans-serif'


def study_of(answer: Answer) -> QuoteStudy:
    """Return the quote of the open case explained."""
    return quote_study(answer, cached.quote_price(answer))


def drawn(figure: go.Figure, key: str, alt: str) -> None:
    """Show one figure."""
    figure.update_layout(font_family=_FONT)
    st.plotly_chart(figure, theme=None, config=PLOT_CONFIG, key=key, alt=alt)


def bridge(answer: Answer, study: QuoteStudy, cut: str) -> None:
    """Draw the bridge from kit to quote, and open each of its bars; a job that is none for a kit has none."""
    found = study.bridges[cut]
    statement = words.statement(answer, study, found)
    look.said(statement)
    look.said(words.verdict(study, found), kind="statement")
    if study.is_for_kit:
        bars = picture.bars(found, study.own.step_usd[cut])
        drawn(picture.figure(bars, now.look()), "c_quote_bridge", statement)
        st.caption(words.HOLLOW)
        with st.expander("Open each bar"):
            st.html(opened(answer, study, cut))
        look.said(words.inside_sentence(study, found, cut), kind="plain")
        look.said(words.rest_sentence(found), kind="statement")
    look.points(words.missing_sentences(study, found))


def unquoted(study: QuoteStudy) -> str:
    """Return what stands in the place of a quote."""
    price = study.own.price_usd
    return (
        f"Without a quote hiring is counted at our own items: {first_cost_money(price.likely)}, likely "
        f"{first_cost_money(price.low)} to {first_cost_money(price.high)}. The total alone is enough to begin."
    )


def assumed(answer: Answer) -> None:
    """Ask for what is assumed of any contractor, beside what is usual."""
    usual = trade_spreads(answer.case, cached.tables())
    fields.draw(*(f"trade.{name}" for name in usual))
    rows = [(field_at(f"trade.{name}"), spread) for name, spread in usual.items()]
    look.table(
        {
            "Taken now": [info.label for info, _ in rows],
            "Likely": [_term(info, spread.likely) for info, spread in rows],
            "Low to high": [f"{_term(info, spread.low)} to {_term(info, spread.high)}" for info, spread in rows],
            "Source": [spread.source for _, spread in rows],
        }
    )


def _term(info: FieldInfo, value: float) -> str:
    return entry.usual_text(value, value, value, fields.shown_as(info))


def opened(answer: Answer, study: QuoteStudy, cut: str) -> str:
    """Return every bar with its line items, and with our own items for it, as HTML that opens on a tap."""
    found = study.bridges[cut]
    return "".join(_opened(answer, study, step, cut) for step in (*found.steps, *found.missing))


def _opened(answer: Answer, study: QuoteStudy, step: Step, cut: str) -> str:
    title = f"{words.STEP_WORDS[step.key]}: {words.exact(step.cents)}"
    ours = words.own_item_sentences(study, step.key, cut)
    if step.key == "equipment":
        ours = (*ours, *quote_equipment.sentences(answer, cached.tables()))
    listed = "".join(f"<li>{escape(sentence)}</li>" for sentence in ours)
    beneath = f'<p class="small">Our own items for it:</p><ul class="points small">{listed}</ul>' if ours else ""
    return (
        f'<details class="bar"><summary>{escape(title)}</summary>{look.table_html(words.opened(step))}{beneath}'
        "</details>"
    )


def ranges(study: QuoteStudy) -> None:
    """Draw where each kind of line lies in the range that own items give."""
    rows = quote_lines.rows(study)
    if not rows:
        look.said("Paste the lines of the quote above, and each is set beside our own items here.", kind="plain")
        return
    statement = quote_lines.statement(study)
    look.said(statement, kind="statement")
    drawn(quote_ranges.ranges_figure(rows, now.look()), "c_quote_ranges", statement)
    look.table(quote_lines.table(study))
    if found := quote_lines.asks(study):
        look.said("Ask about this:", kind="statement")
        look.points(found)


def side_by_side(answer: Answer, study: QuoteStudy) -> None:
    """Draw several quotes on equal scope and service."""
    found = compared(answer, study.own, cached.tables())
    if len(found) < 2:
        return
    statement = quotes.statement(found)
    look.said(statement, kind="statement")
    drawn(quote_ranges.quotes_figure(found, now.look()), "c_quotes", statement)
    st.caption("In outline: what is added so that all do the same job. A part that is not said is never nothing.")
    look.table(quotes.table(found, study.own))


def mirror(answer: Answer, study: QuoteStudy) -> None:
    """Draw what the price of the kit leaves out where one does it oneself."""
    pieces = words.own_side_cents(answer, study)
    own = sum(cents for _, cents in pieces)
    statement = (
        f"The price of the kit leaves out about {words.round_money(own)}: tools, your own hours, risk, and what else "
        "it takes to make it work."
    )
    look.said(statement, kind="statement")
    drawn(picture.figure(picture.mirror_bars(study.kit_cents, pieces), now.look()), "c_quote_mirror", statement)
    with st.expander("Show as a table"):
        table: dict[str, Any] = {"Piece": ["the kit", *(label for label, _ in pieces), "yourself, all in"]}
        table["Amount"] = [
            words.exact(cents) for cents in (study.kit_cents, *(each for _, each in pieces), study.kit_cents + own)
        ]
        look.table(table)
