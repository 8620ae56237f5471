"""Saved: the cases kept here, their versions, two side by side, and files in and out."""

import streamlit as st

from econ.ui import fields, lending, look, saved_list, side_by_side, versions

st.title("Which case do you want to work on?")
look.said("Every change is kept as you make it. Nothing leaves the machine that runs this program.")
st.subheader("This case")
fields.draw("record.name", "record.filled_in_by", "record.notes")
saved_list.file_out()
with st.expander("Its versions: come back to an earlier one"):
    versions.draw()
with st.expander("Show it to somebody else"):
    lending.draw()
st.subheader("All cases")
saved_list.draw()
st.subheader("Two cases side by side")
side_by_side.draw()
st.subheader("From a file")
saved_list.file_in()
