"""The foot of every page: what the words of the trade mean."""

from collections.abc import Mapping
from html import escape
from typing import Final

import streamlit as st

from econ.tables.words import glossary

TITLE: Final = "What do these words mean?"


def draw() -> None:
    """Draw the glossary folded; it is sent only once somebody opens it."""
    fold = st.expander(TITLE, key="words", on_change="rerun")
    if fold.open:
        with fold:
            st.html(entries_html({term.name: term.meaning for term in glossary()}))


def entries_html(told: Mapping[str, str], kind: str = "") -> str:
    """Return names and what is said of them: in two columns, or one below the other for the kind "one"."""
    entries = (f"<div><dt>{escape(name)}</dt><dd>{escape(text)}</dd></div>" for name, text in told.items())
    return f'<dl class="words {kind}">{"".join(entries)}</dl>'
