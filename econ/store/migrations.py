"""The tables of the store, step by step; a step once released is never changed."""

import sqlite3
from typing import Final

from econ.kernel.errors import StoreError

_FIRST: Final = (
    """
    CREATE TABLE saved_case (
        id      INTEGER PRIMARY KEY AUTOINCREMENT,
        name    TEXT    NOT NULL,
        head    INTEGER NOT NULL,
        touched INTEGER NOT NULL UNIQUE,
        deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1))
    ) STRICT
    """,
    """
    CREATE TABLE revision (
        case_id INTEGER NOT NULL REFERENCES saved_case (id),
        number  INTEGER NOT NULL,
        parent  INTEGER,
        text    TEXT    NOT NULL,
        PRIMARY KEY (case_id, number)
    ) STRICT, WITHOUT ROWID
    """,
    "CREATE INDEX revision_parent ON revision (case_id, parent, number)",
)

_WEATHER_FILES: Final = (
    "CREATE TABLE weather_file (key TEXT PRIMARY KEY, name TEXT NOT NULL, content BLOB NOT NULL) STRICT",
)

_SAVED_AT: Final = ("ALTER TABLE saved_case ADD COLUMN saved_at TEXT NOT NULL DEFAULT ''",)

_OWNERS: Final = (
    "ALTER TABLE saved_case ADD COLUMN owner TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE saved_case ADD COLUMN address TEXT NOT NULL DEFAULT ''",
    "UPDATE saved_case SET address = lower(hex(randomblob(16)))",
    "CREATE UNIQUE INDEX saved_case_address ON saved_case (address)",
    """
    CREATE TABLE share (
        id      INTEGER PRIMARY KEY,
        key     TEXT    NOT NULL UNIQUE,
        case_id INTEGER NOT NULL REFERENCES saved_case (id),
        edits   INTEGER NOT NULL DEFAULT 0 CHECK (edits IN (0, 1)),
        revoked INTEGER NOT NULL DEFAULT 0 CHECK (revoked IN (0, 1)),
        made_at TEXT    NOT NULL
    ) STRICT
    """,
    "ALTER TABLE revision ADD COLUMN saved_at TEXT NOT NULL DEFAULT ''",
)

STEPS: Final[tuple[tuple[str, ...], ...]] = (_FIRST, _WEATHER_FILES, _SAVED_AT, _OWNERS)
"""Statements that lead from version n to n + 1; the version stands in ``user_version``."""


def version_of(connection: sqlite3.Connection) -> int:
    """Return how many steps a store has behind it."""
    number: int = connection.execute("PRAGMA user_version").fetchone()[0]
    return number


def migrate(connection: sqlite3.Connection, steps: tuple[tuple[str, ...], ...] = STEPS) -> None:
    """Bring a store to today's tables, all steps in one transaction.

    Parameters
    ----------
    connection : sqlite3.Connection
        An open store, outside any transaction.
    steps : tuple of tuple of str
        The statements of each step.

    Raises
    ------
    StoreError
        If the store was made by a newer program.
    """
    if version_of(connection) == len(steps):
        return
    connection.execute("BEGIN IMMEDIATE")
    try:
        _run(connection, steps)
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:  # a full disk has rolled back by itself
            connection.execute("ROLLBACK")
        raise


def _run(connection: sqlite3.Connection, steps: tuple[tuple[str, ...], ...]) -> None:
    version = version_of(connection)  # read again: another process may have migrated while this one waited
    if version > len(steps):
        raise StoreError(
            f"Saved cases were written by a newer program (version {version}; this one knows {len(steps)}). Update it."
        )
    for step in steps[version:]:
        for statement in step:
            connection.execute(statement)
    connection.execute(f"PRAGMA user_version = {len(steps)}")
