"""What a person types into a field, and what a case file would say instead; and back."""

import math
import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, TypeAlias

from econ.case import quantity
from econ.case.spoken import has_two_readings, plain_form
from econ.ui.bare_units import in_bare_unit, is_money

Entry: TypeAlias = str | float | dict[str, str | float] | None
"""A value as a case file writes it; None takes the answer back."""

_NUMBER: Final = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?"
_ONE: Final = re.compile(rf"({_NUMBER})\s*(\D.*)?")
_TO: Final = re.compile(r"\s+to\s+|\s*\u2013\s*|\s+-\s+|(?<=\d)-(?=[\d.])")
_AROUND: Final = re.compile(r"(.+?)\s*\((.+)\)\s*([^()]*)")
_DOLLAR: Final = re.compile(r"(?i)(?:\bus\s?)?\$|^usd\b")
_PERCENT: Final = frozenset({"%", "percent", "per cent"})
_SHORT_UNITS: Final = {
    ("k", "Btu/hour"): "kBtu/hour",
    ("\N{DEGREE SIGN}", "degF"): "degF",
    ("\N{DEGREE SIGN}", "degC"): "degC",
}
"""Units typed in one letter, clear from the unit on the screen."""

_EXACT: Final = 6
_ROUND: Final = 3
_FIGURE: Final = 5
"""Significant digits of what was typed, of what is taken without a range, and of a figure opened."""

_ENDS: Final = 2

_STEPS: Final = 10.0
"""A usual value is rounded to steps of which a range holds at least so many (assumption of the display only)."""

SCREEN_UNITS: Final[dict[str, str]] = {
    "ft**2": "ft²",
    "m**2": "m²",
    "degF": "°F",
    "in**2": "sq in",
    "ft**3/minute": "cubic ft a minute",
    "m**3/hour": "m³ an hour",
    "degC": "°C",
    "delta_degF": "°F",
    "K": "°C",
    "Btu/hour": "Btu/h",
    "W/(m**2*K)": "W/m²K",
    "Btu/(hour*ft**2*delta_degF)": "Btu/h ft² °F",
    "J/(m**2*K)": "J/m²K",
    "Btu/(ft**2*delta_degF)": "Btu/ft² °F",
    "W/(m*K)": "W/mK",
    "Btu/(hour*ft*delta_degF)": "Btu/h ft °F",
    "J/(m**3*K)": "J/m³K",
    "Btu/(ft**3*delta_degF)": "Btu/ft³ °F",
    "mile/hour": "mph",
    "Btu/(W*hour)": "Btu/Wh",
    "USD": "$",
    "USD/kWh": "$ per kWh",
    "USD/t": "$ per tonne",
    "USD/hour": "$ per hour",
    "USD/year": "$ per year",
    "USD/month": "$ per month",
    "USD/therm": "$ per therm",
    "USD/gallon": "$ per gallon",
    "USD/cord": "$ per cord",
    "1/hour": "per hour",
    "1/year": "per year",
    "degree": "°",
    "kWh/m**2": "kWh/m²",
    "year": "years",
    "minute": "minutes",
    "quart": "quarts",
    "hour": "hours",
    "day": "days",
}
"""Units as a screen writes them."""


@dataclass(frozen=True, slots=True)
class Shown:
    """How one amount stands on the screen.

    Attributes
    ----------
    unit : str
        Unit of the case's numbers.
    shown_unit : str
        Unit on the screen; equal to `unit` where nothing is converted.
    is_bare : bool
        Whether a case file writes the number without a unit.
    is_percent : bool
        Whether the screen shows a share as percent.
    high : float
        Greatest number allowed, in `unit`.
    low : float
        Least number allowed, in `unit`.
    is_clock : bool
        Whether it is an hour of the clock, which is written without its unit.
    """

    unit: str
    shown_unit: str
    is_bare: bool
    is_percent: bool
    high: float
    low: float = 0.0
    is_clock: bool = False

    @property
    def word(self) -> str:
        """The unit as the screen writes it; empty where there is none."""
        if self.is_clock:
            return ""
        return "%" if self.is_percent else SCREEN_UNITS.get(self.shown_unit, self.shown_unit)


def read_entry(text: str, shown: Shown) -> Entry:
    """Return what a case file would say for the text typed into a field; what cannot be read comes back as typed."""
    if not text.strip():
        return None
    if quantity.is_not_known(text) or text.strip().lower() in {"i don't know", "i don\u2019t know"}:
        return quantity.NOT_KNOWN_TEXT
    if has_two_readings(_DOLLAR.sub("", text)):
        return text.strip()
    plain = plain_form(_DOLLAR.sub("", text).strip() if is_money(shown.unit) else text)
    typed = text.strip()
    if found := _AROUND.fullmatch(plain):
        likely, ends, unit = found.groups()
        low_high = _TO.split(ends.strip())
        return _ranged([low_high[0], likely, low_high[-1]], shown, typed, unit) if len(low_high) == _ENDS else typed
    ends = _TO.split(plain)
    if len(ends) == _ENDS and all(map(_ONE.match, ends)):
        return _ranged([ends[0], "", ends[1]], shown, typed)
    return _one(plain, shown, typed)


def _one(text: str, shown: Shown, typed: str, unit: str = "") -> str | float:
    found = _ONE.fullmatch(plain_form(text))
    return typed if found is None else _amount(found[1], found[2] or unit, shown, typed)


def _ranged(parts: list[str], shown: Shown, typed: str, unit: str = "") -> Entry:
    """Return low, likely and high as a case file writes them; a part without a unit takes that of another."""
    found = [_ONE.fullmatch(plain_form(part)) for part in parts if part]
    if None in found:
        return typed
    units = [part[2].strip() for part in found if part is not None and part[2]]
    common = unit or (units[-1] if units else "")
    if not parts[1]:
        if len(set(units)) > 1:
            return typed
        values = [float(part[1]) for part in found if part is not None]
        parts = [parts[0], f"{sum(values) / len(values):g}", parts[2]]
    low, likely, high = (_one(part, shown, typed, common) for part in parts)
    return {"low": low, "likely": likely, "high": high}


def in_case_unit(read: Entry, shown: Shown) -> Entry:
    """Return what was read from a bare field in the unit of the case, where the screen shows another."""
    if isinstance(read, dict):
        return {part: _one_in_case_unit(value, shown) for part, value in read.items()}
    return read if read is None else _one_in_case_unit(read, shown)


def _one_in_case_unit(value: str | float, shown: Shown) -> str | float:
    if isinstance(value, str) or shown.unit == shown.shown_unit:
        return value
    return float(f"{quantity.converted(value, shown.shown_unit, shown.unit):.10g}")


def entry_text(low: float, likely: float, high: float, shown: Shown) -> str:
    """Return a range as text that `read_entry` reads back."""
    if math.isclose(low, high, rel_tol=1e-9, abs_tol=1e-12):
        return _text(likely, shown)
    return f"{_text(likely, shown)} ({_text(low, shown)} to {_text(high, shown)})"


def plain_text(value: float, shown: Shown) -> str:
    """Return one number in the unit on screen, without it, to five digits."""
    return _digits(number_in_shown(value, shown), _FIGURE)


def span_text(low: float, high: float, shown: Shown) -> str:
    """Return "6 to 12 in", or one number where both ends agree; no more digits than such a width warrants."""
    step = _step(low, high, shown)
    ends = [_rounded(low, shown, step), _rounded(high, shown, step)]
    return with_unit(ends[0] if ends[0] == ends[1] else " to ".join(ends), shown)


def usual_text(low: float, likely: float, high: float, shown: Shown) -> str:
    """Return a usual value with its unit and no more digits than its range warrants."""
    return with_unit(_rounded(likely, shown, _step(low, high, shown)), shown)


def _step(low: float, high: float, shown: Shown) -> int | None:
    """Return the decimals that a range warrants, below zero for tens and hundreds; None where there is no range."""
    width = abs(number_in_shown(high, shown) - number_in_shown(low, shown))
    return None if width <= 0.0 else -math.floor(math.log10(width / _STEPS))


def _rounded(value: float, shown: Shown, step: int | None) -> str:
    number = number_in_shown(value, shown)
    return _digits(number, _ROUND) if step is None else _digits(round(number, step) + 0.0, _EXACT)


def number_in_shown(value: float, shown: Shown) -> float:
    """Return a number of the case as the screen counts it."""
    if shown.is_percent:
        return 100.0 * value
    return value if shown.unit == shown.shown_unit else quantity.converted(value, shown.unit, shown.shown_unit)


def with_unit(text: str, shown: Shown) -> str:
    """Return a number's text with its unit, dollars in front."""
    word = shown.word
    if word.startswith("$"):
        return f"${text.replace(' to ', ' to $')}{word[1:]}"
    return f"{text} {word}".strip()


@lru_cache(maxsize=4096)
def _text(value: float, shown: Shown) -> str:
    return _digits(number_in_shown(value, shown), _EXACT)


def _digits(value: float, n_digit: int) -> str:
    number = float(f"{value:.{n_digit}g}")
    if number == round(number):
        return f"{number:,.0f}" if abs(number) >= 10_000 else f"{number:.0f}"
    return f"{number:.6f}".rstrip("0")


def _amount(number: str, unit: str, shown: Shown, typed: str) -> str | float:
    value, unit = float(number), unit.strip()
    if unit.casefold() in _PERCENT or (shown.is_percent and not unit and value > shown.high):
        return float(f"{value / 100.0:.10g}")
    if shown.is_bare:
        bare = value if unit == shown.word else in_bare_unit(value, unit, shown.unit)
        return typed if bare is None else bare
    return f"{number} {_SHORT_UNITS.get((unit, shown.shown_unit), unit) or shown.shown_unit}"
