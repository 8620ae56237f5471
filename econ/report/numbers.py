"""Numbers as people read them: money, shares, dates, tries, and units of either custom."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from math import floor, isfinite, log10
from typing import Final

from econ.kernel.constants import BTU_PER_WH, FOOT_M, INCH_M, PINT_L, POUND_KG

NONE_TEXT: Final = "\u2013"
"""What stands where a number does not exist."""

MINUS: Final = "\u2212"

TRIES: Final = 20
"""Chances are told as so many of these."""

_WEEKDAYS: Final = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS: Final = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
MONTHS_SHORT: Final = tuple(month[:3] for month in MONTHS)


class UnitSystem(StrEnum):
    """Which units a reader wants."""

    US = "us"
    SI = "si"


class Quantity(StrEnum):
    """What is measured: picks the unit on display."""

    TEMPERATURE = "temperature"
    TEMPERATURE_DIFFERENCE = "temperature_difference"
    DEGREE_DAYS = "degree_days"
    DEGREE_HOURS = "degree_hours"
    AREA = "area"
    LENGTH = "length"
    SHORT_LENGTH = "short_length"
    POWER = "power"
    WATER = "water"
    WEIGHT = "weight"
    ENERGY = "energy"


@dataclass(frozen=True, slots=True)
class Display:
    """How one kind of quantity is shown: shown = core x factor + offset.

    Attributes
    ----------
    symbol : str
        Unit as written after the number.
    factor, offset : float
        From the core's SI number to the one shown. [any]
    decimals : int
        Digits after the point; negative rounds to tens and hundreds.
    """

    symbol: str
    factor: float = 1.0
    offset: float = 0.0
    decimals: int = 0


DISPLAYS: Final[dict[UnitSystem, dict[Quantity, Display]]] = {
    UnitSystem.US: {
        Quantity.TEMPERATURE: Display("°F", 1.8, 32.0),
        Quantity.TEMPERATURE_DIFFERENCE: Display("°F", 1.8, 0.0, 1),
        Quantity.DEGREE_DAYS: Display("°F·d", 1.8, 0.0, -1),
        Quantity.DEGREE_HOURS: Display("°F·h", 1.8),
        Quantity.AREA: Display("ft²", FOOT_M**-2),
        Quantity.LENGTH: Display("ft", FOOT_M**-1),
        Quantity.SHORT_LENGTH: Display("in", INCH_M**-1),
        Quantity.POWER: Display("Btu/h", BTU_PER_WH, 0.0, -2),
        Quantity.WATER: Display("pints", PINT_L**-1),
        Quantity.WEIGHT: Display("lb", POUND_KG**-1),
        Quantity.ENERGY: Display("kWh"),
    },
    UnitSystem.SI: {
        Quantity.TEMPERATURE: Display("°C", 1.0, 0.0, 1),
        Quantity.TEMPERATURE_DIFFERENCE: Display("K", 1.0, 0.0, 1),
        Quantity.DEGREE_DAYS: Display("K·d", 1.0, 0.0, -1),
        Quantity.DEGREE_HOURS: Display("K·h"),
        Quantity.AREA: Display("m²", 1.0, 0.0, 1),
        Quantity.LENGTH: Display("m", 1.0, 0.0, 1),
        Quantity.SHORT_LENGTH: Display("cm", 100.0),
        Quantity.POWER: Display("kW", 1e-3, 0.0, 1),
        Quantity.WATER: Display("L"),
        Quantity.WEIGHT: Display("kg"),
        Quantity.ENERGY: Display("kWh"),
    },
}
"""The core speaks degC, K, K*day, K*hour, m2, m, W, kg and kWh; one kg of water is taken as one litre."""


def shown(value: float, quantity: Quantity, units: UnitSystem) -> float:
    """Return a core number in the unit on display, unrounded."""
    display = DISPLAYS[units][quantity]
    return value * display.factor + display.offset


def symbol(quantity: Quantity, units: UnitSystem) -> str:
    """Return the unit on display."""
    return DISPLAYS[units][quantity].symbol


def measure(value: float, quantity: Quantity, units: UnitSystem) -> str:
    """Return a core number with its unit, rounded as people say it.

    Examples
    --------
    >>> measure(24.0, Quantity.TEMPERATURE, UnitSystem.US), measure(5275.0, Quantity.POWER, UnitSystem.US)
    ('75 °F', '18,000 Btu/h')
    """
    if not isfinite(value):
        return NONE_TEXT
    return (
        f"{plain_number(shown(value, quantity, units), DISPLAYS[units][quantity].decimals)} {symbol(quantity, units)}"
    )


def plain_number(value: float, decimals: int = 0) -> str:
    """Return a number with thousands marked and a true minus sign; negative decimals round to tens and up.

    Examples
    --------
    >>> plain_number(12345.6), plain_number(12345.6, -2), plain_number(-0.2)
    ('12,346', '12,300', '0')
    """
    rounded = round(value, decimals) + 0.0
    text = f"{abs(rounded):,.{max(decimals, 0)}f}"
    return f"{MINUS}{text}" if rounded < 0 else text


def money(value_usd: float) -> str:
    """Return dollars to the dollar.

    Examples
    --------
    >>> money(1234.4), money(-250.0) == f"{MINUS}$250"
    ('$1,234', True)
    """
    if not isfinite(value_usd):
        return NONE_TEXT
    text = plain_number(value_usd)
    return f"{MINUS}${text[1:]}" if text.startswith(MINUS) else f"${text}"


def first_cost_money(value_usd: float) -> str:
    """Return dollars to the nearest ten, as a first cost is told.

    Examples
    --------
    >>> first_cost_money(3797.0)
    '$3,800'
    """
    return money(round(value_usd, -1)) if isfinite(value_usd) else NONE_TEXT


def two_digits(value: float) -> float:
    """Return a number rounded to two significant digits.

    Examples
    --------
    >>> two_digits(13449.0), two_digits(-0.0678)
    (13000.0, -0.068)
    """
    if value == 0.0 or not isfinite(value):
        return value
    return round(value, 1 - floor(log10(abs(value))))


def lifetime_money(value_usd: float) -> str:
    """Return dollars to two significant digits with the word about, as a lifetime cost is told.

    Examples
    --------
    >>> lifetime_money(13449.0)
    'about $13,000'
    """
    return f"about {money(two_digits(value_usd))}" if isfinite(value_usd) else NONE_TEXT


def lifetime_range(value_usd: float, low_usd: float, high_usd: float) -> str:
    """Return a lifetime cost with the range it is likely to lie in; no range where there is no doubt to tell.

    Examples
    --------
    >>> lifetime_range(13449.0, 11020.0, 16300.0)
    'about $13,000, likely $11,000 to $16,000'
    """
    low, high = money(two_digits(low_usd)), money(two_digits(high_usd))
    if low == high or NONE_TEXT in {low, high}:
        return lifetime_money(value_usd)
    return f"{lifetime_money(value_usd)}, likely {low} to {high}"


def percent(share_frac: float, decimals: int = 0) -> str:
    """Return a share as percent; the sentence around it says of what.

    Examples
    --------
    >>> percent(0.717), percent(0.0343, 1)
    ('72 %', '3.4 %')
    """
    return f"{plain_number(100.0 * share_frac, decimals)} %" if isfinite(share_frac) else NONE_TEXT


def years(value_yr: float) -> str:
    """Return a length in years, to the half year below ten and to the year above.

    Examples
    --------
    >>> years(4.2), years(0.4), years(12.3), years(1.0)
    ('4 years', '0.5 years', '12 years', '1 year')
    """
    if not isfinite(value_yr):
        return NONE_TEXT
    rounded = round(2.0 * value_yr) / 2.0 if abs(value_yr) < TRIES / 2 else float(round(value_yr))
    return f"{rounded:g} year" + ("" if rounded == 1.0 else "s")


def hours(value_h: float) -> str:
    """Return a count of hours, one digit after the point below two.

    Examples
    --------
    >>> hours(26.2), hours(1.5), hours(1.0)
    ('26 hours', '1.5 hours', '1 hour')
    """
    if not isfinite(value_h):
        return NONE_TEXT
    text = plain_number(value_h) if value_h >= 2.0 else f"{round(value_h, 1):g}"
    return f"{text} hour" + ("" if text == "1" else "s")


def tenths(value: float) -> str:
    """Return a number to a tenth, whole ones without it.

    Examples
    --------
    >>> tenths(16.02), tenths(7.25), tenths(1234.56)
    ('16', '7.2', '1,234.6')
    """
    return plain_number(value, 1).removesuffix(".0")


def in_tries(chance_frac: float) -> str:
    """Return a chance as so many of twenty tries; short of certain it never says all, and short of none never none.

    Examples
    --------
    >>> in_tries(0.853), in_tries(1.0), in_tries(0.99), in_tries(0.01)
    ('in 17 of 20 tries', 'in every try', 'in more than 19 of 20 tries', 'in fewer than 1 of 20 tries')
    """
    if not isfinite(chance_frac):
        return NONE_TEXT
    if chance_frac in {0.0, 1.0}:
        return "in every try" if chance_frac else "in no try"
    count = round(TRIES * chance_frac)
    if count == 0:
        return f"in fewer than 1 of {TRIES} tries"
    return f"in more than {TRIES - 1} of {TRIES} tries" if count == TRIES else f"in {count} of {TRIES} tries"


def day_after(decision: date, after_d: float) -> date:
    """Return the calendar day that lies so many days after the decision; part of a day counts as the day it is in."""
    return decision + timedelta(days=floor(after_d))


def day_text(day: date, this_year: int) -> str:
    """Return a date as said aloud, with the year when it is not this year's.

    Examples
    --------
    >>> day_text(date(2027, 7, 14), 2027), day_text(date(2028, 7, 14), 2027)
    ('Wed 14 July', 'Fri 14 July 2028')
    """
    text = f"{_WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"
    return text if day.year == this_year else f"{text} {day.year}"


def listed(parts: Sequence[str], last: str = "and") -> str:
    """Return parts as a list within a sentence.

    Examples
    --------
    >>> listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"], "or")
    ('a', 'a and b', 'a, b or c')
    """
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {last} {parts[-1]}"


def plural(word: str, count: int) -> str:
    """Return a word, with an s where there is not one of it.

    Examples
    --------
    >>> plural("answer", 1), plural("answer", 3)
    ('answer', 'answers')
    """
    return word if count == 1 else f"{word}s"


def number(value: float) -> float | None:
    """Return a number as JSON holds it; None where it does not exist.

    Examples
    --------
    >>> number(1.5), number(float("nan"))
    (1.5, None)
    """
    return float(value) if isfinite(value) else None
