"""What the last change on the work page moved: where things stood before it, kept while the page is open."""

from dataclasses import dataclass
from typing import Final

import streamlit as st

from econ.case.toml import inputs_text
from econ.evaluate.task_board import BoardTask, TaskBoard
from econ.kernel.alternative import SELF, Party
from econ.report.words.moved import Totals, totals
from econ.ui import now, state
from econ.ui.board_row import PARTY_WORDS
from econ.uncertainty.answer import Answer

_MEMORY: Final = "board_memory"


@dataclass(frozen=True, slots=True)
class Standpoint:
    """Totals and hands as they stood with some inputs.

    Attributes
    ----------
    inputs : str
        What had been said.
    totals : Totals
        Cash, own hours and first cool day.
    parties : dict of str to Party
        Who did each task.
    """

    inputs: str
    totals: Totals
    parties: dict[str, Party]

    def was(self, task: BoardTask) -> str:
        """Return who did a task before; empty where that has not changed."""
        party = self.parties.get(task.task, task.party)
        return f"Was: {PARTY_WORDS[party].lower()}." if party is not task.party else ""


@dataclass(frozen=True, slots=True)
class _Memory:
    case_id: int | None
    present: Standpoint
    before: Standpoint | None


def before_last_change(answer: Answer, board: TaskBoard) -> Standpoint | None:
    """Return where things stood before the last change made on this page; None where none was made yet."""
    present = Standpoint(
        inputs_text(answer.case),
        totals(answer.result.alternatives[SELF]),
        {task.task: task.party for task in board.tasks},
    )
    saved = st.session_state[state.SAVED]
    case_id = saved.case_id if saved else None
    kept: _Memory | None = st.session_state.get(_MEMORY)
    if kept is None or kept.case_id not in (None, case_id) or not now.is_on("work"):
        kept = _Memory(case_id, present, None)
    elif kept.present.inputs != present.inputs:
        kept = _Memory(case_id, present, kept.present)
    st.session_state[_MEMORY] = kept
    return kept.before


def last_totals() -> Totals | None:
    """Return the totals before the last change made on this page; None where none was made yet."""
    kept: _Memory | None = st.session_state.get(_MEMORY)
    return kept.before.totals if kept and kept.before else None
