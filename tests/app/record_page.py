"""The record alone, for tests: what the plan page shows beneath its steps."""

import streamlit as st

from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.ui import look, now, record, state, strip

st.set_page_config(layout="wide")
look.dress()
st.html("<h1>Record</h1>")
state.open_case()
state.turn_to("record")
strip.draw()
way = Alternative(st.selectbox("Way", [name.value for name in ALTERNATIVES], index=2, key="way"))
found = now.present().answer
if found is not None:
    record.draw(found, way)
