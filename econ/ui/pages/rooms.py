"""Rooms: which of many rooms first, with this year's money."""

import streamlit as st

from econ.kernel.errors import EconError
from econ.report import rooms as told_rooms
from econ.ui import budget, building, building_file, closing, fields, look, state

MONEY = (
    "budget_usd", "budget_2_usd", "budget_3_usd", "own_hours_h", "electrician_d", "electrician_2_d",
    "electrician_3_d", "whose", "hot_hour_usd", "whole_flat", "panel_spare_a",
)  # fmt: skip
EXPERT = (
    "storey_m", "glass_small_m2", "glass_medium_m2", "glass_large_m2", "learning_frac", "learning_until", "volume_from",
    "volume_off_frac", "spare_frac", "rooms_per_trip", "electrician_day_h",
)  # fmt: skip


def plan(text: str) -> told_rooms.Told | None:
    """Return the plan of the rooms as they are, with all that is told of it; None where there is none yet."""
    try:
        return building.told_of(state.current_case(), text)
    except EconError as error:
        building_file.first_fault(error)
        return None


def show(told: told_rooms.Told) -> None:
    """Show the plan: what the money does, the floors, years and rooms, and who pays and saves."""
    first, *rest = told_rooms.sentences(told)
    look.said(first)
    building.tiles(told)
    look.points(rest)
    building_file.tray(told.table)
    budget.draw(told)
    budget.years(told)
    building.tables(told)
    budget.prints(told, state.current_case())
    building.panels(told)
    building.outdoor(told)
    building.closed(told)


st.title("Which rooms first, with this year's money?")
rooms = building_file.content()
shown = None
if not state.is_placed() and rooms is None:
    look.said("Many rooms are planned together here: each is worked out as one room is, then the money is shared out.")
    building_file.start()
elif not state.is_placed():
    look.said("Choose a town first: then every room is worked out.")
    closing.ask_first()
elif rooms is None:
    look.said("No rooms yet: paste them, upload a file, or open the sample building.")
    building_file.start()
elif (shown := plan(rooms)) is not None:
    show(shown)
if shown is not None:
    building_file.change(shown.table)
building_file.ask(opened=rooms is None)
st.subheader("Money, hours and what counts")
fields.draw(*(f"building.{name}" for name in MONEY))
st.subheader("Room types")
look.said(building.types_sentence(state.current_case(), shown), kind="statement")
if st.button("Change the types on the page Room", key="to_types"):
    st.switch_page("econ/ui/pages/room.py")
with st.expander("What many rooms share, and how words are counted"):
    fields.draw(*(f"building.{name}" for name in EXPERT))
    st.caption("Where nothing is said, these hold.")
    building.assumed()
closing.onward("answer", "See the answer for one room")
