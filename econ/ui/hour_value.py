"""What an hour of the user's is worth: taps for the usual answers, and what the answer would be at nothing."""

from typing import Final

import streamlit as st

from econ.case.quantity import Amount
from econ.report.words.hour import at_nothing
from econ.ui import cached, look, now, state

PATH: Final = "work.hour_value_usd_per_h"
_KEY: Final = "w_hour_taps"
TAPS: Final[dict[float, str]] = {0.0: "I enjoy it: 0", 15.0: "$15", 25.0: "$25", 40.0: "$40"}


def draw() -> None:
    """Draw the taps, above the field in which any value or range may be typed."""
    value: Amount | None = state.value(PATH)
    taken = value.likely if value is not None and not value.is_unknown else None
    st.session_state[_KEY] = taken if taken in TAPS else None
    st.pills(
        "What is an hour of yours worth to you?", list(TAPS), format_func=TAPS.__getitem__, key=_KEY, on_change=_tapped
    )
    answer = now.present().answer
    if answer is not None and answer.sheet.entry(PATH).likely > 0.0:
        look.said(at_nothing(answer, cached.moved_result(answer, {PATH: 0.0})), kind="fits")


def _tapped() -> None:
    tapped: float | None = st.session_state[_KEY]
    if tapped is None:
        state.take_back(PATH)
    else:
        state.give(PATH, tapped)
