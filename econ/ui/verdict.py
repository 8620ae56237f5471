"""The verdict and the four cards: what the answer page shows first."""

from html import escape

import streamlit as st

from econ.case.edit import answer_counts
from econ.evaluate.failure import failures
from econ.kernel.alternative import ALTERNATIVES
from econ.report import tables
from econ.report.style import NAMES
from econ.report.words import counts as count_words
from econ.report.words import failure as failure_words
from econ.report.words import find_first, money
from econ.report.words.beneath import beneath
from econ.report.words.not_counted import NOT_COUNTED, break_even_lines
from econ.report.words.verdict import answer_text
from econ.report.words.waiting import cool_day_sentence
from econ.ui import cards, fields, look, now, paying, state, words
from econ.ui.ways import ways
from econ.uncertainty.answer import Answer


def draw(answer: Answer) -> None:
    """Draw verdict, cards, what they were made from, and when extra money comes back."""
    reader = now.look()
    look.said(find_first.first_look_text(answer), kind="first_look")
    look.said(answer_text(answer), kind="verdict")
    look.said(" ".join(beneath(answer)))
    look.said(_first_cool_day(answer))
    look.said(now.turned())
    st.html(cards.cards_html(ways(answer, reader), state.theme(), state.link_query()))
    counts = answer_counts(state.current_case())
    made = count_words.answers_text(counts["yours"], counts["usual"], counts["not_known"])
    look.said(f"{made.capitalize()}; {answer.draws_used:,} tries.", kind="made_from")
    _find_first(answer)
    fields.draw("money.base_case")
    with st.expander("Compare in figures"):
        look.table(tables.comparison(answer))
    paying.under_the_answer(answer)
    with st.expander("When does extra money come back?"):
        st.markdown("\n".join(f"- **{line}**" if "compared" in line else f"- {line}" for line in _paybacks(answer)))


def failure(answer: Answer) -> None:
    """Say what a failure in July of year 5 means for each way, folded."""
    with st.expander(failure_words.TITLE):
        look.said(failure_words.LEAD, kind="plain")
        found = failures(answer.result, answer.sheet, answer.decision_date)
        for tab, each in zip(st.tabs([NAMES[one.way] for one in found]), found, strict=True):
            with tab:
                st.html(words.entries_html(failure_words.rows(each, now.look()), kind="one"))


def not_counted(answer: Answer) -> None:
    """Say what no figure holds, and what it would have to be worth a year to turn the choice."""
    st.subheader("Not counted")
    st.html("".join(f"<p>{escape(line)}</p>" for line in (NOT_COUNTED, *break_even_lines(answer))))


def _find_first(answer: Answer) -> None:
    """Draw what to find out before spending, or that nothing would change the choice."""
    st.subheader("Find this out first")
    found = find_first.cards(answer)
    if not found:
        look.said(find_first.none_text(answer), kind="plain")
        return
    st.html(f'<div class="finds">{"".join(map(_find, found))}</div>')
    look.said(find_first.all_text(answer), kind="plain")


def _find(card: find_first.Card) -> str:
    guide = card.guide
    return (
        f'<section class="find"><h3>{escape(guide.what)}</h3><p>{escape(guide.how)} About {guide.minutes} minutes.</p>'
        f"<p>{escape(card.change)}</p></section>"
    )


def _first_cool_day(answer: Answer) -> str:
    """Return from when the way named cools, how far that may move, and by when to decide for it."""
    winner = answer.verdict.winner
    if winner is None:
        return ""
    return cool_day_sentence(answer.result, answer.result.alternatives[ALTERNATIVES.index(winner)], now.look())


def _paybacks(answer: Answer) -> list[str]:
    named = [f"{NAMES[name]}: {money.payback_text(answer.result, name)}" for name in ALTERNATIVES]
    return [line.replace("$", "\\$") for line in named]
