"""What a person types into a field, and what a case file would say instead; and back."""

import math
import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, TypeAlias

from econ.case import quantity

Entry: TypeAlias = str | float | dict[str, str | float] | None
"""A value as a case file writes it; None takes the answer back."""

_NUMBER: Final = r"[-+\u2212]?(?:\d{1,3}(?:,\d{3})+(?:\.\d*)?|\d+\.?\d*|\.\d+)"
_TO: Final = r"\s*(?:to|\u2013|-)\s*"
_ONE: Final = re.compile(rf"({_NUMBER})\s*(\D.*)?")
_TWO: Final = re.compile(rf"({_NUMBER}){_TO}({_NUMBER})\s*(\D.*)?")
_THREE: Final = re.compile(rf"({_NUMBER})\s*(\D*?)\s*\(\s*({_NUMBER}){_TO}({_NUMBER})[^)]*\)")

_EXACT: Final = 6
_ROUND: Final = 3
"""Significant digits of what was typed, and of what is assumed."""

SCREEN_UNITS: Final[dict[str, str]] = {
    "ft**2": "sq ft",
    "m**2": "m²",
    "degF": "°F",
    "degC": "°C",
    "delta_degF": "°F",
    "K": "°C",
    "Btu/hour": "Btu/h",
    "W/(m**2*K)": "W/m²K",
    "Btu/(hour*ft**2*delta_degF)": "Btu/h ft² °F",
    "J/(m**2*K)": "J/m²K",
    "Btu/(ft**2*delta_degF)": "Btu/ft² °F",
    "Btu/(W*hour)": "Btu/Wh",
    "USD": "$",
    "USD/kWh": "$ per kWh",
    "USD/hour": "$ per hour",
    "USD/year": "$ per year",
    "USD/therm": "$ per therm",
    "USD/gallon": "$ per gallon",
    "USD/cord": "$ per cord",
    "1/hour": "per hour",
    "1/year": "per year",
    "year": "years",
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
    """

    unit: str
    shown_unit: str
    is_bare: bool
    is_percent: bool
    high: float

    @property
    def word(self) -> str:
        """The unit as the screen writes it; empty where there is none."""
        return "%" if self.is_percent else SCREEN_UNITS.get(self.shown_unit, self.shown_unit)


def read_entry(text: str, shown: Shown) -> Entry:
    """Return what a case file would say for the text typed into a field."""
    plain = text.strip().replace("$", "").replace("\u2212", "-").strip()
    if not plain:
        return None
    if quantity.is_not_known(plain) or plain.lower() in {"i don't know"}:
        return quantity.NOT_KNOWN_TEXT
    if found := _THREE.fullmatch(plain):
        likely, unit, low, high = found.groups()
        return ranged(low, likely, high, shown, unit)
    if found := _TWO.fullmatch(plain):
        low, high, unit = found.groups()
        return ranged(low, f"{(_number(low) + _number(high)) / 2:g}", high, shown, unit or "")
    if found := _ONE.fullmatch(plain):
        return _amount(found[1], found[2] or "", shown)
    return plain


def ranged(low: str, likely: str, high: str, shown: Shown, unit: str = "") -> dict[str, str | float]:
    """Return a range as a case file writes it."""
    return {part: _amount(text, unit, shown) for part, text in (("low", low), ("likely", likely), ("high", high))}


def entry_text(low: float, likely: float, high: float, shown: Shown) -> str:
    """Return a range as text that `read_entry` reads back."""
    if math.isclose(low, high, rel_tol=1e-9, abs_tol=1e-12):
        return _text(likely, shown)
    return f"{_text(likely, shown)} ({_text(low, shown)} to {_text(high, shown)})"


def span_text(low: float, high: float, shown: Shown) -> str:
    """Return "6 to 12 in", or one number where both ends agree."""
    ends = [_text(low, shown, _ROUND), _text(high, shown, _ROUND)]
    return with_unit(ends[0] if ends[0] == ends[1] else " to ".join(ends), shown)


def with_unit(text: str, shown: Shown) -> str:
    """Return a number's text with its unit, dollars in front."""
    word = shown.word
    if word.startswith("$"):
        return f"${text.replace(' to ', ' to $')}{word[1:]}"
    return f"{text} {word}".strip()


@lru_cache(maxsize=4096)
def _text(value: float, shown: Shown, n_digit: int = _EXACT) -> str:
    if shown.is_percent:
        return _digits(100.0 * value, n_digit)
    is_same = shown.unit == shown.shown_unit
    return _digits(value if is_same else quantity.converted(value, shown.unit, shown.shown_unit), n_digit)


def _digits(value: float, n_digit: int) -> str:
    number = float(f"{value:.{n_digit}g}")
    if number == round(number):
        return f"{number:,.0f}" if abs(number) >= 10_000 else f"{number:.0f}"
    return f"{number:.6f}".rstrip("0")


def _number(text: str) -> float:
    return float(text.replace(",", ""))


def _amount(number: str, unit: str, shown: Shown) -> str | float:
    value, unit = _number(number), unit.strip()
    if unit == "%" or (shown.is_percent and not unit and value > shown.high):
        return float(f"{value / 100.0:.10g}")
    if shown.is_bare:
        word = shown.word.replace("$", "").strip()
        same = not unit or unit in (word, word.rstrip("s"))
        return value if same else f"{number} {unit}"
    return f"{number.replace(',', '')} {unit or shown.shown_unit}"
