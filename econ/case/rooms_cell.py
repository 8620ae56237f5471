"""One cell of a rooms file: what was typed, read as a number, an option, a side of the compass, a day or a mark."""

import math
import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import Final

from econ.case.choices import CHOICES, NOT_KNOWN
from econ.kernel.constants import SQUARE_FOOT_M2

Value = float | int | str
Reader = Callable[[str], Value]

BLANK: Final = -1
"""An option that was left out."""

SIDES: Final = ("north", "east", "south", "west")
"""Sides of a room, in the order of their bits."""

ALL_SIDES: Final = 0b1111

GLASS_WORDS: Final = ("none", "small", "medium", "large", NOT_KNOWN)
MARKS: Final = ("must", "must_not")

_UNKNOWN: Final = frozenset({"?", "??", "not known", "unknown", "don't know", "dont know", "n/a", "na", "n.a."})
_NUMBER: Final = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,4})?")
_PRODUCT: Final = re.compile(
    rf"({_NUMBER.pattern})\s*(ft|feet|'|m)?\s*(?:x|\u00d7|by|\*)\s*({_NUMBER.pattern})\s*(ft|feet|'|m)?"
)
_THOUSANDS: Final = re.compile(r"[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?")
_AREA_UNITS: Final = {
    **dict.fromkeys(("sqft", "sq ft", "ft2", "ft²", "ft^2", "ft**2", "sq. ft.", "sf", "square feet"), SQUARE_FOOT_M2),
    **dict.fromkeys(("m2", "m²", "m^2", "m**2", "sqm", "sq m", "square metres", "square meters"), 1.0),
}
_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_ISO: Final = re.compile(r"(20\d{2})[-/.](\d{1,2})[-/.](\d{1,2})(?:[ t]00:00(?::00)?)?")
_SLASHED: Final = re.compile(r"(\d{1,2})[-/.](\d{1,2})[-/.](20\d{2}|\d{2})")
_DAY_MONTH: Final = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?[\s.-]+([a-z]{3})[a-z]*[\s.,-]+(20\d{2})")
_MONTH_DAY: Final = re.compile(r"([a-z]{3})[a-z]*\.?\s+(\d{1,2})(?:st|nd|rd|th)?[\s,]+(20\d{2})")
_SIDE_WORD: Final = re.compile(r"[a-z]+")
_COUNTED: Final = re.compile(r"(?:(\d{1,2})\s*(?:x\s*)?)?([a-z][a-z -]*)")

_CENTURY: Final = 2000
_MONTHS_A_YEAR: Final = 12


class CellError(ValueError):
    """A cell that cannot be taken: what is allowed, and what to do."""

    def __init__(self, problem: str, remedy: str) -> None:
        super().__init__(problem, remedy)
        self.problem, self.remedy = problem, remedy


def is_unknown(text: str) -> bool:
    """Return whether a cell says that nobody knows."""
    return text.lower() in _UNKNOWN


def plain_number(text: str, remedy: str) -> float:
    """Return a number as a spreadsheet writes it: thousands in commas, or a comma where others have a point."""
    bare = text.lower().replace("\u00a0", " ").replace("\u2212", "-").strip().removeprefix("$").strip()
    if _THOUSANDS.fullmatch(bare):
        bare = bare.replace(",", "")
    elif bare.count(",") == 1 and "." not in bare:
        bare = bare.replace(",", ".")
    if not _NUMBER.fullmatch(bare):
        raise CellError("must be a number", remedy)
    return float(bare)


def number(low: float, high: float, what: str, *, is_whole: bool = False) -> Reader:
    """Return the reader of a number between bounds.

    Parameters
    ----------
    low, high : float
        Least and greatest value. [any]
    what : str
        Unit or thing, for the message, such as "years".
    is_whole : bool
        Whether parts of one make no sense.
    """
    remedy = f"Write a number from {low:g} to {high:g} ({what}), or leave it blank."

    def read(text: str) -> float:
        if not text or is_unknown(text):
            return math.nan
        value = plain_number(text, remedy)
        if not low <= value <= high or (is_whole and value != round(value)):
            raise CellError(f"must be {'a whole number ' if is_whole else ''}from {low:g} to {high:g}", remedy)
        return value

    return read


def floor(text: str) -> float:
    """Return the storey: 1 at the ground, 0 and less below it."""
    remedy = "Write 1 or G for the floor at the ground, 2 for the one above it, B or 0 for a basement."
    word = text.lower().removesuffix("floor").strip()
    named = {"g": 1, "ground": 1, "b": 0, "basement": 0, "lower level": 0, "first": 1, "second": 2, "third": 3}
    word = re.sub(r"(?<=\d)(st|nd|rd|th)$", "", word)
    if word in named:
        return float(named[word])
    if not word:
        raise CellError("must be given", remedy)
    value = plain_number(word, remedy)
    if not LOWEST_FLOOR <= value <= HIGHEST_FLOOR or value != round(value):
        raise CellError(f"must be a whole number from {LOWEST_FLOOR} to {HIGHEST_FLOOR}", remedy)
    return value


LOWEST_FLOOR: Final = -3
HIGHEST_FLOOR: Final = 60


def area(low_m2: float, high_m2: float, factor: float, what: str) -> Reader:
    """Return the reader of an area, bare, with its unit, or as length times width.

    Parameters
    ----------
    low_m2, high_m2 : float
        Least and greatest area. [m^2]
    factor : float
        Square metres in the unit of the column. [m^2]
    what : str
        Unit of the column, for the message.
    """
    bounds = f"from {low_m2 / factor:.3g} to {high_m2 / factor:.6g} {what}"
    remedy = f'Write it such as 240, "240 sq ft", "22 m2" or "12 x 20" ({bounds}).'

    def read(text: str) -> float:
        if not text or is_unknown(text):
            return math.nan
        value = _area_m2(text, factor, remedy)
        if not low_m2 <= value <= high_m2:
            raise CellError(f"must be {bounds}", remedy)
        return value

    return read


def _area_m2(text: str, factor: float, remedy: str) -> float:
    bare = text.lower().replace("\u00a0", " ").strip()
    if sides := _PRODUCT.fullmatch(bare):
        unit = sides[4] or sides[2]
        each = factor if unit is None else (1.0 if unit == "m" else SQUARE_FOOT_M2)
        return float(sides[1]) * float(sides[3]) * each
    for unit in sorted(_AREA_UNITS, key=len, reverse=True):
        if bare.endswith(unit) and bare != unit:
            return plain_number(bare[: -len(unit)], remedy) * _AREA_UNITS[unit]
    return plain_number(bare, remedy) * factor


def glass(factor: float, what: str) -> Reader:
    """Return the reader of windows: a word for their size, or their whole area in square metres."""
    read_area = area(0.0, 200.0, factor, what)

    def read(text: str) -> Value:
        word = text.lower()
        if not text or word in GLASS_WORDS:
            return word
        if is_unknown(text):
            return NOT_KNOWN
        try:
            return read_area(text)
        except CellError as error:
            raise CellError("must be none, small, medium, large, or an area", error.remedy) from None

    return read


def exposure(text: str) -> int:
    """Return the sides that face outdoors as bits of `SIDES`, BLANK where nothing is said, all where unknown."""
    if not text:
        return BLANK
    if is_unknown(text):
        return ALL_SIDES
    words = _SIDE_WORD.findall(text.lower())
    words = [word for word in words if word not in ("and", "corner", "facing", "side", "sides", "wall", "walls")]
    if words in (["none"], ["inside"], ["no"]):
        return 0
    found = 0
    for word in words:
        found |= _sides(word)
    if not words or re.search(r"\d", text):
        raise CellError("must name sides of the compass", _EXPOSURE)
    return found


_EXPOSURE: Final = "Write the outdoor sides such as S, SW (south and west), north/east, or none."


def _sides(word: str) -> int:
    left, bits = word, 0
    while left:
        for at, side in enumerate(SIDES):
            taken = side if left.startswith(side) else side[0] if len(word) <= len(SIDES) else ""
            if taken and left.startswith(taken):
                bits, left = bits | 2**at, left[len(taken) :]
                break
        else:
            raise CellError("must name sides of the compass", _EXPOSURE)
    return bits


def option(path: str, spoken: Mapping[str, str]) -> Reader:
    """Return the reader of a choice of the case: its options, spelled with spaces, and everyday words for them.

    Parameters
    ----------
    path : str
        Of the choice in a case.
    spoken : mapping of str to str
        Options by other words.
    """
    options: tuple[str, ...] = CHOICES[path]
    words = {each.replace("_", " "): each for each in options} | dict(spoken)
    remedy = f"Write one of {', '.join(each.replace('_', ' ') for each in options[:-1])}, ? for not known, or nothing."

    def read(text: str) -> int:
        if not text:
            return BLANK
        word = " ".join(text.lower().replace("_", " ").replace("-", " ").split())
        word = NOT_KNOWN if is_unknown(text) else words.get(word, words.get(word.removesuffix("s"), ""))
        if not word:
            raise CellError("must be one of the listed words", remedy)
        return int(options.index(word))

    return read


def day(text: str) -> float:
    """Return a day as its ordinal; NaN where none is given or none is known."""
    if not text or is_unknown(text):
        return math.nan
    bare = text.lower().strip()
    year, month, number_ = _day_parts(bare)
    try:
        found = date(year, month, number_)
    except ValueError:
        raise CellError("must be a day of the calendar", _DAY) from None
    return float(found.toordinal())


_DAY: Final = "Write it year-month-day, such as 2027-06-01."


def _day_parts(bare: str) -> tuple[int, int, int]:
    if found := _ISO.fullmatch(bare):
        return int(found[1]), int(found[2]), int(found[3])
    if found := _DAY_MONTH.fullmatch(bare):
        return int(found[3]), _month(found[2]), int(found[1])
    if found := _MONTH_DAY.fullmatch(bare):
        return int(found[3]), _month(found[1]), int(found[2])
    if found := _SLASHED.fullmatch(bare):
        return _slashed(int(found[1]), int(found[2]), int(found[3]) % 100 + _CENTURY)
    if re.fullmatch(r"[345]\d{4}(\.\d+)?", bare):
        raise CellError("is a spreadsheet's number of a day, not a date", f"{_DAY} Format the column as text first.")
    raise CellError("must be a date", _DAY)


def _slashed(first: int, second: int, year: int) -> tuple[int, int, int]:
    if first != second and max(first, second) <= _MONTHS_A_YEAR:
        raise CellError("may be a day of either of two months", _DAY)
    return (year, second, first) if first > _MONTHS_A_YEAR else (year, first, second)


def _month(word: str) -> int:
    if word not in _MONTHS:
        raise CellError("must be a date", _DAY)
    return _MONTHS.index(word) + 1


def mark(text: str) -> str:
    """Return what must or must not be done: "must", "must_not" or nothing."""
    word = " ".join(text.lower().replace("_", " ").replace("'", "").split())
    if not word or word in ("-", "no"):
        return ""
    if word in ("must not", "not", "mustnt", "never"):
        return "must_not"
    if word in ("must", "must do", "x", "yes"):
        return "must"
    raise CellError(
        "must be must, must not, or blank", 'Write must, must not, or nothing; put a date into "not before".'
    )


def text_of(limit: int, *, is_required: bool = False) -> Reader:
    """Return the reader of a text of so many letters at most.

    Parameters
    ----------
    limit : int
        Letters allowed. [dimensionless]
    is_required : bool
        Whether it may not be left out.
    """

    def read(text: str) -> str:
        if is_required and not text:
            raise CellError("must be given", "Write a name, such as 3B or Living room.")
        if len(text) > limit:
            raise CellError(f"must be at most {limit} letters", "Shorten it.")
        return text

    return read


FORMULA: Final = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes as the beginning of a formula."""


def as_typed(text: str) -> str:
    """Return a cell without the mark that `as_text` put before it.

    Examples
    --------
    >>> as_typed("'=1+1"), as_typed("'tis")
    ('=1+1', "'tis")
    """
    bare = text.strip()
    return bare[1:] if bare[:1] == "'" and bare[1:2] in FORMULA and bare[1:2] else bare


def as_text(text: str) -> str:
    """Return a cell that no spreadsheet runs as a formula: it is marked as text.

    Examples
    --------
    >>> as_text("=1+1"), as_text("Flat 3")
    ("'=1+1", 'Flat 3')
    """
    return f"'{text}" if text[:1] in FORMULA else text


def counted_option(path: str, spoken: Mapping[str, str]) -> Reader:
    """Return the reader of a choice that may have a number before it: "2 window units" is read as "2 window_units".

    Parameters
    ----------
    path : str
        Of the choice in a case.
    spoken : mapping of str to str
        Options by other words.
    """
    read_option, options = option(path, spoken), CHOICES[path]

    def read(text: str) -> str:
        found = _COUNTED.fullmatch(text.strip().lower())
        at = read_option(found[2] if found and found[1] else text)
        if at == BLANK:
            return ""
        count = found[1] if found and found[1] else ""
        if count and not 1 <= int(count) <= MOST_UNITS:
            raise CellError(f"must be 1 to {MOST_UNITS} units", "Write it such as 2 window units.")
        return f"{count} {options[int(at)]}".strip()

    return read


MOST_UNITS: Final = 10
"""Units of one room: as many as a case may say."""
