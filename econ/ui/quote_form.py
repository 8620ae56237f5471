"""What a person types of a quote: total, ticks, dates, and its lines, each with what it is for."""

from html import escape
from typing import Final

import streamlit as st

from econ.case.edit import with_fields, with_quote, without_quote
from econ.case.quote_text import QuoteText, read_quote
from econ.case.quotes import with_counted
from econ.case.schema import case_from, plain
from econ.installation.quote import LINE_KINDS
from econ.report.words.quote import KIND_WORDS, exact
from econ.ui import fields, look, state

PARTS: Final = ("equipment", "electrical", "permit", "removal", "warranty")
FIRST: Final = (
    ("quote.total_usd", "offer.name", "quote.date", "offer.valid_until", "quote.wait_d", "offer.start"),
    tuple(f"quote.{part}" for part in PARTS),
    ("quote.labour_warranty_yr", "offer.parts_warranty_yr", "offer.returns", "hired.size", "hired.grade"),
)
SEEN: Final = ("kit.price_usd", "kit.count", "kit.line_set_m", "offer.between_usd", "offer.filled_in_by")
OTHER: Final = (
    "total_usd", "name", "date", "valid_until", "wait_d", "start", *PARTS, "labour_warranty_yr", "parts_warranty_yr",
    "returns", "size", "grade", "filled_in_by",
)  # fmt: skip

SAMPLES: Final[dict[str, tuple[str, dict[str, object], dict[str, object]]]] = {
    "itemised": (
        "Try an invented quote, line by line",
        {"total_usd": 5450, "wait_d": 35, "labour_warranty_yr": 2, **dict.fromkeys(PARTS, "yes")},
        {
            "name": "Invented quote",
            "lines": "Unit and line set 2,350\nElectrical 780\nMaterials 310\nLabour 1,150\nPermit 140\n"
            "Warranty and call-back 260\nOverhead and profit 460",
        },
    ),
    "total": (
        "Try an invented quote that says little",
        {"total_usd": 4550, "equipment": "yes", "electrical": "not_said", "permit": "yes"},
        {"name": "Invented quote", "lines": "Supply and install one unit\nTotal 4,550"},
    ),
}
"""Quotes made up by us, to see the page at work."""

_HOW: Final = (
    "Paste it as it stands: one row a line, words first and the amount last. Say for each line what it is for; a guess "
    "is offered, and counts only once you take it."
)
_LINES_PX: Final = 210


def samples() -> None:
    """Offer quotes made up by us."""
    with st.container(horizontal=True):
        for key, (words, _, _) in SAMPLES.items():
            st.button(words, key=f"sample_{key}", on_click=_take_sample, args=(key,))


def _take_sample(key: str) -> None:
    _, quote, offer = SAMPLES[key]
    case = with_fields(state.current_case(), "quote", quote)
    case = with_fields(case, "offer", {**dict.fromkeys(("kinds", "valid_until", "start")), **offer})
    state.replace(case, *(f"quote.{name}" for name in quote), "offer.lines")


def ask_first() -> None:
    """Ask for the quote that is counted."""
    for paths in FIRST[:2]:
        fields.draw(*paths)
    lines("offer")
    with st.expander("Warranty, size and class"):
        fields.draw(*FIRST[2])
    with st.expander("The kit that was seen, and an offer between the two"):
        fields.draw(*SEEN)
    st.button("Take this quote away", key="quote_away", on_click=_take_away)


def _take_away() -> None:
    """Leave the case without the quote: hiring is counted from own items again."""
    tables = {name: part for name, part in plain(state.current_case()).items() if name not in ("quote", "offer")}
    state.replace(case_from(tables), *(f"quote.{name}" for name in ("total_usd", "date")), "offer.lines")


def lines(section: str) -> None:
    """Draw the box for the lines, what was not read, and what each line is for.

    `section` is "offer" or "quotes[n]".
    """
    path, key = f"{section}.lines", f"w_{fields.slug(section)}_lines"
    refused = state.refused(path)
    state.put(key, refused.typed if refused else state.value(path) or "")
    st.text_area(
        "Lines of the quote", key=key, height=_LINES_PX, help=_HOW, on_change=_pasted, args=(path, key),
        placeholder="Unit and line set 2,350\nNew circuit 780\nLabour 1,150\n…",
    )  # fmt: skip
    if refused:
        st.html(fields.fault_html(refused.fault))
    read = read_quote(state.value(path) or "", path)
    for fault in read.faults:
        st.html(fields.fault_html(fault, f"row {fault.path.rpartition(' ')[2]}:"))
    _kinds(section, read)


def _pasted(path: str, key: str) -> None:
    typed = str(st.session_state[key])
    if typed.strip():
        state.give(path, typed, typed)
    else:
        state.take_back(path)


def _kinds(section: str, read: QuoteText) -> None:
    told = dict(state.value(f"{section}.kinds") or ())
    amounts = [line for line in read.lines if line.cents is not None]
    guesses = {line.text: line.guess for line in amounts if line.text not in told and line.guess != "not_said"}
    for at, line in enumerate(amounts):
        _kind(section, at, (line.text, exact(line.cents or 0), line.guess), told.get(line.text))
    if guesses:
        st.button(
            f"Take the {len(guesses)} guesses as they are", key=f"guess_{fields.slug(section)}", on_click=_sort,
            args=(section, guesses), type="primary",
        )  # fmt: skip
    words = [line.text for line in read.lines if line.cents is None]
    if words:
        look.said(f"Rows without an amount, kept as words: {'; '.join(words)}.", kind="plain")
    for total in read.totals:
        look.said(f"“{total.text}” sums up others and is no line: {exact(total.cents or 0)}.", kind="plain")
    if amounts:
        _sum(section, sum(line.cents or 0 for line in amounts))


def _kind(section: str, at: int, line: tuple[str, str, str], told: str | None) -> None:
    """Draw one line: its words, its amount, and what it is for."""
    text, amount, guess = line
    key = f"w_{fields.slug(section)}_kind_{at}"
    state.put(key, told)
    with st.container(horizontal=True, vertical_alignment="center", key=f"line_{fields.slug(section)}_{at}"):
        st.html(f'<span class="quote_line"><span>{escape(text)}</span> <b>{amount}</b></span>', width="stretch")
        st.selectbox(
            f"What is it for: {look.literal(text)}", LINE_KINDS, index=None, key=key,
            format_func=lambda kind: KIND_WORDS[kind].capitalize(), placeholder=f"A guess: {KIND_WORDS[guess]}?",
            label_visibility="collapsed", on_change=_chosen, args=(section, text, key), width=230,
        )  # fmt: skip


def _chosen(section: str, text: str, key: str) -> None:
    _sort(section, {text: st.session_state[key]})


def _sort(section: str, kinds: dict[str, str | None]) -> None:
    """Say what lines are for; None leaves a line to its guess again."""
    told = dict(state.value(f"{section}.kinds") or ()) | kinds
    state.give(f"{section}.kinds", {text: kind for text, kind in told.items() if kind})


def _sum(section: str, cents: int) -> None:
    """Say whether the lines come to the total."""
    path = "quote.total_usd" if section == "offer" else f"{section}.total_usd"
    said = state.value(path)
    if said is None or said.is_unknown:
        look.said(f"The lines come to {exact(cents)}. Say the total above.", kind="statement")
        return
    apart = round(100.0 * said.likely) - cents
    if not apart:
        look.said(f"The lines come to the total, {exact(cents)}.", kind="statement")
        return
    side = "less than" if apart > 0 else "more than"
    look.said(f"The lines come to {exact(cents)}, {exact(abs(apart))} {side} the total.", kind="statement")


def others() -> None:
    """Ask for other quotes, one folded part each."""
    for at, quote in enumerate(state.current_case().quotes):
        with st.expander(look.literal(quote.name or f"Quote {chr(ord('B') + at)}")):
            fields.draw(*(f"quotes[{at}].{name}" for name in OTHER))
            lines(f"quotes[{at}]")
            with st.container(horizontal=True):
                st.button("Count this one in the comparison", key=f"quote_count_{at}", on_click=_count, args=(at,))
                st.button("Take this quote away", key=f"quote_away_{at}", on_click=_less, args=(at,))
    st.button("Add another quote", key="quote_more", on_click=_more)


def _more() -> None:
    state.replace(with_quote(state.current_case()))


def _less(at: int) -> None:
    state.replace(without_quote(state.current_case(), at))


def _count(at: int) -> None:
    """Let another quote be the one that the comparison counts."""
    state.replace(with_counted(state.current_case(), at))
