"""Quotes as people paste them: words and amounts, totals told apart, nothing lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.case.quote_text import MOST_LINES, guessed, read_quote

PASTED = """Unit and line set ........ $2,350.00
Electrical: 780
Materials\t310
Labour | 1,150
Permit, 140 USD
Warranty and call-back 260
Overhead and profit = 460
Discount for cash -50
Allowance taken off (25.50)

Subtotal 5,450
Total: $5,374.50
Work starts within five weeks
"""


def test_amounts_are_read_however_they_are_set():
    read = read_quote(PASTED, "offer.lines")
    assert [line.cents for line in read.lines] == [
        *(235000, 78000, 31000, 115000, 14000, 26000, 46000, -5000, -2550),
        None,
    ]
    assert [line.cents for line in read.totals] == [545000, 537450]
    assert not read.faults
    assert read.lines[0].text == "Unit and line set"
    assert read.lines[-1].text == "Work starts within five weeks"


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("Unit and line set", "equipment"),
        ("12,000 Btu/h heat pump", "equipment"),
        ("Dedicated 240 V circuit and disconnect", "electrical"),
        ("Mechanical permit", "permit"),
        ("Labour, two people", "labour"),
        ("Line set cover, pad", "materials"),
        ("Overhead and profit", "overhead_profit"),
        ("Two years of labour warranty", "warranty"),
        ("Sales tax", "tax"),
        ("Good will", "not_said"),
    ],
)
def test_the_kind_is_guessed_from_the_words(words, kind):
    assert guessed(words) == kind


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        ("Unit 1e309", None),
        ("Unit 99,999,999", "above $1,000,000"),
        ("$450", "an amount and no words"),
        ("Unit 1.234.567", "cannot be read"),
    ],
)
def test_what_cannot_be_read_is_told(row, problem):
    read = read_quote(f"Labour 100\n{row}", "offer.lines")
    if problem is None:
        assert len(read.lines) + len(read.faults) == 2
        return
    (fault,) = read.faults
    assert fault.path == "offer.lines row 2"
    assert problem in fault.problem
    assert fault.remedy


def test_a_number_with_a_unit_is_no_amount():
    (line,) = read_quote("Set with 12,000 Btu/h", "offer.lines").lines
    assert line.cents is None


def test_a_dash_between_words_and_amount_takes_nothing_off():
    (line,) = read_quote("Labour - 1,150", "offer.lines").lines
    assert (line.text, line.cents) == ("Labour", 115000)


def test_too_many_lines_are_told_not_dropped():
    read = read_quote("\n".join(f"Part {at} 10" for at in range(MOST_LINES + 3)), "offer.lines")
    assert (len(read.lines), len(read.faults)) == (MOST_LINES, 3)


@given(st.text(max_size=400))
def test_every_row_is_a_line_a_total_or_a_fault(text):
    read = read_quote(text, "offer.lines")
    rows = [row for row in text.splitlines() if row.strip()]
    assert len(read.lines) + len(read.totals) + len(read.faults) == len(rows)
