"""Saved cases: what is saved comes back, and nothing is ever lost."""

import sqlite3
from datetime import UTC, datetime, timedelta

import pytest

from econ.kernel.errors import StoreError
from econ.store import cases, owner
from econ.store.failure import NoSuchCaseError, StoreConflict


@pytest.fixture
def path(tmp_path):
    return tmp_path / "new folder" / "cases.sqlite3"


def versions(path, case):
    return [(version.number, version.text) for version in cases.revisions(path, case.case_id)]


def test_new_case_comes_back_after_a_restart(path):
    made = cases.create(path, "Den", "one")
    assert cases.opened(path, made.case_id) == made
    assert (made.name, made.text, made.head, made.can_undo, made.can_redo) == ("Den", "one", 1, False, False)


def test_save_adds_a_revision_and_keeps_the_old(path):
    made = cases.create(path, "Den", "one")
    saved = cases.save(path, made.case_id, "two", made.head)
    assert (saved.text, saved.head, saved.can_undo) == ("two", 2, True)
    assert versions(path, made) == [(1, "one"), (2, "two")]


def test_same_text_adds_no_revision(path):
    made = cases.create(path, "Den", "one")
    assert cases.save(path, made.case_id, "one", made.head) == made


def test_undo_and_redo_move_the_head(path):
    made = cases.create(path, "Den", "one")
    saved = cases.save(path, made.case_id, "two", made.head)
    undone = cases.undo(path, made.case_id, saved.head)
    assert (undone.text, undone.can_undo, undone.can_redo) == ("one", False, True)
    assert cases.redo(path, made.case_id, undone.head) == saved


def test_undo_at_the_first_and_redo_at_the_last_change_nothing(path):
    made = cases.create(path, "Den", "one")
    assert cases.undo(path, made.case_id, made.head) == made
    assert cases.redo(path, made.case_id, made.head) == made


def test_save_after_undo_branches_and_keeps_what_was_taken_back(path):
    made = cases.create(path, "Den", "one")
    two = cases.save(path, made.case_id, "two", made.head)
    undone = cases.undo(path, made.case_id, two.head)
    three = cases.save(path, made.case_id, "three", undone.head)
    assert (three.head, three.can_redo) == (3, False)
    back = cases.undo(path, made.case_id, three.head)
    assert back.text == "one"
    assert cases.redo(path, made.case_id, back.head).text == "three"
    assert versions(path, made) == [(1, "one"), (2, "two"), (3, "three")]


def test_second_window_is_told_and_holds_both_texts(path):
    made = cases.create(path, "Den", "one")
    cases.save(path, made.case_id, "theirs", made.head)
    with pytest.raises(StoreConflict, match="changed in another window") as refused:
        cases.save(path, made.case_id, "mine", made.head)
    assert (refused.value.mine, refused.value.theirs, refused.value.their_head) == ("mine", "theirs", 2)
    assert versions(path, made) == [(1, "one"), (2, "theirs")]
    assert cases.save(path, made.case_id, "mine", refused.value.their_head).text == "mine"


def test_undo_from_an_old_head_is_a_conflict(path):
    made = cases.create(path, "Den", "one")
    cases.save(path, made.case_id, "two", made.head)
    with pytest.raises(StoreConflict):
        cases.undo(path, made.case_id, made.head)


def test_list_has_the_last_changed_first(path):
    first, second = cases.create(path, "a", "x"), cases.create(path, "b", "x")
    assert [line.name for line in cases.listed(path)] == ["b", "a"]
    cases.save(path, first.case_id, "y", first.head)
    assert [line.name for line in cases.listed(path)] == ["a", "b"]
    cases.rename(path, second.case_id, "c")
    assert [line.name for line in cases.listed(path)] == ["c", "a"]


def test_copy_goes_its_own_way(path):
    made = cases.create(path, "Den", "one")
    copied = cases.copy(path, made.case_id, "Den, hired")
    cases.save(path, copied.case_id, "two", copied.head)
    assert cases.opened(path, made.case_id) == made


def test_deleted_case_can_be_brought_back_with_its_revisions(path):
    made = cases.create(path, "Den", "one")
    saved = cases.save(path, made.case_id, "two", made.head)
    cases.delete(path, made.case_id)
    assert cases.listed(path) == ()
    assert [line.case_id for line in cases.listed(path, deleted=True)] == [made.case_id]
    assert cases.restore(path, made.case_id) == saved


@pytest.mark.parametrize(
    "act",
    [
        cases.opened,
        lambda path, number: cases.save(path, number, "x", 1),
        lambda path, number: cases.undo(path, number, 1),
        lambda path, number: cases.rename(path, number, "x"),
        lambda path, number: cases.copy(path, number, "x"),
        cases.delete,
    ],
)
def test_absent_or_deleted_case_is_named(path, act):
    gone = cases.create(path, "Den", "one").case_id
    cases.delete(path, gone)
    for number in (gone, 99):
        with pytest.raises(NoSuchCaseError, match=f"Case {number} is not there"):
            act(path, number)


def test_restore_of_a_case_that_never_was_is_refused(path):
    with pytest.raises(NoSuchCaseError):
        cases.restore(path, 5)


def test_number_of_a_case_is_never_used_again(path):
    first = cases.create(path, "a", "x")
    cases.delete(path, first.case_id)
    assert cases.create(path, "b", "x").case_id == first.case_id + 1


def test_quotes_in_a_name_are_only_letters(path):
    name = "x'); DROP TABLE saved_case; --"
    cases.create(path, name, "one")
    assert [line.name for line in cases.listed(path)] == [name]


def test_failed_save_leaves_nothing_behind(path):
    made = cases.create(path, "Den", "one")
    with pytest.raises(StoreError):
        cases.save(path, made.case_id, None, made.head)  # the table refuses an absent text
    assert cases.opened(path, made.case_id) == made
    assert versions(path, made) == [(1, "one")]


def test_store_writes_ahead_and_through_to_the_disk(path):
    cases.create(path, "Den", "one")
    with sqlite3.connect(path) as connection:
        assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    connection.close()


def test_list_tells_when_a_case_was_saved_in_universal_time(path):
    cases.create(path, "Den", "a")
    [line] = cases.listed(path)
    assert abs(datetime.fromisoformat(line.saved_at) - datetime.now(UTC)) < timedelta(minutes=5)


def test_earlier_version_comes_back_as_the_newest(path):
    made = cases.create(path, "Den", "one")
    saved = cases.save(path, made.case_id, "two", made.head)
    back = cases.revert(path, made.case_id, 1, saved.head)
    assert (back.text, back.head) == ("one", 3)
    assert cases.undo(path, made.case_id, back.head).text == "two"


def test_version_that_is_not_there_is_named(path):
    made = cases.create(path, "Den", "one")
    with pytest.raises(NoSuchCaseError, match="version 7, is not there"):
        cases.revert(path, made.case_id, 7, made.head)


def test_each_version_tells_when_it_was_saved(path):
    made = cases.create(path, "Den", "one")
    cases.save(path, made.case_id, "two", made.head)
    for version in cases.revisions(path, made.case_id):
        assert abs(datetime.fromisoformat(version.saved_at) - datetime.now(UTC)) < timedelta(minutes=5)


def test_address_has_128_bits_and_leads_to_its_case(path):
    made = [cases.create(path, "Den", "one") for _ in range(20)]
    assert all(owner.is_token(case.address) for case in made)
    assert len({case.address for case in made}) == 20
    assert [cases.number_of(path, case.address) for case in made] == [case.case_id for case in made]


def test_another_owner_neither_lists_nor_finds_a_case(path):
    mine, theirs = (owner.hashed(owner.new_token()) for _ in range(2))
    made = cases.create(path, "Den", "one", mine)
    assert [line.name for line in cases.listed(path, mine)] == ["Den"]
    assert cases.number_of(path, made.address, mine) == made.case_id
    for other in (theirs, owner.NOBODY_ELSE):
        assert cases.listed(path, other) == cases.listed(path, other, deleted=True) == ()
        with pytest.raises(NoSuchCaseError):
            cases.number_of(path, made.address, other)


@pytest.mark.parametrize("address", ["", "1", "' OR 1=1 --", "../cases.sqlite3", "%", "a" * 100_000, "\x00"])
def test_address_of_nothing_leads_nowhere(path, address):
    cases.create(path, "Den", "one")
    with pytest.raises(NoSuchCaseError):
        cases.number_of(path, address)
