"""The task board: one row a task in order, who does it, what that takes, who else may, and what it all adds up to."""

from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.sheet import point
from econ.evaluate.split import SplitAdvice, split_advice
from econ.evaluate.task_board import BoardTask, TaskBoard, task_board
from econ.installation.schedule import Schedule
from econ.kernel.alternative import PARTIES, SELF, Party, Standing
from econ.report.numbers import plural
from econ.report.words.lock import lock_reason, lock_table, standing_locks
from econ.report.words.margin import best_sentence, close_sentence, margin_sentence
from econ.report.words.split import split_sentence
from econ.tables.tasks import installation_tables
from econ.ui import board_row, cached, look, now, since, state
from econ.ui.board_row import PARTY_WORDS
from econ.uncertainty.answer import Answer

_SPLITS: Final[dict[str, Party]] = {"All me that may be": Party.SELF, "All hired": Party.CONTRACTOR}
_REFUSED: Final = "board_refused"
_HOUR: Final = "work.hour_value_usd_per_h"


def draw(answer: Answer) -> None:
    """Draw the board of putting it in yourself, and what its cash is made of."""
    board, advice = _board(answer), _advice(answer)
    before = since.before_last_change(answer, board)
    st.subheader("Who does what, if you put it in yourself")
    look.said(split_sentence(answer, board, now.look()))
    way = answer.result.alternatives[SELF]
    is_locked = way.standing is Standing.NOT_ALLOWED
    if is_locked and way.reasons[1:]:
        with st.expander("What else stands in the way"):
            for reason in way.reasons[1:]:
                look.said(reason, kind="fits")
    hour = answer.sheet.entry(_HOUR).spread
    look.said("" if is_locked else close_sentence(advice, hour.low, hour.high), kind="statement")
    _one_tap(board, answer)
    st.html(f'<p class="small">{"" if is_locked else escape(best_sentence(advice))}</p>{_style(board)}')
    _rows(way.schedule, board, advice, before)
    st.html(board_row.sums_html(board, way))
    with st.expander("Every locked cell, and why"):
        look.table(lock_table(board))


def _board(answer: Answer) -> TaskBoard:
    return task_board(answer.structure, point(answer.sheet), installation_tables())


def _advice(answer: Answer) -> SplitAdvice:
    return split_advice(answer.structure, point(answer.sheet), installation_tables())


def _one_tap(board: TaskBoard, answer: Answer) -> None:
    with st.container(horizontal=True, gap="small"):
        for words, party in _SPLITS.items():
            st.button(words, key=f"split_{words}", on_click=_split, args=(board.given(party),))
        st.button("Best split", key="split_best", on_click=_best, args=(answer,))
        st.button("Usual split", key="split_usual", on_click=state.take_back, args=("work.parties",))


def _rows(schedule: Schedule, board: TaskBoard, advice: SplitAdvice, before: since.Standpoint | None) -> None:
    tasks = {task.task: task for task in board.tasks}
    margins = {margin.task: margin_sentence(margin) for margin in advice.tasks}
    refused = st.session_state.pop(_REFUSED, None)
    board_row.head()
    for place, key in enumerate(schedule.task):
        if not schedule.is_active[0, place]:
            continue
        if key in cached.waits() or key not in tasks:
            _wait(schedule, place)
            continue
        task = tasks[key]
        locked = standing_locks(task, board)
        if refused and refused[0] == key:
            party = Party(refused[1])
            locked = f"Not given to {PARTY_WORDS[party].lower()}, it is locked: {lock_reason(task, party, board)}"
        under = (margins.get(key, ""), locked, before.was(task) if before else "")
        _row(task, under)


def _wait(schedule: Schedule, place: int) -> None:
    """Draw a wait as a plain row without an owner: how long, and until when."""
    begun_d, ended_d = (float(days[0, place]) for days in (schedule.wait_start_d, schedule.finish_d))
    until, passed = now.look().day(ended_d), round(ended_d - begun_d)
    days = f"{passed} {plural('day', passed)}"
    html = f'<div class="task wait">{escape(schedule.label[place])}: {days}, until {until}</div>'
    with st.container(key=f"wait_{schedule.task[place]}"):
        st.html(html)


def _row(task: BoardTask, under: tuple[str, str, str]) -> None:
    key = f"w_task_{task.task}"
    with st.container(horizontal=True, vertical_alignment="center", key=f"task_{task.task}", gap="small"):
        st.html(board_row.task_html(task, *under), width="stretch")
        st.session_state[key] = task.party
        st.segmented_control(
            task.label,
            list(PARTY_WORDS),
            format_func=board_row.party_words().__getitem__,
            key=key,
            label_visibility="collapsed",
            on_change=_given,
            args=(task,),
            required=True,
        )


def _style(board: TaskBoard) -> str:
    """Return the style sheet that draws a lock in every cell where a party may not go."""
    cells = [
        f'.st-key-task_{task.task} [data-testid="stButtonGroup"] button:nth-of-type({code + 1})'
        for task in board.tasks
        for code in range(len(PARTIES))
        if not task.may[code]
    ]
    marks = ",".join(f"{cell}::before" for cell in cells)
    return f"<style>{','.join(cells)}{{{board_row.LOCKED_CELL}}} {marks}{{{board_row.LOCK}}}</style>" if cells else ""


def _given(task: BoardTask) -> None:
    """Give a task to who was tapped; a locked one stays where it is, and its row says why."""
    party = Party(st.session_state[f"w_task_{task.task}"])
    if task.may[PARTIES.index(party)]:
        state.give(f"work.parties.{task.task}", party.value)
    else:
        st.session_state[_REFUSED] = (task.task, party.value)


def _split(parties: dict[str, str]) -> None:
    state.give("work.parties", parties)


def _best(answer: Answer) -> None:
    state.give("work.parties", _advice(answer).parties)


def totals(answer: Answer) -> None:
    """Draw the line that stays at the edge of the page: cash, own hours, first cool day, and what moved last."""
    with st.container(key="board_totals"):
        st.html(board_row.totals_html(answer, since.last_totals(), now.look()))
