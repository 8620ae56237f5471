"""Guide: how the program is used, and why its numbers may be believed."""

import streamlit as st

from econ.ui import guide, look

st.title("How is this used, and why should I believe it?")
guide.example()
st.subheader("Methods")
look.said(
    "What each part does, in the words of the program itself, with the published source it rests on.", kind="fits"
)
guide.method_list()
st.subheader("Data")
look.said("No number is looked up elsewhere while you work: the tables travel with the program.", kind="fits")
guide.source_table()
