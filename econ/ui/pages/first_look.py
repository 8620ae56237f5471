"""First look: seven taps, or a ready-made case to open."""

import streamlit as st

from econ.ui import closing, fields, look, places, start

st.title("A room too hot, too cold or too damp: do it yourself, hire it, or neither?")
look.said(
    "Answer what you can. Only the town is needed; everything else has a usual value, and “I don't know” is an answer."
)
start.other_ways()

st.subheader("1. What room is it?")
start.room_tiles()
st.subheader("2. About how big is it?")
fields.draw("rooms[0].floor_area_m2")
st.subheader("3. Where is it?")
places.ask()
st.subheader("4. What cools and heats it now?")
fields.draw("now.cooling", "now.heat")
st.subheader("5. What must it do?")
fields.draw("use.cool", "use.heat", "use.dry")
st.subheader("6. Is it yours?")
fields.draw("site.occupancy")
st.subheader("7. Have you a quote?")
fields.draw("quote.total_usd", "quote.wait_d")
closing.to_answer()
st.divider()
start.ready_cases()
