"""Amounts as people write them, in the plain form that `quantity` reads: one decimal number, then one unit.

Fractions ("10 1/2 in", "10½ in"), feet with inches ("12 ft 6 in", 12' 6"), raised digits ("58 m²"), thousands
("1,250") and a comma after a leading zero ("0,30") have one reading only, and are taken.
"""

import re
from fractions import Fraction
from typing import Final

_SIGNS: Final = str.maketrans(
    {"\u2212": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " ", "²": "**2", "³": "**3", "·": "*", "⋅": "*"}
    | {"\u2032": "'", "\u2033": '"', "\u2019": "'", "\u201d": '"', "\u2044": "/", "º": "°"}
)
_VULGAR: Final = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_THOUSANDS: Final = re.compile(r"(?<![\d.,])([1-9]\d{0,2}(?:,\d{3})+)(?![\d,])")
_ZERO_COMMA: Final = re.compile(r"(?<![\d.,])0,(?=\d+(?![\d,.]))")
_MIXED: Final = re.compile(r"(?<![\d.,/])(?:(\d{1,5})(?:\s+|-))?(\d{1,3})\s?/\s?([1-9]\d{0,2})(?![\d./,])")
_DECIMAL: Final = r"(?:\d+\.?\d*|\.\d+)"
_INCHES: Final = r"(?:inches|inch|in\.?|\"|'')"
_FEET_INCHES: Final = re.compile(
    rf"({_DECIMAL})\s*(?:(?:feet|foot|ft\.?)[\s,]*(?:and\s+)?({_DECIMAL})\s*{_INCHES}|'\s*({_DECIMAL})\s*{_INCHES}?)"
)
_TWO_COMMAS: Final = re.compile(r"[+-]?[\d.]*\d,\d+")
_INCHES_PER_FOOT: Final = 12


def plain_form(text: str) -> str:
    """Return the same amount as one decimal number and one unit; what has no single reading stays as it is.

    Parameters
    ----------
    text : str
        What was typed.

    Examples
    --------
    >>> plain_form("58 m²"), plain_form("1,250 USD"), plain_form("0,30")
    ('58 m**2', '1250 USD', '0.30')
    >>> plain_form("12 ft 6 in"), plain_form("10½ in"), plain_form("3/4 in")
    ('150 in', '10.5 in', '0.75 in')
    """
    plain = text.strip().translate(_SIGNS)
    for letter, fraction in _VULGAR.items():
        plain = re.sub(rf"(?<=\d)\s*{letter}", f" {fraction}", plain).replace(letter, fraction)
    plain = _ZERO_COMMA.sub("0.", _THOUSANDS.sub(lambda found: found[1].replace(",", ""), plain))
    plain = _MIXED.sub(_decimal, plain)
    if found := _FEET_INCHES.fullmatch(plain):
        return f"{_digits(_INCHES_PER_FOOT * float(found[1]) + float(found[2] or found[3]))} in"
    return plain


def has_two_readings(text: str) -> bool:
    """Return whether a comma in a number may stand for a decimal point or for thousands.

    Examples
    --------
    >>> has_two_readings("30,5 m"), has_two_readings("1,250 m"), has_two_readings("0,30 m")
    (True, False, False)
    """
    return _TWO_COMMAS.match(plain_form(text)) is not None


def _decimal(found: "re.Match[str]") -> str:
    return _digits(float(int(found[1] or 0) + Fraction(int(found[2]), int(found[3]))))


def _digits(value: float) -> str:
    return f"{value:.10g}"
