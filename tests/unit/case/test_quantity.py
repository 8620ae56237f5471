"""Amounts: what may be typed, and what is said of what may not."""

import math

import pytest

from econ.case.quantity import UNKNOWN, Amount, Measure, allowed_text, amount, converted
from econ.kernel.errors import CaseError, FaultKind

AREA = Measure("m**2", "ft**2", 1.0, 1_000.0)
LENGTH = Measure("m", "ft", 0.0, 100.0)
TEMPERATURE = Measure("degC", "degF", 5.0, 40.0)
DIFFERENCE = Measure("K", "delta_degF", -3.0, 6.0)
POWER = Measure("W", "Btu/hour", 300.0, 30_000.0)
U_VALUE = Measure("W/(m**2*K)", "Btu/(hour*ft**2*delta_degF)", 0.02, 10.0)
PRICE = Measure("USD/kWh", "", 0.01, 2.0)
YEARS = Measure("year", "", 1.0, 60.0, True)


@pytest.mark.parametrize(
    ("typed", "measure", "expected"),
    [
        ("884 ft**2", AREA, 884 * 0.3048**2),
        ("884 sq ft", AREA, 884 * 0.3048**2),
        ("1,300 ft2", AREA, 1300 * 0.3048**2),
        ("82 m**2", AREA, 82.0),
        ("58 m²", AREA, 58.0),
        ("58 sq. m", AREA, 58.0),
        ("884 SQ FT", AREA, 884 * 0.3048**2),
        ("12 ft 6 in", LENGTH, 150 * 0.0254),
        ("12'6\"", LENGTH, 150 * 0.0254),
        ("12\u2032 6½\u2033", LENGTH, 150.5 * 0.0254),
        ("8 feet", LENGTH, 8 * 0.3048),
        ("10½ in", LENGTH, 10.5 * 0.0254),
        ("10 1/2 in", LENGTH, 10.5 * 0.0254),
        ("10-1/2 inches", LENGTH, 10.5 * 0.0254),
        ("3/4 in", LENGTH, 0.75 * 0.0254),
        ("0,30 m", LENGTH, 0.3),
        ("75F", TEMPERATURE, (75 - 32) / 1.8),
        ("75 °F", TEMPERATURE, (75 - 32) / 1.8),
        ("24 degrees C", TEMPERATURE, 24.0),
        ("0.35 W/m²K", U_VALUE, 0.35),
        ("10 in", LENGTH, 0.254),
        ("1e1 ft", LENGTH, 3.048),
        ("75 degF", TEMPERATURE, (75 - 32) / 1.8),
        ("75 F", TEMPERATURE, (75 - 32) / 1.8),
        ("297.15 K", TEMPERATURE, 24.0),
        ("2 degF", DIFFERENCE, 2 / 1.8),
        ("2 delta_degF", DIFFERENCE, 2 / 1.8),
        ("-2 degC", DIFFERENCE, -2.0),
        ("0.4 K", DIFFERENCE, 0.4),
        ("18 kBtu/hour", POWER, 18_000 * 1055.056 / 3600),
        ("18000 BTU", POWER, 18_000 * 1055.056 / 3600),
        ("1.5 tons", POWER, 18_000 * 1055.056 / 3600),
        ("5.3 kW", POWER, 5300.0),
        ("0.1 Btu/(hour*ft**2*degF)", U_VALUE, 0.1 * 1055.056 / 3600 / 0.3048**2 * 1.8),
        ("0.35 W/m**2/K", U_VALUE, 0.35),
        (0.1473, PRICE, 0.1473),
        (12, YEARS, 12.0),
    ],
)
def test_amount_arrives_in_the_unit_of_its_field(typed, measure, expected):
    read = amount(typed, measure)
    assert read.low == read.likely == read.high == pytest.approx(expected, rel=1e-6)
    assert not read.is_unknown


def test_value_typed_at_a_bound_in_the_other_unit_is_taken():
    assert amount("104 degF", TEMPERATURE).likely == 40.0


def test_range_keeps_three_numbers_in_the_unit_of_the_field():
    read = amount({"low": "8 in", "likely": "10 in", "high": "1 ft"}, LENGTH)
    assert (read.low, read.likely, read.high) == (0.2032, 0.254, 0.3048)
    assert read.is_range
    assert read.text == "low 8 in, likely 10 in, high 1 ft"


@pytest.mark.parametrize("typed", ["not known", "not_known", "Not Known", " don't know ", "?"])
def test_not_known_is_taken_in_each_spelling(typed):
    read = amount(typed, AREA)
    assert read is UNKNOWN
    assert math.isnan(read.low)
    assert math.isnan(read.likely)
    assert math.isnan(read.high)


def test_amount_read_again_is_equal():
    read = amount({"low": 1, "likely": 2, "high": 3}, YEARS)
    assert amount(read, YEARS) == read
    assert amount("8 ft", LENGTH) != amount("96 in", LENGTH)


def problems(typed, measure):
    with pytest.raises(CaseError) as refused:
        amount(typed, measure)
    return [(fault.path, fault.problem, fault.got, fault.remedy) for fault in refused.value.faults]


@pytest.mark.parametrize(
    ("typed", "measure", "problem", "remedy"),
    [
        (884, AREA, "missing unit", 'Write it as text with its unit, such as "884 ft**2" or "82 m**2".'),
        ("884", AREA, "missing unit", '"884 ft**2"'),
        (
            "-4 m**2",
            AREA,
            "must be between 1 and 1,000 m**2 (10.76 and 10,763.9 ft**2)",
            "Check the value and its unit.",
        ),
        ("884 ft", AREA, "unit 'ft' does not fit; this must be an area", '"884 ft**2"'),
        ("75 delta_degF", TEMPERATURE, "unit 'delta_degF' does not fit; this must be a temperature", '"75 degF"'),
        ("10 foo", LENGTH, "unit 'foo' is not known", '"10 in"'),
        ("10 in)(", LENGTH, "unit 'in)(' is not known", '"10 in"'),
        ("10 in**99", LENGTH, "unit 'in**99' is not known", '"10 in"'),
        ("30,5 m", LENGTH, "has a comma that can be read in two ways", "a point for decimals"),
        ("12 ft 6 m", LENGTH, "unit 'ft 6 m' is not known", '"8 ft"'),
        ("about ten", LENGTH, "cannot be read as an amount", '"8 ft"'),
        (float("nan"), AREA, "must be a number, not NaN or infinity", 'write "not known"'),
        ("nan m", LENGTH, "must be a number, not NaN or infinity", 'write "not known"'),
        (float("inf"), PRICE, "must be a number, not NaN or infinity", "Give a number"),
        (10**400, PRICE, "must be a number, not NaN or infinity", "Give a number"),
        ("0.14", PRICE, "cannot be read as an amount", "bare number (USD/kWh), without quotes"),
        (5.0, PRICE, "must be between 0.01 and 2 USD/kWh", "Check the value."),
        (7.5, YEARS, "must be a whole number", "Round it."),
        (True, YEARS, "must be an amount", "bare number (year)"),
        ([1], YEARS, "must be an amount", "bare number (year)"),
        (
            {"low": 1, "high": 2},
            YEARS,
            "a range needs exactly low, likely and high",
            "{low = 8, likely = 12, high = 20}",
        ),
        (
            {"low": 3, "likely": 2, "high": 4},
            YEARS,
            "low, likely and high must be in ascending order",
            "smallest first",
        ),
    ],
)
def test_refusal_says_what_is_wrong_and_what_to_do(typed, measure, problem, remedy):
    [(path, said, got, to_do)] = problems(typed, measure)
    assert path == ""
    assert said == problem
    assert remedy in to_do
    assert got


def test_each_faulty_part_of_a_range_is_named():
    found = problems({"low": -1, "likely": 5, "high": 99}, YEARS)
    assert [(path, got) for path, _, got, _ in found] == [("low", "-1"), ("high", "99")]


def test_long_input_is_cut_in_the_message():
    [(_, _, got, _)] = problems("x" * 5000, LENGTH)
    assert len(got) == 80


def test_allowed_text_speaks_both_systems_for_temperatures_and_differences():
    assert allowed_text(TEMPERATURE) == "must be between 5 and 40 degC (41 and 104 degF)"
    assert allowed_text(DIFFERENCE) == "must be between -3 and 6 K (-5.4 and 10.8 delta_degF)"


def test_conversion_to_us_units_and_back():
    assert converted(25.0, "degC", "degF") == pytest.approx(77.0)
    assert converted(converted(3.0, "K", "delta_degF"), "delta_degF", "K") == pytest.approx(3.0)


def test_amount_is_frozen_and_hashable():
    read = amount(12, YEARS)
    assert hash(read) == hash(Amount(12.0, 12.0, 12.0, False, 12))
    with pytest.raises(AttributeError):
        read.low = 1.0


@pytest.mark.parametrize(
    ("typed", "measure", "kind"),
    [
        ("green", AREA, FaultKind.NOT_READ),
        ("884", AREA, FaultKind.NO_UNIT),
        ("10 foo", LENGTH, FaultKind.UNIT_NOT_KNOWN),
        ("884 ft", AREA, FaultKind.UNIT_DOES_NOT_FIT),
        ("-4 m", LENGTH, FaultKind.TOO_SMALL),
        ("1e9 m", LENGTH, FaultKind.TOO_LARGE),
        ("30,5 m", LENGTH, FaultKind.COMMA),
        (7.5, YEARS, FaultKind.NOT_WHOLE),
        ({"low": 3, "likely": 2, "high": 4}, YEARS, FaultKind.NOT_ASCENDING),
    ],
)
def test_a_refusal_carries_what_sort_of_fault_it_is(typed, measure, kind):
    with pytest.raises(CaseError) as refused:
        amount(typed, measure)
    assert [fault.kind for fault in refused.value.faults] == [kind]
