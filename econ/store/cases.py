"""Saved cases: each a name and a chain of revisions, of which one is the head.

Revisions are only ever added; undo and redo move the head. Every change names the head it was made from, so that of two
windows the second is told. Cases are listed by a counter that rises with each change, never by a clock; the time beside
them is for reading. Outside the program a case is known by an address of 128 random bits, and found by it only for its
owner; numbers stay inside.
"""

import sqlite3
from dataclasses import dataclass
from pathlib import Path

from econ.store.connection import connected, transaction
from econ.store.failure import NoSuchCaseError, StoreConflict

_NEXT_TOUCH = "(SELECT coalesce(max(touched), 0) + 1 FROM saved_case)"
_NOW = "strftime('%Y-%m-%dT%H:%M:%S+00:00', 'now')"


@dataclass(frozen=True, slots=True)
class SavedCase:
    """A case as it stands in the store.

    Attributes
    ----------
    case_id : int
        Its number; never used again.
    name : str
        Its name in the list.
    head : int
        The revision that stands.
    text : str
        The case file of that revision.
    can_undo, can_redo : bool
        Whether there is an earlier, or a taken back, revision.
    address : str
        How a link names it: 32 hexadecimal digits.
    """

    case_id: int
    name: str
    head: int
    text: str
    can_undo: bool
    can_redo: bool
    address: str


@dataclass(frozen=True, slots=True)
class Listed:
    """One line of the list of cases.

    Attributes
    ----------
    case_id, name, head : int, str, int
        As in `SavedCase`.
    is_deleted : bool
        Whether it is off the list.
    saved_at : str
        When it was last changed, ISO text in universal time; empty for cases saved before times were kept.
    """

    case_id: int
    name: str
    head: int
    is_deleted: bool
    saved_at: str


@dataclass(frozen=True, slots=True)
class Revision:
    """One version of a case.

    Attributes
    ----------
    number : int
        Its number, 1 for the first.
    text : str
        The case file.
    saved_at : str
        When it was saved, ISO text in universal time; empty for those saved before times were kept.
    """

    number: int
    text: str
    saved_at: str


def create(path: Path, name: str, text: str, owner: str = "") -> SavedCase:
    """Save a new case and return it.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    name : str
        Its name in the list; names may repeat.
    text : str
        The case file.
    owner : str
        Whose it is, as `store.owner` writes it; empty for the one owner of a program that serves nobody else.
    """
    added = f"""
        INSERT INTO saved_case (name, head, touched, saved_at, owner, address)
        VALUES (?, 1, {_NEXT_TOUCH}, {_NOW}, ?, lower(hex(randomblob(16))))
    """
    with transaction(path) as connection:
        case_id = int(connection.execute(added, (name, owner)).lastrowid or 0)
        _add_revision(connection, case_id, 1, None, text)
        return _saved(connection, case_id)


def number_of(path: Path, address: str, owner: str = "") -> int:
    """Return the number of the case at an address.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    address : str
        What stands in the link.
    owner : str
        Who asks.

    Raises
    ------
    NoSuchCaseError
        If this owner has no case there that is not deleted; the same for another's case as for none.
    """
    with connected(path) as connection:
        query = "SELECT id FROM saved_case WHERE address = ? AND owner = ? AND deleted = 0"
        row = connection.execute(query, (address, owner)).fetchone()
        if row is None:
            raise NoSuchCaseError(address)
        return int(row[0])


def opened(path: Path, case_id: int) -> SavedCase:
    """Return a case as it stands.

    Raises
    ------
    NoSuchCaseError
        If there is none with that number, or it is deleted.
    """
    with connected(path) as connection:
        return _saved(connection, case_id)


def save(path: Path, case_id: int, text: str, head: int) -> SavedCase:
    """Add a revision and make it the head; the same text again adds none.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    case_id : int
        Which case.
    text : str
        The case file.
    head : int
        The revision the change was made from.

    Raises
    ------
    StoreConflict
        If the head has moved since; holds both texts.
    NoSuchCaseError
        If the case is not there.
    """
    with transaction(path) as connection:
        stands = _saved(connection, case_id)
        if stands.head == head and stands.text == text:
            return stands
        latest = connection.execute("SELECT max(number) FROM revision WHERE case_id = ?", (case_id,)).fetchone()[0]
        _add_revision(connection, case_id, latest + 1, head, text)
        if not _moved(connection, case_id, head, latest + 1):
            raise StoreConflict(text, stands.text, stands.head)
        return _saved(connection, case_id)


def undo(path: Path, case_id: int, head: int) -> SavedCase:
    """Move the head one revision back; with none before it the case stays as it is."""
    return _stepped(path, case_id, head, "SELECT parent FROM revision WHERE case_id = ? AND number = ?")


def redo(path: Path, case_id: int, head: int) -> SavedCase:
    """Move the head to the newest revision made from it; with none after it the case stays as it is."""
    return _stepped(path, case_id, head, "SELECT max(number) FROM revision WHERE case_id = ? AND parent = ?")


def revert(path: Path, case_id: int, number: int, head: int) -> SavedCase:
    """Save an earlier version once more, as the newest; nothing between is lost.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    case_id : int
        Which case.
    number : int
        The version to come back to.
    head : int
        The revision that stands.

    Raises
    ------
    NoSuchCaseError
        If the case has no such version.
    """
    texts = {revision.number: revision.text for revision in revisions(path, case_id)}
    if number not in texts:
        raise NoSuchCaseError(f"{case_id}, version {number},")
    return save(path, case_id, texts[number], head)


def listed(path: Path, owner: str = "", *, deleted: bool = False) -> tuple[Listed, ...]:
    """Return an owner's cases, last changed first.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    owner : str
        Whose.
    deleted : bool
        The deleted ones instead, so that they can be brought back.
    """
    query = """
        SELECT id, name, head, deleted, saved_at FROM saved_case WHERE deleted = ? AND owner = ? ORDER BY touched DESC
    """
    with connected(path) as connection:
        rows = connection.execute(query, (int(deleted), owner))
        return tuple(Listed(row[0], row[1], row[2], bool(row[3]), row[4]) for row in rows)


def revisions(path: Path, case_id: int) -> tuple[Revision, ...]:
    """Return every version, oldest first; also those taken back."""
    query = "SELECT number, text, saved_at FROM revision WHERE case_id = ? ORDER BY number"
    with connected(path) as connection:
        return tuple(Revision(*row) for row in connection.execute(query, (case_id,)))


def rename(path: Path, case_id: int, name: str) -> SavedCase:
    """Give a case another name in the list."""
    with transaction(path) as connection:
        _saved(connection, case_id)
        connection.execute(f"UPDATE saved_case SET name = ?, touched = {_NEXT_TOUCH} WHERE id = ?", (name, case_id))
        return _saved(connection, case_id)


def copy(path: Path, case_id: int, name: str, owner: str = "") -> SavedCase:
    """Save the head of a case as a new one, with its own revisions from here on."""
    return create(path, name, opened(path, case_id).text, owner)


def delete(path: Path, case_id: int) -> None:
    """Take a case off the list; `restore` brings it back with all its revisions."""
    with transaction(path) as connection:
        _saved(connection, case_id)
        connection.execute(f"UPDATE saved_case SET deleted = 1, touched = {_NEXT_TOUCH} WHERE id = ?", (case_id,))


def restore(path: Path, case_id: int) -> SavedCase:
    """Bring a deleted case back."""
    with transaction(path) as connection:
        connection.execute(f"UPDATE saved_case SET deleted = 0, touched = {_NEXT_TOUCH} WHERE id = ?", (case_id,))
        return _saved(connection, case_id)


def _stepped(path: Path, case_id: int, head: int, query: str) -> SavedCase:
    with transaction(path) as connection:
        stands = _saved(connection, case_id)
        row = connection.execute(query, (case_id, head)).fetchone()
        target = head if row is None or row[0] is None else row[0]
        if not _moved(connection, case_id, head, target):
            raise StoreConflict(stands.text, stands.text, stands.head)
        return _saved(connection, case_id)


def _add_revision(connection: sqlite3.Connection, case_id: int, number: int, parent: int | None, text: str) -> None:
    statement = f"INSERT INTO revision (case_id, number, parent, text, saved_at) VALUES (?, ?, ?, ?, {_NOW})"
    connection.execute(statement, (case_id, number, parent, text))


def _moved(connection: sqlite3.Connection, case_id: int, head: int, target: int) -> bool:
    statement = f"""
        UPDATE saved_case SET head = ?, touched = {_NEXT_TOUCH}, saved_at = {_NOW}
        WHERE id = ? AND head = ? AND deleted = 0
    """
    return connection.execute(statement, (target, case_id, head)).rowcount == 1


def _saved(connection: sqlite3.Connection, case_id: int) -> SavedCase:
    query = """
        SELECT c.id, c.name, c.head, r.text, r.parent IS NOT NULL,
               EXISTS (SELECT 1 FROM revision n WHERE n.case_id = c.id AND n.parent = c.head),
               c.address
        FROM saved_case c JOIN revision r ON r.case_id = c.id AND r.number = c.head
        WHERE c.id = ? AND c.deleted = 0
    """
    row = connection.execute(query, (case_id,)).fetchone()
    if row is None:
        raise NoSuchCaseError(case_id)
    return SavedCase(row[0], row[1], row[2], row[3], bool(row[4]), bool(row[5]), row[6])
