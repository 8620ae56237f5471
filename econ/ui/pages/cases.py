"""Saved: the cases kept on this machine, and files in and out."""

import streamlit as st

from econ.ui import fields, look, saved_list

st.title("Which case do you want to work on?")
look.said("Every change is kept on this machine as you make it. Nothing leaves it.")
st.subheader("This case")
fields.draw("record.name", "record.filled_in_by", "record.notes")
saved_list.file_out()
st.subheader("All cases")
saved_list.draw()
st.subheader("From a file")
saved_list.file_in()
