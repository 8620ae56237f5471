"""Open the dashboard: `streamlit run app.py`."""

import streamlit as st

from econ.ui import ground, identity, look, quote_client, state, strip, words

PAGES = {
    "first_look": "First look",
    "room": "Room",
    "place": "Place and prices",
    "equipment": "Equipment",
    "work": "Work",
    "answer": "Answer",
    "plan": "Plan",
    "quote": "Quote",
    "what_if": "What if",
    "rooms": "Rooms",
    "figures": "Figures",
    "report": "Report",
    "cases": "Saved",
    "guide": "Guide",
}


def main() -> None:
    """Draw what every page shares, then the page."""
    st.set_page_config(page_title="A cool room: do it, hire it, or neither", layout="wide")
    page = st.navigation(
        [
            st.Page(f"econ/ui/pages/{name}.py", title=title, default=name == "first_look")
            for name, title in PAGES.items()
        ],
        position="top",
    )
    look.dress()
    identity.remember()
    state.open_case()
    state.turn_to(page.title)
    if not quote_client.is_on(page.title):
        strip.draw()
    page.run()
    words.draw()
    ground.follow()


main()
