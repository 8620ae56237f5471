"""Hourly weather files kept beside saved cases, by their hash: the same file is kept once, and never taken away.

Old revisions of a case may name a file that its head no longer does, so none is deleted.
"""

import zlib
from pathlib import Path

from econ.store.connection import connected, transaction
from econ.tables.hourly import kept_key


def keep(path: Path, name: str, content: bytes) -> str:
    """Keep a file and return what a case writes of it.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    name : str
        Its own name, for the screen.
    content : bytes
        All of it.
    """
    key = kept_key(content)
    with transaction(path) as connection:
        connection.execute(
            "INSERT INTO weather_file VALUES (?, ?, ?) ON CONFLICT (key) DO UPDATE SET name = excluded.name",
            (key, name, zlib.compress(content)),
        )
    return key


def kept(path: Path, key: str) -> tuple[str, bytes]:
    """Return a kept file's name and content.

    Raises
    ------
    KeyError
        If there is none of that key.
    """
    with connected(path) as connection:
        row = connection.execute("SELECT name, content FROM weather_file WHERE key = ?", (key,)).fetchone()
    if row is None:
        raise KeyError(key)
    return row[0], zlib.decompress(row[1])
