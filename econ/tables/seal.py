"""Seal a reviewed table: write the hash of its file into its record.

Run as ``python -m econ.tables.seal installation/costs`` after a change to a data file was looked at by eye.
"""

import hashlib
import re
import sys
from collections.abc import Sequence
from pathlib import Path

from econ.tables.place import data_root
from econ.tables.record import read_table


def sealed_record(record_text: str, csv_bytes: bytes) -> str:
    """Return the record's text with the hash of the given table in it.

    Parameters
    ----------
    record_text : str
        The record, TOML, with a line that starts with ``sha256 =``.
    csv_bytes : bytes
        The table's file.

    Returns
    -------
    record_text : str
        The same text, but for the hash.
    """
    line = f'sha256 = "{hashlib.sha256(csv_bytes).hexdigest()}"'
    return re.sub(r"^sha256 = .*$", line, record_text, count=1, flags=re.MULTILINE)


def seal(names: Sequence[str], root: Path | None = None) -> None:
    """Seal the named tables of a data folder and read each back; None means the folder this package brings."""
    folder = data_root() if root is None else root
    for name in names:
        record = folder / f"{name}.toml"
        text = sealed_record(record.read_text("utf-8"), (folder / f"{name}.csv").read_bytes())
        record.write_text(text, encoding="utf-8", newline="\n")
        read_table(name, folder)


if __name__ == "__main__":
    seal(sys.argv[1:])
