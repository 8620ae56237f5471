"""A file of rooms is read in whatever shape a spreadsheet left it, and each row that is not taken says why."""

import csv
import io
import math
from datetime import date

import pytest

from econ.case.rooms_cell import SIDES, as_text
from econ.case.rooms_columns import COLUMNS
from econ.case.rooms_file import MOST_CELL, read_rooms
from econ.case.rooms_out import rows_text, template
from econ.case.sections.room import Room

TYPES = ("Top large", "Middle small")
HEAD = "unit,room,floor,size (sq ft),type"


def only(text, types=TYPES):
    found = read_rooms(text, types)
    assert (found.n_room, len(found.refused)) == (1, 0), [str(each) for row in found.refused for each in row.faults]
    return found


def fault_of(text):
    found = read_rooms(text, TYPES)
    assert found.n_room == 0
    return str(found.refused[0].faults[0])


@pytest.mark.parametrize("separator", [",", ";", "\t", "|"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_separator_and_byte_order_mark_do_not_matter(separator, mark):
    found = only(mark + f"{HEAD}\n3,Bath,2,240,\n".replace(",", separator))
    assert found.text["unit"] == ("3",)
    assert found.number["size"][0] == pytest.approx(240 * 0.3048**2)


def test_columns_come_in_any_order_and_under_other_names():
    found = only("Storey,Flat,Floor area [m²],Room name\n2,3,22.5,Bath\n\n")
    assert found.number["size"][0] == 22.5
    assert found.number["floor"][0] == 2
    assert found.text["room"] == ("Bath",)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_accents_survive_the_usual_encodings(encoding):
    assert only(f"{HEAD}\n3,Café,2,240,\n".encode(encoding)).text["room"] == ("Café",)


@pytest.mark.parametrize(
    ("typed", "area_m2"),
    [
        ("240", 22.296),
        ('"22,5 m2"', 22.5),
        ("12 x 20", 22.296),
        ("3 m x 5 m", 15.0),
        ('"1,250"', 116.129),
        ("?", math.nan),
    ],
)
def test_a_size_is_read_as_people_write_it(typed, area_m2):
    found = only(f"{HEAD}\n3,Bath,2,{typed},top LARGE\n")
    assert found.number["size"][0] == pytest.approx(area_m2, abs=1e-3, nan_ok=True)
    assert found.text["type"] == ("Top large",)


@pytest.mark.parametrize(
    ("column", "typed", "part"),
    [
        ("size (sq ft)", "1e309", "must be from 10.8 to 10763.9 sq ft"),
        ("size (sq ft)", "-4", "must be from 10.8"),
        ("size (sq ft)", "big", "must be a number"),
        ("floor", "1-Mar", "must be a number"),
        ("floor", "2.5", "must be a whole number from -3 to 60"),
        ("floor", "", "must be given"),
        ("type", "Attic", "must be a room type of the case | got 'Attic' | Types: Top large, Middle small."),
        ("exposure", "up", "must name sides of the compass"),
        ("wall", "straw", "must be one of the listed words"),
        ("cooling now", "44 window units", "must be 1 to 10 units"),
        ("heat source", "coal", "must be one of the listed words"),
        ("age (years)", "-1", "must be from 0 to 60"),
        ("access date", "46174", "is a spreadsheet's number of a day, not a date"),
        ("let until", "6/1/2027", "may be a day of either of two months"),
        ("let until", "2027-02-30", "must be a day of the calendar"),
        ("mark", "maybe", "must be must, must not, or blank"),
        ("notes", "x" * (MOST_CELL + 1), f"is longer than {MOST_CELL} letters"),
        ("notes", "a\x00b", "holds a letter that cannot be printed"),
    ],
)
def test_a_cell_that_cannot_be_meant_is_refused_with_line_column_and_remedy(column, typed, part):
    row = {"unit": "3", "room": "Bath", "floor": "2", "size (sq ft)": "240"} | {column: typed}
    told = fault_of(",".join(row) + "\n" + ",".join(row.values()) + "\n")
    assert part in told
    assert told.startswith("line 2, ")
    assert len(told.rsplit("|", 1)[1]) > 5


@pytest.mark.parametrize(
    ("typed", "bits"), [("SW", "south west"), ("north/east", "north east"), ("south-west", "south west")]
)
def test_sides_are_read_as_words_or_letters(typed, bits):
    found = only(f"unit,room,floor,size,exposure\n3,Bath,2,240,{typed}\n")
    assert found.number["exposure"][0] == sum(2 ** SIDES.index(side) for side in bits.split())


@pytest.mark.parametrize("typed", ["2027-06-01", "1 June 2027", "June 1, 2027", "13/6/2027", "6/13/2027"])
def test_a_date_with_one_reading_is_taken(typed):
    found = only(f'unit,room,floor,size,access date\n3,Bath,2,240,"{typed}"\n')
    assert date.fromordinal(int(found.number["access"][0])) in (date(2027, 6, 1), date(2027, 6, 13))


def test_good_rows_work_beside_bad_ones_and_none_is_lost():
    found = read_rooms(
        f"{HEAD}\n1,A,1,200,\n1,A,1,200,\n,B,1,200,\n2,C,1,200,,extra\n2,D,1,,\n2,E,1,,Top large\n2,F,2\n", TYPES
    )
    assert found.text["room"] == ("A", "E")
    assert [row.line for row in found.refused] == [3, 4, 5, 6, 8]
    assert found.n_row == 7
    assert "is the room of line 2 again" in str(found.refused[0].faults[0])


def test_a_missing_or_doubled_heading_refuses_every_row_and_says_which():
    found = read_rooms("unit,room,size,area\n3,Bath,240,240\n", TYPES)
    told = [str(fault) for fault in found.faults]
    assert found.n_row == 1
    assert any('has no column "floor"' in each for each in told)
    assert any("means the same as another" in each for each in told)


def test_a_quote_that_is_never_closed_costs_its_own_row_only():
    found = read_rooms(f'{HEAD}\n1,A,1,200,\n1,"B,1,200,\n1,C,1,200,\n1,D,1,200,\n', TYPES)
    assert found.text["room"] == ("A", "C", "D")
    assert found.n_row == 4


def test_line_breaks_inside_a_note_do_not_break_the_row():
    found = only('unit,room,floor,size,notes\n3,Bath,2,240,"first\nsecond"\n')
    assert found.text["notes"] == ("first\nsecond",)


def test_what_a_spreadsheet_would_run_goes_out_as_text_and_comes_back_as_typed():
    for typed in ("=1+1", "+x", "-x", "@x"):
        written = rows_text([["unit", "room", "floor", "size"], ["3", typed, "2", "240"]])
        assert f",'{typed}," in written
        assert only(written).text["room"] == (typed,)
    assert as_text("Flat 3") == "Flat 3"


def test_the_template_holds_every_column_and_is_read():
    assert next(csv.reader(io.StringIO(template()))) == [column.heading for column in COLUMNS]
    assert read_rooms(template(), TYPES).faults == ()
    assert Room.model_fields["kind"] is not None
