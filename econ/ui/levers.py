"""The what-if page: sentences, levers that can be pulled without changing the case, swings, and a map."""

from typing import Final

import streamlit as st

from econ.report import what_if as told
from econ.report.pictures import choice_map, swing
from econ.report.style import PLOT_CONFIG
from econ.report.words.glossary import short_words
from econ.ui import cached, look, now
from econ.uncertainty.answer import Answer
from econ.uncertainty.what_if import WhatIf

SLIDERS: Final = 5


def draw(answer: Answer) -> None:
    """Draw what would change the choice."""
    with st.spinner("Trying what would change the choice …"):
        found = cached.what_if(answer)
    for sentence in told.sentences(found, now.look()):
        look.said(sentence)
    if found is None:
        return
    pull(answer, found)
    st.subheader("Where the choice turns")
    look.table(told.tips_table(found, now.look()))
    _any(answer)
    with st.expander("The cheapest way by how long you stay"):
        look.table(told.years_table(found))
    _swings(answer, found)
    _map(answer, found)


def _any(answer: Answer) -> None:
    """Draw where any one figure that is asked for turns the choice."""
    labels, sheet = cached.labels(answer), answer.sheet
    ranged = [path for path, low, high in zip(sheet.path, sheet.low, sheet.high, strict=True) if low < high]
    path = st.selectbox(
        "Where does another figure turn it?",
        sorted(ranged, key=labels.__getitem__),
        index=None,
        format_func=labels.__getitem__,
        key="w_any_tip",
        placeholder="Choose a figure",
    )
    if path is not None and (tip := cached.tip(answer, path)) is not None:
        look.said(told.any_tip(tip, labels[path], sheet.entry(path).unit, now.look()))


def pull(answer: Answer, found: WhatIf) -> None:
    """Draw a few levers; pulling one shows another answer and leaves the case as it is."""
    st.subheader("Try other values")
    st.caption("These try something out. Your case stays as it is.")
    moved: dict[str, float] = {}
    paths = [tip.path for tip in found.tips if tip.path in answer.sheet.place][:SLIDERS]
    for path in paths:
        tip = next(tip for tip in found.tips if tip.path == path)
        step = (tip.high - tip.low) / 100.0
        value = st.slider(
            told.words_of(path).capitalize(), tip.low, tip.high, tip.now, step, key=f"w_lever_{path}", format="%.4g"
        )
        st.caption(f"Now {told.value_text(path, tip.now, now.look())}; here {told.value_text(path, value, now.look())}")
        moved[path] = value
    then = cached.moved_result(answer, moved)
    look.said(told.moved_sentence(answer, then), kind="statement")
    look.table(told.moved_table(answer, then))


def _swings(answer: Answer, found: WhatIf) -> None:
    labels = cached.labels(answer)
    st.subheader("What moves the lead")
    sentence = swing.statement(found, labels)
    look.said(sentence, kind="statement")
    figure = swing.figure(found, labels, now.look())
    st.plotly_chart(figure, theme=None, config=PLOT_CONFIG, key="c_swings", alt=sentence)
    drawn = (labels[path] for path in found.swings.path[: swing.shown_count(found)])
    look.said(short_words(" ".join(drawn)), kind="small")
    with st.expander("Show as a table"):
        look.table(swing.table(found, labels))


def _map(answer: Answer, found: WhatIf) -> None:
    st.subheader("Two at a time")
    sentence = choice_map.statement(found)
    look.said(sentence, kind="statement")
    here = answer.sheet.entry(found.map_paths[0]).likely, answer.sheet.entry(found.map_paths[1]).likely
    figure = choice_map.figure(found, here, now.look())
    st.plotly_chart(figure, theme=None, config=PLOT_CONFIG, key="c_map", alt=sentence)
    with st.expander("Show as a table"):
        look.table(choice_map.table(found, now.look()))
