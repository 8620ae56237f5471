"""Where saved cases live, and one connection a call."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final

from econ.store.failure import StoreDamagedError, in_words
from econ.store.migrations import migrate

WAIT_S: Final = 5.0
"""How long a call waits for another one to finish writing."""

_COMPANIONS: Final = ("", "-wal", "-shm")


def store_path() -> Path:
    """Return the file of saved cases: that named by ECON_STORE, else in the user's data folder."""
    import platformdirs

    named = os.environ.get("ECON_STORE")
    return Path(named) if named else Path(platformdirs.user_data_dir("econ-rooms")) / "cases.sqlite3"


@contextmanager
def connected(path: Path) -> Iterator[sqlite3.Connection]:
    """Open the store for one call, made or brought up to date where needed, and close it after.

    Raises
    ------
    StoreError
        In words, for whatever the database or the disk refuses.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with closing(sqlite3.connect(path, timeout=WAIT_S, isolation_level=None)) as connection:
            connection.execute("PRAGMA journal_mode = WAL")
            connection.execute("PRAGMA synchronous = FULL")
            connection.execute("PRAGMA foreign_keys = ON")
            migrate(connection)
            yield connection
    except sqlite3.Error as error:
        raise in_words(error) from error
    except OSError as error:
        raise in_words(sqlite3.OperationalError(f"{path}: {error.strerror}")) from error


@contextmanager
def transaction(path: Path) -> Iterator[sqlite3.Connection]:
    """Open the store for one change: all of it is written, or nothing."""
    with connected(path) as connection:
        connection.execute("BEGIN IMMEDIATE")
        try:
            yield connection
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise


def ready(path: Path) -> str:
    """Check the store once at the start; set a damaged one aside and begin a new one.

    Parameters
    ----------
    path : Path
        The file of saved cases.

    Returns
    -------
    message : str
        What the user should know; empty where all is well.
    """
    seen = _identity(path)
    try:
        with connected(path) as connection:
            findings = [row[0] for row in connection.execute("PRAGMA quick_check(1)")]
        if findings == ["ok"]:
            return ""
    except StoreDamagedError:
        pass
    if _identity(path) != seen:  # another window has already set it aside
        return ready(path)
    aside = _set_aside(path)
    with connected(path):
        return f"Saved cases could not be read. The damaged file was kept as {aside.name}; a new one was begun."


def _identity(path: Path) -> int:
    return path.stat().st_ino if path.exists() else 0


def _set_aside(path: Path) -> Path:
    number = 1
    while (aside := path.with_name(f"{path.name}.damaged-{number}")).exists():
        number += 1
    for companion in _COMPANIONS:
        part = path.with_name(path.name + companion)
        if part.exists():
            part.rename(aside.with_name(aside.name + companion))
    return aside
