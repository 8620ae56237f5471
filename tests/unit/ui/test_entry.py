"""What a person types, as a case file would say it; and back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.case.quantity import Measure, amount
from econ.ui.entry import Shown, entry_text, read_entry, span_text, usual_text

AREA = Shown("m**2", "ft**2", is_bare=False, is_percent=False, high=1000.0)
DOLLARS = Shown("USD", "USD", is_bare=True, is_percent=False, high=1e6)
SHARE = Shown("", "", is_bare=True, is_percent=True, high=0.4)
PRICE = Shown("USD/kWh", "USD/kWh", is_bare=True, is_percent=False, high=2.0)
RUN = Shown("m", "ft", is_bare=False, is_percent=False, high=30.0)
HEAT = Shown("degC", "degF", is_bare=False, is_percent=False, high=35.0)


@pytest.mark.parametrize(
    ("text", "shown", "said"),
    [
        ("884", AREA, "884 ft**2"),
        ("1,300 sq ft", AREA, "1300 sq ft"),
        ("80 m2", AREA, "80 m2"),
        ("$1,890", DOLLARS, 1890.0),
        ("0.15 $ per kWh", Shown("USD/kWh", "USD/kWh", is_bare=True, is_percent=False, high=2.0), 0.15),
        ("6 %", SHARE, 0.06),
        ("6", SHARE, 0.06),
        ("0.06", SHARE, 0.06),
        ("", AREA, None),
        ("?", AREA, "not known"),
        ("I don't know", DOLLARS, "not known"),
        ("1700 to 2100", DOLLARS, {"low": 1700.0, "likely": 1900.0, "high": 2100.0}),
        ("1,900 (1,700 to 2,200)", DOLLARS, {"low": 1700.0, "likely": 1900.0, "high": 2200.0}),
        ("-4", AREA, "-4 ft**2"),
        ("green", AREA, "green"),
        ("30,5", DOLLARS, "30,5"),
        ("0,30", PRICE, 0.3),
        ("1250 USD", DOLLARS, 1250.0),
        ("USD 1,250", DOLLARS, 1250.0),
        ("US$1250", DOLLARS, 1250.0),
        ("1,250 dollars", DOLLARS, 1250.0),
        ("$25 a year", DOLLARS, "$25 a year"),
        ("15 cents", PRICE, 0.15),
        ("15¢/kWh", PRICE, 0.15),
        ("$0.15/kWh", PRICE, 0.15),
        ("3 weeks", Shown("day", "day", is_bare=True, is_percent=False, high=730.0), 21.0),
        ("90 min", Shown("hour", "hour", is_bare=True, is_percent=False, high=16.0), 1.5),
        ("1e9", AREA, "1e9 ft**2"),
        ("58 m²", AREA, "58 m**2"),
        ("12 ft 6 in", RUN, "150 in"),
        ("10½ in", RUN, "10.5 in"),
        ("3/4 in", RUN, "0.75 in"),
        ("6-12 in", RUN, {"low": "6 in", "likely": "9 in", "high": "12 in"}),
        ("8 (6 to 12) in", RUN, {"low": "6 in", "likely": "8 in", "high": "12 in"}),
        ("10 in (8 to 12)", RUN, {"low": "8 in", "likely": "10 in", "high": "12 in"}),
        ("12 ft 6 in (12 ft to 13 ft)", RUN, {"low": "12 ft", "likely": "150 in", "high": "13 ft"}),
        ("75F", HEAT, "75 F"),
        ("75°", HEAT, "75 degF"),
        ("75 °F", HEAT, "75 °F"),
        ("18k", Shown("W", "Btu/hour", is_bare=False, is_percent=False, high=30_000.0), "18 kBtu/hour"),
        ("6 percent", SHARE, 0.06),
    ],
)
def test_typed_text_reads_as_a_case_file_would_say(text, shown, said):
    assert read_entry(text, shown) == said


@settings(deadline=None)  # the first conversion loads the unit registry
@given(st.floats(0.1, 900.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_what_is_shown_reads_back_to_the_same_range_within_its_digits(likely, below, above):
    low, high = likely * (1.0 - 0.5 * below), likely * (1.0 + above * 0.1)
    read = amount(read_entry(entry_text(low, likely, high, AREA), AREA), Measure("m**2", "ft**2", 0.0, 1000.0))
    assert read.likely == pytest.approx(likely, rel=1e-4)
    assert (read.low, read.high) == pytest.approx((low, high), rel=1e-4)


def test_temperature_is_converted_with_its_offset():
    assert entry_text(24.0, 24.0, 24.0, HEAT) == "75.2"


def test_span_of_money_carries_the_dollar_sign_at_both_ends():
    assert span_text(1700.0, 2200.0, DOLLARS) == "$1700 to $2200"


@pytest.mark.parametrize(
    ("low", "likely", "high", "shown", "text"),
    [
        (20.0, 35.0, 60.0, AREA, "380 ft²"),
        (35.0, 35.0, 35.0, AREA, "377 ft²"),
        (23.3, 23.9, 24.4, HEAT, "75 °F"),
        (3.0, 4.6, 6.1, RUN, "15 ft"),
        (0.155, 0.1723, 0.19, PRICE, "$0.172 per kWh"),
        (0.01, 0.03, 0.06, SHARE, "3 %"),
        (12_000.0, 14_321.0, 17_000.0, DOLLARS, "$14,300"),
    ],
)
def test_a_usual_value_shows_no_more_digits_than_its_range_warrants(low, likely, high, shown, text):
    assert usual_text(low, likely, high, shown) == text


def test_span_without_width_is_one_number():
    assert span_text(0.02, 0.02, SHARE) == "2 %"
