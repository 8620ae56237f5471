"""What is computed once and kept: answers by the value of what went in."""

from datetime import date
from typing import Final

import streamlit as st

from econ.case.schema import Case
from econ.case.toml import inputs_text
from econ.evaluate.version import RESULTS_VERSION
from econ.tables.loaders import Tables, load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.answer import answer as evaluated

NO_DRAWS: Final = 0
"""Likely values alone: what the strip shows at every change."""

FIRST_DRAWS: Final = 512
"""Draws of the answer page's first paint."""

FULL_DRAWS: Final = 4096
"""Draws of the refined answer."""


def tables() -> Tables:
    """Return the data tables; they are read once a process."""
    return load_tables()


def tool_labels() -> dict[str, str]:
    """Return the tools by key, in plain words."""
    return {tool.key: tool.label for tool in installation_tables().tools}


def answer(case: Case, today: date, draws: int) -> Answer:
    """Return the answer to a case; equal inputs, tables, version, draws and day are computed once."""
    key = (inputs_text(case), tables().fingerprint, RESULTS_VERSION, draws, today.isoformat())
    return _answer(key, case, today)


@st.cache_resource(max_entries=64, show_spinner=False)
def _answer(key: tuple[str, str, int, int, str], _case: Case, _today: date) -> Answer:
    return evaluated(_case, tables(), _today, draws=key[3])
