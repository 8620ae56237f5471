"""Why what was typed was not taken, in the reader's own words and in the units on the screen."""

import math
from collections.abc import Callable
from typing import Final

from econ.case import quantity
from econ.kernel.errors import Fault, FaultKind
from econ.ui.entry import Shown, number_in_shown, with_unit

_EXAMPLES: Final[dict[str, str]] = {
    "ft**2": "884, or 82 m²",
    "m**2": "82, or 884 ft²",
    "ft": "12.5, 12 ft 6 in or 3.8 m",
    "in": "10 1/2, or 27 cm",
    "m": "3.8, or 12 ft 6 in",
    "degF": "75, or 24 °C",
    "degC": "24, or 75 °F",
    "Btu/hour": "18,000, 18k or 5.3 kW",
    "W": "5300, 5.3 kW or 18,000 Btu/h",
    "USD": "1250",
    "USD/kWh": "0.15, or 15 cents",
    "USD/hour": "25",
    "kWh": "812",
    "therm": "52",
    "USD/month": "25",
    "day": "21, or 3 weeks",
    "year": "10",
    "hour": "6",
    "lbf": "620, or 2.8 kN",
    "N": "2800, or 620 lbf",
}
"""What may be typed, by the unit on the screen."""

_PARTS: Final = {"low": "Its low end: ", "likely": "Its likely value: ", "high": "Its high end: "}
_DIGITS: Final = 3


def refusal(fault: Fault, shown: Shown) -> tuple[str, str]:
    """Return what is wrong and what to do, as two sentences for the field's own screen.

    Parameters
    ----------
    fault : Fault
        What the reading of the entry found.
    shown : Shown
        Unit and bounds of the field on the screen.
    """
    if fault.kind is FaultKind.CONTRADICTS:
        return f"It {fault.problem}, and it is {fault.got}.", fault.remedy
    wrong = _PARTS.get(fault.path, "") + _wrong(fault, shown)
    return f"{wrong[:1].upper()}{wrong[1:]}.", _remedy(fault, shown)


def _wrong(fault: Fault, shown: Shown) -> str:
    unit = fault.problem.split("'")[1] if fault.problem.count("'") > 1 else ""
    typed = f"the unit “{unit}”" if unit else "its unit"
    kind = quantity.KINDS.get(shown.unit, "such a number")
    words: dict[FaultKind, str] = {
        FaultKind.TOO_SMALL: f"too small: the least allowed here is {_bound(shown.low, shown, math.ceil)}",
        FaultKind.TOO_LARGE: f"too large: the most allowed here is {_bound(shown.high, shown, math.floor)}",
        FaultKind.NOT_WHOLE: "this must be a whole number",
        FaultKind.NOT_ASCENDING: "low, likely and high must rise from one to the next",
        FaultKind.COMMA: "the comma can mean a decimal point or thousands",
        FaultKind.UNIT_NOT_KNOWN: f"{typed} is not known here",
        FaultKind.UNIT_DOES_NOT_FIT: f"{typed} does not fit; this must be {kind}",
    }
    return words.get(fault.kind, f"it cannot be read as {kind}" if shown.unit in quantity.KINDS else "it is no number")


def _remedy(fault: Fault, shown: Shown) -> str:
    if fault.kind in {FaultKind.TOO_SMALL, FaultKind.TOO_LARGE}:
        low, high = _bound(shown.low, shown, math.ceil), _bound(shown.high, shown, math.floor)
        return f"Type a value from {low} to {high}."
    if fault.kind is FaultKind.COMMA:
        return "Type a point for decimals (30.5), or no comma (305)."
    if fault.kind is FaultKind.NOT_WHOLE:
        return "Round it."
    if fault.kind is FaultKind.NOT_ASCENDING:
        return "Put the smallest first; equal values are allowed."
    example = "6 %" if shown.is_percent else _EXAMPLES.get(shown.shown_unit, "")
    return f"Type it such as {example}." if example else f"Type a number{f' in {shown.word}' if shown.word else ''}."


def _bound(value: float, shown: Shown, towards: Callable[[float], int]) -> str:
    """Return a bound in the unit on the screen, rounded to the side on which it still holds."""
    number = number_in_shown(value, shown)
    if number == 0.0:
        return with_unit("0", shown)
    scale = 10.0 ** (_DIGITS - 1 - math.floor(math.log10(abs(number))))
    kept = float(f"{number:.10g}") * scale
    return with_unit(f"{towards(float(f'{kept:.9g}')) / scale:,.10g}", shown)
