"""What is computed once and kept: answers by the value of what went in."""

from dataclasses import replace
from datetime import date
from functools import lru_cache
from typing import Final

import numpy as np
import streamlit as st

from econ.case.schema import Case, plain
from econ.case.toml import inputs_text
from econ.evaluate.bill_scale import BillFindings
from econ.evaluate.evaluate import evaluate
from econ.evaluate.load_measures import LoadMeasures
from econ.evaluate.load_measures import load_measures as measures_of
from econ.evaluate.place import with_hourly_file
from econ.evaluate.prepare import findings_of_bills
from econ.evaluate.quote_price import OwnPrice
from econ.evaluate.result import Result
from econ.evaluate.sheet import point
from econ.evaluate.version import RESULTS_VERSION
from econ.kernel.alternative import ALTERNATIVES, SELF
from econ.report.labels import labels as figure_labels
from econ.report.words.work_risk import WayRisk
from econ.report.words.work_risk import way_risks as risks_of
from econ.store.connection import store_path
from econ.store.weather_files import kept
from econ.tables.loaders import Tables, load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import Answer, usual_draws
from econ.uncertainty.answer import answer as evaluated
from econ.uncertainty.opened import Opened
from econ.uncertainty.opened import opened as opened_of
from econ.uncertainty.quote import priced
from econ.uncertainty.what_if import Tip, WhatIf, tip_of
from econ.uncertainty.what_if import what_if as tried

NO_DRAWS: Final = 0
"""Likely values alone: what the strip shows at every change."""

FIRST_DRAWS: Final = 512
"""Draws of the answer page's first paint."""

FULL_DRAWS: Final = 4096
"""Draws of the refined answer; fewer with an hourly file."""


def tables() -> Tables:
    """Return the data tables; they are read once a process."""
    return load_tables()


def tables_for(case: Case) -> Tables:
    """Return the data tables with the hourly weather file that a case names, if it does.

    Raises
    ------
    CaseError
        If the file is not kept on this machine or is refused.
    """
    return with_hourly_file(tables(), case, lambda written: kept(store_path(), written)[1])


def full_draws(case: Case) -> int:
    """Return the draws of the refined answer."""
    return min(FULL_DRAWS, usual_draws(case))


def tool_labels() -> dict[str, str]:
    """Return the tools by key, in plain words."""
    return {tool.key: tool.label for tool in installation_tables().tools}


@lru_cache(maxsize=1)
def waits() -> frozenset[str]:
    """Return the tasks of putting it in yourself that are nothing but time that passes: nobody spends hours on them."""
    table = installation_tables().tasks[ALTERNATIVES[SELF]]
    has_hours = [any(key for source in parties for key in source.key) for parties in table.hours]
    return frozenset(task for task, works in zip(table.key, has_hours, strict=True) if not works)


def labels(found: Answer) -> dict[str, str]:
    """Return the words of every figure of an answer by path."""
    return figure_labels(found.sheet, tables(), found.structure.room_names)


def load_measures(found: Answer) -> LoadMeasures:
    """Return what measures on the room would do; equal inputs are worked out once."""
    key = (inputs_text(found.case), tables().fingerprint, RESULTS_VERSION, found.decision_date.isoformat())
    return _load_measures(key, found)


@st.cache_resource(max_entries=64, show_spinner=False)
def _load_measures(key: tuple[str, str, int, str], _found: Answer) -> LoadMeasures:  # noqa: ARG001 - the key is what is cached by
    return measures_of(_found.structure, _found.sheet, tables_for(_found.case))


def opened(found: Answer) -> Opened:
    """Return what stands behind the headline figures; equal inputs are worked out once."""
    key = (inputs_text(found.case), tables().fingerprint, RESULTS_VERSION, found.decision_date.isoformat())
    return _opened(key, found)


@st.cache_resource(max_entries=16, show_spinner=False)
def _opened(key: tuple[str, str, int, str], _found: Answer) -> Opened:  # noqa: ARG001 - the key is what is cached by
    return opened_of(_found.structure, _found.sheet, tables_for(_found.case), _found.seed)


def way_risks(found: Answer) -> tuple[WayRisk, ...]:
    """Return what may go wrong in the work, in words; equal inputs are worked out once."""
    key = (inputs_text(found.case), tables().fingerprint, RESULTS_VERSION, found.decision_date.isoformat())
    return _way_risks(key, found)


@st.cache_resource(max_entries=64, show_spinner=False)
def _way_risks(key: tuple[str, str, int, str], _found: Answer) -> tuple[WayRisk, ...]:  # noqa: ARG001 - the key is what is cached by
    return risks_of(_found, tables_for(_found.case))


def quote_price(found: Answer) -> OwnPrice:
    """Return the hired job from own items; equal inputs and equal assumptions of the trade are priced once."""
    key = (inputs_text(found.case), repr(plain(found.case).get("trade")), tables().fingerprint, RESULTS_VERSION)
    return _quote_price((*key, found.decision_date.isoformat()), found)


@st.cache_resource(max_entries=32, show_spinner=False)
def _quote_price(key: tuple[str, str, str, int, str], _found: Answer) -> OwnPrice:  # noqa: ARG001 - the key is what is cached by
    return priced(_found, tables_for(_found.case))


def bill_findings(case: Case) -> BillFindings:
    """Return what the bills of a case say; equal inputs are worked out once."""
    return _bill_findings((inputs_text(case), tables().fingerprint, RESULTS_VERSION), case)


@st.cache_resource(max_entries=32, show_spinner=False)
def _bill_findings(key: tuple[str, str, int], _case: Case) -> BillFindings:  # noqa: ARG001 - the key is what is cached by
    return findings_of_bills(_case, tables_for(_case), date.today())


def what_if(found: Answer) -> WhatIf | None:
    """Return what would change the choice; equal inputs are tried once."""
    key = (inputs_text(found.case), tables().fingerprint, RESULTS_VERSION, found.decision_date.isoformat())
    return _what_if(key, found)


@st.cache_resource(max_entries=32, show_spinner=False)
def _what_if(key: tuple[str, str, int, str], _found: Answer) -> WhatIf | None:  # noqa: ARG001 - the key is what is cached by
    return tried(_found, tables_for(_found.case))


def tip(found: Answer, path: str) -> Tip | None:
    """Return where any one figure turns the choice."""
    return tip_of(found, tables_for(found.case), path)


def moved_result(found: Answer, moved: dict[str, float]) -> Result:
    """Return the result with some figures set to other values, the case left as it is."""
    values = point(found.sheet) | {path: np.asarray(value) for path, value in moved.items()}
    return evaluate(found.structure, values, tables_for(found.case))


def answer(case: Case, today: date, draws: int) -> Answer:
    """Return the answer to a case; equal inputs, tables, version, draws and day are computed once.

    What moves no number, such as its name, is the case's own and not that of the first one computed.
    """
    key = (inputs_text(case), tables().fingerprint, RESULTS_VERSION, draws, today.isoformat())
    found = _answer(key, case, today)
    return found if found.case is case else replace(found, case=case)


@st.cache_resource(max_entries=64, show_spinner=False)
def _answer(key: tuple[str, str, int, int, str], _case: Case, _today: date) -> Answer:
    return evaluated(_case, tables_for(_case), _today, draws=key[3])
