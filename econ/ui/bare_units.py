"""Units typed behind numbers that a case file writes bare: dollars, cents, prices by the piece, weeks, years."""

import re
from typing import Final

from econ.case.quantity import converted

_MONEY: Final = re.compile(
    r"(?P<coin>us dollars?|dollars?|usd|cents?|ct|c(?![a-z])|¢)?\s*(?:(?:/|per\b|an?\b|for an?\b)\s*)?(?P<per>[a-z]+)?"
)
_CENTS: Final = frozenset({"cent", "cents", "ct", "c", "¢"})
_CENTS_PER_DOLLAR: Final = 100.0
_PER: Final[dict[str, frozenset[str]]] = {
    "kWh": frozenset({"kwh"}),
    "hour": frozenset({"hour", "hr", "h"}),
    "t": frozenset({"t", "ton", "tonne"}),
    "year": frozenset({"year", "yr", "y"}),
    "month": frozenset({"month", "mo"}),
    "therm": frozenset({"therm"}),
    "gallon": frozenset({"gallon", "gal"}),
    "cord": frozenset({"cord"}),
}
_TIMES: Final = {
    "minute": "minute", "minutes": "minute", "min": "minute",
    "hour": "hour", "hours": "hour", "hr": "hour", "hrs": "hour", "h": "hour",
    "day": "day", "days": "day", "d": "day",
    "week": "week", "weeks": "week", "wk": "week", "wks": "week",
    "month": "month", "months": "month",
    "year": "year", "years": "year", "yr": "year", "yrs": "year", "y": "year",
}  # fmt: skip
_HALVES: Final = {"am": 0.0, "pm": 12.0}
_SAME: Final[dict[str, frozenset[str]]] = {
    "Btu/(W*hour)": frozenset({"btu/wh", "btu/w*h", "btu/(w*hour)"}),
    "kWh": frozenset({"kwh"}),
    "therm": frozenset({"therm", "therms"}),
    "1/hour": frozenset({"per hour", "/h", "1/h", "ach", "an hour"}),
    "1/year": frozenset({"per year", "a year", "/yr", "1/yr"}),
}


def is_money(unit: str) -> bool:
    """Return whether a unit counts dollars."""
    return unit.startswith("USD")


def in_bare_unit(value: float, unit_text: str, unit: str) -> float | None:
    """Return a number in the unit of its field, from the unit typed behind it; None where that does not fit.

    Examples
    --------
    >>> in_bare_unit(1250.0, "USD", "USD"), in_bare_unit(15.0, "cents per kWh", "USD/kWh")
    (1250.0, 0.15)
    >>> in_bare_unit(6.0, "weeks", "day"), in_bare_unit(25.0, "a year", "USD/hour")
    (42.0, None)
    >>> in_bare_unit(4.0, "pm", "hour"), in_bare_unit(12.0, "a.m.", "hour")
    (16.0, 0.0)
    """
    typed = unit_text.casefold().replace(".", "").strip()
    if not typed:
        return value
    if is_money(unit):
        return _dollars(value, typed, unit.partition("/")[2])
    if unit == "hour" and typed in _HALVES:
        return value % 12.0 + _HALVES[typed] if value <= 12.0 else None
    if unit in _TIMES and typed in _TIMES:
        return float(f"{converted(value, _TIMES[typed], unit):.10g}")
    return value if typed in _SAME.get(unit, frozenset()) else None


def _dollars(value: float, typed: str, per: str) -> float | None:
    found = _MONEY.fullmatch(typed)
    if found is None or (found["per"] and found["per"] not in _PER.get(per, frozenset())):
        return None
    return value / _CENTS_PER_DOLLAR if found["coin"] in _CENTS else value
