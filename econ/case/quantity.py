"""An amount as the user wrote it, and as the engine reads it: low, likely, high in the field's own unit.

Physical amounts are text with a unit ("884 ft**2"); money, rates, counts, hours, days and years are bare numbers.
Each may also be a range, ``{low = ..., likely = ..., high = ...}``, or "not known". pint is used here, no deeper.
"""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache
from typing import Any, Final

from econ.case.spoken import has_two_readings, plain_form
from econ.kernel.errors import CaseError, Fault, FaultKind

NOT_KNOWN_TEXT: Final = "not known"
_NOT_KNOWN_SPELLINGS: Final = frozenset({"not known", "not_known", "don't know", "unknown", "?"})
_PARTS: Final = ("low", "likely", "high")
_NUMBER: Final = re.compile(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)\s*(.*?)\s*", re.DOTALL)
_TERM: Final = r"[A-Za-z_]{1,30}(?: ?(?:\*\*|\^) ?-?[1-9](?!\d))?"
_PRODUCT: Final = rf"{_TERM}(?: ?[*/] ?{_TERM}){{0,5}}"
_UNIT_TEXT: Final = re.compile(rf"{_PRODUCT}(?: ?/ ?\({_PRODUCT}\))?")
"""Units such as W/(m**2*K): a fault in form is told here, since pint's parser trips over it in many ways."""

_TEMPERATURES: Final = {"degC": "delta_degC", "degF": "delta_degF", "kelvin": "kelvin", "K": "kelvin"}
_SPELLINGS: Final = {
    "f": "degF", "°f": "degF", "° f": "degF", "deg f": "degF", "deg_f": "degF", "degf": "degF", "degrees f": "degF",
    "c": "degC", "°c": "degC", "° c": "degC", "deg c": "degC", "deg_c": "degC", "degc": "degC", "degrees c": "degC",
    "degrees fahrenheit": "degF", "fahrenheit": "degF", "degrees celsius": "degC", "celsius": "degC",
    "sqft": "ft**2", "sq ft": "ft**2", "ft2": "ft**2", "square feet": "ft**2", "square foot": "ft**2", "sf": "ft**2",
    "m2": "m**2", "sq m": "m**2", "sqm": "m**2", "square metres": "m**2", "square meters": "m**2",
    "'": "ft", "feet": "ft", "foot": "ft", '"': "in", "''": "in", "inches": "in", "inch": "in",
    "btu/h": "Btu/hour", "btu": "Btu/hour", "btu/hr": "Btu/hour", "btuh": "Btu/hour", "btu per hour": "Btu/hour",
    "kbtu/h": "kBtu/hour", "kbtu": "kBtu/hour", "kbtu/hr": "kBtu/hour", "kbtu/hour": "kBtu/hour",
    "cfm": "ft**3/minute", "cfm50": "ft**3/minute", "m3/h": "m**3/hour",
    "ton": "refrigeration_ton", "tons": "refrigeration_ton", "w/m2k": "W/(m**2*K)", "w/m**2k": "W/(m**2*K)",
}  # fmt: skip
"""Everyday spellings, in small letters and without full stops, that pint reads as something else or not at all."""

KINDS: Final = {
    "m**2": "an area", "m": "a length", "degC": "a temperature", "K": "a temperature difference",
    "W": "a heating or cooling power", "N": "a force", "m**3/hour": "an air flow",
    "W/(m**2*K)": "a heat-loss value (U-value)", "J/(m**2*K)": "a heat capacity per floor area",
    "W/(m*K)": "a thermal conductivity", "J/(m**3*K)": "a heat capacity by volume", "m/s": "a speed", "L": "a volume",
}  # fmt: skip
EXAMPLES: Final = {
    "m**2": '"884 ft**2" or "82 m**2"', "m": '"8 ft", "10 in" or "2.4 m"', "degC": '"75 degF" or "24 degC"',
    "K": '"0.7 delta_degF" or "0.4 K"', "W": '"18 kBtu/hour" or "5.3 kW"',
    "W/(m**2*K)": '"0.35 W/(m**2*K)" or "0.06 Btu/(hour*ft**2*degF)"', "J/(m**2*K)": '"165000 J/(m**2*K)"',
    "N": '"620 lbf" or "2.8 kN"', "m**3/hour": '"450 ft**3/minute" or "760 m**3/hour"',
    "W/(m*K)": '"1.4 W/(m*K)" or "0.8 Btu/(hour*ft*degF)"', "J/(m**3*K)": '"2000000 J/(m**3*K)"',
    "m/s": '"8 mile/hour" or "3.6 m/s"', "L": '"1 quart" or "1 L"',
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Measure:
    """What an amount is measured in and what is allowed.

    Attributes
    ----------
    unit : str
        Unit the engine reads, in pint's spelling; empty for a plain number.
    us_unit : str
        US customary unit for display; empty for amounts written as bare numbers.
    low, high : float
        Least and greatest value allowed, in `unit`.
    is_whole : bool
        Only whole numbers make sense.
    """

    unit: str
    us_unit: str
    low: float
    high: float
    is_whole: bool = False

    @property
    def needs_unit(self) -> bool:
        """Whether the case file writes it as text with a unit."""
        return bool(self.us_unit)


Written = str | int | float | tuple[tuple[str, str | int | float], ...]


@dataclass(frozen=True, slots=True)
class Amount:
    """One amount of a case: three numbers in the field's unit, and what was typed.

    Two amounts are equal when they were typed alike; the numbers follow from the typing and the field.

    Attributes
    ----------
    low, likely, high : float
        In the field's unit, ascending, equal where one value was given; NaN where `is_unknown`.
    is_unknown : bool
        The user said "I don't know".
    written : str, number or pairs
        What was typed, so that it is written back with its own unit.
    """

    low: float = field(compare=False)
    likely: float = field(compare=False)
    high: float = field(compare=False)
    is_unknown: bool
    written: Written

    @property
    def is_range(self) -> bool:
        """Whether low, likely and high were given apart."""
        return isinstance(self.written, tuple)

    @property
    def text(self) -> str:
        """What was typed, as one line of text."""
        if isinstance(self.written, tuple):
            return ", ".join(f"{part} {value}" for part, value in self.written)
        return str(self.written)


UNKNOWN: Final = Amount(math.nan, math.nan, math.nan, True, NOT_KNOWN_TEXT)


def amount(raw: object, measure: Measure) -> Amount:
    """Return what was typed as an amount.

    Parameters
    ----------
    raw : object
        A number, a text with a unit, a table of low, likely and high, or "not known".
    measure : Measure
        Unit and bounds of the field.

    Returns
    -------
    amount : Amount
        Numbers in the measure's unit, and the typing itself.

    Raises
    ------
    CaseError
        With each fault found; paths are empty, or name the part of a range.

    Examples
    --------
    >>> amount("10 ft", Measure("m", "ft", 0.0, 100.0)).likely
    3.048
    >>> amount("not known", Measure("", "", 0.0, 1.0)).is_unknown
    True
    """
    if isinstance(raw, Amount):
        raw = dict(raw.written) if isinstance(raw.written, tuple) else raw.written
    if is_not_known(raw):
        return UNKNOWN
    if isinstance(raw, Mapping):
        return _range(raw, measure)
    value = _bounded(raw, measure)
    return Amount(value, value, value, False, _kept(raw))


def short(value: object) -> str:
    """Return a value as text of at most 80 letters, texts in quotes."""
    got = repr(value) if isinstance(value, str) else str(value)
    return got if len(got) <= 80 else f"{got[:77]}..."


def is_not_known(raw: object) -> bool:
    """Return whether the user wrote "I don't know" in one of its spellings."""
    return isinstance(raw, str) and raw.strip().lower() in _NOT_KNOWN_SPELLINGS


def converted(value: float, unit: str, to_unit: str) -> float:
    """Return a value in another unit; temperatures keep their offset, "K" is always a difference.

    Examples
    --------
    >>> round(converted(25.0, "degC", "degF"), 6)
    77.0
    """
    registry = _registry()
    number: float = registry.Quantity(value, _as_difference(unit, to_unit)).to(_as_difference(to_unit, unit)).magnitude
    return number


def _as_difference(unit: str, other: str) -> str:
    return _TEMPERATURES.get(unit, unit) if "K" in (unit, other) else unit


def allowed_text(measure: Measure) -> str:
    """Return what is allowed, in both systems of units where the amount is physical."""
    unit = f" {measure.unit}" if measure.unit else ""
    text = f"must be between {measure.low:g} and {measure.high:,.10g}{unit}"
    if not measure.needs_unit or measure.us_unit == measure.unit:
        return text
    low, high = (converted(bound, measure.unit, measure.us_unit) for bound in (measure.low, measure.high))
    return f"{text} ({low:,.4g} and {high:,.6g} {measure.us_unit})"


def _fault(problem: str, raw: object, remedy: str, kind: FaultKind = FaultKind.OTHER) -> CaseError:
    return CaseError([Fault("", problem, short(raw), remedy, kind)])


def _range(raw: Mapping[str, object], measure: Measure) -> Amount:
    if sorted(raw) != sorted(_PARTS):
        example = "{low = 8, likely = 12, high = 20}"
        raise _fault("a range needs exactly low, likely and high", ", ".join(map(str, raw)), f"Write it as {example}.")
    values, faults = [], list[Fault]()
    for part in _PARTS:
        try:
            values.append(_bounded(raw[part], measure))
        except CaseError as error:
            faults += [replace(fault, path=part) for fault in error.faults]
    if faults:
        raise CaseError(faults)
    low, likely, high = values
    if not low <= likely <= high:
        text = ", ".join(f"{part} {raw[part]}" for part in _PARTS)
        raise _fault(
            "low, likely and high must be in ascending order",
            text,
            "Put the smallest first; equal values are allowed.",
            FaultKind.NOT_ASCENDING,
        )
    return Amount(low, likely, high, False, tuple((part, _kept_number(raw[part])) for part in _PARTS))


def _kept(raw: object) -> Written:
    return _kept_number(raw)


def _kept_number(raw: object) -> str | int | float:
    assert isinstance(raw, str | int | float)
    return raw.strip() if isinstance(raw, str) else raw


def _bounded(raw: object, measure: Measure) -> float:
    value = _number(raw, measure)
    if not math.isfinite(value):
        raise _fault("must be a number, not NaN or infinity", raw, f'Give a number, or write "{NOT_KNOWN_TEXT}".')
    if not measure.low <= value <= measure.high:
        remedy = "Check the value and its unit." if measure.needs_unit else "Check the value."
        is_above = value > measure.high
        raise _fault(allowed_text(measure), raw, remedy, FaultKind.TOO_LARGE if is_above else FaultKind.TOO_SMALL)
    if measure.is_whole and value != round(value):
        raise _fault("must be a whole number", raw, "Round it.", FaultKind.NOT_WHOLE)
    return value


def _number(raw: object, measure: Measure) -> float:
    if isinstance(raw, bool) or not isinstance(raw, str | int | float):
        raise _fault("must be an amount", raw, _how_to_write(measure), FaultKind.NOT_READ)
    if isinstance(raw, str):
        return _from_text(raw, measure)
    if measure.needs_unit and (isinstance(raw, int) or math.isfinite(raw)):
        raise _fault("missing unit", raw, _how_to_write(measure), FaultKind.NO_UNIT)
    try:
        return float(raw)
    except OverflowError:
        return math.inf


def _how_to_write(measure: Measure) -> str:
    if measure.needs_unit:
        return f"Write it as text with its unit, such as {EXAMPLES[measure.unit]}."
    unit = f" ({measure.unit})" if measure.unit else ""
    return f'Write it as a bare number{unit}, without quotes or unit, or "{NOT_KNOWN_TEXT}".'


def _from_text(raw: str, measure: Measure) -> float:
    if raw.strip().lower().split(" ")[0].lstrip("+-") in ("nan", "inf", "infinity"):
        return math.nan
    if has_two_readings(raw):
        remedy = "Write a point for decimals, and thousands without a comma or with three digits after it."
        raise _fault("has a comma that can be read in two ways", raw, remedy, FaultKind.COMMA)
    parts = _NUMBER.fullmatch(plain_form(raw))
    if not measure.needs_unit or parts is None:
        raise _fault("cannot be read as an amount", raw, _how_to_write(measure), FaultKind.NOT_READ)
    if not parts[2]:
        raise _fault("missing unit", raw, _how_to_write(measure), FaultKind.NO_UNIT)
    try:
        return _in_unit(float(parts[1]), parts[2], measure.unit)
    except CaseError as error:
        [found] = error.faults
        raise _fault(found.problem, raw, _how_to_write(measure), found.kind) from None


@lru_cache(maxsize=4096)
def _in_unit(value: float, unit_text: str, unit: str) -> float:
    import pint

    spelled = _spelled(unit_text)
    if not _UNIT_TEXT.fullmatch(spelled):
        raise _fault(f"unit {unit_text!r} is not known", unit_text, "", FaultKind.UNIT_NOT_KNOWN)
    registry = _registry()
    try:
        given = registry.parse_units(_as_difference(spelled, unit))
        if given.dimensionality != registry.parse_units(unit).dimensionality or (
            "delta_" in str(given) and unit == "degC"
        ):
            problem = f"unit {unit_text!r} does not fit; this must be {KINDS[unit]}"
            raise _fault(problem, unit_text, "", FaultKind.UNIT_DOES_NOT_FIT)
        number: float = registry.Quantity(value, given).to(_as_difference(unit, "K" if unit == "K" else "")).magnitude
    except (pint.PintError, ValueError, TypeError, AttributeError, SyntaxError, ArithmeticError) as error:
        if isinstance(error, CaseError):
            raise
        raise _fault(f"unit {unit_text!r} is not known", unit_text, "", FaultKind.UNIT_NOT_KNOWN) from error
    return float(f"{number:.12g}")  # conversion noise would put a value typed at a bound beyond it


def _spelled(unit_text: str) -> str:
    folded = " ".join(unit_text.casefold().replace(".", "").split())
    return _SPELLINGS.get(folded, unit_text)


@cache
def _registry() -> Any:
    import pint

    registry: Any = pint.UnitRegistry(cache_folder=None)
    registry.define("USD = [currency]")
    return registry
