"""`rooms`: a plan as text, JSON and a file; refused rows are told, and the same numbers come out everywhere."""

import csv
import io
import json

import pytest

from econ.__main__ import main
from econ.case.rooms_file import read_rooms
from econ.tables.place import data_root

FOLDER = data_root() / "cases" / "buildings"
ROOMS, CASE = str(FOLDER / "small_building.csv"), str(FOLDER / "small_building.toml")


def run(capsys, *words):
    """Run the command and return its exit code, output and errors."""
    code = main(["rooms", *words])
    out = capsys.readouterr()
    return code, out.out, out.err


def test_the_plan_is_printed_and_written(capsys, tmp_path):
    target = tmp_path / "out.csv"
    code, text, told = run(capsys, ROOMS, "--case", CASE, "--out", str(target))
    assert code == 0
    assert "24 rooms this year" in text
    assert "24 rows read: 24 taken, none refused." in told
    rows = list(csv.DictReader(io.StringIO(target.read_text(encoding="utf-8-sig"))))
    assert [row["unit"] for row in rows].count("9") == 3
    again = read_rooms(target.read_bytes(), ("S3", "S2", "M large", "M small", "G"))
    assert (again.n_room, len(again.refused)) == (24, 0)


def test_json_counts_rows_and_adds_up(capsys):
    code, text, _ = run(capsys, ROOMS, "--case", CASE, "--json")
    found = json.loads(text)
    assert code == 0
    assert found["rows_in"] == found["rows_taken"] + found["rows_refused"] == 24
    assert sum(room["way"] != "keep_as_is" for room in found["rooms"]) == sum(y["rooms_done"] for y in found["years"])
    cash = sum(room["cash_usd"] for room in found["rooms"]) + sum(year["set_up_usd"] for year in found["years"])
    assert cash == pytest.approx(sum(year["cash_usd"] for year in found["years"]))


def test_the_demo_building_is_copied_with_its_rooms(capsys, tmp_path):
    target = tmp_path / "mine.toml"
    assert main(["cases", "--copy", "small_building", str(target)]) == 0
    assert target.read_bytes() == (FOLDER / "small_building.toml").read_bytes()
    assert (tmp_path / "mine.csv").read_bytes() == (FOLDER / "small_building.csv").read_bytes()
    target.unlink()
    with pytest.raises(SystemExit):
        main(["cases", "--copy", "small_building", str(target)])
    assert "mine.csv" in capsys.readouterr().err
    assert not target.exists()


def test_another_budget_holds_for_this_year(capsys):
    _, text, _ = run(capsys, ROOMS, "--case", CASE, "--json", "--budget", "$1,500")
    first = json.loads(text)["years"][0]
    assert first["budget_usd"] == 1500.0
    assert first["cash_usd"] <= 1500.0


def test_bad_rows_are_told_and_good_ones_planned(capsys, tmp_path):
    file = tmp_path / "rooms.csv"
    file.write_text("unit;room;floor;size\n1;A;1;200\n1;B;one;200\n", encoding="utf-8")
    code, text, told = run(capsys, str(file), "--case", CASE, "--json")
    assert code == 0
    assert json.loads(text)["rows_refused"] == 1
    assert "line 3, floor: must be a number; we read 'one'. Write 1 or G for the floor at the ground" in told


@pytest.mark.parametrize("budget", ["-1", "much", "1e309", "nan"])
def test_a_budget_that_is_none_is_refused(capsys, budget):
    with pytest.raises(SystemExit) as stopped:
        run(capsys, ROOMS, "--case", CASE, "--budget", budget)
    assert stopped.value.code == 2


def test_a_file_without_a_good_row_is_bad_input(capsys, tmp_path):
    file = tmp_path / "rooms.csv"
    file.write_text("room\nBath\n", encoding="utf-8")
    code, text, told = run(capsys, str(file), "--case", CASE)
    assert (code, text) == (2, "")
    assert 'line 1 | has no column "unit"' in told
