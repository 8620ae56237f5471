"""The guide: a worked example to walk through, and the methods and sources behind the numbers."""

from datetime import date
from typing import Final

import streamlit as st

from econ.report.methods import PACKAGES, Method, methods
from econ.report.words.verdict import answer_text
from econ.ui import cached, look, shelf, state
from econ.ui.words import entries_html

_EXAMPLE: Final = "lower_level_cold"
_STEPS: Final = (
    ("room", "Room", "The room is drawn from its answers. Change the insulation and watch the strip at the top move."),
    (
        "place",
        "Place and prices",
        "The weather comes from the nearest station, the price of electricity from the bill.",
    ),
    ("equipment", "Equipment", "The need is set against what each unit gives, from the hottest day to the coldest."),
    ("work", "Work", "Each task goes to you, a helper, an electrician or a contractor. Some are locked: read why."),
    ("answer", "Answer", "Which way, how sure, and what to find out before anything is spent."),
    ("what_if", "What if", "Which price, quote or number of years would turn the answer."),
    ("plan", "Plan", "What comes next, and where the work stops until somebody signs."),
    ("report", "Report", "The same numbers on paper, for whoever was not there."),
)
_RULES: Final = (
    "Every change is saved as you make it; Undo takes it back.",
    "“I don't know” is an answer: the range is then wide, and the answer says what that costs you.",
    "A value marked usual is ours, not yours. Its source and its range stand beside it; type over it to make it yours.",
    "Tap a figure to open it: how it is worked out, from what, and what moves it most.",
    "Stops are real. Nothing here replaces the local code, the maker's manual or a licensed trade.",
)


def example() -> None:
    """Tell how the program is used, with a ready-made case to walk through."""
    for rule in _RULES:
        look.said(rule, kind="statement")
    ready = next(each for each in shelf.ready_cases() if each.key == _EXAMPLE)
    st.subheader(f"A case to walk through: {look.literal(ready.name)}")
    look.said(answer_text(cached.answer(ready.case, date.today(), cached.FIRST_DRAWS)))
    if st.button("Open a copy of it", key="guide_open", type="primary"):
        state.start_new(ready.case)
        st.switch_page("econ/ui/pages/room.py")
    for number, (page, title, words) in enumerate(_STEPS, start=1):
        with st.container(horizontal=True, vertical_alignment="center", gap="small", key=f"guide_{page}"):
            st.page_link(f"econ/ui/pages/{page}.py", label=f"{number}. {title}")
            st.html(f'<span class="small">{words}</span>', width="stretch")


def method_list() -> None:
    """List what each part of the program does and the published sources it rests on."""
    for package, title in PACKAGES.items():
        found = methods(package)
        fold = st.expander(f"{title}: {len(found)} methods", key=f"methods_{package}", on_change="rerun")
        if fold.open:
            with fold:
                st.html(entries_html({method.name: _told(method) for method in found}, "one"))


def source_table() -> None:
    """List the data tables with where each comes from."""
    records = cached.tables().records
    fold = st.expander(f"{len(records)} tables, with where each comes from", key="data_records", on_change="rerun")
    if fold.open:
        with fold:
            look.table(
                {
                    "Table": list(records),
                    "What it holds": [str(record["title"]) for record in records.values()],
                    "From": [f"{record['publisher']}, {record['document']}" for record in records.values()],
                    "Retrieved": [str(record["retrieved"]) for record in records.values()],
                    "Review by": [str(record["review_by"]) for record in records.values()],
                    "Licence": [str(record["licence"]) for record in records.values()],
                }
            )


def _told(method: Method) -> str:
    rests = f" Rests on: {' | '.join(method.references)}" if method.references else ""
    return f"{method.summary}{rests}"
