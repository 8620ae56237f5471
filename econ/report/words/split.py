"""Who does the work, for how long, for how much and by when: the sentence above the task board."""

from typing import Final

from econ.evaluate.result import AlternativeResult
from econ.evaluate.task_board import TaskBoard
from econ.kernel.alternative import PARTIES, SELF, Party, Standing
from econ.report.look import Look
from econ.report.numbers import first_cost_money, listed, tenths
from econ.uncertainty.answer import Answer

_DOING: Final = {
    "wall_hole": ("drill", "drills"),
    "hang_indoor": ("hang", "hangs"),
    "set_on_pad": ("set the outdoor unit", "sets the outdoor unit"),
    "set_on_bracket": ("set the outdoor unit", "sets the outdoor unit"),
    "set_on_roof": ("set the outdoor unit", "sets the outdoor unit"),
    "connect_lines": ("connect the lines", "connects the lines"),
    "circuit": ("wire", "wires"),
    "final_connection": ("wire", "wires"),
    "leak_check": ("test", "tests"),
}
"""The tasks that people mean when they speak of the job: as you do them, and as somebody else does."""

_SUBJECT: Final = {
    Party.SELF: "you",
    Party.HELPER: "the helper",
    Party.ELECTRICIAN: "the electrician",
    Party.CONTRACTOR: "the contractor",
}


def doing_words(board: TaskBoard) -> str:
    """Return who does what, such as "you hang and drill; the electrician wires"."""
    return "; ".join(clause for party in Party if (clause := _clause(board, party)))


def _clause(board: TaskBoard, party: Party) -> str:
    is_other = party is not Party.SELF
    done = [task.task for task in board.tasks if task.party is party and task.hours_h > 0.0]
    verbs = list(dict.fromkeys(_DOING[task][is_other] for task in done if task in _DOING))
    if done and not verbs and is_other:
        verbs = ["does part of the work"]
    return f"{_SUBJECT[party]} {listed(verbs)}" if verbs else ""


def split_sentence(answer: Answer, board: TaskBoard, look: Look) -> str:
    """Return the sentence above the board: who does what, own hours, cash and the first cool day, or why it is locked.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    board : TaskBoard
        Its task board.
    look : Look
        Calendar of the reader.

    Returns
    -------
    sentence : str
        Where the way is not allowed, the gravest reason and how many tasks are locked.
    """
    way = answer.result.alternatives[SELF]
    if way.standing is Standing.NOT_ALLOWED:
        return locked_sentence(way, board)
    doing = doing_words(board) or "you do it all"
    own, cash = (
        f"{tenths(float(way.own_hours_h[0]))} h of your time",
        first_cost_money(float(way.cash_first_cost_usd[0])),
    )
    return f"{doing[0].upper()}{doing[1:]}: {own}, {cash}, cool by {look.day(float(way.in_service_d[0]))}."


def locked_sentence(way: AlternativeResult, board: TaskBoard) -> str:
    """Return why putting it in yourself is locked: the gravest reason, and how many tasks others must do."""
    own = PARTIES.index(Party.SELF)
    work = [task for task in board.tasks if task.hours_h > 0.0]
    locked = sum(not task.may[own] for task in work)
    first = way.reasons[0] if way.reasons else ""
    counted = f" {locked} of {len(work)} tasks are not yours to do here." if locked else ""
    return f"Locked: {first[:1].lower()}{first[1:]}{counted} See “Hire it out”."
