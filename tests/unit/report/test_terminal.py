"""The terminal tells what the answer page tells beneath its verdict and at its end."""

import pytest

from econ.case.edit import with_value
from econ.report.terminal import compare_text
from econ.report.words import find_first
from econ.report.words.beneath import beneath
from econ.report.words.not_counted import NOT_COUNTED, break_even_lines
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_answer, demo_case


def unwrapped(found):
    return " ".join(compare_text(found).split())


@pytest.mark.parametrize("name", ["sunroom_with_quote", "lower_level_cold"])
def test_cash_own_hours_and_what_is_not_counted_are_told(name):
    found = demo_answer(name, 64)
    text = unwrapped(found)
    lines = (*beneath(found), NOT_COUNTED, *break_even_lines(found))
    assert len(lines) > 3
    assert all(" ".join(line.split()) in text for line in lines)
    assert find_first.none_text(found) in text


def test_cards_of_what_to_find_out_are_told_with_whom_to_ask_and_minutes():
    case = with_value(demo_case("sunroom_with_quote"), "window.price_usd", {"low": 600, "likely": 3000, "high": 6000})
    found = answer(case, load_tables(), TODAY, 512)
    cards = find_first.cards(found)
    assert cards
    text = unwrapped(found)
    assert "Find this out first" in text
    assert all(f"{card.guide.how} About {card.guide.minutes} minutes. {card.change}" in text for card in cards)
