"""Whatever stands in a file of rooms: no crash, no row lost, and rows in are rows taken and rows refused."""

import csv
import io
import random

import pytest

from econ.case.rooms_columns import COLUMNS
from econ.case.rooms_file import read_rooms

TYPES = ("Top large", "Middle small")
GOOD = [
    "House 1",
    "3",
    "",
    "2",
    "240",
    "Top large",
    "SW",
    "small",
    "brick",
    "2 window units",
    "6",
    "gas",
    "tenant",
    "900",
]
NASTY = (
    "1e309", "-1e309", "nan", "inf", "46174", "1-Mar", "=cmd|' /C calc'!A0", "+1", "-1", "@x", "\x00", "a\x00b",
    "x" * 40_000, "y" * 200_000, '"', "''", ";", "\t", "1,5", "?", "", " ", "\u200b", "6/1/2027", "2027-13-45",
    "12 x", "½", "٣", "1e5",
)  # fmt: skip
ENCODINGS = ("utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252", "latin-1", "utf-7")


def plain_rows(n_row):
    """Return good rows, each with a name of its own."""
    return [[*GOOD[:2], f"Room {at}", *GOOD[3:]] for at in range(n_row)]


def spoiled(rng, rows):
    """Return rows of which some are spoiled, and which ones are untouched."""
    good = []
    for at, row in enumerate(rows):
        deed = rng.randrange(6)
        if deed == 0:
            row[rng.randrange(len(row))] = rng.choice(NASTY)
        elif deed == 1:
            del row[rng.randrange(1, len(row)) :]
        elif deed == 2:
            row.extend([rng.choice(NASTY)] * rng.randrange(1, 4))
        elif deed == 3 and at:
            rows[at] = list(rows[at - 1])
        else:
            good.append(row[2])
    return good


def written(rng, rows, separator):
    """Return rows as a file, with blank lines here and there."""
    held = io.StringIO()
    writer = csv.writer(held, delimiter=separator, lineterminator=rng.choice(("\n", "\r\n")))
    for row in rows:
        writer.writerow(row)
        if rng.random() < 0.1:
            held.write("\n")
    return held.getvalue()


@pytest.mark.parametrize("seed", range(200))
def test_no_row_is_lost_and_every_good_one_is_taken(seed):
    rng = random.Random(seed)
    rows = plain_rows(rng.randrange(1, 30))
    good = spoiled(rng, rows)
    head = [column.heading for column in COLUMNS][: len(GOOD)]
    text = written(rng, [head, *rows], rng.choice((",", ";", "\t")))
    found = read_rooms(text.encode(rng.choice(ENCODINGS[:3]), errors="ignore"), TYPES)
    taken = set(found.text["room"])
    assert found.n_row == sum(any(cell.strip() for cell in row) for row in rows)
    assert found.n_room + len(found.refused) == found.n_row
    assert set(good) <= taken
    assert all(row.faults and all(str(fault).count(" | ") >= 3 for fault in row.faults) for row in found.refused)


@pytest.mark.parametrize("seed", range(200))
def test_bytes_in_any_disorder_never_crash(seed):
    rng = random.Random(seed)
    head = ",".join(column.heading for column in COLUMNS).encode(rng.choice(ENCODINGS), errors="ignore")
    body = bytes(rng.randrange(256) for _ in range(rng.randrange(0, 2000)))
    lines = [bytes(rng.choice(b'",;\t\n\r\x00 =1a') for _ in range(rng.randrange(0, 60))) for _ in range(20)]
    for content in (head + b"\n" + body, head + b"\n" + b"\n".join(lines), body, b"".join(lines)):
        found = read_rooms(content, TYPES)
        assert found.n_row == found.n_room + len(found.refused)
