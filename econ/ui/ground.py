"""Draw the page again when the ground turns from light to dark or back, so that pictures keep their contrast."""

from typing import Final

import streamlit as st

from econ.ui import state

_SCRIPT: Final = """
export default function ({ data, setTriggerValue }) {
  const app = document.querySelector(".stApp");
  const look = () => {
    const ground = getComputedStyle(app).colorScheme;
    if (ground !== data && (ground === "light" || ground === "dark")) setTriggerValue("turned", ground);
  };
  const watch = new MutationObserver(look);
  watch.observe(app, { attributes: true, attributeFilter: ["class"] });
  look();
  return () => watch.disconnect();
}
"""


def follow() -> None:
    """Watch the ground; a turn draws the page again."""
    watch = st.components.v2.component("ground", js=_SCRIPT)
    watch(data=state.theme().value, key="ground", height=1, on_turned_change=_nothing)


def _nothing() -> None:
    """Let the turn itself be the reason to draw again."""
