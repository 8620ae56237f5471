"""A rooms file with one room more, or one mark changed, keeps everything else as it was typed."""

import pytest

from econ.case.rooms_edit import with_cell, with_room
from econ.case.rooms_file import read_rooms

FILE = "Flat;Room;floor;size (m2);colour\n3;Bath;2;6,5;green\n\n4;Attic;3;22;\n"


def test_a_room_is_added_under_the_headings_there_are():
    found = read_rooms(with_room(FILE, {"unit": "5", "room": "Hall", "floor": "1", "size": "8"}), ())
    assert found.text["room"] == ("Bath", "Attic", "Hall")
    assert found.number["size"].tolist() == [6.5, 22.0, 8.0]
    assert found.cells[0][-1] == "green"


def test_a_column_that_is_missing_is_added():
    found = read_rooms(with_room(FILE, {"unit": "5", "room": "Hall", "floor": "1", "type": "T"}), ("T",))
    assert found.text["type"] == ("", "", "T")


@pytest.mark.parametrize(("line", "marks"), [(2, ("must", "")), (4, ("", "must"))])
def test_one_row_is_marked_and_no_other(line, marks):
    found = read_rooms(with_cell(FILE, line, "mark", "must"), ())
    assert found.text["mark"] == marks
    assert read_rooms(with_cell(with_cell(FILE, 2, "mark", "must"), 2, "mark", ""), ()).text["mark"] == ("", "")


def test_a_note_of_two_lines_does_not_shift_the_rows():
    text = 'unit,room,floor,size,notes\n1,A,1,200,"first\nsecond"\n1,B,1,200,\n'
    found = read_rooms(text, ())
    marked = read_rooms(with_cell(text, found.line[1], "mark", "must"), ())
    assert marked.text["mark"] == ("", "must")


def test_a_file_can_begin_with_one_room():
    assert read_rooms(with_room("", {"unit": "1", "room": "A", "floor": "1", "size": "200"}), ()).n_room == 1
