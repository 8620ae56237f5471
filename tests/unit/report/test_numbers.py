"""Numbers as people read them."""

from datetime import date

import pytest

from econ.report.numbers import (
    MINUS,
    NONE_TEXT,
    Quantity,
    UnitSystem,
    day_after,
    day_text,
    first_cost_money,
    hours,
    in_tries,
    lifetime_money,
    lifetime_range,
    listed,
    measure,
    money,
    percent,
    shown,
    two_digits,
    years,
)

NAN = float("nan")


def test_a_lifetime_cost_has_two_digits_and_the_word_about():
    assert lifetime_money(13_449.0) == "about $13,000"


def test_a_lifetime_cost_tells_its_range():
    assert lifetime_range(13_449.0, 11_020.0, 16_300.0) == "about $13,000, likely $11,000 to $16,000"


def test_a_range_without_width_is_not_told():
    assert lifetime_range(13_449.0, 13_400.0, 13_480.0) == "about $13,000"


@pytest.mark.parametrize(
    ("amount", "text"), [(3_794.9, "$3,790"), (3_795.1, "$3,800"), (-104.0, f"{MINUS}$100"), (0.0, "$0")]
)
def test_a_first_cost_is_told_to_the_nearest_ten(amount, text):
    assert first_cost_money(amount) == text


def test_a_rounded_loss_of_nothing_carries_no_minus():
    assert money(-0.4) == "$0"


@pytest.mark.parametrize(("value", "rounded"), [(0.0, 0.0), (99.6, 100.0), (0.00123, 0.0012), (-455.0, -460.0)])
def test_two_digits_are_kept_at_any_size(value, rounded):
    assert two_digits(value) == pytest.approx(rounded)


@pytest.mark.parametrize(
    ("chance", "text"),
    [
        (0.85, "in 17 of 20 tries"),
        (0.5, "in 10 of 20 tries"),
        (0.0, "in no try"),
        (0.024, "in fewer than 1 of 20 tries"),
        (0.976, "in more than 19 of 20 tries"),
        (1.0, "in every try"),
    ],
)
def test_a_chance_is_told_in_tries_and_never_rounded_to_certainty(chance, text):
    assert in_tries(chance) == text


def test_a_date_carries_its_year_only_when_it_is_another():
    day = date(2027, 7, 14)
    assert (day_text(day, 2027), day_text(day, 2026)) == ("Wed 14 July", "Wed 14 July 2027")


@pytest.mark.parametrize(("after_d", "day"), [(0.0, 20), (0.99, 20), (1.0, 21)])
def test_part_of_a_day_counts_as_the_day_it_is_in(after_d, day):
    assert day_after(date(2027, 5, 20), after_d) == date(2027, 5, day)


# NIST SP 811 (2008), App. B.8: 1 ft2 = 9.290 304 E-02 m2; 1 in = 2.54 E-02 m; 1 lb = 4.535 923 7 E-01 kg;
# 1 Btu(IT)/h = 2.930 711 E-01 W; degF = 1.8 degC + 32.
@pytest.mark.parametrize(
    ("quantity", "core", "us"),
    [
        (Quantity.AREA, 0.09290304, 1.0),
        (Quantity.SHORT_LENGTH, 0.0254, 1.0),
        (Quantity.LENGTH, 0.3048, 1.0),
        (Quantity.WEIGHT, 0.45359237, 1.0),
        (Quantity.POWER, 0.2930711, 1.0),
        (Quantity.TEMPERATURE, -40.0, -40.0),
        (Quantity.TEMPERATURE_DIFFERENCE, 5.0, 9.0),
        (Quantity.DEGREE_DAYS, 1000.0, 1800.0),
        (Quantity.WATER, 0.4731765, 1.0),
    ],
)
def test_core_numbers_are_shown_in_us_units(quantity, core, us):
    assert shown(core, quantity, UnitSystem.US) == pytest.approx(us, rel=1e-6)


@pytest.mark.parametrize("quantity", list(Quantity))
@pytest.mark.parametrize("units", list(UnitSystem))
def test_every_quantity_is_shown_with_a_unit(quantity, units):
    assert measure(12.0, quantity, units).split(" ", 1)[1]


@pytest.mark.parametrize("told", [money, first_cost_money, lifetime_money, percent, years, hours, in_tries])
def test_what_does_not_exist_is_a_dash(told):
    assert told(NAN) == NONE_TEXT


def test_a_list_ends_in_its_last_word():
    assert listed(["a", "b", "c"], "or") == "a, b or c"
