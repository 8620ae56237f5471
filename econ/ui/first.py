"""Fix the room first: what to do to the room before a size, with a tick beside each."""

from html import escape

import streamlit as st

from econ.report import room_first
from econ.ui import cached, fields, look, now, state
from econ.uncertainty.answer import Answer

PATH = "measures.chosen"


def draw(answer: Answer | None) -> None:
    """Draw the question about the house system, and each measure with what it does and a tick to take it."""
    st.subheader("Fix the room first", anchor="first")
    if answer is not None:
        found = cached.load_measures(answer)
        look.said(room_first.headline(found), kind="statement")
    fields.draw("now.house_system")
    if answer is None:
        return
    for place, each in enumerate(found.measures):
        if each.is_offered or each.is_chosen:
            _ask(each.key, each.label)
            text = room_first.effect_text(found, place, now.look())
            st.html(
                f'<p class="state">{escape(each.does[:1].upper() + each.does[1:])}. {escape(text)} '
                f"<br>{escape(each.words[:1].upper() + each.words[1:])}.</p>"
            )
    st.html(f'<p class="state">{escape(" ".join((*room_first.sentences(found)[1:], room_first.basis())))}</p>')
    with st.expander("Show as a table"):
        st.dataframe(room_first.table(found, now.look()), hide_index=True, key="t_first")


def before_size(answer: Answer | None) -> None:
    """Say, before a size, what the room itself would give, with the way to it."""
    if answer is not None:
        words = room_first.headline(cached.load_measures(answer))
        look.said(f"Before a size: {words[:1].lower()}{words[1:]}", kind="statement")
        st.page_link("econ/ui/pages/room.py", label="Fix the room first")


def _ask(key: str, label: str) -> None:
    st.session_state[f"w_measure_{key}"] = key in (state.value(PATH) or ())
    st.checkbox(label, key=f"w_measure_{key}", on_change=_taken, args=(key,))


def _taken(key: str) -> None:
    chosen = [each for each in state.value(PATH) or () if each != key]
    if st.session_state[f"w_measure_{key}"]:
        chosen.append(key)
    if chosen:
        state.give(PATH, chosen)
    else:
        state.take_back(PATH)
