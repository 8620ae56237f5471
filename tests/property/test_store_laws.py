"""Saved cases under any order of edits, saves, undos, deletions and second windows equal a model kept in memory."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import Bundle, RuleBasedStateMachine, consumes, invariant, multiple, rule

from econ.store import cases
from econ.store.failure import NoSuchCaseError, StoreConflict

OWNERS = ("", "a" * 64, "b" * 64)
TEXTS = st.text(max_size=40) | st.sampled_from(["'); DROP TABLE revision; --", "\x00", "=1+1", "<script>", "ž" * 500])


class Kept:
    """What a case must hold: its versions with their parents, and which one stands."""

    def __init__(self, name, owner, text):
        self.name, self.owner = name, owner
        self.texts, self.parents = [text], [0]
        self.head, self.is_deleted = 1, False

    @property
    def text(self):
        """Return the text that stands."""
        return self.texts[self.head - 1]

    def save(self, text):
        """Save a text, the same again once."""
        if text != self.text:
            self.texts.append(text)
            self.parents.append(self.head)
            self.head = len(self.texts)

    def children(self):
        """Return the versions made from the one that stands."""
        return [number + 1 for number, parent in enumerate(self.parents) if parent == self.head]


class Store(RuleBasedStateMachine):
    """The store beside its model."""

    ids = Bundle("ids")

    def __init__(self):
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / "cases.sqlite3"
        self.kept = {}

    def teardown(self):
        """Leave no file behind."""
        self.folder.cleanup()

    @rule(target=ids, name=TEXTS, text=TEXTS, owner=st.sampled_from(OWNERS))
    def create(self, name, text, owner):
        """Make a case."""
        made = cases.create(self.path, name, text, owner)
        assert made.case_id not in self.kept
        self.kept[made.case_id] = Kept(name, owner, text)
        return made.case_id

    @rule(number=ids, text=TEXTS)
    def save(self, number, text):
        """Save a text."""
        kept = self.kept[number]
        if self._is_refused(number, lambda: cases.save(self.path, number, text, kept.head)):
            return
        kept.save(text)

    @rule(number=ids, text=TEXTS, behind=st.integers(1, 3))
    def save_from_another_window(self, number, text, behind):
        """Save from where the case stood before."""
        kept = self.kept[number]
        if kept.is_deleted or kept.head <= behind:
            return
        with pytest.raises(StoreConflict) as told:
            cases.save(self.path, number, text, kept.head - behind)
        assert (told.value.mine, told.value.theirs, told.value.their_head) == (text, kept.text, kept.head)

    @rule(number=ids)
    def undo(self, number):
        """Take a change back."""
        kept = self.kept[number]
        if not self._is_refused(number, lambda: cases.undo(self.path, number, kept.head)):
            kept.head = kept.parents[kept.head - 1] or kept.head

    @rule(number=ids)
    def redo(self, number):
        """Do it again."""
        kept = self.kept[number]
        if not self._is_refused(number, lambda: cases.redo(self.path, number, kept.head)):
            kept.head = max(kept.children(), default=kept.head)

    @rule(number=ids, version=st.integers(1, 6))
    def revert(self, number, version):
        """Come back to a version."""
        kept = self.kept[number]
        if version > len(kept.texts):
            return
        if not self._is_refused(number, lambda: cases.revert(self.path, number, version, kept.head)):
            kept.save(kept.texts[version - 1])

    @rule(target=ids, number=ids, owner=st.sampled_from(OWNERS))
    def copy(self, number, owner):
        """Copy a case."""
        kept = self.kept[number]
        if kept.is_deleted:
            return multiple()
        made = cases.copy(self.path, number, "copy", owner)
        self.kept[made.case_id] = Kept("copy", owner, kept.text)
        return made.case_id

    @rule(number=ids, name=TEXTS)
    def rename(self, number, name):
        """Rename a case."""
        if not self._is_refused(number, lambda: cases.rename(self.path, number, name)):
            self.kept[number].name = name

    @rule(number=ids)
    def delete(self, number):
        """Delete a case."""
        if not self._is_refused(number, lambda: cases.delete(self.path, number)):
            self.kept[number].is_deleted = True

    @rule(target=ids, number=consumes(ids))
    def restore(self, number):
        """Bring a case back."""
        cases.restore(self.path, number)
        self.kept[number].is_deleted = False
        return number

    @invariant()
    def every_case_stands_as_kept(self):
        """Compare every case with the model."""
        for number, kept in self.kept.items():
            versions = cases.revisions(self.path, number)
            assert [version.text for version in versions] == kept.texts
            if not kept.is_deleted:
                saved = cases.opened(self.path, number)
                assert (saved.name, saved.text, saved.head) == (kept.name, kept.text, kept.head)
                assert (saved.can_undo, saved.can_redo) == (kept.parents[kept.head - 1] > 0, bool(kept.children()))
                assert cases.number_of(self.path, saved.address, kept.owner) == number

    @invariant()
    def every_owner_lists_their_own(self):
        """Compare every list with the model."""
        for owner in OWNERS:
            for gone in (False, True):
                listed = {line.case_id for line in cases.listed(self.path, owner, deleted=gone)}
                wanted = {n for n, kept in self.kept.items() if kept.owner == owner and kept.is_deleted == gone}
                assert listed == wanted

    def _is_refused(self, number, act):
        if not self.kept[number].is_deleted:
            act()
            return False
        with pytest.raises(NoSuchCaseError):
            act()
        return True


TestStore = Store.TestCase
TestStore.settings = settings(max_examples=25, stateful_step_count=40, deadline=None)
