"""Why a party may not do a task, in words."""

from typing import Final

from econ.evaluate.task_board import BoardTask, TaskBoard
from econ.kernel.alternative import PARTIES, Party
from econ.report.numbers import listed
from econ.report.pictures.frame import Columns

FOR: Final[dict[Party, str]] = {
    Party.SELF: "you",
    Party.HELPER: "a helper",
    Party.ELECTRICIAN: "an electrician",
    Party.CONTRACTOR: "a contractor",
}
"""A party within a sentence."""


def lock_reason(task: BoardTask, party: Party, board: TaskBoard) -> str:
    """Return why a party may not do a task; empty where it may.

    Parameters
    ----------
    task : BoardTask
        The task.
    party : Party
        Who would do it.
    board : TaskBoard
        Where it stands.

    Returns
    -------
    reason : str
        One or more sentences.
    """
    code = PARTIES.index(party)
    if task.may[code]:
        return ""
    if not task.offered[code]:
        doers = [FOR[who] for who, does in zip(PARTIES, task.offered, strict=True) if does]
        return f"This is for {listed(doers, 'or')} to do."
    if party is Party.HELPER and not board.has_helper:
        return "Nobody helps, as you have said under “Your time and help”."
    if task.bars and party in (Party.SELF, Party.HELPER):
        return " ".join(task.bars)
    if party is Party.CONTRACTOR:
        return "No contractor will work on a kit bought elsewhere, as you have said."
    return f"This is not for {FOR[party]} here."


def standing_locks(task: BoardTask, board: TaskBoard) -> str:
    """Return what law, maker or safety keeps from the user, and from who was asked; empty where nothing does."""
    if task.asked is not task.party:
        return f"Locked for {FOR[task.asked]}, who was asked: {lock_reason(task, task.asked, board)}"
    own = PARTIES.index(Party.SELF)
    return f"Locked for you: {' '.join(task.bars)}" if task.bars and not task.may[own] else ""


def lock_table(board: TaskBoard) -> Columns:
    """Return every locked cell of the board with its reason, as a table."""
    rows = [
        (task.label, FOR[party], lock_reason(task, party, board))
        for task in board.tasks
        for code, party in enumerate(PARTIES)
        if not task.may[code]
    ]
    titles = ("Task", "Locked for", "Why")
    return {title: [row[place] for row in rows] for place, title in enumerate(titles)}
