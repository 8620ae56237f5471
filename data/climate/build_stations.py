"""Build stations.csv from the table of monthly figures: ``python build_stations.py RAW.csv OUT.csv``.

Puts the key "<station>, <ST>" in front; every other column stays as it is. The same raw file gives the same bytes.
"""

import csv
import hashlib
import io
import sys
from pathlib import Path

RAW_SHA256 = "9b4dc9ed6ef17eea027fbde15794ea2a5aafa5db6951ea8bade67f8e1e691db8"


def built(raw: str) -> str:
    """Return the text of stations.csv."""
    rows = list(csv.reader(io.StringIO(raw)))
    keys = [f"{row[0]}, {row[1]}" for row in rows[1:]]
    if len(set(keys)) != len(keys):
        raise SystemExit("two stations share a name and a state")
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["key", *rows[0]])
    writer.writerows([key, *row] for key, row in zip(keys, rows[1:], strict=True))
    return out.getvalue()


def main() -> None:
    """Read the raw file, refuse another than the reviewed one, write the table."""
    raw_path, out_path = map(Path, sys.argv[1:3])
    content = raw_path.read_bytes()
    if hashlib.sha256(content).hexdigest() != RAW_SHA256:
        raise SystemExit("the raw file is not the reviewed one")
    out_path.write_text(built(content.decode("utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
