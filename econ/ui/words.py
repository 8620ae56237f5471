"""The foot of every page: what the words of the trade mean."""

from html import escape
from typing import Final

import streamlit as st

from econ.tables.words import Term, glossary

TITLE: Final = "What do these words mean?"


def draw() -> None:
    """Draw the glossary folded; it is sent only once somebody opens it."""
    fold = st.expander(TITLE, key="words", on_change="rerun")
    if fold.open:
        with fold:
            st.html(f'<dl class="words">{"".join(map(_entry, glossary()))}</dl>')


def _entry(term: Term) -> str:
    return f"<div><dt>{escape(term.name)}</dt><dd>{escape(term.meaning)}</dd></div>"
