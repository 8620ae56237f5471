"""What is said of an entry that was not taken: in the reader's words, with the bounds in the unit on the screen."""

import re

import pytest

from econ.case.form import all_fields
from econ.case.quantity import Measure, amount
from econ.kernel.errors import CaseError
from econ.ui.entry import Shown, read_entry
from econ.ui.refusal import refusal

AREA = Measure("m**2", "ft**2", 1.0, 1000.0)
MONEY = Measure("USD", "", 0.0, 1_000_000.0)
YEARS = Measure("year", "", 1.0, 60.0, True)
HEAT = Measure("degC", "degF", 5.0, 35.0)


def shown_in(measure, *, is_si=False):
    unit = measure.unit if is_si or not measure.needs_unit else measure.us_unit
    is_bare = not measure.needs_unit
    return Shown(measure.unit, unit, is_bare=is_bare, is_percent=False, high=measure.high, low=measure.low)


def said(typed, measure, *, is_si=False):
    shown = shown_in(measure, is_si=is_si)
    with pytest.raises(CaseError) as refused:
        amount(read_entry(typed, shown), measure)
    return " ".join(refusal(refused.value.faults[0], shown))


@pytest.mark.parametrize(
    ("typed", "measure", "words"),
    [
        ("-4", AREA, "Too small: the least allowed here is 10.8 ft². Type a value from 10.8 ft² to 10,700 ft²."),
        ("1e9", AREA, "Too large: the most allowed here is 10,700 ft². Type a value from 10.8 ft² to 10,700 ft²."),
        ("200", HEAT, "Too large: the most allowed here is 95 °F. Type a value from 41 °F to 95 °F."),
        ("green", AREA, "It cannot be read as an area. Type it such as 884, or 82 m²."),
        ("50 ft", AREA, "The unit “ft” does not fit; this must be an area. Type it such as 884, or 82 m²."),
        ("50 blots", AREA, "The unit “blots” is not known here. Type it such as 884, or 82 m²."),
        ("30,5", AREA, "The comma can mean a decimal point or thousands. Type a point for decimals (30.5)"),
        ("-5", MONEY, "Too small: the least allowed here is $0. Type a value from $0 to $1,000,000."),
        ("much", MONEY, "It is no number. Type it such as 1250."),
        ("2.5", YEARS, "This must be a whole number. Round it."),
        ("9 (12 to 3)", YEARS, "Low, likely and high must rise from one to the next. Put the smallest first"),
    ],
)
def test_refusal_names_what_is_wrong_and_what_is_allowed(typed, measure, words):
    assert said(typed, measure).startswith(words)


def test_refusal_in_si_speaks_si():
    assert said("-4", AREA, is_si=True).endswith("Type a value from 1 m² to 1,000 m².")


def test_end_of_a_range_that_is_out_of_bounds_is_named():
    assert said("20 (10 to 99)", YEARS).startswith("Its high end: too large: the most allowed here is 60 years.")


@pytest.mark.parametrize("is_si", [False, True])
@pytest.mark.parametrize("info", [info for info in all_fields() if info.kind == "amount"], ids=lambda info: info.path)
def test_bounds_said_are_themselves_taken_and_hold_no_code(info, is_si):
    text = said(f"{info.high * 1e4 + 1e7:.0f}", info.measure, is_si=is_si)
    low, high = re.search(r"from (.+) to (.+)\.", text).groups()
    shown = shown_in(info.measure, is_si=is_si)
    for bound in (low, high):
        number = re.match(r"[$-]*[\d.,]+", bound)[0].replace(",", "")
        amount(read_entry(f"-{number[2:]}" if number.startswith("$-") else number, shown), info.measure)
    assert not any(code in text for code in ("**", "delta_", "deg", "USD", "(", "Btu/hour"))


def test_every_physical_amount_has_an_example_or_a_unit_to_type():
    for info in all_fields():
        if info.kind == "amount":
            assert re.search(r"Type .*\d|in .+\.", said("green", info.measure)) or not info.unit
