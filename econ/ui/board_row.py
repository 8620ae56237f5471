"""Rows of the task board as HTML: a task with its hours and cash, what the cash is made of, the line of totals."""

from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.result import AlternativeResult
from econ.evaluate.task_board import BoardTask, TaskBoard
from econ.kernel.alternative import SELF, Party
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT, first_cost_money, money, tenths
from econ.report.words import moved
from econ.report.words.moved import Totals
from econ.report.words.standing import STANDING_WORDS
from econ.report.words.waiting import cool_day_text
from econ.ui import state
from econ.uncertainty.answer import Answer

PARTY_WORDS: Final[dict[Party, str]] = {
    Party.SELF: "Me",
    Party.HELPER: "Helper",
    Party.ELECTRICIAN: "Electrician",
    Party.CONTRACTOR: "Contractor",
}


def party_words() -> dict[Party, str]:
    """Return what the parties are called on the board: a helper on wages is a handyman."""
    is_handyman = state.value("work.helper") == "handyman"
    return PARTY_WORDS | ({Party.HELPER: "Handyman"} if is_handyman else {})


_PADLOCK: Final = (
    "url(\"data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 10 12'%3E"
    "%3Cpath d='M1 5h8v7H1zM2.5 5V3.5a2.5 2.5 0 0 1 5 0V5h-1.2V3.5a1.3 1.3 0 0 0-2.6 0V5z'/%3E%3C/svg%3E\")"
)
LOCK: Final = (
    "content:'';flex:none;display:inline-block;width:.62em;height:.75em;margin-right:.28em;background:currentColor;"
    f"-webkit-mask:{_PADLOCK} no-repeat center/contain;mask:{_PADLOCK} no-repeat center/contain"
)
"""A padlock in the colour of the cell's letters."""

LOCKED_CELL: Final = "background:var(--soft);opacity:.72"

_LEAST_H: Final = 0.05
_LEAST_USD: Final = 0.5


def head() -> None:
    """Draw the heads of the columns; a phone, which shows one column, leaves them out."""
    with st.container(horizontal=True, key="board_head", gap="small"):
        st.html(
            '<div class="task"><span>Task, in order</span><span class="own">Your hours</span>'
            '<span class="cash">Cash</span></div>',
            width="stretch",
        )
        st.html('<div class="doers">Who does it</div>')


def task_html(task: BoardTask, margin: str, locked: str, was: str) -> str:
    """Return a task with what it takes, whose choice its hands are, its margin, locks and what was before."""
    parts = (("small", margin), ("locked", locked), ("moved", was))
    chosen = ("yours", "you said") if task.is_said else ("usual", "usual")
    under = "".join(f'<div class="{kind}">{escape(text)}</div>' for kind, text in parts if text)
    return (
        f'<div class="task"><div class="what">{escape(task.label)} '
        f'<span class="state {chosen[0]}"><b>{chosen[1]}</b></span>{under}</div>'
        f'<div class="own">{_hours(task.own_h)}</div><div class="cash">{_cash(task.cash_usd)}</div></div>'
    )


def _hours(hours_h: float) -> str:
    return f"{tenths(hours_h)} h" if hours_h >= _LEAST_H else NONE_TEXT


def _cash(cash_usd: float) -> str:
    return money(cash_usd) if abs(cash_usd) >= _LEAST_USD else NONE_TEXT


def sums_html(board: TaskBoard, way: AlternativeResult) -> str:
    """Return what the tasks share and what no split changes, down to the cash and the hours of the whole."""
    cash, own = float(way.cash_first_cost_usd[0]), float(way.own_hours_h[0])
    back = f"; {money(board.resale_usd)} comes back when sold" if board.resale_usd >= _LEAST_USD else ""
    rows = (
        ("Coming and call-out minimums of the trades", 0.0, board.visits_usd),
        (f"Tools, shared by the tasks done with them{back}", 0.0, board.tools_usd),
        (
            "The kit, permits and all that no split changes",
            own - sum(task.own_h for task in board.tasks),
            cash - board.shared_and_tasks_usd,
        ),
        ("Together", own, cash),
    )
    return "".join(
        f'<div class="task sum"><div class="what">{words}</div><div class="own">{_hours(hours)}</div>'
        f'<div class="cash">{_cash(usd)}</div></div>'
        for words, hours, usd in rows
    )


def totals_html(answer: Answer, before: Totals | None, look: Look) -> str:
    """Return the line of totals, each with what the last change moved."""
    way = answer.result.alternatives[SELF]
    after = moved.totals(way)
    told = (moved.cash_mark, moved.hours_mark, moved.day_mark)
    marks = [mark(before, after) if before is not None else "" for mark in told]
    cash, hours, day = (f' <span class="moved">{mark}</span>' if mark else "" for mark in marks)
    cool = cool_day_text(answer.result, way, look) or NONE_TEXT
    said = f'<div class="small">{moved.moved_sentence(before, after)}</div>' if before is not None else ""
    return (
        f'<div class="totals" role="status"><span>Cash {first_cost_money(after.cash_usd)}{cash}</span>'
        f"<span>your time {tenths(after.own_h)} h{hours}</span><span>first cool day {cool}{day}</span>"
        f"<span>{escape(STANDING_WORDS[way.standing])}</span></div>{said}"
    )
