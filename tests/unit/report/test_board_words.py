"""The words of the task board: margins, locks, who does what, and what an edit moved."""

import math
from types import SimpleNamespace

import pytest

from econ.evaluate.split import SplitAdvice, TaskMargin
from econ.evaluate.task_board import BoardTask, TaskBoard
from econ.kernel.alternative import Party
from econ.report.numbers import MINUS
from econ.report.words.lock import lock_reason, lock_table, standing_locks
from econ.report.words.margin import best_sentence, close_sentence, margin_sentence
from econ.report.words.moved import Totals, cash_mark, day_mark, hours_mark, moved_sentence
from econ.report.words.split import doing_words, locked_sentence

EVERYBODY, NOT_ME = (True, True, True, True), (False, False, True, True)
BAR = "Electrical work needs a licence."


def margin(extra_cash_usd, saved_h, now=Party.SELF, label="Hole"):
    flip = extra_cash_usd / saved_h
    return TaskMargin("hole", label, now, Party.SELF, Party.CONTRACTOR, extra_cash_usd, saved_h, flip)


def task(key="wall_hole", party=Party.SELF, may=EVERYBODY, **changed):
    fields = {"asked": party, "hours_h": 2.0, "own_h": 1.0, "cash_usd": 20.0, "offered": EVERYBODY, "bars": ()}
    return BoardTask(key, key.capitalize(), party, may=may, **{**fields, **changed})


def board(*tasks, has_helper=True):
    return TaskBoard(tasks, 0.0, 0.0, 0.0, has_helper)


def test_a_task_that_is_hired_is_told_from_doing_it_oneself():
    said = margin_sentence(margin(480.0, 9.0, now=Party.CONTRACTOR))
    assert said == "Doing it yourself costs $480 less and takes 9 h of yours: even at $53 an hour."
    said = margin_sentence(margin(-30.0, 2.0, now=Party.ELECTRICIAN))
    assert said == "Doing it yourself costs $30 more and takes 2 h of yours."


@pytest.mark.parametrize(
    ("saved_usd", "saved_h", "said"),
    [
        (90.0, 7.25, "costs $90 less and takes 7.2 h less of yours."),
        (-90.0, 7.25, "costs $90 more and takes 7.2 h less of yours."),
        (200.0, -2.0, "costs $200 less and takes 2 h more of yours."),
        (90.0, 0.0, "with your hour at $25 costs $90 less."),
    ],
)
def test_the_best_split_is_told_against_the_present_one(saved_usd, saved_h, said):
    assert best_sentence(SplitAdvice((), 25.0, saved_usd, saved_h)).endswith(said)


def test_a_split_that_cannot_be_bettered_is_told():
    assert best_sentence(SplitAdvice((), 25.0, 0.0, 0.0)).startswith("No allowed split is cheaper")


def test_the_close_task_is_the_one_that_saves_most_hours_within_the_range_of_an_hour():
    tasks = (margin(100.0, 4.0, label="Short"), margin(360.0, 9.0, label="Long"), margin(900.0, 9.0, label="Dear"))
    said = close_sentence(SplitAdvice(tasks, 25.0, 0.0, 0.0), 0.0, 50.0)
    assert said == "Close: giving “Long” to the contractor costs $360 and saves 9 h: even at $40 an hour."
    assert close_sentence(SplitAdvice(tasks, 25.0, 0.0, 0.0), 0.0, 24.0) == ""
    undecided = TaskMargin("x", "X", Party.SELF, Party.SELF, None, math.nan, math.nan, math.nan)
    assert close_sentence(SplitAdvice((undecided,), 25.0, 0.0, 0.0), 0.0, 1e9) == ""


def test_an_open_cell_has_no_reason():
    assert lock_reason(task(), Party.HELPER, board()) == ""


def test_work_that_a_party_never_does_says_whose_it_is():
    own = task("survey", may=(True, False, False, False), offered=(True, False, False, False))
    assert lock_reason(own, Party.CONTRACTOR, board(own)) == "This is for you to do."
    shared = task(may=(True, True, False, True), offered=(True, True, False, True))
    assert lock_reason(shared, Party.ELECTRICIAN, board()) == "This is for you, a helper or a contractor to do."


def test_law_is_named_where_it_bars_the_user_and_a_missing_helper_where_nobody_helps():
    circuit = task("circuit", Party.ELECTRICIAN, NOT_ME, bars=(BAR,))
    assert lock_reason(circuit, Party.SELF, board(circuit)) == BAR
    assert standing_locks(circuit, board(circuit)) == f"Locked for you: {BAR}"
    alone = board(circuit, has_helper=False)
    assert lock_reason(circuit, Party.HELPER, alone).startswith("Nobody helps")
    assert standing_locks(task(), board()) == ""


def test_whoever_was_asked_in_vain_is_named():
    asked = task("circuit", Party.ELECTRICIAN, NOT_ME, asked=Party.HELPER, bars=(BAR,))
    assert standing_locks(asked, board()) == f"Locked for a helper, who was asked: {BAR}"


def test_every_locked_cell_has_a_row_with_a_reason():
    table = lock_table(board(task(), task("circuit", Party.ELECTRICIAN, NOT_ME, bars=(BAR,))))
    assert table["Locked for"] == ["you", "a helper"]
    assert all(table["Why"])


def test_who_does_what_is_told_in_the_order_of_parties_each_deed_once():
    said = doing_words(
        board(
            task("hang_indoor"),
            task("wall_hole"),
            task("circuit", Party.ELECTRICIAN),
            task("final_connection", Party.ELECTRICIAN),
            task("clean_up", Party.HELPER),
        )
    )
    assert said == "you hang and drill; the helper does part of the work; the electrician wires"


BEFORE = Totals(4570.0, 16.0, 30.0)


@pytest.mark.parametrize(
    ("after", "marks"),
    [
        (Totals(4690.0, 13.0, 26.0), ("+$120", f"{MINUS}3 h", "4 days earlier")),
        (Totals(4560.0, 16.5, 31.0), (f"{MINUS}$10", "+0.5 h", "1 day later")),
        (BEFORE, ("", "", "")),
        (Totals(4570.0, 16.0, math.nan), ("", "", "")),
    ],
)
def test_what_moved_is_the_difference_of_what_was_told(after, marks):
    assert (cash_mark(BEFORE, after), hours_mark(BEFORE, after), day_mark(BEFORE, after)) == marks


def test_what_moved_is_told_in_a_sentence():
    said = moved_sentence(BEFORE, Totals(4690.0, 13.0, 26.0))
    assert said == f"Your last change: +$120 of cash, {MINUS}3 h of your time, 4 days earlier."
    assert "none of the three" in moved_sentence(BEFORE, BEFORE)


def test_a_locked_way_gives_its_gravest_reason_and_counts_the_tasks():
    way = SimpleNamespace(reasons=("The association has refused an outdoor unit.", "More."))
    mine, theirs = task(), task("circuit", Party.ELECTRICIAN, NOT_ME, bars=(BAR,))
    said = locked_sentence(way, board(mine, theirs))
    assert said == (
        "Locked: the association has refused an outdoor unit. 1 of 2 tasks are not yours to do here. See “Hire it out”."
    )
    assert "not yours" not in locked_sentence(way, board(mine))
