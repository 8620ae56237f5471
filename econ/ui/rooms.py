"""The rooms of a case: which one is on the page, its drawing, one more or one less."""

import streamlit as st

from econ.case.edit import add_room, remove_room
from econ.report import bills
from econ.report.charts import CHARTS
from econ.report.words import load
from econ.ui import look, now, state
from econ.uncertainty.answer import Answer

_CHOSEN = "room_index"


def pictures(answer: Answer | None) -> tuple[str, ...]:
    """Return the pictures of a room's need; where the heat goes is shown once heat is asked for."""
    is_heated = answer is not None and bool(answer.result.rooms.loss_w.any())
    return ("heat_source", "heat_loss", "need") if is_heated else ("heat_source", "need")


def chosen() -> int:
    """Return the index of the room on the page; offer the choice where there are several."""
    rooms = state.current_case().rooms
    index = min(int(st.session_state.get(_CHOSEN, 0)), len(rooms) - 1)
    if len(rooms) > 1:
        st.session_state["w_room"] = index
        st.segmented_control(
            "Room on this page",
            range(len(rooms)),
            format_func=lambda place: look.literal(rooms[place].name or "") or f"Room {place + 1}",
            key="w_room",
            on_change=_choose,
            required=True,
        )
    return index


def sentence(answer: Answer | None) -> str:
    """Return what the room needs in one sentence, drying before any size; without a town, what is missing."""
    if answer is None:
        return "Choose a town first, and the need of this room stands here."
    found = answer.result.rooms
    damp = [said for place in range(len(found.name)) if (said := load.moisture_sentence(found, place))]
    return " ".join([*damp, CHARTS["heat_source"].statement(answer.result, now.look())])


def how_found(answer: Answer | None, index: int) -> None:
    """Say by which method the room's loads were found, and show the hand check, folded."""
    if answer is None:
        return
    found = answer.result.rooms
    design, block = load.design_sentence(found, index, now.look()), load.block_sentence(found, now.look())
    for said in (design, block, bills.used_sentence(answer)):
        if said:
            look.said(said, kind="statement")
    with st.expander("Check the heat by hand, with degree-days"):
        look.said(load.hand_sentence(found, index, now.look()), kind="statement")
        st.dataframe(load.hand_table(found), hide_index=True, key="t_hand")


def add_or_remove(index: int) -> None:
    """Offer one more room, and taking this one away where it is not the only one."""
    with st.container(horizontal=True):
        st.button("Add a room", on_click=_add)
        if len(state.current_case().rooms) > 1:
            st.button("Take this room away", on_click=_remove, args=(index,))


def _choose() -> None:
    if st.session_state["w_room"] is not None:
        st.session_state[_CHOSEN] = st.session_state["w_room"]


def _add() -> None:
    case = add_room(state.current_case())
    st.session_state[_CHOSEN] = len(case.rooms) - 1
    state.replace(case)


def _remove(index: int) -> None:
    state.replace(remove_room(state.current_case(), index))
    st.session_state[_CHOSEN] = 0
