"""Quotes in a case: as many as a person gets, beside the comparison, and none of them moves it."""

import pytest

from econ.case.edit import state_of, states, value_at, with_quote, with_value, without_quote
from econ.case.quotes import with_counted
from econ.case.schema import MOST, case_from
from econ.case.toml import inputs_text, read_case, write_case
from econ.kernel.errors import CaseError
from tests.demo import demo_case

NAME = "sunroom_with_quote"


def plain_case():
    return case_from({"place": {"station": "Somewhere, ST"}, "rooms": [{}]})


def test_other_quotes_are_added_changed_and_taken_out():
    case = with_quote(with_quote(plain_case(), {"name": "B"}), {"name": "C", "total_usd": 4550})
    case = with_value(case, "quotes[1].electrical", "not_said")
    assert [quote.name for quote in case.quotes] == ["B", "C"]
    assert value_at(case, "quotes[1].total_usd").likely == 4550.0
    assert value_at(case, "quotes[1].electrical") == "not_said"
    assert [quote.name for quote in without_quote(case, 0).quotes] == ["C"]
    assert read_case(write_case(case)) == case


def test_quotes_that_are_not_there_are_refused():
    with pytest.raises(CaseError, match="has 0 other quotes"):
        without_quote(plain_case(), 0)
    with pytest.raises(CaseError, match="names a quote that is not there"):
        value_at(plain_case(), "quotes[0].name")
    with pytest.raises(CaseError, match="at most 7 quotes"):
        case_from({"place": {"station": "S, T"}, "rooms": [{}], "quotes": [{}] * (MOST["quotes"] + 1)})
    with pytest.raises(CaseError, match=r"Begin each other quote with \[\[quotes\]\]"):
        case_from({"place": {"station": "S, T"}, "rooms": [{}], "quotes": {"name": "B"}})


def test_a_line_of_an_unknown_kind_is_refused_with_what_is_allowed():
    with pytest.raises(CaseError, match="must be one of: equipment, materials"):
        with_value(plain_case(), "offer.kinds", {"Unit": "hardware"})
    with pytest.raises(CaseError, match="table of line = kind"):
        with_value(plain_case(), "offer.kinds", "equipment")


def test_what_a_quote_says_beside_its_total_moves_no_number():
    case = demo_case(NAME)
    said = with_value(with_quote(case, {"total_usd": 4550}), "offer.lines", "Unit 2,350")
    said = with_value(said, "private.labour_usd_per_h", 62)
    assert inputs_text(said) == inputs_text(case)
    assert states(said) == states(case)
    assert state_of(said, "private.labour_usd_per_h") == "yours"


def test_a_date_of_a_quote_is_a_date():
    with pytest.raises(CaseError, match="must be a date"):
        with_value(plain_case(), "offer.valid_until", "next week")
    with pytest.raises(CaseError, match="must be a date"):
        with_quote(plain_case(), {"date": "soon"})


def test_another_quote_is_counted_and_the_first_takes_its_place():
    case = with_quote(demo_case(NAME), {"name": "Third", "total_usd": 5100, "size": "9", "lines": "Unit 2,000"})
    swapped = with_counted(case, 1)
    assert (swapped.offer.name, swapped.quote.total_usd.likely, swapped.hired.size) == ("Third", 5100.0, "9")
    assert swapped.offer.lines == "Unit 2,000"
    assert swapped.quote.electrical is None, "what it does not say is not taken from another"
    assert [quote.name for quote in swapped.quotes] == ["Second quote", "First quote"]
    first = swapped.quotes[1]
    assert (first.total_usd.likely, first.electrical, first.date) == (5450.0, "yes", "2027-03-08")
    back = with_counted(swapped, 1)
    assert (back.quote, back.offer) == (case.quote, case.offer)


def test_a_quote_that_is_not_there_cannot_be_counted():
    with pytest.raises(CaseError, match="has 1 other quotes"):
        with_counted(demo_case(NAME), 3)
