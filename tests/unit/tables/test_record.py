"""A table is read only when it agrees with its record; each refusal says where and what."""

import hashlib
from pathlib import Path

import numpy as np
import pytest

from econ.kernel.errors import TableError
from econ.tables.loaders import keyed
from econ.tables.record import RECORD_KEYS, read_table
from econ.tables.seal import seal

CSV = "name,length\nshort,1.5\nlong,\n"

RECORD = """title = "t"
publisher = "p"
document = "d"
edition = "1"
page = "1"
url = "none"
retrieved = 2026-01-01
licence = "free"
review_by = 2027-01-01
sha256 = "@"
transformations = "none"

[columns.name]
meaning = "what"
kind = "text"

[columns.length]
meaning = "how long"
kind = "number"
unit = "m"
low = 0.0
high = 9.0
optional = true
"""


def written(folder: Path, csv_text: str = CSV, record: str = RECORD) -> Path:
    (folder / "t").mkdir(exist_ok=True)
    (folder / "t" / "x.csv").write_text(csv_text, encoding="utf-8")
    digest = hashlib.sha256(csv_text.encode()).hexdigest()
    (folder / "t" / "x.toml").write_text(record.replace("@", digest), encoding="utf-8")
    return folder


def test_numbers_and_texts_come_by_column(tmp_path: Path) -> None:
    table = read_table("t/x", written(tmp_path))
    assert table.texts("name") == ("short", "long")
    assert table.numbers("length")[0] == 1.5
    assert np.isnan(table.numbers("length")[1])
    assert len(table) == 2


def test_numbers_are_read_only(tmp_path: Path) -> None:
    table = read_table("t/x", written(tmp_path))
    with pytest.raises(ValueError, match="read-only"):
        table.numbers("length")[0] = 2.0


def test_asking_for_the_wrong_kind_of_column_is_refused(tmp_path: Path) -> None:
    table = read_table("t/x", written(tmp_path))
    with pytest.raises(TableError, match="column name holds text"):
        table.numbers("name")
    with pytest.raises(TableError, match="column length holds numbers"):
        table.texts("length")


@pytest.mark.parametrize("key", RECORD_KEYS)
def test_a_missing_key_is_named(tmp_path: Path, key: str) -> None:
    head, columns = RECORD.split("\n\n", maxsplit=1)
    lines = [line for line in head.splitlines() if not line.startswith(f"{key} =")]
    record = "\n".join([*lines, "" if key == "columns" else columns])
    with pytest.raises(TableError, match=f"x.toml lacks {key}"):
        read_table("t/x", written(tmp_path, record=record))


def test_a_column_without_its_unit_is_named(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"lacks columns\.length\.unit"):
        read_table("t/x", written(tmp_path, record=RECORD.replace('unit = "m"\n', "")))


def test_a_changed_table_is_refused_with_both_hashes(tmp_path: Path) -> None:
    root = written(tmp_path)
    (root / "t" / "x.csv").write_text(CSV.replace("1.5", "1.6"), encoding="utf-8")
    with pytest.raises(TableError, match=r"t/x\.csv has changed: its sha256 is [0-9a-f]{64}, its record says"):
        read_table("t/x", root)


@pytest.mark.parametrize("cell", ["-0.001", "9.001"])
def test_a_cell_out_of_bounds_is_named_with_line_column_and_value(tmp_path: Path, cell: str) -> None:
    with pytest.raises(TableError) as caught:
        read_table("t/x", written(tmp_path, CSV.replace("1.5", cell)))
    assert str(caught.value) == (f"t/x.csv, line 2, length: {cell} is out of bounds; it must lie between 0 and 9 [m].")


@pytest.mark.parametrize("cell", ["0", "9"])
def test_a_cell_on_its_bound_is_taken(tmp_path: Path, cell: str) -> None:
    assert read_table("t/x", written(tmp_path, CSV.replace("1.5", cell))).numbers("length")[0] == float(cell)


@pytest.mark.parametrize("cell", ["nan", "inf"])
def test_nan_and_infinity_are_out_of_bounds(tmp_path: Path, cell: str) -> None:
    with pytest.raises(TableError, match="out of bounds"):
        read_table("t/x", written(tmp_path, CSV.replace("1.5", cell)))


def test_a_cell_that_is_no_number_is_named(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"line 2, length: 'many' is not a number \[m\]"):
        read_table("t/x", written(tmp_path, CSV.replace("1.5", "many")))


def test_an_empty_cell_is_refused_unless_optional(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="line 3, length: '' is not a number"):
        read_table("t/x", written(tmp_path, record=RECORD.replace("optional = true\n", "")))


def test_a_short_line_is_named(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="line 4: 1 cells; it must have 2"):
        read_table("t/x", written(tmp_path, CSV + "alone\n"))


def test_a_column_without_record_is_named(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="line 1: columns and record differ in size"):
        read_table("t/x", written(tmp_path, CSV.replace("name,length", "name,length,size")))


def test_columns_in_another_order_are_refused(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="differ in their order"):
        read_table("t/x", written(tmp_path, CSV.replace("name,length", "length,name")))


def test_a_table_without_rows_is_refused(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"x\.csv has no rows"):
        read_table("t/x", written(tmp_path, "name,length\n"))


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"x\.toml cannot be read"):
        read_table("t/x", tmp_path)


def test_a_record_cut_in_half_is_named(tmp_path: Path) -> None:
    with pytest.raises(TableError, match=r"x\.toml is not a readable record"):
        read_table("t/x", written(tmp_path, record=RECORD[:15]))


def test_fingerprint_changes_with_the_record(tmp_path: Path) -> None:
    first = read_table("t/x", written(tmp_path)).fingerprint
    second = read_table("t/x", written(tmp_path, record=RECORD.replace('"free"', '"paid"'))).fingerprint
    assert first != second


def test_sealing_makes_a_changed_table_readable(tmp_path: Path) -> None:
    root = written(tmp_path)
    (root / "t" / "x.csv").write_text(CSV.replace("1.5", "1.6"), encoding="utf-8")
    seal(["t/x"], root)
    assert read_table("t/x", root).numbers("length")[0] == 1.6


def test_sealing_refuses_a_cell_out_of_bounds(tmp_path: Path) -> None:
    root = written(tmp_path)
    (root / "t" / "x.csv").write_text(CSV.replace("1.5", "99"), encoding="utf-8")
    with pytest.raises(TableError, match="99 is out of bounds"):
        seal(["t/x"], root)


def test_two_rows_with_one_key_are_refused(tmp_path: Path) -> None:
    table = read_table("t/x", written(tmp_path, CSV.replace("long,", "short,")))
    with pytest.raises(TableError, match=r"t/x\.csv: two rows share the same name"):
        keyed(table, "thing", "name")
