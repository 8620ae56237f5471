"""What may go wrong with saved cases, in words.

StoreError (kernel)
|-- StoreConflict    the case was changed elsewhere since it was read; holds both texts
|-- StoreDamagedError     the file is not a readable store any more
`-- NoSuchCaseError       no case has that number or address
"""

import sqlite3
from typing import Final

from econ.kernel.errors import StoreError


class StoreConflict(StoreError):  # noqa: N818 - nothing failed: two windows disagree, a person decides
    """A save came second: another window had changed the case.

    Parameters
    ----------
    mine, theirs : str
        The text that was to be saved, and the one that stands; show both.
    their_head : int
        The revision that stands; saving over it, on purpose, needs this number.
    """

    def __init__(self, mine: str, theirs: str, their_head: int) -> None:
        super().__init__("This case was changed in another window. Choose which of the two to keep.")
        self.mine, self.theirs, self.their_head = mine, theirs, their_head


class StoreDamagedError(StoreError):
    """The file of saved cases cannot be read."""


class NoSuchCaseError(StoreError):
    """No case has that number or address, or it was deleted."""

    def __init__(self, named: int | str) -> None:
        super().__init__(f"Case {named} is not there. Open another from the list.")
        self.named = named


_DAMAGED: Final = (sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_CORRUPT)
_WORDS: Final = {
    sqlite3.SQLITE_BUSY: "Saved cases are in use by another program and stayed locked. Close it and try again.",
    sqlite3.SQLITE_LOCKED: "Saved cases are in use by another program and stayed locked. Close it and try again.",
    sqlite3.SQLITE_FULL: "The disk is full: nothing was saved. Free some space and try again.",
    sqlite3.SQLITE_IOERR: "The disk refused to write: nothing was saved. Check its free space and try again.",
    sqlite3.SQLITE_READONLY: "Saved cases may not be written. Check the permissions of their folder.",
    sqlite3.SQLITE_CANTOPEN: "Saved cases cannot be opened. Check that their folder is there and may be written.",
}


def in_words(error: sqlite3.Error) -> StoreError:
    """Return the error to raise for one of the database's.

    Parameters
    ----------
    error : sqlite3.Error
        What the database raised.
    """
    primary = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
    if primary in _DAMAGED:
        return StoreDamagedError(f"The file of saved cases is damaged ({error}). Start again to set it aside.")
    return StoreError(_WORDS.get(primary, f"Saved cases cannot be read or written: {error}."))
